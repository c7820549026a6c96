"""Delete a bar after a seven-day grace period, and export the data of one member."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, datetime, timedelta
from fractions import Fraction
from typing import Any

from sqlalchemy import RowMapping, Table, delete, or_, select, update
from sqlalchemy.orm import Session

from bot.work.context import BarView, Context, Role
from bot.work.errors import BadValueError, NotAllowedError, NotThereError
from bot.work.people.team import forget_account
from bot.work.reminders import planning
from storage.store import Store
from storage.tables import Bar, Base, Entry, Member, Person, Room, Trial, TrialVariant
from storage.types import JsonObject, exact_text
from storage.unit import Unit

GRACE_DAYS = 7
DELETED = "deleted"  # the name left of a deleted bar; its number is never reused
_WHOSE = ("by", "made_by", "person_id", "done_by")
_SECRET = frozenset({"code_hash"})
# The tables whose rows tell the key of a blind trial: by the trial or its bottle, in this column.
_TELLING = {
    "trial": ("trial", "id"),
    "trial_score": ("trial", "trial_id"),
    "batch": ("bottle", "id"),
    "batch_event": ("bottle", "batch_id"),
    "bottling": ("bottle", "batch_id"),
}
_OUTLINE = frozenset({"id", "at", "made_at", "joined_at", "left_at", "business_day", "what", *_WHOSE})


def _bar(context: Context) -> Bar:
    row = context.book.session.get(Bar, context.bar.id)
    if row is None:
        raise NotThereError("bar", context.bar.name)
    return row


def matches_name(bar: BarView, typed: str) -> bool:
    """Whether the text is the bar's name, ignoring case and spaces."""
    return " ".join(typed.split()).casefold() == " ".join(bar.name.split()).casefold()


def begin(context: Context, typed: str) -> datetime:
    """Schedule the deletion of the bar; return its time. Only the owner may, by typing its name.

    Raises NotAllowedError, or BadValueError for another name.
    """
    if context.role is not Role.OWNER:
        raise NotAllowedError(Role.OWNER)
    if not matches_name(context.bar, typed):
        raise BadValueError("bar name", typed[:80])
    row = _bar(context)
    row.delete_after = context.now + timedelta(days=GRACE_DAYS)
    context.log("delete bar")
    context.book.session.flush()
    planning.plan_deletion(context.book, context.bar, row.delete_after, context.now)
    return row.delete_after


def keep(context: Context) -> bool:
    """Cancel the deletion; False if none was scheduled. Only the owner may."""
    if context.role is not Role.OWNER:
        raise NotAllowedError(Role.OWNER)
    row = _bar(context)
    if row.delete_after is None:
        return False
    row.delete_after = None
    planning.cancel_deletion(context.book)
    context.log("keep bar")
    context.book.session.flush()
    return True


def purge(store: Store, now: datetime) -> int:
    """Delete every bar past its seven days, with all its data; return their number."""
    with store.writing() as unit:
        query = select(Bar.id).where(Bar.delete_after.is_not(None), Bar.delete_after <= now)
        found = list(unit.session.scalars(query))
        for bar_id in found:
            _delete(unit, bar_id)
    return len(found)


def _delete(unit: Unit, bar_id: int) -> None:
    session = unit.session
    members = session.execute(select(Member.person_id, Member.room_id).where(Member.bar_id == bar_id)).all()
    session.execute(update(Person).where(Person.bar_id == bar_id).values(bar_id=None))
    session.execute(update(Room).where(Room.bar_id == bar_id).values(bar_id=None, title="", thread=None))
    for table in reversed(Base.metadata.sorted_tables):
        if _is_of_a_bar(table):
            session.execute(delete(table).where(table.c.bar_id == bar_id))
    row = session.get(Bar, bar_id)
    if row is not None:
        # The row stays to reserve its number: old labels and buttons must never match another bar.
        row.name, row.settings, row.team_room_id, row.delete_after = DELETED, {}, None, None
        row.revision += 1
    session.flush()
    for person_id, room_id in members:
        forget_account(session, person_id, [] if room_id is None else [room_id])


def _is_of_a_bar(table: Table) -> bool:
    return "bar_id" in table.primary_key.columns


def identity(session: Session, person_id: int) -> JsonObject:
    """Return the data stored about a person outside any bar."""
    person = session.get(Person, person_id)
    if person is None:
        return {}
    return {
        "name": person.name,
        "channel": person.channel,
        "channel_id": person.outside_id,
        "language": person.language,
    }


def held_of_member(context: Context, *, content: bool = True) -> JsonObject:
    """Return all data that the bar holds about the calling member: identity, and every row they wrote.

    Without `content`, a row is its number, its times and its kind; so is a row that tells the key of a blind
    trial while that is running.
    """
    tells = _key_of_blind_trials(context)
    held: JsonObject = {
        **identity(context.book.session, context.person_id),
        "bar": context.bar.name,
        "name": context.name,
    }
    for table in Base.metadata.sorted_tables:
        whose = [table.c[name] for name in _WHOSE if name in table.c]
        if not _is_of_a_bar(table) or not whose:
            continue
        query = (
            select(table)
            .where(
                table.c.bar_id == context.book.bar_id, or_(*(column == context.person_id for column in whose))
            )
            .order_by(*table.primary_key.columns)  # else the order tells which rows were changed last
        )
        rows = [
            {
                key: _plain(value)
                for key, value in row.items()
                if key not in _SECRET and (key in _OUTLINE or (content and not tells(table.name, row)))
            }
            for row in context.book.session.execute(query).mappings()
        ]
        if rows:
            held[table.name] = rows
    return held


def _key_of_blind_trials(context: Context) -> Callable[[str, RowMapping], bool]:
    """Return whether a row of a table tells which bottle of a running blind trial is which."""
    running = context.book.all(Trial, Trial.blind.is_(True), Trial.state == "open")
    trials = {row.id for row in running}
    variants = context.book.all(TrialVariant, TrialVariant.trial_id.in_(trials))
    bottles = {row.batch_id for row in variants if row.batch_id is not None}
    entries = context.book.all(Entry, Entry.chain.is_(None)) if bottles else ()
    roots = {row.id for row in entries if row.details.get("batch") in bottles}

    def tells(table: str, row: RowMapping) -> bool:
        if table == "entry":
            return (row["chain"] or row["id"]) in roots
        of, number = _TELLING.get(table, ("", ""))
        return bool(of) and row[number] in (trials if of == "trial" else bottles)

    return tells


def _plain(value: Any) -> Any:
    if isinstance(value, Fraction):
        return exact_text(value)
    if isinstance(value, datetime | date):
        return value.isoformat()
    return value
