"""Strength: ethanol-water density, % by volume, proof, mixing and dilution, against published tables."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from bot.trade.formulas.kinds import IngredientKind
from bot.trade.liquids import ethanol, infusion, strength
from tests.outside.check import Check, Mark, Value

_RULE = "strength"
_OIML = "OIML R 22, International alcoholometric tables (printed table)"
_USP_TABLE = "USP 29 alcoholometric table (from NBS Bulletin 9, p. 424)"
_USP_DILUTED = "USP 29 and USP 38, monograph Diluted Alcohol"
_NBS = "NBS density table of ethanol-water, as reprinted in 'Alcohol: properties' (chestofbooks.com)"
_CFR_TABLE = "27 CFR 30.64, Table 4 (gallons per pound, weighed in air, 60 °F)"
_CFR_WORKED = "27 CFR 30.64, worked example under Table 4"
_GAUGING = "reduction table after the US gauging manual (engineersedge.com)"
_COOLPROP_MEA = "CoolProp, incompressible fluid MEA (ethanol-water after Melinder 2010)"
_COOLPROP_ETHANOL = "CoolProp, reference equation of state of ethanol"

_AT_60_F = strength.US_PROOF_TEMPERATURE_C
# Weighing in air: density of air at room conditions and of brass weights, g/mL.
_AIR, _BRASS = 0.0012, 8.4
_GALLON_ML, _POUND_G = 3785.411784, 453.59237


_SPIRIT_96 = strength.Component(IngredientKind.SPIRIT, "spirit", 500.0, 96.0)


def _row(
    what: str,
    source: str,
    mark: Mark,
    expected: Value | Callable[[], Value],
    got: Callable[[], float],
    unit: str,
    tolerance: float = 0.0,
) -> Check:
    return Check(_RULE, what, source, mark, expected, got, unit, tolerance)


def _printed_density(percent: float) -> float:
    return 1000.0 * ethanol.spirit_density_g_per_ml(percent)


def _g_per_ml(fraction: float, celsius: float) -> float:
    return ethanol.density_kg_per_m3(fraction, celsius) / 1000.0


def _mass_percent(percent: float) -> float:
    return 100.0 * ethanol.mass_fraction_from_percent_at(percent, _AT_60_F)


def _reduction(start: float, end: float) -> float:
    return strength.dilute(100.0, start, end).water_ml


def _gallons_per_pound(proof: float) -> float:
    fraction = ethanol.mass_fraction_from_percent_at(proof / 2.0, _AT_60_F)
    density = ethanol.density_kg_per_m3(fraction, _AT_60_F) / 1000.0
    in_air = density * (1.0 - _AIR / density) / (1.0 - _AIR / _BRASS)
    return _POUND_G / (in_air * _GALLON_ML)


def _specific_gravity_in_air_25(percent: float) -> float:
    fraction = ethanol.mass_fraction_from_percent_at(percent, _AT_60_F)
    mixture = ethanol.density_kg_per_m3(fraction, 25.0) / 1000.0
    return (mixture - _AIR) / (ethanol.water_density_g_per_ml(25.0) - _AIR)


def _diluted_alcohol() -> strength.Mixed:
    """500 mL of Alcohol USP (95 % by volume at 60 °F) and 500 mL of water, all at 25 °C."""
    fraction = ethanol.mass_fraction_from_percent_at(95.0, _AT_60_F)
    spirit = strength.Portion(500.0, ethanol.strength_percent(fraction), 25.0)
    return strength.mix([spirit, strength.Portion(500.0, 0.0, 25.0)])


def _diluted_volume_at_25() -> float:
    mixed = _diluted_alcohol()
    return strength.volume_at(mixed.volume_ml, mixed.strength_percent, 25.0)


def _diluted_percent_60() -> float:
    fraction = ethanol.mass_fraction(_diluted_alcohol().strength_percent)
    return ethanol.percent_by_volume_at(fraction, _AT_60_F)


def _coolprop(substance: str, celsius: float = 20.0) -> float:
    """Density in kg/m3."""
    from CoolProp.CoolProp import PropsSI  # noqa: PLC0415 - takes seconds to load

    return float(PropsSI("D", "T", 273.15 + celsius, "P", 101325.0, substance))


def _coolprop_density(fraction: float) -> float:
    return _coolprop(f"INCOMP::MEA[{fraction}]")


def _coolprop_half_and_half() -> float:
    """Volume of 50 mL ethanol and 50 mL water at 20 °C from CoolProp's densities alone."""
    ethanol_g = 0.05 * _coolprop("Ethanol")
    water_g = 0.05 * _coolprop("Water")
    total = ethanol_g + water_g
    return 1000.0 * total / _coolprop_density(ethanol_g / total)


_PRINTED = ((40.0, 948.05), (50.0, 930.14), (70.0, 885.56), (95.0, 811.38), (96.0, 807.42), (100.0, 789.24))
_USP_ROWS = (
    (5.0, 4.00),
    (10.0, 8.05),
    (15.0, 12.14),
    (20.0, 16.27),
    (25.0, 20.44),
    (30.0, 24.67),
    (32.0, 26.38),
)
_USP_GRAVITIES = ((10.0, 0.9862), (20.0, 0.9744), (30.0, 0.9622))
_NBS_ROWS = (
    (0.50, 10.0, 0.92162),
    (0.50, 15.0, 0.91776),
    (0.50, 20.0, 0.91384),
    (0.50, 25.0, 0.90985),
    (0.50, 30.0, 0.90580),
    (0.75, 20.0, 0.85564),
    (0.85, 20.0, 0.83095),
)
_REDUCTIONS = (
    (95.0, 90.0, 6.41),
    (95.0, 80.0, 20.9),
    (95.0, 70.0, 39.1),
    (95.0, 60.0, 63.0),
    (95.0, 50.0, 95.9),
    (95.0, 40.0, 144.0),
    (90.0, 60.0, 53.6),
    (70.0, 40.0, 77.6),
    (60.0, 40.0, 51.4),
)

CHECKS: list[Check] = [
    *(
        _row(
            f"water in fresh {what}, share of its mass, inside the range used",
            "USDA food composition, as reprinted by two pages",
            Mark.READ,
            (used.low, used.high),
            lambda share=share: share,  # type: ignore[misc]
            "",
        )
        for what, share, used in (
            ("orange peel", 0.725, infusion.WATER_IN_PEEL),
            ("lemon peel", 0.816, infusion.WATER_IN_PEEL),
            ("orange", 0.868, infusion.WATER_IN_FRUIT),
        )
    ),
    _row(
        "500 mL of 96 % on 80 g of fresh peel, all its water taken up, by mass balance",
        "by hand from OIML R 22 densities: 378.8 g of ethanol in 468.9 g of 0.841 g/mL",
        Mark.APART,
        86.0,
        lambda: infusion.infused_percent([_SPIRIT_96], infusion.water_ml("orange peel", 80.0)).low,
        "% vol",
        0.5,
    ),
    *(
        _row(
            f"density of {percent:g} % vol at 20 °C",
            _OIML,
            Mark.MEMORY,
            expected,
            partial(_printed_density, percent),
            "kg/m3",
            0.006,
        )
        for percent, expected in _PRINTED
    ),
    *(
        _row(
            f"% mass of {percent:g} % by volume at 15.56 °C",
            _USP_TABLE,
            Mark.READ,
            expected,
            partial(_mass_percent, percent),
            "% mass",
            0.006,
        )
        for percent, expected in _USP_ROWS
    ),
    *(
        _row(
            f"specific gravity in air 25/25 of {percent:g} % by volume at 15.56 °C",
            _USP_TABLE,
            Mark.READ,
            expected,
            partial(_specific_gravity_in_air_25, percent),
            "",
            0.00006,
        )
        for percent, expected in _USP_GRAVITIES
    ),
    _row(
        "500 mL Alcohol USP + 500 mL water, all at 25 °C",
        _USP_DILUTED,
        Mark.READ,
        970.0,
        _diluted_volume_at_25,
        "mL",
        1.5,
    ),
    _row(
        "the same, % mass",
        _USP_DILUTED,
        Mark.READ,
        (41.0, 42.0),
        lambda: 100.0 * ethanol.mass_fraction(_diluted_alcohol().strength_percent),
        "% mass",
    ),
    _row(
        "the same, % by volume at 15.56 °C", _USP_DILUTED, Mark.READ, (48.4, 49.5), _diluted_percent_60, "%"
    ),
    *(
        _row(
            f"density of {100 * fraction:g} % mass at {celsius:g} °C",
            _NBS,
            Mark.READ,
            expected,
            partial(_g_per_ml, fraction, celsius),
            "g/mL",
            0.00013,
        )
        for fraction, celsius, expected in _NBS_ROWS
    ),
    _row(
        "wine gallons per lb of 190 proof",
        _CFR_TABLE,
        Mark.READ,
        0.14718,
        lambda: _gallons_per_pound(190.0),
        "gal/lb",
        0.00002,
    ),
    _row(
        "proof gallons per lb of 190 proof",
        _CFR_TABLE,
        Mark.READ,
        0.27964,
        lambda: 1.9 * _gallons_per_pound(190.0),
        "PG/lb",
        0.00004,
    ),
    _row(
        "proof gallons per lb of 200 proof",
        _CFR_TABLE,
        Mark.READ,
        0.30258,
        lambda: 2.0 * _gallons_per_pound(200.0),
        "PG/lb",
        0.00005,
    ),
    _row(
        "81,000 lb of 190 proof in wine gallons",
        _CFR_WORKED,
        Mark.READ,
        11921.6,
        lambda: 81000.0 * _gallons_per_pound(190.0),
        "gal",
        1.5,
    ),
    _row(
        "81,000 lb of 190 proof in proof gallons",
        _CFR_WORKED,
        Mark.READ,
        22650.8,
        lambda: 81000.0 * 1.9 * _gallons_per_pound(190.0),
        "PG",
        2.5,
    ),
    _row(
        "water to bring 1,000 lb of 200 proof to 190",
        _CFR_WORKED,
        Mark.READ,
        82.03,
        lambda: (
            strength.dilute(1000.0, 100.0, strength.percent_from_us_proof(190.0)).water_g
            / strength.Portion(1000.0, 100.0).mass_g
            * 1000.0
        ),
        "lb",
        0.15,
    ),
    _row(
        "true proof of a hydrometer reading of 193 at 75 °F",
        "27 CFR 30.61, worked example",
        Mark.READ,
        189.5,
        lambda: strength.us_proof(strength.true_strength(193.0 / 2.0, (75.0 - 32.0) / 1.8, _AT_60_F)),
        "US proof",
        0.06,
    ),
    _row(
        "specific gravity of ethanol 60/60 °F",
        "27 CFR 19.1, definition of proof gallon",
        Mark.READ,
        0.7939,
        lambda: ethanol.density_kg_per_m3(1.0, _AT_60_F) / ethanol.density_kg_per_m3(0.0, _AT_60_F),
        "",
        0.0002,
    ),
    *(
        _row(
            f"water for 100 mL from {start:g} to {end:g} % vol",
            _GAUGING,
            Mark.READ,
            expected,
            partial(_reduction, start, end),
            "mL",
            0.3,
        )
        for start, end, expected in _REDUCTIONS
    ),
    *(
        _row(
            f"density of {100 * fraction:.0f} % mass at 20 °C",
            _COOLPROP_MEA,
            Mark.COMPUTED,
            partial(_coolprop_density, fraction),
            partial(ethanol.density_kg_per_m3, fraction),
            "kg/m3",
            0.35,
        )
        for fraction in (0.1, 0.2, 0.3, 0.4, 0.5, 0.6)
    ),
    *(
        _row(
            f"density of pure ethanol at {celsius:g} °C",
            _COOLPROP_ETHANOL,
            Mark.COMPUTED,
            partial(_coolprop, "Ethanol", celsius),
            partial(ethanol.density_kg_per_m3, 1.0, celsius),
            "kg/m3",
            0.25,
        )
        for celsius in (20.0, 25.0)
    ),
    _row(
        "50 mL ethanol + 50 mL water at 20 °C",
        f"{_COOLPROP_MEA}; pure liquids from its reference equations",
        Mark.COMPUTED,
        _coolprop_half_and_half,
        lambda: strength.mix([strength.Portion(50.0, 100.0), strength.Portion(50.0, 0.0)]).volume_ml,
        "mL",
        0.05,
    ),
]
