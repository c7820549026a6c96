"""Reminders and notes that people write themselves, on the rows of all reminders.

A note is never sent: it waits in the state LISTED, is shown from its day on, and is ticked. A repeated
reminder has one waiting row at a time; the next one is planned when it is claimed.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from typing import Any

from bot.trade.days import instant_of, is_service_day, local_time
from bot.work.context import BarView, Context
from bot.work.errors import BadValueError, NotThereError
from bot.work.reminders import nights, planning
from bot.work.reminders.planning import CLOSE, ReminderState
from bot.work.standing import Details, Value
from storage.tables import Batch, Member, Reminder
from storage.types import JsonObject
from storage.unit import Book

OWN, NOTE, MORNING = "own", "note", "today"
FURTHEST = timedelta(days=400)
_LONGEST = 300
_PLANNED = (ReminderState.WAITING, ReminderState.SENDING)


@dataclass(frozen=True, slots=True)
class When:
    """The time of a reminder, and the weekdays on which it is repeated: bit 0 for Monday, 0 for none."""

    due: datetime
    days: int = 0


@dataclass(frozen=True, slots=True)
class Planned:
    """A reminder or a note: its text if a person wrote it, its time and repetition, and its recipient.

    `name` is that of the batch's formula or the ingredient that it is about; `person` is '' for the team.
    """

    id: int
    kind: str
    text: str
    due: datetime
    days: int
    person: str
    batch: int | None
    name: str
    details: JsonObject

    @property
    def undelivered(self) -> bool:
        """Whether it is past due and nobody could have it so far."""
        return planning.UNDELIVERED in self.details


def first_due(bar: BarView, minute: int, days: int, now: datetime) -> datetime:
    """Return the next instant at which the wall clock shows `minute` on one of the weekdays."""
    today = local_time(now, bar.zone).date()
    for ahead in range(8):
        day = today + timedelta(days=ahead)
        due = instant_of(day, minute, bar.zone)
        if is_service_day(day, days) and due > now:
            return due
    raise BadValueError("day", "")


def remind(context: Context, text: str, when: When, person_id: int | None) -> int:
    """Plan a reminder for a person, or for the team (None); return its number. Raises BadValueError."""
    _check(context, when)
    details: JsonObject = {"text": _clean(text), "days": when.days}
    return _planned(context, OWN, when.due, details, person_id)


def note(context: Context, text: str, day: date) -> int:
    """Write a note for a business day; return its number. Raises BadValueError for a past day."""
    if not context.today <= day <= context.today + FURTHEST:
        raise BadValueError("day", day.isoformat())
    due = instant_of(day, context.bar.closing_minute, context.bar.zone)
    return _planned(context, NOTE, due, {"text": _clean(text)}, context.person_id)


def _clean(text: str) -> str:
    clean = " ".join(text.split())
    if not clean or len(clean) > _LONGEST:
        raise BadValueError("text", clean[:40])
    return clean


def _check(context: Context, when: When) -> None:
    if not context.now < when.due <= context.now + FURTHEST:
        raise BadValueError("day", when.due.isoformat())


def _planned(context: Context, kind: str, due: datetime, details: JsonObject, person_id: int | None) -> int:
    row = _add(context, kind, due, details, person_id)
    after = _state(row)
    what = "note" if kind == NOTE else "remind"
    before = [ReminderState.CANCELLED.value, *after[1:]]
    context.log(what, reminder=row.id, text=details["text"], before=before, after=after)
    return row.id


def _add(context: Context, kind: str, due: datetime, details: JsonObject, person_id: int | None) -> Reminder:
    book = context.book
    key = f"{kind}:{book.next_number(f'{kind} reminder')}"
    planning.put(book, key, kind, due, person_id=person_id, details={**details, "series": key})
    row = book.one(Reminder, Reminder.key == key)
    assert row is not None  # noqa: S101 - just written
    if kind == NOTE:
        row.state = ReminderState.LISTED
    elif kind == CLOSE:
        row.state = ReminderState.DONE
    return row


def follow_up(book: Book, bar: BarView, row: Reminder, now: datetime) -> None:
    """Plan the next row of a repeated reminder; after a long stop only the next one that is still to come."""
    days = int(row.details.get("days", 0))
    if not days:
        return
    clock = local_time(row.first_due_at, bar.zone)
    due = first_due(bar, clock.hour * 60 + clock.minute, days, now)
    key = f"{row.details['series']}:{due.isoformat()}"
    said = {name: row.details[name] for name in ("text", "days", "series")}
    planning.put(book, key[:80], OWN, due, person_id=row.person_id, details=said)


# -- the morning message -----------------------------------------------------------------------


def plan_morning(book: Book, bar: BarView, now: datetime) -> None:
    """Plan the next morning message, or cancel the waiting one where the bar wants none."""
    minute = bar.settings.morning_at
    for row in book.all(Reminder, Reminder.kind == MORNING, Reminder.state == ReminderState.WAITING):
        if row.due_at > now:
            row.state = ReminderState.CANCELLED
    if minute is not None:
        due = first_due(bar, minute, bar.settings.service_days, now)
        key = f"{MORNING}:{local_time(due, bar.zone).date().isoformat()}"
        planning.put(book, key, MORNING, due, revive=True)


# -- listing, changing, stopping -----------------------------------------------------------------


def listed(context: Context) -> list[Planned]:
    """Return the undelivered reminders, then the planned ones and the open notes, by time."""
    states = (*_PLANNED, ReminderState.LISTED)
    found = context.book.all(Reminder, Reminder.state.in_(states), order=(Reminder.due_at, Reminder.id))
    views = (_view(context, row) for row in found)
    return sorted(
        (one for one in views if one.undelivered or one.kind != planning.BLOCKED),
        key=lambda one: not one.undelivered,
    )


def notes(context: Context, day: date) -> list[Planned]:
    """Return the open notes for a business day and those before it."""
    end = instant_of(day + timedelta(days=1), context.bar.closing_minute, context.bar.zone)
    where = Reminder.kind == NOTE, Reminder.state == ReminderState.LISTED, Reminder.due_at < end
    return [_view(context, row) for row in context.book.all(Reminder, *where, order=Reminder.due_at)]


def open_rows(context: Context) -> Sequence[Reminder]:
    """Return the rows of own reminders still to come and of open notes."""
    states = (*_PLANNED, ReminderState.LISTED)
    where = Reminder.kind.in_((OWN, NOTE)), Reminder.state.in_(states)
    return context.book.all(Reminder, *where, order=Reminder.id)


def kept_rows(context: Context) -> Sequence[Reminder]:
    """Return the open rows, and those of nights for which somebody said that nothing was thrown out."""
    where = Reminder.kind == CLOSE, Reminder.state == ReminderState.DONE
    return (*open_rows(context), *context.book.all(Reminder, *where, order=Reminder.id))


def bring_in(context: Context, kind: str, text: str, when: When, team: bool, about: str = "") -> int | None:
    """Add a reminder, a note or a night without waste from a file.

    Returns its number, or None where its time is past or the night is known. A night has its day as text.
    """
    if kind == CLOSE:
        day = date.fromisoformat(text)
        known = nights.without_waste(context, day, day)
        return None if known else _add(context, kind, when.due, {"day": text}, None).id
    due, minute = when.due, local_time(when.due, context.bar.zone)
    if kind == OWN and due <= context.now:
        if not when.days:
            return None
        due = first_due(context.bar, minute.hour * 60 + minute.minute, when.days, context.now)
    person_id = None if team else context.person_id
    said: JsonObject = {"text": _clean(text), "days": when.days}
    return _add(context, kind, due, {**said, "about": about} if about else said, person_id).id


def put_for(context: Context, about: str, text: str, when: When, formula: int | None = None) -> None:
    """Plan a reminder that belongs to something else, which is logged with that; past ones are left out."""
    if when.due > context.now:
        person_id = None if context.bar.team_room_id is not None else context.person_id
        said: JsonObject = {"text": _clean(text), "days": 0, "about": about}
        _add(context, OWN, when.due, said if formula is None else {**said, "formula": formula}, person_id)


def switch(context: Context, about: str, on: bool) -> None:
    """Cancel the reminders that belong to something, or plan them again while their time is to come."""
    wanted = ReminderState.CANCELLED if on else ReminderState.WAITING
    for row in context.book.all(Reminder, Reminder.kind == OWN, Reminder.state == wanted):
        if row.details.get("about") == about and row.due_at > context.now:
            row.state = ReminderState.WAITING if on else ReminderState.CANCELLED


def drop(context: Context, numbers: Sequence[int]) -> None:
    """Cancel those of these reminders that are open or stand for a night without waste."""
    for row in kept_rows(context):
        if row.id in numbers:
            row.state = ReminderState.CANCELLED


def get(context: Context, number: int) -> Planned:
    """Return one planned reminder; of a repeated one that was sent, the next. Raises NotThereError."""
    return _view(context, _row(context, number))


def change(context: Context, number: int, when: When) -> Planned:
    """Move a planned reminder to another time. Raises NotThereError, BadValueError."""
    _check(context, when)
    row = _row(context, number)
    before = _state(row)
    row.due_at = row.first_due_at = when.due
    row.details = {name: row.details[name] for name in row.details if name != planning.UNDELIVERED}
    if row.kind == OWN:
        row.details = {**row.details, "days": when.days}
    _log(context, "change reminder", row, before)
    return _view(context, row)


def stop(context: Context, number: int) -> Planned:
    """Cancel a planned reminder. Raises NotThereError."""
    row = _row(context, number)
    before = _state(row)
    row.state = ReminderState.CANCELLED
    _log(context, "stop reminder", row, before)
    return _view(context, row)


def tick(context: Context, number: int) -> Planned:
    """Mark a note as done. Raises NotThereError."""
    row = _row(context, number)
    if row.kind != NOTE:
        raise NotThereError("note", str(number))
    before = _state(row)
    row.state, row.done_by = ReminderState.DONE, context.person_id
    _log(context, "tick", row, before)
    return _view(context, row)


def _row(context: Context, number: int) -> Reminder:
    row = context.book.get(Reminder, number)
    open_states = (*_PLANNED, ReminderState.LISTED)
    if row is not None and row.state not in open_states and row.details.get("series"):
        waiting = context.book.all(Reminder, Reminder.kind == OWN, Reminder.state.in_(_PLANNED))
        row = next((one for one in waiting if one.details["series"] == row.details["series"]), None)
    if row is None or row.state not in open_states:
        raise NotThereError("reminder", str(number))
    return row


def _log(context: Context, what: str, row: Reminder, before: list[Any]) -> None:
    about: Details = {"reminder": row.id, "kind_of": row.kind, "text": row.details.get("text", "")}
    if row.batch_id is not None:
        about["batch"] = row.batch_id
    context.log(what, **about, before=before, after=_state(row))


def _view(context: Context, row: Reminder) -> Planned:
    batch = None if row.batch_id is None else context.book.get(Batch, row.batch_id)
    member = None if row.person_id is None else context.book.get(Member, row.person_id)
    items = planning.low_items(row.details) if row.kind == "low stock" else []
    name = ", ".join(str(one["name"]) for one in items) if batch is None else str(batch.frozen["formula"])
    due = row.first_due_at if planning.UNDELIVERED in row.details else row.due_at
    return Planned(
        row.id,
        row.kind,
        str(row.details.get("text", "")),
        due,
        int(row.details.get("days", 0)) if row.kind == OWN else 0,  # others count the days left
        "" if member is None else member.name,
        row.batch_id,
        name or str(row.details.get("name", "")),
        dict(row.details),
    )


# -- undo ------------------------------------------------------------------------------------------


def _state(row: Reminder) -> list[Any]:
    return [str(row.state), int(row.due_at.timestamp()), int(row.details.get("days", 0))]


def _read(context: Context, details: Details) -> list[Any]:
    row = context.book.get(Reminder, details["reminder"])
    if row is None:
        raise NotThereError("reminder", str(details["reminder"]))
    return _state(row)


def _write(context: Context, details: Details, state: Sequence[Any]) -> None:
    row = context.book.get(Reminder, details["reminder"])
    assert row is not None  # noqa: S101 - it was read before
    row.state = state[0]
    row.due_at = row.first_due_at = datetime.fromtimestamp(state[1], UTC)
    if row.kind == OWN:
        row.details = {**row.details, "days": state[2]}


STATE = Value(_read, _write)


# -- who closes -------------------------------------------------------------------------------------


def closer(context: Context) -> tuple[bool, str]:
    """Return whether waste is asked about tonight, and the name of who closes, '' while nobody does."""
    rows = _close_rows(context)
    names = [str(row.details["closer"]) for row in rows if row.details.get("closer")]
    asks = context.bar.settings.close_prompt and is_service_day(
        context.today, context.bar.settings.service_days
    )
    return asks and bool(rows), names[0] if names else ""


def closes(context: Context, name: str) -> None:
    """Note who closes tonight: the prompt at closing names them. Raises NotThereError without a prompt."""
    if not _close_rows(context):
        raise NotThereError("reminder", "")
    about: Details = {"day": context.today.isoformat()}
    before = _read_closer(context, about)
    _write_closer(context, about, name)
    context.log("closes", **about, name=name, before=before, after=name)


def _close_rows(context: Context, day: str = "") -> Sequence[Reminder]:
    key = f"{CLOSE}:{day or context.today.isoformat()}"
    where = Reminder.kind == CLOSE, Reminder.key.startswith(key), Reminder.state.in_(_PLANNED)
    return context.book.all(Reminder, *where, order=Reminder.id)


def _read_closer(context: Context, details: Details) -> str:
    rows = _close_rows(context, details["day"])
    return str(rows[0].details.get("closer", "")) if rows else ""


def _write_closer(context: Context, details: Details, name: str) -> None:
    for row in _close_rows(context, details["day"]):
        row.details = {**row.details, "closer": name}


CLOSER = Value(_read_closer, _write_closer)
