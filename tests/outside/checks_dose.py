"""Dose per drink: the glycol of a sprayed drink, the largest spray, and the published limits."""

from __future__ import annotations

from collections.abc import Callable

from bot.trade.safety.jurisdiction import Jurisdiction
from bot.trade.safety.limits import Part, find_limit, limits_for
from bot.trade.spray.dose import (
    ADULT_BODY_WEIGHT_KG,
    GLYCOL_DENSITY_G_PER_ML,
    OIL_DENSITY_G_PER_ML,
    Mix,
    dose,
    judge,
    largest_spray_ml,
    serving,
)
from tests.outside.check import Check, Mark
from tests.outside.quiet import quiet_library

_EU = "eu-e1520-beverages"
_DRINKS_ML = (60.0, 75.0, 90.0, 120.0)

# Glycol share of the mix, mL per spray, then for 2 and for 3 sprays the mg/L in 60, 75, 90 and 120 mL.
_GLYCOL_TABLE: tuple[tuple[float, float, tuple[int, ...], tuple[int, ...]], ...] = (
    (0.10, 0.10, (344, 276, 230, 172), (515, 413, 344, 258)),
    (0.20, 0.10, (688, 551, 459, 345), (1031, 826, 688, 517)),
    (0.30, 0.07, (724, 579, 483, 362), (1084, 868, 724, 543)),
    (0.30, 0.10, (1033, 827, 689, 517), (1546, 1238, 1033, 775)),
    (0.30, 0.14, (1444, 1156, 964, 724), (2161, 1731, 1444, 1084)),
    (0.50, 0.10, (1721, 1378, 1149, 862), (2577, 2064, 1721, 1292)),
)


def _mix(glycol_share: float, oil_share: float = 0.10) -> Mix:
    return Mix(oil_share, glycol_share, 0.9 - glycol_share - oil_share, 0.88)


def _glycol(share: float, spray_ml: float, sprays: int, drink_ml: float) -> Callable[[], float]:
    return lambda: (
        dose(_mix(share), serving(float(sprays), spray_ml, drink_ml))[Part.GLYCOL].mg_per_litre.high
    )


def _table() -> list[Check]:
    return [
        Check(
            "dose",
            f"glycol {share:.0%} of the mix, {sprays} x {spray_ml:g} mL in {drink_ml:g} mL",
            "mass balance worked apart from this program, glycol 1.0361 g/mL, all spray in the glass",
            Mark.APART,
            float(expected),
            _glycol(share, spray_ml, sprays, drink_ml),
            "mg/L",
            0.55,  # the table is printed in whole mg/L
        )
        for share, spray_ml, two, three in _GLYCOL_TABLE
        for sprays, row in ((2, two), (3, three))
        for drink_ml, expected in zip(_DRINKS_ML, row, strict=True)
    ]


def _largest(share: float, drink_ml: float) -> Callable[[], float]:
    def got() -> float:
        found = largest_spray_ml(_mix(share), serving(2.0, 0.1, drink_ml), find_limit(_EU))
        assert found is not None
        return found

    return got


def _state(share: float, spray_ml: float, sprays: int, drink_ml: float) -> Callable[[], str]:
    served = serving(float(sprays), spray_ml, drink_ml)
    return lambda: judge(_mix(share), served, [find_limit(_EU)])[0].state.value


def _adi_drinks() -> float:
    verdict = judge(_mix(0.30), serving(2.0, 0.1, 90.0), [find_limit("adi-propylene-glycol")], 70.0)[0]
    assert verdict.mend.most_drinks is not None
    return float(verdict.mend.most_drinks)


def _thermo_glycol_density() -> float:
    with quiet_library():
        from thermo import Chemical  # noqa: PLC0415 - slow to import, needed by this check only

        density = float(Chemical("propylene glycol", T=293.15).rhol)
    return density / 1000 - GLYCOL_DENSITY_G_PER_ML


CHECKS: list[Check] = [
    *_table(),
    *(
        Check(
            "dose",
            f"largest spray within 1 g/L, glycol {share:.0%}, in {drink_ml:g} mL",
            "s = V / (1036.1 x share - 1), worked apart from this program",
            Mark.APART,
            expected,
            _largest(share, drink_ml),
            "mL",
            0.0006,
        )
        for share, drink_ml, expected in (
            (0.30, 60.0, 0.194),
            (0.30, 75.0, 0.242),
            (0.30, 90.0, 0.290),
            (0.30, 120.0, 0.387),
            (0.50, 60.0, 0.116),
        )
    ),
    Check(
        "dose",
        "oil 10 % of the mix, 2 x 0.1 mL in 75 mL",
        "mass balance worked apart from this program",
        Mark.APART,
        224.0,
        lambda: dose(_mix(0.30), serving(2.0, 0.1, 75.0))[Part.OIL].mg_per_litre.high,
        "mg/L",
        1.5,  # computed with another oil density
    ),
    Check(
        "dose",
        "oil in that drink",
        "mass balance worked apart from this program",
        Mark.APART,
        17.0,
        lambda: dose(_mix(0.30), serving(2.0, 0.1, 75.0))[Part.OIL].mg_per_drink.high,
        "mg",
        0.5,
    ),
    Check(
        "dose",
        "glycol of 2 x 0.1 mL of a 30 % mix",
        "mass balance worked apart from this program",
        Mark.APART,
        62.0,
        lambda: dose(_mix(0.30), serving(2.0, 0.1, 75.0))[Part.GLYCOL].mg_per_drink.high,
        "mg",
        0.5,
    ),
    Check(
        "dose",
        "such drinks within the daily intake of a 70 kg adult",
        "1750 mg / 62 mg, worked apart from this program",
        Mark.APART,
        28.0,
        _adi_drinks,
        "drinks",
    ),
    Check(
        "dose",
        "30 % glycol, 2 x 0.10 mL in 60 mL",
        "1033 mg/L against 1 g/L",
        Mark.APART,
        "over",
        _state(0.30, 0.10, 2, 60.0),
    ),
    Check(
        "dose",
        "30 % glycol, 2 x 0.10 mL in 75 mL",
        "827 mg/L, from 80 % of 1 g/L on",
        Mark.APART,
        "near",
        _state(0.30, 0.10, 2, 75.0),
    ),
    Check(
        "dose",
        "10 % glycol, 3 x 0.10 mL in 60 mL",
        "515 mg/L against 1 g/L",
        Mark.APART,
        "under",
        _state(0.10, 0.10, 3, 60.0),
    ),
    Check(
        "dose",
        "E 1520 in beverages, EU and UK",
        "trade press of 29 October 2014 citing Directive 95/2/EC; now Regulation (EC) 1333/2008, Annex III",
        Mark.READ,
        1000.0,
        lambda: limits_for(Jurisdiction.EU)[0].value,
        "mg/L",
    ),
    Check(
        "dose",
        "the same figure in the United Kingdom",
        "legislation.gov.uk: Regulation (EC) 1333/2008, Annex III, Part 1, note (a), as kept",
        Mark.READ,
        1000.0,
        lambda: limits_for(Jurisdiction.UK)[0].value,
        "mg/L",
    ),
    Check(
        "dose",
        "propylene glycol in alcoholic drinks, United States",
        "21 CFR 184.1666(d): 5 percent as served",
        Mark.READ,
        5.0,
        lambda: limits_for(Jurisdiction.US)[0].value / 10_000,
        "% by mass",
    ),
    Check(
        "dose",
        "propylene glycol in drinks without alcohol, United States",
        "21 CFR 184.1666(d) as quoted by the FDA inventory for GRN 302: 2 percent, all other categories",
        Mark.READ,
        2.0,
        lambda: limits_for(Jurisdiction.US, alcoholic=False)[0].value / 10_000,
        "% by mass",
    ),
    Check(
        "dose",
        "propylene glycol, acceptable daily intake",
        "EFSA Journal 2018;16(4):5235, abstract",
        Mark.READ,
        25.0,
        lambda: find_limit("adi-propylene-glycol").value,
        "mg/kg body weight",
    ),
    Check(
        "dose",
        "adult body weight for daily intakes",
        "efsa.europa.eu, press 120307a, on default values",
        Mark.READ,
        70.0,
        lambda: ADULT_BODY_WEIGHT_KG,
        "kg",
    ),
    Check(
        "dose",
        "glycol density against the library thermo at 20 °C, difference",
        "thermo, DIPPR/Perry 8E",
        Mark.COMPUTED,
        0.0,
        _thermo_glycol_density,
        "g/mL",
        0.0005,
    ),
    Check(
        "dose",
        "glycol density, relative to water at 20/20 °C",
        "European Pharmacopoeia through a supplier's specification: 1.035 to 1.040",
        Mark.READ,
        (1.035, 1.040),
        lambda: GLYCOL_DENSITY_G_PER_ML / 0.99820,
    ),
    Check(
        "dose",
        "citrus oil density, relative to water at 20/20 °C",
        "European Pharmacopoeia 6.2, sweet orange, through a copy: 0.842 to 0.850",
        Mark.READ,
        (0.842, 0.850),
        lambda: OIL_DENSITY_G_PER_ML / 0.99820,
    ),
]
