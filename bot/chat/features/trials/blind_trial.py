"""The command blind trial: a trial with secret letters, and what to do about two batches."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command
from bot.chat.dialogue.inputs.shared_slots import FORMULA_SLOT
from bot.chat.dialogue.slots import Given, Slot
from bot.chat.dialogue.turn import Turn
from bot.chat.features.formulas.drafting import FormulaLines
from bot.chat.features.trials.trials import (
    FRESH_SLOT,
    SIZE_SLOT,
    VARIANT_SLOT,
    TrialArguments,
    begin_or_show,
)
from bot.chat.i18n.language import _
from bot.chat.reply.message import Button, Reply, reply
from bot.trade.words import N_
from bot.work.batches import batches
from bot.work.formulas import formulas
from bot.work.formulas.formulas import FormulaView


@dataclass(frozen=True, kw_only=True)
class BlindTrialArguments(Arguments):
    """A formula, with its first variant, or fresh fruit; or the numbers of two batches."""

    formula: FormulaView | None = None
    lines: FormulaLines = ()
    amount: Fraction | None = None
    fresh: bool = False
    one_batch: int | None = None
    other_batch: int | None = None


def _blind_trial(turn: Turn, arguments: BlindTrialArguments) -> Reply:
    if arguments.one_batch is None or arguments.other_batch is None:
        trial = TrialArguments(
            formula=arguments.formula,
            lines=arguments.lines,
            amount=arguments.amount,
            blind="yes",
            fresh=arguments.fresh,
        )
        return begin_or_show(turn, trial)
    made = [batches.row_of(turn.context, one) for one in (arguments.one_batch, arguments.other_batch)]
    ways = {row.formula_id: formulas.get(turn.context, row.formula_id).name for row in made}
    return reply(
        _("I can't set two batches against each other."),
        _(
            "A blind trial sets a formula against a variant of it: the bottles carry letters in random order "
            "until it ends. Or it sets a spray against fresh fruit."
        ),
        buttons=tuple(
            (Button(_("Blind trial of {name}").format(name=name), f"blind trial #{number}"),)
            for number, name in ways.items()
        ),
    )


def _accept_batch(turn: Turn, given: Given, value: Fraction) -> int:
    return int(value)


def _no_batch(turn: Turn, given: Given) -> bool:
    return _ONE_BATCH not in given


def _new(turn: Turn, given: Given) -> bool:
    return _no_batch(turn, given) and VARIANT_SLOT.wanted(turn, given)


_ONE_BATCH = Slot("one_batch", _accept_batch)

COMMANDS = (
    Command(
        "blind trial",
        N_("try a variant of a formula blind, or a spray against fresh fruit"),
        _blind_trial,
        words=("blind tasting", "blind test", "blind taste", "blind trial of", "blind tasting of"),
        examples=(N_("blind trial grapefruit mist"), N_("trial grapefruit mist against fresh")),
        slots=(
            _ONE_BATCH,
            Slot("other_batch", _accept_batch),
            replace(FORMULA_SLOT, wanted=_no_batch),
            FRESH_SLOT,
            replace(VARIANT_SLOT, wanted=_new),
            replace(SIZE_SLOT, wanted=_new),
        ),
        writes=True,
    ),
)
