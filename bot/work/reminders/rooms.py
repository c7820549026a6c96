"""The chats that reminders go to: which one comes next, which are lost, which have moved."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import and_, case, select

from bot.work.context import Role
from bot.work.reminders.planning import BLOCKED, put
from storage.store import Store
from storage.tables import Bar, Member, Room
from storage.unit import Book, Unit


@dataclass(frozen=True, slots=True)
class Destination:
    """The target chat of a reminder: the channel's own id, and the forum topic if any."""

    room_id: int
    outside_id: str
    private: bool
    thread: int | None


def destination(
    book: Book, person_id: int | None, team_room_id: int | None, refused: Collection[int] = ()
) -> tuple[Destination, str | None] | None:
    """Return the target chat: the bar's own, else the person's, else a manager's, else None.

    The rooms in `refused` have refused the message already.
    """
    session = book.session
    if team_room_id is not None:
        team = session.get(Room, team_room_id)
        if team is not None and team.id not in refused and team.reachable and team.bar_id == book.bar_id:
            return Destination(team.id, team.outside_id, False, team.thread), None
    query = (
        select(Room, Member)
        .join(Member, and_(Member.room_id == Room.id, Member.bar_id == book.bar_id))
        .where(Member.left_at.is_(None), Room.reachable.is_(True), Room.id.not_in(refused))
        .order_by(
            (Member.person_id != (person_id or 0)),
            case({Role.OWNER: 0, Role.MANAGER: 1}, value=Member.role, else_=2),
            Member.joined_at,
            Member.person_id,
        )
        .limit(1)
    )
    found = session.execute(query).first()
    if found is None:
        return None
    room, member = found
    return Destination(room.id, room.outside_id, True, None), member.language


def room_moved(store: Store, channel: str, old: str, new: str) -> None:
    """Update a chat that got a new id (a group that became a supergroup)."""
    with store.writing() as unit:
        move_room(unit, channel, old, new)


def move_room(unit: Unit, channel: str, old: str, new: str) -> None:
    """The same within a transaction. A repeat, or a call after the new id wrote, changes nothing."""
    room = unit.session.scalar(select(Room).where(Room.channel == channel, Room.outside_id == old))
    if room is None:
        return
    newer = unit.session.scalar(select(Room).where(Room.channel == channel, Room.outside_id == new))
    if newer is None:
        room.outside_id = new
    elif newer.bar_id is None:
        newer.bar_id, newer.thread, newer.title = room.bar_id, room.thread, newer.title or room.title
        for bar in unit.session.scalars(select(Bar).where(Bar.team_room_id == room.id)):
            bar.team_room_id = newer.id
    unit.session.flush()


def set_reachable(unit: Unit, channel: str, room: str, reachable: bool, now: datetime) -> None:
    """Record whether a chat can be written to; managers are told about a member's."""
    row = unit.session.scalar(select(Room).where(Room.channel == channel, Room.outside_id == room))
    if row is None:
        return
    if row.reachable and not reachable:
        lost(unit, row, now)
    row.reachable = reachable
    unit.session.flush()


def lost(unit: Unit, room: Room, now: datetime) -> None:
    """Mark a chat as lost, and plan to tell the owner of each bar of that member."""
    room.reachable = False
    unit.session.flush()
    for member in unit.session.scalars(
        select(Member).where(Member.room_id == room.id, Member.left_at.is_(None))
    ).all():
        book = unit.bar(member.bar_id)
        owner = book.one(Member, Member.role == Role.OWNER, Member.left_at.is_(None))
        key = f"{BLOCKED}:{member.person_id}:{now.date().isoformat()}"
        details = {"name": member.name, "room": room.id}
        to = None if owner is None else owner.person_id
        put(book, key, BLOCKED, now, person_id=to, details=details)
