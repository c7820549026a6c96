"""Take what an event used off the batches that were not made for it."""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction

from bot.work.batches import bottles
from bot.work.batches.bottles import Left
from bot.work.context import Context
from bot.work.errors import BadValueError
from bot.work.events import events
from bot.work.events.events import EventView
from bot.work.planning import usage
from bot.work.standing import Details
from storage.types import exact_text

_LEAST = 1  # mL: less than this is what sticks to the glass


@dataclass(frozen=True, slots=True)
class Source:
    """A batch that an event can have used, and the mL of it that it can have used."""

    batch: int
    ml: Fraction


def open_ml(context: Context, event: EventView, formula: int) -> Fraction:
    """Return the whole mL of a formula that an event used of other batches and that are on them still.

    It is below 0 if more is off them than the event used by what came back. What was taken counts as taken of
    the batches made for the event first. What came back counts as come back of all of them alike.
    """
    back = event.back.get(formula)
    if back is None or not back.taken_ml:
        return Fraction(0)
    rows = usage.batches_of(context).get(formula, [])
    own = sum((bottles.here_ml(context, row) for row in rows if row.id in event.batches), Fraction(0))
    others = max(Fraction(0), back.taken_ml - own) / back.taken_ml
    drawn = sum(event.drawn.get(row.id, 0) for row in rows)
    found = Fraction(round(back.used_ml * others - drawn))
    return found if abs(found) >= _LEAST else Fraction(0)


def sources(context: Context, event: EventView, formula: int) -> list[Source]:
    """Return the batches that an event can have used besides its own, the earliest discard date first."""
    wanted = open_ml(context, event, formula)
    if wanted <= 0:
        return []
    day, tied = event.asked.day, events.made_for(context)
    found = []
    for one in usage.held(context, usage.batches_of(context).get(formula, []), None):
        row, there = one.batch, one.closed_ml + one.open_ml
        kept = row.id in tied and tied[row.id].asked.day >= day
        good = context.bar.day_of(row.made_at) <= day <= row.discard_on
        if good and not kept and there >= _LEAST:
            found.append((row.discard_on, row.id, min(wanted, Fraction(math.floor(there)))))
    return [Source(number, ml) for _day, number, ml in sorted(found)]


def take_off(context: Context, number: int, ml: Fraction, event: EventView) -> Left:
    """Take what an event used off a batch; return what is left of the batch.

    Raises NotThereError, WrongStateError, or BadValueError for more than the batch has, or than `open_ml`.
    """
    row = bottles.open_row(context, number)
    if ml > open_ml(context, event, row.formula_id) + _LEAST:
        raise BadValueError("amount", exact_text(ml))
    about: Details = {"batch": number, "name": row.frozen["formula"], "event": event.id, "ml": exact_text(ml)}
    about["rows"] = bottles.use_at_event(context, row, ml)
    events.draw(context, about, 1)
    context.log("use at event", **about)
    return bottles.left_in(context, row)


def take_back(context: Context, details: Details) -> Details:
    """Undo it: put the amount back on the batch."""
    events.draw(context, details, -1)
    return bottles.ROWS.take_back(context, details)


def put_back(context: Context, details: Details) -> Details:
    """Take the amount off the batch again."""
    events.draw(context, details, 1)
    return bottles.ROWS.put_back(context, details)
