"""Tests of use by weekday, and of a next batch that is ready in time and used before it expires."""

from __future__ import annotations

from datetime import date, timedelta
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.errors import OutOfRangeError
from bot.trade.planning.plan import (
    Stock,
    next_batch,
)
from bot.trade.planning.use import WeekdayUse, estimate_use

MONDAY = date(2026, 7, 20)
STEADY = WeekdayUse((10.0,) * 7, 1e15, 0.0)


def _day(number: int) -> date:
    return MONDAY + timedelta(days=number)


def test_an_empty_batch_at_rest_is_nothing_to_wait_for() -> None:
    stock = [Stock(Decimal(20)), Stock(Decimal(0), ready_on=_day(30))]
    plan = next_batch(STEADY, stock, MONDAY, 0, 14)
    assert plan is not None
    assert plan.run_out_on == _day(2)
    assert plan.dry_days == 0


def test_the_batch_is_ready_on_the_day_the_stock_runs_out() -> None:
    plan = next_batch(STEADY, [Stock(Decimal(95))], MONDAY, rest_days=3, discard_days=30)
    assert plan is not None
    # nine days are covered, the tenth only half
    assert plan.run_out_on == _day(9)
    assert plan.make_on == _day(6)
    assert plan.ready_on == _day(9)
    assert plan.dry_days == 0
    # used from the 9th to the day before the discard date
    assert plan.discard_on == _day(36)
    assert plan.likely_use == pytest.approx(plan.largest) == 270


def test_a_rest_longer_than_the_stock_leaves_dry_days() -> None:
    plan = next_batch(STEADY, [Stock(Decimal(20))], MONDAY, rest_days=7, discard_days=30)
    assert plan is not None
    assert plan.make_on == MONDAY
    assert plan.run_out_on == _day(2)
    assert plan.dry_days == 5
    assert plan.likely_use == 230


def test_a_batch_at_rest_counts_as_stock_once_it_is_ready() -> None:
    stock = [Stock(Decimal(20)), Stock(Decimal(100), discard_on=_day(60), ready_on=_day(4))]
    plan = next_batch(STEADY, stock, MONDAY, rest_days=3, discard_days=30)
    assert plan is not None
    assert plan.run_out_on == _day(14)
    assert plan.dry_days == 2


def test_stock_that_goes_off_is_lost_and_the_batch_comes_earlier() -> None:
    stock = [Stock(Decimal(500), discard_on=_day(10)), Stock(Decimal(30))]
    plan = next_batch(STEADY, stock, MONDAY, rest_days=0, discard_days=30)
    assert plan is not None
    assert plan.lost == 400
    assert plan.run_out_on == _day(13)


def test_what_would_go_off_at_rest_is_not_made() -> None:
    plan = next_batch(STEADY, [], MONDAY, rest_days=10, discard_days=7)
    assert plan is not None
    assert plan.largest == plan.likely_use == 0


def test_the_vessel_caps_the_batch_and_plenty_needs_none() -> None:
    plan = next_batch(STEADY, [], MONDAY, 0, 30, most=120)
    assert plan is not None
    assert plan.largest == 120
    assert next_batch(STEADY, [Stock(Decimal(10_000_000))], MONDAY, 0, 30) is None


def test_a_closed_weekday_does_not_run_dry() -> None:
    use = WeekdayUse((0.0, *(10.0,) * 6), 1e12, 0.0)
    plan = next_batch(use, [Stock(Decimal(60))], _day(1), 0, 14)
    assert plan is not None
    # six open days are covered; the Monday after them needs nothing
    assert plan.run_out_on == _day(8)


@given(
    st.lists(st.integers(0, 60).map(Decimal), min_size=7, max_size=40).filter(any),
    st.lists(st.tuples(st.integers(0, 300), st.integers(0, 40), st.integers(0, 10)), max_size=4),
    st.integers(0, 20),
    st.integers(0, 60),
)
def test_no_plan_makes_more_than_will_probably_be_poured(
    amounts: list[Decimal], lots: list[tuple[int, int, int]], rest: int, discard: int
) -> None:
    use = estimate_use([(_day(number - 60), amount) for number, amount in enumerate(amounts)])
    stock = [Stock(Decimal(amount), _day(off), _day(ready)) for amount, off, ready in lots]
    plan = next_batch(use, stock, MONDAY, rest, discard)
    assert plan is not None
    assert MONDAY <= plan.make_on <= plan.ready_on
    assert (plan.ready_on - plan.make_on).days == rest
    assert 0 <= plan.largest <= plan.likely_use + 1e-9
    assert plan.dry_days >= 0
    assert 0 <= plan.lost <= sum(amount for amount, _, _ in lots) + 1e-9
    if plan.dry_days == 0:
        assert plan.ready_on <= plan.run_out_on


def test_what_is_impossible_is_refused() -> None:
    with pytest.raises(OutOfRangeError):
        next_batch(STEADY, [], MONDAY, -1, 5)
    with pytest.raises(OutOfRangeError):
        next_batch(STEADY, [Stock(Decimal(-1))], MONDAY, 1, 5)
