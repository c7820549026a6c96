"""Who there is: bars, persons, rooms, members and invitations."""

from __future__ import annotations

from datetime import datetime
from typing import Any

from sqlalchemy import ForeignKey, Integer, String, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column

from storage.tables.base import Base, InBar, Numbered, WideId


class Bar(Base):
    """One bar. What may be set without a migration lives in `settings`."""

    __tablename__ = "bar"

    id: Mapped[int] = mapped_column(WideId, primary_key=True, autoincrement=True)
    name: Mapped[str] = mapped_column(String(80))
    language: Mapped[str] = mapped_column(String(12))
    currency: Mapped[str] = mapped_column(String(3))
    units: Mapped[str] = mapped_column(String(12))
    zone: Mapped[str] = mapped_column(String(64))
    closing_minute: Mapped[int]
    jurisdiction: Mapped[str] = mapped_column(String(12))
    settings: Mapped[dict[str, Any]]
    team_room_id: Mapped[int | None]  # no foreign key: room points here, and a circle helps nobody
    # Counts up with every change of nouns or settings, so that caches know when to look again.
    revision: Mapped[int] = mapped_column(default=0)
    created_at: Mapped[datetime]
    delete_after: Mapped[datetime | None]


class Counter(InBar):
    """The last number given out for one kind of row of one bar."""

    __tablename__ = "counter"

    name: Mapped[str] = mapped_column(String(40), primary_key=True)
    value: Mapped[int]


class Person(Base):
    """Somebody who writes to the program, known by a channel and that channel's id."""

    __tablename__ = "person"
    __table_args__ = (UniqueConstraint("channel", "outside_id"),)

    id: Mapped[int] = mapped_column(WideId, primary_key=True, autoincrement=True)
    channel: Mapped[str] = mapped_column(String(12))
    outside_id: Mapped[str] = mapped_column(String(64))
    name: Mapped[str] = mapped_column(String(128))
    language: Mapped[str | None] = mapped_column(String(12))
    bar_id: Mapped[int | None] = mapped_column(ForeignKey("bar.id"))  # the bar they stand in now
    # The number of the message by which they last changed bars: buttons of older ones are of another bar.
    bar_since: Mapped[int | None]
    wrong_codes: Mapped[int] = mapped_column(Integer, default=0, server_default="0")  # tried in a row
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
    room_id: Mapped[int | None] = mapped_column(ForeignKey("room.id"))  # their private chat
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
