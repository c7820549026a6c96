"""The commands help and cancel."""

from __future__ import annotations

from dataclasses import dataclass

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command
from bot.chat.dialogue.filling import cancelled
from bot.chat.dialogue.registry import slash_word
from bot.chat.dialogue.slots import Slot, plain
from bot.chat.dialogue.turn import Turn
from bot.chat.features.help import suggestions
from bot.chat.i18n.language import _
from bot.chat.reply.message import Reply, reply
from bot.trade.words import N_


@dataclass(frozen=True, kw_only=True)
class HelpArguments(Arguments):
    """The subject of the help."""

    free: str = ""


def _help(turn: Turn, arguments: HelpArguments) -> Reply:
    # 'Good evening' is a greeting, not a question about the evening.
    greeted = not turn.line.casefold().lstrip("/").startswith(("help", slash_word(COMMANDS[0])))
    asked = "" if greeted else arguments.free.strip()
    return (suggestions.help_with(turn, asked) if asked else None) or suggestions.general_help(turn)


def _cancel(turn: Turn, arguments: Arguments) -> Reply:
    if turn.presence.question is None:
        return reply(_("Nothing was logged.") if turn.offered else _("Nothing is in progress."))
    return cancelled(turn)


COMMANDS = (
    Command(
        "help",
        N_("what I can do"),
        _help,
        words=("hi", "hello", "hey", "what can i do", "what can you do", "what can i say"),
        slots=(Slot("free", plain(str)),),
        anyone=True,
        menu=90,
        examples=(N_("help waste"),),
    ),
    Command(
        "cancel",
        N_("forget the question in progress"),
        _cancel,
        words=("never mind", "nevermind", "nvm", "forget it", "stop"),
        writes=True,
        anyone=True,
    ),
)
