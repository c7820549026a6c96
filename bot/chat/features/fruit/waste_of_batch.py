"""Waste of a batch: an amount of it, or bottles."""

from __future__ import annotations

from fractions import Fraction

from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.batches.bottling import broken_reply, spilt_reply
from bot.chat.i18n.language import _
from bot.chat.reply.message import Reply, reply
from bot.trade.formulas.measures import Dimension
from bot.work.batches.batches import BatchView


def lose(
    turn: Turn, batch: BatchView, said: tuple[Fraction, Dimension] | None, broken: int, reason: str
) -> Reply:
    """Log what was thrown out or spilt of a batch, or the bottles of it that broke."""
    note = _(reason) if reason else ""
    if broken:
        return broken_reply(turn, batch, broken, note)
    amount, kind = said or (Fraction(0), Dimension.VOLUME)
    if kind is not Dimension.VOLUME:
        raise Say(reply(_("Say how much of batch {number}, such as 50 ml.").format(number=batch.number)))
    return spilt_reply(turn, batch, amount, note)
