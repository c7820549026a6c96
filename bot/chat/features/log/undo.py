"""The command undo."""

from __future__ import annotations

from dataclasses import dataclass

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command
from bot.chat.dialogue.inputs.shared_slots import NUMBER_SLOT
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.progress import watching
from bot.chat.dialogue.turn import Turn
from bot.chat.features.log.entries import undo_reply
from bot.chat.reply.message import Reply
from bot.trade.words import N_
from bot.work.log import undo


@dataclass(frozen=True, kw_only=True)
class UndoArguments(Arguments):
    """The entry to undo, None for the last one."""

    number: int | None = None


def _undo(turn: Turn, arguments: UndoArguments) -> Reply:
    turn.context.watch = watching(N_("Taking back"))
    return undo_reply(turn, undo.take_back(turn.context, arguments.number))


COMMANDS = (
    Command(
        "undo",
        N_("take back the last thing you logged"),
        _undo,
        words=("take it back", "take back", "undo the last"),
        slots=(NUMBER_SLOT,),
        writes=True,
        menu=80,
    ),
)

LOG_WORDS = (LogWords("undo", N_("took back #{undo_of}")),)
