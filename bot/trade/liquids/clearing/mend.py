"""The answers of a clearing estimate: a state, the band of a limit, and a change that would mend a mix."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from bot.trade.liquids.clearing.mixture import Mixture
from bot.trade.words import N_


class MendKind(StrEnum):
    """The ingredient that a remedy changes; the rest of the formula stays as it is."""

    MORE_SPIRIT = N_("more spirit")
    LESS_GLYCOL = N_("less glycol")
    LESS_GLYCEROL = N_("less glycerol")
    LESS_WATER = N_("less water")
    LESS_OIL = N_("less oil")
    LESS_CARRIER = N_("less carrier oil")
    STRONGER_SPIRIT = N_("stronger spirit")


@dataclass(frozen=True, slots=True)
class Band:
    """One limit by each model; None where a model finds no such limit."""

    original: float | None
    dortmund: float | None


@dataclass(frozen=True, slots=True)
class Mend:
    """One change that improves a formula: the amounts to pour, and the resulting state.

    `change_ml` is the volume added (positive) or left out (negative) against the original formula; for a
    stronger spirit it is 0 and the strength is in `mixture`.
    """

    kind: MendKind
    mixture: Mixture
    change_ml: float
    reaches: State


class State(StrEnum):
    """The verdict in one word."""

    CLEAR = N_("clear")
    BORDERLINE = N_("borderline")
    WILL_SPLIT = N_("will split")
    WITHHELD = N_("withheld")
