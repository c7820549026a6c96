"""Write units and amounts in replies."""

from __future__ import annotations

import math
from collections.abc import Sequence
from fractions import Fraction

from bot.chat.i18n.language import _, ngettext, show_number, show_sensibly, tongue
from bot.trade.formulas.measures import Dimension, Quantity, from_ml, to_ml
from bot.trade.numbers.ranges import Range
from bot.trade.words import N_

UNIT_LABELS = {
    "ml": N_("ml"),
    "cl": N_("cl"),
    "dl": N_("dl"),
    "l": N_("l"),
    "us_fluid_ounce": N_("US oz"),
    "imperial_fluid_ounce": N_("imperial oz"),
    "us_teaspoon": N_("US tsp"),
    "us_tablespoon": N_("US tbsp"),
    "us_cup": N_("US cup"),
    "us_pint": N_("US pint"),
    "us_quart": N_("US quart"),
    "us_gallon": N_("US gallon"),
    "metric_teaspoon": N_("metric tsp"),
    "metric_tablespoon": N_("metric tbsp"),
    "metric_cup": N_("metric cup"),
    "imperial_cup": N_("imperial cup"),
    "imperial_pint": N_("imperial pint"),
    "imperial_quart": N_("imperial quart"),
    "imperial_gallon": N_("imperial gallon"),
    "mg": N_("mg"),
    "g": N_("g"),
    "kg": N_("kg"),
    "pound": N_("lb"),
    "ounce": N_("oz weight"),
    "each": N_("each"),
    "dozen": N_("dozen"),
    "dash": N_("dash"),
    "drop": N_("drop"),
    "barspoon": N_("barspoon"),
    "splash": N_("splash"),
    "jigger": N_("jigger"),
    "part": N_("part"),
    "bottle": N_("bottle"),
}
# As typed: each of these reads back as the same unit.
UNIT_LONG_WORDS = dict(UNIT_LABELS)
SINGLE_PIECE = "each"
_FLUID_OUNCES = {"us_fluid_ounce", "imperial_fluid_ounce"}
_SAME_OUNCES = Fraction(1, 200)  # below the last decimal shown
_GRAMS_PER_POUND = Fraction(45359237, 100000)  # exact by definition (NIST SP 811)


# In a bar with these units, an ounce needs no country.
_AT_HOME = {
    "us": {
        "us_fluid_ounce": N_("oz"),
        "us_teaspoon": N_("tsp"),
        "us_tablespoon": N_("tbsp"),
        "us_cup": N_("cup"),
        "us_pint": N_("pint"),
        "us_quart": N_("quart"),
        "us_gallon": N_("gallon"),
    },
    "imperial": {"imperial_fluid_ounce": N_("oz")},
}


def unit_name(unit: str, units: str = "") -> str:
    """Return the unit's name in the current language; shorter if it is one of the bar's own `units`."""
    return _(_AT_HOME.get(units or tongue().units, {}).get(unit) or UNIT_LABELS[unit])


def unit_size(unit: str) -> str:
    """Return the size of the unit: '29.57 ml', or '28.35 g' for the ounce of weight."""
    from bot.trade.formulas.measures import dimension, to_g  # noqa: PLC0415 - only for a question

    one = Quantity(Fraction(1), unit)
    if dimension(unit) is Dimension.MASS:
        return f"{show_number(to_g(one), 2)} g"
    return f"{show_number(to_ml(one), 2)} ml"


def show_quantity(quantity: Quantity, units: str = "") -> str:
    """Write a quantity in its own unit, as typed."""
    if quantity.unit == SINGLE_PIECE:
        return show_number(quantity.number, 2)
    ounces = quantity.unit in _FLUID_OUNCES
    number = show_ounces(quantity.number, exact=True) if ounces else show_number(quantity.number, 3)
    return f"{number} {unit_name(quantity.unit, units)}"


def show_ounces(ounces: Fraction, exact: bool = False) -> str:
    """Write ounces as bartenders do, '1 1/2' or '3/4', or as a decimal if they are no such fraction.

    Eighths are used only below two ounces, and quarters below a thousand. `exact` rounds to no fraction, and
    to three decimals.
    """
    parts = 8 if ounces < 2 else 4
    near = Fraction(round(ounces * parts), parts)
    plain = near.denominator == 1 or near == 0 or ounces >= 1000
    if plain or abs(near - ounces) > (0 if exact else _SAME_OUNCES):
        return show_number(ounces, 2 if ounces >= 1 and not exact else 3)
    whole, rest = divmod(near, 1)
    return f"{show_number(whole)}\u00a0{rest}" if whole else str(rest)


def sizes_offered(sizes: Sequence[str], units: str) -> list[tuple[str, str]]:
    """Return sizes such as '4 x 2 oz' as the label of a button and its line, which names the country."""
    return [(size, size.replace("oz", _ounce_word(units))) for size in sizes]


def _ounce_word(units: str) -> str:
    return "imperial oz" if units == "imperial" else "US oz"


def own_volume(units: str) -> str:
    """Return the words, as typed, for a bar's unit of volume."""
    return "ml" if units == "metric" else _ounce_word(units)


def show_ml(ml: Fraction, units: str = "metric") -> str:
    """Write a volume in the bar's units: mL and L, or US or imperial fluid ounces."""
    if units in {"us", "imperial"}:
        unit = f"{units}_fluid_ounce"
        return f"{show_ounces(from_ml(ml, unit).number)} {_('oz')}"
    if ml >= 10_000:
        return f"{show_sensibly(ml / 1000, 4)} {_('l')}"
    return f"{_ml_number(ml)} {_('ml')}"


def _ml_number(ml: Fraction) -> str:
    if ml >= 1000:
        return show_number(ml, 0)
    return show_number(ml, 1) if ml >= 10 else show_sensibly(ml, 2 if ml < 1 else 3)


def show_g(g: Fraction) -> str:
    """Write a mass: grams with two decimals below 10 g, one below 1 kg, then kilograms."""
    if g >= 10_000:
        return f"{show_sensibly(g / 1000, 4)} {_('kg')}"
    return f"{show_number(g, 2 if g < 10 else 1)} {_('g')}"


def show_weight(g: Fraction, units: str = "metric") -> str:
    """Write a weight of fruit as on the bar's scale: 800 g, 1.2 kg, or pounds."""
    if units == "us":
        return f"{show_number(g / _GRAMS_PER_POUND, 2)} {_('lb')}"
    if g >= 1000:
        return f"{show_number(g / 1000, 2)} {_('kg')}"
    return show_g(g)


def show_temperature(celsius: float, units: str = "metric") -> str:
    """Write a temperature: °C, or °F in a bar with US units."""
    if units == "us":
        return f"{show_number(Fraction(round(celsius * 9 / 5 + 32)))} °F"
    return f"{show_number(Fraction(str(round(celsius, 1))), 1)} °C"


def show_percent(percent: float, places: int = 1) -> str:
    """Write a strength: '57.5 % vol'."""
    return _("{percent} % vol").format(percent=show_number(Fraction(str(round(percent, places))), places))


def show_percents(percent: Range[float]) -> str:
    """Write a strength that may lie between two: '86 to 96 % vol'."""
    if percent.low == percent.high:
        return show_percent(percent.low)
    low, high = math.floor(percent.low), math.ceil(percent.high)
    return _("{low} to {high} % vol").format(low=show_number(low, 0), high=show_number(high, 0))


def show_amount(amount: Fraction, dimension: Dimension, units: str = "metric") -> str:
    """Write an amount in base units (mL, g or pieces) in the bar's units."""
    if dimension is Dimension.VOLUME:
        return show_ml(amount, units)
    if dimension is Dimension.MASS:
        return show_g(amount)
    return show_number(amount, 2)


def show_range(low: Fraction, high: Fraction, places: int = 3) -> str:
    """Write a range, or one number if both ends are equal."""
    if low == high:
        return show_number(low, places)
    return _("{low} to {high}").format(low=show_number(low, places), high=show_number(high, places))


def show_hours(hours: Fraction) -> str:
    """Write a duration in hours, or in days if long."""
    if hours >= 72 and hours % 24 == 0:
        days = int(hours / 24)
        return ngettext("{count} day", "{count} days", days).format(count=days)
    if hours == 0:
        return _("not at all")
    return ngettext("{count} hour", "{count} hours", int(hours)).format(count=show_number(hours, 1))
