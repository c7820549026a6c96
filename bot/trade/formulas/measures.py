"""Convert exactly between units of volume, mass and count.

One curated pint registry holds our definitions and nothing else, so that no prefix or symbol of another trade
can slip in. It never parses text: `resolve_unit` reads words from our own tables. Numbers go in and come out
as exact fractions; the caller rounds for display.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction
from functools import cache
from types import MappingProxyType
from typing import TYPE_CHECKING, Final

from bot.trade.errors import OutOfRangeError, TradeError
from bot.trade.formulas.unit_words import (
    UNIT_WORDS,
    AmbiguousUnit,
    AmbiguousUnitError,
    UnitSense,
    UnknownUnitError,
    nearest_words,
    normal_word,
    resolve_unit,
)
from bot.trade.sources import PRACTICE, HowKnown, Source
from bot.trade.words import N_

if TYPE_CHECKING:
    import pint

__all__ = [
    "DEFAULT_HOUSE_MEASURES",
    "HOUSE_MEASURES",
    "UNITS",
    "UNIT_WORDS",
    "AmbiguousUnit",
    "AmbiguousUnitError",
    "Dimension",
    "HouseDefault",
    "HouseMeasureNotSetError",
    "HouseMeasures",
    "Quantity",
    "UnitSense",
    "UnknownUnitError",
    "WrongDimensionError",
    "dimension",
    "from_g",
    "from_ml",
    "nearest_words",
    "normal_word",
    "registry",
    "resolve_unit",
    "to_count",
    "to_g",
    "to_ml",
]


class Dimension(StrEnum):
    """The kind of amount that a unit measures."""

    VOLUME = "volume"
    MASS = "mass"
    COUNT = "count"


# The inch is exactly 25.4 mm, so the cubic inch exactly 16.387064 mL, and the US gallon is 231 of
# them (NIST Handbook 44, Appendix C; NIST SP 811, footnote 13). The imperial gallon is 4.54609 L and
# the avoirdupois pound 453.59237 g exactly (NIST SP 811, B.8). Spoons and cups of the US are
# fractions of its gallon (Handbook 44). A US teaspoon is written as cubic inches because a sixth of
# an ounce has no finite decimal factor. Metric spoons of 5 and 15 mL and a cup of 250 mL are common
# practice; the imperial cup is half an imperial pint.
_DEFINITIONS: Final = (
    "ml = [volume]",
    "cl = 10 * ml",
    "dl = 100 * ml",
    "l = 1000 * ml",
    "cubic_inch = 16.387064 * ml",
    "us_gallon = 231 * cubic_inch",
    "us_quart = 0.25 * us_gallon",
    "us_pint = 0.5 * us_quart",
    "us_cup = 0.5 * us_pint",
    "us_fluid_ounce = 0.125 * us_cup",
    "us_tablespoon = 0.5 * us_fluid_ounce",
    "us_teaspoon = 0.30078125 * cubic_inch",
    "imperial_gallon = 4546.09 * ml",
    "imperial_quart = 0.25 * imperial_gallon",
    "imperial_pint = 0.5 * imperial_quart",
    "imperial_cup = 0.5 * imperial_pint",
    "imperial_fluid_ounce = 0.05 * imperial_pint",
    "metric_teaspoon = 5 * ml",
    "metric_tablespoon = 15 * ml",
    "metric_cup = 250 * ml",
    "g = [mass]",
    "mg = 0.001 * g",
    "kg = 1000 * g",
    "pound = 453.59237 * g",
    "ounce = 0.0625 * pound",
    "each = [count]",
    "dozen = 12 * each",
)

BASE_UNITS: Final = {Dimension.VOLUME: "ml", Dimension.MASS: "g", Dimension.COUNT: "each"}
"""The units in which amounts are kept."""

BASE_DIMENSIONS: Final = {unit: kind for kind, unit in BASE_UNITS.items()}

UNITS: Final = tuple(
    name for name in (line.partition(" = ")[0] for line in _DEFINITIONS) if name != "cubic_inch"
)
"""Canonical units of fixed size."""

HOUSE_MEASURES: Final = ("dash", "drop", "barspoon", "splash", "jigger", "part", "bottle")
"""Measures of volume without a standard size; each bar sets its own."""


@dataclass
class WrongDimensionError(TradeError):
    """A unit measures `found` where `wanted` is needed, e.g. grams where a volume is asked."""

    unit: str
    found: Dimension
    wanted: Dimension


@dataclass
class HouseMeasureNotSetError(TradeError):
    """The bar has not set the size of this measure, and there is no common size."""

    name: str


@dataclass(frozen=True, slots=True)
class Quantity:
    """A number of a canonical unit, exact."""

    number: Fraction
    unit: str


@dataclass(frozen=True, slots=True)
class HouseDefault:
    """A size in mL used where the bar has set none, and its source."""

    ml: Decimal
    source: Source


DEFAULT_HOUSE_MEASURES: Final[Mapping[str, HouseDefault]] = MappingProxyType(
    {
        "dash": HouseDefault(Decimal("0.8"), PRACTICE),
        "drop": HouseDefault(
            Decimal("0.05"),
            Source(N_("common practice; a drop of water from the dropper of USP <1101>"), HowKnown.PRACTICE),
        ),
        "barspoon": HouseDefault(Decimal(5), PRACTICE),
        "jigger": HouseDefault(
            Decimal("44.36029434375"),
            Source(N_("common practice; 1.5 US fluid ounces"), HowKnown.PRACTICE),
        ),
    }
)
"""Sizes in mL assumed for house measures. A splash, a part and a bottle have no common size."""


@dataclass(frozen=True)
class HouseMeasures:
    """The bar's own measures: `own_ml` maps names from HOUSE_MEASURES to mL; defaults fill the gaps.

    Raises UnknownUnitError for another name, OutOfRangeError for a size that is not above zero.
    """

    own_ml: Mapping[str, Decimal] = field(default_factory=lambda: MappingProxyType({}))

    def __post_init__(self) -> None:
        for name, ml in self.own_ml.items():
            if name not in HOUSE_MEASURES:
                raise UnknownUnitError(name, HOUSE_MEASURES)
            if not ml.is_finite() or ml <= 0:
                raise OutOfRangeError("house measure", float(ml), 0, None, "ml")

    def is_default(self, name: str) -> bool:
        """Whether the bar has not set this measure, so that the assumed size applies."""
        return name not in self.own_ml

    def ml(self, name: str) -> Fraction:
        """Return the exact size in mL.

        Raises HouseMeasureNotSetError if the bar has not set it and no default exists.
        """
        if name in self.own_ml:
            return Fraction(self.own_ml[name])
        if name in DEFAULT_HOUSE_MEASURES:
            return Fraction(DEFAULT_HOUSE_MEASURES[name].ml)
        raise HouseMeasureNotSetError(name)


@cache
def registry() -> pint.UnitRegistry[Decimal]:
    """Return the only registry, built on first use: it holds our definitions alone, with decimal factors."""
    import pint  # noqa: PLC0415 - it brings numpy along where that is installed, which a start can do without

    ours: pint.UnitRegistry[Decimal] = pint.UnitRegistry(None, non_int_type=Decimal)
    ours.load_definitions(list(_DEFINITIONS))
    return ours


@cache
def _factors() -> Mapping[str, tuple[Dimension, Fraction]]:
    """Return the dimension of each unit and its exact size in the base unit (mL, g or one)."""
    ours = registry()
    factors = {}
    for unit in UNITS:
        one = ours.Quantity(Decimal(1), unit)
        kind = next(kind for kind, base in BASE_UNITS.items() if one.is_compatible_with(base))
        factors[unit] = (kind, Fraction(one.to(BASE_UNITS[kind]).magnitude))
    return MappingProxyType(factors)


def dimension(unit: str) -> Dimension:
    """Return the dimension of a canonical unit or house measure. Raises UnknownUnitError."""
    if unit in HOUSE_MEASURES:
        return Dimension.VOLUME
    try:
        return _factors()[unit][0]
    except KeyError:
        raise UnknownUnitError(unit, nearest_words(unit)) from None


def _size(unit: str, wanted: Dimension, house: HouseMeasures | None = None) -> Fraction:
    """Return the size of a unit in the base unit of `wanted`."""
    found = dimension(unit)
    if found is not wanted:
        raise WrongDimensionError(unit, found, wanted)
    if unit in HOUSE_MEASURES:
        if house is None:
            raise HouseMeasureNotSetError(unit)
        return house.ml(unit)
    return _factors()[unit][1]


def to_ml(quantity: Quantity, house: HouseMeasures | None = None) -> Fraction:
    """Return a volume in mL, exactly; house measures take their size from `house`.

    Raises UnknownUnitError, WrongDimensionError or HouseMeasureNotSetError.
    """
    return quantity.number * _size(quantity.unit, Dimension.VOLUME, house)


def to_g(quantity: Quantity) -> Fraction:
    """Return a mass in g, exactly. Raises UnknownUnitError or WrongDimensionError."""
    return quantity.number * _size(quantity.unit, Dimension.MASS)


def to_count(quantity: Quantity) -> Fraction:
    """Return a number of pieces, exactly. Raises UnknownUnitError or WrongDimensionError."""
    return quantity.number * _size(quantity.unit, Dimension.COUNT)


def from_ml(ml: Fraction, unit: str, house: HouseMeasures | None = None) -> Quantity:
    """Return a volume in mL as a quantity of a unit of volume, exactly.

    Raises UnknownUnitError, WrongDimensionError or HouseMeasureNotSetError.
    """
    return Quantity(ml / _size(unit, Dimension.VOLUME, house), unit)


def from_g(g: Fraction, unit: str) -> Quantity:
    """Return a mass in g as a quantity of a unit of mass. Raises UnknownUnitError or WrongDimensionError."""
    return Quantity(g / _size(unit, Dimension.MASS), unit)
