"""Fruit in and out: what was used, what nobody can explain, and whether waste really changed.

Amounts are fruit by count, but any one unit will do (grams, or money of one
currency) as long as it is the same throughout.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence, Set
from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal
from enum import StrEnum

from bot.trade.errors import OutOfRangeError, TradeError
from bot.trade.numbers.ranges import Range
from bot.trade.numbers.student_t import two_sided_quantile

# Fewer days than this on either side and a difference is not judged. Common practice, no source:
# two weeks hold every weekday twice.
FEWEST_DAYS = 14


@dataclass
class NoDaysError(TradeError):
    """A period without a single open day was to be compared."""

    first: date | None = None
    last: date | None = None


class Sureness(StrEnum):
    """How much a difference between two periods can be trusted."""

    FEW_DAYS = "too few days to say"
    MAY_BE_CHANCE = "may be chance"
    CLEAR = "more than chance"


@dataclass(frozen=True, slots=True)
class FruitUse:
    """What became of the fruit of one period.

    `used` is bought + before - waste - on hand. `accounted` is what the log
    explains of it (garnishes, juice, batches), None when nobody logs that;
    `unexplained` is the rest. `surplus` is how much more there is than there
    can be: a wrong count or a delivery that was not logged.
    """

    used: Decimal
    accounted: Decimal | None
    unexplained: Decimal | None
    surplus: Decimal


@dataclass(frozen=True, slots=True)
class Comparison:
    """Two periods by the day, later against earlier.

    `change_per_day` is later minus earlier and `change_range` where the true
    change lies with the confidence asked (None when a period has a single
    day). `change_share` is the change as a share of the earlier (-0.4 for 40 %
    less), None when that was nothing.
    """

    per_day: Decimal
    per_day_before: Decimal
    days: int
    days_before: int
    change_per_day: Decimal
    change_share: Decimal | None
    change_range: Range[float] | None
    sureness: Sureness


def fruit_use(
    bought: Decimal, before: Decimal, waste: Decimal, on_hand: Decimal, accounted: Decimal | None = None
) -> FruitUse:
    """Return what was used of `bought` and `before` (on hand at the start), given waste and what is left.

    Raises OutOfRangeError for a negative amount.
    """
    for name, amount in (("bought", bought), ("before", before), ("waste", waste), ("on hand", on_hand)):
        if not amount >= 0:
            raise OutOfRangeError(name, float(amount), 0, None, "")
    if accounted is not None and not accounted >= 0:
        raise OutOfRangeError("accounted", float(accounted), 0, None, "")
    gone = bought + before - waste - on_hand
    used, surplus = max(gone, Decimal(0)), max(-gone, Decimal(0))
    if accounted is None:
        return FruitUse(used, None, None, surplus)
    # What is logged as used but was never there is a surplus too, not a negative loss.
    surplus += max(accounted - used, Decimal(0))
    return FruitUse(used, accounted, max(used - accounted, Decimal(0)), surplus)


def waste_share(waste: Decimal, bought: Decimal) -> Decimal | None:
    """Return waste as a share (0.2 for a fifth) of what was bought; None when nothing was.

    Can pass 1, when fruit of an earlier delivery went off. Raises
    OutOfRangeError for a negative amount.
    """
    for name, amount in (("waste", waste), ("bought", bought)):
        if not amount >= 0:
            raise OutOfRangeError(name, float(amount), 0, None, "")
    return None if bought == 0 else waste / bought


def by_day(
    entries: Iterable[tuple[date, Decimal]], first: date, last: date, closed: Set[date] = frozenset()
) -> list[Decimal]:
    """Return the total of each open day from `first` to `last`, both included; nothing logged counts as 0.

    A closed day is left out unless something was logged on it. Entries outside
    the period are ignored. Raises NoDaysError when no day is left.
    """
    totals: dict[date, Decimal] = {}
    for day, amount in entries:
        if first <= day <= last:
            totals[day] = totals.get(day, Decimal(0)) + amount
    days = [first + timedelta(days=number) for number in range((last - first).days + 1)]
    found = [totals.get(day, Decimal(0)) for day in days if day in totals or day not in closed]
    if not found:
        raise NoDaysError(first, last)
    return found


def equal_lengths(
    now: Sequence[Decimal], before: Sequence[Decimal]
) -> tuple[Sequence[Decimal], Sequence[Decimal]]:
    """Return the first days of both periods, as many as the shorter has.

    A week of which three days are over is set against the first three days of
    the week before.
    """
    days = min(len(now), len(before))
    return now[:days], before[:days]


def compare(now: Sequence[Decimal], before: Sequence[Decimal], confidence: float = 0.95) -> Comparison:
    """Return how the daily amounts of two periods differ, by the day and whatever their lengths.

    The range of the change is Welch's interval for two means (B. L. Welch,
    Biometrika 34, 1947, from memory; checked against scipy), its degrees of
    freedom rounded down. Fewer than FEWEST_DAYS on either side are never
    called clear. Raises NoDaysError when a period is empty.
    """
    if not now or not before:
        raise NoDaysError
    per_day, per_day_before = _mean(now), _mean(before)
    change = per_day - per_day_before
    spread = _welch(now, before, confidence)
    sureness = Sureness.MAY_BE_CHANCE
    if min(len(now), len(before)) < FEWEST_DAYS:
        sureness = Sureness.FEW_DAYS
    elif spread is not None and not spread.low <= 0 <= spread.high:
        sureness = Sureness.CLEAR
    share = change / per_day_before if per_day_before else None
    return Comparison(per_day, per_day_before, len(now), len(before), change, share, spread, sureness)


def before_and_after(
    entries: Sequence[tuple[date, Decimal]],
    start: date,
    first: date,
    last: date,
    closed: Set[date] = frozenset(),
) -> Comparison:
    """Return the days from `start` on against those before it, within `first` to `last`.

    `start` is the day on which the bar began to spray this garnish instead of
    cutting it. Raises NoDaysError when no open day lies on one of the sides.
    """
    if not first < start <= last:
        raise NoDaysError(first, last)
    earlier = by_day(entries, first, start - timedelta(days=1), closed)
    return compare(by_day(entries, start, last, closed), earlier)


def _mean(amounts: Sequence[Decimal]) -> Decimal:
    return sum(amounts, Decimal(0)) / len(amounts)


def _variance_of_mean(amounts: Sequence[Decimal]) -> float:
    mean = _mean(amounts)
    squares = sum(((amount - mean) ** 2 for amount in amounts), Decimal(0))
    return float(squares / (len(amounts) - 1) / len(amounts))


def _welch(now: Sequence[Decimal], before: Sequence[Decimal], confidence: float) -> Range[float] | None:
    if min(len(now), len(before)) < 2:
        return None
    change = float(_mean(now) - _mean(before))
    one, other = _variance_of_mean(now), _variance_of_mean(before)
    if one + other == 0:
        return Range.exactly(change)
    freedom = (one + other) ** 2 / (one**2 / (len(now) - 1) + other**2 / (len(before) - 1))
    whole_freedom = max(1, math.floor(freedom + 1e-9))  # 25.999999 is 26 with a rounding error
    half = two_sided_quantile(confidence, whole_freedom) * math.sqrt(one + other)
    return Range(change - half, change + half)
