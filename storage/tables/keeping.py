"""Tables of the program itself: log, reminders, files, open questions, inbox."""

from __future__ import annotations

from datetime import datetime

from sqlalchemy import ForeignKey, Index, Integer, LargeBinary, String, Text, UniqueConstraint, text
from sqlalchemy.orm import Mapped, mapped_column

from storage.tables.base import Base, InBar, Numbered
from storage.types import JsonObject


class Entry(Numbered):
    """The bar's log: who did what, when and to what.

    A reason added later, an edit, an undo and a restore are later entries of the same chain. Each entry
    follows the last one of the chain; no two can follow the same one.
    """

    __tablename__ = "entry"
    __table_args__ = (
        UniqueConstraint("bar_id", "follows"),
        Index(None, "bar_id", "chain"),
        Index(None, "bar_id", "by", "id"),
        Index(None, "bar_id", "source"),
    )

    at: Mapped[datetime]
    by: Mapped[int]
    what: Mapped[str] = mapped_column(String(24))
    details: Mapped[JsonObject]
    source: Mapped[str | None] = mapped_column(String(80))  # the key of the message that caused it
    chain: Mapped[int | None]  # the first entry of its chain; None for that one itself
    follows: Mapped[int | None]  # the entry before it in its chain


class Reminder(Numbered):
    """One message to send once, at a given time and place."""

    __tablename__ = "reminder"
    __table_args__ = (
        UniqueConstraint("bar_id", "key"),
        Index(None, "channel", "state", "due_at"),
        # Only rows in delivery: a planner that knows how common a channel is would otherwise read all rows.
        Index(
            "ix_reminder_sending",
            "channel",
            "lease_until",
            sqlite_where=text("state = 'sending'"),
        ),
        Index(None, "bar_id", "batch_id"),
    )

    channel: Mapped[str] = mapped_column(String(12))
    key: Mapped[str] = mapped_column(String(80))
    kind: Mapped[str] = mapped_column(String(16))
    batch_id: Mapped[int | None]
    person_id: Mapped[int | None]
    details: Mapped[JsonObject] = mapped_column(default=dict)
    first_due_at: Mapped[datetime]
    due_at: Mapped[datetime]
    state: Mapped[str] = mapped_column(String(12))
    attempts: Mapped[int] = mapped_column(default=0)
    unsure: Mapped[bool] = mapped_column(default=False)  # an earlier attempt may have arrived
    lease_until: Mapped[datetime | None]
    sent_at: Mapped[datetime | None]
    done_by: Mapped[int | None]
    last_error: Mapped[str | None] = mapped_column(String(200))


class Upload(Numbered):
    """A file uploaded for import, kept until the import is confirmed."""

    __tablename__ = "upload"

    name: Mapped[str] = mapped_column(String(120))
    content: Mapped[bytes] = mapped_column(LargeBinary)
    at: Mapped[datetime]
    by: Mapped[int]


class Imported(InBar):
    """A row imported from a file, by its reference there, so that it is imported once."""

    __tablename__ = "imported"

    kind: Mapped[str] = mapped_column(String(16), primary_key=True)
    ref: Mapped[str] = mapped_column(String(80), primary_key=True)
    number: Mapped[int]


class Wording(Numbered):
    """A confirmed way to say a wish: a line with kinds in place of its nouns and numbers."""

    __tablename__ = "wording"
    __table_args__ = (UniqueConstraint("bar_id", "language", "shape"),)

    language: Mapped[str] = mapped_column(String(8))
    shape: Mapped[str] = mapped_column(String(200))
    wish: Mapped[str] = mapped_column(String(40))
    made_at: Mapped[datetime]
    by: Mapped[int]


class Question(Base):
    """An open question to one person in one chat."""

    __tablename__ = "question"

    room_id: Mapped[int] = mapped_column(ForeignKey("room.id"), primary_key=True)
    person_id: Mapped[int] = mapped_column(ForeignKey("person.id"), primary_key=True)
    nonce: Mapped[int]
    state: Mapped[JsonObject]
    asked_at: Mapped[datetime]
    message_id: Mapped[str | None] = mapped_column(String(64))


class Inbox(Base):
    """Incoming updates, stored before they are confirmed to the sender.

    `channel` names the bot too, because every bot numbers its own updates.
    """

    __tablename__ = "inbox"
    __table_args__ = (
        Index(None, "state", "received_at"),
        # Only unfinished rows: a few, however many updates are kept.
        Index(
            "ix_inbox_unfinished",
            "channel",
            "chat",
            "update_id",
            sqlite_where=text("state < 2"),
        ),
    )

    channel: Mapped[str] = mapped_column(String(40), primary_key=True)
    update_id: Mapped[int] = mapped_column(primary_key=True, autoincrement=False)
    payload: Mapped[str] = mapped_column(Text)
    state: Mapped[int] = mapped_column(Integer)
    replies: Mapped[str | None] = mapped_column(Text)
    received_at: Mapped[datetime]
    attempts: Mapped[int] = mapped_column(Integer, default=0)
    chat: Mapped[str] = mapped_column(String(40), server_default="")
    owner: Mapped[str | None] = mapped_column(String(32))
    lease_until: Mapped[datetime | None]
    sent_parts: Mapped[int] = mapped_column(Integer, default=0, server_default="0")  # of the answer
