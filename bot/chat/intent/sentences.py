"""Read sentences that do not begin with a command's word: 'Ana closes tonight', 'stop the ice reminder'."""

from __future__ import annotations

from typing import Final

from bot.chat.dialogue.command import Command
from bot.chat.dialogue.registry import all_commands, command_at_start
from bot.chat.dialogue.turn import Turn
from bot.chat.grammar import parser
from bot.chat.grammar.moments import split_moment
from bot.work.log import thread
from bot.work.people import team

# The rule of a sentence, its command, and the commands whose word the sentence may begin with.
_SENTENCES: Final[tuple[tuple[str, str, frozenset[str]], ...]] = (
    ("closer_said", "closes", frozenset()),
    ("named_reminder_said", "reminders", frozenset({"cancel", "undo", "change", "moved"})),
    ("note_done_said", "notes", frozenset({"note", "tick"})),
)


def as_sentence(turn: Turn, text: str, spoken: Command | None) -> tuple[Command, str] | None:
    """Return the command of a whole sentence and what it names; `spoken` is that of the text's first word."""
    if turn.presence.bar is None:
        return None
    for rule, name, over in _SENTENCES:
        if spoken is not None and spoken.name not in over:
            continue
        phrase = parser.try_read(rule, text.strip(" .!?¡¿"), turn.vocabulary)
        if phrase is not None:
            said = " ".join(one.text for one in phrase.filled)
            return all_commands()[name], said or (_reminder_just_set(turn) if name == "reminders" else "")
    return _time_first(turn, text) if spoken is None else None


def _time_first(turn: Turn, text: str) -> tuple[Command, str] | None:
    """Read 'tonight at 11 remind me to lock up' as the command with the time behind its words."""
    moment, rest = split_moment(text, turn.vocabulary)
    found = None if moment.is_empty or not text.endswith(rest) else command_at_start(rest)
    if found is None or found[0].name != "remind" or not found[1]:
        return None
    return found[0], f"{found[1]} {text.removesuffix(rest).strip(' ,')}"


def _reminder_just_set(turn: Turn) -> str:
    """Return the number of the reminder that was logged last here tonight: 'cancel that reminder'."""
    last = thread.tonight(turn.context, turn.message.chat_key)[:1]
    return str(last[0].details["reminder"]) if last and last[0].what in {"remind", "change reminder"} else ""


def is_certain(turn: Turn, command: Command, rest: str) -> bool:
    """Whether a sentence may be done at once: it shows something, asks for it, or names one of the team."""
    names = {one.name.casefold() for one in team.team(turn.context)}
    return not command.writes or command.name == "remind" or rest.casefold() in names
