from __future__ import annotations

import json
import subprocess
import sys
from collections.abc import Sequence

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.typing import NDArray
from scipy.optimize import minimize
from thermo.unifac import UNIFAC

from bot.trade.errors import OutOfRangeError
from bot.trade.liquids.clearing.phases import GroupModel, bar_model
from bot.trade.liquids.clearing.substances import ETHANOL, SUBSTANCES, WATER, Model
from bot.trade.liquids.clearing.unifac_groups import FILE, MissingParameterError
from tests.examples import examples
from tests.unifac_tables import as_text, published

_SIX = len(SUBSTANCES)
Row = NDArray[np.float64]


def _fractions(seed: int, alpha: Sequence[float] | float = 0.7) -> Row:
    weights = np.full(_SIX, alpha) if isinstance(alpha, float) else np.array(alpha)
    made: Row = np.maximum(np.random.default_rng(seed).dirichlet(weights), 1e-9)
    whole: Row = made / made.sum()
    return whole


def test_the_tables_are_those_of_the_library() -> None:
    assert json.loads(FILE.read_text("utf-8")) == json.loads(as_text(published()))


@pytest.mark.parametrize("model", list(Model))
@pytest.mark.parametrize("celsius", [4.0, 20.0, 35.0])
def test_activity_coefficients_are_those_of_the_library(model: Model, celsius: float) -> None:
    for seed in range(8):
        x = _fractions(seed)
        theirs = UNIFAC.from_subgroups(
            T=celsius + 273.15,
            xs=list(map(float, x)),
            chemgroups=[dict(s.groups(model)) for s in SUBSTANCES],
            version=0 if model is Model.ORIGINAL else 1,
        ).gammas()
        ours = np.exp(bar_model(model, celsius).ln_gamma(x[None, :]))[0]
        assert ours == pytest.approx(theirs, rel=1e-9)


@pytest.mark.parametrize("model", list(Model))
def test_a_pure_liquid_has_activity_coefficient_one(model: Model) -> None:
    corners = np.maximum(np.eye(_SIX), 0.0)
    assert np.exp(bar_model(model).ln_gamma(corners)).diagonal() == pytest.approx(np.ones(_SIX))


@given(st.integers(min_value=0, max_value=10**6))
@examples(8)
def test_activity_coefficients_obey_gibbs_and_duhem(seed: int) -> None:
    """Along any line of compositions the changes of ln gamma, weighted by x, cancel out."""
    x, y = _fractions(seed), _fractions(seed + 1)
    step = 1e-5 * (y - x)
    for model in Model:
        unifac = bar_model(model)
        rise = unifac.ln_gamma((x + step)[None, :]) - unifac.ln_gamma((x - step)[None, :])
        assert abs(float((x * rise[0]).sum())) < 1e-8


def _brute_force_splits(unifac: GroupModel, feed: Row) -> bool:
    """Search for a better second phase everywhere: thousands of random ones, the best few then refined."""
    present = feed > 0.0
    target = np.log(np.where(present, feed, 1.0)) + unifac.ln_gamma(feed[None, :])[0]

    def distances(trials: Row) -> Row:
        logs = np.log(np.where(trials > 0.0, trials, 1.0))
        found: Row = (trials * (logs + unifac.ln_gamma(trials) - target)).sum(axis=1)
        return found

    rng = np.random.default_rng(5)
    number = int(present.sum())
    trials = np.zeros((6000, _SIX))
    trials[:, present] = np.concatenate([rng.dirichlet(np.full(number, a), 2000) for a in (0.1, 0.4, 1.0)])
    trials[:, present] = np.maximum(trials[:, present], 1e-12)
    trials /= trials.sum(axis=1, keepdims=True)
    scores = distances(trials)
    if scores.min() < -1e-9:
        return True

    def of_logs(logs: Row) -> float:
        row = np.zeros(_SIX)
        row[present] = np.exp(logs - logs.max())
        return float(distances((row / row.sum())[None, :])[0])

    best = [minimize(of_logs, np.log(trials[i][present]), method="BFGS").fun for i in np.argsort(scores)[:3]]
    return bool(min(best) < -1e-8)


@pytest.mark.parametrize("model", list(Model))
@pytest.mark.filterwarnings("ignore::RuntimeWarning")
def test_the_tangent_plane_test_misses_nothing_that_a_search_everywhere_finds(model: Model) -> None:
    unifac = bar_model(model)
    answers = set()
    for seed in range(30):
        # Realistic mixtures: mostly ethanol, so that about half of them stay clear.
        feed = _fractions(seed, (0.4, 0.05, 0.8, 0.2, 5.0, 1.0))
        if seed % 3 == 0:
            feed[1] = feed[3] = 0.0
            feed /= feed.sum()
        ours = not unifac.stable(feed[None, :])[0]
        assert ours == _brute_force_splits(unifac, feed), feed
        answers.add(ours)
    assert answers == {True, False}


def test_many_at_once_is_the_same_as_one_by_one() -> None:
    feeds = np.array([_fractions(seed, (0.4, 0.05, 0.8, 0.2, 5.0, 1.0)) for seed in range(12)])
    for model in Model:
        unifac = bar_model(model)
        assert unifac.stable(feeds) == [unifac.stable(feed[None, :])[0] for feed in feeds]


@pytest.mark.parametrize("model", list(Model))
def test_a_split_keeps_every_substance_and_evens_out_activities(model: Model) -> None:
    unifac = bar_model(model)
    parted = 0
    for seed in range(12):
        feed = _fractions(seed, (1.0, 0.05, 2.0, 0.3, 2.0, 2.0))
        feed[1] = 0.0
        feed /= feed.sum()
        share, first, second = unifac.split(feed)
        if share == 0.0:
            assert first == pytest.approx(feed)
            continue
        parted += 1
        assert 0.0 < share < 1.0
        assert (1 - share) * first + share * second == pytest.approx(feed, abs=1e-8)
        activities = np.exp(unifac.ln_gamma(np.array([first, second]))) * np.array([first, second])
        assert activities[0] == pytest.approx(activities[1], rel=1e-5, abs=1e-9)
        # Each layer could only gain by turning into the other, which costs and gains nothing.
        assert unifac.second_phases(np.array([first, second]))[0].min() > -1e-6
    assert parted >= 3


def test_ethanol_and_water_never_part() -> None:
    for model in Model:
        rows = np.zeros((99, _SIX))
        rows[:, SUBSTANCES.index(ETHANOL)] = np.linspace(0.01, 0.99, 99)
        rows[:, SUBSTANCES.index(WATER)] = 1.0 - rows[:, SUBSTANCES.index(ETHANOL)]
        assert all(bar_model(model).stable(rows))


@pytest.mark.parametrize(
    ("model", "group"),
    [(Model.ORIGINAL, 178), (Model.DORTMUND, 195)],  # imidazolium, tetrafluoroborate: with no water
)
def test_groups_without_parameters_are_refused_not_taken_as_zero(model: Model, group: int) -> None:
    with pytest.raises(MissingParameterError) as caught:
        GroupModel(model, [{group: 1}, {35 if model is Model.ORIGINAL else 107: 1}], 20.0)
    assert group in {caught.value.group, caught.value.other_group}


@pytest.mark.parametrize("bad", [-1.0, 41.0, float("nan")])
def test_temperatures_outside_are_refused(bad: float) -> None:
    with pytest.raises(OutOfRangeError):
        bar_model(Model.ORIGINAL, bad)


_CHEMISTRY = [
    "liquids.clearing.estimate",
    "liquids.densities",
    "liquids.density_table",
    "liquids.ethanol",
    "liquids.ethanol_coefficients",
    "liquids.clearing.miscibility",
    "liquids.clearing.mixture",
    "liquids.clearing.phases",
    "spray.release",
    "numbers.roots",
    "liquids.strength",
    "liquids.clearing.substances",
    "liquids.sucrose",
    "liquids.spirit_substitution",
]


def _loaded(modules: Sequence[str] | None) -> set[str]:
    """The heavy libraries loaded by importing these rules (None: all of bot.trade)."""
    script = (
        "import importlib, json, pkgutil, sys, bot.trade\n"
        "every = [m.name for m in pkgutil.walk_packages(bot.trade.__path__, 'bot.trade.')]\n"
        f"names = {modules!r} or every\n"
        "[importlib.import_module(name) for name in names]\n"
        "heavy = {'thermo', 'numpy', 'scipy', 'chemicals', 'fluids', 'CoolProp', 'matplotlib'}\n"
        "print(json.dumps([len(names), sorted(heavy & set(sys.modules))]))\n"
    )
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
    number, heavy = json.loads(done.stdout)
    assert number >= len(_CHEMISTRY)
    return set(heavy)


def test_importing_the_chemistry_loads_no_numbers_library() -> None:
    assert _loaded([f"bot.trade.{name}" for name in _CHEMISTRY]) == set()


def test_no_rule_of_the_trade_loads_numpy_when_imported() -> None:
    assert _loaded(None) == set()
