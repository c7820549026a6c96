"""Take what an event used off a batch that was not made for it: 'used 12 80 ml for event 1'."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.inputs.shared_slots import OPEN_BATCH_SLOT, accept_number, quantity_in_ml, undo_button
from bot.chat.dialogue.log_words import LogWords, typed_amount
from bot.chat.dialogue.slots import Given, Question, Slot, columns
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.batches.batch_card import left_words
from bot.chat.features.batches.bottling import few_bottles
from bot.chat.grammar.syntax import Amount
from bot.chat.i18n.language import _, show_day
from bot.chat.reply.message import Button, Reply, reply
from bot.chat.reply.units import show_ml
from bot.trade.formulas.measures import Dimension
from bot.trade.words import N_
from bot.work.batches import bottles
from bot.work.batches.batches import BatchView
from bot.work.events import events
from bot.work.events.events import EventView
from bot.work.log.history import LogLine
from bot.work.planning import event_use

_MOST_OFFERED = 3  # batches of one formula


@dataclass(frozen=True, kw_only=True)
class UsedArguments(Arguments):
    """A batch and, if only a part of it was used, the mL of it and the event."""

    batch: BatchView
    used_part: Fraction | None = None
    for_event: int | None = None


def _accept_part(turn: Turn, given: Given, value: Amount | Fraction) -> Fraction:
    if isinstance(value, Amount):
        return quantity_in_ml(turn, value)
    batch = given[OPEN_BATCH_SLOT]
    there = bottles.left_in(turn.context, batch)
    sizes = [one.size_ml for one in there.sizes if one.unopened >= value > 0]
    if not sizes:
        raise Say(few_bottles(turn, batch, there))
    return value * sizes[0]


def _ask_event(turn: Turn, given: Given) -> Question:
    batch = given[OPEN_BATCH_SLOT]
    found = [
        one
        for one in events.listed(turn.context)
        if event_use.open_ml(turn.context, one, batch.formula_id) > 0
    ]
    if not found:
        text = _("I take a part of a batch off only after an event, once what came back is noted.")
        raise Say(reply(text, buttons=((used_up_button(batch.number),),)))
    choices = [(show_day(one.asked.day), f"for event {one.id}") for one in found]
    return Question(_("At which event?"), columns(choices, 2))


PART_SLOT = Slot("used_part", _accept_part)
EVENT_SLOT = Slot(
    "for_event", accept_number, _ask_event, wanted=lambda turn, given: given.get(PART_SLOT) is not None
)


def used_at_event(turn: Turn, batch: BatchView, ml: Fraction, number: int) -> Reply:
    """Take an amount that an event used off a batch. Raises Say for more than the event used."""
    event, units = events.get(turn.context, number), turn.context.bar.units
    _refuse(turn, batch, ml, event)
    left = event_use.take_off(turn.context, batch.number, ml, event)
    first = _("Batch {number}, {name}: {amount} used at the event on {day}.").format(
        number=batch.number, name=batch.name, amount=show_ml(ml, units), day=show_day(event.asked.day)
    )
    now = _("Now: {left}.").format(left=left_words(left, units))
    lines, buttons = offers(turn, events.get(turn.context, number))
    if left.closed_ml + left.open_ml < 1:
        buttons = [used_up_button(batch.number), *buttons]
    show = Button(_("Show batch {number}").format(number=batch.number), f"batch {batch.number}")
    rows = (*((one,) for one in buttons), (show, undo_button(turn)))
    return reply(first, now, *lines, buttons=rows, edits=turn.message.tapped is not None)


def used_up_button(number: int) -> Button:
    """Return the button that notes that a batch is used up."""
    return Button(_("Batch {number} is used up").format(number=number), f"used up {number}")


def _refuse(turn: Turn, batch: BatchView, ml: Fraction, event: EventView) -> None:
    day, units = show_day(event.asked.day), turn.context.bar.units
    if batch.formula_id not in event.back:
        text = _("Note first what {name} came back from the event on {day}.").format(name=batch.name, day=day)
        raise Say(reply(text, buttons=((Button(_("What came back"), f"came back {event.id}"),),)))
    if batch.number in event.batches:
        text = _("Batch {number} was made for that event: what came back counts for it already.")
        raise Say(reply(text.format(number=batch.number)))
    open_ml = event_use.open_ml(turn.context, event, batch.formula_id)
    if ml > open_ml + 1:
        text = _("All that the event on {day} used is off its batches.")
        if open_ml > 0:
            text = _("Only {amount} of what the event on {day} used is not off a batch yet.")
        raise Say(reply(text.format(day=day, amount=show_ml(open_ml, units))))
    there = bottles.left_in(turn.context, batch)
    if ml > there.closed_ml:
        told = _("Batch {number} has {there} left, and this is {wanted}.")
        shown = show_ml(there.closed_ml, units)
        raise Say(reply(told.format(number=batch.number, there=shown, wanted=show_ml(ml, units))))


def offers(turn: Turn, event: EventView) -> tuple[list[str], list[Button]]:
    """Offer to take what an event used of other stock off the batches that it can have come from."""
    lines, buttons, units = [], [], turn.context.bar.units
    for part in event.parts:
        open_ml = event_use.open_ml(turn.context, event, part.formula.id)
        found = event_use.sources(turn.context, event, part.formula.id)[:_MOST_OFFERED]
        if open_ml < 0:
            text = _("{amount} {name} too much is off its batches. Undo what was taken off:")
            buttons.append(Button(_("Log"), "log"))
        elif found:
            text = _("{amount} {name} came from stock. Take it off the batch:")
        else:
            continue
        lines.append(text.format(amount=show_ml(abs(open_ml), units), name=part.formula.name))
        buttons += [
            Button(
                _("{amount} off batch {number}").format(amount=show_ml(one.ml, units), number=one.batch),
                f"used {one.batch} {typed_amount(one.ml, Dimension.VOLUME)} for event {event.id}",
            )
            for one in found
        ]
    return lines, buttons


def _values(line: LogLine, units: str) -> dict[str, str]:
    return {"used": show_ml(Fraction(line.details["ml"]), units)}


LOG_WORDS = (
    LogWords(
        "use at event",
        N_("{used} of batch {batch} used at event {event}"),
        N_("{used} of batch {batch} used at event {event}"),
        values=_values,
    ),
)
