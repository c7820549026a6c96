"""Find what 'it' and 'the other one' mean after a line that only showed something."""

from __future__ import annotations

import re
from collections.abc import Iterator

from bot.chat.dialogue.command import Command
from bot.chat.dialogue.registry import command_at_start
from bot.chat.dialogue.turn import Turn
from bot.chat.grammar import parser
from bot.chat.grammar.lexer import Noun
from bot.chat.grammar.syntax import Factor, Filled, Hash
from bot.chat.i18n.keywords import stands_for
from bot.chat.i18n.language import tongue
from bot.chat.intent.reading.pieces import Typed
from bot.trade.formulas.kinds import IngredientKind, guess_kind

_HOME = re.compile(r"^@\d{1,12} ", re.ASCII)


def shown_before(turn: Turn) -> tuple[Command, str, dict[str, Filled]] | None:
    """Return the last line that showed something here: the command, the words after it, its slots.

    For a reply, the line of a button below the message to which it replies comes first.
    """
    for line in (*(_HOME.sub("", one) for one in turn.message.answers), turn.shown):
        found = command_at_start(line)
        phrase = None if found is None else found[0].phrase(turn, found[1])
        if found is not None and phrase is not None and _nouns(turn, phrase.slots):
            return *found, phrase.slots
    return None


def meant_by_it(turn: Turn, text: str, found: list[Typed]) -> Iterator[Typed]:
    """Yield what 'it' or 'that' in a text means: the thing that was shown, else the only formula.

    Nothing if the text names one itself.
    """
    language = tongue().language
    for day in (one.text for one in found if one.kind == "day"):
        text = text.replace(day, " ")  # 'esta noche' says 'this' of nothing
    if not any(stands_for(word, "THIS", language) for word in re.findall(r"\w+", text)):
        return
    last = shown_before(turn)
    for noun in _only_formula(turn) if last is None else _nouns(turn, last[2]):
        kind = "formula"
        if noun.kind == "INGREDIENT":
            kind = "fruit" if guess_kind(noun.name) is IngredientKind.FRUIT else "ingredient"
        if all(one.kind != kind for one in found):
            yield Typed(kind, noun.name, len(text))


def _only_formula(turn: Turn) -> list[Noun]:
    found = list(turn.vocabulary.of_kind("FORMULA"))
    return found if len(found) == 1 else []


def shown_for_other(turn: Turn, text: str) -> tuple[Command, str] | None:
    """Return the last line that showed something, for 'the other one' of two formulas."""
    last = shown_before(turn)
    if last is None or parser.try_read("other_said", text, turn.vocabulary) is None:
        return None
    command, rest, slots = last
    formula = next((one for one in _nouns(turn, slots) if one.kind == "FORMULA"), None)
    others = [one for one in turn.vocabulary.of_kind("FORMULA") if formula and one.id != formula.id]
    said = next((one.text for one in slots.values() if _noun(turn, one) == formula), "")
    if formula is None or not others:
        return None
    return command, rest.replace(said, others[0].name if len(others) == 1 else "", 1).strip()


def shown_for_share(turn: Turn, text: str) -> tuple[Command, str] | None:
    """Return the last line that showed amounts, for 'half of that' or 'double it'."""
    share = parser.try_read("share_of_it_said", text, turn.vocabulary)
    last = shown_before(turn)
    if share is None or last is None or "target" not in last[2]:
        return None
    command, rest, slots = last
    factor, words = share.slots["share"].value, slots["target"].text
    if not isinstance(factor, Factor) or not words.split()[0].isdecimal():
        return None
    return command, rest.replace(words, factor.of(words), 1)


def _nouns(turn: Turn, slots: dict[str, Filled]) -> list[Noun]:
    return [noun for one in slots.values() if (noun := _noun(turn, one)) is not None]


def _noun(turn: Turn, filled: Filled) -> Noun | None:
    """Return the formula or ingredient that a slot names."""
    value, kinds = filled.value, ("FORMULA", "INGREDIENT")
    if isinstance(value, Hash) and filled.slot in {"formula", "subject"}:
        return next((one for one in turn.vocabulary.of_kind("FORMULA") if one.id == str(value.id)), None)
    return value if isinstance(value, Noun) and value.kind in kinds else None
