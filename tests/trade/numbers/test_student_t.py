from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.errors import OutOfRangeError
from bot.trade.numbers.student_t import central_probability, two_sided_quantile

_degrees = st.integers(1, 400)
_confidence = st.floats(0.01, 0.999)


@given(_confidence, _degrees)
def test_quantile_and_probability_are_inverse(confidence: float, degrees: int) -> None:
    t = two_sided_quantile(confidence, degrees)
    assert central_probability(t, degrees) == pytest.approx(confidence, abs=1e-12)


@given(_degrees, _confidence)
def test_fewer_runs_give_a_wider_interval(degrees: int, confidence: float) -> None:
    assert two_sided_quantile(confidence, degrees) > two_sided_quantile(confidence, degrees + 1)


@given(st.floats(0.01, 0.99), _degrees)
def test_more_confidence_gives_a_wider_interval(confidence: float, degrees: int) -> None:
    assert two_sided_quantile(confidence, degrees) < two_sided_quantile(confidence + 0.005, degrees)


def test_one_degree_of_freedom_is_the_cauchy_distribution() -> None:
    assert central_probability(1.0, 1) == pytest.approx(0.5)
    assert two_sided_quantile(0.95, 1) == pytest.approx(math.tan(math.pi * 0.475))


def test_two_degrees_of_freedom_have_a_closed_form() -> None:
    # P(-t..t) = t / sqrt(2 + t^2)
    assert central_probability(3.0, 2) == pytest.approx(3 / math.sqrt(11))
    assert central_probability(-3.0, 2) == central_probability(3.0, 2)


@pytest.mark.parametrize(
    ("confidence", "degrees"), [(0.95, 0), (0.95, 10_001), (0.0, 3), (1.0, 3), (math.nan, 3)]
)
def test_refuses_what_has_no_answer(confidence: float, degrees: int) -> None:
    with pytest.raises(OutOfRangeError):
        two_sided_quantile(confidence, degrees)
