"""Clearing: the models against published activity coefficients, measured gaps and solubility statements."""

from __future__ import annotations

from functools import partial

import numpy as np
from thermo.unifac import UNIFAC

from bot.trade.liquids.clearing import phases
from bot.trade.liquids.clearing.estimate import model_states, state_of, stays_clear
from bot.trade.liquids.clearing.mend import State
from bot.trade.liquids.clearing.miscibility import limonene_percent
from bot.trade.liquids.clearing.mixture import Mixture
from bot.trade.liquids.clearing.substances import ETHANOL, LIMONENE, SUBSTANCES, WATER, Model, Substance
from tests.outside.check import Check, Mark

_RULE = "clearing"
_PRACTICE = "common practice, no source"
_TREATISE = "A Treatise on Beverages, 1888 (chestofbooks.com)"
_HANDBOOK = "text of a handbook of perfumery materials in a chemicals catalogue"
_PHARMACOGRAPHIA = "Flückiger and Hanbury, Pharmacographia, 1879"
_LEMON_CODEX = "Food Chemicals Codex, Lemon Oil, Distilled, quoted by a producer's sheet"
_GAP = "J. Chem. Eng. Data 40 (3) 578-581, 1995 (abstract)"
_OIML = "OIML R 22, general formula, worked by another program"
_MCT = "Ph. Eur., Triglycerides, medium-chain, quoted by a supplier"

NOT_SPLIT, NOT_CLEAR = "not 'will split'", "not 'clear'"
SPLIT, BORDERLINE, CLEAR = "will split", "borderline", "clear"


def _not_split(mixture: Mixture) -> str:
    state = state_of(mixture)
    return NOT_SPLIT if state in {State.CLEAR, State.BORDERLINE} else state.value


def _not_clear(mixture: Mixture) -> str:
    state = state_of(mixture)
    return NOT_CLEAR if state in {State.WILL_SPLIT, State.BORDERLINE} else state.value


def _word(mixture: Mixture) -> str:
    return state_of(mixture).value


def _in_spirit(name: str, volumes: float, percent: float) -> Mixture:
    return Mixture(oil_ml=1.0, spirit_ml=volumes, spirit_percent=percent, oil_name=name)


def _with_models(name: str, volumes: float, percent: float) -> str:
    """The state, which a published fact keeps from 'will split', and that without the fact."""
    mixture = _in_spirit(name, volumes, percent)
    return f"{_not_split(mixture)}; the models alone: {model_states([mixture])[0].value}"


# --- activity coefficients ---------------------------------------------------

# Groups of n-hexane and butanone, numbers of the original UNIFAC table.
_HEXANE, _BUTANONE = {1: 2, 2: 4}, {1: 1, 2: 1, 18: 1}


def _sample_gamma(which: int) -> float:
    model = phases.GroupModel(Model.ORIGINAL, [_HEXANE, _BUTANONE], 60.0)
    return float(np.exp(model.ln_gamma(np.array([[0.5, 0.5]])))[0, which])


_BAR = (0.04, 0.01, 0.15, 0.05, 0.45, 0.30)


def _library_gamma(model: Model, which: int) -> float:
    found = UNIFAC.from_subgroups(
        T=293.15,
        xs=list(_BAR),
        chemgroups=[dict(s.groups(model)) for s in SUBSTANCES],
        version=0 if model is Model.ORIGINAL else 1,
    )
    return float(found.gammas()[which])


def _our_gamma(model: Model, which: int) -> float:
    return float(np.exp(phases.bar_model(model).ln_gamma(np.array([_BAR])))[0, which])


# --- where a ternary gap closes ----------------------------------------------

# Citral by groups: 3 CH3, 2 CH2, 2 CH=C, 1 CHO.
_CITRAL, _CITRAL_MOLAR_MASS = {1: 3, 2: 2, 8: 2, 20: 1}, 152.237


def _gap_closes(model: Model, oil: dict[int, int], oil_molar_mass: float) -> float:
    """The highest mass fraction of ethanol at which any water + ethanol + oil mixture still splits."""
    groups = [WATER.groups(model), ETHANOL.groups(model), oil]
    unifac = phases.GroupModel(model, groups, 20.0)
    low, high = 0.2, 0.95
    for _ in range(10):
        ethanol = (low + high) / 2
        oils = np.linspace(0.002, 0.998 - ethanol, 120)
        masses = np.stack([1 - ethanol - oils, np.full_like(oils, ethanol), oils], axis=1)
        moles = masses / np.array([WATER.molar_mass_g, ETHANOL.molar_mass_g, oil_molar_mass])
        if all(unifac.stable(moles / moles.sum(axis=1, keepdims=True))):
            high = ethanol
        else:
            low = ethanol
    return low


def _limonene_gap(model: Model) -> float:
    return _gap_closes(model, dict(LIMONENE.groups(model)), LIMONENE.molar_mass_g)


def _volumes_to_clear(model: Model, percent: float) -> float:
    """Volumes of spirit that clear one volume of limonene, to 0.1, by one model."""
    series = [_in_spirit("limonene", i / 10.0, percent) for i in range(5, 250)]
    verdicts = stays_clear(model, series)
    return (len(verdicts) - verdicts[::-1].index(False) + 5) / 10.0


def _most_glycol(model: Model, oil_percent: float) -> float:
    """The largest % vol of glycol that stays clear with this much oil and 95 % spirit for the rest."""
    series = [
        Mixture(
            oil_ml=oil_percent,
            glycol_ml=float(glycol),
            spirit_ml=100 - oil_percent - glycol,
            spirit_percent=95,
        )
        for glycol in range(int(100 - oil_percent) + 1)
    ]
    return float(stays_clear(model, series).index(False) - 1)


_TRIALS = "an independent trial with the library thermo (same groups)"

# oil, volumes, % vol, source (all read), what the two models alone say: published as dissolving
DISSOLVES = (
    (
        "lemon oil",
        3.0,
        95.0,
        "USP 28, USP 35 and Merck Index, Lemon Oil: in 3 volumes of alcohol",
        BORDERLINE,
    ),
    (
        "lemon oil",
        0.5,
        100.0,
        "British Pharmaceutical Codex 1911: in all proportions of absolute alcohol",
        BORDERLINE,
    ),
    (
        "lemon oil",
        2.0,
        100.0,
        "British Pharmaceutical Codex 1911: in all proportions of absolute alcohol",
        BORDERLINE,
    ),
    ("lemon oil", 12.0, 90.0, "British Pharmaceutical Codex 1911: 1 in 12 of 90 %, waxes apart", CLEAR),
    ("lemon oil", 7.0, 88.7, f"{_TREATISE}: pure oil 1 in 7 of SG 0.838", BORDERLINE),
    ("lime oil", 5.0, 88.7, f"{_TREATISE}: 1 in 5 of SG 0.838", BORDERLINE),
    ("limonene", 5.0, 95.0, "PMC7330110, table 1: 5 volumes of alcohol", CLEAR),
    ("persian lime oil", 3.0, 95.0, _HANDBOOK, BORDERLINE),
    ("bitter orange oil", 8.0, 90.0, _HANDBOOK, CLEAR),
    ("mandarin oil", 10.0, 90.0, _HANDBOOK, CLEAR),
    ("orange oil", 2.0, 95.0, f"{_TREATISE}: about 2 parts of alcohol", BORDERLINE),
    ("orange oil", 10.0, 84.8, f"{_TREATISE}: 8 to 10 parts of SG 0.850", BORDERLINE),
    ("orange oil", 1.0, 100.0, f"{_TREATISE}: freely in absolute alcohol", BORDERLINE),
    ("bergamot oil", 0.5, 90.0, "Lueger, Lexikon der gesamten Technik, 1904", SPLIT),
    ("bergamot oil", 1.0, 91.2, f"{_PHARMACOGRAPHIA}: mixes with spirit of SG 0.83", SPLIT),
)
_KNOWN = Mixture(oil_ml=10, glycol_ml=20, spirit_ml=36.5, spirit_percent=95)


def _known(percent: float) -> Mixture:
    return Mixture(oil_ml=10, glycol_ml=20, spirit_ml=36.5, spirit_percent=percent)


def _limonene_low(name: str) -> float:
    found = limonene_percent(name)
    if found is None:
        raise LookupError(name)
    return found[0].low


def _limonene_in_water() -> float:
    """The most limonene in mg per litre of water that is called clear."""
    low, high = 0.0, 0.01
    for _ in range(20):
        middle = (low + high) / 2
        if state_of(Mixture(oil_ml=middle, water_ml=100.0)) is State.CLEAR:
            low = middle
        else:
            high = middle
    return low * LIMONENE.density_g_per_ml * 1e4


def _library_mass(cas: str) -> float:
    from chemicals import MW  # noqa: PLC0415 - loads data tables

    return float(MW(cas))


def _own(substance: Substance, value: str) -> float:
    return float(getattr(substance, value))


# The modelled substances in their order: registry number, and a chemist's density at 20 °C, g/mL.
_SUBSTANCES = (
    ("5989-27-5", 0.8409, "PMC7330110, table 1: 0.8402 at 20.85/4 °C", Mark.READ),
    ("538-23-8", 0.950, "Ph. Eur., medium-chain triglycerides: relative density about 0.95", Mark.READ),
    ("57-55-6", 1.0364, "Perry 8th ed., in the library chemicals", Mark.COMPUTED),
    ("56-81-5", 1.2613, "Lange's Handbook of Chemistry: 1.26362 (20/20)", Mark.READ),
    ("64-17-5", 0.78924, _OIML, Mark.APART),
    ("7732-18-5", 0.99820, _OIML, Mark.APART),
)

CHECKS: list[Check] = [
    *(
        Check(
            _RULE, f"molar mass of {substance.name}", "atomic weights, the library chemicals", Mark.COMPUTED,
            partial(_library_mass, cas), partial(_own, substance, "molar_mass_g"), "g/mol", 0.002,
        )
        for substance, (cas, *_rest) in zip(SUBSTANCES, _SUBSTANCES, strict=True)
    ),
    *(
        Check(
            _RULE, f"density of {substance.name} at 20 °C", source, mark, density,
            partial(_own, substance, "density_g_per_ml"), "g/mL", 0.0025 if density == 0.950 else 0.0005,
        )
        for substance, (_cas, density, source, mark) in zip(SUBSTANCES, _SUBSTANCES, strict=True)
    ),
    *(
        Check(
            _RULE,
            f"activity coefficient of {name}, equal moles, 60 °C, original UNIFAC",
            "DDBST sample problem P05.22a, quoted in the documentation of thermo",
            Mark.READ,
            expected,
            partial(_sample_gamma, which),
            "",
            0.0005,
        )
        for which, (name, expected) in enumerate((("n-hexane", 1.428), ("butanone", 1.365)))
    ),
    *(
        Check(
            _RULE,
            f"activity coefficient in a six-part mixture at 20 °C, {model.value}: {substance.name}",
            "the library thermo's own calculation",
            Mark.COMPUTED,
            _library_gamma(model, which),
            partial(_our_gamma, model, which),
            "",
            1e-6,
        )
        for model in Model
        for which, substance in enumerate(SUBSTANCES)
    ),
    Check(
        _RULE, "ethanol mass fraction that closes the gap of water + ethanol + limonene, original UNIFAC",
        _GAP, Mark.READ, 0.73, partial(_limonene_gap, Model.ORIGINAL), "", 0.03,
    ),
    Check(
        _RULE, "the same by the Dortmund model: not above the measured 0.73, as the hopeful side of the band",
        _GAP, Mark.READ, (0.62, 0.73), partial(_limonene_gap, Model.DORTMUND),
    ),
    Check(
        _RULE, "the same with citral, original UNIFAC: not below the measured 0.45, as the careful side",
        _GAP, Mark.READ, (0.45, 0.56), partial(_gap_closes, Model.ORIGINAL, _CITRAL, _CITRAL_MOLAR_MASS),
    ),
    *(
        Check(
            _RULE, f"volumes of {percent:g} % spirit that clear one of limonene, {model.value}", _TRIALS,
            Mark.APART, expected, partial(_volumes_to_clear, model, percent), "", 0.11,
        )
        for model, percent, expected in (
            (Model.ORIGINAL, 96.0, 3.5), (Model.ORIGINAL, 95.0, 4.0), (Model.ORIGINAL, 90.0, 7.1),
            (Model.ORIGINAL, 85.0, 12.0), (Model.DORTMUND, 95.0, 1.3), (Model.DORTMUND, 90.0, 2.4),
            (Model.DORTMUND, 80.0, 5.3),
        )
    ),
    *(
        Check(
            _RULE, f"largest % of glycol with {oil:g} % oil and 95 % spirit, {model.value}", _TRIALS,
            Mark.APART, expected, partial(_most_glycol, model, oil), "% vol", 2.0,
        )
        for model, oil, expected in (
            (Model.ORIGINAL, 5.0, 57.0), (Model.DORTMUND, 5.0, 78.0), (Model.ORIGINAL, 8.0, 33.0),
            (Model.DORTMUND, 8.0, 60.0), (Model.ORIGINAL, 10.0, 23.0), (Model.DORTMUND, 10.0, 52.0),
            (Model.ORIGINAL, 15.0, 8.0), (Model.DORTMUND, 15.0, 36.0),
        )
    ),
    *(
        Check(
            _RULE, f"{name} in {volumes:g} volumes of {percent:g} % spirit", source, Mark.READ,
            f"{NOT_SPLIT}; the models alone: {said}", partial(_with_models, name, volumes, percent),
        )
        for name, volumes, percent, source, said in DISSOLVES
    ),
    *(
        Check(
            _RULE, f"lemon oil with {volumes:g} of its volume of 91 % spirit: turbid",
            f"{_PHARMACOGRAPHIA}: an equal weight of spirit of SG 0.830", Mark.READ, NOT_CLEAR,
            partial(_not_clear, _in_spirit("lemon oil", volumes, 91.0)),
        )
        for volumes in (0.5, 1.0)
    ),
    Check(
        _RULE, "orange oil in 6 volumes of 84.8 % spirit, less than it needs",
        f"{_TREATISE}: requires 8 to 10 parts of SG 0.850", Mark.READ, NOT_CLEAR,
        partial(_not_clear, _in_spirit("orange oil", 6.0, 84.8)),
    ),
    *(
        Check(
            _RULE, f"{share:g} % citrus oil in {name} alone", _LEMON_CODEX, Mark.READ, NOT_CLEAR,
            partial(_not_clear, Mixture(oil_ml=share, glycol_ml=glycol, glycerol_ml=glycerol)),
        )
        for share in (1.0, 10.0, 33.0)
        for name, glycol, glycerol in (("propylene glycol", 100 - share, 0.0), ("glycerol", 0.0, 100 - share))
    ),
    *(
        Check(
            _RULE, f"{share:g} % citrus oil in medium-chain triglycerides", _LEMON_CODEX, Mark.READ, CLEAR,
            partial(_word, Mixture(oil_ml=share, carrier_ml=100 - share)),
        )
        for share in (1.0, 10.0, 50.0)
    ),
    *(
        Check(
            _RULE, f"{share:g} % medium-chain triglycerides in 96 % spirit", _MCT, Mark.READ, NOT_SPLIT,
            partial(_not_split, Mixture(carrier_ml=share, spirit_ml=100 - share, spirit_percent=96)),
        )
        for share in (5.0, 30.0, 50.0, 70.0, 95.0)
    ),
    Check(
        _RULE, "medium-chain triglycerides and water", _MCT, Mark.READ, SPLIT,
        partial(_word, Mixture(carrier_ml=10, water_ml=90)),
    ),
    Check(
        _RULE, "limonene and water", "Merck Index, limonene: practically insoluble in water", Mark.READ,
        SPLIT, partial(_word, Mixture(oil_ml=1, water_ml=99)),
    ),
    *(
        Check(
            _RULE, f"{share:g} % limonene in water", "Merck Index, limonene: practically insoluble in water",
            Mark.READ, SPLIT, partial(_word, Mixture(oil_ml=share, water_ml=100 - share)),
        )
        for share in (0.02, 0.05, 0.1)
    ),
    Check(
        _RULE, "limonene that water takes up, as counted here", "measured, some 7 to 20 mg/L",
        Mark.MEMORY, (7.0, 25.0), _limonene_in_water, "mg/L",
    ),
    Check(
        _RULE, "glycol, glycerol, water and ethanol without oil",
        "USP: each mixes with water and with alcohol", Mark.MEMORY, CLEAR,
        partial(_word, Mixture(glycol_ml=25, glycerol_ml=25, water_ml=25, spirit_ml=25, spirit_percent=96)),
    ),
    Check(_RULE, "10 oil : 20 glycol : 36.5 of 95 % spirit", _PRACTICE, Mark.PRACTICE, NOT_SPLIT,
          partial(_not_split, _KNOWN)),
    *(
        Check(_RULE, f"10 oil : 20 glycol : 36.5 of {percent:g} % spirit", _PRACTICE, Mark.PRACTICE, SPLIT,
              partial(_word, _known(percent)))
        for percent in (75.0, 70.0, 60.0, 50.0, 40.0)
    ),
    Check(_RULE, "oil and glycol alone, 10 : 20", _PRACTICE, Mark.PRACTICE, SPLIT,
          partial(_word, Mixture(oil_ml=10, glycol_ml=20))),
    Check(
        _RULE, "limonene in sweet orange oil, lower end", "Ph. Eur. 6.2, quoted by Martindale", Mark.READ,
        92.0, partial(_limonene_low, "sweet orange oil"), "%", 0.01,
    ),
    Check(
        _RULE, "limonene in lemon oil, lower end", "Ph. Eur. 6.2, quoted by Martindale", Mark.READ, 56.0,
        partial(_limonene_low, "lemon oil"), "%", 0.01,
    ),
]  # fmt: skip
