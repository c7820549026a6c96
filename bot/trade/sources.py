"""Where a number or a statement comes from, and how well that is known."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from bot.trade.words import N_


class HowKnown(StrEnum):
    """How the source was met; the values are shown to people."""

    READ = N_("read")
    READ_SECOND_HAND = N_("read in a text that quotes it")
    COMPUTED = N_("computed")
    MEMORY = N_("from memory, not read")
    PRACTICE = N_("common practice, no source")


@dataclass(frozen=True, slots=True)
class Source:
    """A document and place in it, how it is known, and the day it was last seen (None if never)."""

    title: str
    how_known: HowKnown
    seen: date | None = None


PRACTICE = Source(N_("common practice, no source"), HowKnown.PRACTICE)
