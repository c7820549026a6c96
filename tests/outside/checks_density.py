"""Densities of oils, glycols, sugar, juices and acids against pharmacopoeias and handbooks."""

from __future__ import annotations

import importlib
from functools import partial
from typing import Any

from bot.trade.formulas.kinds import IngredientKind
from bot.trade.liquids import densities, ethanol
from bot.trade.liquids.sucrose import syrup, syrup_density_g_per_ml
from tests.outside.check import Check, Mark

# Untyped libraries.
_volume: Any = importlib.import_module("chemicals.volume")
_dippr: Any = importlib.import_module("chemicals.dippr")

_OIL = IngredientKind.CITRUS_OIL
_FCC = "Food Chemicals Codex, quoted by a producer's or flavour data sheet"
_HANDBOOK = "text of a handbook of perfumery materials in a chemicals catalogue"


def _middle(kind: IngredientKind, name: str, celsius: float) -> float:
    found = densities.density_of(kind, name, None, celsius)
    if found is None:
        raise LookupError(name)
    return found.middle


def _relative(kind: IngredientKind, name: str, celsius: float, water_c: float) -> float:
    """The table's middle value at `celsius`, relative to water at `water_c`."""
    return _middle(kind, name, celsius) / ethanol.water_density_g_per_ml(water_c)


def glycol_by_library(celsius: float) -> float:
    """Density of propylene glycol in g/mL, Perry 8th ed."""
    row = _volume.rho_data_Perry_8E_105_l.loc["57-55-6"]
    return float(_dippr.EQ105(273.15 + celsius, row.C1, row.C2, row.C3, row.C4) * 76.09442e-6)


def glycerol_by_library(celsius: float) -> float:
    """Density of glycerol in g/mL, VDI Heat Atlas."""
    row = _volume.rho_data_VDI_PPDS_2.loc["56-81-5"]
    volume = _volume.volume_VDI_PPDS(
        273.15 + celsius, row.Tc, row.rhoc, row.A, row.B, row.C, row.D, MW=row.MW
    )
    return float(row.MW / volume / 1e6)


# name, temperature, water's temperature, printed range, source, mark
_OILS = (
    ("sweet orange oil", 25.0, 25.0, (0.842, 0.846), "USP 32 and USP 35, Orange Oil", Mark.READ),
    ("sweet orange oil", 20.0, 20.0, (0.842, 0.850), "Ph. Eur. 6.2, quoted by Martindale", Mark.READ),
    (
        "sweet orange oil",
        15.5,
        15.5,
        (0.847, 0.854),
        "British Pharmaceutical Codex 1911, Oleum Aurantii",
        Mark.READ,
    ),
    ("lemon oil", 25.0, 25.0, (0.849, 0.855), "USP 28, USP 35 and Merck Index, Lemon Oil", Mark.READ),
    ("lemon oil", 15.5, 15.5, (0.857, 0.862), "British Pharmaceutical Codex 1911, Oleum Limonis", Mark.READ),
    ("lemon oil", 20.0, 20.0, (0.850, 0.858), "ISO 855, Italian lemon oil", Mark.MEMORY),
    ("grapefruit oil", 25.0, 25.0, (0.848, 0.856), _FCC, Mark.READ),
    ("grapefruit oil", 20.0, 20.0, (0.852, 0.860), "ISO 3053", Mark.MEMORY),
    ("bergamot oil", 25.0, 25.0, (0.871, 0.879), _FCC, Mark.READ),
    ("bergamot oil", 20.0, 20.0, (0.876, 0.884), "ISO 3520", Mark.MEMORY),
    ("mandarin oil", 20.0, 20.0, (0.844, 0.855), _HANDBOOK, Mark.READ),
    ("mandarin oil", 20.0, 20.0, (0.846, 0.853), "a supplier's page", Mark.READ),
    ("bitter orange oil", 20.0, 20.0, (0.840, 0.860), _HANDBOOK, Mark.READ),
    ("persian lime oil", 20.0, 20.0, (0.861, 0.879), _HANDBOOK, Mark.READ),
    ("mexican lime oil", 20.0, 20.0, (0.875, 0.888), _HANDBOOK, Mark.READ),
    ("distilled lime oil", 20.0, 20.0, (0.856, 0.865), "ISO 3519", Mark.MEMORY),
    ("limonene", 21.0, 4.0, (0.84015, 0.84025), "Merck Index, d-limonene: d4 at 21 °C 0.8402", Mark.READ),
)
# kind, name, figure as printed and as shown to people, source, mark
_SHOWN = (
    (_OIL, "limonene", "0.8402 (21/4 °C)", "Merck Index, d-limonene", Mark.READ),
    (_OIL, "bitter orange oil", "0.84 - 0.86 (20/20 °C)", _HANDBOOK, Mark.READ),
    (_OIL, "mandarin oil", "0.844 - 0.855 (20/20 °C)", _HANDBOOK, Mark.READ),
    (_OIL, "tangerine oil", "0.844 - 0.854 (25/25 °C)", _FCC, Mark.READ),
    (_OIL, "sweet orange oil", "0.842 - 0.85 (20/20 °C)", "Ph. Eur. 6.2, quoted by Martindale", Mark.READ),
    (_OIL, "distilled lemon oil", "0.842 - 0.856 (25/25 °C)", _FCC, Mark.READ),
    (_OIL, "lemon oil", "0.849 - 0.855 (25/25 °C)", "USP 28 and USP 35, Lemon Oil", Mark.READ),
    (_OIL, "distilled lime oil", "0.856 - 0.865 (20/20 °C)", "ISO 3519", Mark.MEMORY),
    (_OIL, "persian lime oil", "0.861 - 0.879 (20/20 °C)", _HANDBOOK, Mark.READ),
    (_OIL, "key lime oil", "0.875 - 0.888 (20/20 °C)", _HANDBOOK, Mark.READ),
    (_OIL, "lime oil", "0.861 - 0.888 (20/20 °C)", f"{_HANDBOOK}: Persian and Mexican", Mark.READ),
    (_OIL, "grapefruit oil", "0.848 - 0.856 (25/25 °C)", _FCC, Mark.READ),
    (_OIL, "bergamot oil", "0.871 - 0.879 (25/25 °C)", _FCC, Mark.READ),
    (
        _OIL,
        "yuzu oil",
        "0.84 - 0.86 (20/20 °C)",
        "the widest range of the sweet citrus oils here",
        Mark.APART,
    ),
    (IngredientKind.PROPYLENE_GLYCOL, "", "1.035 - 1.037 (25/25 °C)", "USP 28 to USP 35", Mark.READ),
    (IngredientKind.GLYCEROL, "", "1.26362 (20/20 °C)", "Lange's Handbook of Chemistry", Mark.READ),
    (IngredientKind.CARRIER_OIL, "MCT oil", "0.93 - 0.96 (20/20 °C)", "Ph. Eur., range", Mark.MEMORY),
    (IngredientKind.CARRIER_OIL, "sunflower oil", "0.91 - 0.93 g/mL", "usual range", Mark.MEMORY),
    (IngredientKind.ACID, "citric acid monohydrate", "1.542 g/mL", "a chemistry reference page", Mark.READ),
    (IngredientKind.SUGAR, "caster", "1.587 - 1.588 g/mL", "usual handbook value", Mark.MEMORY),
)
_CUPS = (
    ("orange", 248.0, "09206"),
    ("lemon", 244.0, "09152"),
    ("lime", 242.0, "09160"),
    ("grapefruit", 247.0, "09128"),
)
_SYRUPS = ((50.0, 1229.65), (60.0, 1286.61), (65.0, 1316.56), (70.0, 1347.48))


def _shown(kind: IngredientKind, name: str) -> str:
    found = densities.density_of(kind, name)
    return "none" if found is None else found.published


def _cup(name: str) -> float:
    return _middle(IngredientKind.JUICE, f"{name} juice", 20.0) * 236.5882365


CHECKS: list[Check] = [
    *(
        Check(
            "density",
            f"{name}, relative density {celsius:g}/{water:g}",
            source,
            mark,
            printed,
            partial(_relative, _OIL, name, celsius, water),
        )
        for name, celsius, water, printed, source, mark in _OILS
    ),
    *(
        Check(
            "density", f"{name or kind.value}, as printed", source, mark, printed, partial(_shown, kind, name)
        )
        for kind, name, printed, source, mark in _SHOWN
    ),
    Check(
        "density", "propylene glycol, specific gravity 25/25", "USP 28 to USP 35", Mark.READ, (1.035, 1.037),
        partial(_relative, IngredientKind.PROPYLENE_GLYCOL, "", 25.0, 25.0),
    ),
    Check(
        "density", "propylene glycol, relative density 20/20", "Ph. Eur., quoted by a supplier", Mark.READ,
        (1.035, 1.040), partial(_relative, IngredientKind.PROPYLENE_GLYCOL, "", 20.0, 20.0),
    ),
    *(
        Check(
            "density", f"propylene glycol at {celsius:g} °C", "Perry 8th ed., in the library chemicals",
            Mark.COMPUTED, glycol_by_library(celsius),
            partial(_middle, IngredientKind.PROPYLENE_GLYCOL, "", celsius), "g/mL", 0.0006,
        )
        for celsius in (20.0, 25.0)
    ),
    *(
        Check(
            "density", f"glycerol at {celsius:g} °C", "VDI Heat Atlas, in the library chemicals",
            Mark.COMPUTED, glycerol_by_library(celsius),
            partial(_middle, IngredientKind.GLYCEROL, "", celsius), "g/mL", 0.0003,
        )
        for celsius in (20.0, 25.0)
    ),
    Check(
        "density", "glycerol, specific gravity 20/20", "Lange's Handbook of Chemistry", Mark.READ, 1.26362,
        partial(_relative, IngredientKind.GLYCEROL, "", 20.0, 20.0), "", 0.0001,
    ),
    Check(
        "density", "medium-chain triglycerides, relative density",
        "Ph. Eur., quoted by a supplier: about 0.95", Mark.READ, 0.95,
        partial(_relative, IngredientKind.CARRIER_OIL, "mct oil", 20.0, 20.0), "", 0.005,
    ),
    *(
        Check(
            "density", f"a US cup of {name} juice", f"USDA SR28, {number}", Mark.READ, grams,
            partial(_cup, name), "g", 0.01,
        )
        for name, grams, number in _CUPS
    ),
    *(
        Check(
            "density", f"sucrose {percent:g} % mass at 20 °C", "ICUMSA polynomial, from another program",
            Mark.APART, expected, partial(syrup_density_g_per_ml, percent), "g/mL", 0.00001,
        )
        for percent, expected in ((p, v / 1000.0) for p, v in _SYRUPS)
    ),
    Check(
        "density", "sucrose 50 % mass at 20 °C", "CRC Handbook, quoted", Mark.READ, 1.2296,
        partial(syrup_density_g_per_ml, 50.0), "g/mL", 0.0001,
    ),
    Check(
        "density", "USP Syrup: 850 g of sucrose in 1000 mL, specific gravity",
        "USP 28, 29 and 32, Syrup: not below 1.30", Mark.READ, (1.30, 1.33),
        lambda: syrup_density_g_per_ml(64.8, 25.0) / ethanol.water_density_g_per_ml(25.0),
    ),
    Check(
        "density", "USP Syrup: g of sucrose in a litre at 64.8 % mass, 25 °C", "USP 28, 29 and 32, Syrup",
        Mark.READ, 850.0, lambda: 648.0 * syrup_density_g_per_ml(64.8, 25.0), "g/L", 1.5,
    ),
    Check(
        "density", "sugar in a litre of 1:1 syrup by mass", "ICUMSA polynomial, from another program",
        Mark.APART, 614.8, lambda: syrup(1000.0, 1000.0).sugar_g_per_l, "g/L", 0.1,
    ),
    Check(
        "density", "sodium chloride crystals", "CRC Handbook, in the library chemicals", Mark.COMPUTED,
        float(58.44277e-6 / _volume.rho_data_CRC_inorg_s_const.at["7647-14-5", "Vm"]),
        partial(_middle, IngredientKind.OTHER, "salt", 20.0), "g/mL", 0.001,
    ),
    Check(
        "density", "DL-malic acid crystals, 20/4", "Food Additives Data Book, malic acid", Mark.READ, 1.601,
        partial(_relative, IngredientKind.ACID, "malic acid", 20.0, 4.0), "", 0.0005,
    ),
    Check(
        "density", "citric acid crystals, free of water", "a chemistry reference page", Mark.READ, 1.665,
        partial(_middle, IngredientKind.ACID, "citric acid", 20.0), "g/mL", 0.0005,
    ),
]  # fmt: skip
