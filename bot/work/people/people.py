"""Persons, chats, and their place in a bar."""

from __future__ import annotations

import secrets
from dataclasses import dataclass, replace
from datetime import datetime
from functools import cache
from typing import Any

from sqlalchemy import Select, String, and_, bindparam, select, update

from bot.work.context import BarView, Context, Role
from bot.work.errors import NotAllowedError, NotThereError
from bot.work.reminders import planning
from storage.tables import Bar, Member, Person, Question, Room
from storage.types import JsonObject
from storage.unit import Unit

_FIRST_NUMBERS = 900_000  # six digits, because button data must stay short


@dataclass(frozen=True, slots=True)
class PendingQuestion:
    """An open question: its number and the answers so far."""

    nonce: int
    state: JsonObject


@dataclass(frozen=True, slots=True)
class Presence:
    """A person in a chat, with their bar there, if any."""

    person_id: int | None
    room_id: int | None
    bar: BarView | None = None
    role: Role | None = None
    name: str = ""
    language: str | None = None
    question: PendingQuestion | None = None
    room_bar_id: int | None = None
    reachable: bool = True
    since: int | None = None  # the number of the message that last changed the bar
    number: int | None = None  # the number of the current message, if the channel numbers messages

    @property
    def known(self) -> bool:
        """Whether both the person and the chat are known."""
        return self.person_id is not None and self.room_id is not None

    def context(self, unit: Unit, now: datetime, source: str) -> Context:
        """Return the context of the person in their bar. Only for members of a bar."""
        if self.bar is None or self.role is None or self.person_id is None or self.room_id is None:
            raise ValueError("this person stands in no bar")
        book = unit.bar(self.bar.id)
        return Context(book, self.bar, self.person_id, self.name, self.role, self.room_id, now, source)


def find(unit: Unit, channel: str, person: str, room: str, private: bool) -> Presence:
    """Return the presence of a person in a chat, without writing.

    In a private chat the bar is the person's last choice; in a group it is the group's. In both cases the
    person must be a current member.
    """
    values = {"channel": channel, "person": person, "room": room}
    found = unit.connection.execute(_who_is_where(private), values).first()
    if found is None:
        return Presence(None, None)
    pending = None if found.nonce is None else PendingQuestion(found.nonce, found.state)
    presence = Presence(
        found.person_id,
        found.room_id,
        name=found.name,
        language=found.language,
        question=pending,
        room_bar_id=found.room_bar_id,
        reachable=found.reachable is not False,
        since=found.bar_since if private else None,
    )
    if found.role is None or found.bar_id is None:
        return presence
    return replace(
        presence,
        bar=_bar(unit, found.bar_id, found.bar_revision),
        role=Role(found.role),
        name=found.member_name,
        language=found.member_language or found.language,
    )


def _bar(unit: Unit, bar_id: int, revision: int) -> BarView:
    """Return a bar at this revision."""

    def read() -> BarView:
        return BarView.of(unit.session.get_one(Bar, bar_id))

    return unit.bar(bar_id).remembered(revision, ("bar",), read)


@cache
def _who_is_where(private: bool) -> Select[Any, *tuple[Any, ...]]:
    """Return the query of every message, built once, with single columns where no row is needed."""
    channel, person, room = (bindparam(name, type_=String()) for name in ("channel", "person", "room"))
    bar_of = Person.bar_id if private else Room.bar_id
    return (
        select(
            Person.id.label("person_id"),
            Person.name,
            Person.language,
            Person.bar_since,
            Room.id.label("room_id"),
            Room.bar_id.label("room_bar_id"),
            Room.reachable,
            Member.role,
            Member.name.label("member_name"),
            Member.language.label("member_language"),
            Question.nonce,
            Question.state,
            Bar.id.label("bar_id"),
            Bar.revision.label("bar_revision"),
        )
        .select_from(Person)
        .outerjoin(Room, and_(Room.channel == channel, Room.outside_id == room))
        .outerjoin(Question, and_(Question.room_id == Room.id, Question.person_id == Person.id))
        .outerjoin(Bar, Bar.id == bar_of)
        .outerjoin(
            Member,
            and_(Member.bar_id == bar_of, Member.person_id == Person.id, Member.left_at.is_(None)),
        )
        .where(Person.channel == channel, Person.outside_id == person)
    )


def meet(
    unit: Unit,
    channel: str,
    person: str,
    name: str,
    language: str | None,
    room: str,
    private: bool,
    title: str,
) -> Presence:
    """Like find, but stores a person or chat seen for the first time."""
    session = unit.session
    presence = find(unit, channel, person, room, private)
    if presence.known:
        if not presence.reachable:
            # It was marked as lost, and has just written.
            session.execute(update(Room).where(Room.id == presence.room_id).values(reachable=True))
        return presence
    if presence.person_id is None:
        session.add(Person(channel=channel, outside_id=person, name=name[:128], language=language))
    known = session.scalar(select(Room.id).where(Room.channel == channel, Room.outside_id == room))
    if known is None:
        session.add(Room(channel=channel, outside_id=room, private=private, title=title[:128]))
    session.flush()
    return find(unit, channel, person, room, private)


def speak(unit: Unit, presence: Presence, language: str) -> None:
    """Set the person's language from now on, in every bar."""
    unit.session.execute(update(Person).where(Person.id == presence.person_id).values(language=language))
    if presence.bar is not None:
        one = (Member.bar_id == presence.bar.id, Member.person_id == presence.person_id)
        unit.session.execute(update(Member).where(*one).values(language=language))


def at_home(unit: Unit, presence: Presence) -> Presence | None:
    """Return the presence as if in the person's own bar, in any chat; None without one."""
    query = (
        select(Person, Member, Bar)
        .join(Bar, Bar.id == Person.bar_id)
        .join(Member, and_(Member.bar_id == Bar.id, Member.person_id == Person.id, Member.left_at.is_(None)))
        .where(Person.id == presence.person_id)
    )
    found = unit.session.execute(query).first()
    if found is None:
        return None
    person, member, bar = found
    language = member.language or person.language
    return replace(presence, bar=BarView.of(bar), role=Role(member.role), name=member.name, language=language)


@dataclass(frozen=True, slots=True)
class OwnBar:
    """One bar of a person."""

    id: int
    name: str
    role: Role
    here: bool


def bars_of(unit: Unit, presence: Presence) -> list[OwnBar]:
    """Return the bars of a person, the earliest joined first."""
    query = (
        select(Bar.id, Bar.name, Member.role, Person.bar_id)
        .join(Member, Member.bar_id == Bar.id)
        .join(Person, Person.id == Member.person_id)
        .where(Member.person_id == presence.person_id, Member.left_at.is_(None))
        .order_by(Member.joined_at, Bar.id)
    )
    return [
        OwnBar(row.id, row.name, Role(row.role), row.id == row.bar_id) for row in unit.session.execute(query)
    ]


def switch(unit: Unit, presence: Presence, bar_id: int) -> Presence | None:
    """Move a person to another bar of theirs; return None and change nothing if they are not a member."""
    person = unit.session.get(Person, presence.person_id) if presence.person_id is not None else None
    if person is None or bar_id >= 2**62:
        return None
    member = unit.session.get(Member, (bar_id, person.id))
    if member is None or member.left_at is not None:
        return None
    _stand_in(person, bar_id, presence)
    unit.session.flush()
    return at_home(unit, presence)


def _stand_in(person: Person, bar_id: int, presence: Presence) -> None:
    if person.bar_id != bar_id:
        person.bar_id, person.bar_since = bar_id, presence.number


def known_names(unit: Unit, channel: str) -> list[str]:
    """Return the names of everyone who ever wrote in a channel, in order of arrival."""
    return list(
        unit.session.scalars(select(Person.name).where(Person.channel == channel).order_by(Person.id))
    )


def keep_question(unit: Unit, room_id: int, person_id: int, state: JsonObject, now: datetime) -> int:
    """Store an open question and return its new number; its earlier buttons become stale."""
    row = unit.session.get(Question, (room_id, person_id))
    if row is None:
        # Not from 1: an old button must not match a new question.
        first = secrets.randbelow(_FIRST_NUMBERS)
        row = Question(room_id=room_id, person_id=person_id, nonce=first, state=state, asked_at=now)
        unit.session.add(row)
    row.nonce += 1
    row.state = state
    row.asked_at = now
    unit.session.flush()
    return row.nonce


def asked_now(unit: Unit, room_id: int, person_id: int) -> int | None:
    """Return the number of the open question, or None, and lock it until the end of the transaction."""
    row = unit.session.get(Question, (room_id, person_id), with_for_update=True)
    return None if row is None else row.nonce


def asked_instead(unit: Unit, presence: Presence, number: int) -> str:
    """Return the name of the other person with an open question in this chat, '' if there is none."""
    if presence.bar is None:
        return ""
    query = (
        select(Member.name)
        .join(Question, Question.person_id == Member.person_id)
        .where(
            Member.bar_id == presence.bar.id,
            Question.room_id == presence.room_id,
            Question.nonce == number,
            Question.person_id != presence.person_id,
        )
    )
    return unit.session.scalar(query) or ""


def drop_question(unit: Unit, room_id: int, person_id: int) -> None:
    """Delete the open question, if there is one."""
    row = unit.session.get(Question, (room_id, person_id))
    if row is not None:
        unit.session.delete(row)
        unit.session.flush()


def enter(
    unit: Unit, bar_id: int, presence: Presence, role: Role, name: str, private: bool, now: datetime
) -> None:
    """Make a person a member of a bar and move them to it; an existing member keeps their role."""
    person_id = presence.person_id
    if person_id is None:
        raise ValueError("meet the person first")
    member = unit.session.get(Member, (bar_id, person_id))
    if member is None:
        member = Member(bar_id=bar_id, person_id=person_id, role=role, name=name[:128], joined_at=now)
        unit.session.add(member)
    elif member.left_at is not None:
        member.left_at, member.role, member.joined_at, member.name = None, role, now, name[:128]
    if private:
        member.room_id = presence.room_id
    person = unit.session.get(Person, person_id)
    if person is not None:
        _stand_in(person, bar_id, presence)
    unit.session.flush()


def found_bar(unit: Unit, presence: Presence, bar: Bar, name: str, private: bool, now: datetime) -> BarView:
    """Add a new bar with the person as its owner."""
    unit.session.add(bar)
    unit.session.flush()
    unit.bar(bar.id).made()
    enter(unit, bar.id, presence, Role.OWNER, name, private, now)
    return BarView.of(bar)


def use_as_team_room(context: Context, title: str, thread: int | None) -> None:
    """Make this group the bar's team chat, which receives team reminders. Raises NotAllowedError."""
    if not context.role.manages:
        raise NotAllowedError(Role.MANAGER)
    bar = context.book.session.get(Bar, context.bar.id)
    room = context.book.session.get(Room, context.room_id)
    if bar is None or room is None:
        raise NotThereError("bar", context.bar.name)
    room.bar_id, room.title, room.thread = bar.id, title[:128], thread
    bar.team_room_id = room.id
    context.log("team chat", room=room.id)
    context.book.touched()
    planning.plan_close(context.book, BarView.of(bar), context.now)  # asked there from now on
