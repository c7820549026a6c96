"""Plurals of a bar's own names, which are in no catalogue."""

from __future__ import annotations

from fractions import Fraction

from bot.chat.i18n.language import show_number, tongue
from bot.chat.i18n.languages import Language, languages, understood
from bot.trade.formulas.kinds import is_fruit_name

_HALF = Fraction(1, 2)


def counted_name(name: str, number: Fraction) -> str:
    """Return the name in the form for a number of pieces: 1 lime, 0.3 lime, 6 limes."""
    return name if 0 < number <= 1 else _endings(name).plural(name)


def pieces(name: str, number: Fraction, places: int = 2) -> str:
    """Return a number of pieces with their name: 12 lemons, half a lemon."""
    half = understood(tongue().language)[0].half
    if number == _HALF and half is not None:
        return half(name)
    return f"{show_number(number, places)} {counted_name(name, number)}"


def singular(name: str) -> str:
    """Return a name in the singular if its endings mark a plural, in the language where that is a fruit.

    'limones' ends like an English plural too, of a word that means nothing.
    """
    own = _endings(name).singular(name)
    if _is_fruit(own):
        return own
    others = (spoken.singular(name) for spoken in languages().values())
    return next(filter(_is_fruit, others), own)


def _is_fruit(name: str) -> bool:
    return is_fruit_name(name) or is_fruit_name(name.rpartition(" ")[2])


def _endings(name: str) -> Language:
    """Return the language of a name: the one with its letters (limón), else the current one."""
    spoken, *_rest = understood(tongue().language)
    letters = set(name.casefold())
    if letters & set(spoken.letters):
        return spoken
    return next((one for one in languages().values() if letters & set(one.letters)), spoken)
