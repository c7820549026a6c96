"""The inbox of updates and answers: a stop at any moment loses nothing and repeats nothing.

An update is stored before it is confirmed to the sender, unless it was answered by then and changed nothing.
The transaction that executes it also marks it as worked and keeps the replies; when they have been sent it is
marked as answered. After a restart the rows in between are resumed.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import IntEnum
from functools import cache
from typing import Any

from sqlalchemy import CursorResult, bindparam, case, delete, func, literal, select, update

from storage.store import Store
from storage.tables import Delivery, Entry, Inbox, Person, Waste
from storage.types import JsonObject
from storage.unit import Book, Unit, insertion, of_bar

KEEP_HOURS = 48  # longer than the 24 h for which a sender keeps unconfirmed updates


class MailState(IntEnum):
    """The processing state of an update. The values are stored."""

    WAITING = 0
    WORKED = 1
    ANSWERED = 2
    GIVEN_UP = 3


@dataclass(frozen=True, slots=True)
class Letter:
    """One received update: the sender's number for it, and its raw text."""

    channel: str
    update_id: int
    payload: str
    replies: str | None = None
    chat: str = ""  # messages of one chat are answered in order
    again: bool = False  # another process began it, and its progress is unknown
    sent: int = 0  # the parts of the answer that have left
    received_at: datetime | None = None  # of one that was stored earlier


def take_in(store: Store, letters: Sequence[Letter], now: datetime) -> None:
    """Store an update before it is confirmed to the sender."""
    if not letters:
        return
    rows = [as_row(letter, now, MailState.WAITING) for letter in letters]
    with store.writing() as unit:
        unit.connection.execute(_taking_in(store.is_sqlite), rows)


@cache
def _taking_in(is_sqlite: bool) -> Any:
    return insertion(is_sqlite)(Inbox.__table__).on_conflict_do_nothing()


def taken(store: Store, letter: Letter) -> Letter | None:
    """Return the letter as stored, with its replies if it was worked; None if it is finished."""
    with store.reading() as unit:
        row = unit.session.get(Inbox, (letter.channel, letter.update_id))
        if row is None:
            return letter
        if row.state not in {MailState.WAITING, MailState.WORKED}:
            return None
        return letter_of(row)


def letter_of(row: Any) -> Letter:
    """Return the letter of a row of the inbox."""
    return Letter(
        row.channel,
        row.update_id,
        row.payload,
        row.replies,
        row.chat,
        sent=row.sent_parts,
        received_at=row.received_at,
    )


def adopt(store: Store, channel: str, mailbox: str, now: datetime) -> None:
    """Give what a channel stored before rows named the bot to the mailbox of the bot.

    These are the updates, and the keys of the messages that may still be edited or come again.
    """
    with store.reading() as unit:
        found = unit.session.scalar(select(Inbox.update_id).where(Inbox.channel == channel).limit(1))
    if found is None:
        return
    bot = mailbox.removeprefix(channel).removeprefix(":") + ":"
    here = select(Person.id).where(Person.channel == channel)
    since = now - timedelta(hours=KEEP_HOURS)
    old = Entry.by.in_(here), Entry.at >= since, ~Entry.source.startswith(bot, autoescape=True)
    with store.writing() as unit:
        for table in (Waste, Delivery, Entry):
            keys = update(table).where(table.source.in_(select(Entry.source).where(*old)))
            unit.connection.execute(keys.values(source=literal(bot).concat(table.source)))
        unit.connection.execute(update(Inbox).where(Inbox.channel == channel).values(channel=mailbox))


def waiting(store: Store, channel: str) -> int:
    """Return the number of stored updates without an answer."""
    query = (
        select(func.count())
        .select_from(Inbox)
        .where(Inbox.channel == channel, Inbox.state < MailState.ANSWERED)
    )
    with store.reading() as unit:
        return unit.session.scalar(query) or 0


def oldest_waiting(store: Store, channel: str) -> datetime | None:
    """Return when the oldest stored update without an answer came."""
    query = select(func.min(Inbox.received_at)).where(
        Inbox.channel == channel, Inbox.state < MailState.ANSWERED
    )
    with store.reading() as unit:
        return unit.session.scalar(query)


def unfinished(store: Store, channel: str) -> list[Letter]:
    """Return the stored updates without an answer, oldest first."""
    query = (
        select(Inbox)
        .where(Inbox.channel == channel, Inbox.state.in_([MailState.WAITING, MailState.WORKED]))
        .order_by(Inbox.update_id)
    )
    with store.reading() as unit:
        return [letter_of(row) for row in unit.session.scalars(query)]


def note_sent(store: Store, letter: Letter, replies: str | None, sent: int, now: datetime) -> None:
    """Record how many parts of an answer have left; `replies` are kept if the row has none yet."""
    state = MailState.WAITING if replies is None else MailState.WORKED
    row = {**as_row(letter, now, state, replies), "sent_parts": sent}
    with store.writing() as unit:
        unit.connection.execute(_noting_sent(store.is_sqlite), row)


@cache
def _noting_sent(is_sqlite: bool) -> Any:
    insert = insertion(is_sqlite)(Inbox.__table__)
    given = insert.excluded
    return insert.on_conflict_do_update(
        index_elements=["channel", "update_id"],
        set_={
            "state": case((given.replies.is_not(None), given.state), else_=Inbox.state),
            "replies": func.coalesce(Inbox.replies, given.replies),
            "sent_parts": given.sent_parts,
        },
        where=Inbox.state < MailState.ANSWERED,
    )


def mark_worked(unit: Unit, letter: Letter, replies: str, now: datetime) -> bool:
    """Mark an update worked, with its replies, in the transaction that did the work.

    It may run before take_in, so it inserts a missing row. Returns False if the update was worked before: the
    caller must then change nothing.
    """
    statement = _working(unit.connection.dialect.name == "sqlite")
    return unit.connection.scalar(statement, as_row(letter, now, MailState.WORKED, replies)) is not None


@cache
def _working(is_sqlite: bool) -> Any:
    return _written_over(is_sqlite, Inbox.state == MailState.WAITING).returning(Inbox.update_id)


def _written_over(is_sqlite: bool, where: Any = None) -> Any:
    """Return the statement that stores a letter, or updates its state and replies if it exists."""
    insert = insertion(is_sqlite)(Inbox.__table__)
    return insert.on_conflict_do_update(
        index_elements=["channel", "update_id"],
        set_={"state": insert.excluded.state, "replies": insert.excluded.replies},
        where=where,
    )


def as_row(letter: Letter, now: datetime, state: MailState, replies: str | None = None) -> JsonObject:
    """Return the inbox row of a letter."""
    return {
        "channel": letter.channel,
        "update_id": letter.update_id,
        "payload": letter.payload,
        "state": state,
        "replies": replies,
        "received_at": now,
        "attempts": 0,
        "chat": letter.chat,
        "sent_parts": letter.sent,
    }


def seen_lately(store: Store, channel: str, most: int) -> list[int]:
    """Return the numbers of the most recently stored updates, to detect duplicates early."""
    query = (
        select(Inbox.update_id)
        .where(Inbox.channel == channel)
        .order_by(Inbox.received_at.desc(), Inbox.update_id.desc())
        .limit(most)
    )
    with store.reading() as unit:
        return list(unit.session.scalars(query))


def payloads_with(
    store: Store, channel: str, words: str, before: int | None = None, most: int = 20
) -> list[str]:
    """Return the updates, or those before one, that contain these words, the newest first."""
    query = (
        select(Inbox.payload)
        .where(Inbox.channel == channel, Inbox.payload.contains(words, autoescape=True))
        .order_by(Inbox.update_id.desc())
        .limit(most)
    )
    if before is not None:
        query = query.where(Inbox.update_id < before)
    with store.reading() as unit:
        return list(unit.session.scalars(query))


def put_away(store: Store, letters: Sequence[Letter], now: datetime) -> None:
    """Mark updates as answered, and store those that were answered before that was necessary."""
    if not letters:
        return
    rows = [as_row(letter, now, MailState.ANSWERED) for letter in letters]
    with store.writing() as unit:
        unit.connection.execute(_putting_away(store.is_sqlite), rows)


@cache
def _putting_away(is_sqlite: bool) -> Any:
    return _written_over(is_sqlite)


_LOGGED = of_bar(Entry, Entry.id).where(Entry.source == bindparam("of_source")).limit(1)


def was_logged(book: Book, key: str) -> bool:
    """Whether a message, by its key, has logged something: it may come again under another number."""
    return book.value(_LOGGED, of_source=key[:80]) is not None


def note_failure(store: Store, channel: str, update_id: int, most: int = 3) -> bool:
    """Count a failed attempt; return whether the update is given up permanently."""
    with store.writing() as unit:
        row = unit.session.get(Inbox, (channel, update_id))
        if row is None:
            return True
        row.attempts += 1
        if row.attempts >= most:
            row.state = MailState.GIVEN_UP
        return row.state == MailState.GIVEN_UP


def prune(store: Store, now: datetime) -> int:
    """Delete finished updates older than any sender would repeat; return their number."""
    statement = delete(Inbox).where(
        Inbox.received_at < now - timedelta(hours=KEEP_HOURS),
        Inbox.state.in_([MailState.ANSWERED, MailState.GIVEN_UP]),
    )
    with store.writing() as unit:
        done: CursorResult[Any] = unit.session.execute(statement)  # type: ignore[assignment]
        return done.rowcount
