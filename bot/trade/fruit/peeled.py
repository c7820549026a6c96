"""Storage limits of peeled fruit: the peel went into drinks, and the flesh dries out."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from bot.trade.errors import OutOfRangeError
from bot.trade.sources import PRACTICE, Source


class Keeping(StrEnum):
    """How peeled fruit is stored."""

    COUNTER = "on the counter"
    UNCOVERED = "cold, uncovered"
    WRAPPED = "cold, wrapped tight"


@dataclass(frozen=True, slots=True)
class PeeledClock:
    """Hours from peeling until the fruit counts as lost, and until the reminder.

    `source` is None for the bar's own limit.
    """

    lost_after_hours: Decimal
    remind_after_hours: Decimal
    source: Source | None


# Hours until peeled fruit has dried out too far to juice well. Common practice, no source.
_PEELED_HOURS = {
    Keeping.COUNTER: Decimal(8),
    Keeping.UNCOVERED: Decimal(24),
    Keeping.WRAPPED: Decimal(72),
}


def peeled_clock(
    keeping: Keeping = Keeping.UNCOVERED, hours: Decimal | None = None, warn_hours: Decimal | None = None
) -> PeeledClock:
    """Return the limits of peeled fruit: 8 h on the counter, 24 h cold, 72 h cold and wrapped.

    `hours` is the bar's own limit; the reminder comes `warn_hours` before it, or when a quarter of the time
    is left. Raises OutOfRangeError when a time is not positive or the warning is longer than the limit.
    """
    limit = _PEELED_HOURS[keeping] if hours is None else hours
    if not limit > 0:
        raise OutOfRangeError("hours", float(limit), 0, None, "h")
    warn = limit / 4 if warn_hours is None else warn_hours
    if not 0 <= warn <= limit:
        raise OutOfRangeError("warning", float(warn), 0, float(limit), "h")
    return PeeledClock(limit, limit - warn, PRACTICE if hours is None else None)
