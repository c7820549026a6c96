"""What arrived and what was answered, so that a stop at any moment loses nothing and doubles nothing.

An update is written down before it is confirmed to the sender. The transaction that
does what it asks also marks it worked and keeps the replies; when they have been
sent it is marked answered. After a restart the rows in between are taken up again.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import IntEnum
from typing import Any

from sqlalchemy import CursorResult, delete, select, update
from sqlalchemy.dialects import postgresql, sqlite

from storage.store import Store
from storage.tables import Inbox
from storage.unit import Unit

KEEP_HOURS = 48  # longer than the 24 h for which a sender keeps what was not confirmed


class MailState(IntEnum):
    """How far an update has come. The values are stored."""

    WAITING = 0
    WORKED = 1
    ANSWERED = 2
    GIVEN_UP = 3


@dataclass(frozen=True, slots=True)
class Letter:
    """One update that arrived: the sender's number for it, and its text as received."""

    channel: str
    update_id: int
    payload: str
    replies: str | None = None


def take_in(store: Store, letters: Sequence[Letter], now: datetime) -> list[Letter]:
    """Write down what arrived; return only what was not seen before, in order."""
    if not letters:
        return []
    insert: Any = sqlite.insert if store.is_sqlite else postgresql.insert
    rows = [
        {
            "channel": letter.channel,
            "update_id": letter.update_id,
            "payload": letter.payload,
            "state": MailState.WAITING,
            "received_at": now,
            "attempts": 0,
        }
        for letter in letters
    ]
    statement = insert(Inbox).on_conflict_do_nothing().returning(Inbox.update_id)
    with store.writing() as unit:
        fresh = set(unit.session.scalars(statement.values(rows)))
    return [letter for letter in letters if letter.update_id in fresh]


def unfinished(store: Store, channel: str) -> list[Letter]:
    """Return what was written down but not answered, oldest first."""
    query = (
        select(Inbox)
        .where(Inbox.channel == channel, Inbox.state.in_([MailState.WAITING, MailState.WORKED]))
        .order_by(Inbox.update_id)
    )
    with store.reading() as unit:
        return [
            Letter(row.channel, row.update_id, row.payload, row.replies)
            for row in unit.session.scalars(query)
        ]


def mark_worked(unit: Unit, channel: str, update_id: int, replies: str) -> bool:
    """Mark an update worked, with its replies, in the transaction that did the work.

    Returns False when it was worked before: the caller must then change nothing.
    """
    statement = (
        update(Inbox)
        .where(Inbox.channel == channel, Inbox.update_id == update_id, Inbox.state == MailState.WAITING)
        .values(state=MailState.WORKED, replies=replies)
    )
    done: CursorResult[Any] = unit.session.execute(statement)  # type: ignore[assignment]
    return done.rowcount == 1


def mark_answered(store: Store, channel: str, update_ids: Sequence[int]) -> None:
    """Mark updates answered: their replies have been sent, or there was nothing to send."""
    if not update_ids:
        return
    statement = (
        update(Inbox)
        .where(Inbox.channel == channel, Inbox.update_id.in_(update_ids))
        .values(state=MailState.ANSWERED, replies=None)
    )
    with store.writing() as unit:
        unit.session.execute(statement)


def note_failure(store: Store, channel: str, update_id: int, most: int = 3) -> bool:
    """Count a failed attempt; return whether the update is given up for good."""
    with store.writing() as unit:
        row = unit.session.get(Inbox, (channel, update_id))
        if row is None:
            return True
        row.attempts += 1
        if row.attempts >= most:
            row.state = MailState.GIVEN_UP
        return row.state == MailState.GIVEN_UP


def prune(store: Store, now: datetime) -> int:
    """Forget finished updates that are older than any sender would send again; return how many."""
    statement = delete(Inbox).where(
        Inbox.received_at < now - timedelta(hours=KEEP_HOURS),
        Inbox.state.in_([MailState.ANSWERED, MailState.GIVEN_UP]),
    )
    with store.writing() as unit:
        done: CursorResult[Any] = unit.session.execute(statement)  # type: ignore[assignment]
        return done.rowcount
