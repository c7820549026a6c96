"""Balance fruit in and out: use, unexplained losses, and the share wasted.

Amounts are fruit by count, but any one unit works (grams, or money of one currency) if it is the same
throughout.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from bot.trade.errors import OutOfRangeError

# Two sums of money have no percentage of change with fewer days than this in either: one week holds every
# weekday once. What the spray changed needs more (trade/savings/before_after.py).
FEWEST_DAYS = 7


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
