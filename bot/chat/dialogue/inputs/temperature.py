"""Parse temperatures: °C or °F, and bare numbers."""

from __future__ import annotations

from fractions import Fraction

from bot.chat.dialogue.slots import Given, Slot
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.grammar import parser
from bot.chat.grammar.syntax import Temperature
from bot.chat.i18n.language import _
from bot.chat.reply.message import reply
from bot.chat.reply.units import show_temperature

COLDEST_C, WARMEST_C = Fraction(0), Fraction(40)


def accept_temperature(turn: Turn, text: str) -> Fraction:
    """Parse '27 C', '80 F' or a bare number; return °C. A bare number above 40 is °F in a US bar."""
    typed = text.strip()
    for wording in (typed, f"{typed} F" if turn.context.bar.units == "us" else f"{typed} C"):
        phrase = parser.try_read("temperature_slot", wording, turn.vocabulary)
        value = None if phrase is None else phrase.slots["temperature"].value
        if isinstance(value, Temperature):
            return checked(turn, value)
    raise Say(reply(_("Write a temperature such as 27 °C or 80 °F.")))


def checked(turn: Turn, value: Temperature) -> Fraction:
    """Return °C within the range of the density formulas and of a bar. Raises Say outside it."""
    celsius = Fraction(round(value.celsius * 10), 10)
    if not COLDEST_C <= celsius <= WARMEST_C:
        units = turn.context.bar.units
        raise Say(
            reply(
                _("A temperature from {low} to {high}, please.").format(
                    low=show_temperature(float(COLDEST_C), units),
                    high=show_temperature(float(WARMEST_C), units),
                )
            )
        )
    return celsius


def temperature_of(turn: Turn, said: Fraction | None) -> float:
    """Return the typed temperature, else the bar's own, °C."""
    return turn.context.bar.temperature_c if said is None else float(said)


def _accept(turn: Turn, given: Given, value: Temperature) -> Fraction:
    return checked(turn, value)


TEMPERATURE_SLOT = Slot("temperature", _accept)
