"""Tests of use by weekday, and of a next batch that is ready in time and used before it expires."""

from __future__ import annotations

import random
from datetime import date, timedelta
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.errors import OutOfRangeError
from bot.trade.planning.plan import (
    Backing,
    NoUseError,
    Stock,
    WeekdayUse,
    backing,
    next_batch,
    use_by_weekday,
)

MONDAY = date(2026, 7, 20)
STEADY = WeekdayUse((10.0,) * 7, (8,) * 7, 0.0, 8)


def _day(number: int) -> date:
    return MONDAY + timedelta(days=number)


def test_use_is_averaged_by_weekday() -> None:
    days = [(_day(number), Decimal(30 if number % 7 == 5 else 4 + number // 7)) for number in range(21)]
    use = use_by_weekday(days)
    assert use.means[5] == 30
    assert use.means[0] == 5
    assert use.counts == (3,) * 7
    assert use.weeks == 3
    assert use.backing is Backing.FEW_WEEKS
    assert use.a_week == 60


def test_a_weekday_never_logged_takes_the_average() -> None:
    use = use_by_weekday([(_day(0), Decimal(4)), (_day(1), Decimal(8))])
    assert use.means == (4, 8, 6, 6, 6, 6, 6)
    assert use.spread is None
    assert use.at_least(MONDAY, 7) == use.likely(MONDAY, 7)


def test_what_is_poured_nine_times_in_ten_by_hand() -> None:
    use = WeekdayUse((10.0,) * 7, (8,) * 7, 2.0, 8)
    # two weeks: 14 days, and each weekday's average, known to 1/8 of a day's variance, counts twice
    deviation = 2 * (14 + 7 * 2**2 / 8) ** 0.5
    assert use.at_least(MONDAY, 14) == pytest.approx(140 - 1.2815515655 * deviation)
    # ten days contain Monday to Wednesday twice; Monday was never logged and uses the average of all 48
    patchy = WeekdayUse((10.0,) * 7, (0, *(8,) * 6), 2.0, 8)
    deviation = 2 * (10 + 4 / 48 + 2 * 4 / 8 + 4 * 1 / 8) ** 0.5
    assert patchy.at_least(MONDAY, 10) == pytest.approx(100 - 1.2815515655 * deviation)


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
    assert plan.likely_use == plan.largest == 270


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
    use = WeekdayUse((0.0, *(10.0,) * 6), (8,) * 7, 0.0, 8)
    plan = next_batch(use, [Stock(Decimal(60))], _day(1), 0, 14)
    assert plan is not None
    # six open days are covered; the Monday after them needs nothing
    assert plan.run_out_on == _day(8)


def test_the_largest_batch_is_poured_nine_times_in_ten() -> None:
    source = random.Random(5)
    truth = (20, 15, 15, 25, 60, 70, 30)

    def demand(day: date) -> float:
        return max(0.0, source.gauss(truth[day.weekday()], 8))

    days, poured = 21, []
    for _ in range(400):
        use = use_by_weekday([(_day(number), Decimal(demand(_day(number)))) for number in range(56)])
        poured.append(
            sum(demand(_day(56 + number)) for number in range(days)) >= use.at_least(_day(56), days)
        )
    assert 0.86 < sum(poured) / len(poured) < 0.94


@given(
    st.lists(st.integers(0, 60).map(Decimal), min_size=7, max_size=40).filter(any),
    st.lists(st.tuples(st.integers(0, 300), st.integers(0, 40), st.integers(0, 10)), max_size=4),
    st.integers(0, 20),
    st.integers(0, 60),
)
def test_no_plan_makes_more_than_will_probably_be_poured(
    amounts: list[Decimal], lots: list[tuple[int, int, int]], rest: int, discard: int
) -> None:
    use = use_by_weekday([(_day(number - 60), amount) for number, amount in enumerate(amounts)])
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


def test_backing_by_weeks() -> None:
    assert [backing(weeks) for weeks in (1, 3, 4, 11, 12)] == [
        Backing.FEW_WEEKS,
        Backing.FEW_WEEKS,
        Backing.SOME_WEEKS,
        Backing.SOME_WEEKS,
        Backing.MANY_WEEKS,
    ]


def test_nothing_used_or_impossible_is_refused() -> None:
    with pytest.raises(NoUseError):
        use_by_weekday([])
    with pytest.raises(NoUseError):
        use_by_weekday([(MONDAY, Decimal(0))])
    with pytest.raises(OutOfRangeError):
        use_by_weekday([(MONDAY, Decimal(-1))])
    with pytest.raises(OutOfRangeError):
        next_batch(STEADY, [], MONDAY, -1, 5)
    with pytest.raises(OutOfRangeError):
        next_batch(STEADY, [Stock(Decimal(-1))], MONDAY, 1, 5)
