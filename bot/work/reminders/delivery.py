"""Deliver due reminders: claim them, check them again, send and settle them.

The guarantee: a reminder is scheduled once and sent at least once; a repeat follows only a send with unknown
outcome, and says so. A chat that refuses it is followed by the next one that may have it. It is kept until
somebody has it or its subject is gone; no number of attempts ends it.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from enum import StrEnum
from fractions import Fraction

from sqlalchemy import ColumnElement, func, or_, select, text, tuple_, update

from bot.trade.days import (
    instant_of,
    is_service_day,
)
from bot.trade.liquids.infusion import is_steeped
from bot.work.context import BarView
from bot.work.inbox.leases import uptime
from bot.work.reminders import nights
from bot.work.reminders import own as own_reminders
from bot.work.reminders.own import MORNING, OWN
from bot.work.reminders.peeled_left import left_of
from bot.work.reminders.planning import (
    BLOCKED,
    CLOSE,
    DELETION,
    UNDELIVERED,
    ReminderState,
    ask_all_at_close,
    plan_close,
)
from bot.work.reminders.rooms import Destination, destination, lost
from storage.store import Store
from storage.tables import Bar, Batch, Member, Reminder, Room
from storage.types import JsonObject
from storage.unit import Book, Unit

LEASE = timedelta(seconds=120)
LATE_AFTER = timedelta(minutes=10)
_FIRST_RETRY = timedelta(seconds=30)
_ANOTHER_ROUND = timedelta(hours=1)  # after every chat has refused, or when nobody can be reached
_REFUSED = "refused"  # in the details: the rooms that have refused it in this round
# Written out, because a partial index is not used for a state given as a parameter.
_SENDING = text("state = 'sending'")


class Outcome(StrEnum):
    """The outcome of a send."""

    SENT = "sent"
    NOT_SENT = "not sent"
    UNSURE = "unsure"
    BLOCKED = "blocked"
    REFUSED = "refused"
    LEFT = "left"  # to another process, which claimed it while this one stalled


@dataclass(frozen=True, slots=True)
class Sent:
    """The result of a send: its outcome, the error in the channel's words, and the pause that it asks for."""

    outcome: Outcome
    error: str = ""
    wait: timedelta = timedelta(0)


@dataclass(frozen=True, slots=True)
class DueReminder:
    """A claimed reminder with everything needed to word and send it."""

    bar: BarView
    id: int
    kind: str
    first_due_at: datetime
    unsure: bool
    details: JsonObject
    destination: Destination
    language: str | None
    batch: int | None = None
    name: str = ""
    total_ml: Fraction = Fraction(0)
    discard_on: date | None = None
    to_strain: bool = False
    attempt: int = 0  # distinguishes this claim from any later one
    claimed_at: float = 0.0  # by `uptime`
    instead: bool = False  # it goes to a person because the bar's own chat refused it

    def late_by(self, now: datetime) -> timedelta | None:
        """The delay of the send, or None when it is about on time."""
        late = now - self.first_due_at
        return late if late > LATE_AFTER else None


def claim(store: Store, channel: str, now: datetime, most: int = 50) -> list[DueReminder]:
    """Claim the due reminders of a channel; no other process gets them in the meantime."""
    began = uptime()
    with store.writing() as unit:
        _free_lost(unit, channel, now)
        due = (
            select(Reminder.bar_id, Reminder.id)
            .where(
                Reminder.channel == channel,
                Reminder.state == ReminderState.WAITING,
                Reminder.due_at <= now,
            )
            .order_by(Reminder.due_at, Reminder.bar_id, Reminder.id)
            .limit(most)
        )
        if not store.is_sqlite:
            due = due.with_for_update(skip_locked=True)
        keys = [tuple(row) for row in unit.session.execute(due)]
        if not keys:
            return []
        unit.session.execute(
            update(Reminder)
            .where(tuple_(Reminder.bar_id, Reminder.id).in_(keys))
            .values(state=ReminderState.SENDING, lease_until=now + LEASE, attempts=Reminder.attempts + 1)
        )
        claimed = [_prepare(unit, bar_id, number, now) for bar_id, number in keys]
        return [replace(one, claimed_at=began) for one in claimed if one is not None]


def still_ours(store: Store, one: DueReminder, now: datetime) -> bool:
    """Confirm that no other process has taken over a claim, and extend the lease.

    Within half of its lease no query is needed.
    """
    if uptime() - one.claimed_at < LEASE.total_seconds() / 2:
        return True
    mine = (
        update(Reminder)
        .where(
            Reminder.bar_id == one.bar.id,
            Reminder.id == one.id,
            Reminder.state == ReminderState.SENDING,
            Reminder.attempts == one.attempt,
        )
        .values(lease_until=now + LEASE)
        .returning(Reminder.id)
        .execution_options(synchronize_session=False)
    )
    with store.writing() as unit:
        return unit.session.scalar(mine) is not None


def late(store: Store, channel: str, now: datetime) -> tuple[int, float]:
    """Return the number of reminders overdue for more than a minute, and the longest delay in seconds."""
    query = select(func.count(), func.min(Reminder.due_at)).where(
        Reminder.channel == channel,
        Reminder.state == ReminderState.WAITING,
        Reminder.due_at < now - timedelta(minutes=1),
    )
    with store.reading() as unit:
        count, first = unit.session.execute(query).one()
    return count, 0.0 if first is None else (now - first).total_seconds()


def _free_lost(unit: Unit, channel: str, now: datetime) -> None:
    """Release claims that a process never settled; their reminders may or may not have been sent.

    A lease with an end beyond the maximum was given before the clock was set back.
    """
    unit.session.execute(
        update(Reminder)
        .where(
            Reminder.channel == channel,
            _SENDING,
            or_(Reminder.lease_until <= now, Reminder.lease_until > now + 2 * LEASE),
        )
        .values(state=ReminderState.WAITING, unsure=True, due_at=now)
    )


def _prepare(unit: Unit, bar_id: int, number: int, now: datetime) -> DueReminder | None:
    book = unit.bar(bar_id)
    row = book.get(Reminder, number)
    bar_row = unit.session.get(Bar, bar_id)
    if row is None or bar_row is None:
        return None
    bar = BarView.of(bar_row)
    batch = None if row.batch_id is None else book.get(Batch, row.batch_id)
    found = _still_so(book, bar_row, row, now)
    if found is None:
        row.state = ReminderState.SKIPPED
        return None
    details, name = found
    own = row.kind == BLOCKED or row.details.get("own", False) or (row.kind == OWN and row.person_id)
    refused = row.details.get(_REFUSED, [])
    where = destination(book, row.person_id, None if own else bar.team_room_id, refused)
    if row.details.get("own") and where is not None and not _reaches(book, where, row.person_id):
        if not refused:
            row.state = ReminderState.SKIPPED  # everybody else has their own reminder
            return None
        where = None
    if where is None:
        # Nobody can have it; it waits for another round, or until somebody writes.
        row.state, row.due_at = ReminderState.WAITING, now + _ANOTHER_ROUND
        row.details = {**row.details, _REFUSED: [], UNDELIVERED: True}
        row.last_error = row.last_error or "nobody reachable"
        return None
    place, language = where
    return DueReminder(
        bar,
        number,
        row.kind,
        row.first_due_at,
        row.unsure,
        details,
        place,
        language,
        row.batch_id,
        name if batch is None else str(batch.frozen["formula"]),
        Fraction(0) if batch is None else batch.total_ml,
        None if batch is None else batch.discard_on,
        batch is not None and _is_to_strain(batch.frozen),
        row.attempts,
        instead=bar.team_room_id in refused,
    )


def _is_to_strain(frozen: JsonObject) -> bool:
    dimensions = (line["dimension"] for line in frozen["lines"])
    return not frozen.get("strained") and is_steeped(frozen["preparation"], dimensions)


def _still_so(book: Book, bar: Bar, row: Reminder, now: datetime) -> tuple[JsonObject, str] | None:
    """Return the details and name for a reminder, or None if it is no longer needed."""
    if row.kind in {OWN, MORNING}:
        return _planned_again(book, BarView.of(bar), row, now)
    if row.kind == CLOSE and (
        _asked_since(book, row, now) or not _follow_up_close(book, BarView.of(bar), row, now)
    ):
        return None
    details, name = dict(row.details), ""
    if row.kind == "discard" and _overtaken(book, row, now):
        return None
    if row.kind == "peeled":
        left = left_of(book, int(details["peeled"]))
        if left is None:
            return None
        name = left.name
        details |= {"left": str(left.count), "lost_at": left.lost_at}
    if row.kind == BLOCKED and not _is_blocked(book, row):
        return None
    if row.kind == DELETION:
        if bar.delete_after is None or bar.delete_after <= now:
            return None
        details["deleted_at"] = bar.delete_after
    return details, name


def _is_blocked(book: Book, row: Reminder) -> bool:
    """Whether the chat that was lost is still out of reach."""
    room = book.session.get(Room, row.details.get("room", 0))
    return room is not None and not room.reachable


def _planned_again(book: Book, bar: BarView, row: Reminder, now: datetime) -> tuple[JsonObject, str]:
    """Plan the next one of a repeated reminder; return its details and the name of its recipient."""
    if row.kind == MORNING:
        own_reminders.plan_morning(book, bar, now)
    else:
        own_reminders.follow_up(book, bar, row, now)
    member = None if row.person_id is None else book.get(Member, row.person_id)
    return dict(row.details), "" if member is None else member.name


def _reaches(book: Book, where: tuple[Destination, str | None] | None, person_id: int | None) -> bool:
    """Whether this is the person's own chat, and not that of a substitute."""
    member = book.one(Member, Member.person_id == person_id, Member.left_at.is_(None))
    return where is not None and member is not None and where[0].room_id == member.room_id


def _follow_up_close(book: Book, bar: BarView, row: Reminder, now: datetime) -> bool:
    """Plan the next prompt; after a long stop, use the latest night and count the missed ones.

    Return whether the night is still to be asked about: somebody may have said that nothing was thrown out.
    """
    asked = date.fromisoformat(row.details["day"])
    latest = bar.day_of(now)
    while latest > asked and (
        not is_service_day(latest, bar.settings.service_days)
        or instant_of(latest, bar.close_prompt_at, bar.zone) > now
    ):
        latest -= timedelta(days=1)
    if row.sent_at is None and row.details.get("own") and latest == asked:
        ask_all_at_close(book, bar, asked, row.first_due_at)
    if latest > asked:
        gone = [asked + timedelta(days=days) for days in range((latest - asked).days)]
        missed = sum(is_service_day(night, bar.settings.service_days) for night in gone)
        missed += int(row.details.get("missed", 0))
        row.details = {**row.details, "day": latest.isoformat(), "missed": missed}
        row.first_due_at = instant_of(latest, bar.close_prompt_at, bar.zone)
    book.session.flush()
    plan_close(book, bar, now)
    return not nights.is_without_waste(book, date.fromisoformat(row.details["day"]))


def _asked_since(book: Book, row: Reminder, now: datetime) -> bool:
    """Whether the prompt of a later night is due as well: it counts this night as missed."""
    later = book.all(
        Reminder,
        Reminder.kind == CLOSE,
        Reminder.key > row.key,
        Reminder.person_id.is_not_distinct_from(row.person_id),
        Reminder.first_due_at <= now,
        Reminder.state.in_([ReminderState.WAITING, ReminderState.SENDING]),
    )
    if not later:
        return False
    newest = max(later, key=lambda one: one.key)
    newest.details = {**newest.details, "missed": int(newest.details.get("missed", 0)) + 1}
    return True


def _overtaken(book: Book, row: Reminder, now: datetime) -> bool:
    """Whether a nearer discard reminder of the same batch is due as well: only the latest is sent."""
    nearer = book.all(
        Reminder,
        Reminder.batch_id == row.batch_id,
        Reminder.kind == "discard",
        Reminder.first_due_at > row.first_due_at,
        Reminder.first_due_at <= now,
    )
    return bool(nearer)


def settle(store: Store, one: DueReminder, sent: Sent, now: datetime) -> ReminderState | None:
    """Record the outcome of a send, and plan the next attempt unless somebody has it.

    None if another process has claimed it since and will settle it.
    """
    outcome = sent.outcome
    with store.writing() as unit:
        row = unit.bar(one.bar.id).get(Reminder, one.id)
        if row is None or row.state != ReminderState.SENDING or row.attempts != one.attempt:
            return None
        row.last_error = sent.error[:200] or None
        if outcome is Outcome.SENT:
            row.state, row.sent_at, row.unsure = ReminderState.SENT, now, False
            row.details = {
                name: row.details[name] for name in row.details if name not in {_REFUSED, UNDELIVERED}
            }
        else:
            row.state = ReminderState.WAITING
            row.unsure = row.unsure or outcome is Outcome.UNSURE
            wait = max(sent.wait, _FIRST_RETRY * 2 ** min(row.attempts - 1, 7))
            if outcome is Outcome.REFUSED:
                refused = [*row.details.get(_REFUSED, []), one.destination.room_id]
                row.details = {**row.details, _REFUSED: refused}
                wait = timedelta(0)
            if outcome is Outcome.BLOCKED:
                room = unit.session.get(Room, one.destination.room_id)
                if room is not None and room.reachable:
                    lost(unit, room, now)
                wait = timedelta(0)
            row.due_at = now + wait
        return ReminderState(row.state)


def undelivered(store: Store, channel: str) -> int:
    """Return the number of reminders that no chat would take so far."""
    query = select(func.count()).select_from(Reminder).where(*_is_undelivered(channel))
    with store.reading() as unit:
        return unit.session.scalar(query) or 0


def heard_from(store: Store, channel: str, chat: str, now: datetime) -> bool:
    """Make the undelivered reminders of a chat's bars due again; return whether there are any."""
    with store.writing() as unit:
        session = unit.session
        room = session.scalar(select(Room).where(Room.channel == channel, Room.outside_id == chat))
        if room is None:
            return False
        bars = select(Member.bar_id).where(Member.room_id == room.id, Member.left_at.is_(None))
        of_chat = or_(Reminder.bar_id.in_(bars), Reminder.bar_id == (room.bar_id or 0))
        rows = session.scalars(select(Reminder).where(*_is_undelivered(channel), of_chat)).all()
        for row in rows:
            row.due_at = now
        return bool(rows)


def _is_undelivered(channel: str) -> tuple[ColumnElement[bool], ...]:
    kept = Reminder.details[UNDELIVERED].as_boolean()
    return Reminder.channel == channel, Reminder.state == ReminderState.WAITING, kept.is_(True)
