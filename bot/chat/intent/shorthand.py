"""Parse the shortest requests for amounts: part of a formula's name, and '8x50' without a unit."""

from __future__ import annotations

import re

from bot.chat.dialogue.turn import Turn
from bot.chat.grammar import parser
from bot.chat.grammar.lexer import Noun
from bot.chat.grammar.parser import Phrase, PhraseError
from bot.chat.grammar.syntax import Unknown
from bot.chat.i18n.numbers import AmbiguousNumberError, NotANumberError
from bot.chat.reply.units import own_volume

_MOST = 10
_BOTTLES = re.compile(r"(\d\s*[xX×*]\s*\d+(?:[.,]\d+)?)(?=\s+[^\W\d]|\s*$)")


def read_scaling(turn: Turn, text: str) -> tuple[Phrase, str] | None:
    """Parse a request for amounts; '8x50' is in the bar's own unit, which the reply names.

    Returns the phrase and its text, or None.
    """
    own = own_volume(turn.context.bar.units)
    for one in (text, f"{text} {own}", _BOTTLES.sub(rf"\1 {own}", text)):
        try:
            return parser.read("scale_cmd", one, turn.vocabulary), one
        except PhraseError as error:
            if "UNIT" not in error.expected:
                return None
        except (AmbiguousNumberError, NotANumberError):
            return None
    return None


def formulas_meant(turn: Turn, value: object) -> list[Noun]:
    """Return the formulas that match a name or part of one; all of them without a name."""
    known = list(turn.vocabulary.of_kind("FORMULA"))
    if value is None:
        return known[:_MOST]
    if isinstance(value, Noun):
        return [value]
    if not isinstance(value, Unknown):
        return [one for one in known if one.id == str(getattr(value, "id", ""))]
    plain = value.text.casefold()
    within = [one for one in known if plain in one.name.casefold()]
    if within:
        return within[:_MOST]
    near = turn.near(value.text, "FORMULA")
    return [one for one in known if one.name in near][:_MOST]
