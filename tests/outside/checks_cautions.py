"""Cautions: flash points by strength, limits of the flammable classes, allergen lists and listed oils."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from math import exp

from bot.trade.formulas.kinds import IngredientKind
from bot.trade.liquids import flash
from bot.trade.liquids.ethanol import mass_fraction
from bot.trade.liquids.flash import (
    COMPUTED_FLASH_C,
    PUBLISHED_FLASH_C,
    category_of,
    flash_point,
)
from bot.trade.liquids.strength import Component
from bot.trade.safety.allergens import Standing, allergen_lines
from bot.trade.safety.cautions import caution_by_id
from bot.trade.safety.grade import oil_standing
from bot.trade.safety.jurisdiction import Jurisdiction
from tests.outside.check import Check, Mark
from tests.outside.quiet import quiet_library

_PAGES = "ethanol in water, flash points printed on three public pages (two as % vol, one as % mass)"
_GHS = "Globally Harmonised System, flammable liquids, criteria as reprinted"


def _computed_flash(percent: float) -> float:
    """The temperature at which ethanol's vapour pressure equals that over pure ethanol at 12 °C."""
    with quiet_library():
        from scipy.optimize import brentq  # noqa: PLC0415 - an oracle for tests only
        from thermo import VaporPressure  # noqa: PLC0415 - slow to import
        from thermo.unifac import UNIFAC  # noqa: PLC0415

        pressure = VaporPressure(CASRN="64-17-5")
    mass = mass_fraction(percent)
    moles = (mass / 46.069) / (mass / 46.069 + (1 - mass) / 18.015)
    pure = pressure(285.15)

    def excess(kelvin: float) -> float:
        # Ethanol is CH3 + CH2 + OH (groups 1, 2, 14), water is group 16, original UNIFAC.
        groups = [{1: 1, 2: 1, 14: 1}, {16: 1}]
        model = UNIFAC.from_subgroups(T=kelvin, xs=[moles, 1 - moles], chemgroups=groups, version=0)
        return float(moles * model.gammas()[0] * pressure(kelvin) - pure)

    return float(brentq(excess, 270, 350)) - 273.15


def _gap(percent: float, ours: float) -> Callable[[], float]:
    return lambda: ours - _computed_flash(percent)


def _library_flash(cas: str, method: str) -> Callable[[], float]:
    def got() -> float:
        with quiet_library():
            from chemicals import T_flash  # noqa: PLC0415 - loads data tables

            kelvin = float(T_flash(cas, method=method))
        return kelvin - 273.15

    return got


def _flash_alone(kind: IngredientKind, name: str, end: str) -> float:
    percent = 100.0 if kind is IngredientKind.SPIRIT else 0.0
    band = flash.flash_point_of([Component(kind, name, 100.0, percent)]).band_c
    assert band is not None
    return band.low if end == "lower" else band.high


def _strictly_highly_flammable_from() -> float:
    """The weakest whole % vol at which every reading is below 23 °C."""
    bands = ((p, flash_point(float(p)).band_c) for p in range(10, 101))
    return float(next(p for p, band in bands if band is not None and band.high < 23.0))


def _mix_flash(oil: float, glycol: float, spirit: float) -> Callable[[], float]:
    mix = (
        Component(IngredientKind.CITRUS_OIL, "orange oil", oil),
        Component(IngredientKind.PROPYLENE_GLYCOL, "propylene glycol", glycol),
        Component(IngredientKind.SPIRIT, "spirit", spirit, 96.0),
    )
    return lambda: flash.flash_point_of(mix).low_c


def _pressure_gap(
    cas: str, celsius: float, flash_c: float, ours: Callable[[float], float]
) -> Callable[[], float]:
    def got() -> float:
        with quiet_library():
            from thermo import VaporPressure  # noqa: PLC0415 - slow to import

            pressure = VaporPressure(CASRN=cas)
            ratio = float(pressure(celsius + 273.15)) / float(pressure(flash_c + 273.15))
        return ours(celsius) / ratio

    return got


def _standing(word: str, jurisdiction: Jurisdiction) -> Callable[[], str]:
    def got() -> str:
        lines = allergen_lines([word], jurisdiction)
        return lines[0].standing.value if lines else "not found"

    return got


_ONE_OF_EACH = (
    "wheat", "prawns", "egg white", "anchovy", "peanut butter", "soya milk", "cow milk", "almonds", "celery",
    "mustard", "sesame", "sulphites", "lupin", "oyster",
)  # fmt: skip


def _listed(jurisdiction: Jurisdiction) -> Callable[[], float]:
    lines = allergen_lines(_ONE_OF_EACH, jurisdiction)
    return lambda: float(len({line.allergen for line in lines if line.standing is Standing.LISTED}))


_LISTED_OILS = (
    ("orange oil", "a citrus producers' page on 21 CFR 182.20", Mark.READ),
    ("tangerine oil", "21 CFR 182.20, 2006 edition, end of the list", Mark.READ),
    ("bergamot oil", "a producer's page on 21 CFR 182.20", Mark.READ),
    ("lemon oil", "a producer's specification citing 21 CFR 182.20", Mark.READ),
    ("limonene", "a citrus producers' page on 21 CFR 182.60", Mark.READ),
    ("lime oil", "21 CFR 182.20", Mark.MEMORY),
    ("grapefruit oil", "21 CFR 182.20", Mark.MEMORY),
    ("mandarin oil", "21 CFR 182.20", Mark.MEMORY),
    ("bitter orange oil", "21 CFR 182.20", Mark.MEMORY),
)


CHECKS: list[Check] = [
    *(
        Check(
            "cautions",
            f"printed flash point of {percent} % ethanol",
            _PAGES,
            Mark.READ,
            float(celsius),
            lambda percent=percent: dict(PUBLISHED_FLASH_C)[percent],  # type: ignore[misc]
            "°C",
        )
        for percent, celsius in (
            (10, 49),
            (20, 36),
            (30, 29),
            (40, 26),
            (50, 24),
            (60, 22),
            (70, 21),
            (80, 20),
            (90, 17),
            (96, 17),
            (100, 17),
        )
    ),
    *(
        Check(
            "cautions",
            f"computed flash point at {percent:g} % vol, difference from the library",
            "thermo: original UNIFAC and vapour pressure, pure ethanol at 12 °C",
            Mark.COMPUTED,
            0.0,
            _gap(percent, celsius),
            "°C",
            0.1,
        )
        for percent, celsius in COMPUTED_FLASH_C
    ),
    *(
        Check(
            "cautions",
            f"{name} alone flashes from, {end} end",
            f"{method} through the library chemicals",
            Mark.COMPUTED,
            _library_flash(cas, method),
            partial(_flash_alone, kind, name, end),
            "°C",
            0.2,
        )
        for name, kind, cas, method, end in (
            ("ethanol", IngredientKind.SPIRIT, "64-17-5", "IEC 60079-20-1 (2010)", "lower"),
            ("limonene", IngredientKind.CITRUS_OIL, "138-86-3", "NFPA 497 (2008)", "lower"),
            ("limonene", IngredientKind.CITRUS_OIL, "5989-27-5", "Serat DIPPR (2017)", "upper"),
        )
    ),
    Check(
        "cautions",
        "strength from which every reading is below 23 °C (about 60 to 65 % vol and somewhat above)",
        "UNIFAC and vapour pressure, worked apart from this program",
        Mark.APART,
        (60.0, 67.0),
        _strictly_highly_flammable_from,
        "% vol",
    ),
    Check(
        "cautions", "flash point 22.9 °C", _GHS, Mark.READ, "HIGHLY_FLAMMABLE", lambda: category_of(22.9).name
    ),
    Check("cautions", "flash point 23 °C", _GHS, Mark.READ, "FLAMMABLE", lambda: category_of(23.0).name),
    Check("cautions", "flash point 60 °C", _GHS, Mark.READ, "FLAMMABLE", lambda: category_of(60.0).name),
    *(
        Check(
            "cautions",
            f"oil {oil} : glycol {glycol} : spirit {spirit} of 96 % flashes from",
            "Liaw's rule with original UNIFAC and ethanol at 12 °C, worked apart from this program",
            Mark.APART,
            float(celsius),
            _mix_flash(oil, glycol, spirit),
            "°C",
            0.2,
        )
        for oil, glycol, spirit, celsius in ((8, 30, 40, 18.1), (12, 22, 62, 15.9), (0, 30, 70, 18.3))
    ),
    *(
        Check(
            "cautions",
            f"oil {oil} : glycol {glycol} : spirit {spirit} of 96 % flashes from, by another calculation",
            "original and Dortmund UNIFAC, a second calculation apart from this program",
            Mark.APART,
            float(celsius),
            _mix_flash(oil, glycol, spirit),
            "°C",
            0.6,
        )
        for oil, glycol, spirit, celsius in (
            (9, 12, 80, 14.5),
            (12, 20, 58, 15.3),
            (2, 50, 48, 21.7),
            (3, 60, 37, 23.8),
        )
    ),
    Check(
        "cautions",
        "95 % spirit alone flashes from, by the computed curve",
        "Liaw's rule with original UNIFAC and ethanol at 12 °C, worked apart from this program",
        Mark.APART,
        14.7,
        lambda: flash_point(95.0).low_c,
        "°C",
        0.1,
    ),
    *(
        Check(
            "cautions",
            f"vapour pressure of {name} at {celsius} °C over that at its flash point, against the library",
            "thermo, vapour pressure",
            Mark.COMPUTED,
            1.0,
            _pressure_gap(cas, celsius, flash_c, ours),
            "",
            tolerance,
        )
        for name, cas, flash_c, tolerance, ours in (
            ("ethanol", "64-17-5", 12.0, 0.01, lambda c: exp(flash._ln_ethanol(c) - flash._ln_ethanol(12.0))),
            # The library extends d-limonene's curve below 17 °C; limonene gives a twentieth of the vapour.
            (
                "limonene",
                "5989-27-5",
                45.0,
                0.2,
                lambda c: exp(flash._clapeyron(flash._LIMONENE_HEAT, 45.0, c)),
            ),
        )
        for celsius in (15, 25, 40)
    ),
    Check(
        "cautions",
        "the transport caution ends with the carrier",
        "ADR, UN 3065, special provisions 144 and 145, as quoted: written for beverages by road",
        Mark.READ,
        "asks the carrier",
        lambda: "asks the carrier" if "ask your carrier" in caution_by_id("transport").text else "does not",
    ),
    Check(
        "cautions",
        "allergens listed in the European Union",
        "Regulation (EU) No 1169/2011, Annex II, as reprinted",
        Mark.READ,
        14.0,
        _listed(Jurisdiction.EU),
    ),
    Check(
        "cautions",
        "allergens listed in the United Kingdom",
        "a charity's page on the fourteen allergens of UK law",
        Mark.READ,
        14.0,
        _listed(Jurisdiction.UK),
    ),
    Check(
        "cautions",
        "major allergens listed in the United States",
        "FDA page: sesame is the ninth major food allergen",
        Mark.READ,
        9.0,
        _listed(Jurisdiction.US),
    ),
    Check(
        "cautions",
        "coconut in the United States",
        "FDA guidance of 6 January 2025, edition 5, as reported by a state department and a law review",
        Mark.READ,
        "worth saying",
        _standing("coconut cream", Jurisdiction.US),
    ),
    Check(
        "cautions",
        "pine nuts in the United States",
        "FDA guidance of 6 January 2025, edition 5, table of twelve tree nuts, as reported",
        Mark.READ,
        "listed",
        _standing("pine nuts", Jurisdiction.US),
    ),
    Check(
        "cautions",
        "coconut in the European Union",
        "Regulation (EU) No 1169/2011, Annex II, nuts named there, as reprinted",
        Mark.READ,
        "worth saying",
        _standing("coconut cream", Jurisdiction.EU),
    ),
    Check(
        "cautions",
        "cereals distilled into spirit, European Union",
        "Regulation (EU) No 1169/2011, Annex II, 1(d), as reprinted",
        Mark.READ,
        "not found",
        _standing("rye whiskey", Jurisdiction.EU),
    ),
    Check(
        "cautions",
        "sulphites in the United States",
        "21 CFR 130.9 as quoted by grokfood.com: declared from 10 parts per million on",
        Mark.READ,
        "listed apart",
        _standing("sulphites", Jurisdiction.US),
    ),
    *(
        Check(
            "cautions",
            f"{name} is on the list of flavouring oils",
            source,
            mark,
            "citrus listed",
            lambda name=name: str(oil_standing(name)),  # type: ignore[misc]
        )
        for name, source, mark in _LISTED_OILS
    ),
]
