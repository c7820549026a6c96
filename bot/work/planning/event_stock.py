"""Share the batches on hand among coming events, and plan what must still be made for them."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from fractions import Fraction

from bot.trade.events.allotment import Lot, Wanted, allot, pack_day
from bot.trade.planning.use import WeekdayUse
from bot.work.batches.batches import Clarity
from bot.work.context import Context
from bot.work.events import events
from bot.work.events.events import EventView
from bot.work.events.needs import Part
from bot.work.formulas.formulas import FormulaView
from bot.work.planning import usage
from bot.work.planning.usage import Held, Usage

# The chance with which the bar uses more until the event than is left out for it.
_MORE_IS_USED = 0.1


@dataclass(frozen=True, slots=True)
class FromBatch:
    """The mL that an event takes from a batch, and its last day; `own`: the batch was made for the event."""

    batch: int
    ml: Fraction
    last_day: date
    own: bool


@dataclass(frozen=True, slots=True)
class PartPlan:
    """A preparation of an event: what batches on hand give, and the bottles to make of the rest.

    `make_by` is the latest day for it, without time for a second try if that would be past. `knows_use` tells
    whether the usual use until then is known, and so left to the bar. `too_late`: what is missing can no
    longer be made and rest before the event.
    """

    part: Part
    batches: tuple[FromBatch, ...]
    make_bottles: int
    make_by: date
    knows_use: bool
    too_late: bool

    @property
    def make_ml(self) -> Fraction:
        """The mL to make."""
        return self.make_bottles * self.part.bottle_ml


@dataclass(frozen=True, slots=True)
class EventPlan:
    """An event with what to make for it."""

    event: EventView
    parts: tuple[PartPlan, ...]

    @property
    def to_make(self) -> list[PartPlan]:
        """The preparations that must still be made, and can be."""
        return [one for one in self.parts if one.make_bottles and not one.too_late]

    @property
    def amounts(self) -> list[tuple[FormulaView, Fraction]]:
        """The formulas to make, each with its mL."""
        return [(one.part.formula, one.make_ml) for one in self.to_make]


class EventStock:
    """The stock that coming events take, shared among them and the usual use until then."""

    def __init__(self, context: Context, known: Usage | None = None) -> None:
        self._context = context
        self._tied = events.made_for(context)
        self.coming = [one for one in events.coming(context) if not one.back]
        self._used: set[int] = set()  # the formulas with a known use
        # By event and formula.
        self._given: dict[tuple[int, int], tuple[FromBatch, ...]] = {}
        if self.coming:
            self._share(known or Usage(context))

    def plan(self, event: EventView) -> EventPlan:
        """Return an event with what to make for it."""
        return EventPlan(event, tuple(self._part(event, one) for one in event.parts))

    def plans(self) -> list[EventPlan]:
        """Return the coming events, the next first."""
        return [self.plan(one) for one in self.coming]

    def kept(self) -> Mapping[int, Fraction]:
        """Return the mL of each batch that the usual use cannot have, because an event takes them."""
        found: dict[int, Fraction] = {}
        for shares in self._given.values():
            for one in shares:
                found[one.batch] = found.get(one.batch, Fraction(0)) + one.ml
        return found

    def _part(self, event: EventView, part: Part) -> PartPlan:
        given = self._given.get((event.id, part.formula.id), ())
        missing = part.need.enough_ml - float(sum(one.ml for one in given))
        bottles = math.ceil(missing / float(part.bottle_ml)) if missing >= 1 else 0
        today = self._context.today
        make_by = part.make_by if part.make_by >= today else part.start_by
        knows_use = part.formula.id in self._used
        return PartPlan(part, given, bottles, make_by, knows_use, bottles > 0 and make_by < today)

    def _share(self, known: Usage) -> None:
        wanted: dict[int, list[tuple[EventView, Part]]] = {}
        for event in self.coming:
            for part in event.parts:
                wanted.setdefault(part.formula.id, []).append((event, part))
        for number, parts in wanted.items():
            use = known.of(parts[0][1].formula).use
            self._used |= {number} if use is not None else set()
            held = usage.held(self._context, known.made.get(number, []), use)
            self._give(number, parts, use, held)

    def _give(
        self,
        number: int,
        parts: Sequence[tuple[EventView, Part]],
        use: WeekdayUse | None,
        held: Sequence[Held],
    ) -> None:
        lots = {one.batch.id: self._lot(one) for one in held if _looks_good(one)}
        wants = [Wanted(event.id, event.asked.day, part.need.enough_ml) for event, part in parts]
        high = _high(use, self._context.today, max(one.day for one in wants))
        for share in allot(list(lots.values()), wants, high, self._context.today):
            lot = lots[share.batch]
            taken = FromBatch(
                share.batch, Fraction(math.floor(share.ml)), lot.last_day, lot.kept_for is not None
            )
            self._given[share.event, number] = (*self._given.get((share.event, number), ()), taken)

    def _lot(self, held: Held) -> Lot:
        row = held.batch
        event = self._tied.get(row.id)
        coming = event is not None and event.asked.day >= self._context.today
        return Lot(
            row.id,
            float(held.closed_ml),
            float(held.open_ml),
            held.ready_on,
            row.discard_on,
            event.id if coming and event is not None else None,
        )


def _looks_good(held: Held) -> bool:
    return held.batch.clarity not in {Clarity.HAZY, Clarity.SPLIT}


def _high(use: WeekdayUse | None, today: date, last: date) -> usage.ByDay:
    """Return the usual use of a day, raised so that the use until then is enough nine times in ten."""
    if use is None:
        return lambda day: 0.0
    days = max(1, (pack_day(last, today) - today).days)
    likely = use.likely(today, days)
    times = use.at_least(today, days, _MORE_IS_USED) / likely if likely else 1.0
    return lambda day: times * use.on(day)
