"""Tests for daily use from a stated figure, counts and used-up bottles, with its interval."""

from __future__ import annotations

import random
from datetime import date, timedelta
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.errors import OutOfRangeError
from bot.trade.numbers.gamma import gamma_quantile
from bot.trade.planning.use import SAID_SHAPE, NoUseError, UsedUp, WeekdayUse, estimate_use

MONDAY = date(2026, 7, 20)
BUSY = (20, 15, 15, 25, 60, 70, 30)


def _day(number: int) -> date:
    return MONDAY + timedelta(days=number)


def _weeks(weeks: int, amounts: tuple[int, ...] = BUSY) -> list[tuple[date, Decimal]]:
    return [(_day(number), Decimal(amounts[number % 7])) for number in range(7 * weeks)]


def test_what_is_said_is_right_within_a_factor_of_two() -> None:
    use = estimate_use([], said=10.0)
    assert use.a_week == pytest.approx(70)
    assert use.shape == SAID_SHAPE
    assert use.a_day.high / use.a_day.low == pytest.approx(4, rel=0.03)


def test_what_is_counted_takes_over_from_what_was_said() -> None:
    said = 10.0
    weekly = [estimate_use(_weeks(weeks), said=said).a_week for weeks in (0, 1, 4, 12)]
    assert weekly[0] == pytest.approx(70)
    assert weekly == sorted(weekly)
    assert weekly[1] > 1.5 * weekly[0]
    assert weekly[3] == pytest.approx(sum(BUSY), rel=0.02)


def test_one_night_is_a_guess_and_many_are_not() -> None:
    one = estimate_use([(MONDAY, Decimal(10))])
    many = estimate_use(_weeks(8))
    assert one.a_day.high > 8 * one.a_day.low
    assert many.a_day.high < 1.4 * many.a_day.low


def test_weekdays_differ_once_they_were_counted() -> None:
    use = estimate_use(_weeks(6))
    for number in range(7):
        assert use.means[number] == pytest.approx(BUSY[number], rel=0.2)
    # A weekday without counts is average.
    patchy = estimate_use([(_day(0), Decimal(4)), (_day(1), Decimal(8))])
    assert patchy.means[0] < patchy.means[2] == patchy.means[6] < patchy.means[1]


def test_a_closed_day_uses_nothing_and_a_usual_pattern_holds() -> None:
    use = estimate_use([], said=10.0, usual=(0, 1, 1, 1, 2, 2, 1))
    assert use.means[0] == 0
    assert use.means[4] == 2 * use.means[3]
    assert use.a_week == pytest.approx(60)
    assert use.a_day.contains(10.0)


def test_bottles_used_up_are_as_many_events() -> None:
    use = estimate_use([], used_up=UsedUp(4, 800, 40))
    assert use.a_week == pytest.approx(140)
    assert use.shape == 4
    mixed = estimate_use([], said=10.0, used_up=UsedUp(4, 800, 40))
    assert 70 < mixed.a_week < 140


def test_at_least_is_the_gamma_of_the_same_mean_and_variance() -> None:
    use = WeekdayUse((10.0,) * 7, 20.0, 0.5)
    # two weeks: (140)^2 / 20 for the level and 14 times (0.5 * 10)^2 for the days
    variance = 140**2 / 20 + 14 * 25
    assert use.at_least(MONDAY, 14) == pytest.approx(gamma_quantile(0.1, 140**2 / variance, 140))
    assert use.at_least(MONDAY, 0) == 0


def test_nights_without_any_use_lower_what_was_said() -> None:
    use = estimate_use([(_day(number), Decimal(0)) for number in range(14)], said=10.0)
    assert use.a_week < 35


def test_at_least_holds_nine_times_in_ten() -> None:
    source = random.Random(5)

    def demand(day: date) -> float:
        return max(0.0, source.gauss(BUSY[day.weekday()], 0.4 * BUSY[day.weekday()]))

    ahead, reached, held = 21, [], []
    for _ in range(400):
        use = estimate_use([(_day(number), Decimal(demand(_day(number)))) for number in range(28)])
        reached.append(
            sum(demand(_day(28 + number)) for number in range(ahead)) >= use.at_least(_day(28), ahead)
        )
        held.append(use.a_day.contains(sum(BUSY) / 7))
    # The assumed spread of single days is wider than theirs, so both err on the careful side.
    assert 0.88 < sum(reached) / len(reached) < 0.98
    assert 0.88 < sum(held) / len(held) < 0.995


@given(
    st.lists(st.integers(0, 60).map(Decimal), max_size=40),
    st.none() | st.floats(0.1, 100),
    st.none() | st.builds(UsedUp, st.integers(1, 9), st.floats(1, 5000), st.floats(1, 200)),
)
def test_no_estimate_is_without_an_interval(
    amounts: list[Decimal], said: float | None, used_up: UsedUp | None
) -> None:
    days = [(_day(number), amount) for number, amount in enumerate(amounts)]
    if said is None and used_up is None and not any(amounts):
        with pytest.raises(NoUseError):
            estimate_use(days)
        return
    use = estimate_use(days, said=said, used_up=used_up)
    assert use.a_day.low < use.a_day.high
    assert 0 <= use.at_least(MONDAY, 28) <= use.likely(MONDAY, 28) * (1 + 1e-9)


def test_nothing_used_or_impossible_is_refused() -> None:
    with pytest.raises(NoUseError):
        estimate_use([])
    with pytest.raises(NoUseError):
        estimate_use([(MONDAY, Decimal(0))])
    with pytest.raises(OutOfRangeError):
        estimate_use([(MONDAY, Decimal(-1))])
    with pytest.raises(OutOfRangeError):
        gamma_quantile(1, 2)
    with pytest.raises(OutOfRangeError):
        gamma_quantile(0.5, 0)
