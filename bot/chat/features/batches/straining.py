"""The command strained: what came out of an infusion, and its strength with the fruit's water in it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.shared_slots import BATCH_SLOT, OPEN_BATCH_SLOT, quantity_in_ml, undo_button
from bot.chat.dialogue.log_words import LogWords, Retold, typed_amount
from bot.chat.dialogue.slots import Given, Question, Slot
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.grammar.syntax import Amount
from bot.chat.i18n.language import _
from bot.chat.reply.message import Button, Reply, reply
from bot.chat.reply.units import show_ml, show_percents
from bot.trade.errors import OutOfRangeError
from bot.trade.formulas.measures import Dimension
from bot.trade.words import N_
from bot.work.batches import batch_life
from bot.work.batches.batches import BatchView
from bot.work.log.chain import State
from bot.work.log.history import LogLine
from bot.work.trials import blind


@dataclass(frozen=True, kw_only=True)
class StrainedArguments(Arguments):
    """A batch, and the mL that came out."""

    batch: BatchView
    amount: Fraction


def _ask_amount(turn: Turn, given: Given) -> Question:
    made = show_ml(given[BATCH_SLOT].made_ml, turn.context.bar.units)
    return Question(_("How much came out after straining? {made} went in.").format(made=made), hint="430 ml")


def _accept_amount(turn: Turn, given: Given, value: Amount) -> Fraction:
    ml = quantity_in_ml(turn, value)
    if ml <= 0:
        raise Say(reply(_("An amount above zero, please, such as 40 ml.")))
    return ml


def _strained(turn: Turn, arguments: StrainedArguments) -> Reply:
    batch, units = arguments.batch, turn.context.bar.units
    try:
        made = batch_life.strain(turn.context, batch.number, arguments.amount).batch
    except OutOfRangeError as error:
        text = _("At most {most} can come out, with all the water of the fruit. Measure it again.")
        raise Say(reply(text.format(most=show_ml(Fraction(round(error.high or 0)), units)))) from None
    first = _("Batch {number}, {name}: {volume} came out.").format(
        number=batch.number, name=batch.name, volume=show_ml(made.total_ml, units)
    )
    hidden = blind.trial_of(turn.context, made) is not None
    return reply(first, *([] if hidden else _strength_lines(made)), buttons=(_buttons(turn, batch.number),))


def _strength_lines(batch: BatchView) -> list[str]:
    percent = batch.strength
    if percent is None or not percent.high:
        return []
    text = _("{percent} by calculation; the label says so too.")
    if percent.low < percent.high:
        text = _("{percent}: the fruit gave it water, all of it at the lower end. The label says so too.")
    return [text.format(percent=show_percents(percent))]


def _buttons(turn: Turn, number: int) -> tuple[Button, ...]:
    return Button(_("Check"), f"check {number}"), Button(_("Label"), f"label {number}"), undo_button(turn)


def _volume(line: LogLine, units: str) -> Mapping[str, object]:
    return {"volume": show_ml(Fraction(line.details["after"]["ml"]), units)}


def _retold(turn: Turn, found: State) -> Retold:
    said = found.details
    amount = typed_amount(Fraction(said["after"]["ml"]), Dimension.VOLUME)
    return Retold("strained", ({"batch": str(said["batch"]), "amount": amount},))


COMMANDS = (
    Command(
        "strained",
        N_("note what came out after straining"),
        _strained,
        words=("strain", "strained batch", "strain batch"),
        examples=(N_("strained 12 430 ml"),),
        slots=(OPEN_BATCH_SLOT, Slot("amount", _accept_amount, _ask_amount)),
        writes=True,
        wishes=(Wish("strained", ("{batch?} {amount?}",)),),
    ),
)

LOG_WORDS = (
    LogWords(
        "strain",
        N_("strained batch {batch}: {volume}"),
        N_("straining of batch {batch}"),
        values=_volume,
        retold=_retold,
    ),
)
