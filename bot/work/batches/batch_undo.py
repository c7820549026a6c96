"""Undo and restore the events of a batch: making, checks, opening, end and lots."""

from __future__ import annotations

from datetime import date, datetime
from fractions import Fraction
from typing import Any

from bot.work import standing
from bot.work.batches import batches, discarding
from bot.work.batches.batch_life import lot_of, state_of
from bot.work.batches.batches import BatchState
from bot.work.context import Context
from bot.work.errors import ChangedSinceError, OffTheLogError
from bot.work.fruit import peeled
from bot.work.reminders import planning
from bot.work.standing import Details, Value
from bot.work.stock import pars
from storage.tables import Batch, BatchEvent, BatchLine

# -- making --------------------------------------------------------------------------------


def take_back_making(context: Context, details: Details) -> Details:
    """Undo the making of a batch: mark it undone, cancel its reminders, and restore its peeled fruit.

    Raises OffTheLogError if it is already undone.
    """
    row = _on_the_log(context, details["batch"])
    state = row.state
    row.state = BatchState.UNDONE
    _take_back_event(context, row, "made")
    planning.cancel_for_batch(context.book, row.id)
    used = peeled.take_back_making(context, row.id)
    _ingredients_changed(context, row)
    return {"state": state, "used": used}


def put_back_making(context: Context, details: Details) -> Details:
    """Restore a batch in its last state. Raises UsedSinceError if its peeled fruit was used elsewhere."""
    row = context.book.get(Batch, details["batch"])
    if row is None or row.state != BatchState.UNDONE:
        raise ChangedSinceError
    peeled.settle_again(context, details["used"])
    row.state = details["state"]
    _put_back_event(context, row, "made")
    if BatchState(row.state).open:
        planning.plan_batch(context.book, context.bar, row, str(row.frozen["formula"]), context.now)
    _ingredients_changed(context, row)
    return {}


def check_making(context: Context, details: Details) -> None:
    """Raise OffTheLogError if the batch is already undone, for example with its trial."""
    _on_the_log(context, details["batch"])


def _on_the_log(context: Context, number: int) -> Batch:
    row = context.book.get(Batch, number)
    if row is None or row.state == BatchState.UNDONE:
        raise OffTheLogError("batch", str(number))
    return row


def _ingredients_changed(context: Context, row: Batch) -> None:
    context.book.touched()  # the checks of its formula are cached
    lines = context.book.all(BatchLine, BatchLine.batch_id == row.id)
    pars.watch(context, [line.ingredient_id for line in lines])


def _take_back_event(context: Context, row: Batch, what: str) -> None:
    """Undo the last valid event of this kind."""
    happened = context.book.all(BatchEvent, BatchEvent.batch_id == row.id, order=BatchEvent.first)
    found = [event for event in batches.standing_events(happened) if event.what == what]
    if found:
        changed = {"what": batches.UNDO, "clarity": None, "photo": None, "by": context.person_id}
        standing.correct(context, found[-1], **changed)


def _put_back_event(context: Context, row: Batch, what: str) -> None:
    """Add a copy of the last event of this kind that was undone."""
    happened = context.book.all(BatchEvent, BatchEvent.batch_id == row.id, order=BatchEvent.id)
    undone = {event.corrects: event for event in happened if event.what == batches.UNDO}
    corrected = {event.corrects for event in happened}
    found = [one for one in happened if one.what == what and one.id in undone]
    found = [one for one in found if undone[one.id].id not in corrected]
    if found:
        event = found[-1]
        changed = {name: getattr(event, name) for name in ("what", "clarity", "note", "photo", "by")}
        standing.correct(context, undone[event.id], **changed)


# -- checks, opening and end ---------------------------------------------------------------

_EVENTS = {"check": "check", "open batch": "opened", "use up": "used up", "discard": "discarded"}


def moved(what: str) -> Value:
    """Return how to undo and restore a check, an opening or an end: by the state of the batch."""

    def read(context: Context, details: Details) -> Any:
        return state_of(_on_the_log(context, details["batch"]))

    def write(context: Context, details: Details, state: Any) -> None:
        row = _on_the_log(context, details["batch"])
        back = state == details["before"]
        _set_state(context, row, state)
        (_take_back_event if back else _put_back_event)(context, row, _EVENTS[what])
        context.book.touched()
        if BatchState(row.state).open:
            planning.plan_batch(context.book, context.bar, row, str(row.frozen["formula"]), context.now)
        else:
            planning.cancel_for_batch(context.book, row.id)

    return Value(read, write)


def _set_state(context: Context, row: Batch, state: Details) -> None:
    zone = context.now.tzinfo
    row.state, row.clarity = state["state"], state["clarity"]
    row.opened_at = None if state["opened_at"] is None else datetime.fromtimestamp(state["opened_at"], zone)
    row.ended_at = None if state["ended_at"] is None else datetime.fromtimestamp(state["ended_at"], zone)
    row.lost_ml = None if state["lost_ml"] is None else Fraction(state["lost_ml"])
    row.lost_reason = state["lost_reason"]
    discarding.renew(context, row)


# -- lots ----------------------------------------------------------------------------------


def _lot_line(context: Context, details: Details) -> BatchLine:
    _on_the_log(context, details["batch"])
    line = context.book.get(BatchLine, details["batch"], details["position"])
    if line is None:
        raise OffTheLogError("batch", str(details["batch"]))
    return line


def _read_lot(context: Context, details: Details) -> Any:
    line = _lot_line(context, details)
    return lot_of(line) if isinstance(details.get("before"), list) else line.lot  # an old entry has no expiry


def _write_lot(context: Context, details: Details, lot: Any) -> None:
    line = _lot_line(context, details)
    if isinstance(lot, list):
        line.lot, line.best_before = lot[0], None if lot[1] is None else date.fromisoformat(lot[1])
    else:
        line.lot = lot
    discarding.renew(context, batches.row_of(context, line.batch_id))


LOT = Value(_read_lot, _write_lot)
