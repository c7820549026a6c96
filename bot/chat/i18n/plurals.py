"""Plurals of a bar's own names, which no catalogue can hold."""

from __future__ import annotations

from fractions import Fraction

from bot.chat.i18n.language import tongue

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
    if low[-1:] in _VOWELS:
        return word + "s"
    # The stress stays where it was, and is not written any more: limón, limones.
    last, plain = low[-2:-1], dict(zip("áéíóú", "aeiou", strict=True))
    stem = word[:-2] + plain[last] + word[-1] if last in plain else word
    return stem + "es"


_ES_SINGULAR = (("ones", "ón"), ("anes", "án"), ("ines", "ín"), ("unes", "ún"), ("ces", "z"), ("ores", "or"))


def _spanish_singular(word: str) -> str:
    low = word.casefold()
    for many, one in _ES_SINGULAR:
        if low.endswith(many) and len(low) > len(many) + 1:
            return word[: -len(many)] + one
    return word[:-1] if low.endswith("s") and low[-2:-1] in _VOWELS else word


def singular(name: str) -> str:
    """Return a name in the singular, as far as plain English and Spanish endings tell."""
    *first, last = name.split()
    low = last.casefold()
    if tongue().language == "es":
        last = _spanish_singular(last)
    elif low.endswith("ies") and len(last) > 4:
        last = last[:-3] + "y"
    elif low.endswith(("ches", "shes", "xes")):
        last = last[:-2]
    elif low.endswith("s") and not low.endswith(("ss", "us", "is")):
        last = last[:-1]
    return " ".join([*first, last])
