"""Balance fruit in and out: use, unexplained losses, and changes in waste.

Amounts are fruit by count, but any one unit works (grams, or money of one currency) if it is the same
throughout.
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

# A difference is not judged with fewer days than this on either side. One week holds every weekday once, and
# with three pieces a night a fall by 70 % is then seen seven times in ten (power of the comparison of two
# Poisson rates at the 5 % level; tests/outside holds it against simulated nights).
FEWEST_DAYS = 7


@dataclass
class NoDaysError(TradeError):
    """One of the periods to compare has no open day."""

    first: date | None = None
    last: date | None = None


class Sureness(StrEnum):
    """How reliable a difference between two periods is."""

    FEW_DAYS = "too few days to say"
    MAY_BE_CHANCE = "may be chance"
    CLEAR = "more than chance"


@dataclass(frozen=True, slots=True)
class FruitUse:
    """The use of fruit in one period.

    `used` is bought + before - waste - on hand. `accounted` is the part that the log explains (garnishes,
    juice, batches), None if nobody logs it; `unexplained` is the rest. `surplus` is the excess over what can
    be there: a wrong count or a delivery that was not logged.
    """

    used: Decimal
    accounted: Decimal | None
    unexplained: Decimal | None
    surplus: Decimal


@dataclass(frozen=True, slots=True)
class Comparison:
    """Two periods compared by daily amounts, later against earlier.

    `change_per_day` is later minus earlier and `change_range` the range of the true change at the given
    confidence (None when a period has a single day). `change_share` is the change as a share of the earlier
    (-0.4 for 40 % less), None when the earlier was zero and with fewer than FEWEST_DAYS on either side.
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
    """Return the use of fruit from `bought`, `before` (on hand at the start), waste and what is left.

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
    # Fruit logged as used but never on hand is a surplus too, not a negative loss.
    surplus += max(accounted - used, Decimal(0))
    return FruitUse(used, accounted, max(used - accounted, Decimal(0)), surplus)


def waste_share(waste: Decimal, bought: Decimal) -> Decimal | None:
    """Return waste as a share (0.2 for a fifth) of the fruit bought; None if none was bought.

    Can exceed 1, when fruit of an earlier delivery went off. Raises OutOfRangeError for a negative amount.
    """
    for name, amount in (("waste", waste), ("bought", bought)):
        if not amount >= 0:
            raise OutOfRangeError(name, float(amount), 0, None, "")
    return None if bought == 0 else waste / bought


def by_day(
    entries: Iterable[tuple[date, Decimal]], first: date, last: date, closed: Set[date] = frozenset()
) -> list[Decimal]:
    """Return the total of each open day from `first` to `last`, both included; 0 for a day without entries.

    A closed day counts only if something was logged on it. Entries outside the period are ignored. Raises
    NoDaysError when no day is left.
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


def compare(now: Sequence[Decimal], before: Sequence[Decimal], confidence: float = 0.95) -> Comparison:
    """Return how the daily amounts of two periods differ, whatever their lengths.

    The range of the change is Welch's interval for two means (B. L. Welch, Biometrika 34, 1947, from memory;
    checked against scipy), its degrees of freedom rounded down. Fewer than FEWEST_DAYS on either side are
    never called clear and have no share. Raises NoDaysError when a period is empty.
    """
    if not now or not before:
        raise NoDaysError
    per_day, per_day_before = _mean(now), _mean(before)
    change = per_day - per_day_before
    spread = _welch(now, before, confidence)
    sureness = Sureness.MAY_BE_CHANCE
    few = min(len(now), len(before)) < FEWEST_DAYS
    if few:
        sureness = Sureness.FEW_DAYS
    elif spread is not None and not spread.low <= 0 <= spread.high:
        sureness = Sureness.CLEAR
    share = change / per_day_before if per_day_before and not few else None
    return Comparison(per_day, per_day_before, len(now), len(before), change, share, spread, sureness)


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
