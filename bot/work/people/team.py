"""The team of a bar: members, roles, and leaving."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import String, cast, delete, literal, select, update
from sqlalchemy.orm import Session

from bot.work.context import Context, Role
from bot.work.errors import NotAllowedError, NotThereError
from storage.tables import Bar, Base, Entry, Member, Person, Question, Room

FORGOTTEN = "former member"  # stored instead of a name; shown through the catalogues


@dataclass(frozen=True, slots=True)
class TeamMember:
    """One line of the team list. `blocked` means that the person has blocked the bot."""

    person_id: int
    name: str
    role: Role
    joined_at: datetime
    blocked: bool = False


def team(context: Context) -> list[TeamMember]:
    """Return everyone in the bar, owner first."""
    order = [Role.OWNER, Role.MANAGER, Role.MEMBER]
    query = (
        select(Member, Room.reachable)
        .outerjoin(Room, Room.id == Member.room_id)
        .where(Member.bar_id == context.book.bar_id, Member.left_at.is_(None))
        .order_by(Member.joined_at, Member.person_id)
    )
    found = [
        TeamMember(row.person_id, row.name, Role(row.role), row.joined_at, reachable is False)
        for row, reachable in context.book.session.execute(query)
    ]
    return sorted(found, key=lambda one: order.index(one.role))


def gone(context: Context) -> list[TeamMember]:
    """Return the former members whose names are still stored."""
    rows = context.book.all(Member, Member.left_at.is_not(None), Member.name != FORGOTTEN)
    return [TeamMember(row.person_id, row.name, Role(row.role), row.joined_at) for row in rows]


def _member(context: Context, person_id: int, gone_too: bool = False) -> Member:
    member = context.book.get(Member, person_id)
    if member is None or (member.left_at is not None and not gone_too):
        raise NotThereError("member", str(person_id))
    return member


def remove(context: Context, person_id: int) -> str:
    """Remove a person from the bar immediately; return their name.

    Raises NotAllowedError unless the caller manages and outranks the other, and NotThereError for somebody
    who is not a member.
    """
    if not context.role.manages:
        raise NotAllowedError(Role.MANAGER)
    member = _member(context, person_id)
    if member.role == Role.OWNER or (member.role == Role.MANAGER and context.role is not Role.OWNER):
        raise NotAllowedError(Role.OWNER)
    _go(context, member)
    context.log("remove member", person=person_id, name=member.name)
    context.book.touched()
    return member.name


def leave(context: Context) -> None:
    """Leave the bar. Raises NotAllowedError for the owner, who must hand it over first."""
    if context.role is Role.OWNER:
        raise NotAllowedError(Role.OWNER)
    _go(context, _member(context, context.person_id))
    context.log("leave")
    context.book.touched()


def _go(context: Context, member: Member) -> None:
    """Remove a member. If this was their current bar, they have none until they choose another."""
    session = context.book.session
    member.left_at = context.now
    person = session.get(Person, member.person_id)
    if person is not None and person.bar_id == context.book.bar_id:
        person.bar_id = None
    session.flush()


def set_role(context: Context, person_id: int, role: Role) -> str:
    """Make someone manager or member; return their name. Only the owner may."""
    if context.role is not Role.OWNER:
        raise NotAllowedError(Role.OWNER)
    member = _member(context, person_id)
    if member.role == Role.OWNER:
        raise NotThereError("member", str(person_id))
    member.role = role
    context.log("role", person=person_id, name=member.name, role=role)
    return member.name


def hand_over(context: Context, person_id: int) -> str:
    """Make someone else the owner and the caller a manager; return their name. Only the owner may."""
    if context.role is not Role.OWNER:
        raise NotAllowedError(Role.OWNER)
    member = _member(context, person_id)
    own = _member(context, context.person_id)
    if member.person_id == own.person_id:
        raise NotThereError("member", str(person_id))
    member.role, own.role = Role.OWNER, Role.MANAGER
    context.role = Role.MANAGER
    context.log("owner", person=person_id, name=member.name)
    return member.name


def forget(context: Context, person_id: int) -> str:
    """Remove a person and replace their name everywhere; their entries stay.

    Anyone may do this for themselves; for a member it needs a manager, for a manager the owner. If they are
    in no other bar, the link to their chat account is deleted as well. Returns the name they had. Raises
    NotAllowedError or NotThereError.
    """
    member = _member(context, person_id, gone_too=True)
    if person_id != context.person_id and not context.role.manages:
        raise NotAllowedError(Role.MANAGER)
    if member.role == Role.OWNER or (
        person_id != context.person_id and member.role == Role.MANAGER and context.role is not Role.OWNER
    ):
        raise NotAllowedError(Role.OWNER)
    name = member.name
    if member.left_at is None:
        _go(context, member)
    member.name, member.language = FORGOTTEN, None
    for entry in context.book.all(Entry, Entry.what.in_(("remove member", "role", "owner"))):
        if entry.details.get("person") == person_id:
            entry.details = {**entry.details, "name": FORGOTTEN}
    context.log("forget", person=person_id)
    context.book.touched()
    session = context.book.session
    session.flush()
    rooms = list(session.scalars(select(Member.room_id).where(Member.person_id == person_id)))
    forget_account(session, person_id, [room for room in rooms if room is not None])
    return name


def forget_account(session: Session, person_id: int, rooms: Iterable[int]) -> None:
    """Delete the link to a chat account without any bar; `rooms` are its private chats."""
    still = select(Member.bar_id).where(Member.person_id == person_id, Member.left_at.is_(None))
    person = session.get(Person, person_id)
    if person is None or session.scalar(still.limit(1)) is not None:
        return
    session.execute(update(Member).where(Member.person_id == person_id).values(room_id=None))
    session.execute(delete(Question).where(Question.person_id == person_id))
    _forget_messages(session, person)
    for number in rooms:
        room = session.get(Room, number)
        if room is not None and room.private:
            room.outside_id, room.title, room.reachable = f"forgotten {room.id}", "", False
    person.outside_id, person.name, person.language = f"forgotten {person_id}", FORGOTTEN, None
    person.bar_id = None
    session.flush()


def _forget_messages(session: Session, person: Person) -> None:
    """Remove the chat's id from the message keys of log entries."""
    for table in Base.metadata.sorted_tables:
        if {"source", "by", "id"} <= set(table.c.keys()):
            mine = (table.c.by == person.id) & table.c.source.contains(person.outside_id, autoescape=True)
            blank = literal("forgotten ").concat(cast(table.c.id, String))
            session.execute(update(table).where(mine).values(source=blank))


def is_closing(context: Context) -> datetime | None:
    """Return when the bar will be deleted, or None."""
    bar = context.book.session.get(Bar, context.bar.id)
    return None if bar is None else bar.delete_after
