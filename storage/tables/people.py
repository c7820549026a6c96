"""Tables of bars, persons, rooms, members and invitations."""

from __future__ import annotations

from datetime import datetime

from sqlalchemy import ForeignKey, Integer, String, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column

from storage.tables.base import Base, InBar, Numbered, WideId
from storage.types import JsonObject


class Bar(Base):
    """One bar. Options that need no migration are in `settings`."""

    __tablename__ = "bar"

    id: Mapped[int] = mapped_column(WideId, primary_key=True, autoincrement=True)
    name: Mapped[str] = mapped_column(String(80))
    language: Mapped[str] = mapped_column(String(12))
    currency: Mapped[str] = mapped_column(String(3))
    units: Mapped[str] = mapped_column(String(12))
    zone: Mapped[str] = mapped_column(String(64))
    closing_minute: Mapped[int]
    jurisdiction: Mapped[str] = mapped_column(String(12))
    settings: Mapped[JsonObject]
    team_room_id: Mapped[int | None]  # no foreign key: room points here, and that would be a circle
    # Incremented with every change of nouns or settings, to invalidate caches.
    revision: Mapped[int] = mapped_column(default=0)
    created_at: Mapped[datetime]
    delete_after: Mapped[datetime | None]


class Counter(InBar):
    """The last number assigned for one kind of row of one bar."""

    __tablename__ = "counter"

    name: Mapped[str] = mapped_column(String(40), primary_key=True)
    value: Mapped[int]


class Person(Base):
    """A person who writes to the program, identified by a channel and that channel's id."""

    __tablename__ = "person"
    __table_args__ = (UniqueConstraint("channel", "outside_id"),)

    id: Mapped[int] = mapped_column(WideId, primary_key=True, autoincrement=True)
    channel: Mapped[str] = mapped_column(String(12))
    outside_id: Mapped[str] = mapped_column(String(64))
    name: Mapped[str] = mapped_column(String(128))
    language: Mapped[str | None] = mapped_column(String(12))
    bar_id: Mapped[int | None] = mapped_column(ForeignKey("bar.id"))  # the current bar
    # The number of the message that last changed the bar: buttons of older messages belong to another bar.
    bar_since: Mapped[int | None]
    wrong_codes: Mapped[int] = mapped_column(Integer, default=0, server_default="0")  # consecutive attempts
    wrong_code_at: Mapped[datetime | None]


class Room(Base):
    """A chat: one person's private one, or a group that belongs to one bar."""

    __tablename__ = "room"
    __table_args__ = (UniqueConstraint("channel", "outside_id"),)

    id: Mapped[int] = mapped_column(WideId, primary_key=True, autoincrement=True)
    channel: Mapped[str] = mapped_column(String(12))
    outside_id: Mapped[str] = mapped_column(String(64))
    private: Mapped[bool]
    title: Mapped[str] = mapped_column(String(128), default="")
    bar_id: Mapped[int | None] = mapped_column(ForeignKey("bar.id"))
    thread: Mapped[int | None]
    reachable: Mapped[bool] = mapped_column(default=True)


class Member(InBar):
    """A person's place in a bar: owner, manager or member."""

    __tablename__ = "member"

    person_id: Mapped[int] = mapped_column(ForeignKey("person.id"), primary_key=True)
    role: Mapped[str] = mapped_column(String(12))
    name: Mapped[str] = mapped_column(String(128))
    language: Mapped[str | None] = mapped_column(String(12))
    room_id: Mapped[int | None] = mapped_column(ForeignKey("room.id"))  # the member's private chat
    joined_at: Mapped[datetime]
    left_at: Mapped[datetime | None]


class Invite(Numbered):
    """A joining code, kept only as its hash."""

    __tablename__ = "invite"

    code_hash: Mapped[str] = mapped_column(String(64))
    role: Mapped[str] = mapped_column(String(12))
    made_by: Mapped[int]
    made_at: Mapped[datetime]
    expires_at: Mapped[datetime]
    uses_left: Mapped[int]
