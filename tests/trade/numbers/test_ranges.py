from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.numbers.ranges import Range, RangeOrderError, as_range

_fractions = st.fractions(min_value=-1000, max_value=1000, max_denominator=50)
_shares = st.fractions(min_value=0, max_value=1, max_denominator=20)


@st.composite
def _ranges(draw: st.DrawFn) -> Range[Fraction]:
    return Range.around(draw(_fractions), draw(_fractions))


def _inside(span: Range[Fraction], share: Fraction) -> Fraction:
    return span.low + (span.high - span.low) * share


def test_refuses_ends_in_the_wrong_order() -> None:
    with pytest.raises(RangeOrderError) as refused:
        Range(3.0, 2.0)
    assert (refused.value.low, refused.value.high) == (3.0, 2.0)


@pytest.mark.parametrize(("low", "high"), [(float("nan"), 1.0), (0.0, float("nan"))])
def test_refuses_what_is_not_a_number(low: float, high: float) -> None:
    with pytest.raises(RangeOrderError):
        Range(low, high)


def test_two_to_three_sprays_of_a_fifteenth_to_a_tenth() -> None:
    spray = Range(Fraction(2), Fraction(3)) * Range(Fraction(1, 15), Fraction(1, 10))
    assert spray == Range(Fraction(2, 15), Fraction(3, 10))


def test_works_on_decimals_and_single_values() -> None:
    price = Range(Decimal("0.10"), Decimal("0.20"))
    assert price + Decimal("0.05") == Range(Decimal("0.15"), Decimal("0.25"))
    assert Decimal(2) * price == Range(Decimal("0.20"), Decimal("0.40"))
    assert price * Decimal(-1) == Range(Decimal("-0.20"), Decimal("-0.10"))
    assert price.middle == Decimal("0.15")
    assert price.width == Decimal("0.10")
    assert as_range(price) is price
    assert as_range(Decimal(3)).is_exact


def test_contains_both_ends_and_nothing_beyond() -> None:
    span = Range(1.0, 2.0)
    assert 1.0 in span
    assert 2.0 in span
    assert 0.999 not in span
    assert not span.contains(2.001)


def test_map_turns_a_falling_rule_round() -> None:
    assert Range(2.0, 4.0).map(lambda x: 1 / x) == Range(0.25, 0.5)


@given(_ranges(), _ranges(), _shares, _shares)
def test_sums_and_products_hold_every_result(
    left: Range[Fraction], right: Range[Fraction], first: Fraction, second: Fraction
) -> None:
    a, b = _inside(left, first), _inside(right, second)
    assert a + b in left + right
    assert a * b in left * right


@given(_ranges(), _ranges())
def test_the_ends_of_a_product_are_reached(left: Range[Fraction], right: Range[Fraction]) -> None:
    corners = {a * b for a in (left.low, left.high) for b in (right.low, right.high)}
    product = left * right
    assert {product.low, product.high} <= corners
