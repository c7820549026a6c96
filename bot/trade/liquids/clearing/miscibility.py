"""Published data on the miscibility of citrus oils, glycols, carriers and spirit.

Each fact states when it applies. Volumes are volumes of spirit to one of oil, strengths % vol at 20 °C. Facts
are for room temperature.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from bot.trade.formulas.ingredient_names.reading import read_name
from bot.trade.liquids.clearing.mixture import Mixture
from bot.trade.numbers.ranges import Range
from bot.trade.sources import HowKnown, Source
from bot.trade.words import N_

_SEEN = date(2026, 11, 25)
_TRACE = 0.005  # a share of the volume too small to matter
# The alcohol of the US pharmacopoeia is 94.9 to 96.0 % by volume.
_PHARMACOPOEIA_ALCOHOL = 94.9
LOWEST_TEMPERATURE_C, HIGHEST_TEMPERATURE_C = 15.0, 30.0


class Outcome(StrEnum):
    """The published result for a mixture; 'haze' is clear liquid with a bloom of waxes in it."""

    CLEAR = N_("clear")
    SPLIT = N_("does not mix")
    HAZE = N_("slight haze")


@dataclass(frozen=True, slots=True)
class Fact:
    """One published statement and the mixtures that it covers.

    `historical` marks books before 1950: their oils and spirits are less certain, so they can keep a mixture
    from being called split but cannot make it clear.
    """

    key: str
    outcome: Outcome
    text: str
    source: Source
    applies: Callable[[Mixture], bool]
    historical: bool = False


def _share(volume_ml: float, mixture: Mixture) -> float:
    return volume_ml / mixture.total_ml if mixture.total_ml > 0.0 else 0.0


def _absent(mixture: Mixture, *volumes: float) -> bool:
    return _share(sum(volumes), mixture) <= _TRACE


def _only_oil_and_spirit(mixture: Mixture) -> bool:
    rest = (mixture.carrier_ml, mixture.glycol_ml, mixture.glycerol_ml, mixture.outside_ml)
    return mixture.oil_ml > 0.0 and mixture.spirit_ml > 0.0 and _absent(mixture, *rest)


def _no_spirit(mixture: Mixture) -> bool:
    return _absent(mixture, mixture.spirit_ml * mixture.spirit_percent / 100.0)


def _oil_named(mixture: Mixture, words: str) -> bool:
    return re.search(words, read_name(mixture.oil_name)) is not None


def _in_spirit(words: str, volumes: float, percent: float) -> Callable[[Mixture], bool]:
    """Applies to this oil in at least so many volumes of spirit of at least this strength, nothing else."""

    def applies(mixture: Mixture) -> bool:
        if not (_only_oil_and_spirit(mixture) and _oil_named(mixture, words)):
            return False
        spirit_ml, strength = mixture.watered()
        return strength >= percent - 1e-6 and spirit_ml >= volumes * mixture.oil_ml - 1e-9

    return applies


def _gap_closed(mixture: Mixture) -> bool:
    return _only_oil_and_spirit(mixture) and mixture.ethanol_mass_fraction >= 0.73


def _equal_parts_of_weak_spirit(mixture: Mixture) -> bool:
    """Lemon oil with about its own weight, or less, of spirit of specific gravity 0.830 or weaker."""
    if not (_only_oil_and_spirit(mixture) and _oil_named(mixture, r"lemon|^$")):
        return False
    spirit_ml, strength = mixture.watered()
    least, most = 0.25 * mixture.oil_ml - 1e-9, 1.03 * mixture.oil_ml + 1e-9
    return strength <= 91.2 and least <= spirit_ml <= most


def _oil_in_glycols_alone(mixture: Mixture) -> bool:
    glycols = mixture.glycol_ml + mixture.glycerol_ml
    other = (mixture.carrier_ml, mixture.water_ml, mixture.outside_ml)
    return mixture.oil_ml > 0.0 and glycols > 0.0 and _no_spirit(mixture) and _absent(mixture, *other)


def _carrier_in_spirit(mixture: Mixture) -> bool:
    rest = (mixture.oil_ml, mixture.glycol_ml, mixture.glycerol_ml, mixture.outside_ml)
    if not (mixture.carrier_ml > 0.0 and mixture.spirit_ml > 0.0 and _absent(mixture, *rest)):
        return False
    return mixture.watered()[1] >= 95.9


def _carrier_in_water(mixture: Mixture) -> bool:
    rest = (mixture.oil_ml, mixture.glycol_ml, mixture.glycerol_ml, mixture.outside_ml)
    watery = mixture.water_ml + mixture.spirit_ml > 0.0
    return mixture.carrier_ml > 0.0 and watery and _no_spirit(mixture) and _absent(mixture, *rest)


def _oil_in_carrier(mixture: Mixture) -> bool:
    rest = (mixture.glycol_ml, mixture.glycerol_ml, mixture.water_ml, mixture.spirit_ml, mixture.outside_ml)
    return mixture.oil_ml > 0.0 and mixture.carrier_ml > 0.0 and _absent(mixture, *rest)


def _read(title: str) -> Source:
    return Source(title, HowKnown.READ, _SEEN)


def _quoted(title: str) -> Source:
    return Source(title, HowKnown.READ_SECOND_HAND, _SEEN)


_HANDBOOK = _quoted(N_("text of a handbook of perfumery materials in a chemicals catalogue"))
_CODEX = _quoted(N_("Food Chemicals Codex, Lemon Oil, Distilled, quoted by a producer's sheet"))
_TREATISE = _read(N_("A Treatise on Beverages, 1888 (chestofbooks.com)"))
_PHARMACOGRAPHIA = _read(N_("Flückiger and Hanbury, Pharmacographia, 1879"))
_MCT = _quoted(N_("Ph. Eur., Triglycerides, medium-chain, quoted by a supplier"))

FACTS: tuple[Fact, ...] = (
    Fact(
        "limonene-gap", Outcome.CLEAR,
        N_("water, ethanol and limonene at 20 °C stay one liquid from an ethanol mass share of about 73 %"),
        Source(N_("J. Chem. Eng. Data 40 (3) 578-581, 1995 (abstract)"), HowKnown.READ, _SEEN), _gap_closed,
    ),
    Fact(
        "absolute-alcohol", Outcome.CLEAR, N_("lemon oil mixes with absolute alcohol in all proportions"),
        _read(N_("British Pharmaceutical Codex 1911, Oleum Limonis; a later digest of the B.P.")),
        _in_spirit(r"", 0.0, 99.5),
    ),
    Fact(
        "limonene-alcohol", Outcome.CLEAR, N_("limonene dissolves in 5 volumes of alcohol"),
        _read(N_("PMC7330110, table 1")), _in_spirit(r"", 5.0, _PHARMACOPOEIA_ALCOHOL),
    ),
    Fact(
        "lemon-alcohol", Outcome.CLEAR, N_("lemon oil dissolves in 3 volumes of alcohol"),
        _read(N_("USP 28 and USP 35, Lemon Oil; Merck Index")),
        _in_spirit(r"lemon", 3.0, _PHARMACOPOEIA_ALCOHOL),
    ),
    Fact(
        "lemon-alcohol-90", Outcome.HAZE,
        N_("lemon oil dissolves in 12 volumes of 90 % alcohol with a slight opalescence, from waxes"),
        _read(N_("British Pharmaceutical Codex 1911, Oleum Limonis; a later digest of the B.P.")),
        _in_spirit(r"lemon", 12.0, 90.0),
    ),
    Fact(
        "lemon-equal-parts", Outcome.SPLIT,
        N_("lemon oil with an equal weight of spirit of specific gravity 0.830 is turbid"), _PHARMACOGRAPHIA,
        _equal_parts_of_weak_spirit, historical=True,
    ),
    Fact(
        "lemon-seven", Outcome.CLEAR,
        N_("pure lemon oil dissolves in 7 parts of alcohol of specific gravity 0.838, some barely in 15"),
        _TREATISE, _in_spirit(r"lemon", 7.0, 88.7), historical=True,
    ),
    Fact(
        "lime-five", Outcome.CLEAR, N_("lime oil dissolves in 5 parts of alcohol of specific gravity 0.838"),
        _TREATISE, _in_spirit(r"\blimes?\b", 5.0, 88.7), historical=True,
    ),
    Fact(
        "persian-lime", Outcome.CLEAR, N_("Persian lime oil dissolves in 3 volumes or less of 95 % ethanol"),
        _HANDBOOK, _in_spirit(r"(persian|tahiti).*lime|lime.*(persian|tahiti)", 3.0, 95.0),
    ),
    Fact(
        "bitter-orange", Outcome.CLEAR,
        N_("bitter orange oil dissolves in 8 volumes or less of 90 % ethanol"),
        _HANDBOOK, _in_spirit(r"(bitter|sour|seville).*orange", 8.0, 90.0),
    ),
    Fact(
        "mandarin", Outcome.CLEAR, N_("mandarin oil dissolves in 10 volumes or less of 90 % ethanol"),
        _HANDBOOK, _in_spirit(r"mandarin|tangerine|clementine", 10.0, 90.0),
    ),
    Fact(
        "orange-two", Outcome.CLEAR, N_("orange oil dissolves in about 2 parts of alcohol"), _TREATISE,
        _in_spirit(r"orange", 2.0, _PHARMACOPOEIA_ALCOHOL), historical=True,
    ),
    Fact(
        "orange-ten", Outcome.CLEAR,
        N_("orange oil dissolves in about 8 to 10 parts of alcohol of specific gravity 0.850"), _TREATISE,
        _in_spirit(r"orange", 10.0, 84.8), historical=True,
    ),
    Fact(
        "bergamot-half", Outcome.CLEAR, N_("bergamot oil dissolves clear in half a part of 90 % alcohol"),
        _read(N_("Lueger, Lexikon der gesamten Technik, 1904")), _in_spirit(r"bergamot", 0.5, 90.0),
        historical=True,
    ),
    Fact(
        "bergamot-spirit", Outcome.CLEAR, N_("bergamot oil mixes with spirit of specific gravity 0.83"),
        _PHARMACOGRAPHIA, _in_spirit(r"bergamot", 0.0, 91.1), historical=True,
    ),
    Fact(
        "glycols-alone", Outcome.SPLIT,
        N_("distilled lemon oil does not dissolve in propylene glycol or glycerol"), _CODEX,
        _oil_in_glycols_alone,
    ),
    Fact(
        "carrier-oil", Outcome.CLEAR, N_("distilled lemon oil dissolves in most fixed oils"), _CODEX,
        _oil_in_carrier,
    ),
    Fact(
        "carrier-spirit", Outcome.CLEAR, N_("medium-chain triglycerides mix with 96 % ethanol"), _MCT,
        _carrier_in_spirit,
    ),
    Fact(
        "carrier-water", Outcome.SPLIT, N_("medium-chain triglycerides practically do not dissolve in water"),
        _MCT, _carrier_in_water,
    ),
)  # fmt: skip


def facts_about(mixture: Mixture, temperature_c: float = 20.0) -> tuple[Fact, ...]:
    """Return the published facts that cover this mixture; none outside 15 to 30 °C."""
    if not LOWEST_TEMPERATURE_C <= temperature_c <= HIGHEST_TEMPERATURE_C:
        return ()
    return tuple(fact for fact in FACTS if fact.applies(mixture))


# Limonene content of an oil, % of the oil; the model's stand-in ignores the rest.
_LIMONENE: tuple[tuple[str, Range[float], Source], ...] = (
    (r"limonene", Range(100.0, 100.0), Source(N_("by definition"), HowKnown.COMPUTED)),
    (r"bergamot", Range(30.0, 50.0), _quoted(N_("EMA assessment report on bergamot oil, 2012"))),
    (r"mandarin|tangerine", Range(65.0, 75.0), _HANDBOOK),
    (r"(bitter|sour|seville).*orange", Range(93.0, 95.0), _HANDBOOK),
    (r"orange", Range(92.0, 97.0), _quoted(N_("Ph. Eur. 6.2, Sweet orange oil, quoted by Martindale"))),
    (r"lemon", Range(56.0, 78.0), _quoted(N_("Ph. Eur. 6.2, Lemon oil, quoted by Martindale"))),
    (r"grapefruit", Range(90.0, 90.0), _read(N_("Leung's Encyclopedia, Grapefruit oil: about 90 %"))),
)


def limonene_percent(oil_name: str) -> tuple[Range[float], Source] | None:
    """Return the limonene content of an oil of this name, in % of the oil, with the source, or None."""
    plain = read_name(oil_name)
    for words, share, source in _LIMONENE:
        if re.search(words, plain):
            return share, source
    return None
