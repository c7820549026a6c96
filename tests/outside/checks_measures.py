"""Sizes of units against NIST publications, pint's own registry and scipy.constants."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from functools import cache, partial

import pint
from scipy import constants

from bot.trade.formulas.measures import (
    DEFAULT_HOUSE_MEASURES,
    UNITS,
    Dimension,
    HouseMeasures,
    Quantity,
    dimension,
    to_count,
    to_g,
    to_ml,
)
from tests.outside.check import Check, Mark

SP_811 = "NIST SP 811 (2008), Appendix B.8 and its footnotes, transcribed in public repositories"
HANDBOOK_44 = "NIST Handbook 44, Appendix C, as quoted in public repositories"
HOUSEHOLD = "NIST, Metric Household page (after SP 430), table 1"

_INTO: dict[Dimension, Callable[[Quantity], Fraction]] = {
    Dimension.VOLUME: to_ml,
    Dimension.MASS: to_g,
    Dimension.COUNT: to_count,
}
_BASE_NAMES = {Dimension.VOLUME: "milliliter", Dimension.MASS: "gram", Dimension.COUNT: "count"}
_BASE_SYMBOLS = {Dimension.VOLUME: "mL", Dimension.MASS: "g", Dimension.COUNT: "each"}


def _ours(unit: str, number: Fraction = Fraction(1)) -> float:
    return float(_INTO[dimension(unit)](Quantity(number, unit)))


def _published(unit: str, expected: float, last_digit: float, source: str) -> Check:
    """Compare with a printed value; it may differ by half of its last printed digit."""
    return Check(
        rule="measures",
        what=f"one {unit.replace('_', ' ')}",
        source=source,
        mark=Mark.READ,
        expected=expected,
        got=partial(_ours, unit),
        unit=_BASE_SYMBOLS[dimension(unit)],
        tolerance=last_digit / 2 * 1.0001,
    )


PUBLISHED = [
    _published("us_teaspoon", 4.928922, 1e-6, SP_811),
    _published("us_tablespoon", 14.78676, 1e-5, SP_811),
    _published("us_fluid_ounce", 29.57353, 1e-5, SP_811),
    _published("us_cup", 236.5882, 1e-4, SP_811),
    _published("us_pint", 473.1765, 1e-4, SP_811),
    _published("us_quart", 946.3529, 1e-4, SP_811),
    _published("us_gallon", 3785.412, 1e-3, SP_811),
    _published("imperial_fluid_ounce", 28.41306, 1e-5, SP_811),
    _published("imperial_gallon", 4546.09, 1e-9, SP_811),
    _published("pound", 453.59237, 1e-9, SP_811 + ", footnote 22 (exact)"),
    _published("us_gallon", 231 * 16.387064, 1e-9, HANDBOOK_44 + ": 231 cubic inches (exactly)"),
    _published("ounce", 28.349523125, 1e-9, HANDBOOK_44),
    _published("us_cup", 8 * 29.5735295625, 1e-9, HANDBOOK_44 + ": 8 fluid ounces (exactly)"),
    _published("us_teaspoon", 4.9, 0.1, HOUSEHOLD),
    _published("us_tablespoon", 15, 1, HOUSEHOLD),
    _published("us_cup", 237, 1, HOUSEHOLD),
    _published("us_pint", 473, 1, HOUSEHOLD),
    _published("us_quart", 946, 1, HOUSEHOLD),
]

# Names of the same units in pint's default registry; it has no metric spoons and cup.
_PINT_NAMES = {
    "ml": "milliliter",
    "cl": "centiliter",
    "dl": "deciliter",
    "l": "liter",
    "us_teaspoon": "teaspoon",
    "us_tablespoon": "tablespoon",
    "us_fluid_ounce": "US_fluid_ounce",
    "us_cup": "US_liquid_cup",
    "us_pint": "US_pint",
    "us_quart": "US_liquid_quart",
    "us_gallon": "US_liquid_gallon",
    "imperial_fluid_ounce": "imperial_fluid_ounce",
    "imperial_cup": "imperial_cup",
    "imperial_pint": "imperial_pint",
    "imperial_quart": "imperial_quart",
    "imperial_gallon": "imperial_gallon",
    "g": "gram",
    "mg": "milligram",
    "kg": "kilogram",
    "ounce": "avoirdupois_ounce",
    "pound": "avoirdupois_pound",
    "each": "count",
    "dozen": "12 * count",
    "metric_teaspoon": "5 * milliliter",
    "metric_tablespoon": "15 * milliliter",
    "metric_cup": "250 * milliliter",
}


@cache
def _default_registry() -> pint.UnitRegistry[float]:
    return pint.UnitRegistry()


def _by_default_registry(unit: str) -> float:
    quantity = _default_registry()(_PINT_NAMES[unit])
    return float(quantity.to(_BASE_NAMES[dimension(unit)]).magnitude)


BY_PINT = [
    Check(
        rule="measures",
        what=f"one {unit.replace('_', ' ')}",
        source=f"pint's default registry: {_PINT_NAMES[unit]}",
        mark=Mark.COMPUTED,
        expected=_by_default_registry(unit),
        got=partial(_ours, unit),
        unit=_BASE_SYMBOLS[dimension(unit)],
        tolerance=1e-12 * _by_default_registry(unit),
    )
    for unit in UNITS
]


def _by_scipy(unit: str, expected: float, name: str) -> Check:
    return Check(
        rule="measures",
        what=f"one {unit.replace('_', ' ')}",
        source=f"scipy.constants.{name}",
        mark=Mark.COMPUTED,
        expected=expected,
        got=partial(_ours, unit),
        unit=_BASE_SYMBOLS[dimension(unit)],
        tolerance=1e-12 * expected,
    )


BY_SCIPY = [
    _by_scipy("us_fluid_ounce", constants.fluid_ounce_US * 1e6, "fluid_ounce_US"),
    _by_scipy("imperial_fluid_ounce", constants.fluid_ounce_imp * 1e6, "fluid_ounce_imp"),
    _by_scipy("us_gallon", constants.gallon_US * 1e6, "gallon_US"),
    _by_scipy("imperial_gallon", constants.gallon_imp * 1e6, "gallon_imp"),
    _by_scipy("ounce", constants.oz * 1e3, "oz"),
    _by_scipy("pound", constants.lb * 1e3, "lb"),
]


def _house_default(name: str) -> float:
    return float(to_ml(Quantity(Fraction(1), name), HouseMeasures()))


HOUSE = [
    Check(
        rule="measures",
        what="a jigger, where the bar has set none",
        source="1.5 US fluid ounces; named so in a text of the US highway safety administration",
        mark=Mark.READ,
        expected=1.5 * 29.5735295625,
        got=partial(_house_default, "jigger"),
        unit="mL",
        tolerance=1e-9,
    ),
    Check(
        rule="measures",
        what="a drop, where the bar has set none",
        source="USP <1101> dropper: a drop of water weighs 45 to 55 mg, here at 0.9982 g/mL",
        mark=Mark.READ,
        expected=(0.045 / 0.9982, 0.055 / 0.9982),
        got=partial(_house_default, "drop"),
        unit="mL",
    ),
    Check(
        rule="measures",
        what="a dash, where the bar has set none",
        source="common practice, no source",
        mark=Mark.PRACTICE,
        expected=(0.6, 0.9),
        got=partial(_house_default, "dash"),
        unit="mL",
    ),
    Check(
        rule="measures",
        what="a barspoon, where the bar has set none",
        source="common practice, no source",
        mark=Mark.PRACTICE,
        expected=(3, 5),
        got=partial(_house_default, "barspoon"),
        unit="mL",
    ),
]
assert len(HOUSE) == len(DEFAULT_HOUSE_MEASURES), "every default house measure has its row"

CHECKS = PUBLISHED + BY_PINT + BY_SCIPY + HOUSE
