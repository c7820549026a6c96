"""Word the packing list of an event, as a picture for a phone and a page to print."""

from __future__ import annotations

from datetime import date

from bot.chat.dialogue.turn import Turn
from bot.chat.i18n.language import _, ngettext, show_day, show_number
from bot.chat.reply.message import File
from bot.chat.reply.units import show_amount, show_ml, show_quantity
from bot.documents import packing
from bot.documents.packing import Packing
from bot.work.planning.event_stock import EventPlan, PartPlan
from bot.work.planning.plan import Shopping, ShoppingLine


def packing_files(turn: Turn, made: EventPlan, shopping: Shopping) -> tuple[File, ...]:
    """Return the packing list as a PNG and a PDF."""
    list_ = _packing_list(turn, made, shopping)
    name = f"packing-{made.event.asked.day.isoformat()}"
    return (
        File(f"{name}.png", packing.picture(list_), picture=True, caption=_("Packing list")),
        File(f"{name}.pdf", packing.page(list_, turn.context.bar.paper)),
    )


def _packing_list(turn: Turn, made: EventPlan, shopping: Shopping) -> Packing:
    units, asked = turn.context.bar.units, made.event.asked
    sections = [
        *((_("Make by {day}").format(day=show_day(day)), lines) for day, lines in _to_make(made, units)),
        (_("Take"), [*(line for one in made.parts for line in _to_take(one, units)), *_beside()]),
        (_("Buy"), [_bought(line, units) for line in shopping.lines]),
    ]
    below = _("{bar}: {guests} guests, {each} drinks each").format(
        bar=turn.context.bar.name,
        guests=show_number(asked.guests, 0),
        each=show_number(asked.each, 1),
    )
    title = _("Packing list, {day}").format(day=show_day(asked.day))
    return Packing(title, below, tuple((head, tuple(lines)) for head, lines in sections if lines))


def _to_make(made: EventPlan, units: str) -> list[tuple[date, list[str]]]:
    """Return what to make by each day, the first day first."""
    days: dict[date, list[str]] = {}
    for one in made.to_make:
        size = show_ml(one.part.bottle_ml, units)
        days.setdefault(one.make_by, []).append(f"{one.part.formula.name}: {one.make_bottles} x {size}")
    return sorted(days.items())


def _to_take(one: PartPlan, units: str) -> list[str]:
    part, name = one.part, one.part.formula.name
    text = ngettext("{count} bottle of {size} {name}", "{count} bottles of {size} {name}", part.bottles)
    lines = [text.format(count=part.bottles, size=show_ml(part.bottle_ml, units), name=name)]
    from_batches = ", ".join(
        _("{ml} from batch {batch}").format(ml=show_ml(batch.ml, units), batch=batch.batch)
        for batch in one.batches
    )
    if from_batches:
        lines[0] += f" ({from_batches})"
    if part.sprayers:
        many = ngettext("{count} sprayer for {name}", "{count} sprayers for {name}", part.sprayers)
        lines.append(many.format(count=part.sprayers, name=name))
    return lines


def _beside() -> tuple[str, ...]:
    return (
        _("Labels on every bottle"),
        _("List of what is in each: ask, and tell them"),
        _("Cloths and a closed bin for rags"),
    )


def _bought(line: ShoppingLine, units: str) -> str:
    if not line.packs:
        return f"{line.ingredient.name}: {show_amount(line.need.short, line.dimension, units)}"
    packs = ", ".join(f"{count} x {show_quantity(price.pack, units)}" for price, count in line.packs)
    return f"{line.ingredient.name}: {packs}"
