"""The inbox shared by several processes on one PostgreSQL: one process works on each update.

An update is leased to the process that works on it. The order of a chat is kept: an update is leased only to
the process that holds all earlier unanswered updates of that chat. A process that is gone renews nothing;
another takes over when the lease has expired. Time is the database's own, so that the clocks of several
machines need not agree.

A process may also stall for longer than its lease and then go on. It can then keep nothing that it did for an
update (`mark_worked`), and it checks that the update is still its own before it sends (`hold_on`).
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import replace
from datetime import datetime
from functools import cache
from typing import Any

from sqlalchemy import (
    ColumnElement,
    and_,
    any_,
    bindparam,
    cast,
    exists,
    func,
    literal,
    or_,
    select,
    text,
    type_coerce,
    update,
)
from sqlalchemy.dialects import postgresql
from sqlalchemy.orm import aliased
from sqlalchemy.types import BigInteger

from bot.work.inbox.inbox import Letter, MailState, as_row, letter_of, taken
from storage.store import Store
from storage.tables import Inbox
from storage.types import JsonObject
from storage.unit import Unit

LEASE_SECONDS = 30
RENEW_SECONDS = 10

# Processes that store updates of one chat do so one after the other; otherwise neither would see that the
# other holds the earlier one.
_IN_LINE = text("SELECT pg_advisory_xact_lock(hashtextextended(:chat, 0))")
_NOW = cast(func.floor(func.extract("epoch", func.clock_timestamp())), BigInteger)
_TAKE_IN = (
    postgresql.insert(Inbox.__table__)  # type: ignore[arg-type]
    .on_conflict_do_nothing()
    .returning(Inbox.__table__.c.update_id)
)


def take_in(store: Store, letters: Sequence[Letter], owner: str, most: int, now: datetime) -> list[Letter]:
    """Store the updates and lease up to `most` of them to `owner`; return the leased ones.

    Existing rows are not touched. This process or another claims the rest later.
    """
    if not letters:
        return []
    with store.writing() as unit:
        for chat in sorted({f"{letter.channel}:{letter.chat}" for letter in letters}):
            unit.connection.execute(_IN_LINE, {"chat": chat})
        rows = [as_row(letter, now, MailState.WAITING) for letter in letters]
        new = set(unit.connection.scalars(_TAKE_IN, rows))
        leased: list[Letter] = []
        # Again, for updates behind one of their chat that was leased only now.
        while found := _lease(unit, letters[0].channel, owner, most - len(leased), new):
            leased += found
            new -= {letter.update_id for letter in found}
        return leased


def claim(store: Store, channel: str, owner: str, most: int) -> list[Letter]:
    """Lease up to `most` unclaimed updates to `owner`, the oldest first, and return them."""
    with store.writing() as unit:
        return _lease(unit, channel, owner, most)


def _lease(
    unit: Unit, channel: str, owner: str, most: int, among: Collection[int] | None = None
) -> list[Letter]:
    if not most or (among is not None and not among):
        return []
    wanted: JsonObject = {
        "of_channel": channel,
        "of_owner": owner,
        "most": most,
        "seconds": LEASE_SECONDS,
    }
    if among is not None:
        wanted["among"] = list(among)
    rows = unit.connection.execute(_leasing(among is not None), wanted).all()
    found = (replace(letter_of(row), again=row.owner is not None) for row in rows)
    return sorted(found, key=lambda letter: letter.update_id)


@cache
def _leasing(among: bool) -> Any:
    """Return the statement that leases unclaimed updates and returns them with their previous owner.

    No earlier update of the same chat may be leased to another process.
    """
    inbox, earlier = aliased(Inbox), aliased(Inbox)
    owner: Any = bindparam("of_owner")
    free = or_(inbox.lease_until.is_(None), inbox.lease_until <= _NOW)
    until = func.coalesce(type_coerce(earlier.lease_until, BigInteger), 0)
    mine = and_(earlier.owner.is_not_distinct_from(owner), until > _NOW)
    held_up = exists(literal(1)).where(
        earlier.channel == inbox.channel,
        earlier.chat == inbox.chat,
        earlier.update_id < inbox.update_id,
        earlier.state < MailState.ANSWERED,
        ~mine,
    )
    ready = (
        select(inbox)
        .where(inbox.channel == bindparam("of_channel"), inbox.state < MailState.ANSWERED, free, ~held_up)
        .order_by(inbox.update_id)
        .limit(bindparam("most"))
        .with_for_update(skip_locked=True, of=inbox)
    )
    if among:
        ready = ready.where(inbox.update_id == any_(bindparam("among", type_=postgresql.ARRAY(BigInteger))))
    found = ready.cte("found")
    seconds: Any = bindparam("seconds", type_=BigInteger)
    return (
        update(Inbox.__table__)  # type: ignore[arg-type]
        .where(Inbox.channel == bindparam("of_channel"), Inbox.update_id == found.c.update_id)
        .values(owner=owner, lease_until=_NOW + seconds)
        .returning(*found.c)
    )


def renew(store: Store, channel: str, owner: str, update_ids: Sequence[int]) -> set[int]:
    """Extend the leases of `owner` on its updates in progress; return those that it still owns."""
    if not update_ids:
        return set()
    earlier = aliased(Inbox)
    # An unclaimed update stays with its owner after the lease expires, but loses its turn in the chat if
    # another process has claimed an earlier one.
    overtaken = exists(literal(1)).where(
        earlier.channel == Inbox.channel,
        earlier.chat == Inbox.chat,
        earlier.update_id < Inbox.update_id,
        earlier.state < MailState.ANSWERED,
        earlier.owner.is_distinct_from(owner),
    )
    statement = (
        update(Inbox)
        .where(*_held_by(owner, channel, update_ids), ~overtaken)
        .values(lease_until=_NOW + LEASE_SECONDS)
        .returning(Inbox.update_id)
        .execution_options(synchronize_session=False)
    )
    with store.writing() as unit:
        return set(unit.session.scalars(statement))


def hold_on(store: Store, letter: Letter, owner: str) -> Letter | None:
    """Confirm that a letter still belongs to its owner, for another lease; return it as stored.

    None if it is finished or owned by another process, or if another owns an earlier update of its chat.
    """
    if letter.update_id not in renew(store, letter.channel, owner, [letter.update_id]):
        return None
    found = taken(store, letter)
    return None if found is None else replace(found, again=letter.again)


def mark_worked(unit: Unit, letter: Letter, owner: str, replies: str) -> bool:
    """Mark an update worked, with its replies, in the transaction that did the work.

    Returns False if it was worked before or its owner's lease has expired: the caller must then change
    nothing. The lease starts again, so that no other process takes over a reply about to be sent.
    """
    marked = unit.connection.scalar(
        _working(),
        {
            "of_channel": letter.channel,
            "number": letter.update_id,
            "of_owner": owner,
            "said": replies,
            "seconds": LEASE_SECONDS,
        },
    )
    return marked is not None


@cache
def _working() -> Any:
    seconds: Any = bindparam("seconds", type_=BigInteger)
    return (
        update(Inbox.__table__)  # type: ignore[arg-type]
        .where(
            Inbox.channel == bindparam("of_channel"),
            Inbox.update_id == bindparam("number"),
            Inbox.state == MailState.WAITING,
            Inbox.owner == bindparam("of_owner"),
            type_coerce(Inbox.lease_until, BigInteger) > _NOW,
        )
        .values(state=MailState.WORKED, replies=bindparam("said"), lease_until=_NOW + seconds)
        .returning(Inbox.update_id)
    )


def note_sent(store: Store, letter: Letter, owner: str, replies: str | None, sent: int) -> None:
    """Record how many parts of an answer have left; `replies` are kept if the row has none yet."""
    values: JsonObject = {"sent_parts": sent}
    if replies is not None:
        values |= {"state": MailState.WORKED, "replies": func.coalesce(Inbox.replies, replies)}
    statement = (
        update(Inbox)
        .where(*_held_by(owner, letter.channel, [letter.update_id]))
        .values(values)
        .execution_options(synchronize_session=False)
    )
    with store.writing() as unit:
        unit.session.execute(statement)


def release(store: Store, channel: str, owner: str, update_ids: Sequence[int]) -> None:
    """Release the updates that `owner` holds and will not finish, so that other processes need not wait."""
    if not update_ids:
        return
    statement = (
        update(Inbox)
        .where(*_held_by(owner, channel, update_ids))
        .values(lease_until=None)
        .execution_options(synchronize_session=False)
    )
    with store.writing() as unit:
        unit.session.execute(statement)


def _held_by(owner: str, channel: str, update_ids: Sequence[int]) -> list[ColumnElement[bool]]:
    return [
        Inbox.channel == channel,
        Inbox.update_id.in_(update_ids),
        Inbox.owner == owner,
        Inbox.state < MailState.ANSWERED,
    ]
