"""Fill an invented bar with twelve weeks of work, from a recording of what the use cases wrote."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from datetime import timedelta

from sqlalchemy import func, select
from sqlalchemy.orm import aliased

from bot.demo import book as demo_book
from bot.demo import recorded
from bot.demo.book import OWNER, TEAM
from bot.demo.stage import Stage
from bot.trade.safety.jurisdiction import Jurisdiction
from bot.work.batches.batches import BatchState
from bot.work.context import BarView, Clock, Context, Role
from bot.work.errors import AlreadyThereError
from bot.work.people import bars, invites
from bot.work.reminders import planning
from bot.work.reminders.planning import ReminderState
from bot.work.standing import thrown_out
from storage.store import Store
from storage.tables import Batch, Reminder, Waste

_COLLEAGUES = "demo"  # the channel of the invented colleagues: nothing is delivered there
_STALE_AFTER = timedelta(hours=24)

Work = Callable[[Stage], BarView]
"""Writes the twelve weeks into the open bar and returns the changed bar."""


@dataclass(frozen=True, slots=True)
class Filled:
    """The contents of the demo bar, and a code for one more manager; `already`: it existed before."""

    bar: str
    batches: int
    waste_lines: int
    joining_code: str
    already: bool = False


def fill(
    store: Store,
    clock: Clock,
    channel: str,
    person_name: str,
    work: Work = recorded.put,
) -> Filled:
    """Fill the demo bar for a person of a channel; its last night is the most recent one.

    `work` writes the twelve weeks. A second call only makes a new joining code. Raises AlreadyThereError for
    a person in another bar: the demo must not move them out of it.
    """
    now = clock.now()
    outside_id = person_name.casefold() or "me"
    with store.writing() as unit:
        stage = Stage(unit, now, channel)
        owner = stage.enter(OWNER, channel, outside_id, f"{channel} {outside_id}", person_name or "me")
        if owner.bar is not None:
            if not owner.bar.settings.more.get("demo"):
                raise AlreadyThereError("bar", owner.bar.name)
            return _told(owner.context(unit, now, "demo"), already=True)
        open_bar(stage, person_name or "me")
        stage.bar = work(stage)
        context = stage.context(OWNER, now)
        settle_stale(context)
        planning.plan_close(context.book, context.bar, now)
        settle_undeliverable(context)
        return _told(context)


def open_bar(stage: Stage, name: str) -> None:
    """Open the bar, set it up and add the colleagues."""
    stage.bar = bars.open_bar(
        stage.unit,
        stage.cast[OWNER],
        name,
        True,
        stage.at(stage.first_day, "12:00"),
        name=demo_book.BAR,
        zone=demo_book.ZONE,
        jurisdiction=Jurisdiction.EU,
        currency=demo_book.CURRENCY,
        units="metric",
        closing_minute=demo_book.CLOSING_MINUTE,
    )
    context = stage.context(OWNER, stage.at(stage.first_day, "12:05"))
    stage.bar = bars.change(context, service_days=demo_book.SERVICE_DAYS, more={"demo": True})
    for number, (role, who) in enumerate(TEAM):
        outside_id = f"{who.casefold()} {stage.bar.id}"
        joiner = stage.enter(role, _COLLEAGUES, outside_id, outside_id, who)
        at = stage.at(stage.first_day, f"12:{10 + 20 * number}")
        invited = invites.invite(stage.context(OWNER, at), Role(role))
        invites.join(stage.unit, joiner, invited.code, who, True, at + timedelta(minutes=5))


def settle_stale(context: Context) -> None:
    """Mark reminders older than a day as done, as in a bar at work.

    A rested batch without a check stays open: its reminder is still to come.
    """
    overdue = context.book.all(
        Reminder,
        Reminder.state == ReminderState.WAITING,
        Reminder.due_at <= context.now - _STALE_AFTER,
    )
    for row in overdue:
        batch = None if row.batch_id is None else context.book.get(Batch, row.batch_id)
        if row.kind != "rested" or batch is None or batch.state != BatchState.RESTING:
            planning.done(context, row.id)
    context.book.session.flush()


def settle_undeliverable(context: Context) -> None:
    """Mark reminders for the invented colleagues as done, because nothing is delivered to them."""
    for row in context.book.all(
        Reminder, Reminder.state == ReminderState.WAITING, Reminder.channel == _COLLEAGUES
    ):
        row.state = ReminderState.SKIPPED
    context.book.session.flush()


def _told(context: Context, already: bool = False) -> Filled:
    code = invites.invite(context, Role.MANAGER).code
    count = context.book.session.scalar
    taken_back = aliased(Waste)
    standing = (
        ~select(taken_back.id)
        .where(taken_back.bar_id == Waste.bar_id, taken_back.corrects == Waste.id)
        .correlate(Waste)
        .exists()
    )
    made = count(context.book.rows(Batch, func.count(), where=[Batch.state != BatchState.UNDONE]))
    lines = count(context.book.rows(Waste, func.count(), where=[standing, thrown_out() > 0]))
    return Filled(context.bar.name, int(made or 0), int(lines or 0), code, already)
