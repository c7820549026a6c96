"""Tests of estimates, their draws and their swings."""

from __future__ import annotations

import statistics
from collections.abc import Mapping
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.errors import OutOfRangeError
from bot.trade.numbers.uncertainty import (
    Estimate,
    EstimateOrderError,
    draws,
    likely_values,
    swings,
    to_decimal,
    usual_range,
)

ROUGH = {"a": Estimate.between(2, 8, 3), "b": Estimate.between(1, 2), "c": Estimate.exactly(10)}


def _line(values: Mapping[str, float]) -> tuple[float, ...]:
    return (3 * values["a"] - 4 * values["b"] + values["c"],)


def test_an_estimate_is_in_order() -> None:
    assert Estimate.between(1, 2).likely == Fraction(3, 2)
    assert Estimate.exactly(Decimal("0.1")).is_exact
    with pytest.raises(EstimateOrderError):
        Estimate.between(2, 3, 4)
    with pytest.raises(EstimateOrderError):
        Estimate.between(3, 2)


def test_draws_of_a_line_agree_with_the_sum_of_triangles() -> None:
    found = [row[0] for row in draws(_line, ROUGH, 20_000)]
    mean = 3 * (2 + 8 + 3) / 3 - 4 * 1.5 + 10
    variance = 9 * (4 + 64 + 9 - 16 - 6 - 24) / 18 + 16 * (1 / 24)
    assert statistics.fmean(found) == pytest.approx(mean, abs=4 * (variance / 20_000) ** 0.5)
    assert statistics.variance(found) == pytest.approx(variance, rel=0.05)


def test_draws_repeat_with_their_seed() -> None:
    assert draws(_line, ROUGH, 100, seed=3) == draws(_line, ROUGH, 100, seed=3)
    assert draws(_line, ROUGH, 100, seed=3) != draws(_line, ROUGH, 100, seed=4)


@given(st.lists(st.floats(-1e6, 1e6), min_size=1, max_size=300), st.floats(0.05, 0.95))
def test_the_usual_range_leaves_out_no_more_than_it_may(results: list[float], share: float) -> None:
    span = usual_range(results, share)
    outside = sum(not span.low <= value <= span.high for value in results)
    assert outside <= (1 - share) * len(results) + 1e-9
    assert span.low in results
    assert span.high in results


def test_the_usual_range_by_hand() -> None:
    hundred = [float(number) for number in range(100, 0, -1)]
    span = usual_range(hundred)
    assert (span.low, span.high) == (5, 96)
    half = usual_range(hundred, 0.5)
    assert (half.low, half.high) == (25, 76)


def test_swings_are_exact_and_sorted() -> None:
    found = swings(lambda values: 3 * values["a"] - 4 * values["b"] + values["c"], ROUGH)
    assert [swing.name for swing in found] == ["a", "b"]
    assert [swing.width for swing in found] == [18, 4]
    assert found[1].at_low > found[1].at_high


def test_an_input_that_changes_nothing_is_left_out() -> None:
    assert swings(lambda values: values["c"], ROUGH) == ()


def test_likely_values_and_decimals() -> None:
    assert likely_values(ROUGH) == {"a": 3, "b": Fraction(3, 2), "c": 10}
    assert to_decimal(Fraction(1, 8)) == Decimal("0.125")


def test_too_few_draws_or_nothing_to_range_over_are_refused() -> None:
    with pytest.raises(OutOfRangeError):
        draws(_line, ROUGH, 10)
    with pytest.raises(OutOfRangeError):
        usual_range([])
    for share in (0, 1):
        with pytest.raises(OutOfRangeError):
            usual_range([1.0], share)
