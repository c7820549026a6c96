"""Read sentences that do not begin with a command's word: 'Ana closes tonight', 'stop the ice reminder'."""

from __future__ import annotations

from typing import Final

from bot.chat.dialogue.command import Command
from bot.chat.dialogue.registry import all_commands, command_at_start
from bot.chat.dialogue.turn import Turn
from bot.chat.grammar import parser
from bot.chat.grammar.moments import split_moment
from bot.chat.grammar.parser import Phrase
from bot.trade.formulas.kinds import is_not_for_drinks
from bot.trade.safety.held_substances import held_in
from bot.work.log import thread
from bot.work.people import team

_LONGEST = 200  # characters: a longer text is hardly ever one of these sentences
_FEW_WORDS = 3  # 'isopropyl alcohol 70%': a longer text is a sentence
# The rule of a sentence, its command, and the commands whose word the sentence may begin with.
_SENTENCES: Final[tuple[tuple[str, str, frozenset[str]], ...]] = (
    ("closer_said", "closes", frozenset()),
    ("named_reminder_said", "reminders", frozenset({"cancel", "undo", "change", "moved"})),
    ("note_done_said", "notes", frozenset({"note", "tick"})),
)


def said_first(turn: Turn, text: str, bare: bool) -> tuple[Command, str] | None:
    """Return the command of a sentence that is read before all others."""
    return _about_danger(turn, text, bare) or _as_dilution(turn, text)


def _about_danger(turn: Turn, text: str, bare: bool) -> tuple[Command, str] | None:
    """Parse 'is tonka safe', 'can I use rubbing alcohol', or (if `bare`) only the name of one."""
    if turn.presence.bar is None:
        return None
    text = text.strip(" ?!.¿¡")
    phrase = _read_rule(turn, "cautions_said", text)
    said = {} if phrase is None else phrase.slots
    name = said["subject"].text if "subject" in said else "" if said else text
    warned = is_not_for_drinks(name) or bool(held_in((name,)))
    if not (
        {"safe", "fire"} & set(said) or (warned and (said or (bare and len(text.split()) <= _FEW_WORDS)))
    ):
        return None
    return all_commands()["cautions"], f"{name} flammable".strip() if "fire" in said else name


def _as_dilution(turn: Turn, text: str) -> tuple[Command, str] | None:
    """Parse 'make 500 ml of 70% from 96%' or 'mix 200 ml of 96% and 100 ml of 40%' as a strength."""
    phrase = _read_rule(turn, "strength_said", text)
    if phrase is None:
        return None
    said = {name: one.text for name, one in phrase.slots.items()}
    line = said.get("proof", "")
    if "more" in said:
        line = f"{said['amount']} {said['level']} + {said['more']}"
    elif line == "":
        total, level, to = said.get("total"), said["level"], said.get("to_level")
        if total is None or to is None:  # '500 ml of 70% from 96%'
            total, level, to = said["amount"], said["from_level"], level
        line = f"make {total} {level} to {to}"
        line += f" with {said['with_level']}" if "with_level" in said else ""
    return all_commands()["strength"], line


def _read_rule(turn: Turn, rule: str, text: str) -> Phrase | None:
    """Parse a whole sentence by a rule of the grammar."""
    if turn.presence.bar is None or len(text) > _LONGEST:
        return None
    return parser.try_read(rule, text.strip(" ?!.¿¡"), turn.vocabulary)


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
