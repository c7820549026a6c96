"""Sources of numbers and statements, and how each is known."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from bot.trade.words import N_


class HowKnown(StrEnum):
    """How the source is known; the values are shown to people."""

    READ = N_("read")
    READ_SECOND_HAND = N_("read in a text that quotes it")
    COMPUTED = N_("computed")
    MEMORY = N_("from memory, not read")
    PRACTICE = N_("common practice, no source")


@dataclass(frozen=True, slots=True)
class Source:
    """A document and a place in it, how it is known, and the day it was last seen (None if never)."""

    title: str
    how_known: HowKnown
    seen: date | None = None


PRACTICE = Source(N_("common practice, no source"), HowKnown.PRACTICE)
