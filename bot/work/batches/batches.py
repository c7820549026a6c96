"""Read batches: states, contents, events and lists."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from enum import StrEnum
from fractions import Fraction

from bot.trade.batches.shelf import RULE_TEXTS, ShelfRule
from bot.trade.formulas.measures import BASE_DIMENSIONS, Dimension
from bot.trade.liquids.infusion import is_steeped
from bot.trade.numbers.ranges import Range
from bot.work.context import Context
from bot.work.errors import NotThereError
from storage.tables import Batch, BatchEvent, BatchLine, Ingredient, Member
from storage.types import JsonObject


class BatchState(StrEnum):
    """The state of a batch in its life cycle. The values are stored and shown."""

    RESTING = "resting"
    READY = "ready"
    IN_USE = "in use"
    USED_UP = "used up"
    DISCARDED = "discarded"
    MOVED = "moved away"  # all that was left of it went to another bar
    UNDONE = "undone"

    @property
    def open(self) -> bool:
        """Whether any of it may be left."""
        return self in {BatchState.RESTING, BatchState.READY, BatchState.IN_USE}


UNDO = "undo"  # the event that undoes another one
LOOKING = ("check", UNDO)  # the events that record a look: a check, and its undo


class Clarity(StrEnum):
    """The look of a rested bottle. The values are stored and shown."""

    CLEAR = "clear"
    HAZY = "hazy"
    SPLIT = "split"


@dataclass(frozen=True, slots=True)
class BatchLineView:
    """One ingredient of a batch in base units (mL, g or pieces), with its lot and the lot's expiry."""

    ingredient_id: int
    name: str
    amount: Fraction
    dimension: Dimension
    lot: str | None
    best_before: date | None = None


@dataclass(frozen=True, slots=True)
class EventView:
    """One event of a batch."""

    id: int
    what: str
    clarity: str | None
    note: str
    photos: tuple[str, ...]
    at: datetime
    by: str
    temperature_c: Fraction | None = None


@dataclass(frozen=True, slots=True)
class BatchView:
    """One batch. `frozen` is the copy of formula, prices and cautions at the time it was made.

    A batch from another bar has that bar's name in `came_from`; its `version` is 0 for none of this bar's.
    """

    number: int
    name: str
    formula_id: int
    version: int
    state: BatchState
    total_ml: Fraction
    made_at: datetime
    made_by: str
    rest_until: datetime
    discard_on: date
    opened_at: datetime | None
    clarity: str | None
    lost_ml: Fraction | None
    frozen: JsonObject
    came_from: str | None
    number_there: int | None
    lines: tuple[BatchLineView, ...] = ()
    events: tuple[EventView, ...] = ()

    def rested(self, now: datetime) -> bool:
        """Whether the rest is over."""
        return now >= self.rest_until

    @property
    def strained(self) -> JsonObject | None:
        """What came out after straining, as the log stores it; None before."""
        found: JsonObject | None = self.frozen.get("strained")
        return found

    @property
    def made_ml(self) -> Fraction:
        """The mL that were made, before straining."""
        return self.total_ml if self.strained is None else Fraction(self.strained["made_ml"])

    @property
    def to_strain(self) -> bool:
        """Whether solids stand in it that were not strained out yet."""
        return self.strained is None and is_steeped(
            self.frozen["preparation"], (line["dimension"] for line in self.frozen["lines"])
        )

    @property
    def strength(self) -> Range[float] | None:
        """The strength, % vol; after straining with the water of the fruit in it. None if it is unknown."""
        if self.strained is not None and self.strained["percent"]:
            return Range(*self.strained["percent"])
        percent = self.frozen.get("strength_percent")
        return None if percent is None else Range.exactly(float(percent))

    @property
    def discard_rule(self) -> str:
        """The rule that set the discard date, in English words for the catalogues."""
        if self._expired_first is not None:
            return RULE_TEXTS[ShelfRule.INGREDIENT]
        if self.shortened_by_opening:
            return RULE_TEXTS[ShelfRule.OPENED]
        return str(self.frozen.get("discard_rule", ""))

    @property
    def discard_subject(self) -> str:
        """The oil or ingredient whose age set the discard date, or ''."""
        if self._expired_first is not None:
            return self._expired_first.name
        return "" if self.shortened_by_opening else str(self.frozen.get("discard_subject", ""))

    @property
    def _expired_first(self) -> BatchLineView | None:
        """The ingredient whose lot brought the discard date forward, or None."""
        first = str(self.frozen.get("discard_on", ""))
        if self.discard_on.isoformat() >= first:
            return None
        return next((line for line in self.lines if line.best_before == self.discard_on), None)

    @property
    def shortened_by_opening(self) -> bool:
        """Whether opening brought the discard date forward."""
        first = self.frozen.get("discard_on")
        return self.opened_at is not None and first is not None and self.discard_on.isoformat() < first


def row_of(context: Context, number: int) -> Batch:
    """Return the row of a batch that was not undone. Raises NotThereError."""
    row = context.book.get(Batch, number)
    if row is None or row.state == BatchState.UNDONE:
        raise NotThereError("batch", str(number))
    return row


def get(context: Context, number: int) -> BatchView:
    """Return one batch with its lines and events. Raises NotThereError."""
    row = row_of(context, number)
    names = _names(context)
    lines = _lines(context, number)
    happened = context.book.all(BatchEvent, BatchEvent.batch_id == number, order=BatchEvent.first)
    events = tuple(
        EventView(
            event.id,
            event.what,
            event.clarity,
            event.note,
            tuple((event.photo or "").split()),
            event.at,
            names.get(event.by, "?"),
            event.temperature_c,
        )
        for event in standing_events(happened)
    )
    return _view(row, names, lines, events)


def standing_events(happened: Sequence[BatchEvent]) -> list[BatchEvent]:
    """Return the events that are not undone."""
    corrected = {event.corrects for event in happened}
    return [event for event in happened if event.what != UNDO and event.id not in corrected]


def _lines(context: Context, number: int) -> tuple[BatchLineView, ...]:
    query = (
        context.book.rows(BatchLine, BatchLine, Ingredient.name)
        .join(
            Ingredient,
            (Ingredient.bar_id == BatchLine.bar_id) & (Ingredient.id == BatchLine.ingredient_id),
        )
        .where(BatchLine.batch_id == number)
        .order_by(BatchLine.position)
    )
    return tuple(
        BatchLineView(
            line.ingredient_id, name, line.amount, BASE_DIMENSIONS[line.unit], line.lot, line.best_before
        )
        for line, name in context.book.session.execute(query)
    )


def _names(context: Context) -> dict[int, str]:
    query = context.book.rows(Member, Member.person_id, Member.name)
    return {row.person_id: row.name for row in context.book.session.execute(query)}


def _view(
    row: Batch,
    names: dict[int, str],
    lines: tuple[BatchLineView, ...] = (),
    events: tuple[EventView, ...] = (),
) -> BatchView:
    return BatchView(
        row.id,
        str(row.frozen["formula"]),
        row.formula_id,
        row.version,
        BatchState(row.state),
        row.total_ml,
        row.made_at,
        names.get(row.made_by, "?"),
        row.rest_until,
        row.discard_on,
        row.opened_at,
        row.clarity,
        row.lost_ml,
        row.frozen,
        row.came_from,
        row.number_there,
        lines,
        events,
    )


def listed(context: Context, everything: bool = False) -> list[BatchView]:
    """Return the batches not used up, by discard date; or the last fifty of all."""
    names = _names(context)
    if everything:
        rows = context.book.session.scalars(
            context.book.select(Batch)
            .where(Batch.state != BatchState.UNDONE)
            .order_by(Batch.id.desc())
            .limit(50)
        ).all()
    else:
        states = [state for state in BatchState if state.open]
        rows = context.book.all(Batch, Batch.state.in_(states), order=(Batch.discard_on, Batch.id))
    return [_view(row, names) for row in rows]


def open_of(context: Context, formula_id: int) -> list[BatchView]:
    """Return the batches of a formula that are not used up, by discard date."""
    return [one for one in listed(context) if one.formula_id == formula_id]


def with_lot(context: Context, lot: str) -> list[BatchView]:
    """Return the batches made with a lot, newest first."""
    query = context.book.rows(BatchLine, BatchLine.batch_id).where(BatchLine.lot == lot.strip())
    numbers = sorted(set(context.book.session.scalars(query)), reverse=True)
    names = _names(context)
    rows = [context.book.get(Batch, number) for number in numbers]
    return [_view(row, names) for row in rows if row is not None and row.state != BatchState.UNDONE]


def near_discard(batch: BatchView, today: date, days: int) -> bool:
    """Whether a batch must be discarded within this many days."""
    return batch.state.open and batch.discard_on <= today + timedelta(days=days)
