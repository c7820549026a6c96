"""The calibration that TABLE.md shows, by fewer bars, and the published mixes."""

from __future__ import annotations

import pytest

from tests.calibration.published import POINTS, alone, brier, held_out
from tests.calibration.simulated import LOOKS, WORLDS, reliability, run

_BARS = 250  # the standard error of a coverage of 80 % is then 2.5 %


@pytest.mark.parametrize(
    "number", [LOOKS[0], *(pytest.param(one, marks=pytest.mark.long) for one in LOOKS[1:])]
)
def test_the_interval_covers_the_truth_as_often_as_it_says(number: int) -> None:
    assert 0.72 <= run(WORLDS[0], number, _BARS).covered <= 0.88


@pytest.mark.long
def test_the_probability_said_is_the_share_seen() -> None:
    rows = reliability([run(WORLDS[0], number, _BARS) for number in LOOKS])
    for _low, said, was, number in rows:
        assert said == pytest.approx(was, abs=3 * (0.25 / number) ** 0.5 + 0.02)


def test_held_out_published_mixes_are_answered_better_than_by_the_models_alone() -> None:
    assert brier(held_out) < brier(alone) < 0.25
    right = [(held_out(one) > 0.5) is one.clear for one in POINTS]
    assert sum(right) >= 0.8 * len(right)
