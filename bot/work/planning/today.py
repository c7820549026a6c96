"""List what is due in a bar today, the most urgent kinds first."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import timedelta
from enum import StrEnum

from bot.trade.events.allotment import pack_day
from bot.work.batches import batches
from bot.work.batches.batches import BatchState, BatchView, Clarity
from bot.work.context import Context
from bot.work.events import events
from bot.work.events.events import EventView
from bot.work.fruit import peeled
from bot.work.fruit.peeled import PeeledView
from bot.work.planning import plan
from bot.work.planning.event_stock import EventStock, PartPlan
from bot.work.planning.plan import FormulaPlan, Shopping
from bot.work.reminders import own
from bot.work.reminders.own import Planned
from bot.work.stock import on_hand
from bot.work.stock.on_hand import OnHand

_ASKED_DAYS = 14  # after an event. Common practice, no source.


class EventStep(StrEnum):
    """A step of an event."""

    MAKE = "make"
    PACK = "pack"
    SERVE = "serve"
    NOTE_BACK = "note back"


@dataclass(frozen=True, slots=True)
class EventTask:
    """A step of an event that is due; `part` is what to make."""

    step: EventStep
    event: EventView
    part: PartPlan | None = None


@dataclass(frozen=True, slots=True)
class Today:
    """The tasks of a business day: batches by what they need, peeled fruit, what people wrote, events, stock.

    `last_days` are batches near their discard date; `unseen` have rested and nobody has seen them clear.
    `shopping` is None if nothing must be bought. `asks_at_close`: waste is asked about tonight; `closer` is
    who closes, '' while nobody said so.
    """

    past: tuple[BatchView, ...]
    peeled: tuple[PeeledView, ...]
    last_days: tuple[BatchView, ...]
    unseen: tuple[BatchView, ...]
    notes: tuple[Planned, ...]
    reminders: tuple[Planned, ...]
    events: tuple[EventTask, ...]
    make: tuple[FormulaPlan, ...]
    shopping: Shopping | None
    low: tuple[OnHand, ...]
    asks_at_close: bool
    closer: str


def due(context: Context) -> Today:
    """Return what is due on the current business day."""
    today = context.today
    known = [one for one in batches.listed(context) if not one.frozen.get("trial")]
    past = [one for one in known if one.discard_on < today]
    near = [
        one
        for one in known
        if one not in past and batches.near_discard(one, today, context.bar.settings.discard_warn_days)
    ]
    shopping = plan.shopping(context)
    asks, closer = own.closer(context)
    soon = context.now + timedelta(hours=24)
    return Today(
        tuple(past),
        tuple(one for one in peeled.waiting(context) if one.lost_at <= soon),
        tuple(near),
        tuple(one for one in known if one not in past and _is_unseen(context, one)),
        tuple(own.notes(context, today)),
        tuple(
            one
            for one in own.listed(context)
            if one.kind == own.OWN and one.due <= soon and not events.is_about(one.details)
        ),
        tuple(_event_tasks(context)),
        tuple(one for one in shopping.batches if one.batch is not None and one.batch.make_on <= today),
        shopping if shopping.lines else None,
        tuple(one for one in on_hand.listed(context) if one.low),
        asks,
        closer,
    )


def _event_tasks(context: Context) -> Iterator[EventTask]:
    """Yield the steps of events that are due today or overdue, the earliest event first."""
    stock = EventStock(context)
    for event in reversed(events.listed(context)):
        ago = (context.today - event.asked.day).days
        if 0 < ago <= _ASKED_DAYS and event.open_parts:
            yield EventTask(EventStep.NOTE_BACK, event)
    for plan_ in stock.plans():
        event = plan_.event
        for part in plan_.to_make:
            if part.part.make_by <= context.today:
                yield EventTask(EventStep.MAKE, event, part)
        if event.asked.day == context.today:
            yield EventTask(EventStep.SERVE, event)
        elif pack_day(event.asked.day, context.today) == context.today:
            yield EventTask(EventStep.PACK, event)


def _is_unseen(context: Context, batch: BatchView) -> bool:
    """Whether a batch has rested and must be looked at."""
    if batch.state is not BatchState.RESTING or not batch.rested(context.now):
        return False
    return batch.clarity != Clarity.CLEAR
