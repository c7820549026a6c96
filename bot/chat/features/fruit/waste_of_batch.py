"""Waste of a batch: an amount of it, or bottles."""

from __future__ import annotations

from fractions import Fraction

from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.batches.batch_card import left_words
from bot.chat.features.batches.bottling import lost_reply, spilt_reply
from bot.chat.i18n.language import _
from bot.chat.reply.message import Button, Reply, reply
from bot.trade.formulas.measures import Dimension
from bot.work.batches import bottles
from bot.work.batches.batches import BatchView
from bot.work.batches.bottles import Left


def lose(
    turn: Turn, batch: BatchView, said: tuple[Fraction, Dimension] | None, broken: int, reason: str
) -> Reply:
    """Log what was thrown out or spilt of a batch, or the bottles of it that broke."""
    note = _(reason) if reason else ""
    if broken:
        there = bottles.left(turn.context, batch.number)
        if there is None or there.unopened < broken:
            raise Say(_few_bottles(turn, batch, there))
        return lost_reply(turn, batch, bottles.break_bottles(turn.context, batch.number, broken, note))
    amount, kind = said or (Fraction(0), Dimension.VOLUME)
    if kind is not Dimension.VOLUME:
        raise Say(reply(_("Say how much of batch {number}, such as 50 ml.").format(number=batch.number)))
    return spilt_reply(turn, batch, amount, note)


def _few_bottles(turn: Turn, batch: BatchView, there: Left | None) -> Reply:
    if there is None:
        first = _("Batch {number} has no bottles logged. Say ml, or log them:").format(number=batch.number)
        return reply(first, buttons=((Button(_("Bottles"), f"bottled {batch.number}"),),))
    left = left_words(there, turn.context.bar.units)
    return reply(_("Batch {number} has fewer: {left}.").format(number=batch.number, left=left))
