"""Nights without waste: the answer to the prompt at closing, its undo, and the nights that have it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date, timedelta
from typing import Any

from bot.work.context import Context
from bot.work.errors import NotThereError
from bot.work.reminders import planning
from bot.work.reminders.planning import CLOSE, ReminderState
from bot.work.standing import Details, Value
from storage.tables import Reminder
from storage.unit import Book

_NEXT_MORNING = timedelta(hours=12)  # so long a prompt is answered as tonight's. Common practice, no source.


def asked_tonight(context: Context) -> int | None:
    """Return the number of the waste prompt sent for this night, or None."""
    sent = (Reminder.kind == CLOSE, Reminder.sent_at.is_not(None))
    last = context.book.one(Reminder, *sent, order=Reminder.id.desc())
    if last is None or last.sent_at is None:
        return None
    this = last.details["day"] == context.today.isoformat() or context.now - last.sent_at < _NEXT_MORNING
    return last.id if this else None


def unasked(context: Context) -> bool:
    """Log this night as one without waste before the prompt; False if it already is one."""
    if without_waste(context, context.today, context.today):
        return False
    day = context.today.isoformat()
    key = f"{CLOSE}:{day}:said"
    row = planning.put(context.book, key, CLOSE, context.now, details={"day": day}, revive=True)
    row.state, row.done_by = ReminderState.DONE, context.person_id
    context.log("no waste", day=day, before=[[row.id, str(ReminderState.CANCELLED)]], after=_states([row]))
    return True


def without_waste(context: Context, first: date, last: date) -> frozenset[date]:
    """Return the business days from first to last for which somebody said that nothing was thrown out."""
    return frozenset(day for day in _days(context.book) if first <= day <= last)


def is_without_waste(book: Book, day: date) -> bool:
    """Whether somebody said that nothing was thrown out on a business day."""
    return day in _days(book)


def _days(book: Book) -> Iterator[date]:
    rows = book.all(Reminder, Reminder.kind == CLOSE, Reminder.state == ReminderState.DONE)
    return (date.fromisoformat(row.details["day"]) for row in rows)


def done(context: Context, number: int) -> str | None:
    """Mark a reminder as done and log the night without waste where it was a prompt at closing.

    Returns its kind, or None if it already was done. Raises NotThereError.
    """
    row = _row(context, number)
    prompts = planning.copies(context.book, row)
    before = _states(prompts)
    kind = planning.done(context, number)
    if kind == CLOSE:
        context.log("no waste", day=row.details["day"], before=before, after=_states(prompts))
    return kind


def _row(context: Context, number: int) -> Reminder:
    row = context.book.get(Reminder, number)
    if row is None:
        raise NotThereError("reminder", str(number))
    return row


def _states(prompts: Sequence[Reminder]) -> list[list[Any]]:
    return [[row.id, str(row.state)] for row in prompts]


def _read(context: Context, details: Details) -> list[list[Any]]:
    return _states([_row(context, number) for number, _state in details["before"]])


def _write(context: Context, details: Details, states: Sequence[Sequence[Any]]) -> None:
    for number, state in states:
        row = _row(context, number)
        row.state = state
        row.done_by = context.person_id if state == ReminderState.DONE else None


NO_WASTE = Value(_read, _write)
