"""Bottles of a batch: filling, opening one by one, losses, and what is left in how many."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from decimal import Decimal
from fractions import Fraction
from typing import Any

from bot.trade.days import business_day_span
from bot.trade.formulas.amounts import Line
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.formulas.measures import Dimension
from bot.trade.money.cost import PackPrice, cost
from bot.trade.money.money import from_minor, to_minor
from bot.work.batches import batches
from bot.work.batches.batches import BatchState, BatchView
from bot.work.context import Context
from bot.work.errors import BadValueError, WrongStateError
from bot.work.standing import Details, Rows, stands
from storage.tables import Batch, Bottling
from storage.types import exact_text

BOTTLED, OPENED, EMPTIED, LOST, MOVED = "bottled", "opened", "emptied", "lost", "moved"
AT_EVENT = "at event"
KINDS = BOTTLED, OPENED, EMPTIED, LOST, MOVED, AT_EVENT
MOST_BOTTLES = 2000
# More in bottles than was made by this share is a mistake. Common practice, no source.
TOO_MUCH = Fraction(11, 10)


@dataclass(frozen=True, slots=True)
class Size:
    """The bottles of one size: filled in all, unopened, open."""

    size_ml: Fraction
    filled: int
    unopened: int
    open: int


@dataclass(frozen=True, slots=True)
class Left:
    """What is left of a bottled batch: bottles by size, the rest in bulk, and what left it; mL."""

    sizes: tuple[Size, ...]
    bulk_ml: Fraction
    lost_ml: Fraction
    moved_ml: Fraction
    event_ml: Fraction

    @property
    def unopened(self) -> int:
        """The number of unopened bottles."""
        return sum(one.unopened for one in self.sizes)

    @property
    def closed_ml(self) -> Fraction:
        """The contents of the unopened bottles and the rest in bulk."""
        return self.bulk_ml + sum((one.unopened * one.size_ml for one in self.sizes), Fraction(0))

    @property
    def open_ml(self) -> Fraction:
        """The contents of the open bottles when they were opened."""
        return sum((one.open * one.size_ml for one in self.sizes), Fraction(0))


@dataclass(frozen=True, slots=True)
class Filled:
    """A logged bottling: the batch's mL before it, mL filled and lost now, and what is left."""

    before_ml: Fraction
    filled_ml: Fraction
    lost_ml: Fraction
    left: Left


def rows_of(context: Context, numbers: Iterable[int]) -> dict[int, list[Bottling]]:
    """Return the valid rows of some batches, in their order."""
    where = Bottling.batch_id.in_(list(numbers)), stands(Bottling)
    found: dict[int, list[Bottling]] = {}
    for row in context.book.all(Bottling, *where, order=Bottling.first):
        found.setdefault(row.batch_id, []).append(row)
    return found


def left_of(total_ml: Fraction, rows: Sequence[Bottling]) -> Left:
    """Return what is left by the rows of a batch."""
    counts: dict[Fraction, dict[str, int]] = {}
    for row in rows:
        if row.size_ml is not None:
            kinds = counts.setdefault(row.size_ml, dict.fromkeys(KINDS, 0))
            kinds[row.what] += row.bottles
    sizes = tuple(
        Size(
            size,
            one[BOTTLED],
            one[BOTTLED] - one[OPENED] - one[LOST] - one[MOVED] - one[AT_EVENT],
            one[OPENED] - one[EMPTIED],
        )
        for size, one in sorted(counts.items())
    )
    filled = sum((size * one[BOTTLED] for size, one in counts.items()), Fraction(0))
    loose = sum((_loose_ml(row) for row in rows), Fraction(0))
    gone = (gone_ml(rows, what) for what in (LOST, MOVED, AT_EVENT))
    return Left(sizes, max(Fraction(0), total_ml - filled - loose), *gone)


def gone_ml(rows: Sequence[Bottling], *whats: str) -> Fraction:
    """Return the mL that the rows of these kinds took out of a batch."""
    return sum((_ml(row) for row in rows if row.what in whats), Fraction(0))


def here_ml(context: Context, row: Batch) -> Fraction:
    """Return the mL of a batch less what moved to other bars."""
    return max(Fraction(0), row.total_ml - gone_ml(rows_of(context, [row.id]).get(row.id, ()), MOVED))


def unopened(context: Context, numbers: Iterable[int]) -> dict[int, list[Size]]:
    """Return the sizes with unopened bottles of some batches."""
    known = {number: left_of(Fraction(0), rows) for number, rows in rows_of(context, numbers).items()}
    return {number: [one for one in found.sizes if one.unopened] for number, found in known.items()}


def left(context: Context, number: int) -> Left | None:
    """Return what is left of a batch, None if nothing about bottles or losses was logged."""
    rows = rows_of(context, [number]).get(number)
    return None if rows is None else left_of(batches.row_of(context, number).total_ml, rows)


def left_in(context: Context, batch: Batch | BatchView) -> Left:
    """Return what is left of a batch, whether or not anything about bottles or losses was logged."""
    number = batch.id if isinstance(batch, Batch) else batch.number
    return left_of(batch.total_ml, rows_of(context, [number]).get(number, ()))


def bottle(
    context: Context, number: int, filled: Sequence[tuple[int, Fraction]], lost_ml: Fraction
) -> Filled:
    """Log bottles filled from a batch and the loss. Raises NotThereError, WrongStateError, BadValueError."""
    row = open_row(context, number)
    amount = sum((count * size for count, size in filled), Fraction(0))
    before = left_in(context, row).bulk_ml
    if any(not 0 < count <= MOST_BOTTLES or size <= 0 for count, size in filled) or lost_ml < 0:
        raise BadValueError("amount", "")
    if amount + lost_ml > before * TOO_MUCH:
        raise BadValueError("amount", exact_text(amount + lost_ml))
    added = [add(context, number, BOTTLED, count, size).id for count, size in filled]
    if lost_ml:
        cost_minor = minor_cost(context, row, lost_ml)
        added.append(add(context, number, LOST, lost_ml=lost_ml, cost_minor=cost_minor).id)
    about: Details = {"batch": number, "name": row.frozen["formula"], "rows": added}
    bottles = sum(count for count, _size in filled)
    context.log("bottled", **about, bottles=bottles, lost=exact_text(lost_ml))
    now = left(context, number)
    assert now is not None  # noqa: S101 - rows were just added
    return Filled(before, amount, lost_ml, now)


@dataclass(frozen=True, slots=True)
class Lost:
    """A logged loss of a batch: its mL, its cost at the prices kept with the batch, and what is left."""

    ml: Fraction
    cost: Decimal | None
    left: Left


def held_ml(context: Context, batch: Batch | BatchView) -> Fraction:
    """Return the mL of a batch in its vessel, in unopened and in open bottles."""
    there = left_in(context, batch)
    return there.closed_ml + there.open_ml


def spill(context: Context, number: int, lost_ml: Fraction, note: str = "") -> Lost:
    """Log what was spilt of a batch or has evaporated.

    Raises NotThereError, WrongStateError, BadValueError.
    """
    row = open_row(context, number)
    if not 0 < lost_ml <= held_ml(context, row):
        raise BadValueError("amount", exact_text(lost_ml))
    return _lost(context, row, lost_ml, note, lost_ml=lost_ml)


def break_bottles(context: Context, number: int, count: int, note: str = "") -> Lost:
    """Log unopened bottles that were broken or thrown out. Raises as `spill` does."""
    row = open_row(context, number)
    sizes = [one for one in left_in(context, row).sizes if one.unopened >= count > 0]
    if not sizes:
        raise BadValueError("amount", str(count))
    size = max(sizes, key=lambda one: one.unopened).size_ml
    return _lost(context, row, count * size, note, count=count, size_ml=size)


def use_at_event(context: Context, row: Batch, ml: Fraction) -> list[int]:
    """Add rows for what an event used of a batch; return their numbers.

    It is taken from what is not bottled if that is enough, else from unopened bottles first.
    Raises BadValueError for more than is unopened or not bottled.
    """
    there = left_in(context, row)
    if not 0 < ml <= there.closed_ml:
        raise BadValueError("amount", exact_text(ml))
    added = []
    sizes = there.sizes if ml > there.bulk_ml else ()
    for one in sorted(sizes, key=lambda size: size.unopened, reverse=True):
        count = min(one.unopened, math.ceil(ml / one.size_ml))
        if count:
            used = min(ml, count * one.size_ml)
            added.append(add(context, row.id, AT_EVENT, count, one.size_ml, moved_ml=used).id)
            ml -= used
    if ml:
        added.append(add(context, row.id, AT_EVENT, moved_ml=ml).id)
    return added


def _lost(context: Context, row: Batch, ml: Fraction, note: str, **what: Any) -> Lost:
    minor = minor_cost(context, row, ml)
    added = add(context, row.id, LOST, note=note[:1000], cost_minor=minor, **what)
    about: Details = {"batch": row.id, "name": row.frozen["formula"], "rows": [added.id]}
    context.log("spilt", **about, lost=exact_text(ml))
    now = left(context, row.id)
    assert now is not None  # noqa: S101 - a row was just added
    return Lost(ml, None if minor is None else from_minor(minor, context.bar.currency), now)


def minor_cost(context: Context, row: Batch, ml: Fraction) -> int | None:
    """Return the cost of some mL of a batch in the currency's minor units, None where a price is missing."""
    found = cost_of(row, ml)
    return None if found is None else to_minor(found, context.bar.currency)


def cost_of(row: Batch, ml: Fraction) -> Decimal | None:
    """Return the cost of some mL of a batch at the prices kept with it, None where one is missing."""
    lines = row.frozen["lines"]
    packs = {
        one["name"]: PackPrice(
            Fraction(one["price"]["pack"]),
            Dimension(one["price"]["dimension"]),
            Decimal(one["price"]["price"]),
        )
        for one in lines
        if one.get("price")
    }
    packs |= {
        one["name"]: PackPrice(Fraction(1), Dimension.VOLUME, Decimal(0))
        for one in lines
        if one["kind"] == IngredientKind.WATER and one["name"] not in packs
    }
    found = cost(
        [Line(one["name"], Fraction(one["amount"]), Dimension(one["dimension"])) for one in lines],
        packs,
        densities_g_per_ml={
            one["name"]: Fraction(one["density_g_per_ml"]) for one in lines if one.get("density_g_per_ml")
        },
        finished_ml=row.total_ml,
    )
    if found.is_partial or found.per_ml is None:
        return None
    return found.per_ml * ml.numerator / ml.denominator


def gone_between(context: Context, what: str, first: date, last: date) -> tuple[Fraction, Decimal]:
    """Return the mL of batches lost or moved on some business days, and the cost where it is known."""
    begin, end = span_of(context, first, last)
    where = Bottling.what == what, Bottling.at >= begin, Bottling.at < end, stands(Bottling)
    rows = context.book.all(Bottling, *where)
    minor = sum(row.cost_minor or 0 for row in rows)
    return gone_ml(rows, what), from_minor(minor, context.bar.currency)


def span_of(context: Context, first: date, last: date) -> tuple[datetime, datetime]:
    """Return the instants between which some business days lie."""
    bar = context.bar
    begin, _end = business_day_span(first, bar.zone, bar.closing_minute)
    _begin, end = business_day_span(last, bar.zone, bar.closing_minute)
    return begin, end


def _ml(row: Bottling) -> Fraction:
    beside = (row.lost_ml or 0) + (row.moved_ml or Fraction(0))
    return beside if row.what == AT_EVENT else beside + row.bottles * (row.size_ml or 0)


def _loose_ml(row: Bottling) -> Fraction:
    """Return what a row took of what is not bottled; below 0 where an event left some of its last bottle."""
    beside = (row.lost_ml or 0) + (row.moved_ml or Fraction(0))
    return beside - row.bottles * (row.size_ml or 0) if row.what == AT_EVENT else beside


def open_row(context: Context, number: int) -> Batch:
    """Return the row of an unfinished batch. Raises NotThereError, WrongStateError."""
    row = batches.row_of(context, number)
    if not BatchState(row.state).open:
        raise WrongStateError(number, row.state)
    return row


def add(
    context: Context,
    number: int,
    what: str,
    count: int = 0,
    size_ml: Fraction | None = None,
    **more: Any,
) -> Bottling:
    """Add a row about bottles of a batch."""
    row: Bottling = context.book.add(
        Bottling(
            batch_id=number,
            what=what,
            bottles=count,
            size_ml=size_ml,
            **more,
            at=context.now,
            by=context.person_id,
        )
    )
    return row


# -- one bottle after the other --------------------------------------------------------------------


def take_one(context: Context, number: int) -> int | None:
    """Take an unopened bottle, of the size with the most of them; return its row, None if there is none."""
    found = left(context, number)
    if found is None or not found.unopened:
        return None
    size = max(found.sizes, key=lambda one: one.unopened).size_ml
    return add(context, number, OPENED, 1, size).id


def empty_one(context: Context, number: int) -> int | None:
    """Note that the open bottle is empty; return its row, or None where no other bottle is left."""
    found = left(context, number)
    if found is None or not (found.unopened or found.bulk_ml >= 1):
        return None
    size = next((one.size_ml for one in found.sizes if one.open), None)
    return None if size is None else add(context, number, EMPTIED, 1, size).id


ROWS = Rows(Bottling, "rows")


def logged_in(context: Context, details: Details) -> list[Bottling]:
    """Return the rows of a log entry."""
    return ROWS.of(context, details)


@dataclass(frozen=True, slots=True)
class Emptied:
    """A bottle from opening to emptying, with its content in mL."""

    opened_at: datetime
    emptied_at: datetime
    ml: Fraction

    @property
    def lasted(self) -> timedelta:
        """How long it lasted."""
        return self.emptied_at - self.opened_at


def emptied(rows: Sequence[Bottling], ended_at: datetime | None) -> list[Emptied]:
    """Return the bottles of a batch that were used up, in their order; the last ends with the batch."""
    found: list[Emptied] = []
    open_ones: list[Bottling] = []
    for row in rows:
        if row.what == OPENED:
            open_ones.append(row)
        elif row.what == EMPTIED and open_ones:
            first = open_ones.pop(0)
            found.append(Emptied(first.at, row.at, first.size_ml or Fraction(0)))
    if ended_at is not None:
        found += [Emptied(one.at, ended_at, one.size_ml or Fraction(0)) for one in open_ones]
    return found
