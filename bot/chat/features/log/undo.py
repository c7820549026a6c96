"""The commands undo and put back."""

from __future__ import annotations

from dataclasses import dataclass

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command
from bot.chat.dialogue.inputs.shared_slots import NUMBER_SLOT
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.on_copy import on_copy
from bot.chat.dialogue.progress import watching
from bot.chat.dialogue.turn import Turn
from bot.chat.features.log.entries import change_reply
from bot.chat.features.log.thread import last_things, none_left
from bot.chat.reply.message import Reply
from bot.trade.words import N_
from bot.work.log import chain, thread


@dataclass(frozen=True, kw_only=True)
class UndoArguments(Arguments):
    """The entry to undo or to put back, None for the last one."""

    number: int | None = None


def _undo(turn: Turn, arguments: UndoArguments) -> Reply:
    run = on_copy(_undo_now) if chain.takes_long(turn.context, arguments.number) else _undo_now
    return run(turn, arguments)


def _undo_now(turn: Turn, arguments: UndoArguments) -> Reply:
    turn.context.watch = watching(N_("Taking back"))
    number = arguments.number
    if number is None:
        found = last_things(turn)
        if not found and thread.before(turn.context) is not None:
            raise none_left(turn, "undo {entry}")
        number = found[0].last.id if found else None
    return change_reply(turn, chain.undo(turn.context, number))


def _put_back(turn: Turn, arguments: UndoArguments) -> Reply:
    return change_reply(turn, chain.put_back(turn.context, arguments.number))


COMMANDS = (
    Command(
        "undo",
        N_("undo the last thing you logged"),
        _undo,
        words=(
            *("take it back", "take back", "undo the last", "undo the last one", "undo last one", "undo it"),
            *("undo that", "delete the last one", "delete the last", "delete last", "delete that"),
            *("delete it", "remove the last one", "remove that", "scratch that", "scratch the last one"),
        ),
        slots=(NUMBER_SLOT,),
        writes=True,
        menu=80,
    ),
    Command(
        "put back",
        N_("put back what you undid last"),
        _put_back,
        words=("put it back", "redo"),
        slots=(NUMBER_SLOT,),
        writes=True,
    ),
)

LOG_WORDS = (LogWords("undo", N_("undid #{number}")),)
