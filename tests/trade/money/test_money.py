"""Tests of whole minor units, their rounding, and parts that add up."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.errors import OutOfRangeError
from bot.trade.money.money import (
    UnknownCurrencyError,
    as_decimal,
    from_minor,
    minor_digits,
    to_minor,
)

CURRENCIES = ["USD", "EUR", "GBP", "JPY", "KWD", "CLF"]
money = st.decimals(min_value=-(10**9), max_value=10**9, places=6)


@pytest.mark.parametrize(
    ("amount", "currency", "minor"),
    [
        ("7.90", "EUR", 790),
        ("7.9", "eur", 790),
        ("12.345", "EUR", 1234),
        ("12.355", "EUR", 1236),
        ("12.3551", "EUR", 1236),
        ("0.005", "EUR", 0),
        ("0.015", "EUR", 2),
        ("-0.025", "EUR", -2),
        ("250.5", "JPY", 250),
        ("251.5", "JPY", 252),
        ("1.2345", "KWD", 1234),
        ("0.00005", "CLF", 0),
        ("1E+3", "USD", 100000),
        ("99999999999999999999999999999999.99", "USD", 9999999999999999999999999999999999),
    ],
)
def test_rounds_half_to_even(amount: str, currency: str, minor: int) -> None:
    assert to_minor(Decimal(amount), currency) == minor


def test_fractions_are_money_too() -> None:
    assert to_minor(Fraction(2, 3), "USD") == 67


@given(st.integers(-(10**15), 10**15), st.sampled_from(CURRENCIES))
def test_minor_units_there_and_back(minor: int, currency: str) -> None:
    amount = from_minor(minor, currency)
    assert to_minor(amount, currency) == minor
    assert len(f"{amount:f}".partition(".")[2]) == minor_digits(currency)


@given(money, money, st.sampled_from(CURRENCIES))
def test_more_money_is_never_fewer_coins(one: Decimal, two: Decimal, currency: str) -> None:
    low, high = sorted((one, two))
    assert to_minor(low, currency) <= to_minor(high, currency)


@given(money, st.sampled_from(CURRENCIES))
def test_rounding_moves_by_half_a_coin_at_most(amount: Decimal, currency: str) -> None:
    moved = abs(Fraction(from_minor(to_minor(amount, currency), currency)) - Fraction(amount))
    assert moved * 2 <= Fraction(1, 10 ** minor_digits(currency))


@pytest.mark.parametrize("code", ["", "XX", "EURO", "ZZZ", "€", "XAU", "XXX", "US Dollar", "840"])
def test_unknown_currencies(code: str) -> None:
    with pytest.raises(UnknownCurrencyError) as caught:
        to_minor(Decimal(1), code)
    assert caught.value.code == code
    with pytest.raises(UnknownCurrencyError):
        from_minor(1, code)


@pytest.mark.parametrize("amount", ["NaN", "Infinity", "-Infinity"])
def test_money_is_a_finite_number(amount: str) -> None:
    with pytest.raises(OutOfRangeError):
        to_minor(Decimal(amount), "USD")


def test_a_fraction_becomes_a_decimal_of_twelve_places() -> None:
    assert not as_decimal(Fraction(0)).is_signed()
    assert as_decimal(Fraction(2, 3)) == Decimal("0.666666666667")
    assert as_decimal(Fraction(1, 8)) == Decimal("0.125")
    assert as_decimal(Fraction(-5, 2)) == Decimal("-2.5")
