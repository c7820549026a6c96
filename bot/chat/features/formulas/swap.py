"""The command swap: a formula's amounts with another spirit, for the same ethanol."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.shared_slots import FORMULA_SLOT, GRAMS_SLOT, LOSS_SLOT, SAID_TARGET_SLOT
from bot.chat.dialogue.inputs.temperature import TEMPERATURE_SLOT
from bot.chat.dialogue.slots import Given, Question, columns
from bot.chat.dialogue.turn import Turn
from bot.chat.features.formulas.scale import ScaledArguments, scale_reply, with_target
from bot.chat.features.liquids.spirit_substitution import SWAP_SLOT
from bot.chat.grammar.syntax import Factor
from bot.chat.i18n.language import _, show_number
from bot.chat.reply.message import Reply
from bot.trade.formulas.amounts import ByFactor
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.words import N_
from bot.work.formulas import ingredients


def _ask_swap(turn: Turn, given: Given) -> Question:
    view = given[FORMULA_SLOT]
    there = {line.ingredient.id for line in view.lines}
    spirits = [
        one
        for one in ingredients.all_of(turn.context, IngredientKind.SPIRIT)
        if one.strength_percent is not None and one.id not in there
    ]
    choices = [(f"{one.name} {show_number(one.strength_percent or 0, 1)} %", one.name) for one in spirits[:4]]
    choices += [
        (f"{show_number(Fraction(level), 1)} %", f"{show_number(Fraction(level), 1)} %") for level in _USUAL
    ]
    return Question(_("How strong is the spirit that is there instead?"), columns(choices, 2), hint="75.5 %")


_USUAL = ("96", "95", "75.5", "70", "50", "40")


def _swap(turn: Turn, arguments: ScaledArguments) -> Reply:
    if arguments.target is None:
        as_written = Factor(Fraction(1)), ByFactor(Fraction(1))
        return scale_reply(turn, with_target(arguments, "x1", as_written))
    return scale_reply(turn, arguments)


COMMANDS = (
    Command(
        "swap",
        N_("another spirit for the same ethanol"),
        _swap,
        words=("swap spirit in", "swap spirit", "other spirit"),
        examples=(N_("swap grapefruit mist with 75.5 %"),),
        slots=(
            FORMULA_SLOT,
            replace(SWAP_SLOT, ask=_ask_swap),
            LOSS_SLOT,
            SAID_TARGET_SLOT,
            GRAMS_SLOT,
            TEMPERATURE_SLOT,
        ),
        wishes=(Wish("swap", ("{formula?} WITH {level}", "{formula?} WITH {ingredient}", "{formula?}")),),
    ),
)
