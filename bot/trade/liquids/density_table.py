"""Handbook table of densities: the published figures and their basis.

This table holds only published figures; bot.trade.liquids.densities turns them into g/mL at a temperature. A
relative density is written over water at the temperature beside it: 20/20, 25/25, 20/4.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date

from bot.trade.formulas.kinds import IngredientKind
from bot.trade.sources import HowKnown, Source
from bot.trade.words import N_

_SEEN = date(2026, 11, 25)

# Fall in a citrus oil's density per kelvin, g/mL: the British Pharmaceutical Codex 1911 gives lemon oil as
# 0.857 to 0.862 (15.5 °C) and 0.851 to 0.855 (25 °C), orange oil as 0.847 to 0.854 and 0.842 to 0.846; both
# pairs give 0.00087.
CITRUS_OIL_PER_K = 0.00087
# From the correlations of Perry (8th ed.) and the VDI Heat Atlas in the library chemicals, 20 to 25 °C.
PROPYLENE_GLYCOL_PER_K = 0.00075
GLYCEROL_PER_K = 0.00064


@dataclass(frozen=True, slots=True)
class Published:
    """One row: the published figure of one ingredient.

    `low` and `high` are as printed: a relative density over water at `water_c`, or, where `water_c` is None,
    g/mL. `at_c` is the temperature of the ingredient. `per_k` is the fall in g/mL per kelvin where it is
    known. `usual` is the value to use, as printed, if that is not the middle. `crystal` marks the density of
    a solid's crystals, which is not that of a spoonful.
    """

    kind: IngredientKind
    name: str
    words: str  # a pattern for the ingredient's plain name; '' matches any name of the kind
    low: float
    high: float
    at_c: float
    water_c: float | None
    source: Source
    per_k: float | None = None
    usual: float | None = None
    crystal: bool = False

    def fits(self, kind: IngredientKind, plain: str) -> bool:
        """Whether this row covers an ingredient of this kind and plain name."""
        return kind is self.kind and re.search(self.words, plain) is not None


def _read(title: str) -> Source:
    return Source(title, HowKnown.READ, _SEEN)


def _quoted(title: str) -> Source:
    return Source(title, HowKnown.READ_SECOND_HAND, _SEEN)


def _memory(title: str) -> Source:
    return Source(title, HowKnown.MEMORY)


def _oil(
    name: str, words: str, figure: tuple[float, float], over: tuple[float, float], source: Source
) -> Published:
    """Return the row of a citrus oil; `over` is its temperature and that of the water, °C."""
    (low, high), (at_c, water_c) = figure, over
    return Published(
        IngredientKind.CITRUS_OIL, name, words, low, high, at_c, water_c, source, CITRUS_OIL_PER_K
    )


_AT_20, _AT_25 = (20.0, 20.0), (25.0, 25.0)
_HANDBOOK = N_("text of a handbook of perfumery materials in a chemicals catalogue")

# The first matching row is used: narrow names come before wide ones.
TABLE: tuple[Published, ...] = (
    _oil(N_("limonene"), r"limonene", (0.8402, 0.8402), (21.0, 4.0), _quoted(N_("Merck Index, d-limonene"))),
    _oil(
        N_("bitter orange oil"), r"(bitter|sour|seville).*orange", (0.840, 0.860), _AT_20,
        _quoted(_HANDBOOK),
    ),
    _oil(N_("mandarin oil"), r"mandarin|clementine|satsuma", (0.844, 0.855), _AT_20, _quoted(_HANDBOOK)),
    _oil(
        N_("tangerine oil"), r"tangerine", (0.844, 0.854), _AT_25,
        _quoted(N_("Food Chemicals Codex, Tangerine Oil, quoted by a producer's sheet")),
    ),
    _oil(
        N_("sweet orange oil"), r"orange", (0.842, 0.850), _AT_20,
        _quoted(N_("Ph. Eur. 6.2, Sweet orange oil, quoted by Martindale")),
    ),
    _oil(
        N_("distilled lemon oil"), r"(distil|essence).*lemon|lemon.*(distil|essence)",
        (0.842, 0.856), _AT_25,
        _quoted(N_("Food Chemicals Codex, Lemon Oil, Distilled, quoted by a producer's sheet")),
    ),
    _oil(
        N_("lemon oil, cold-pressed"), r"lemon", (0.849, 0.855), _AT_25,
        _read(N_("USP 28 and USP 35, Lemon Oil")),
    ),
    _oil(
        N_("distilled lime oil"), r"distil.*lime|lime.*distil", (0.856, 0.865), _AT_20,
        _memory(N_("ISO 3519, distilled lime oil")),
    ),
    _oil(
        N_("Persian lime oil, cold-pressed"), r"(persian|tahiti).*lime|lime.*(persian|tahiti)",
        (0.861, 0.879), _AT_20, _quoted(_HANDBOOK),
    ),
    _oil(
        N_("Mexican lime oil, cold-pressed"), r"(mexican|key).*lime|lime.*(mexican|key)",
        (0.875, 0.888), _AT_20, _quoted(_HANDBOOK),
    ),
    _oil(N_("lime oil, cold-pressed"), r"\blimes?\b", (0.861, 0.888), _AT_20, _quoted(_HANDBOOK)),
    _oil(
        N_("grapefruit oil, cold-pressed"), r"grapefruit", (0.848, 0.856), _AT_25,
        _quoted(N_("Food Chemicals Codex, Grapefruit Oil, quoted by a flavour data page")),
    ),
    _oil(
        N_("bergamot oil, cold-pressed"), r"bergamot", (0.871, 0.879), _AT_25,
        _quoted(N_("Food Chemicals Codex, Bergamot Oil, quoted by a producer's sheet")),
    ),
    _oil(
        N_("citrus oil of another fruit"), r"", (0.840, 0.860), _AT_20,
        Source(
            N_("the range over the orange, lemon, grapefruit, mandarin and tangerine oils of this table"),
            HowKnown.COMPUTED,
        ),
    ),
    Published(
        IngredientKind.PROPYLENE_GLYCOL, N_("propylene glycol"), r"", 1.035, 1.037, 25.0, 25.0,
        _read(N_("USP 28 to USP 35, Propylene Glycol")), PROPYLENE_GLYCOL_PER_K,
    ),
    Published(
        IngredientKind.GLYCEROL, N_("glycerol, free of water"), r"", 1.26362, 1.26362, 20.0, 20.0,
        _quoted(N_("Lange's Handbook of Chemistry, glycerol")), GLYCEROL_PER_K,
    ),
    Published(
        IngredientKind.CARRIER_OIL, N_("medium-chain triglycerides"),
        r"\bmct\b|medium[ -]chain|triglyceride|fractionated", 0.93, 0.96, 20.0, 20.0,
        _quoted(N_("Ph. Eur., Triglycerides, medium-chain: about 0.95; its range 0.93 to 0.96 from memory")),
        usual=0.95,
    ),
    Published(
        IngredientKind.CARRIER_OIL, N_("vegetable oil"), r"", 0.91, 0.93, 20.0, None,
        _memory(N_("usual range of liquid vegetable oils")),
    ),
    Published(
        IngredientKind.JUICE, N_("orange juice"), r"orange", 248.0 / 236.588, 248.0 / 236.588, 20.0, None,
        _read(N_("USDA SR28, 09206: a US cup is 248 g; temperature not given")),
    ),
    Published(
        IngredientKind.JUICE, N_("lemon juice"), r"lemon", 244.0 / 236.588, 244.0 / 236.588, 20.0, None,
        _read(N_("USDA SR28, 09152: a US cup is 244 g; temperature not given")),
    ),
    Published(
        IngredientKind.JUICE, N_("lime juice"), r"\blimes?\b", 242.0 / 236.588, 242.0 / 236.588, 20.0, None,
        _read(N_("USDA SR28, 09160: a US cup is 242 g; temperature not given")),
    ),
    Published(
        IngredientKind.JUICE, N_("grapefruit juice"), r"grapefruit", 247.0 / 236.588, 247.0 / 236.588, 20.0,
        None, _read(N_("USDA SR28, 09128 and 09404: a US cup is 247 g; temperature not given")),
    ),
    Published(
        IngredientKind.ACID, N_("citric acid monohydrate"), r"citric.*mono|mono.*citric", 1.542, 1.542, 20.0,
        None, _quoted(N_("a chemistry reference page")), crystal=True,
    ),
    Published(
        IngredientKind.ACID, N_("citric acid, anhydrous"), r"citric", 1.665, 1.665, 20.0,
        None, _quoted(N_("a chemistry reference page")), crystal=True,
    ),
    Published(
        IngredientKind.ACID, N_("DL-malic acid"), r"malic", 1.601, 1.601, 20.0,
        4.0, _read(N_("Food Additives Data Book, malic acid, and a maker's data sheet")), crystal=True,
    ),
    Published(
        IngredientKind.SUGAR, N_("sucrose crystals"), r"", 1.587, 1.588, 20.0, None,
        _memory(N_("usual handbook value")), crystal=True,
    ),
    Published(
        IngredientKind.OTHER, N_("table salt (sodium chloride) crystals"),
        r"^(?!.*(solution|saline)).*\bsalt\b",
        2.17, 2.17, 25.0, None,
        Source(N_("CRC Handbook of Chemistry and Physics, in the library chemicals"), HowKnown.COMPUTED),
        crystal=True,
    ),
)  # fmt: skip
