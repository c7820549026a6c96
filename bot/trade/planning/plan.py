"""Plan the next batch: when to make it, and how much of it is used before it expires.

Amounts are mL, or drinks, or any one unit throughout. Dates are business days. Forecasts are estimates,
computed in floating point.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal

from bot.trade.errors import OutOfRangeError
from bot.trade.planning.use import WeekdayUse

# The horizon of every plan.
FARTHEST_DAYS = 3 * 366


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
