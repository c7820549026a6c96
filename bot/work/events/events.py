"""Plan an event: amounts, latest days, bottles, shopping and reminders; and note what came back."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from fractions import Fraction

from bot.trade.days import instant_of
from bot.trade.events import amounts
from bot.trade.events.amounts import Need
from bot.work.context import Context
from bot.work.errors import BadValueError, NotThereError
from bot.work.formulas import formulas
from bot.work.formulas.formulas import FormulaView
from bot.work.menu import menu
from bot.work.planning import plan
from bot.work.planning.plan import Shopping
from bot.work.reminders import own
from bot.work.reminders.own import When
from bot.work.standing import Details, Value
from storage.tables import Event
from storage.types import JsonObject

MOST_GUESTS = 20_000
MOST_EACH = 20
_BUY_BEFORE = timedelta(days=2)  # days before making. Common practice, no source.


@dataclass(frozen=True, slots=True)
class Asked:
    """An event as asked: the day, guests, drinks for each, and the formulas or drinks of the list."""

    day: date
    guests: int
    each: Fraction
    formulas: tuple[int, ...]
    drinks: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Part:
    """One preparation of an event: its need, what to make and to take, and the latest day to make it."""

    formula: FormulaView
    need: Need
    make_ml: Fraction
    bottles: int
    bottle_ml: Fraction
    sprayers: int
    make_by: date


@dataclass(frozen=True, slots=True)
class EventView:
    """An event with its plan; `back` are the mL that came back by formula, None before that."""

    id: int
    asked: Asked
    parts: tuple[Part, ...]
    shopping: Shopping
    back: Mapping[int, Fraction] | None

    @property
    def drinks(self) -> Fraction:
        """The drinks expected in all."""
        return self.asked.guests * self.asked.each


def plan_event(context: Context, asked: Asked) -> EventView:
    """Plan an event and its reminders. Raises BadValueError, NotThereError."""
    if not 0 < asked.guests <= MOST_GUESTS:
        raise BadValueError("number of people", str(asked.guests))
    if not 0 < asked.each <= MOST_EACH:
        raise BadValueError("number of drinks", str(float(asked.each)))
    if not context.today <= asked.day <= context.today + own.FURTHEST:
        raise BadValueError("day", asked.day.isoformat())
    said: JsonObject = {
        "guests": asked.guests,
        "each": str(asked.each),
        "formulas": list(asked.formulas),
        "drinks": list(asked.drinks),
    }
    row = context.book.add(
        Event(day=asked.day, plan=said, made_at=context.now, by=context.person_id, back=None)
    )
    view = _view(context, row)
    context.log("event", event=row.id, guests=asked.guests, day=asked.day.isoformat())
    return view


def remind(context: Context, number: int, texts: Sequence[tuple[str, date]]) -> None:
    """Plan the reminders of an event, at the bar's usual hour; those whose time is past are left out."""
    row = _row(context, number)
    for text, day in texts:
        due = instant_of(day, context.bar.settings.discard_prompt_at, context.bar.zone)
        own.put_for(context, f"event:{row.id}", text, When(due))


def listed(context: Context) -> list[EventView]:
    """Return the events that are not cancelled, the latest day first."""
    rows = context.book.all(Event, Event.cancelled_at.is_(None), order=Event.day.desc())
    return [_view(context, row) for row in rows]


def get(context: Context, number: int) -> EventView:
    """Return one event. Raises NotThereError."""
    return _view(context, _row(context, number))


def note_back(context: Context, number: int, back: Mapping[int, Fraction]) -> EventView:
    """Note the mL of each formula that came back. Raises NotThereError."""
    row = _row(context, number)
    before = row.back
    row.back = {**(before or {}), **{str(one): str(ml) for one, ml in back.items()}}
    context.log("event back", event=number, before=before, after=row.back)
    return _view(context, row)


def _row(context: Context, number: int) -> Event:
    row = context.book.get(Event, number)
    if row is None or row.cancelled_at is not None:
        raise NotThereError("event", str(number))
    return row


# -- the plan -------------------------------------------------------------------------------------


def _view(context: Context, row: Event) -> EventView:
    said = row.plan
    asked = Asked(
        row.day, said["guests"], Fraction(said["each"]), tuple(said["formulas"]), tuple(said["drinks"])
    )
    parts = _parts(context, asked)
    back = None if row.back is None else {int(one): Fraction(ml) for one, ml in row.back.items()}
    needs = [(one.formula, one.make_ml) for one in parts]
    return EventView(row.id, asked, parts, plan.shopping_for(context, needs, asked.day), back)


def _parts(context: Context, asked: Asked) -> tuple[Part, ...]:
    """Share the drinks among the subjects evenly, and add up the need of each formula."""
    subjects = len(asked.formulas) + len(asked.drinks)
    each = float(asked.guests * asked.each) / subjects
    shared = subjects > 1
    found: dict[int, list[Need]] = {}
    views = {number: formulas.get(context, number) for number in asked.formulas}
    for view in views.values():
        sprays = view.sprays or (Fraction(1), Fraction(1))
        found.setdefault(view.id, []).append(_need(context, each, shared, sprays, view.spray_ml))
    for number in asked.drinks:
        for line in menu.get(context, number).lines:
            views[line.formula.id] = line.formula
            ml = Fraction(1) if line.ml is None else line.ml
            size = line.formula.spray_ml if line.sprays is not None else (ml, ml)
            sprays = line.sprays or (Fraction(1), Fraction(1))
            found.setdefault(line.formula.id, []).append(_need(context, each, shared, sprays, size))
    return tuple(_part(context, asked, views[number], needs) for number, needs in found.items())


def _need(
    context: Context,
    drinks: float,
    shared: bool,
    sprays: tuple[Fraction, Fraction],
    size: tuple[Fraction, Fraction],
) -> Need:
    loss = float(Fraction(context.bar.settings.loss_percent)) / 100
    low, high = (float(end) for end in sprays)
    small, large = (float(end) for end in size)
    return amounts.need(drinks, shared, (low, high), (small, large), loss)


def _part(context: Context, asked: Asked, view: FormulaView, needs: Sequence[Need]) -> Part:
    need = Need(sum(one.likely_ml for one in needs), sum(one.enough_ml for one in needs))
    bottle = Fraction(50) if view.sprays is not None else Fraction(500)
    count = max(1, math.ceil(need.enough_ml / float(bottle)))
    return Part(
        view,
        need,
        count * bottle,
        count,
        bottle,
        min(count, amounts.sprayers(asked.guests)) if view.sprays is not None else 0,
        amounts.latest_to_make(asked.day, float(view.rest_hours)),
    )


def buy_by(found: EventView) -> date:
    """Return the day to have bought everything by."""
    return min(one.make_by for one in found.parts) - _BUY_BEFORE


# -- undo ------------------------------------------------------------------------------------------


def _is_cancelled(context: Context, details: Details) -> bool:
    row = context.book.get(Event, details["event"])
    return row is None or row.cancelled_at is not None


def _cancel(context: Context, details: Details, cancelled: bool) -> None:
    row = context.book.get(Event, details["event"])
    if row is not None:
        row.cancelled_at = context.now if cancelled else None
        own.switch(context, f"event:{row.id}", on=not cancelled)


def _read_back(context: Context, details: Details) -> JsonObject | None:
    return _row(context, details["event"]).back


def _write_back(context: Context, details: Details, back: JsonObject | None) -> None:
    _row(context, details["event"]).back = back


PLANNED = Value(_is_cancelled, _cancel, states=(True, False))
BACK = Value(_read_back, _write_back)
