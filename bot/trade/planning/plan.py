"""Plan the next batch: daily use, when to make it, and how much is used before it expires.

Amounts are mL, or drinks, or any one unit throughout. Dates are business days. Forecasts are estimates,
computed in floating point.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal
from enum import StrEnum
from statistics import NormalDist

from bot.trade.errors import OutOfRangeError, TradeError

# The horizon of every plan.
FARTHEST_DAYS = 3 * 366
# Weeks of data from which a forecast has some support, and much. Common practice, no source.
SOME_WEEKS, MANY_WEEKS = 4, 12


class NoUseError(TradeError):
    """No logged day shows any use, so there is nothing to plan from."""


class Backing(StrEnum):
    """How much data, in weeks, supports a forecast."""

    FEW_WEEKS = "few weeks"
    SOME_WEEKS = "some weeks"
    MANY_WEEKS = "many weeks"


@dataclass(frozen=True, slots=True)
class WeekdayUse:
    """Daily use by weekday, Monday first.

    `means` are the averages (of all days where that weekday was never logged), `counts` the logged days of
    each weekday, `spread` the standard deviation of single days around them, None with too few days. `weeks`
    is the number of calendar weeks with a logged day.
    """

    means: tuple[float, ...]
    counts: tuple[int, ...]
    spread: float | None
    weeks: int

    @property
    def a_week(self) -> float:
        """The likely use per week."""
        return sum(self.means)

    @property
    def backing(self) -> Backing:
        """How much data, in weeks, supports this use."""
        return backing(self.weeks)

    def on(self, day: date) -> float:
        """Return the likely use on a date."""
        return self.means[day.weekday()]

    def likely(self, first: date, days: int) -> float:
        """Return the likely use over `days` days starting on `first`."""
        return sum(self.on(first + timedelta(days=number)) for number in range(days))

    def at_least(self, first: date, days: int, chance: float = 0.9) -> float:
        """Return the use that `days` days starting on `first` reach with this probability; never below 0.

        Normal approximation of the sum, with the spread of single days and the error of the weekday averages.
        Without a spread, returns the likely use.
        """
        likely = self.likely(first, days)
        if self.spread is None or days == 0:
            return likely
        of_each = [0] * 7
        for number in range(days):
            of_each[(first + timedelta(days=number)).weekday()] += 1
        everything = sum(self.counts)
        averages = sum(
            repeats**2 / (logged or everything) for repeats, logged in zip(of_each, self.counts, strict=True)
        )
        deviation = self.spread * math.sqrt(days + averages)
        return max(0.0, likely - NormalDist().inv_cdf(chance) * deviation)


@dataclass(frozen=True, slots=True)
class Stock:
    """An amount on hand, its discard date (None if it keeps) and the day its rest ends."""

    amount: Decimal
    discard_on: date | None = None
    ready_on: date | None = None


@dataclass(frozen=True, slots=True)
class BatchPlan:
    """When to make the next batch, and how much of it will be used before its discard date.

    `run_out_on` is the first day that the stock does not cover, batches at rest included. `dry_days` is the
    number of days without stock, because a rest outlasts the stock. `largest` is used before `discard_on`
    with a probability of nine in ten, `likely_use` is the likely use by then; both are 0 when the batch would
    expire before it is needed. `lost` is the part of the present stock that expires unused.
    """

    run_out_on: date
    make_on: date
    ready_on: date
    discard_on: date
    dry_days: int
    largest: float
    likely_use: float
    lost: float
    backing: Backing
    weeks: int


def backing(weeks: int) -> Backing:
    """Classify a number of weeks of data: some from 4, many from 12 (common practice)."""
    if weeks >= MANY_WEEKS:
        return Backing.MANY_WEEKS
    return Backing.SOME_WEEKS if weeks >= SOME_WEEKS else Backing.FEW_WEEKS


def use_by_weekday(days: Sequence[tuple[date, Decimal]]) -> WeekdayUse:
    """Return the use by weekday of logged days; log a day without use as 0.

    Raises NoUseError when nothing was used at all, OutOfRangeError for a negative amount.
    """
    by_weekday: list[list[float]] = [[] for _ in range(7)]
    for day, amount in days:
        if not amount >= 0:
            raise OutOfRangeError("use", float(amount), 0, None, "")
        by_weekday[day.weekday()].append(float(amount))
    everything = [amount for logged in by_weekday for amount in logged]
    if not any(everything):
        raise NoUseError
    overall = sum(everything) / len(everything)
    means = tuple(sum(logged) / len(logged) if logged else overall for logged in by_weekday)
    squares = sum((amount - means[number]) ** 2 for number in range(7) for amount in by_weekday[number])
    freedom = len(everything) - sum(bool(logged) for logged in by_weekday)
    return WeekdayUse(
        means,
        tuple(len(logged) for logged in by_weekday),
        math.sqrt(squares / freedom) if freedom > 0 else None,
        len({day.isocalendar()[:2] for day, _ in days}),
    )


def next_batch(
    use: WeekdayUse,
    stock: Sequence[Stock],
    today: date,
    rest_days: int,
    discard_days: int,
    *,
    most: float | None = None,
) -> BatchPlan | None:
    """Return the date and size of the next batch, or None if the stock lasts beyond the horizon.

    The rest is lead time: the batch is made early enough to be ready on the day the stock runs out, or today
    if that is already too late. It expires `discard_days` days after it is made, so its size is limited to
    the use before that. Stock is used earliest discard date first. `most` caps the batch (a vessel, the
    ingredients at hand). Raises OutOfRangeError.
    """
    for one in stock:
        if not one.amount >= 0:
            raise OutOfRangeError("stock", float(one.amount), 0, None, "")
    for name, days in (("rest", rest_days), ("discard", discard_days)):
        if not 0 <= days <= FARTHEST_DAYS:
            raise OutOfRangeError(name, days, 0, FARTHEST_DAYS, "d")
    run_out_on, dry_days, lost = _pour(use, stock, today)
    if run_out_on is None:
        return None
    make_on = max(today, run_out_on - timedelta(days=rest_days))
    ready_on = make_on + timedelta(days=rest_days)
    discard_on = make_on + timedelta(days=discard_days)
    pour_from = max(ready_on, run_out_on)
    days = max(0, (discard_on - pour_from).days)
    largest = use.at_least(pour_from, days)
    return BatchPlan(
        run_out_on,
        make_on,
        ready_on,
        discard_on,
        dry_days + (pour_from - run_out_on).days,
        largest if most is None else min(largest, most),
        use.likely(pour_from, days),
        lost,
        use.backing,
        use.weeks,
    )


def _pour(use: WeekdayUse, stock: Sequence[Stock], today: date) -> tuple[date | None, int, float]:
    """Return the first day without stock, the dry days before it, and the amount that expires unused.

    A day that only waits for a resting batch is dry, but not the end.
    """
    order = sorted(stock, key=lambda one: one.discard_on or date.max)
    left = [float(one.amount) for one in order]
    dry_days, lost = 0, 0.0
    for number in range(FARTHEST_DAYS):
        day = today + timedelta(days=number)
        wanted = use.on(day)
        resting = False
        for place, one in enumerate(order):
            if one.discard_on is not None and one.discard_on <= day:
                lost += left[place]
                left[place] = 0.0
            elif one.ready_on is not None and one.ready_on > day:
                resting = resting or left[place] > 0
            else:
                poured = min(left[place], wanted)
                left[place] -= poured
                wanted -= poured
        if wanted > 1e-9 * use.a_week:
            if not resting:
                return day, dry_days, lost
            dry_days += 1
    return None, dry_days, lost
