"""The command undo."""

from __future__ import annotations

from bot.chat.dialogue.command import Command
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.progress import watching
from bot.chat.dialogue.turn import Given, Turn
from bot.chat.features.log.entries import undo_reply
from bot.chat.reply.message import Reply
from bot.trade.words import N_
from bot.work.log import undo


def _undo(turn: Turn, given: Given) -> Reply:
    number = int(given.rest[0]) if given.rest else None  # type: ignore[call-overload]
    turn.context.watch = watching(N_("Taking back"))
    return undo_reply(turn, undo.take_back(turn.context, number))


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

LOG_WORDS = (LogWords("undo", N_("took back #{undo_of}")),)
