"""Move bottles of a batch, or an amount of it, to another bar of the same person."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from fractions import Fraction

from bot.trade.money.money import from_minor
from bot.work.batches import arriving, batch_undo, batches, bottles
from bot.work.batches.arriving import Part
from bot.work.batches.batch_life import note_event, state_of
from bot.work.batches.batches import BatchState
from bot.work.batches.bottles import MOVED, Left
from bot.work.context import Context
from bot.work.errors import BadValueError, ChangedSinceError, NotManagedError, WrongStateError
from bot.work.people import other_bars
from bot.work.reminders import planning
from bot.work.standing import Details
from storage.tables import Batch, BatchEvent, Entry
from storage.types import exact_text

_NOTHING = 1  # mL: less than this is what sticks to the glass


@dataclass(frozen=True, slots=True)
class Moved:
    """A logged move: the receiving bar, the batch's number there, what it cost, and what is left here."""

    to: str
    number: int
    cost: Decimal | None
    left: Left


def lacks_formula(context: Context, number: int, bar_id: int) -> bool:
    """Whether the other bar does not have the formula of a batch. Raises as `move` does."""
    there = other_bars.at(context, bar_id)
    formula_id = batches.row_of(context, number).formula_id
    return arriving.formula_there(context, there, formula_id) is None


def move(context: Context, number: int, part: Part, bar_id: int, note: str) -> Moved:
    """Move a part of a batch to another bar; `note` says what moves.

    Raises NotAllowedError, NotManagedError, NotThereError, WrongStateError for a finished batch, one of a
    trial or one still to strain, and BadValueError for more than is left.
    """
    there = other_bars.at(context, bar_id)
    other_bars.hold(context, there)
    row = bottles.open_row(context, number)
    if row.frozen.get("trial"):
        raise WrongStateError(number, "in a trial")
    _refuse_too_much(context, row, part)
    before = state_of(row)
    cost = bottles.minor_cost(context, row, part.ml)
    bulk = None if part.bottles else part.ml
    added = bottles.add(
        context,
        number,
        MOVED,
        part.bottles,
        part.size_ml,
        moved_ml=bulk,
        cost_minor=cost,
        note=there.bar.name,
    )
    note_event(context, row, "moved", note=f"{note}, {there.bar.name}")
    arrived = arriving.arrive(context, there, row, part)
    now = bottles.left_in(context, row)
    if not now.unopened and not now.open_ml and now.bulk_ml < _NOTHING:
        row.state, row.ended_at = BatchState.MOVED, context.now
        planning.cancel_for_batch(context.book, number)
    about: Details = {"batch": number, "name": row.frozen["formula"], "rows": [added.id]}
    about |= {"to": there.bar.name, "bar": bar_id, "there": arrived.number, "arrival": arrived.entry}
    context.log("moved", **about, **part.as_logged(), before=before, after=state_of(row))
    known = None if cost is None else from_minor(cost, context.bar.currency)
    return Moved(there.bar.name, arrived.number, known, now)


def _refuse_too_much(context: Context, row: Batch, part: Part) -> None:
    there = bottles.left_in(context, row)
    sizes = [one.size_ml for one in there.sizes if one.unopened >= part.bottles > 0]
    fits = part.size_ml in sizes if part.bottles else 0 < part.ml <= there.bulk_ml
    if not fits:
        raise BadValueError("amount", exact_text(part.ml))


# -- undo ------------------------------------------------------------------------------------------


def check(context: Context, details: Details) -> None:
    """Raise NotManagedError, or UsedThereError if the other bar has used some of it."""
    arriving.check(_there(context, details), details["arrival"])


def take_back(context: Context, details: Details) -> Details:
    """Undo a move in both bars. Raises as `check` does."""
    there = _there(context, details)
    other_bars.hold(context, there)
    arriving.take_back(there, details["arrival"])
    bottles.ROWS.take_back(context, details)
    row = batch_undo.on_the_log(context, details["batch"])
    batch_undo.take_back_event(context, row, "moved")
    batch_undo.set_state(context, row, details["before"])
    return {}


def put_back(context: Context, details: Details) -> Details:
    """Move it again. Raises NotManagedError, or ChangedSinceError if less is left here."""
    there = _there(context, details)
    other_bars.hold(context, there)
    row = batch_undo.on_the_log(context, details["batch"])
    size = details["size"]
    part = Part(details["bottles"], None if size is None else Fraction(size), Fraction(details["ml"]))
    try:
        _refuse_too_much(context, bottles.open_row(context, row.id), part)
    except (BadValueError, WrongStateError):
        raise ChangedSinceError from None
    arriving.put_back(there, details["arrival"])
    restored = bottles.ROWS.put_back(context, details)
    batch_undo.put_back_event(context, row, "moved")
    batch_undo.set_state(context, row, details["after"])
    return restored


def _there(context: Context, details: Details) -> Context:
    try:
        return other_bars.at(context, details["bar"])
    except NotManagedError:
        raise NotManagedError(details["to"]) from None


def elsewhere(context: Context, numbers: Iterable[int]) -> dict[int, str]:
    """Return those of some batches that were moved in part from here to another bar, with that bar's name.

    A move that came with an import has no log entry in this bar, and does not count.
    """
    logged = {
        row for entry in context.book.all(Entry, Entry.what == "moved") for row in entry.details["rows"]
    }
    return {
        number: row.note
        for number, rows in bottles.rows_of(context, numbers).items()
        for row in rows
        if row.what == MOVED and row.first in logged
    }


# -- reports ---------------------------------------------------------------------------------------


def came_between(context: Context, first: date, last: date) -> tuple[Fraction, Decimal]:
    """Return the mL that came from other bars on some business days, and their cost where it is known."""
    begin, end = bottles.span_of(context, first, last)
    where = BatchEvent.what == "arrived", BatchEvent.at >= begin, BatchEvent.at < end
    came = [one.batch_id for one in context.book.all(BatchEvent, *where)]
    rows = context.book.all(Batch, Batch.id.in_(came), Batch.state != BatchState.UNDONE)
    costs = [bottles.cost_of(row, row.total_ml) for row in rows]
    ml = sum((row.total_ml for row in rows), Fraction(0))
    return ml, sum((one for one in costs if one is not None), Decimal(0))
