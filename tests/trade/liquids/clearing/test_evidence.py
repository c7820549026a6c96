"""Tests of the bar's own evidence: honest with one look, sharp with ten, never against a plain look."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.liquids.clearing.evidence import (
    Look,
    belief,
    margin_of,
    offset_of,
    spirit_to_clear,
    water_to_cloud,
)
from bot.trade.liquids.clearing.miscibility import Outcome
from bot.trade.liquids.clearing.mixture import Mixture
from tests.examples import examples

ROOM = 20.0
MIST = Mixture(oil_ml=12, glycol_ml=22, spirit_ml=62, spirit_percent=96, oil_name="orange oil")
# Oil : spirit in which the models' middle lies at this logarithm above or below the mix's own oil.
MARGIN = margin_of(MIST, ROOM)
SEEN = st.sampled_from(Outcome)


def _looks(seen: Outcome, count: int, mix: str = "mist", margin: float = MARGIN) -> list[Look]:
    return [Look(margin, seen, mix)] * count


def _clear(looks: list[Look], mixture: Mixture = MIST, lot: str | None = None) -> float:
    return belief(mixture, ROOM, looks, lot, "mist").clear


def test_without_looks_a_borderline_mix_is_open() -> None:
    assert 0.35 < _clear([]) < 0.65


def test_one_look_moves_the_answer_and_ten_make_it_sharp() -> None:
    one, ten = _clear(_looks(Outcome.CLEAR, 1)), _clear(_looks(Outcome.CLEAR, 10))
    assert 2 / 3 <= one < 0.9
    assert ten >= 11 / 12
    assert _clear(_looks(Outcome.SPLIT, 1)) <= 1 / 3
    assert _clear(_looks(Outcome.SPLIT, 10)) <= 1 / 12


def test_looks_from_both_sides_narrow_the_limit() -> None:
    around = [
        Look(MARGIN + apart, Outcome.CLEAR if apart > 0 else Outcome.SPLIT, f"mix {apart}")
        for apart in (0.5, 0.3, -0.3, -0.5)
    ]
    wide, narrow = (belief(MIST, ROOM, looks, None, "mist").largest_oil for looks in ([], around))
    assert narrow.high / narrow.low < 0.6 * wide.high / wide.low


@examples(60)
@given(
    seen=SEEN,
    count=st.integers(1, 10),
    others=st.lists(st.tuples(st.floats(-2, 2), SEEN), max_size=8),
    oil=st.floats(1, 40),
)
def test_the_answer_is_never_against_plain_looks_at_the_same_mix(
    seen: Outcome, count: int, others: list[tuple[float, Outcome]], oil: float
) -> None:
    mixture = Mixture(oil_ml=oil, glycol_ml=22, spirit_ml=62, spirit_percent=96)
    own = _looks(seen, count, margin=margin_of(mixture, ROOM))
    elsewhere = [Look(margin, one, f"other {at}") for at, (margin, one) in enumerate(others)]
    sure = (count + 1) / (count + 2)
    found = _clear([*elsewhere, *own], mixture)
    assert found >= sure - 1e-9 if seen is Outcome.CLEAR else found <= 1 - sure + 1e-9


@examples(40)
@given(st.lists(st.tuples(st.floats(-1.5, 1.5), SEEN), max_size=6), st.floats(-1, 1))
def test_a_clear_look_elsewhere_never_lowers_the_answer(
    others: list[tuple[float, Outcome]], margin: float
) -> None:
    looks = [Look(where, seen, at) for at, (where, seen) in enumerate(others)]
    before = offset_of(looks, None, "mist").clear(margin)
    after = offset_of([*looks, Look(0.0, Outcome.CLEAR, "elsewhere")], None, "mist").clear(margin)
    assert after >= before - 0.02


def test_a_look_at_another_lot_counts_less() -> None:
    same = [Look(MARGIN, Outcome.SPLIT, "other", "A"), Look(MARGIN, Outcome.SPLIT, "third", "A")]
    assert _clear(same, lot="A") < _clear(same, lot="B") < _clear([])


def test_a_split_in_the_cold_says_less_of_the_room_than_a_clear_one() -> None:
    cold = {seen: [Look(MARGIN, seen, "mist", None, 5.0)] for seen in (Outcome.SPLIT, Outcome.CLEAR)}
    warm = {seen: _looks(seen, 1) for seen in cold}
    assert _clear(warm[Outcome.SPLIT]) + 0.1 < _clear(cold[Outcome.SPLIT]) < _clear([])
    assert _clear(cold[Outcome.CLEAR]) > _clear(warm[Outcome.CLEAR]) - 0.01
    assert belief(MIST, 5.0, warm[Outcome.CLEAR], None, "mist").clear < _clear(warm[Outcome.CLEAR])


def test_what_is_added_clears_and_water_clouds() -> None:
    hazy = offset_of(_looks(Outcome.HAZE, 1), None, "mist")
    more = spirit_to_clear(MIST, ROOM, hazy)
    assert more is not None
    mended = Mixture(oil_ml=12, glycol_ml=22, spirit_ml=62 + more, spirit_percent=96)
    assert hazy.clear(margin_of(mended, ROOM)) >= 0.8 > hazy.clear(MARGIN)
    clear = offset_of(_looks(Outcome.CLEAR, 3), None, "mist")
    water = water_to_cloud(MIST, ROOM, clear)
    assert water is not None
    assert water > 1.0
    assert water_to_cloud(MIST, ROOM, offset_of(_looks(Outcome.SPLIT, 3), None, "mist")) == 0.0


def test_more_spirit_never_helps_where_the_spirit_is_too_weak() -> None:
    weak = Mixture(oil_ml=12, spirit_ml=80, spirit_percent=40)
    assert spirit_to_clear(weak, ROOM, offset_of([], None, "weak")) is None


@pytest.mark.parametrize("share", [0.05, 0.2])
def test_the_margin_falls_by_the_logarithm_of_the_oil(share: float) -> None:
    one, double = (Mixture(oil_ml=share * by, spirit_ml=1, spirit_percent=95) for by in (1, 2))
    assert margin_of(one, ROOM) - margin_of(double, ROOM) == pytest.approx(0.6931, abs=1e-4)
