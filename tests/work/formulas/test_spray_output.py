"""Tests of sprayer output: each run by its own mix, priming excluded, and the range to compute with."""

from __future__ import annotations

from datetime import UTC, datetime
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.spray.sprayers import Evenness
from bot.work.formulas.spray_output import evenness_of, output_of, reckoned_ml
from storage.tables import SprayerRun

_NOW = datetime(2026, 11, 25, 18, tzinfo=UTC)


def _run(ml: float, density: str = "0.88", sprays: int = 20, priming: bool = False) -> SprayerRun:
    exact = Fraction(density)
    return SprayerRun(
        before_g=Fraction(150),
        after_g=Fraction(150) - Fraction(str(ml)) * sprays * exact,
        step_g=Fraction(1, 100),
        sprays=sprays,
        density_g_per_ml=exact,
        priming=priming,
        at=_NOW,
    )


_ml = st.integers(50, 150).map(lambda milli: milli / 1000)


@given(st.lists(st.tuples(_ml, st.sampled_from(["0.85", "0.92", "0.998"])), min_size=1, max_size=8))
def test_each_run_counts_by_the_density_of_its_own_mix(runs: list[tuple[float, str]]) -> None:
    found = output_of([_run(ml, density) for ml, density in runs])
    assert found is not None
    assert found.runs_ml == pytest.approx([ml for ml, _density in runs], rel=1e-9)


@given(st.lists(_ml, min_size=1, max_size=8))
def test_the_range_holds_the_mean_and_lies_above_nothing(runs: list[float]) -> None:
    found = output_of([_run(ml) for ml in runs])
    assert found is not None
    low, high = reckoned_ml(found)
    assert 0 < low <= high
    assert float(low) - 1e-6 <= found.ml_per_spray <= float(high) + 1e-6


def test_priming_is_never_counted() -> None:
    assert output_of([_run(0.02, priming=True)]) is None
    with_it, without = output_of([_run(0.02, priming=True), _run(0.1)]), output_of([_run(0.1)])
    assert with_it is not None
    assert without is not None
    assert with_it.ml_per_spray == without.ml_per_spray


def test_two_runs_reckon_with_what_was_seen_and_three_with_the_interval() -> None:
    two = output_of([_run(0.09), _run(0.11)])
    assert two is not None
    assert reckoned_ml(two) == (Fraction("0.09"), Fraction("0.11"))
    three = output_of([_run(0.099), _run(0.1), _run(0.101)])
    assert three is not None
    assert three.interval_95_ml is not None
    low, high = reckoned_ml(three)
    assert float(low) == pytest.approx(three.interval_95_ml.low, abs=1e-6)
    assert float(high) == pytest.approx(three.interval_95_ml.high, abs=1e-6)


def test_evenness_is_judged_from_ten_single_sprays_on() -> None:
    assert evenness_of([_run(0.1, sprays=1)] * 9) is None
    assert evenness_of([_run(0.1, sprays=1)] * 10) is Evenness.EVEN
    assert evenness_of([_run(0.1, sprays=1)] * 10 + [_run(0.2, sprays=1)]) is Evenness.UNEVEN
    assert evenness_of([_run(0.1)] * 20) is None
