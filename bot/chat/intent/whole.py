"""Decide whether the grammar takes the words after a command's word whole."""

from __future__ import annotations

from bot.chat.dialogue.command import Command
from bot.chat.dialogue.registry import words_of
from bot.chat.dialogue.turn import Turn
from bot.chat.grammar import parser
from bot.chat.grammar.parser import PhraseError
from bot.chat.grammar.syntax import Filled, names_unknown
from bot.chat.i18n.language import tongue
from bot.chat.i18n.numbers import AmbiguousNumberError, NotANumberError

# Slots for free words.
_LOOSE = frozenset({("help", "free"), ("which", "lot"), ("new", "new_name"), ("start", "code")})


def reads_whole(spoken: tuple[Command, str], turn: Turn) -> bool:
    """Whether the grammar takes the words, whatever names are in them."""
    command, rest = spoken
    try:
        parser.read(command.rule, rest.strip(), turn.vocabulary)
    except (PhraseError, AmbiguousNumberError, NotANumberError):
        return False
    return True


def knows_all(turn: Turn, command: Command, rest: str) -> bool:
    """Whether the grammar takes the words after a command's word, every name in them known."""
    filled = _filled(turn, command, rest)
    if filled is None or is_loose(turn, command, rest):
        return False
    return not any(names_unknown(one.value) for one in filled)


def is_loose(turn: Turn, command: Command, rest: str) -> bool:
    """Whether the grammar takes the words only because they could be anything."""
    filled = _filled(turn, command, rest) or []
    slots = {one.slot for one in filled}
    if command.name == "waste" and slots == {"waste_amount"} and not is_named(command, turn.message.text):
        return True  # 'bin 36' may mean a batch
    if command.name == "check" and "note" in slots and "clarity" not in slots:
        return True  # 'check stock on sugar'
    if command.name == "bar" and any(one.slot == "value" and one.text.startswith("of ") for one in filled):
        return True  # 'change the name of lemon mist'
    if "lines" in slots:
        return False  # a formula with its ingredients
    return any((command.name, one.slot) in _LOOSE and _is_any_words(one) for one in filled)


def is_named(command: Command, text: str) -> bool:
    """Whether a text begins with the usual word of its command, or with that of its slash command."""
    usual = {command.name, words_of(command, tongue().language)[0]}
    return any(f"{text} ".casefold().startswith(f"{word} ") for word in usual)


def _filled(turn: Turn, command: Command, rest: str) -> list[Filled] | None:
    try:
        phrase = parser.read(command.rule, rest.strip(), turn.vocabulary)
    except (PhraseError, AmbiguousNumberError, NotANumberError):
        return None
    return [*phrase.slots.values(), *(one for line in phrase.lines for one in line.filled)]


def _is_any_words(filled: Filled) -> bool:
    """Whether a slot for any words holds several: 'which A2231' names a lot, 'which are open' does not."""
    if not isinstance(filled.value, str):
        return False
    return " " in filled.value.strip() or (filled.slot == "code" and filled.value.isdecimal())
