"""The thread of a talk: what a person logged last in a chat, tonight or before."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta
from typing import Any

from bot.work.batches.batches import BatchState
from bot.work.context import Context
from bot.work.errors import OffTheLogError
from bot.work.log import chain
from bot.work.log.chain import UNDO_HOURS, State
from bot.work.log.kinds import KINDS
from bot.work.reminders.planning import ReminderState
from storage.tables import (
    Batch,
    BatchEvent,
    Delivery,
    DrinksCount,
    Entry,
    Juicing,
    PeeledFruit,
    Reminder,
    StockCount,
    Waste,
)

_MOST = 40  # entries looked at: more than one night of one person in one chat
# For each kind whose rows have a business day: the table, and the detail with the row's number.
_DAYS: dict[str, tuple[type[Any], str]] = {
    "waste": (Waste, "rows"),
    "drinks": (DrinksCount, "rows"),
    "peeled": (PeeledFruit, "peeled"),
    "juiced": (Juicing, "juicing"),
    "count stock": (StockCount, "row"),
    "buy stock": (Delivery, "row"),
}


def tonight(context: Context, chat: str) -> list[State]:
    """Return what the person logged in this chat on this business day and what still stands, newest first.

    `chat` is the beginning of the keys of all messages in the chat.
    """
    found = _logged(context, Entry.source.startswith(chat, autoescape=True))
    return [one for one in found if _day(context, one) == context.today]


def before(context: Context) -> State | None:
    """Return the last thing that the person logged in any chat and that can still be changed."""
    return next(iter(_logged(context)), None)


def ends_with_undo(context: Context, chat: str) -> bool:
    """Whether the last thing that the person did in this chat was to undo something."""
    mine = Entry.by == context.person_id, Entry.source.startswith(chat, autoescape=True)
    query = context.book.select(Entry).where(*mine).order_by(Entry.id.desc()).limit(1)
    last = context.book.session.scalars(query).first()
    return last is not None and last.what == chain.UNDO


def _logged(context: Context, *where: Any) -> list[State]:
    since = context.now - timedelta(hours=UNDO_HOURS)
    mine = Entry.by == context.person_id, Entry.at >= since, *where
    query = context.book.select(Entry).where(*mine).order_by(Entry.id.desc()).limit(_MOST)
    roots = dict.fromkeys(one.chain or one.id for one in context.book.session.scalars(query))
    states = chain.states(context, list(roots))
    return [one for one in map(states.get, roots) if one is not None and _stands(context, one)]


def _stands(context: Context, found: State) -> bool:
    if not found.stands or found.what not in KINDS or found.root.by != context.person_id:
        return False
    try:
        found.kind.look(context, found.details)
    except OffTheLogError:
        return False  # undone together with its batch or trial
    return True


def _day(context: Context, found: State) -> date:
    return context.bar.day_of(found.last.at)


def day_of(context: Context, found: State) -> date | None:
    """Return the business day that an entry is about, or None for the day on which it was logged."""
    if found.what not in _DAYS:
        return None
    table, name = _DAYS[found.what]
    numbers = found.details[name]
    row = context.book.get(table, numbers[0] if isinstance(numbers, list) else numbers)
    return None if row is None or row.business_day == _day(context, found) else row.business_day


def asked_about(context: Context) -> Sequence[int]:
    """Return the batches that a reminder of this business day asked the person about, newest first."""
    since = context.now - timedelta(hours=UNDO_HOURS)
    sent = (
        Reminder.state == ReminderState.SENT,
        Reminder.kind.in_(("rested", "recheck")),
        Reminder.sent_at >= since,
        Reminder.batch_id.is_not(None),
    )
    rows = context.book.all(Reminder, *sent, order=Reminder.sent_at.desc())
    return list(dict.fromkeys(one.batch_id for one in rows if one.batch_id and _waits(context, one)))


def _waits(context: Context, asked: Reminder) -> bool:
    """Whether nobody has looked at the batch since tonight's reminder."""
    batch = context.book.get(Batch, asked.batch_id or 0)
    if batch is None or batch.state != BatchState.RESTING or asked.sent_at is None:
        return False
    if context.bar.day_of(asked.sent_at) != context.today:
        return False
    looked = BatchEvent.batch_id == batch.id, BatchEvent.what == "check", BatchEvent.at >= asked.sent_at
    return context.book.one(BatchEvent, *looked) is None
