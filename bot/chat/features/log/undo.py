"""The commands undo and put back."""

from __future__ import annotations

from dataclasses import dataclass

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command
from bot.chat.dialogue.inputs.shared_slots import NUMBER_SLOT
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.on_copy import on_copy
from bot.chat.dialogue.progress import watching
from bot.chat.dialogue.slots import Slot, said
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.log.entries import change_reply, thing_words
from bot.chat.features.log.thread import last_things, none_left
from bot.chat.i18n.language import _
from bot.chat.reply.message import Button, Reply, reply
from bot.trade.words import N_
from bot.work.log import chain, thread
from bot.work.log.chain import State


@dataclass(frozen=True, kw_only=True)
class PutBackArguments(Arguments):
    """The entry to put back, None for the last one."""

    number: int | None = None


@dataclass(frozen=True, kw_only=True)
class UndoArguments(PutBackArguments):
    """The entry to undo, None for the last one, or for the one before it."""

    other: bool = False


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
        if turn.waits and turn.message.tapped is None and not turn.message.answers:
            return reply(_("Nothing was logged."))
        if arguments.other and not thread.ends_with_undo(turn.context, turn.message.chat_key):
            found = _without_last(turn, found)
        number = found[0].last.id if found else None
    return change_reply(turn, chain.undo(turn.context, number))


def _without_last(turn: Turn, found: list[State]) -> list[State]:
    """Return what the other one may be. Raises Say where only one thing was logged here."""
    if len(found) == 1:
        thing = thing_words(turn, found[0])
        said = _("You logged only this here tonight: {thing}").format(thing=thing)
        raise Say(reply(said, buttons=((Button(_("Undo"), f"undo {found[0].last.id}"),),)))
    return found[1:]


def _put_back(turn: Turn, arguments: PutBackArguments) -> Reply:
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
        slots=(NUMBER_SLOT, Slot("other", said)),
        writes=True,
        menu=80,
    ),
    Command(
        "put back",
        N_("put back what you undid last"),
        _put_back,
        words=("put it back", "redo", "undo the undo", "undo that undo", "undo my undo"),
        slots=(NUMBER_SLOT,),
        writes=True,
    ),
)

LOG_WORDS = (LogWords("undo", N_("undid #{number}")),)
