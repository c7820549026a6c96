"""Densities of ingredients, g/mL, each with its range, source and temperature correction.

Converts mL to g and back at the bar's temperature.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import StrEnum

from bot.trade.errors import OutOfRangeError
from bot.trade.formulas.ingredient_names.reading import read_name
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.liquids import ethanol
from bot.trade.liquids.density_table import TABLE, Published
from bot.trade.liquids.sucrose import syrup_density_g_per_ml
from bot.trade.sources import HowKnown, Source
from bot.trade.words import N_


class Correction(StrEnum):
    """The correction from the source's temperature to the requested one."""

    NOT_NEEDED = N_("given at this temperature")
    DONE = N_("corrected to this temperature")
    NOT_DONE = N_("not corrected: how it expands is not known here")


@dataclass(frozen=True, slots=True)
class Density:
    """The density of one ingredient in g/mL at `temperature_c`.

    `middle` is the value to use, `low` and `high` the range that its source allows. `name` is the table's
    name for it, `published` the figure as printed, with `published_at_c` its temperature. `crystal` marks the
    density of a solid's crystals: right for its volume once dissolved, wrong for a spoonful.
    """

    name: str
    middle: float
    low: float
    high: float
    temperature_c: float
    published: str
    published_at_c: float
    correction: Correction
    source: Source
    crystal: bool = False

    @property
    def is_exact(self) -> bool:
        """Whether the source gives one value, not a range."""
        return self.low == self.high

    def mass_g(self, volume_ml: float) -> float:
        """Return the mass in g of `volume_ml`, using the middle value."""
        return volume_ml * self.middle

    def volume_ml(self, mass_g: float) -> float:
        """Return the volume in mL of `mass_g`, using the middle value."""
        return mass_g / self.middle


_OIML = Source(
    N_("OIML R 22, general formula for ethanol-water; also Directive 76/766/EEC"), HowKnown.READ_SECOND_HAND
)
_ICUMSA = Source(N_("ICUMSA (1994), polynomial for pure sucrose solutions"), HowKnown.READ_SECOND_HAND)

_SYRUP_RATIO = re.compile(r"(\d+(?:\.\d+)?) ?(?::|to|/) ?(\d+(?:\.\d+)?)")
_SYRUP_PERCENT = re.compile(r"(\d+(?:\.\d+)?) ?(?:%|brix|percent)")


def _printed(row: Published) -> str:
    figure = f"{row.low:g}" if row.low == row.high else f"{row.low:g} - {row.high:g}"
    if row.water_c is None:
        return f"{figure} g/mL"
    return f"{figure} ({row.at_c:g}/{row.water_c:g} °C)"


def _from_row(row: Published, temperature_c: float) -> Density:
    """Convert a published figure to g/mL at `temperature_c`, as far as its expansion is known."""
    fall = 0.0
    correction = Correction.NOT_NEEDED
    if row.at_c != temperature_c:
        correction = Correction.NOT_DONE if row.per_k is None else Correction.DONE
        fall = (row.per_k or 0.0) * (temperature_c - row.at_c)
    over = 1.0 if row.water_c is None else ethanol.water_density_g_per_ml(row.water_c)
    low, high = row.low * over - fall, row.high * over - fall
    return Density(
        name=row.name,
        middle=(low + high) / 2.0 if row.usual is None else row.usual * over - fall,
        low=low,
        high=high,
        temperature_c=temperature_c,
        published=_printed(row),
        published_at_c=row.at_c,
        correction=correction,
        source=row.source,
        crystal=row.crystal,
    )


def _computed(name: str, value: float, temperature_c: float, source: Source) -> Density:
    return Density(
        name=name,
        middle=value,
        low=value,
        high=value,
        temperature_c=temperature_c,
        published=N_("formula"),
        published_at_c=temperature_c,
        correction=Correction.NOT_NEEDED,
        source=source,
    )


def syrup_mass_percent(plain: str) -> float | None:
    """Return the % mass of sugar stated in a syrup's name, or None.

    A ratio is sugar to water by mass; 'simple' without one is 1:1 and 'rich' 2:1, as is common practice.
    """
    if "syrup" not in plain:
        return None
    if (ratio := _SYRUP_RATIO.search(plain)) and (total := float(ratio[1]) + float(ratio[2])) > 0:
        return 100.0 * float(ratio[1]) / total
    if percent := _SYRUP_PERCENT.search(plain):
        return float(percent[1])
    if "rich" in plain:
        return 200.0 / 3.0
    return 50.0 if "simple" in plain or "sugar" in plain else None


def density_of(
    kind: IngredientKind, name: str = "", strength_percent: float | None = None, temperature_c: float = 20.0
) -> Density | None:
    """Return the density of an ingredient at the bar's temperature, or None when no source covers it.

    `name` picks the row within the kind (which citrus oil, which juice, which
    acid, what syrup); `strength_percent` in % vol at 20 °C is needed for a
    spirit. `temperature_c` -20 to 40 °C. Spirits and water by OIML R 22, sugar
    syrups by ICUMSA, the rest from the handbook table. Raises OutOfRangeError
    outside those ranges.
    """
    ethanol.check_temperature(temperature_c)
    plain = read_name(name)
    if kind is IngredientKind.SPIRIT:
        if strength_percent is None:
            return None
        value = ethanol.spirit_density_g_per_ml(strength_percent, temperature_c)
        return _computed(N_("spirit, as ethanol and water"), value, temperature_c, _OIML)
    if kind is IngredientKind.WATER:
        return _computed(N_("water"), ethanol.water_density_g_per_ml(temperature_c), temperature_c, _OIML)
    percent = syrup_mass_percent(plain) if kind in {IngredientKind.SUGAR, IngredientKind.OTHER} else None
    if percent is not None:
        try:
            value = syrup_density_g_per_ml(percent, temperature_c)
        except OutOfRangeError:  # an impossible name, or a freezing bar
            return None
        return _computed(N_("sugar syrup"), value, temperature_c, _ICUMSA)
    for row in TABLE:
        if row.fits(kind, plain):
            return _from_row(row, temperature_c)
    return None
