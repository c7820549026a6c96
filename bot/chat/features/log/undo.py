"""The command undo."""

from __future__ import annotations

from bot.chat.dialogue.command import Command
from bot.chat.dialogue.progress import watching
from bot.chat.dialogue.turn import Given, Turn
from bot.chat.features.log.undo_words import worded_undo
from bot.chat.reply.message import Reply
from bot.trade.words import N_
from bot.work.log import undo


def _undo(turn: Turn, given: Given) -> Reply:
    number = int(given.rest[0]) if given.rest else None  # type: ignore[call-overload]
    turn.context.watch = watching(N_("Taking back"))
    return worded_undo(turn, undo.take_back(turn.context, number))


COMMANDS = (
    Command(
        "undo",
        N_("take back the last thing you logged"),
        _undo,
        words=("take it back", "take back", "undo the last"),
        writes=True,
        menu=80,
    ),
)
