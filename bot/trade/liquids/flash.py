"""Flash point of spirits and mixes, as a band; the stricter end decides category, caution and label.

A mix flashes at the temperature where the vapours above it together reach what each flammable substance
needs alone: the sum of x gamma p(T) / p(flash point) is 1 (Liaw and others; the rule is from memory). The
activity coefficients come from the two UNIFAC models. An estimate: simple models of this kind come within
5 K of measured aqueous solvents (Astbury, IChemE Symposium Series 150, 2004, abstract read).
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date
from enum import StrEnum
from functools import lru_cache
from itertools import pairwise

from bot.trade.formulas.kinds import IngredientKind, is_carrier_name, is_oil_name
from bot.trade.liquids import ethanol
from bot.trade.liquids.clearing import phases
from bot.trade.liquids.clearing.mixture import mixture_of
from bot.trade.liquids.clearing.substances import ETHANOL, GLYCOL, LIMONENE, SUBSTANCES, Model
from bot.trade.liquids.strength import Component
from bot.trade.numbers.ranges import Range
from bot.trade.sources import HowKnown, Source
from bot.trade.words import N_

# Ethanol percentage, flash point in °C. Two public pages print this table as % by volume, a third
# prints the same figures as % by mass, so both readings are kept.
PUBLISHED_FLASH_C: tuple[tuple[float, float], ...] = (
    (10, 49), (20, 36), (30, 29), (40, 26), (50, 24), (60, 22), (70, 21), (80, 20), (90, 17), (96, 17),
    (100, 17),
)  # fmt: skip

# % vol at 20 °C, flash point in °C. Computed as the temperature at which ethanol above the mixture reaches
# the vapour pressure that pure ethanol has at 12 °C, its closed-cup flash point in IEC 60079-20-1.
COMPUTED_FLASH_C: tuple[tuple[float, float], ...] = (
    (10, 42.1), (20, 32.9), (30, 29.1), (40, 26.9), (50, 25.3), (60, 23.9), (70, 22.2), (80, 19.9),
    (90, 16.8), (95, 14.7), (96, 14.2), (100, 12.0),
)  # fmt: skip

PUBLISHED_SOURCE = Source(
    N_("flash points of ethanol in water, handbook table on public pages (two as % vol, one as % mass)"),
    HowKnown.READ_SECOND_HAND,
    date(2026, 11, 25),
)
COMPUTED_SOURCE = Source(
    N_("the vapours of ethanol, citrus oil and glycol over the mix by two UNIFAC models (Liaw's rule)"),
    HowKnown.COMPUTED,
    date(2026, 11, 29),
)

WEAKEST_PERCENT = 10.0
HIGHLY_FLAMMABLE_BELOW_C = 23.0
FLAMMABLE_UP_TO_C = 60.0
# A room behind a bar in summer; what flashes below this can light where it stands.
WARM_ROOM_C = 30.0

# Flash points of the pure liquids, °C, closed cup, the lowest and the highest published: ethanol IEC
# 60079-20-1 and the handbook table above, limonene NFPA 497 and DIPPR, propylene glycol DIPPR.
_ETHANOL_FLASH_C = (12.0, 17.0)
_LIMONENE_FLASH_C = (45.0, 48.0)
_GLYCOL_FLASH_C = (99.0, 99.0)
# Antoine's equation for ethanol, log10 mmHg and °C, from memory; checked against the library thermo.
_ETHANOL_A, _ETHANOL_B, _ETHANOL_C = 8.20417, 1642.89, 230.300
# Heats of vaporisation, J/mol, for Clausius and Clapeyron; from memory, checked against thermo.
_LIMONENE_HEAT, _GLYCOL_HEAT = 49_600.0, 67_000.0
_GAS_CONSTANT, _KELVIN = 8.314462618, 273.15

_OIL_AT, _GLYCOL_AT, _ETHANOL_AT = (SUBSTANCES.index(one) for one in (LIMONENE, GLYCOL, ETHANOL))
# Above the 1 of a layer of its own by the models' error: our own choice, on the strict side.
_HIGHEST_ACTIVITY = 1.5
_TRACE = 0.005
# Water in liquids that the models do not know: juices hold 88 to 92 % of their mass (USDA SR28); for
# syrups and the rest half their volume, which is less than they hold and so on the strict side.
_WATER_IN_JUICE, _WATER_IN_OTHER = 0.85, 0.5
_LOWEST_C, _HIGHEST_C, _GRID_C = -10.0, 65.0, 5.0


class FlammableCategory(StrEnum):
    """Flammability category by flash point, as defined by the Globally Harmonised System."""

    HIGHLY_FLAMMABLE = N_("highly flammable (category 2: flashes below 23 °C)")
    FLAMMABLE = N_("flammable (category 3: flashes from 23 to 60 °C)")
    BELOW_TABLE = N_("weaker than the tables start")


@dataclass(frozen=True, slots=True)
class FlashPoint:
    """The band of flash points from all readings, in °C, and the category of its stricter, lower end.

    `band_c` is None for a mix that gives no flash up to 60 °C or holds less than 10 % vol, where the tables
    stop.
    """

    band_c: Range[float] | None
    category: FlammableCategory

    @property
    def low_c(self) -> float:
        """The stricter end in °C; infinite where there is no band."""
        return math.inf if self.band_c is None else self.band_c.low


_NONE = FlashPoint(None, FlammableCategory.BELOW_TABLE)


def _of(readings: Iterable[float]) -> FlashPoint:
    found = sorted(readings)
    band = Range(found[0], found[-1])
    return FlashPoint(band, category_of(band.low))


def flash_point(strength_percent: float) -> FlashPoint:
    """Return the flash point band of ethanol in water at `strength_percent` (% vol at 20 °C), in °C.

    The band holds three readings: the published table taken as % vol, the same table taken as % mass, and a
    computed curve (PUBLISHED_SOURCE and COMPUTED_SOURCE); each is interpolated linearly. Categories: GHS,
    flash point below 23 °C and from 23 to 60 °C (read second-hand). Raises OutOfRangeError outside 0 to 100.
    """
    ethanol.check_strength(strength_percent)
    if strength_percent < WEAKEST_PERCENT:
        return _NONE
    mass_percent = 100 * ethanol.mass_fraction(strength_percent)
    return _of((
        _between(PUBLISHED_FLASH_C, strength_percent),
        _between(PUBLISHED_FLASH_C, mass_percent),
        _between(COMPUTED_FLASH_C, strength_percent),
    ))  # fmt: skip


def flash_point_of(components: Iterable[Component]) -> FlashPoint:
    """Return the flash point band of a mix, in °C; for spirit and water alone that of its strength.

    Liqueurs count as spirit and water, other oils as citrus oil; juice, syrup and other liquids count by the
    water in them, and solids not at all. A mix below 10 % vol without oil gives none.
    """
    mixture = mixture_of(_as_modelled(components))
    if mixture.modelled_ml <= 0.0:
        return _NONE
    watery, strength = mixture.watered()
    other = mixture.modelled_ml - mixture.spirit_ml - mixture.water_ml
    if other <= _TRACE * mixture.modelled_ml and mixture.oil_ml <= 0.0:
        return flash_point(strength)
    if mixture.oil_ml <= 0.0 and strength * watery / mixture.modelled_ml < WEAKEST_PERCENT:
        return _NONE
    moles = mixture.moles()
    total = sum(moles)
    readings = _readings(tuple(round(one / total, 6) for one in moles))
    return _of(readings) if min(readings) <= FLAMMABLE_UP_TO_C else _NONE


def _as_modelled(components: Iterable[Component]) -> list[Component]:
    found = []
    for one in components:
        kind = one.kind
        if one.strength_percent > 0.0:
            found.append(replace(one, kind=IngredientKind.SPIRIT))
        elif kind is IngredientKind.JUICE:
            found.append(Component(IngredientKind.WATER, one.name, _WATER_IN_JUICE * one.volume_ml))
        elif kind is IngredientKind.OTHER and is_oil_name(one.name) and not is_carrier_name(one.name):
            found.append(replace(one, kind=IngredientKind.CITRUS_OIL))
        elif kind is IngredientKind.OTHER:
            found.append(Component(IngredientKind.WATER, one.name, _WATER_IN_OTHER * one.volume_ml))
        else:
            found.append(one)
    return found


@lru_cache(maxsize=1024)
def _readings(fractions: tuple[float, ...]) -> tuple[float, ...]:
    """Return the flash points in °C by both models and both ends of the pure liquids' flash points."""
    ends = zip(_ETHANOL_FLASH_C, _LIMONENE_FLASH_C, _GLYCOL_FLASH_C, strict=True)
    return tuple(_solved(model, fractions, pure) for pure in ends for model in Model)


def _solved(model: Model, fractions: tuple[float, ...], pure: tuple[float, float, float]) -> float:
    """Return the temperature in °C at which the sum reaches 1; the ends of the range if it does not."""
    low, high = _LOWEST_C, _HIGHEST_C
    for _ in range(24):
        middle = (low + high) / 2.0
        if _sum(model, fractions, pure, middle) < 1.0:
            low = middle
        else:
            high = middle
    return (low + high) / 2.0


def _sum(
    model: Model, fractions: tuple[float, ...], pure: tuple[float, float, float], celsius: float
) -> float:
    """Return the sum of x gamma p(T) / p(flash point) over ethanol, limonene and glycol.

    No liquid at rest holds an activity x gamma above that of the pure liquid, 1: where the model gives far
    more, the substance parts as a layer of its own (Gibbs; for two layers Liaw and others, from memory).
    """
    below = _GRID_C * math.floor(celsius / _GRID_C)
    share = (celsius - below) / _GRID_C
    at_below, at_above = (_ln_gamma(model, fractions, at) for at in (below, below + _GRID_C))
    ethanol_c, limonene_c, glycol_c = pure
    total = 0.0
    for index, ln_ratio in (
        (_ETHANOL_AT, _ln_ethanol(celsius) - _ln_ethanol(ethanol_c)),
        (_OIL_AT, _clapeyron(_LIMONENE_HEAT, limonene_c, celsius)),
        (_GLYCOL_AT, _clapeyron(_GLYCOL_HEAT, glycol_c, celsius)),
    ):
        ln_gamma = at_below[index] + share * (at_above[index] - at_below[index])
        total += min(_HIGHEST_ACTIVITY, fractions[index] * math.exp(ln_gamma)) * math.exp(ln_ratio)
    return total


@lru_cache(maxsize=4096)
def _ln_gamma(model: Model, fractions: tuple[float, ...], celsius: float) -> tuple[float, ...]:
    import numpy as np  # noqa: PLC0415 - only when first used

    rows = phases.substance_model(model, celsius).ln_gamma(np.array([fractions]))
    return tuple(float(one) for one in rows[0])


def _ln_ethanol(celsius: float) -> float:
    return math.log(10.0) * (_ETHANOL_A - _ETHANOL_B / (_ETHANOL_C + celsius))


def _clapeyron(heat: float, from_c: float, to_c: float) -> float:
    """ln of the ratio of vapour pressures at two temperatures."""
    return -heat / _GAS_CONSTANT * (1.0 / (to_c + _KELVIN) - 1.0 / (from_c + _KELVIN))


def category_of(flash_point_c: float) -> FlammableCategory:
    """Return the category of a closed-cup flash point in °C, for values that the tables here can give."""
    if flash_point_c < HIGHLY_FLAMMABLE_BELOW_C:
        return FlammableCategory.HIGHLY_FLAMMABLE
    if flash_point_c <= FLAMMABLE_UP_TO_C:
        return FlammableCategory.FLAMMABLE
    return FlammableCategory.BELOW_TABLE


def _between(points: tuple[tuple[float, float], ...], percent: float) -> float:
    """Interpolate a table linearly; below its first point, extend the first line."""
    for (left, left_c), (right, right_c) in pairwise(points):
        if percent <= right:
            return left_c + (right_c - left_c) * (percent - left) / (right - left)
    return points[-1][1]
