"""Density of sucrose syrups, and the yield of sugar and water.

Mass fractions in % sucrose, densities g/mL, volumes mL at the temperature given.
"""

from __future__ import annotations

from dataclasses import dataclass

from bot.trade.errors import OutOfRangeError
from bot.trade.liquids.ethanol import check_range

# Density of pure sucrose solutions after ICUMSA (1994): the published polynomial's coefficients, read in two
# public programs that cite it. They differ in the fourth (-3.9643 or -3.9646), which makes no difference at
# the precision used here. Rows are powers of (t - 20) / 100, columns powers of the mass fraction; kg/m3.
_ICUMSA: tuple[tuple[float, ...], ...] = (
    (385.1761, 135.3705, 40.9299, -3.9643, 13.4853, -17.2890),
    (-46.2720, -7.1720, 1.1597, 5.1126, 17.5254),
    (59.7712, 7.2491, 12.3630, -35.4791),
    (-47.2207, -21.6977, 27.6301),
    (18.3184, 12.3081),
)
LOWEST_TEMPERATURE_C, HIGHEST_TEMPERATURE_C = 0.0, 80.0
HIGHEST_MASS_PERCENT = 80.0
# Solubility at 20 °C, % mass (sucrose handbooks, from memory): above it sugar crystallises out.
SATURATED_MASS_PERCENT_AT_20 = 67.1


def _water_kg_per_m3(t: float) -> float:
    """Return the density of water by Kell's equation, the one that the sucrose polynomial was fitted with."""
    powers = (999.83952, 16.952577, -7.9905127e-3, -46.241757e-6, 105.84601e-9, -281.03006e-12)
    return sum(c * t**i for i, c in enumerate(powers)) / (1.0 + 16.887236e-3 * t)


def syrup_density_g_per_ml(mass_percent: float, temperature_c: float = 20.0) -> float:
    """Return the density of a pure sucrose syrup in g/mL.

    `mass_percent` of sucrose 0 to 80, `temperature_c` 0 to 80 °C; raises
    OutOfRangeError outside. Polynomial of ICUMSA (1994).
    """
    check_range("sugar", mass_percent, 0.0, HIGHEST_MASS_PERCENT, "% mass")
    check_range("temperature", temperature_c, LOWEST_TEMPERATURE_C, HIGHEST_TEMPERATURE_C, "°C")
    fraction, warmth = mass_percent / 100.0, (temperature_c - 20.0) / 100.0
    density = _water_kg_per_m3(temperature_c)
    for power, row in enumerate(_ICUMSA):
        density += warmth**power * sum(c * fraction ** (i + 1) for i, c in enumerate(row))
    return density / 1000.0


@dataclass(frozen=True, slots=True)
class Syrup:
    """A syrup from weighed sugar and water: % mass, mL at 20 °C, g/mL, g of sugar per litre."""

    mass_percent: float
    mass_g: float
    volume_ml: float
    density_g_per_ml: float
    sugar_g_per_l: float
    above_saturation: bool


def syrup(sugar_g: float, water_g: float) -> Syrup:
    """Return the syrup from `sugar_g` of sucrose in `water_g` of water at 20 °C (ICUMSA 1994).

    Raises OutOfRangeError when a mass is negative, both are 0, or more than 80 % of the whole is sugar.
    """
    for quantity, mass in (("sugar", sugar_g), ("water", water_g)):
        if not 0.0 <= mass < float("inf"):
            raise OutOfRangeError(quantity, mass, 0.0, None, "g")
    total = sugar_g + water_g
    if total == 0.0:
        raise OutOfRangeError("sugar and water", 0.0, 0.0, None, "g")
    percent = 100.0 * sugar_g / total
    density = syrup_density_g_per_ml(percent)
    volume = total / density
    return Syrup(
        mass_percent=percent,
        mass_g=total,
        volume_ml=volume,
        density_g_per_ml=density,
        sugar_g_per_l=1000.0 * sugar_g / volume,
        above_saturation=percent > SATURATED_MASS_PERCENT_AT_20,
    )
