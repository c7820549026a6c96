"""Nights without waste: the answer to the prompt at closing, its undo, and the nights that have it."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from typing import Any

from bot.work.context import Context
from bot.work.errors import NotThereError
from bot.work.reminders import planning
from bot.work.reminders.planning import ReminderState
from bot.work.standing import Details, Value
from storage.tables import Reminder

CLOSE = "close"  # asks what was thrown out; done is a night without waste


def last_close(context: Context) -> int | None:
    """Return the number of the last waste prompt sent, or None."""
    asked = (Reminder.kind == CLOSE, Reminder.sent_at.is_not(None))
    rows = context.book.all(Reminder, *asked, order=Reminder.id.desc())
    return rows[0].id if rows else None


def without_waste(context: Context, first: date, last: date) -> frozenset[date]:
    """Return the business days from first to last for which somebody said that nothing was thrown out."""
    asked = (Reminder.kind == CLOSE, Reminder.state == ReminderState.DONE)
    days = (date.fromisoformat(row.details["day"]) for row in context.book.all(Reminder, *asked))
    return frozenset(day for day in days if first <= day <= last)


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
