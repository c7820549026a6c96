"""Plurals of a bar's own names, which no catalogue can hold."""

from __future__ import annotations

from fractions import Fraction

from bot.chat.language import tongue

_ES_AFTER = ("s", "x", "z", "ch", "sh")
_VOWELS = "aeiouáéíóú"


def counted_name(name: str, number: Fraction) -> str:
    """Return the name in the form that goes with a number of pieces: 1 lime, 6 limes."""
    if number == 1:
        return name
    *first, last = name.split(" ")
    return " ".join([*first, _spanish(last) if tongue().language == "es" else _english(last)])


def _english(word: str) -> str:
    low = word.casefold()
    if low.endswith("y") and len(word) > 1 and low[-2] not in _VOWELS:
        return word[:-1] + "ies"
    return word + ("es" if low.endswith(_ES_AFTER) else "s")


def _spanish(word: str) -> str:
    low = word.casefold()
    if low.endswith("z"):
        return word[:-1] + "ces"
    if low.endswith("s"):
        return word
    return word + ("s" if low[-1:] in _VOWELS else "es")


def singular(name: str) -> str:
    """Return a name in the singular, as far as plain English and Spanish endings tell."""
    *first, last = name.split()
    low = last.casefold()
    if low.endswith("ies") and len(last) > 4:
        last = last[:-3] + "y"
    elif low.endswith(("ches", "shes", "xes")) or (tongue().language == "es" and low.endswith("ones")):
        last = last[:-2]
    elif low.endswith("s") and not low.endswith(("ss", "us", "is")):
        last = last[:-1]
    return " ".join([*first, last])
