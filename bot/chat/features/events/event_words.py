"""Word an event: its plan, its packing list, its reminders and its result."""

from __future__ import annotations

from datetime import date, timedelta
from fractions import Fraction

from bot.chat.dialogue.turn import Turn
from bot.chat.i18n.language import _, ngettext, show_day, show_money, show_number, show_sensibly
from bot.chat.reply.message import Block, Button, File, Grid, Reply, Text
from bot.chat.reply.units import show_amount, show_ml, show_quantity
from bot.documents import packing
from bot.documents.packing import Packing
from bot.work.events import events
from bot.work.events.events import EventView, Part
from bot.work.planning.plan import ShoppingLine


def event_reply(turn: Turn, found: EventView, *more: Button) -> Reply:
    """Show an event with its packing list as a picture and a page to print."""
    units, asked = turn.context.bar.units, found.asked
    first = _("{day}: {guests} guests, about {drinks} drinks").format(
        day=show_day(asked.day),
        guests=show_number(asked.guests, 0),
        drinks=show_number(round(found.drinks), 0),
    )
    rows = [
        (one.formula.name, show_ml(one.make_ml, units), f"{one.bottles} x {show_ml(one.bottle_ml, units)}")
        for one in found.parts
    ]
    blocks: list[Block] = [Text(first, strong=True), Grid(tuple(rows))]
    if asked.day >= turn.context.today:
        blocks += [Text(line) for line in _lines(turn, found)]
    if found.back is not None:
        blocks += [Text(line) for line in result_lines(turn, found)]
    list_ = packing_list(turn, found)
    name = f"packing-{asked.day.isoformat()}"
    files = (
        File(f"{name}.png", packing.picture(list_), picture=True, caption=_("Packing list")),
        File(f"{name}.pdf", packing.page(list_)),
    )
    buttons = [
        (Button(_("Make {name}").format(name=one.formula.name), _make_line(one)),) for one in found.parts[:3]
    ]
    last = (Button(_("What came back"), f"came back {found.id}"), Button(_("Reminders"), "reminders"), *more)
    return Reply(tuple(blocks), (*buttons, last), files=files)


def _make_line(one: Part) -> str:
    return f"batch #{one.formula.id} to {one.bottles} x {one.bottle_ml} ml"


def _lines(turn: Turn, found: EventView) -> list[str]:
    margin = max(one.need.margin for one in found.parts)
    lines = [
        _("With a margin of {percent} %: enough nine times in ten.").format(
            percent=show_number(Fraction(round(margin * 100)), 0)
        )
    ]
    for one in found.parts:
        lines.append(_make_by(turn, one))
    count = len(found.shopping.lines)
    if count:
        text = ngettext("{count} thing to buy by {day}", "{count} things to buy by {day}", count)
        said = text.format(count=count, day=show_day(events.buy_by(found)))
        cost = f", {show_money(found.shopping.cost)}" if found.shopping.cost else ""
        lines.append(said + cost)
    if found.shopping.no_price:
        names = ", ".join(found.shopping.no_price)
        lines.append(_("No price, so not in the sum: {names}").format(names=names))
    return lines


def _make_by(turn: Turn, one: Part) -> str:
    name = one.formula.name
    if one.make_by < turn.context.today:
        return _("{name}: start now; there is no time left for a second try.").format(name=name)
    text = _("{name}: make it by {day}, with time for its rest and a second try.")
    return text.format(name=name, day=show_day(one.make_by))


def reminder_texts(found: EventView) -> list[tuple[str, date]]:
    """Return what to remind of before and after an event, each with its day."""
    day = show_day(found.asked.day)
    made = [
        (_("Make {name} for the event on {day}").format(name=one.formula.name, day=day), one.make_by)
        for one in found.parts
    ]
    return [
        (_("Buy what is missing for the event on {day}").format(day=day), events.buy_by(found)),
        *made,
        (_("Pack for the event on {day}").format(day=day), found.asked.day - timedelta(days=1)),
        (
            _("What came back from the event? came back {number}").format(number=found.id),
            found.asked.day + timedelta(days=1),
        ),
    ]


def packing_list(turn: Turn, found: EventView) -> Packing:
    """Return the packing list of an event."""
    units, asked = turn.context.bar.units, found.asked
    take = []
    for one in found.parts:
        size = show_ml(one.bottle_ml, units)
        text = ngettext("{count} bottle of {size} {name}", "{count} bottles of {size} {name}", one.bottles)
        take.append(text.format(count=one.bottles, size=size, name=one.formula.name))
        if one.sprayers:
            many = ngettext("{count} sprayer for {name}", "{count} sprayers for {name}", one.sprayers)
            take.append(many.format(count=one.sprayers, name=one.formula.name))
    beside = (
        _("Labels on every bottle"),
        _("List of what is in each: ask, and tell them"),
        _("Cloths and a closed bin for rags"),
    )
    buy = tuple(_bought(line, units) for line in found.shopping.lines)
    sections = [(_("Take"), (*take, *beside)), *([(_("Buy"), buy)] if buy else [])]
    made = tuple(
        _("{name}, {amount}: by {day}").format(
            name=one.formula.name, amount=show_ml(one.make_ml, units), day=show_day(one.make_by)
        )
        for one in found.parts
    )
    below = _("{bar}: {guests} guests, {each} drinks each").format(
        bar=turn.context.bar.name, guests=asked.guests, each=show_number(asked.each, 1)
    )
    return Packing(
        _("Packing list, {day}").format(day=show_day(asked.day)), below, ((_("Make"), made), *sections)
    )


def _bought(line: ShoppingLine, units: str) -> str:
    if not line.packs:
        return f"{line.ingredient.name}: {show_amount(line.need.short, line.dimension, units)}"
    packs = ", ".join(f"{count} x {show_quantity(price.pack)}" for price, count in line.packs)
    return f"{line.ingredient.name}: {packs}"


def result_lines(turn: Turn, found: EventView) -> list[str]:
    """Say how much was used of what was taken, and for one drink."""
    units, lines = turn.context.bar.units, []
    for one in found.parts:
        back = (found.back or {}).get(one.formula.id)
        if back is None:
            continue
        used = max(Fraction(0), one.make_ml - back)
        text = _("{name}: used {used} of {made}; {likely} were likely.")
        lines.append(
            text.format(
                name=one.formula.name,
                used=show_ml(used, units),
                made=show_ml(one.make_ml, units),
                likely=f"{show_sensibly(Fraction(round(one.need.likely_ml)), 2)} ml",
            )
        )
    return lines
