"""The commands bottled and spilt: bottles filled from a batch, and what was lost of it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.shared_slots import OPEN_BATCH_SLOT, quantity_in_ml, undo_button
from bot.chat.dialogue.log_words import LogWords, Retold, typed_amount
from bot.chat.dialogue.registry import all_commands, words_of
from bot.chat.dialogue.slots import Given, Question, Slot, columns, plain
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.batches.batch_card import left_words
from bot.chat.grammar.syntax import Amount, Bottles, Total
from bot.chat.i18n.language import _, ngettext, show_money, show_number, tongue
from bot.chat.reply.message import Button, Reply, Text, reply
from bot.chat.reply.units import show_ml, sizes_offered
from bot.trade.formulas.measures import Dimension
from bot.trade.words import N_
from bot.work.batches import bottles
from bot.work.batches.batches import BatchView
from bot.work.batches.bottles import Left, Lost
from bot.work.log.chain import State
from bot.work.log.history import LogLine
from bot.work.trials import blind
from storage.types import exact_text


@dataclass(frozen=True, slots=True)
class Said:
    """Bottles as said, number and size in mL, and the loss in mL."""

    filled: tuple[tuple[int, Fraction], ...]
    lost_ml: Fraction


@dataclass(frozen=True, kw_only=True)
class BottledArguments(Arguments):
    """A batch, and the bottles filled from it."""

    batch: BatchView
    bottles: Said


@dataclass(frozen=True, kw_only=True)
class SpiltArguments(Arguments):
    """A batch, the amount lost in mL, and how."""

    batch: BatchView
    spilt: Fraction = Fraction(0)
    wasted_bottles: int = 0
    half_spilt: str = ""
    note: str = ""


def _ask_bottles(turn: Turn, given: Given) -> Question:
    batch = given[OPEN_BATCH_SLOT]
    units = turn.context.bar.units
    planned = [(count, Fraction(str(size))) for size, count in batch.frozen.get("fill", ()) if int(count)]
    sizes = [(_filled_words(count, size, units), f"{count} x {size} ml") for count, size in planned]
    usual = ["4 x 50 ml", "8 x 50 ml", "4 x 100 ml"] if units == "metric" else ["4 x 2 oz", "8 x 2 oz"]
    choices = dict([*sizes, *sizes_offered(usual, units)])
    text = _("How many bottles of batch {number}, and how large?").format(number=batch.number)
    return Question(text, columns(list(choices.items()), 2), hint=_("8 x 50 ml, lost 12 ml"))


def _filled_words(count: int, size: Fraction, units: str) -> str:
    return f"{show_number(count, 0)} x {show_ml(size, units)}"


def _accept_bottles(turn: Turn, given: Given, value: Bottles | Total | tuple[Bottles | Total, ...]) -> Said:
    filled, lost = [], Fraction(0)
    for one in value if isinstance(value, tuple) else (value,):
        if isinstance(one, Total):
            lost += quantity_in_ml(turn, one.amount)
        elif one.count.denominator != 1 or not 0 < one.count <= bottles.MOST_BOTTLES:
            raise Say(reply(_("Please write a whole number of bottles, such as 8 x 50 ml.")))
        else:
            filled.append((int(one.count), quantity_in_ml(turn, one.size)))
    if not filled:
        raise Say(reply(_("Please write a whole number of bottles, such as 8 x 50 ml.")))
    return Said(tuple(filled), lost)


def _bottled(turn: Turn, arguments: BottledArguments) -> Reply:
    batch, units = arguments.batch, turn.context.bar.units
    said = arguments.bottles
    _refuse_too_much(turn, batch, said)
    done = bottles.bottle(turn.context, batch.number, said.filled, said.lost_ml)
    filled = ", ".join(_filled_words(count, size, units) for count, size in said.filled)
    first = _("Batch {number}, {name}, in bottles: {filled}.").format(
        number=batch.number, name=batch.name, filled=filled
    )
    lines = [_("Now: {left}.").format(left=left_words(done.left, units))]
    over = done.filled_ml + done.lost_ml - done.before_ml
    if over > done.before_ml / 100:
        more = _("That is {amount} more than there was: a bottle is less full, or more was made.")
        lines.append(more.format(amount=show_ml(over, units)))
    count = sum(number for number, _size in said.filled)
    labels = ngettext("{count} label", "{count} labels", count).format(count=show_number(count, 0))
    row = (Button(labels, f"label {batch.number} x{count}"), Button(_("Open one"), f"open {batch.number}"))
    return reply(first, *lines, buttons=(row, (undo_button(turn),)), edits=turn.message.tapped is not None)


def _refuse_too_much(turn: Turn, batch: BatchView, said: Said) -> None:
    """Raise Say for more in the bottles than the batch can have given."""
    there = bottles.left(turn.context, batch.number)
    before = batch.total_ml if there is None else there.bulk_ml
    wanted = sum((count * size for count, size in said.filled), said.lost_ml)
    if wanted > before * bottles.TOO_MUCH:
        units = turn.context.bar.units
        told = _("Batch {number} has {there} to bottle, and this is {wanted}.")
        raise Say(
            reply(
                told.format(number=batch.number, there=show_ml(before, units), wanted=show_ml(wanted, units))
            )
        )


def _ask_spilt(turn: Turn, given: Given) -> Question:
    return Question(_("How much was lost?"), columns([("5 ml", "5 ml"), ("20 ml", "20 ml")], 2), hint="20 ml")


def _accept_spilt(turn: Turn, given: Given, value: Amount) -> Fraction:
    return quantity_in_ml(turn, value)


def _accept_wasted(turn: Turn, given: Given, value: Fraction) -> int:
    if value.denominator != 1:
        raise Say(reply(_("Whole bottles only: please write a part of one in ml, such as 25 ml.")))
    if not 0 < value <= bottles.MOST_BOTTLES:
        raise Say(reply(_("Please write a whole number of bottles, such as 8 x 50 ml.")))
    return int(value)


WASTED_BOTTLES = Slot("wasted_bottles", _accept_wasted)
_HALF = Slot("half_spilt", plain(str))


def _is_measured(turn: Turn, given: Given) -> bool:
    return WASTED_BOTTLES not in given and _HALF not in given


def _spilt(turn: Turn, arguments: SpiltArguments) -> Reply:
    if arguments.wasted_bottles:
        return broken_reply(turn, arguments.batch, arguments.wasted_bottles, arguments.note)
    spilt = arguments.spilt or bottles.held_ml(turn.context, arguments.batch) / 2
    return spilt_reply(turn, arguments.batch, spilt, arguments.note)


def broken_reply(turn: Turn, batch: BatchView, count: int, note: str) -> Reply:
    """Log unopened bottles that broke or were thrown out. Raises Say for more than there are."""
    there = bottles.left(turn.context, batch.number)
    if there is None or there.unopened < count:
        raise Say(_with_open_ones(turn, batch, there))
    return _lost_reply(turn, batch, bottles.break_bottles(turn.context, batch.number, count, note))


def spilt_reply(turn: Turn, batch: BatchView, ml: Fraction, note: str) -> Reply:
    """Log what was spilt of a batch. Raises Say for more than it holds."""
    there, units = bottles.held_ml(turn.context, batch), turn.context.bar.units
    if ml > there:
        told = _("Batch {number} has {there} left, and this is {wanted}.")
        raise Say(
            reply(told.format(number=batch.number, there=show_ml(there, units), wanted=show_ml(ml, units)))
        )
    return _lost_reply(turn, batch, bottles.spill(turn.context, batch.number, ml, note))


def _lost_reply(turn: Turn, batch: BatchView, lost: Lost) -> Reply:
    """Say what was lost of a batch, its cost, and what is left."""
    units = turn.context.bar.units
    first = _("Batch {number}, {name}: {amount} lost").format(
        number=batch.number, name=batch.name, amount=show_ml(lost.ml, units)
    )
    hidden = blind.trial_of(turn.context, batch) is not None
    first += "." if lost.cost is None or hidden else f", {show_money(lost.cost)}."
    now = _("Now: {left}.").format(left=left_words(lost.left, units))
    show = Button(_("Show batch {number}").format(number=batch.number), f"batch {batch.number}")
    return reply(first, now, buttons=((show, undo_button(turn)),), edits=turn.message.tapped is not None)


def _with_open_ones(turn: Turn, batch: BatchView, there: Left | None) -> Reply:
    """Say that fewer bottles are unopened; what was in an open one is logged by volume."""
    answer = few_bottles(turn, batch, there)
    size = next((one.size_ml for one in there.sizes if one.open), None) if there is not None else None
    if size is None:
        return answer
    line = f"{batch.number} {show_ml(size, turn.context.bar.units)}"
    label = f"{words_of(all_commands()['spilt'], tongue().language)[0]} {line}"
    said = Text(_("Threw out an open one? Log what was in it:"))
    return replace(answer, blocks=(*answer.blocks, said), buttons=((Button(label, f"spilt {line}"),),))


def few_bottles(turn: Turn, batch: BatchView, there: Left | None) -> Reply:
    """Say that a batch has fewer bottles, or none."""
    if there is None or not there.sizes:
        first = _("Batch {number} has no bottles logged. Say ml, or log them:").format(number=batch.number)
        return reply(first, buttons=((Button(_("Bottles"), f"bottled {batch.number}"),),))
    left = left_words(there, turn.context.bar.units)
    return reply(_("Batch {number} has fewer: {left}.").format(number=batch.number, left=left))


def _bottled_retold(turn: Turn, found: State) -> Retold:
    rows = bottles.logged_in(turn.context, found.details)
    said = [f"{one.bottles} x {exact_text(one.size_ml)} ml" for one in rows if one.size_ml is not None]
    lost = Fraction(found.details["lost"])
    said += [f"lost {typed_amount(lost, Dimension.VOLUME)}"] if lost else []
    return Retold("bottled", ({"batch": str(found.details["batch"]), "bottles": ", ".join(said)},))


def _spilt_retold(turn: Turn, found: State) -> Retold | None:
    (row,) = bottles.logged_in(turn.context, found.details)
    if row.size_ml is not None:
        return None  # whole bottles
    amount = typed_amount(Fraction(found.details["lost"]), Dimension.VOLUME)
    line = {
        "batch": str(found.details["batch"]),
        "spilt": amount,
        "note": f", {row.note}" if row.note else "",
    }
    return Retold("spilt", (line,))


def _lost_values(line: LogLine, units: str) -> dict[str, str]:
    return {"lost": show_ml(Fraction(line.details["lost"]), units)}


COMMANDS = (
    Command(
        "bottled",
        N_("log the bottles filled from a batch"),
        _bottled,
        words=("bottle up", "bottling", "filled bottles", "bottled batch", "bottles filled"),
        examples=(N_("bottled 12 8 x 50 ml, lost 12 ml"),),
        slots=(OPEN_BATCH_SLOT, Slot("bottles", _accept_bottles, _ask_bottles)),
        writes=True,
        menu=26,
        wishes=(Wish("bottled", ("{formula} {bottles}", "{batch?} {bottles}", "{formula}", "{batch?}")),),
    ),
    Command(
        "spilt",
        N_("log what was spilt of a batch"),
        _spilt,
        words=("spilled", "evaporated", "spilt from batch", "spilled from batch", "lost from batch"),
        examples=(N_("spilt 12 20 ml"),),
        slots=(
            OPEN_BATCH_SLOT,
            WASTED_BOTTLES,
            _HALF,
            Slot("spilt", _accept_spilt, _ask_spilt, _is_measured),
            Slot("note", plain(str)),
        ),
        writes=True,
        wishes=(Wish("spilt", ("{formula} {amount?}", "{batch?} {amount?}")),),
    ),
)

LOG_WORDS = (
    LogWords(
        "bottled",
        N_("bottled batch {batch}: {bottles} bottles, {lost} lost"),
        N_("bottling of batch {batch}"),
        values=_lost_values,
        retold=_bottled_retold,
    ),
    LogWords(
        "spilt",
        N_("{lost} lost of batch {batch}"),
        N_("{lost} lost of batch {batch}"),
        values=_lost_values,
        retold=_spilt_retold,
    ),
)
