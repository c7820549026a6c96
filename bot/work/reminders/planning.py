"""Plan reminders as rows with a key, so that each exists once; `delivery` sends them."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, datetime, timedelta
from enum import StrEnum

from sqlalchemy import select, update

from bot.trade.days import (
    defer_past_quiet,
    instant_of,
    local_time,
    next_service_day,
)
from bot.work.context import BarView, Context, Role
from bot.work.errors import NotThereError
from storage.tables import Bar, Batch, Member, Person, Reminder, Room
from storage.types import JsonObject
from storage.unit import Book

RECHECK_AFTER = timedelta(hours=24)
CLOSE = "close"  # asks what was thrown out; done is a night without waste
DELETION = "deletion"  # the bar itself will be deleted soon
DELETION_WARNING = timedelta(hours=24)
UNDELIVERED = "undelivered"  # in the details: nobody could have it so far
BLOCKED = "blocked"  # a person blocked the bot: told to a manager, never in the team's chat


_MANAGING = tuple(role for role in Role if role.manages)


class ReminderState(StrEnum):
    """The state of a reminder. The values are stored."""

    WAITING = "waiting"
    SENDING = "sending"
    SENT = "sent"
    DONE = "done"
    CANCELLED = "cancelled"
    SKIPPED = "skipped"
    FAILED = "failed"
    LISTED = "listed"  # a note: shown until it is done, never sent


# -- planning -------------------------------------------------------------------------------


def put(
    book: Book,
    key: str,
    kind: str,
    due: datetime,
    *,
    batch_id: int | None = None,
    person_id: int | None = None,
    details: JsonObject | None = None,
    revive: bool = False,
) -> Reminder:
    """Plan one reminder under its key and return it; for an existing one only the time may change."""
    row = book.one(Reminder, Reminder.key == key)
    if row is not None:
        movable = {ReminderState.WAITING, *((ReminderState.CANCELLED,) if revive else ())}
        if row.state in movable:
            row.state, row.due_at, row.first_due_at = ReminderState.WAITING, due, due
        return row
    return book.add(
        Reminder(
            channel=_channel(book, person_id),
            key=key,
            kind=kind,
            batch_id=batch_id,
            person_id=person_id,
            details=details or {},
            first_due_at=due,
            due_at=due,
            state=ReminderState.WAITING,
        )
    )


def _channel(book: Book, person_id: int | None) -> str:
    """Return the channel of the bar: its team chat's, else the person's, else the owner's."""
    session = book.session
    room = select(Room.channel).join(Bar, Bar.team_room_id == Room.id).where(Bar.id == book.bar_id)
    found = session.scalar(room)
    if found is None and person_id is not None:
        found = session.scalar(select(Person.channel).where(Person.id == person_id))
    if found is None:
        found = session.scalar(
            select(Person.channel)
            .join(Member, Member.person_id == Person.id)
            .where(Member.bar_id == book.bar_id, Member.left_at.is_(None))
            .order_by(Member.joined_at, Member.person_id)
            .limit(1)
        )
    return found or "telegram"


def plan_batch(book: Book, bar: BarView, batch: Batch, name: str, now: datetime) -> None:
    """Plan the reminders of a batch: rested, discard near, discard today."""
    by = batch.made_by
    settings = bar.settings
    if batch.rest_until > now:
        due = defer_past_quiet(batch.rest_until, bar.zone, settings.quiet_from, settings.quiet_to)
        put(book, f"rested:{batch.id}", "rested", due, batch_id=batch.id, person_id=by, revive=True)
    for days in sorted({settings.discard_warn_days, 0}, reverse=True):
        day = batch.discard_on - timedelta(days=days)
        due = instant_of(day, settings.discard_prompt_at, bar.zone)
        key = f"discard:{batch.id}:{days}"
        if due <= now:
            _drop(book, key, now)
        else:
            details = {"days": days}
            put(book, key, "discard", due, batch_id=batch.id, person_id=by, details=details, revive=True)
    _plan_look(book, bar, batch, now)


def _drop(book: Book, key: str, now: datetime) -> None:
    """Cancel a future reminder that an earlier date has overtaken."""
    row = book.one(Reminder, Reminder.key == key)
    if row is not None and row.state == ReminderState.WAITING and row.due_at > now:
        row.state = ReminderState.CANCELLED


def _plan_look(book: Book, bar: BarView, batch: Batch, now: datetime) -> None:
    """Plan the second check of its kind, well before the discard date."""
    text = batch.frozen.get("recheck_on")
    key = f"look:{batch.id}"
    if text is None or date.fromisoformat(text) >= batch.discard_on:
        _drop(book, key, now)
        return
    due = instant_of(date.fromisoformat(text), bar.settings.discard_prompt_at, bar.zone)
    if due > now:
        put(
            book,
            key,
            "recheck",
            due,
            batch_id=batch.id,
            person_id=batch.made_by,
            details={"routine": True},
            revive=True,
        )


def past_quiet(bar: BarView, due: datetime) -> datetime:
    """Return the instant, or the end of the bar's quiet hours if it falls within them."""
    return defer_past_quiet(due, bar.zone, bar.settings.quiet_from, bar.settings.quiet_to)


def plan_peeled(book: Book, peeled_id: int, fruit_id: int, due: datetime, person_id: int) -> None:
    """Plan the reminder before peeled fruit is lost."""
    details = {"peeled": peeled_id, "fruit": fruit_id}
    put(book, f"peeled:{peeled_id}", "peeled", due, person_id=person_id, details=details)


def settle_peeled(book: Book, peeled_id: int, by: int) -> None:
    """Mark the reminder of peeled fruit as done: nothing is left."""
    row = book.one(Reminder, Reminder.key == f"peeled:{peeled_id}")
    if row is not None and row.state in {ReminderState.WAITING, ReminderState.SENDING}:
        row.state, row.done_by = ReminderState.DONE, by


def revive_peeled(book: Book, peeled_id: int) -> None:
    """Reactivate the reminder of peeled fruit: some of it is left after all."""
    row = book.one(Reminder, Reminder.key == f"peeled:{peeled_id}")
    if row is not None and row.state in {ReminderState.DONE, ReminderState.SKIPPED} and row.sent_at is None:
        row.state = ReminderState.WAITING


def plan_recheck(book: Book, bar: BarView, batch: Batch, now: datetime) -> None:
    """Plan another check of a batch that was hazy or split."""
    settings = bar.settings
    due = defer_past_quiet(now + RECHECK_AFTER, bar.zone, settings.quiet_from, settings.quiet_to)
    day = due.date().isoformat()
    put(book, f"recheck:{batch.id}:{day}", "recheck", due, batch_id=batch.id, person_id=batch.made_by)


def plan_low_stock(
    book: Book,
    bar: BarView,
    ingredient_id: int,
    details: JsonObject,
    now: datetime,
    person_id: int,
) -> None:
    """Plan to report an ingredient below its par, together with the person's other waiting reports.

    Each report waiting alone has its own key.
    """
    for row in _low_stock_rows(book, ReminderState.WAITING):
        if row.person_id == person_id and not row.attempts:
            row.details = {"items": [*low_items(row.details), details]}
            return
    settings = bar.settings
    due = defer_past_quiet(now, bar.zone, settings.quiet_from, settings.quiet_to)
    key = f"low:{ingredient_id}:{book.next_number('low stock')}"
    put(book, key, "low stock", due, person_id=person_id, details={"items": [details]})


def low_items(details: JsonObject) -> list[JsonObject]:
    """Return the items of a low-stock reminder; an older format has just one."""
    return list(details["items"]) if "items" in details else [details]


def cancel_low_stock(book: Book, ingredient_id: int) -> None:
    """Cancel the waiting report of an ingredient: there is enough again."""
    for row in _low_stock_rows(book, ReminderState.WAITING, ReminderState.SENDING):
        items = low_items(row.details)
        left = [one for one in items if one["ingredient"] != ingredient_id]
        if not left:
            row.state = ReminderState.CANCELLED
        elif len(left) < len(items):
            row.details = {"items": left}


def _low_stock_rows(book: Book, *states: ReminderState) -> Sequence[Reminder]:
    return book.all(Reminder, Reminder.kind == "low stock", Reminder.state.in_(states), order=Reminder.id)


def plan_close(book: Book, bar: BarView, now: datetime) -> None:
    """Plan the next waste prompt, for one night only."""
    waiting = book.all(
        Reminder,
        Reminder.kind == CLOSE,
        Reminder.state.in_([ReminderState.WAITING, ReminderState.CANCELLED]),
    )
    due_day = _next_close(bar, now) if bar.settings.close_prompt else None
    wanted = {} if due_day is None else {_close_key(due_day, to): to for to in _asked_at_close(book, bar)}
    for row in waiting:
        overtaken = row.sent_at is None and row.due_at > now  # neither postponed nor due
        if due_day is None or (overtaken and row.key not in wanted):
            row.state = ReminderState.CANCELLED
        elif not overtaken and row.state == ReminderState.WAITING and bar.team_room_id is not None:
            _ask_the_team_instead(book, row)
    for key, to in wanted.items():
        if due_day is not None:
            details = {"day": due_day.isoformat(), **({} if to is None else {"own": True})}
            due = instant_of(due_day, bar.close_prompt_at, bar.zone)
            put(book, key, CLOSE, due, person_id=to, details=details, revive=True)


def _ask_the_team_instead(book: Book, row: Reminder) -> None:
    """Move a manager's prompt that was due before the team had a chat, but never sent, to that chat."""
    if row.details.get("own") and row.sent_at is None and not row.unsure:
        row.state = ReminderState.CANCELLED
        details = {name: value for name, value in row.details.items() if name != "own"}
        key = _close_key(date.fromisoformat(details["day"]), None)
        put(book, key, CLOSE, row.first_due_at, details=details)


def ask_all_at_close(book: Book, bar: BarView, day: date, due: datetime) -> None:
    """Plan a night's prompt for people who became managers after it was planned."""
    for to in _asked_at_close(book, bar):
        key = _close_key(day, to)
        if to is not None and book.one(Reminder, Reminder.key == key) is None:
            put(book, key, CLOSE, due, person_id=to, details={"day": day.isoformat(), "own": True})


def _close_key(day: date, person_id: int | None) -> str:
    return f"{CLOSE}:{day.isoformat()}" if person_id is None else f"{CLOSE}:{day.isoformat()}:{person_id}"


def _asked_at_close(book: Book, bar: BarView) -> list[int | None]:
    """Return the recipients: the team in its own chat (None), else every manager in private."""
    if bar.team_room_id is not None:
        return [None]
    managers = book.all(Member, Member.left_at.is_(None), Member.role.in_(_MANAGING), order=Member.person_id)
    return [member.person_id for member in managers]


def _next_close(bar: BarView, now: datetime) -> date | None:
    day = next_service_day(bar.day_of(now), bar.settings.service_days)
    while day is not None and instant_of(day, bar.close_prompt_at, bar.zone) <= now:
        day = next_service_day(day + timedelta(days=1), bar.settings.service_days)
    return day


def plan_deletion(book: Book, bar: BarView, when: datetime, now: datetime) -> None:
    """Plan the warning to the bar's team a day before the bar is deleted.

    It goes to the team's chat and to the owner, the only person who can stop it; without such a chat to each
    member.
    """
    due = min(past_quiet(bar, max(now, when - DELETION_WARNING)), when)
    key = f"{DELETION}:{when.isoformat()}"
    for member in book.all(Member, Member.left_at.is_(None)):
        if member.role == Role.OWNER or bar.team_room_id is None:
            own = {"own": True, "keeps": member.role == Role.OWNER}
            put(book, f"{key}:{member.person_id}", DELETION, due, person_id=member.person_id, details=own)
    if bar.team_room_id is not None:
        put(book, key, DELETION, due, details={"keeps": True})


def cancel_deletion(book: Book) -> None:
    """Cancel the pending warnings: the bar is kept."""
    book.session.execute(
        update(Reminder)
        .where(
            Reminder.bar_id == book.bar_id,
            Reminder.kind == DELETION,
            Reminder.state.in_([ReminderState.WAITING, ReminderState.SENDING]),
        )
        .values(state=ReminderState.CANCELLED)
    )


def settle_for_batch(book: Book, batch_id: int, kinds: Sequence[str], by: int) -> None:
    """Mark these kinds of a batch's reminders as done: their task has been performed."""
    _close(book, batch_id, ReminderState.DONE, by, kinds)


def cancel_for_batch(book: Book, batch_id: int) -> None:
    """Cancel all pending reminders of a batch."""
    _close(book, batch_id, ReminderState.CANCELLED, None, None)


def _close(
    book: Book, batch_id: int, state: ReminderState, by: int | None, kinds: Sequence[str] | None
) -> None:
    statement = update(Reminder).where(
        Reminder.bar_id == book.bar_id,
        Reminder.batch_id == batch_id,
        Reminder.state.in_([ReminderState.WAITING, ReminderState.SENDING]),
    )
    if kinds is not None:
        statement = statement.where(Reminder.kind.in_(kinds))
    book.session.execute(statement.values(state=state, done_by=by))


def snooze(context: Context, number: int, by: timedelta) -> datetime:
    """Postpone a reminder; return its new time. Raises NotThereError."""
    row = context.book.get(Reminder, number)
    if row is None or row.state in {ReminderState.DONE, ReminderState.CANCELLED}:
        raise NotThereError("reminder", str(number))
    row.due_at = row.first_due_at = context.now + by
    row.state = ReminderState.WAITING
    row.unsure = False
    row.attempts = 0
    return row.due_at


def snooze_until(context: Context, number: int, minute: int) -> datetime:
    """Postpone a reminder until the bar's clock next shows `minute` from midnight.

    Returns its new time. Raises NotThereError.
    """
    today = local_time(context.now, context.bar.zone).date()
    due = instant_of(today, minute, context.bar.zone)
    if due <= context.now:
        due = instant_of(today + timedelta(days=1), minute, context.bar.zone)
    return snooze(context, number, due - context.now)


def done(context: Context, number: int) -> str | None:
    """Mark a reminder as done; return its kind, or None if it already was. Raises NotThereError."""
    row = context.book.get(Reminder, number)
    if row is None:
        raise NotThereError("reminder", str(number))
    if row.state == ReminderState.DONE:
        return None
    for one in copies(context.book, row):
        one.state, one.done_by = ReminderState.DONE, context.person_id
    return row.kind


def copies(book: Book, row: Reminder) -> Sequence[Reminder]:
    """Return a reminder with its copies: each manager gets the prompt, and one answer is enough."""
    if row.kind != CLOSE or row.person_id is None:
        return [row]
    key = _close_key(date.fromisoformat(row.details["day"]), None)
    return book.all(Reminder, Reminder.kind == CLOSE, Reminder.key.startswith(f"{key}:"))
