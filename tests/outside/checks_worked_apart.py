"""Published formulas computed independently: densities, contraction, syrups, limits."""

from __future__ import annotations

from functools import partial

from bot.trade.liquids import ethanol
from bot.trade.liquids.clearing.estimate import state_of, stays_clear
from bot.trade.liquids.clearing.mixture import Mixture
from bot.trade.liquids.clearing.substances import Model
from bot.trade.liquids.strength import Portion, dilute, mix
from bot.trade.liquids.sucrose import syrup, syrup_density_g_per_ml
from tests.outside.check import Check, Mark

_OIML = "OIML R 22, general formula, worked by another program from the published coefficients"
_ICUMSA = "ICUMSA polynomial, worked by another program"
_TRIALS = "an independent trial with the library thermo (same groups)"

# % vol at 20 °C: % mass, density at 15, 20 and 25 °C in kg/m3.
_DENSITIES = (
    (0, 0.0, 999.10, 998.20, 997.04),
    (10, 8.015, 985.78, 984.71, 983.37),
    (20, 16.213, 975.24, 973.56, 971.65),
    (30, 24.607, 964.74, 962.21, 959.52),
    (40, 33.300, 951.33, 948.05, 944.67),
    (50, 42.426, 933.89, 930.14, 926.33),
    (57.15, 49.275, 919.30, 915.38, 911.39),
    (60, 52.088, 913.09, 909.11, 905.08),
    (70, 62.386, 889.69, 885.56, 881.37),
    (80, 73.480, 863.52, 859.27, 854.97),
    (90, 85.665, 833.50, 829.18, 824.82),
    (95, 92.408, 815.70, 811.38, 807.03),
    (96, 93.838, 811.73, 807.42, 803.08),
    (100, 100.0, 793.51, 789.24, 784.95),
)


# % mass of sucrose, °C, kg/m3.
_SYRUP_DENSITIES = (
    (0, 5, 999.96), (0, 40, 992.21), (0, 60, 983.19), (0, 80, 971.78), (10, 5, 1040.73), (30, 5, 1131.43),
    (50, 5, 1235.79), (70, 5, 1354.99), (20, 40, 1073.50), (60, 40, 1276.25), (40, 60, 1156.71),
    (70, 60, 1324.80), (10, 80, 1010.25), (30, 80, 1096.21), (50, 80, 1196.11), (70, 80, 1312.11),
    (80, 80, 1376.62), (80, 20, 1412.20),
)  # fmt: skip


def _mass_percent(strength: float) -> float:
    return 100.0 * ethanol.mass_fraction(strength)


def _density(strength: float, temperature_c: float) -> float:
    return 1000.0 * ethanol.spirit_density_g_per_ml(strength, temperature_c)


def _contraction(ethanol_ml: float) -> float:
    return mix([Portion(ethanol_ml, 100.0), Portion(100.0 - ethanol_ml, 0.0)]).contraction_ml


def _most_contraction() -> float:
    return max(_contraction(half / 2) for half in range(201))


def _strength() -> list[Check]:
    found = []
    for strength, mass, *densities in _DENSITIES:
        found.append(
            Check(
                "strength", f"% mass of {strength:g} % vol", _OIML, Mark.APART, mass,
                partial(_mass_percent, strength), "% mass", 0.0006,
            )
        )  # fmt: skip
        for at, value in zip((15.0, 20.0, 25.0), densities, strict=True):
            found.append(
                Check(
                    "strength", f"density of {strength:g} % vol at {at:g} °C", _OIML, Mark.APART, value,
                    partial(_density, strength, at), "kg/m3", 0.0051,
                )
            )  # fmt: skip
    half_strong = mix([Portion(50.0, 96.0), Portion(50.0, 0.0)])
    found += [
        Check("strength", "50 mL of 96 % vol + 50 mL water", _OIML, Mark.APART, 96.961,
              lambda: half_strong.volume_ml, "mL", 0.001),
        Check("strength", "the same, strength", _OIML, Mark.APART, 49.50,
              lambda: half_strong.strength_percent, "% vol", 0.005),
        Check("strength", "50 mL ethanol + 50 mL water", _OIML, Mark.APART, 96.463,
              lambda: 100.0 - _contraction(50.0), "mL", 0.001),
        Check("strength", "500 mL of 95 % vol + 500 mL water", _OIML, Mark.APART, 970.6,
              lambda: mix([Portion(500.0, 95.0), Portion(500.0, 0.0)]).volume_ml, "mL", 0.1),
        Check("strength", "most contraction of 100 mL", _OIML, Mark.APART, 3.546, _most_contraction,
              "mL", 0.001),
        Check("strength", "contraction at 52 mL ethanol in 100 mL", _OIML, Mark.APART, 3.546,
              partial(_contraction, 52.0), "mL", 0.001),
        Check("strength", "water for 1 L from 96 to 40 % vol, where naive arithmetic says 1400", _OIML,
              Mark.APART, 1470.5, lambda: dilute(1000.0, 96.0, 40.0).water_ml, "mL", 0.1),
        Check("strength", "water for 1 L from 95 to 70 % vol, where naive arithmetic says 357.1", _OIML,
              Mark.APART, 391.2, lambda: dilute(1000.0, 95.0, 70.0).water_ml, "mL", 0.1),
    ]  # fmt: skip
    return found


def _syrup_density(mass_percent: float, temperature_c: float) -> float:
    return 1000.0 * syrup_density_g_per_ml(mass_percent, temperature_c)


def _syrups() -> list[Check]:
    return [
        *(
            Check("density", f"sucrose {percent} % mass at {celsius} °C", _ICUMSA, Mark.APART, density,
                  partial(_syrup_density, percent, celsius), "kg/m3", 0.0055)
            for percent, celsius, density in _SYRUP_DENSITIES
        ),
        Check("density", "volume of 1000 g sugar in 1000 g water", _ICUMSA, Mark.APART, 1626.5,
              lambda: syrup(1000.0, 1000.0).volume_ml, "mL", 0.1),
        Check("density", "volume of 2000 g sugar in 1000 g water", _ICUMSA, Mark.APART, 2261.2,
              lambda: syrup(2000.0, 1000.0).volume_ml, "mL", 0.1),
        Check("density", "sugar in a litre of 2:1 syrup by mass", _ICUMSA, Mark.APART, 884.5,
              lambda: syrup(2000.0, 1000.0).sugar_g_per_l, "g/L", 0.1),
    ]  # fmt: skip


def _most_glycol(oil: float, model: Model) -> float:
    """The last whole % of glycol that stays clear with this much oil, the rest 95 % spirit."""
    series = [
        Mixture(oil_ml=oil, glycol_ml=glycol, spirit_ml=100.0 - oil - glycol, spirit_percent=95.0)
        for glycol in range(100 - int(oil))
    ]
    verdicts = stays_clear(model, series)
    return float(verdicts.index(False) - 1) if False in verdicts else float(len(series) - 1)


def _lowest_strength(model: Model) -> float:
    series = [
        Mixture(oil_ml=12.0, glycol_ml=20.0, spirit_ml=58.0, spirit_percent=percent / 2)
        for percent in range(201)
    ]
    verdicts = stays_clear(model, series)
    return verdicts.index(True) / 2 if True in verdicts else 100.5


def _most_in_glycol(model: Model) -> float:
    """The largest mass share of limonene that glycol dissolves, %, in steps of a tenth."""
    from bot.trade.liquids.clearing.substances import GLYCOL, LIMONENE  # noqa: PLC0415 - only here

    shares = [step / 10 for step in range(1, 80)]
    series = [
        Mixture(oil_ml=share / LIMONENE.density_g_per_ml, glycol_ml=(100 - share) / GLYCOL.density_g_per_ml)
        for share in shares
    ]
    verdicts = stays_clear(model, series)
    return shares[verdicts.index(False)] if False in verdicts else 8.0


def _clearing() -> list[Check]:
    found = []
    for oil, original, dortmund in ((3.0, 88, 0), (12.0, 16, 44)):
        for model, most in ((Model.ORIGINAL, original), (Model.DORTMUND, dortmund)):
            if most:
                found.append(
                    Check(
                        "clearing", f"largest % of glycol with {oil:g} % oil and 95 % spirit, {model}",
                        _TRIALS, Mark.APART, float(most), partial(_most_glycol, oil, model), "% vol", 1.0,
                    )
                )  # fmt: skip
    found += [
        Check("clearing", "10 oil : 30 glycol : 60 of 95 % spirit", _TRIALS, Mark.APART, "borderline",
              lambda: str(state_of(Mixture(oil_ml=10, glycol_ml=30, spirit_ml=60, spirit_percent=95)))),
        Check("clearing", "weakest spirit for 12 oil : 20 glycol : 58 spirit, Dortmund, ring carbons as such",
              _TRIALS, Mark.APART, 77.0, partial(_lowest_strength, Model.DORTMUND), "% vol", 0.6),
        *(
            Check("clearing", f"limonene that propylene glycol holds at 20 °C, {model}", _TRIALS,
                  Mark.APART, (1.0, 3.5), partial(_most_in_glycol, model), "% mass")
            for model in Model
        ),
    ]  # fmt: skip
    return found


CHECKS = [*_strength(), *_syrups(), *_clearing()]
