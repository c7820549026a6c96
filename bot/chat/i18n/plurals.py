"""Plurals of a bar's own names, which no catalogue can hold."""

from __future__ import annotations

from fractions import Fraction

from bot.chat.i18n.language import tongue
from bot.chat.i18n.languages import understood


def counted_name(name: str, number: Fraction) -> str:
    """Return the name in the form that goes with a number of pieces: 1 lime, 6 limes."""
    return name if number == 1 else understood(tongue().language)[0].plural(name)


def singular(name: str) -> str:
    """Return a name in the singular, as far as the endings of the language now spoken tell."""
    return understood(tongue().language)[0].singular(name)
