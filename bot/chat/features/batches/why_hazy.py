"""The command why: the tests of a hazy or split batch in their order, the next one first."""

from __future__ import annotations

from dataclasses import dataclass

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.shared_slots import NUMBER_SLOT, OPEN_BATCH_SLOT
from bot.chat.dialogue.turn import Turn
from bot.chat.features.batches.batch_card import clarity_buttons
from bot.chat.features.liquids.diagnosis_words import (
    NEXT_WORDS,
    add_button,
    headline,
    status_words,
    test_lines,
)
from bot.chat.i18n.language import _
from bot.chat.reply.message import Block, Button, Grid, Reply, Text, reply
from bot.trade.words import N_
from bot.work.batches.batches import BatchView, Clarity
from bot.work.liquids import diagnosis
from bot.work.liquids.diagnosis import Diagnosis
from bot.work.trials import blind


@dataclass(frozen=True, kw_only=True)
class WhyArguments(Arguments):
    """A batch, and which of its tests to show; by default the next one."""

    batch: BatchView
    number: int | None = None


def _diagnosed(turn: Turn, batch: BatchView, wanted: int | None = None) -> Diagnosis:
    is_blind = blind.trial_of(turn.context, batch) is not None
    return diagnosis.diagnose(turn.context, batch, is_blind, wanted)


def next_test_lines(turn: Turn, batch: BatchView) -> list[Block]:
    """Return the next test of a batch, for the answer to a look at it."""
    found = _diagnosed(turn, batch)
    words = _("Next: {what}.").format(what=_(NEXT_WORDS[found.shown]))
    return [Text(words), *(Text(one) for one in test_lines(found, turn.context.bar.units))]


def _why(turn: Turn, arguments: WhyArguments) -> Reply:
    number, units = arguments.batch.number, turn.context.bar.units
    if arguments.batch.clarity == Clarity.CLEAR:
        return reply(
            _("Batch {number} was clear at the last look. How is it now?").format(number=number),
            buttons=(clarity_buttons(number),),
        )
    found = _diagnosed(turn, arguments.batch, arguments.number)
    lines = [Text(line) for line in test_lines(found, units)]
    rows = tuple(
        (f"{at} {_(one.cause)}", _("now") if one.cause is found.shown else status_words(found, one, units))
        for at, one in enumerate(found.tests, start=1)
    )
    return Reply(
        (Text(headline(found), strong=True), *lines, Text(_("All tests:")), Grid(rows)),
        _buttons(found),
        edits=turn.message.tapped is not None and arguments.number is not None,
    )


def _buttons(found: Diagnosis) -> tuple[tuple[Button, ...], ...]:
    number, order = found.batch.number, [one.cause for one in found.tests]
    rows = [clarity_buttons(number)]
    add = add_button(found)
    if add is not None:
        rows.insert(0, (add,))
    if found.shown is not order[-1]:
        rows.append((Button(_("Next test"), f"why {number} {order.index(found.shown) + 2}"),))
    return tuple(rows)


COMMANDS = (
    Command(
        "why",
        N_("why a batch is hazy, and what to try next"),
        _why,
        words=("why hazy", "why split", "why cloudy", "why is batch", "why is", "mend batch", "fix batch"),
        examples=(N_("why hazy 12"),),
        slots=(OPEN_BATCH_SLOT, NUMBER_SLOT),
        wishes=(Wish("why", ("{batch?}",)),),
    ),
)
