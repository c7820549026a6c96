"""Answers to wishes that no command serves: what exists instead."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from bot.chat.dialogue.turn import Turn
from bot.chat.i18n.language import _
from bot.chat.reply.message import Reply, reply


def _thanks(turn: Turn) -> Reply:
    return reply(_("At your service."))


def _agreed(turn: Turn) -> Reply:
    if not turn.offered:
        return reply(_("Nothing is waiting for a yes."))
    return reply(_("Which one? Tap it."))


AGREED = "agreed"

WITHOUT_COMMAND: Final[dict[str, Callable[[Turn], Reply]]] = {
    "thanks": _thanks,
    AGREED: _agreed,
}
