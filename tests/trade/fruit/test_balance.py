"""Tests of used, lost and wasted fruit, and of reliable differences between periods."""

from __future__ import annotations

from datetime import date, timedelta
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from bot.trade.errors import OutOfRangeError
from bot.trade.fruit.balance import (
    FEWEST_DAYS,
    NoDaysError,
    Sureness,
    by_day,
    compare,
    fruit_use,
    waste_share,
)

MONDAY = date(2026, 7, 20)
amounts = st.decimals(min_value=0, max_value=500, places=1)
weeks = st.lists(st.integers(0, 40).map(Decimal), min_size=2, max_size=30)


def test_used_is_bought_and_before_less_waste_and_what_is_left() -> None:
    use = fruit_use(Decimal(160), Decimal(12), Decimal(9), Decimal(31))
    assert use.used == 132
    assert use.unexplained is None
    assert use.surplus == 0


def test_what_the_log_does_not_explain_is_shown_as_such() -> None:
    use = fruit_use(Decimal(160), Decimal(12), Decimal(9), Decimal(31), accounted=Decimal(120))
    assert use.unexplained == 12


def test_more_than_there_can_be_is_a_surplus_not_a_negative_loss() -> None:
    miscount = fruit_use(Decimal(10), Decimal(0), Decimal(0), Decimal(14))
    assert (miscount.used, miscount.surplus) == (Decimal(0), Decimal(4))
    overlogged = fruit_use(Decimal(10), Decimal(0), Decimal(0), Decimal(4), accounted=Decimal(9))
    assert (overlogged.unexplained, overlogged.surplus) == (Decimal(0), Decimal(3))


@given(amounts, amounts, amounts, amounts, st.none() | amounts)
def test_every_fruit_is_somewhere(
    bought: Decimal, before: Decimal, waste: Decimal, on_hand: Decimal, accounted: Decimal | None
) -> None:
    use = fruit_use(bought, before, waste, on_hand, accounted)
    explained = use.used if accounted is None else accounted + (use.unexplained or 0)
    assert bought + before + use.surplus == waste + on_hand + explained


def test_waste_is_a_share_of_what_was_bought() -> None:
    assert waste_share(Decimal(16), Decimal(80)) == Decimal("0.2")
    assert waste_share(Decimal(3), Decimal(0)) is None


def test_days_without_an_entry_count_as_nothing_and_closed_days_not_at_all() -> None:
    entries = [
        (MONDAY, Decimal(3)),
        (MONDAY, Decimal(1)),
        (MONDAY + timedelta(days=2), Decimal(5)),
        (MONDAY + timedelta(days=9), Decimal(7)),
    ]
    closed = {MONDAY + timedelta(days=1), MONDAY + timedelta(days=2)}
    # the Wednesday is marked as closed, but something was thrown out on it
    assert by_day(entries, MONDAY, MONDAY + timedelta(days=3), closed) == [4, 5, 0]
    with pytest.raises(NoDaysError):
        by_day(entries, MONDAY + timedelta(days=1), MONDAY + timedelta(days=1), closed)


def test_periods_are_compared_by_the_day_whatever_their_length() -> None:
    result = compare([Decimal(4)] * 28, [Decimal(6)] * 14)
    assert result.change_per_day == -2
    assert result.change_share == Decimal(-1) / 3
    assert result.sureness is Sureness.CLEAR


def test_few_days_are_never_called_clear() -> None:
    result = compare([Decimal(0)] * (FEWEST_DAYS - 1), [Decimal(50)] * 40)
    assert result.sureness is Sureness.FEW_DAYS
    assert result.change_share is None
    week = [Decimal(0)] * FEWEST_DAYS
    assert compare(week, [Decimal(50)] * 40).change_share == -1
    assert compare([Decimal(0)] * 40, [Decimal(50)] * (FEWEST_DAYS - 1)).change_share is None


def test_a_difference_within_the_noise_may_be_chance() -> None:
    noisy = [Decimal(number % 7 * 5) for number in range(28)]
    result = compare([amount + 1 for amount in noisy], noisy)
    assert result.sureness is Sureness.MAY_BE_CHANCE
    assert result.change_range is not None
    assert result.change_range.contains(1.0)


def test_a_small_steady_change_is_clear_and_none_is_not() -> None:
    quiet = [Decimal("0.1") * (number % 2) for number in range(20)]
    assert compare([amount + 1 for amount in quiet], quiet).sureness is Sureness.CLEAR
    assert compare([Decimal(3)] * 20, [Decimal(3)] * 20).sureness is Sureness.MAY_BE_CHANCE


def test_nothing_wasted_before_has_no_share() -> None:
    assert compare([Decimal(1)] * 14, [Decimal(0)] * 14).change_share is None
    assert compare([Decimal(1)], [Decimal(2)]).change_range is None


@pytest.mark.filterwarnings("ignore:Precision loss occurred:RuntimeWarning")  # scipy, on constant days
@given(weeks, weeks)
def test_the_range_is_welchs_interval(now: list[Decimal], before: list[Decimal]) -> None:
    result = compare(now, before)
    assert result.change_range is not None
    first, second = [float(x) for x in now], [float(x) for x in before]
    if len(set(first)) == len(set(second)) == 1:
        assert result.change_range.is_exact
        return
    oracle = stats.ttest_ind(first, second, equal_var=False)
    exact = oracle.confidence_interval(0.95)
    # degrees of freedom are rounded down, so ours is slightly wider
    assert result.change_range.low <= exact.low + 1e-9
    assert result.change_range.high >= exact.high - 1e-9
    whole = stats.t.ppf(0.975, max(1, int(oracle.df + 1e-9))) / stats.t.ppf(0.975, oracle.df)
    assert result.change_range.width == pytest.approx((exact.high - exact.low) * whole, rel=1e-6)


@pytest.mark.parametrize("place", range(5))
def test_negative_amounts_are_refused(place: int) -> None:
    given = [Decimal(1)] * 5
    given[place] = Decimal(-1)
    with pytest.raises(OutOfRangeError):
        fruit_use(*given)


def test_empty_periods_and_negative_waste_are_refused() -> None:
    with pytest.raises(NoDaysError):
        compare([], [Decimal(1)])
    with pytest.raises(OutOfRangeError):
        waste_share(Decimal(-1), Decimal(1))
