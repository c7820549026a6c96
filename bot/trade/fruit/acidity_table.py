"""Measured acids of citrus juices, in g/L, with the source of each reading."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from enum import StrEnum

from bot.trade.numbers.ranges import Range
from bot.trade.sources import PRACTICE, HowKnown, Source
from bot.trade.words import N_

# Grams per mole (IUPAC atomic masses; the same in the `chemicals` library). Citric acid gives up three
# hydrogens, malic acid two.
CITRIC_G_PER_MOL = Decimal("192.124")
CITRIC_MONOHYDRATE_G_PER_MOL = Decimal("210.139")
MALIC_G_PER_MOL = Decimal("134.087")

# 1 g of malic acid neutralises as much base as 0.955 g of anhydrous citric acid.
MALIC_AS_CITRIC = (2 / MALIC_G_PER_MOL) / (3 / CITRIC_G_PER_MOL)


class Juice(StrEnum):
    """The juices with a measured acidity."""

    ORANGE = N_("orange")
    GRAPEFRUIT = N_("grapefruit")
    MANDARIN = N_("mandarin")
    LEMON = N_("lemon")
    LIME = N_("lime")


@dataclass(frozen=True, slots=True)
class Reading:
    """One published reading, in g/L: citric acid (one standard deviation either side, if given) and malic.

    `malic` is None where it was not measured; the acidity is then a little low. `counts` is False for figures
    that say nothing of the likely value of a fresh juice; those with a source still widen its range.
    """

    juice: Juice
    citric: Range[Decimal]
    malic: Decimal | None
    source: Source
    note: str = ""
    counts: bool = True

    @property
    def equivalents(self) -> Range[Decimal]:
        """Titratable acidity in g/L of anhydrous citric acid equivalents."""
        return self.citric.map(lambda citric: citric_equivalents(citric, self.malic or Decimal(0)))


def citric_equivalents(citric_g: Decimal, malic_g: Decimal) -> Decimal:
    """Return the anhydrous citric acid, in grams, that needs as much base as both acids together.

    Computed from three acid hydrogens in 192.124 g of citric and two in 134.087 g of malic acid.
    """
    return citric_g + MALIC_AS_CITRIC * malic_g


_SEEN = date(2026, 11, 25)
PENNISTON = Source(
    N_("Penniston et al. 2008, Journal of Endourology 22, 567"), HowKnown.READ_SECOND_HAND, _SEEN
)
KARADENIZ = Source(
    N_("Karadeniz 2004, Turkish Journal of Agriculture and Forestry 28, 267"), HowKnown.READ, _SEEN
)
RANDHAWA = Source(
    N_("Randhawa et al. 2014, Journal of Animal and Plant Sciences 24, 211"), HowKnown.READ, _SEEN
)
WEAK_PAGE = Source(N_("a web page on lime juice: total acid 5 to 7.5 %"), HowKnown.READ_SECOND_HAND, _SEEN)


def _around(mean: str, sd: str = "0") -> Range[Decimal]:
    return Range(Decimal(mean) - Decimal(sd), Decimal(mean) + Decimal(sd))


_READY = N_("ready-to-drink juice")
_BAR = N_("the figure behind the rule of thumb")

READINGS: tuple[Reading, ...] = (
    Reading(Juice.ORANGE, _around("9.10", "1.98"), None, PENNISTON),
    Reading(Juice.ORANGE, Range(Decimal("16.7"), Decimal("16.9")), None, PENNISTON, _READY, counts=False),
    Reading(Juice.ORANGE, _around("13.28"), Decimal("7.79"), KARADENIZ),
    Reading(Juice.GRAPEFRUIT, _around("25.0"), None, PENNISTON, _READY, counts=False),
    Reading(Juice.GRAPEFRUIT, _around("19.61"), None, KARADENIZ),
    Reading(Juice.MANDARIN, _around("9.22"), Decimal("5.29"), KARADENIZ),
    Reading(Juice.MANDARIN, _around("9.2592"), Decimal("5.1962"), RANDHAWA, N_("the Kinnow variety")),
    Reading(Juice.LEMON, _around("48.0", "3.82"), None, PENNISTON),
    Reading(Juice.LEMON, Range(Decimal("48.54"), Decimal("60.32")), None, KARADENIZ),
    Reading(Juice.LEMON, _around("60"), None, PRACTICE, _BAR, counts=False),
    Reading(Juice.LIME, _around("45.86", "6.86"), None, PENNISTON),
    Reading(Juice.LIME, Range(Decimal(50), Decimal(75)), None, WEAK_PAGE, N_("total acid"), counts=False),
    Reading(Juice.LIME, _around("40"), Decimal(20), PRACTICE, _BAR, counts=False),
)

# Grams of citric and malic acid to a litre of juice. Common practice, no source.
RULES_OF_THUMB: dict[tuple[Juice, Juice], tuple[Decimal, Decimal]] = {
    (Juice.ORANGE, Juice.LIME): (Decimal(32), Decimal(20)),
    (Juice.ORANGE, Juice.LEMON): (Decimal(52), Decimal(0)),
    (Juice.GRAPEFRUIT, Juice.LIME): (Decimal(27), Decimal(13)),
    (Juice.GRAPEFRUIT, Juice.LEMON): (Decimal(40), Decimal(0)),
}
