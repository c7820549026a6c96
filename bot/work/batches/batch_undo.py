"""Undo and restore the events of a batch: making, checks, straining, opening, end and lots."""

from __future__ import annotations

from datetime import date, datetime
from fractions import Fraction
from typing import Any

from bot.work import standing
from bot.work.batches import amending, batches, bottles, discarding
from bot.work.batches.batch_life import lot_of, set_strained, state_of, strained_of
from bot.work.batches.batches import BatchState
from bot.work.context import Context
from bot.work.errors import ChangedSinceError, MovedSinceError, OffTheLogError
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
    row = on_the_log(context, details["batch"])
    state = row.state
    row.state = BatchState.UNDONE
    take_back_event(context, row, "made")
    planning.cancel_for_batch(context.book, row.id)
    used = peeled.take_back_making(context, row.id)
    _ingredients_changed(context, row)
    return {"state": state, "used": used}


def take_back_made(context: Context, details: Details) -> Details:
    """Undo the making of a batch of this bar. Raises as `check_making` does."""
    check_making(context, details)
    return take_back_making(context, details)


def put_back_making(context: Context, details: Details) -> Details:
    """Restore a batch in its last state. Raises UsedSinceError if its peeled fruit was used elsewhere."""
    row = context.book.get(Batch, details["batch"])
    if row is None or row.state != BatchState.UNDONE:
        raise ChangedSinceError
    peeled.settle_again(context, details["used"])
    row.state = details["state"]
    put_back_event(context, row, "made")
    if BatchState(row.state).open:
        planning.plan_batch(context.book, context.bar, row, str(row.frozen["formula"]), context.now)
    _ingredients_changed(context, row)
    return {}


def check_making(context: Context, details: Details) -> None:
    """Raise OffTheLogError if the batch is undone, MovedSinceError if some of it is in another bar."""
    on_the_log(context, details["batch"])
    for one in bottles.rows_of(context, [details["batch"]]).get(details["batch"], ()):
        if one.what == bottles.MOVED:
            raise MovedSinceError(one.note)


def look_at_batch(context: Context, details: Details) -> None:
    """Raise OffTheLogError if the batch of an entry is undone, for example with its trial."""
    on_the_log(context, details["batch"])


def on_the_log(context: Context, number: int) -> Batch:
    """Return the row of a batch. Raises OffTheLogError if it is undone."""
    row = context.book.get(Batch, number)
    if row is None or row.state == BatchState.UNDONE:
        raise OffTheLogError("batch", str(number))
    return row


def _ingredients_changed(context: Context, row: Batch) -> None:
    context.book.touched()  # the checks of its formula are cached
    lines = context.book.all(BatchLine, BatchLine.batch_id == row.id)
    pars.watch(context, [line.ingredient_id for line in lines])


def take_back_event(context: Context, row: Batch, what: str) -> None:
    """Undo the last valid event of this kind."""
    happened = context.book.all(BatchEvent, BatchEvent.batch_id == row.id, order=BatchEvent.first)
    found = [event for event in batches.standing_events(happened) if event.what == what]
    if found:
        changed: dict[str, Any] = {"what": batches.UNDO, "clarity": None, "photo": None, "mix_before": None}
        changed["by"] = context.person_id
        standing.correct(context, found[-1], **changed)


def put_back_event(context: Context, row: Batch, what: str) -> None:
    """Add a copy of the last event of this kind that was undone."""
    happened = context.book.all(BatchEvent, BatchEvent.batch_id == row.id, order=BatchEvent.id)
    corrected = {event.corrects for event in happened}
    undone = {one.corrects: one for one in happened if one.what == batches.UNDO and one.id not in corrected}
    found = [event for event in happened if event.what == what and event.id in undone]
    if found:
        event = found[-1]
        kept = ("what", "clarity", "note", "photo", "temperature_c", "mix_before", "by")
        changed = {name: getattr(event, name) for name in kept}
        standing.correct(context, undone[event.id], **changed)


# -- checks, opening and end ---------------------------------------------------------------

_EVENTS = {
    "check": "check",
    "open batch": "opened",
    "use bottle": "emptied",
    "use up": "used up",
    "discard": "discarded",
    "add to batch": "added",
    "filter": "filtered",
}


def changed(what: str) -> Value:
    """Return how to undo and restore an event: by the state of the batch, and its content if that changed."""

    def read(context: Context, details: Details) -> Any:
        row = on_the_log(context, details["batch"])
        content = amending.content_of(context, row) if what in amending.KINDS else {}
        return state_of(row) | content

    def write(context: Context, details: Details, state: Any) -> None:
        row = on_the_log(context, details["batch"])
        back = state == details["before"]
        if what in amending.KINDS:
            amending.set_content(context, row, state)
        set_state(context, row, state)
        (take_back_event if back else put_back_event)(context, row, _EVENTS[what])
        if "rows" in details:
            (bottles.ROWS.take_back if back else bottles.ROWS.put_back)(context, details)
        context.book.touched()

    return Value(read, write)


def set_state(context: Context, row: Batch, state: Details) -> None:
    """Write the state of a batch as the log stores it, and plan its reminders by it."""
    zone = context.now.tzinfo
    row.state, row.clarity = state["state"], state["clarity"]
    row.opened_at = None if state["opened_at"] is None else datetime.fromtimestamp(state["opened_at"], zone)
    row.ended_at = None if state["ended_at"] is None else datetime.fromtimestamp(state["ended_at"], zone)
    row.lost_ml = None if state["lost_ml"] is None else Fraction(state["lost_ml"])
    row.lost_reason = state["lost_reason"]
    discarding.renew(context, row)
    if BatchState(row.state).open:
        planning.plan_batch(context.book, context.bar, row, str(row.frozen["formula"]), context.now)
    else:
        planning.cancel_for_batch(context.book, row.id)


# -- straining -----------------------------------------------------------------------------


def _read_strained(context: Context, details: Details) -> Any:
    return strained_of(on_the_log(context, details["batch"]))


def _write_strained(context: Context, details: Details, strained: Any) -> None:
    row = on_the_log(context, details["batch"])
    set_strained(context, row, strained)
    (take_back_event if strained == details["before"] else put_back_event)(context, row, "strained")


STRAINED = Value(_read_strained, _write_strained)


# -- lots ----------------------------------------------------------------------------------


def _lot_line(context: Context, details: Details) -> BatchLine:
    on_the_log(context, details["batch"])
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
