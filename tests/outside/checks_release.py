"""Aroma release: relative partial pressures against the library's own phase equilibrium."""

from __future__ import annotations

from functools import partial

from thermo.unifac import UNIFAC

from bot.trade.liquids.clearing.mixture import Mixture
from bot.trade.liquids.clearing.substances import SUBSTANCES, Model
from bot.trade.spray.release import release
from tests.outside.check import Check, Mark

_RULE = "release"
_LIBRARY = "the library thermo: mole fraction times its activity coefficient"
_MIST = Mixture(oil_ml=3, glycol_ml=7, spirit_ml=90, spirit_percent=96)


def _by_library(model: Model, mixture: Mixture) -> float:
    moles = mixture.moles()
    fractions = [n / sum(moles) for n in moles]
    found = UNIFAC.from_subgroups(
        T=293.15,
        xs=fractions,
        chemgroups=[dict(s.groups(model)) for s in SUBSTANCES],
        version=0 if model is Model.ORIGINAL else 1,
    )
    return float(fractions[0] * found.gammas()[0])


def _film(model: Model) -> float:
    pressure = release(_MIST).stages[0].pressure
    value = pressure.original if model is Model.ORIGINAL else pressure.dortmund
    return float("nan") if value is None else value


def _carrier(model: Model) -> float:
    pressure = release(_MIST).carrier_pressure
    value = pressure.original if model is Model.ORIGINAL else pressure.dortmund
    return float("nan") if value is None else value


CHECKS: list[Check] = [
    *(
        Check(
            _RULE,
            f"limonene over 3 oil : 7 glycol : 90 of 96 % spirit as sprayed, {model.value}",
            _LIBRARY,
            Mark.COMPUTED,
            _by_library(model, _MIST),
            partial(_film, model),
            "of neat limonene",
            1e-6,
        )
        for model in Model
    ),
    *(
        Check(
            _RULE,
            f"limonene over 3 % oil in medium-chain triglycerides, {model.value}",
            _LIBRARY,
            Mark.COMPUTED,
            _by_library(model, Mixture(oil_ml=3, carrier_ml=97)),
            partial(_carrier, model),
            "of neat limonene",
            1e-6,
        )
        for model in Model
    ),
]
