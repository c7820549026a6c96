from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.numbers.roots import NoBracketError, crossing


@given(st.floats(min_value=-50, max_value=50))
def test_finds_the_cube_root(target: float) -> None:
    x = crossing(lambda x: x**3, target, -4, 4)
    assert math.isclose(x, math.copysign(abs(target) ** (1 / 3), target), rel_tol=1e-9, abs_tol=1e-7)


def test_finds_where_a_falling_function_crosses() -> None:
    assert crossing(math.cos, 0.0, 0.0, 3.0) == pytest.approx(math.pi / 2, abs=1e-12)


def test_an_end_that_is_the_answer_is_returned_as_it_is() -> None:
    assert crossing(lambda x: x, 2.0, 2.0, 3.0) == 2.0
    assert crossing(lambda x: x, 3.0, 2.0, 3.0) == 3.0


def test_a_value_never_reached_is_an_error_that_says_what_is_reached() -> None:
    with pytest.raises(NoBracketError) as caught:
        crossing(lambda x: x, 5.0, 0.0, 1.0)
    assert (caught.value.target, caught.value.at_low, caught.value.at_high) == (5.0, 0.0, 1.0)


def test_a_steep_function_still_ends() -> None:
    assert crossing(lambda x: math.expm1(60 * x), 1.0, -1.0, 1.0) == pytest.approx(
        math.log(2) / 60, abs=1e-12
    )
