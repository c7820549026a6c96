"""The modelled substances: molar masses, densities and UNIFAC groups.

Group numbers are those of the published UNIFAC tables, as the library thermo uses them. Groups: the
assignments of the Dortmund Data Bank (DDBST), in thermo; for glycerol in the Dortmund model, which that table
lacks, its obvious groups (two primary and one secondary hydroxyl).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType

from bot.trade.liquids.density_table import CITRUS_OIL_PER_K
from bot.trade.words import N_


class Model(StrEnum):
    """The two group-contribution models.

    The original (Fredenslund, Jones and Prausnitz 1975 and its revisions) fits the measured gap of water,
    ethanol and limonene; the modified one (Dortmund, Gmehling) closes that gap too early, so it is the more
    optimistic.
    """

    ORIGINAL = N_("original UNIFAC")
    DORTMUND = N_("modified UNIFAC (Dortmund)")


Groups = Mapping[int, int]


@dataclass(frozen=True, slots=True)
class Substance:
    """One substance: g/mol, g/mL at 20 °C, and its group counts in each model."""

    name: str
    molar_mass_g: float
    density_g_per_ml: float
    original: Groups
    dortmund: Groups

    def groups(self, model: Model) -> Groups:
        """Return the group counts for `model`."""
        return self.original if model is Model.ORIGINAL else self.dortmund


def _groups(**counts: int) -> Groups:
    """Group counts by number, written g1=2 for two of group 1."""
    return MappingProxyType({int(name[1:]): count for name, count in counts.items()})


LIMONENE = Substance(
    N_("citrus oil (as d-limonene)"),
    136.234,
    # Merck Index: d4 at 21 °C 0.8402, corrected to 20 °C; the library's own estimate is far off.
    0.8402 + CITRUS_OIL_PER_K,
    original=_groups(g1=2, g2=3, g3=1, g7=1, g8=1),
    dortmund=_groups(g1=2, g7=1, g8=1, g78=3, g79=1),
)
CARRIER = Substance(
    N_("medium-chain triglyceride (as glyceryl trioctanoate)"),
    470.683,
    0.948,  # Ph. Eur.: relative density about 0.95
    original=_groups(g1=3, g2=17, g3=1, g22=3),
    dortmund=_groups(g1=3, g2=17, g3=1, g22=3),
)
GLYCOL = Substance(
    N_("propylene glycol"),
    76.094,
    1.0364,  # Perry 8th ed., in the library chemicals
    original=_groups(g1=1, g2=1, g3=1, g14=2),
    dortmund=_groups(g1=1, g2=1, g3=1, g14=1, g81=1),
)
GLYCEROL = Substance(
    N_("glycerol"),
    92.094,
    1.2613,  # Lange's Handbook; VDI Heat Atlas
    original=_groups(g2=2, g3=1, g14=3),
    dortmund=_groups(g2=2, g3=1, g14=2, g81=1),
)
ETHANOL = Substance(
    N_("ethanol"),
    46.068,
    0.789239,  # OIML R 22
    original=_groups(g1=1, g2=1, g14=1),
    dortmund=_groups(g1=1, g2=1, g14=1),
)
WATER = Substance(N_("water"), 18.015, 0.998201, original=_groups(g16=1), dortmund=_groups(g16=1))

# The order of substances in every composition in this package.
SUBSTANCES: tuple[Substance, ...] = (LIMONENE, CARRIER, GLYCOL, GLYCEROL, ETHANOL, WATER)
