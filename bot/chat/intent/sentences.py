"""Read sentences that do not begin with a command's word: 'Ana closes tonight', 'stop the ice reminder'."""

from __future__ import annotations

from typing import Final

from bot.chat.dialogue.command import Command
from bot.chat.dialogue.registry import all_commands
from bot.chat.dialogue.turn import Turn
from bot.chat.grammar import parser
from bot.work.people import team

# The rule of a sentence, its command, and the commands whose word the sentence may begin with.
_SENTENCES: Final[tuple[tuple[str, str, frozenset[str]], ...]] = (
    ("closer_said", "closes", frozenset()),
    ("named_reminder_said", "reminders", frozenset({"cancel", "undo"})),
    ("note_done_said", "notes", frozenset({"note"})),
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
            return all_commands()[name], " ".join(one.text for one in phrase.filled)
    return None


def is_certain(turn: Turn, command: Command, rest: str) -> bool:
    """Whether a sentence may be done at once: it only shows something, or names somebody of the team."""
    names = {one.name.casefold() for one in team.team(turn.context)}
    return not command.writes or rest.casefold() in names
