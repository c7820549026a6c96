"""Tests of the order of tests for a hazy batch."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from bot.trade.liquids.clearing.diagnosis import Case, Cause, next_test
from bot.trade.liquids.clearing.diagnosis import tests_for as in_order

HAZY = Case(rested=True, split=False, temperature_c=20.0, likely_clear=0.6)
CASES = st.builds(
    Case,
    rested=st.booleans(),
    split=st.booleans(),
    temperature_c=st.floats(0, 40),
    likely_clear=st.none() | st.floats(0, 1),
    filtered=st.booleans(),
    thinned=st.booleans(),
)


def _next(case: Case) -> Cause:
    return next_test(in_order(case))


def test_rest_and_cold_come_before_everything_else() -> None:
    assert _next(replace(HAZY, rested=False, temperature_c=5.0)) is Cause.REST
    assert _next(replace(HAZY, temperature_c=5.0)) is Cause.COLD


def test_a_haze_in_a_likely_mix_is_filtered_a_split_one_is_weighed() -> None:
    assert _next(HAZY) is Cause.WAX
    assert _next(replace(HAZY, filtered=True)) is Cause.STRENGTH
    assert _next(replace(HAZY, split=True)) is Cause.STRENGTH


def test_where_the_models_expect_it_to_part_the_amounts_come_first() -> None:
    assert _next(replace(HAZY, likely_clear=0.1)) is Cause.OIL


def test_without_oil_only_rest_cold_and_filtering_are_tried() -> None:
    assert {one.cause for one in in_order(replace(HAZY, likely_clear=None))} == {
        Cause.REST,
        Cause.COLD,
        Cause.WAX,
    }


@given(CASES)
def test_each_cause_is_listed_once_and_the_next_is_the_first_open_one(case: Case) -> None:
    found = in_order(case)
    causes = [one.cause for one in found]
    assert len(set(causes)) == len(causes)
    open_ones = [one.cause for one in found if not one.done]
    assert next_test(found) is (open_ones[0] if open_ones else causes[-1])
