"""Share the stock of a preparation among coming events and the bar's usual use until then.

Amounts are mL. Dates are business days. An event takes its share on the day before, when it is packed.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

# Less than this of a batch is not worth packing. Common practice, no source.
LEAST_ML = 10.0


@dataclass(frozen=True, slots=True)
class Lot:
    """The contents of a batch, unopened and open, the day it is ready (None: now) and its last day.

    `kept_for` is the event that it was made for, None if it is for any use.
    """

    batch: int
    closed_ml: float
    open_ml: float
    ready_on: date | None
    last_day: date
    kept_for: int | None = None


@dataclass(frozen=True, slots=True)
class Wanted:
    """The amount that an event wants on its day."""

    event: int
    day: date
    ml: float


@dataclass(frozen=True, slots=True)
class Share:
    """The amount that an event takes from a batch."""

    event: int
    batch: int
    ml: float


def pack_day(day: date, today: date) -> date:
    """Return the day on which an event is packed."""
    return max(today, day - timedelta(days=1))


def allot(
    lots: Sequence[Lot], wanted: Sequence[Wanted], usual: Callable[[date], float], today: date
) -> list[Share]:
    """Return what each event takes from each batch that is ready when it is packed and good on its day.

    The usual use until then comes first: from open bottles, then from the earliest last day. Nothing is taken
    twice, and what was made for an event serves nothing else.
    """
    order = sorted(lots, key=lambda lot: (lot.last_day, lot.batch))
    closed = {lot.batch: lot.closed_ml for lot in order}
    opened = {lot.batch: lot.open_ml for lot in order}
    shares: list[Share] = []
    day = today
    for event in sorted(wanted, key=lambda one: (one.day, one.event)):
        while day < pack_day(event.day, today):
            _pour(order, closed, opened, day, usual(day))
            day += timedelta(days=1)
        shares += _taken(order, closed, event, today)
    return shares


def _is_ready(lot: Lot, day: date) -> bool:
    return lot.ready_on is None or lot.ready_on <= day


def _pour(
    order: Sequence[Lot], closed: dict[int, float], opened: dict[int, float], day: date, wanted: float
) -> None:
    for left in (opened, closed):
        for lot in order:
            if lot.kept_for is None and lot.last_day >= day and _is_ready(lot, day):
                poured = min(left[lot.batch], wanted)
                left[lot.batch] -= poured
                wanted -= poured


def _taken(order: Sequence[Lot], closed: dict[int, float], event: Wanted, today: date) -> list[Share]:
    wanted, shares = event.ml, []
    own_first = sorted(order, key=lambda lot: lot.kept_for is None)
    for lot in own_first:
        usable = lot.kept_for in {None, event.event} and lot.last_day >= event.day
        if usable and _is_ready(lot, pack_day(event.day, today)):
            ml = min(closed[lot.batch], wanted)
            if ml >= min(LEAST_ML, event.ml):
                closed[lot.batch] -= ml
                wanted -= ml
                shares.append(Share(event.event, lot.batch, ml))
    return shares
