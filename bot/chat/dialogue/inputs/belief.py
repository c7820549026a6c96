"""Asking whether an amount of fruit is meant that the bar has never come near."""

from __future__ import annotations

from fractions import Fraction

from bot.chat.dialogue.inputs.naming import cancel_button
from bot.chat.dialogue.inputs.settling import SURE, command_word, settle_line
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.i18n.language import _
from bot.chat.reply.message import Button, reply
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.formulas.measures import Dimension
from bot.work.formulas.ingredients import IngredientView
from bot.work.fruit import usual


def believe(
    turn: Turn, done: str, item: IngredientView, amount: Fraction, dimension: Dimension, said: str, line: str
) -> None:
    """Ask before an amount is logged that is beyond belief, unless it was confirmed. Raises Say.

    `done` is the command, `said` the amount in words, `line` what logs it all.
    """
    if turn.sure or item.kind is not IngredientKind.FRUIT:
        return
    if usual.is_believable(turn.context, done, item.id, amount, dimension):
        return
    raise ask_belief(said, line)


def ask_belief(said: str, line: str) -> Say:
    """Return the question whether an amount in words is meant; a tap on Yes says the line."""
    yes = Button(_("Yes, {what}").format(what=said), settle_line(SURE, line))
    change = Button(_("Change"), command_word(line))
    return Say(reply(_("{what}?").format(what=said), buttons=((yes,), (change, cancel_button()))))


def name_in_line(turn: Turn, item: IngredientView) -> str:
    """Return how a line names an ingredient; one made just now has no number once the line is refused."""
    return item.name if item.name in turn.new_names else f"#{item.id}"
