from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.errors import OutOfRangeError
from bot.trade.numbers.ranges import Range
from bot.trade.spray.sprayers import (
    Evenness,
    NoWeighingError,
    Weighing,
    calibrate,
    drinks_per_bottle,
    evenness,
    spray_ml_per_drink,
    sprays_to_weigh,
)

_spray = st.floats(0.02, 0.5)


def _run(ml_per_spray: float, sprays: int = 20, density: float = 0.88) -> Weighing:
    return Weighing(100.0, 100.0 - ml_per_spray * sprays * density, sprays)


def test_one_run_divides_by_sprays_and_density() -> None:
    output = calibrate([Weighing(100.0, 98.24, 20)], 0.88)
    assert output.ml_per_spray == pytest.approx(0.1)
    assert output.standard_deviation_ml is None
    assert output.interval_95_ml is None


def test_three_runs_by_hand() -> None:
    # 0.09, 0.10, 0.11: s = 0.01, t(0.95, 2) = 4.3027, 4.3027 x 0.01 / sqrt(3) = 0.024842; the density's
    # 1.96 x 0.005 x 0.1 = 0.00098 adds as squares: 0.024861.
    output = calibrate([_run(0.09), _run(0.10), _run(0.11)], 0.88)
    assert output.ml_per_spray == pytest.approx(0.10)
    assert output.standard_deviation_ml == pytest.approx(0.01)
    assert output.interval_95_ml is not None
    assert output.interval_95_ml.low == pytest.approx(0.10 - 0.0248607, abs=1e-6)
    assert output.interval_95_ml.high == pytest.approx(0.10 + 0.0248607, abs=1e-6)


def test_the_scale_and_the_density_are_in_the_interval() -> None:
    # Runs that agree exactly still hide what the scale rounds and what the density may be off by.
    runs = [_run(0.1), _run(0.1), _run(0.1)]
    alone = calibrate(runs, 0.88).interval_95_ml
    coarse = calibrate(runs, 0.88, 0.1).interval_95_ml
    assert alone is not None
    assert coarse is not None
    assert alone.high - 0.1 == pytest.approx(0.00098, abs=1e-6)
    # 1.96 x 0.1 g / (20 x 0.88) / sqrt(6) / sqrt(3) = 0.002625 beside it.
    assert coarse.high - 0.1 == pytest.approx(math.hypot(0.00098, 0.002625), abs=1e-5)


def test_a_drift_over_the_runs_is_told_and_chance_is_not() -> None:
    falling = calibrate([_run(ml) for ml in (0.110, 0.107, 0.103, 0.101, 0.097)], 0.88)
    assert falling.drift_share is not None
    assert falling.drift_share == pytest.approx(-0.124, abs=0.01)
    assert calibrate([_run(ml) for ml in (0.10, 0.11, 0.10, 0.11, 0.10)], 0.88).drift_share is None
    assert calibrate([_run(ml) for ml in (0.11, 0.10, 0.09)], 0.88).drift_share is None


def test_priming_runs_are_put_aside() -> None:
    priming = Weighing(101.0, 100.9, 6, priming=True)
    assert calibrate([priming, _run(0.1)], 0.88).runs_ml == calibrate([_run(0.1)], 0.88).runs_ml
    with pytest.raises(NoWeighingError):
        calibrate([priming], 0.88)


def test_a_coarse_scale_is_flagged_by_its_worst_run() -> None:
    fine = calibrate([_run(0.1, 20)], 0.88, 0.01)
    assert fine.scale_error_percent == pytest.approx(100 * 0.01 / 1.76)
    assert not fine.scale_too_coarse
    assert calibrate([_run(0.1, 20), _run(0.1, 2)], 0.88, 0.01).scale_too_coarse
    assert calibrate([_run(0.1, 20)], 0.88, 0.1).scale_too_coarse
    assert not calibrate([_run(0.1, 20)], 0.88).scale_too_coarse


@given(_spray, st.floats(0.7, 1.2), st.floats(0.001, 1.0))
def test_as_many_sprays_as_told_keep_the_scale_fine(ml: float, density: float, step: float) -> None:
    sprays = sprays_to_weigh(ml, density, step)
    error = 100 * step / (sprays * ml * density)
    assert error <= 5 * (1 + 1e-9)
    assert sprays == 1 or 100 * step / ((sprays - 1) * ml * density) > 5 * (1 - 1e-9)


@given(st.lists(_spray, min_size=2, max_size=8), st.floats(0.7, 1.2))
def test_the_mean_lies_in_its_interval_and_among_the_runs(outputs: list[float], density: float) -> None:
    output = calibrate([_run(ml, density=density) for ml in outputs], density)
    assert output.interval_95_ml is not None
    assert output.ml_per_spray in output.interval_95_ml
    assert min(output.runs_ml) <= output.ml_per_spray * (1 + 1e-12)
    assert output.ml_per_spray <= max(output.runs_ml) * (1 + 1e-12)


@given(_spray, st.floats(0.7, 1.2), st.floats(1.1, 3))
def test_a_lighter_mix_means_a_larger_spray(ml: float, density: float, factor: float) -> None:
    run = _run(ml, density=density)
    heavier = calibrate([run], density * factor).ml_per_spray
    assert heavier * factor == pytest.approx(calibrate([run], density).ml_per_spray)


def test_drinks_of_a_bottle_as_a_range() -> None:
    drinks = drinks_per_bottle(50.0)
    assert (drinks.fewest, drinks.most) == (166, 375)
    assert drinks_per_bottle(50.0, Range(0.1, 0.1), Range(1.0, 1.0)).fewest == 500
    assert drinks_per_bottle(50.0, Range(0.0, 0.1)).most is None
    assert drinks_per_bottle(0.1).fewest == 0


def test_priming_sprays_are_lost_from_the_bottle() -> None:
    assert drinks_per_bottle(50.0, Range(0.1, 0.1), Range(2.0, 2.0), priming_sprays=6).fewest == 247


@given(st.floats(1, 1000), st.integers(0, 20), st.floats(0.05, 0.2), st.integers(1, 5))
def test_fewest_is_never_above_most(bottle: float, priming: int, ml: float, sprays: int) -> None:
    drinks = drinks_per_bottle(bottle, Range(ml, ml * 1.5), Range(float(sprays), sprays + 1.0), priming)
    assert drinks.most is not None
    assert 0 <= drinks.fewest <= drinks.most


def test_spray_of_a_drink() -> None:
    assert spray_ml_per_drink(Range(0.05, 0.25), Range(2.0, 3.0)) == Range(0.1, 0.75)


@pytest.mark.parametrize(
    ("before", "after", "sprays"),
    [(100, 100, 5), (100, 101, 5), (100, 99, 0), (math.nan, 1, 1), (math.inf, 1, 1), (5, -1, 1)],
)
def test_refuses_a_weighing_that_cannot_be(before: float, after: float, sprays: int) -> None:
    with pytest.raises(OutOfRangeError):
        Weighing(before, after, sprays)


@pytest.mark.parametrize("density", [0.0, -1.0, math.nan, math.inf])
def test_refuses_a_density_that_cannot_be(density: float) -> None:
    with pytest.raises(OutOfRangeError):
        calibrate([_run(0.1)], density)


def test_refuses_bottles_and_doses_of_nothing() -> None:
    for bottle, ml in ((0.0, 0.1), (math.nan, 0.1), (50.0, 0.0)):
        with pytest.raises(OutOfRangeError):
            drinks_per_bottle(bottle, Range(ml, ml))
    with pytest.raises(OutOfRangeError):
        drinks_per_bottle(50.0, priming_sprays=-1)
    with pytest.raises(OutOfRangeError):
        calibrate([_run(0.1)], 0.88, 0.0)


def test_evenness_of_single_sprays() -> None:
    assert evenness([0.1] * 10, 0.1) is Evenness.EVEN
    assert evenness([0.121, 0.079, *[0.1] * 8], 0.1) is Evenness.DOUBTFUL
    assert evenness([0.121, 0.079, 0.121, 0.079, *[0.1] * 6], 0.1) is Evenness.UNEVEN
    assert evenness([0.13, *[0.1] * 19], 0.1) is Evenness.UNEVEN
    with pytest.raises(NoWeighingError):
        evenness([], 0.1)
    with pytest.raises(OutOfRangeError):
        evenness([0.1], 0.0)


@pytest.mark.parametrize(
    ("doses", "found"),
    [
        ([0.75] + [1.0] * 9, Evenness.EVEN),
        ([0.74] + [1.0] * 9, Evenness.UNEVEN),
        ([1.25] + [1.0] * 9, Evenness.EVEN),
        ([1.26] + [1.0] * 9, Evenness.UNEVEN),
        ([0.80] * 2 + [1.0] * 8, Evenness.EVEN),
        ([0.79] * 2 + [1.0] * 8, Evenness.DOUBTFUL),
        ([1.20] * 2 + [1.0] * 8, Evenness.EVEN),
        ([1.21] * 2 + [1.0] * 8, Evenness.DOUBTFUL),
        ([0.79, 1.21] + [1.0] * 18, Evenness.EVEN),
        ([0.79, 1.21] * 3 + [1.0] * 14, Evenness.DOUBTFUL),
        ([0.79, 1.21] * 3 + [0.79] + [1.0] * 13, Evenness.UNEVEN),
        ([0.85] * 10, Evenness.EVEN),
        ([0.84] * 10, Evenness.UNEVEN),
        ([1.15] * 10, Evenness.EVEN),
        ([1.16] * 10, Evenness.UNEVEN),
    ],
)
def test_the_lines_of_the_evenness_criterion(doses: list[float], found: Evenness) -> None:
    # USP <601>: 75 to 125 % for each, 80 to 120 % for nine in ten, 85 to 115 % for the mean.
    assert evenness(doses, 1.0) is found
