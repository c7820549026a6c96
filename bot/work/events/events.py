"""Plan an event, change or cancel it, and note what came back."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from fractions import Fraction

from bot.trade.days import instant_of
from bot.work.context import Context
from bot.work.errors import BadValueError, NotThereError
from bot.work.events import needs
from bot.work.events.needs import Asked, Part, asked_of
from bot.work.reminders import own
from bot.work.reminders.own import When
from bot.work.standing import Details, Value
from storage.tables import Event
from storage.types import JsonObject, exact_text

MOST_GUESTS = 20_000
MOST_EACH = 20
_BUY_BEFORE = timedelta(days=2)  # days before making. Common practice, no source.
_ASKED = ("guests", "each", "formulas", "drinks")


@dataclass(frozen=True, slots=True)
class Back:
    """The mL of a preparation that came back and that were taken."""

    ml: Fraction
    taken_ml: Fraction

    @property
    def used_ml(self) -> Fraction:
        """The mL used."""
        return max(Fraction(0), self.taken_ml - self.ml)


@dataclass(frozen=True, slots=True)
class EventView:
    """An event: what was asked, its preparations, what came back by formula, the batches made for it.

    `drawn` are the mL that were taken off other batches, by batch.
    """

    id: int
    asked: Asked
    parts: tuple[Part, ...]
    back: Mapping[int, Back]
    batches: tuple[int, ...]
    drawn: Mapping[int, Fraction]

    @property
    def open_parts(self) -> list[Part]:
        """The preparations without a note of what came back."""
        return [one for one in self.parts if one.formula.id not in self.back]

    def taken_ml(self, part: Part) -> Fraction:
        """Return the mL of a preparation that were taken: as noted, else as listed."""
        noted = self.back.get(part.formula.id)
        return part.take_ml if noted is None else noted.taken_ml

    @property
    def buy_by(self) -> date:
        """The day to have bought everything by."""
        return min(one.make_by for one in self.parts) - _BUY_BEFORE


def plan_event(context: Context, asked: Asked) -> EventView:
    """Plan an event. Raises BadValueError, NotThereError."""
    _check(context, asked)
    row = context.book.add(
        Event(day=asked.day, plan=written(asked), made_at=context.now, by=context.person_id, back=None)
    )
    view = _view(context, row)
    context.log("event", event=row.id, guests=asked.guests, day=asked.day.isoformat())
    return view


def change(context: Context, number: int, asked: Asked) -> EventView:
    """Change what was asked of an event; it needs new reminders then. Raises BadValueError, NotThereError."""
    row = _row(context, number)
    _check(context, asked)
    before = _read_asked(row)
    about = f"event:{number}:{context.book.next_number('event reminders')}"
    after = {**written(asked), "day": asked.day.isoformat(), "about": about}
    _write_asked(context, {"event": number}, after)
    context.log("change event", event=number, before=before, after=after)
    return _view(context, row)


def cancel(context: Context, number: int) -> EventView:
    """Cancel an event and its reminders. Raises NotThereError."""
    row = _row(context, number)
    view = _view(context, row)
    _cancel(context, {"event": number}, True)
    context.log("cancel event", event=number, guests=view.asked.guests, day=row.day.isoformat())
    return view


@dataclass(frozen=True, slots=True)
class Reminding:
    """A reminder of an event: its words and day, and the formula that it says to make, if any."""

    text: str
    day: date
    formula: int | None = None


def remind(context: Context, number: int, reminders: Sequence[Reminding]) -> None:
    """Plan the reminders of an event, at the bar's usual hour; those whose time is past are left out."""
    about = mark(_row(context, number))
    for one in reminders:
        due = instant_of(one.day, context.bar.settings.discard_prompt_at, context.bar.zone)
        own.put_for(context, about, one.text, When(due), one.formula)


def is_about(details: Details) -> bool:
    """Whether the details of a reminder say that it belongs to an event."""
    return str(details.get("about", "")).startswith("event:")


def listed(context: Context) -> list[EventView]:
    """Return the events that are not cancelled, the latest day first."""
    rows = _rows(context)
    return [_view(context, row, rows) for row in reversed(rows)]


def coming(context: Context) -> list[EventView]:
    """Return the events of today and later that are not cancelled, the next first."""
    return [one for one in reversed(listed(context)) if one.asked.day >= context.today]


def get(context: Context, number: int) -> EventView:
    """Return one event. Raises NotThereError."""
    return _view(context, _row(context, number))


def days(context: Context) -> frozenset[date]:
    """Return the days of events, which say nothing about a usual night."""
    return frozenset(row.day for row in _rows(context))


def made_for(context: Context) -> dict[int, EventView]:
    """Return the batches that were made for an event, each with the event."""
    rows = _rows(context)
    views = [_view(context, row, rows) for row in rows if row.plan.get("batches")]
    return {number: view for view in views for number in view.batches}


def tie(context: Context, number: int, batch: int, formula: int) -> None:
    """Keep a batch for an event, and stop the reminder to make it. Raises NotThereError."""
    row = _row(context, number)
    row.plan = {**row.plan, "batches": [*row.plan.get("batches", []), batch]}
    own.drop(
        context,
        [
            one.id
            for one in own.open_rows(context)
            if one.details.get("about") == mark(row) and one.details.get("formula") == formula
        ],
    )


Returned = Mapping[int, tuple[Fraction, Fraction | None]]  # mL and, if said, mL taken, by formula


def note_back(context: Context, number: int, back: Returned) -> EventView:
    """Note the mL of each formula that came back and, where it was not the list, what was taken.

    Raises NotThereError, BadValueError.
    """
    row = _row(context, number)
    view, before = _view(context, row), row.back
    taken = dict(row.plan.get("taken", {}))
    known = {one.formula.id: view.taken_ml(one) for one in view.parts}
    for formula, (ml, said) in back.items():
        if formula not in known:
            raise NotThereError("formula", str(formula))
        taken_ml = known[formula] if said is None else said
        if ml > taken_ml:
            raise BadValueError("amount", exact_text(ml))
        taken[str(formula)] = exact_text(taken_ml)
    noted = row.plan.get("noted", context.today.isoformat())
    row.plan = {**row.plan, "taken": taken, "noted": noted}
    row.back = {**(before or {}), **{str(one): exact_text(ml) for one, (ml, _taken) in back.items()}}
    context.log("event back", event=number, day=row.day.isoformat(), before=before, after=row.back)
    return _view(context, row)


def _check(context: Context, asked: Asked) -> None:
    if not 0 < asked.guests <= MOST_GUESTS:
        raise BadValueError("number of people", str(asked.guests))
    if not 0 < asked.each <= MOST_EACH:
        raise BadValueError("number of drinks", str(float(asked.each)))
    if not context.today <= asked.day <= context.today + own.FURTHEST:
        raise BadValueError("day", asked.day.isoformat())


def written(asked: Asked) -> JsonObject:
    """Return what was asked, except the day, as it is stored."""
    return {
        "guests": asked.guests,
        "each": str(asked.each),
        "formulas": list(asked.formulas),
        "drinks": list(asked.drinks),
    }


def _rows(context: Context) -> Sequence[Event]:
    return context.book.all(Event, Event.cancelled_at.is_(None), order=(Event.day, Event.id))


def _row(context: Context, number: int) -> Event:
    row = context.book.get(Event, number)
    if row is None or row.cancelled_at is not None:
        raise NotThereError("event", str(number))
    return row


def mark(row: Event) -> str:
    """Return the mark that an event's reminders carry."""
    return str(row.plan.get("about", f"event:{row.id}"))


def _view(context: Context, row: Event, rows: Sequence[Event] | None = None) -> EventView:
    """Return an event; `rows` are all those that are not cancelled, if known."""
    asked = asked_of(row)
    # What an event used counts for those after it, once somebody noted it.
    earlier = [
        one
        for one in (_rows(context) if rows is None else rows)
        if one.day < row.day and one.back and one.plan.get("noted", "9") <= row.day.isoformat()
    ]
    parts = needs.parts(context, asked, earlier)
    listed_ml = {one.formula.id: one.take_ml for one in parts}
    taken = row.plan.get("taken", {})
    back = {
        int(number): Back(Fraction(ml), Fraction(taken.get(number, listed_ml.get(int(number), Fraction(0)))))
        for number, ml in (row.back or {}).items()
    }
    drawn = {int(number): Fraction(ml) for number, ml in row.plan.get("drawn", {}).items()}
    return EventView(row.id, asked, parts, back, tuple(row.plan.get("batches", ())), drawn)


# -- undo ------------------------------------------------------------------------------------------


def _logged(context: Context, details: Details) -> Event:
    """Return the event of a log entry, also if it is cancelled."""
    row: Event | None = context.book.get(Event, details["event"])
    assert row is not None  # noqa: S101 - events are never deleted
    return row


def _is_cancelled(context: Context, details: Details) -> bool:
    return _logged(context, details).cancelled_at is not None


def _cancel(context: Context, details: Details, cancelled: bool) -> None:
    row = _logged(context, details)
    row.cancelled_at = context.now if cancelled else None
    own.switch(context, mark(row), on=not cancelled)


def _read_asked(row: Event) -> JsonObject:
    said = {name: row.plan[name] for name in _ASKED}
    return {**said, "day": row.day.isoformat(), "about": mark(row)}


def _write_asked(context: Context, details: Details, said: JsonObject) -> None:
    row = _logged(context, details)
    if said["about"] != mark(row):
        own.switch(context, mark(row), on=False)
        own.switch(context, said["about"], on=True)
    row.day = date.fromisoformat(said["day"])
    row.plan = {**row.plan, "about": said["about"], **{name: said[name] for name in _ASKED}}


def _read_back(context: Context, details: Details) -> JsonObject | None:
    return _logged(context, details).back


def _write_back(context: Context, details: Details, back: JsonObject | None) -> None:
    _logged(context, details).back = back


def draw(context: Context, details: Details, sign: int) -> None:
    """Add what an event used of a batch to the event, or with `sign` -1 subtract it."""
    row = _logged(context, details)
    drawn, batch = dict(row.plan.get("drawn", {})), str(details["batch"])
    drawn[batch] = exact_text(Fraction(drawn.get(batch, "0")) + sign * Fraction(details["ml"]))
    row.plan = {**row.plan, "drawn": drawn}


PLANNED = Value(_is_cancelled, _cancel, states=(True, False))
CANCELLED = Value(_is_cancelled, _cancel, states=(False, True))
ASKED = Value(lambda context, details: _read_asked(_logged(context, details)), _write_asked)
BACK = Value(_read_back, _write_back)
