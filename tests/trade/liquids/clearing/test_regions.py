"""Tests of the ternary map: every node says what the models say, and mixes lie where they belong."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.liquids.clearing.estimate import model_states
from bot.trade.liquids.clearing.mend import State
from bot.trade.liquids.clearing.mixture import Mixture
from bot.trade.liquids.clearing.regions import STEPS, cut_for, on_map, regions
from tests.examples import examples


def _mist(oil: float = 12, glycol: float = 22, spirit: float = 62, percent: float = 96) -> Mixture:
    return Mixture(oil_ml=oil, glycol_ml=glycol, spirit_ml=spirit, spirit_percent=percent)


@pytest.mark.parametrize("percent", [96.0, 75.5])
@pytest.mark.parametrize("temperature", [20.0, 5.0])
def test_skipped_nodes_say_what_the_models_say(percent: float, temperature: float) -> None:
    found = regions(_mist(percent=percent), 0.4, temperature)
    nodes = list(found.states)[::7]
    mixes = [
        Mixture(
            oil_ml=60 * i / STEPS,
            glycol_ml=60 * j / STEPS,
            spirit_ml=100 - 60 * (i + j) / STEPS,
            spirit_percent=percent,
        )
        for i, j in nodes
    ]
    assert [found.states[node] for node in nodes] == model_states(mixes, temperature)
    assert len(found.states) == (STEPS + 1) * (STEPS + 2) // 2


@examples(50)
@given(st.floats(0.1, 30), st.floats(0, 30))
def test_a_mix_has_the_state_of_a_node_beside_it(oil: float, glycol: float) -> None:
    mixture = _mist(oil, glycol, 100 - oil - glycol)
    found = regions(mixture, 0.2, 20.0)
    left, right = found.place(mixture)
    beside = {
        found.states[i, j]
        for i in (int(left), int(left) + 1)
        for j in (int(right), int(right) + 1)
        if (i, j) in found.states
    }
    assert model_states([mixture])[0] in beside


def test_the_cut_leaves_every_mix_on_the_map() -> None:
    assert cut_for([_mist(5, 10, 85)]) == 0.6
    assert cut_for([_mist(5, 10, 85), _mist(20, 30, 50)]) == 0.4
    assert cut_for([_mist(40, 50, 10)]) == 0.0


def test_the_other_ingredients_keep_their_ratio_to_the_spirit() -> None:
    watery = Mixture(oil_ml=5, glycol_ml=10, water_ml=20, spirit_ml=65, spirit_percent=96)
    assert on_map(Mixture(oil_ml=1, water_ml=4, spirit_ml=13, spirit_percent=96), watery)
    assert not on_map(_mist(), watery)
    assert regions(watery, 0.4, 20.0).states[0, 0] is State.CLEAR
