"""Word an event: its plan, its reminders and its result."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import timedelta
from fractions import Fraction

from bot.chat.dialogue.slots import Question, columns
from bot.chat.dialogue.turn import Turn
from bot.chat.features.batches.at_event import offers
from bot.chat.features.events.packing_words import packing_files
from bot.chat.i18n.language import _, ngettext, show_day, show_money, show_number, show_sensibly
from bot.chat.reply.message import Block, Button, Grid, Reply, Text, reply
from bot.chat.reply.units import show_ml
from bot.work.batches import batches
from bot.work.batches.batches import BatchState, Clarity
from bot.work.events.events import EventView, Reminding
from bot.work.events.needs import Part
from bot.work.planning import plan
from bot.work.planning.event_stock import EventPlan, EventStock, PartPlan
from bot.work.planning.plan import Shopping

MOST_SHOWN = 8
_MOST_MADE = 3  # on buttons


def short_name(found: EventView) -> str:
    """Name an event: its number, day and guests."""
    text = _("{number}: {day}, {count} guests")
    guests = show_number(found.asked.guests, 0)
    return text.format(number=found.id, day=show_day(found.asked.day), count=guests)


def only_one(known: Sequence[EventView]) -> tuple[str, object] | None:
    """Return the number of an event as typed and as a value, if there is no other."""
    return (str(known[0].id), Fraction(known[0].id)) if len(known) == 1 else None


def which_event(known: Sequence[EventView]) -> Question:
    """Ask for one of these events."""
    choices = [(short_name(one), str(one.id)) for one in known[:MOST_SHOWN]]
    return Question(_("Which event?"), columns(choices, 1), hint="1")


def listed_reply(turn: Turn, known: Sequence[EventView]) -> Reply:
    """List events, the coming ones with what is left to do."""
    stock, today = EventStock(turn.context), turn.context.today
    lines, rows = [], []
    for one in known[:MOST_SHOWN]:
        if one.asked.day >= today:
            made = stock.plan(one)
            count = len(made.to_make)
            left = (
                ngettext("{count} to make", "{count} to make", count) if count else _("nothing left to make")
            )
            lines.append(f"{short_name(one)}: {left.format(count=count)}")
        else:
            noted = _("came back is noted") if not one.open_parts else _("what came back is not noted")
            lines.append(f"{short_name(one)}: {noted}")
        rows.append((Button(short_name(one), f"events {one.id}"),))
    return reply(_("Events"), "\n".join(lines), buttons=(*rows, (Button(_("Plan an event"), "event"),)))


def event_reply(turn: Turn, found: EventView, *more: Button) -> Reply:
    """Show an event with its packing list as a picture and a page to print."""
    units, asked, today = turn.context.bar.units, found.asked, turn.context.today
    first = _("{day}: {guests} guests, about {drinks} drinks").format(
        day=show_day(asked.day),
        guests=show_number(asked.guests, 0),
        drinks=show_number(round(asked.in_all), 0),
    )
    rows = [
        (one.formula.name, show_ml(one.take_ml, units), f"{one.bottles} x {show_ml(one.bottle_ml, units)}")
        for one in found.parts
    ]
    blocks: list[Block] = [Text(first, strong=True), Grid(tuple(rows))]
    if found.back or asked.day < today:
        blocks += [Text(line) for line in result_lines(turn, found) or [_("What came back is not noted.")]]
        lines, offered = offers(turn, found)
        blocks += [Text(line) for line in lines]
        buttons = [Button(_("What came back"), f"came back {found.id}")] if asked.day <= today else []
        below = (*buttons, Button(_("Events"), "events"), *more)
        return Reply(tuple(blocks), (*((one,) for one in offered), below))
    made = EventStock(turn.context).plan(found)
    shopping = plan.shopping_for(turn.context, made.amounts, asked.day)
    blocks += [Text(line) for line in _lines(turn, made, shopping)]
    rows_of_buttons = [
        (Button(_("Make {name}").format(name=one.part.formula.name), make_line(found, one)),)
        for one in made.to_make[:_MOST_MADE]
    ]
    change = Button(_("Change"), f"change event {found.id}")
    last = [change, Button(_("Reminders"), "reminders"), *more]
    if asked.day == today:
        last.insert(0, Button(_("What came back"), f"came back {found.id}"))
    return Reply(tuple(blocks), (*rows_of_buttons, tuple(last)), files=packing_files(turn, made, shopping))


def make_line(found: EventView, one: PartPlan) -> str:
    """Return the line that logs a batch for an event."""
    size = f"{float(one.part.bottle_ml):g} ml"
    return f"batch #{one.part.formula.id} to {one.make_bottles} x {size} for event {found.id}"


def _lines(turn: Turn, made: EventPlan, shopping: Shopping) -> list[str]:
    margin = max(one.need.margin for one in made.event.parts)
    lines = [
        _("With a margin of {percent} %: enough nine times in ten.").format(
            percent=show_number(Fraction(round(margin * 100)), 0)
        )
    ]
    lines += _learned_lines(turn, made.event.parts)
    lines += _stock_lines(turn, made)
    lines += _make_lines(turn, made)
    count = len(shopping.lines)
    if count:
        text = ngettext("{count} thing to buy by {day}", "{count} things to buy by {day}", count)
        said = text.format(count=count, day=show_day(max(turn.context.today, made.event.buy_by)))
        cost = f", {show_money(shopping.cost)}" if shopping.cost else ""
        lines.append(said + cost)
    if shopping.no_price:
        names = ", ".join(shopping.no_price)
        lines.append(_("No price, so not in the sum: {names}").format(names=names))
    return lines


def _learned_lines(turn: Turn, parts: Iterable[Part]) -> list[str]:
    units, lines = turn.context.bar.units, []
    for one in parts:
        if not one.learned_from:
            continue
        name, count = one.formula.name, one.learned_from
        if one.need == one.plain:
            text = _("{name}: nothing came back at an earlier event, so more may have been wanted.")
            lines.append(text.format(name=name) + " " + _("I stay with the plain amount."))
            continue
        text = ngettext(
            "{name}: {amount}, by what {count} earlier event used. By the sprays alone: {plain}.",
            "{name}: {amount}, by what {count} earlier events used. By the sprays alone: {plain}.",
            count,
        )
        amount, plain = (show_ml(Fraction(round(need.enough_ml)), units) for need in (one.need, one.plain))
        lines.append(text.format(name=name, amount=amount, count=count, plain=plain))
    return lines


def _stock_lines(turn: Turn, made: EventPlan) -> list[str]:
    units, lines = turn.context.bar.units, []
    for one in made.parts:
        for batch in one.batches:
            text = _("{name}: {ml} in batch {batch}, good until {day}")
            if batch.own:
                text = _("{name}: {ml} in batch {batch}, made for this event")
            lines.append(
                text.format(
                    name=one.part.formula.name,
                    ml=show_ml(batch.ml, units),
                    batch=batch.batch,
                    day=show_day(batch.last_day),
                )
            )
            found = batches.get(turn.context, batch.batch)
            if found.state is BatchState.RESTING and found.clarity != Clarity.CLEAR:
                lines.append(
                    _("Nobody has seen batch {batch} clear yet: check it before you pack it.").format(
                        batch=batch.batch
                    )
                )
    shared = [one for one in made.parts if any(not batch.own for batch in one.batches)]
    if any(one.knows_use for one in shared):
        lines.append(_("What the bar uses until then is taken off first."))
    unknown = ", ".join(one.part.formula.name for one in shared if not one.knows_use)
    if unknown:
        lines.append(_("I don't know what the bar uses until then of: {names}").format(names=unknown))
    return lines


def _make_lines(turn: Turn, made: EventPlan) -> list[str]:
    """Say what to make by when, the preparations of one day in one line."""
    late = ", ".join(one.part.formula.name for one in made.parts if one.too_late)
    lines = [_("Too late to make and rest before the event: {names}").format(names=late)] if late else []
    if not made.to_make and not late:
        return [_("Nothing to make: what you have is enough.")]
    today, units = turn.context.today, turn.context.bar.units
    by_text: dict[str, list[str]] = {}
    for one in made.to_make:
        part = one.part
        text = _("Make by {day}, with time for the rest and a second try: {names}")
        if part.make_by < today:
            text = _("Start by {day}: no time is left for a second try. {names}")
        # The grid above shows the bottles where none come from stock.
        size = f" {one.make_bottles} x {show_ml(part.bottle_ml, units)}" if one.batches else ""
        key = text.format(day=show_day(one.make_by), names="\0")
        by_text.setdefault(key, []).append(f"{part.formula.name}{size}")
    whole = len(made.parts) > 1
    return lines + [
        text.replace("\0", _("all of it") if whole and len(names) == len(made.parts) else ", ".join(names))
        for text, names in by_text.items()
    ]


def reminders_of(turn: Turn, found: EventView) -> list[Reminding]:
    """Return what to remind of before and after an event."""
    day, asked = show_day(found.asked.day), found.asked
    made = [
        Reminding(
            _("Make {name} for the event on {day}").format(name=one.part.formula.name, day=day),
            one.make_by,
            one.part.formula.id,
        )
        for one in EventStock(turn.context).plan(found).to_make
    ]
    buy = Reminding(_("Buy what is missing for the event on {day}").format(day=day), found.buy_by)
    back = _("What came back from the event? came back {number}").format(number=found.id)
    return [
        *([buy] if made else []),
        *made,
        Reminding(_("Pack for the event on {day}").format(day=day), asked.day - timedelta(days=1)),
        Reminding(back, asked.day + timedelta(days=1)),
    ]


def result_lines(turn: Turn, found: EventView) -> list[str]:
    """Say how much was used of what was taken, and what was likely."""
    units, lines = turn.context.bar.units, []
    for one in found.parts:
        back = found.back.get(one.formula.id)
        if back is None:
            continue
        text = _("{name}: used {used} of {taken}, {each} ml a drink; {likely} were likely.")
        lines.append(
            text.format(
                name=one.formula.name,
                used=show_ml(back.used_ml, units),
                taken=show_ml(back.taken_ml, units),
                each=show_sensibly(back.used_ml / one.drinks, 2),
                likely=show_ml(Fraction(round(one.need.likely_ml)), units),
            )
        )
    return lines
