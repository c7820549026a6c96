"""The command moved: bottles of a batch, or an amount of it, go to another bar of the same person."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.names import bar_words
from bot.chat.dialogue.inputs.shared_slots import (
    OPEN_BATCH_SLOT,
    ask_open_batch,
    quantity_in_ml,
    undo_button,
)
from bot.chat.dialogue.log_words import LogWords, typed_amount
from bot.chat.dialogue.slots import Given, Question, Slot, columns, said
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.batches.batch_card import left_words
from bot.chat.features.batches.bottling import few_bottles
from bot.chat.grammar.syntax import Amount, Bottles
from bot.chat.i18n.language import _, show_money, show_number
from bot.chat.reply.message import Button, Reply, reply
from bot.chat.reply.units import show_ml
from bot.trade.formulas.measures import Dimension
from bot.trade.words import N_
from bot.work.batches import bottles, moving
from bot.work.batches.arriving import Part
from bot.work.batches.batches import BatchView
from bot.work.batches.bottles import Left, Size
from bot.work.batches.moving import Moved
from bot.work.errors import NotManagedError
from bot.work.log.history import LogLine
from bot.work.people import other_bars
from bot.work.people.other_bars import OtherBar

_COUNTS = (1, 2, 3, 4, 6)


# -- what moves ------------------------------------------------------------------------------------


def _ask_batch(turn: Turn, given: Given) -> Question:
    _managed(turn)
    return ask_open_batch(turn, given)


def _ask_part(turn: Turn, given: Given) -> Question:
    _managed(turn)
    batch = given[_BATCH]
    left, units = bottles.left_in(turn.context, batch), turn.context.bar.units
    sizes = [one for one in left.sizes if one.unopened]
    choices = [
        (
            f"{show_number(count, 0)} x {show_ml(one.size_ml, units)}",
            _typed(Part.of_bottles(count, one.size_ml)),
        )
        for one in sizes
        for count in (*(few for few in _COUNTS if few < one.unopened), one.unopened)
    ]
    if left.bulk_ml >= 1:
        choices.append((show_ml(left.bulk_ml, units), _typed(Part.of_amount(left.bulk_ml))))
    if not choices:
        raise Say(few_bottles(turn, batch, left))
    return Question(
        _("How much of batch {number}, {name}?").format(number=batch.number, name=batch.name),
        columns(choices, 3),
        hint=_("3 bottles"),
    )


def _accept_part(turn: Turn, given: Given, value: Fraction | Bottles | Amount | str) -> Part:
    _managed(turn)
    batch = given[_BATCH]
    if "trial" in batch.frozen:
        raise Say(reply(_("Batch {number} belongs to a trial: it stays here.").format(number=batch.number)))
    left = bottles.left_in(turn.context, batch)
    sizes = [one for one in left.sizes if one.unopened]
    if isinstance(value, Amount):
        return _amount(turn, batch, left, quantity_in_ml(turn, value))
    if isinstance(value, str):
        return _everything(turn, batch, sizes, left)
    if isinstance(value, Bottles):
        size = quantity_in_ml(turn, value.size)
        sizes, value = [one for one in sizes if one.size_ml == size], value.count
    if value.denominator != 1 or value <= 0:
        raise Say(reply(_("Please write a whole number of bottles, such as 8 x 50 ml.")))
    enough = [one for one in sizes if one.unopened >= value]
    if not enough:
        raise Say(few_bottles(turn, batch, left))
    if len(enough) > 1:
        raise Say(_which_size(turn, given, int(value), enough))
    return Part.of_bottles(int(value), enough[0].size_ml)


def _amount(turn: Turn, batch: BatchView, left: Left, ml: Fraction) -> Part:
    if batch.to_strain:
        raise Say(
            reply(
                _("Strain batch {number} first.").format(number=batch.number),
                buttons=((Button(_("Strained"), f"strained {batch.number}"),),),
            )
        )
    if not 0 < ml <= left.bulk_ml:
        units = turn.context.bar.units
        there = left_words(left, units) or show_ml(left.bulk_ml, units)
        told = _("Batch {number} has less than that without a bottle: {left}.")
        raise Say(reply(told.format(number=batch.number, left=there)))
    return Part.of_amount(ml)


def _everything(turn: Turn, batch: BatchView, sizes: list[Size], left: Left) -> Part:
    """Return all that is left, where it is bottles of one size or all of it in bulk."""
    if len(sizes) == 1 and left.bulk_ml < 1:
        return Part.of_bottles(sizes[0].unopened, sizes[0].size_ml)
    if not sizes and left.bulk_ml:
        return _amount(turn, batch, left, left.bulk_ml)
    if not sizes:
        raise Say(few_bottles(turn, batch, left))
    there = left_words(left, turn.context.bar.units)
    raise Say(
        reply(
            _("One size at a time, please. Batch {number} has: {left}.").format(
                number=batch.number, left=there
            )
        )
    )


def _which_size(turn: Turn, given: Given, count: int, sizes: list[Size]) -> Reply:
    units = turn.context.bar.units
    said_part = given.words["moved_part"]
    buttons = tuple(
        Button(
            f"{count} x {show_ml(one.size_ml, units)}",
            turn.line_with(said_part, _typed(Part.of_bottles(count, one.size_ml))),
        )
        for one in sizes
    )
    return reply(_("Which size?"), buttons=(buttons,))


def _typed(part: Part) -> str:
    """Return a part as one could type it."""
    if part.size_ml is None:
        return typed_amount(part.ml, Dimension.VOLUME)
    return f"{part.bottles} x {typed_amount(part.size_ml, Dimension.VOLUME)}"


def _part_words(bottle_count: int, size_ml: Fraction | None, ml: Fraction, units: str) -> str:
    """Write a part: '3 x 50 ml', or '100 ml' without bottles."""
    if size_ml is None:
        return show_ml(ml, units)
    return f"{show_number(bottle_count, 0)} x {show_ml(size_ml, units)}"


# -- where to --------------------------------------------------------------------------------------


def _managed(turn: Turn) -> list[OtherBar]:
    found = [one for one in other_bars.listed(turn.context) if one.role.manages]
    if not found:
        raise Say(
            reply(
                _("You run no other bar."),
                _("Bottles go only to a bar that you run too, as its owner or a manager."),
                buttons=((Button(_("Open another bar"), "another bar"),),),
            )
        )
    return found


def _ask_bar(turn: Turn, given: Given) -> Question:
    choices = [(one.name, f"#{one.id}") for one in _managed(turn)]
    return Question(_("To which bar?"), columns(choices, 1), hint=choices[0][0])


def _accept_bar(turn: Turn, given: Given, value: str) -> OtherBar:
    """Find the bar by its number, its name or some words of it. Raises Say, NotManagedError."""
    known = other_bars.listed(turn.context)
    words = set(bar_words(value))
    named = [one for one in known if value == f"#{one.id}" or words == set(bar_words(one.name))]
    found = named or [one for one in known if words and words <= set(bar_words(one.name))]
    if len(found) == 1:
        if not found[0].role.manages:
            raise NotManagedError(found[0].name)
        return found[0]
    run = [one for one in found if one.role.manages] or _managed(turn)
    first = _("You run no other bar called “{name}”. To which one?").format(name=value[:40])
    if len(found) > 1:
        first = _("To which bar?")
    buttons = tuple((Button(one.name, turn.line_with(value, f"#{one.id}")),) for one in run)
    raise Say(reply(first, buttons=buttons))


# -- moving ----------------------------------------------------------------------------------------


@dataclass(frozen=True, kw_only=True)
class MovedArguments(Arguments):
    """A batch, what moves of it, the other bar, and whether it is confirmed."""

    batch: BatchView
    moved_part: Part
    bar: OtherBar
    sure: bool = False


def _moved(turn: Turn, arguments: MovedArguments) -> Reply:
    batch, part, bar = arguments.batch, arguments.moved_part, arguments.bar
    words = _part_words(part.bottles, part.size_ml, part.ml, turn.context.bar.units)
    if not arguments.sure and moving.lacks_formula(turn.context, batch.number, bar.id):
        first = _("Move {what} of batch {number}, {name}, to {bar}?")
        text = _("{bar} has no {name} yet: I'd put the formula in its book, with the ingredients it lacks.")
        line = f"moved yes {_typed(part)} of batch {batch.number} to #{bar.id}"
        return reply(
            first.format(what=words, number=batch.number, name=batch.name, bar=bar.name),
            text.format(bar=bar.name, name=batch.name),
            buttons=((Button(_("Move it"), line),),),
        )
    done = moving.move(turn.context, batch.number, part, bar.id, words)
    return _moved_reply(turn, batch, words, done, bar)


def _moved_reply(turn: Turn, batch: BatchView, words: str, done: Moved, bar: OtherBar) -> Reply:
    first = _("{what} of batch {number}, {name}, moved to {bar}.").format(
        what=words, number=batch.number, name=batch.name, bar=done.to
    )
    lines = [_("There it is batch {number}.").format(number=done.number)]
    if done.cost is not None and bar.currency == turn.context.bar.currency:
        lines.append(_("Its cost went along: {cost}.").format(cost=show_money(done.cost)))
    elif done.cost is not None:
        text = _("{cost} left this bar. {bar} counts in {currency}, so there the cost is unknown.")
        lines.append(text.format(cost=show_money(done.cost), bar=bar.name, currency=bar.currency))
    lines.append(_("Now: {left}.").format(left=left_words(done.left, turn.context.bar.units)))
    rows = (
        (Button(_("Show batch {number}").format(number=batch.number), f"batch {batch.number}"),),
        (Button(_("Go to {bar}").format(bar=bar.name), f"bars {bar.id}"), undo_button(turn)),
    )
    return reply(first, *lines, buttons=rows, edits=turn.message.tapped is not None)


def _log_values(line: LogLine, units: str) -> dict[str, str]:
    kept = line.details
    size = None if kept["size"] is None else Fraction(kept["size"])
    return {"what": _part_words(kept["bottles"], size, Fraction(kept["ml"]), units)}


_BATCH = replace(OPEN_BATCH_SLOT, ask=_ask_batch)
_PART = Slot("moved_part", _accept_part, _ask_part, rule="moved_answer_slot")

COMMANDS = (
    Command(
        "moved",
        N_("move bottles of a batch to another bar of yours"),
        _moved,
        words=("move", "moved batch", "move batch", "transfer", "transferred"),
        examples=(N_("moved 3 bottles of 12 to the annex"), N_("moved 100 ml of 12 to the annex")),
        slots=(_BATCH, _PART, Slot("bar", _accept_bar, _ask_bar), Slot("sure", said)),
        writes=True,
        manages=True,
        private_only=True,
        wishes=(
            Wish(
                "moved",
                (
                    "{bottles} OF BATCH {batch} {bar?}",
                    "{pieces} BOTTLES OF BATCH {batch} {bar?}",
                    "{pieces} BOTTLES OF {formula} {bar?}",
                    "{amount} OF BATCH {batch} {bar?}",
                    "{amount} OF {formula} {bar?}",
                    "BATCH {batch}",
                    "{formula}",
                ),
            ),
        ),
    ),
)

LOG_WORDS = (
    LogWords(
        "moved",
        N_("{what} of batch {batch} moved to {to}"),
        N_("{what} of batch {batch} moved to {to}"),
        values=_log_values,
    ),
    LogWords(
        "moved in",
        N_("{what} {name} came from {from}: batch {batch}"),
        N_("{what} {name} from {from}"),
        values=_log_values,
    ),
)
