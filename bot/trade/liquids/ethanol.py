"""Density and strength of ethanol-water mixtures , general formula of OIML R 22.

Mass fractions run from 0 (water) to 1 (ethanol); strengths are % by volume at 20 °C (the volume of ethanol at
20 °C in 100 volumes of the mixture at 20 °C).
"""

from __future__ import annotations

from functools import lru_cache

from bot.trade.errors import OutOfRangeError
from bot.trade.liquids.ethanol_coefficients import A, B, C
from bot.trade.numbers.roots import crossing

LOWEST_TEMPERATURE_C = -20.0
HIGHEST_TEMPERATURE_C = 40.0
REFERENCE_TEMPERATURE_C = 20.0
# Densities closer than this, kg/m3, differ only by rounding.
_SAME_DENSITY = 1e-7


def _polynomial(coefficients: tuple[float, ...], x: float) -> float:
    """Return c0 + c1 x + c2 x^2 + ... by Horner's rule."""
    total = 0.0
    for coefficient in reversed(coefficients):
        total = total * x + coefficient
    return total


def check_range(quantity: str, value: float, low: float, high: float, unit: str) -> None:
    """Raise OutOfRangeError unless `value` lies from `low` to `high`; a NaN never does."""
    if not low <= value <= high:
        raise OutOfRangeError(quantity, value, low, high, unit)


def check_temperature(temperature_c: float) -> None:
    """Raise OutOfRangeError unless the formula holds at `temperature_c` (-20 to 40 °C)."""
    check_range("temperature", temperature_c, LOWEST_TEMPERATURE_C, HIGHEST_TEMPERATURE_C, "°C")


def check_strength(strength_percent: float) -> None:
    """Raise OutOfRangeError unless `strength_percent` lies from 0 to 100 % vol."""
    check_range("strength", strength_percent, 0.0, 100.0, "% vol")


def density_kg_per_m3(mass_fraction: float, temperature_c: float = REFERENCE_TEMPERATURE_C) -> float:
    """Return the density of an ethanol-water mixture in kg/m3.

    `mass_fraction` of ethanol 0 to 1, `temperature_c` -20 to 40 °C; raises
    OutOfRangeError outside. General formula of OIML R 22.
    """
    check_range("mass fraction of ethanol", mass_fraction, 0.0, 1.0, "1")
    check_temperature(temperature_c)
    p, t = mass_fraction, temperature_c - REFERENCE_TEMPERATURE_C
    density = _polynomial(A, p) + _polynomial((0.0, *B), t)
    warmth = 1.0
    for terms in C:
        warmth *= t
        density += _polynomial((0.0, *terms), p) * warmth
    return density


_ETHANOL_AT_20 = density_kg_per_m3(1.0)


def ethanol_density_g_per_ml(temperature_c: float = REFERENCE_TEMPERATURE_C) -> float:
    """Return the density of pure ethanol in g/mL; raises OutOfRangeError outside -20 to 40 °C. OIML R 22."""
    return density_kg_per_m3(1.0, temperature_c) / 1000.0


def water_density_g_per_ml(temperature_c: float = REFERENCE_TEMPERATURE_C) -> float:
    """Return the density of water in g/mL; raises OutOfRangeError outside -20 to 40 °C. OIML R 22."""
    return density_kg_per_m3(0.0, temperature_c) / 1000.0


def percent_by_volume_at(mass_fraction: float, temperature_c: float) -> float:
    """Return % by volume with mixture and ethanol both at `temperature_c`.

    For scales defined at another temperature than 20 °C, such as United States proof at 60 °F. Raises
    OutOfRangeError as density_kg_per_m3 does.
    """
    mixture = density_kg_per_m3(mass_fraction, temperature_c)
    return 100.0 * mass_fraction * mixture / density_kg_per_m3(1.0, temperature_c)


def strength_percent(mass_fraction: float) -> float:
    """Return the strength in % vol at 20 °C of a mixture with this mass fraction of ethanol (0 to 1).

    q = p rho(p, 20) / rho(1, 20), OIML R 22. Raises OutOfRangeError outside 0 to 1.
    """
    return 100.0 * mass_fraction * density_kg_per_m3(mass_fraction) / _ETHANOL_AT_20


@lru_cache(maxsize=4096)
def mass_fraction_from_percent_at(percent: float, temperature_c: float) -> float:
    """Return the mass fraction of ethanol that gives `percent` by volume, both volumes at `temperature_c`.

    Inverse of percent_by_volume_at; raises OutOfRangeError outside 0 to 100 % and -20 to 40 °C.
    """
    check_strength(percent)
    check_temperature(temperature_c)
    # Return the end points directly, so that pure water and pure ethanol are exact.
    if percent in {0.0, 100.0}:
        return percent / 100.0
    return crossing(lambda p: percent_by_volume_at(p, temperature_c), percent, 0.0, 1.0)


def mass_fraction(strength_percent: float) -> float:
    """Return the mass fraction of ethanol (0 to 1) in a spirit of this strength, % vol at 20 °C.

    Inverse of strength_percent; raises OutOfRangeError outside 0 to 100.
    """
    return mass_fraction_from_percent_at(strength_percent, REFERENCE_TEMPERATURE_C)


def spirit_density_g_per_ml(strength_percent: float, temperature_c: float = REFERENCE_TEMPERATURE_C) -> float:
    """Return the density in g/mL at `temperature_c` of an ethanol-water spirit of % vol at 20 °C.

    Raises OutOfRangeError outside 0 to 100 % vol or -20 to 40 °C. OIML R 22.
    """
    return density_kg_per_m3(mass_fraction(strength_percent), temperature_c) / 1000.0


def mass_fraction_from_density(density: float, temperature_c: float = REFERENCE_TEMPERATURE_C) -> float:
    """Return the mass fraction of ethanol (0 to 1) in a mixture of this density, kg/m3, at `temperature_c`.

    Raises OutOfRangeError when the density lies beyond pure water or pure
    ethanol at that temperature, or the temperature outside -20 to 40 °C.
    """
    check_temperature(temperature_c)
    lightest, heaviest = density_kg_per_m3(1.0, temperature_c), density_kg_per_m3(0.0, temperature_c)
    if abs(density - lightest) < _SAME_DENSITY:
        return 1.0
    if abs(density - heaviest) < _SAME_DENSITY:
        return 0.0
    check_range("density", density, lightest, heaviest, "kg/m3")
    return crossing(lambda p: density_kg_per_m3(p, temperature_c), density, 0.0, 1.0)
