"""Tests of the newsvendor's par: exact fractiles, correct intervals, and days when fruit ran out."""

from __future__ import annotations

import random
from datetime import date, timedelta
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from bot.trade.errors import OutOfRangeError
from bot.trade.planning.fruit_par import (
    Backing,
    DemandDay,
    NoDemandError,
    ParMethod,
    backing,
    critical_fractile,
    discrete_par,
    fractile_from_prices,
    fruit_overage,
    normal_par,
    normal_par_interval,
    par,
    par_by_weekday,
    poisson_par,
    uniform_par,
)

FRIDAY = date(2026, 1, 2)
F = Fraction


def _fridays(wanted: list[int], sold_out: int | None = None) -> list[DemandDay]:
    return [
        DemandDay(FRIDAY + timedelta(weeks=number), count, number == sold_out)
        for number, count in enumerate(wanted)
    ]


def test_the_fractile_is_exact() -> None:
    assert critical_fractile(Decimal("0.30"), Decimal("0.10")) == F(3, 4)
    assert fractile_from_prices(Decimal(7), Decimal(5)) == F(2, 7)


def test_fruit_that_keeps_till_tomorrow_costs_less_to_have_too_many() -> None:
    assert fruit_overage(Decimal("0.40"), Decimal("0.25"), Decimal("0.10")) == Decimal("0.075")
    fresh = critical_fractile(Decimal("0.30"), fruit_overage(Decimal("0.40"), Decimal(1)))
    keeps = critical_fractile(Decimal("0.30"), fruit_overage(Decimal("0.40"), Decimal("0.25")))
    assert fresh < keeps


def test_an_exact_tie_reaches_the_fractile() -> None:
    # 4 of 6 weeks are at most 14, and the fractile is 6/9: floating point could miss it
    assert (
        discrete_par({10: 1, 12: 1, 14: 2, 16: 1, 20: 1}, fractile_from_prices(*map(Decimal, (10, 4, 1))))
        == 14
    )


@given(
    st.dictionaries(st.integers(0, 50), st.integers(1, 9), min_size=1),
    st.integers(1, 99).map(lambda n: F(n, 100)),
)
def test_the_discrete_par_costs_least(weights: dict[int, int], fractile: Fraction) -> None:
    under, over = fractile, 1 - fractile

    def cost(quantity: int) -> Fraction:
        return sum(
            (
                count * (under * max(demand - quantity, 0) + over * max(quantity - demand, 0))
                for demand, count in weights.items()
            ),
            F(0),
        )

    best = discrete_par(weights, fractile)
    assert cost(best) == min(cost(quantity) for quantity in range(max(weights) + 2))


@given(st.floats(0.05, 600), st.integers(1, 99).map(lambda n: F(n, 100)))
def test_the_poisson_par_is_scipys(mean: float, fractile: Fraction) -> None:
    ours = poisson_par(mean, fractile)
    share = float(fractile)
    assert stats.poisson.cdf(ours, mean) >= share - 1e-9
    assert ours == 0 or stats.poisson.cdf(ours - 1, mean) <= share + 1e-9


def test_few_days_answer_with_one_of_themselves() -> None:
    result = par(_fridays([12, 18, 15, 22]), F(3, 4))
    assert result.method is ParMethod.EMPIRICAL
    assert result.quantity == 18
    assert result.backing is Backing.SOME_WEEKS
    # the largest of four is below the three-quarter point in about a third of all cases
    assert result.high is None
    assert result.low == 15


def test_the_interval_between_days_by_hand() -> None:
    # Of nine days, at most 2 are below the median with probability 0.0898 and at most 6 with 0.9102.
    result = par(_fridays([10, 20, 30, 40, 50, 60, 70, 80, 90]), F(1, 2))
    assert (result.low, result.quantity, result.high) == (30, 50, 70)
    assert result.coverage == pytest.approx(0.8203125)


def test_the_normal_interval_by_hand() -> None:
    wanted = [8.0, 12.0, 10.0, 14.0, 6.0]
    low, high = normal_par_interval(wanted, F(9, 10))
    z, deviation = stats.norm.ppf(0.9), 10**0.5
    half = stats.t.ppf(0.9, 4) * deviation * (1 / 5 + z * z / 8) ** 0.5
    assert low == pytest.approx(10 + z * deviation - half)
    assert high == pytest.approx(10 + z * deviation + half)


def test_counts_that_spread_like_poisson_are_taken_as_such() -> None:
    wanted = [int(n) for n in stats.poisson.ppf([(k + 0.5) / 20 for k in range(20)], 9)]
    result = par(_fridays(wanted), F(4, 5))
    assert result.method is ParMethod.POISSON
    assert result.quantity == stats.poisson.ppf(0.8, sum(wanted) / 20)
    assert result.low is not None
    assert result.high is not None
    assert result.low <= result.quantity <= result.high


def test_wild_counts_are_taken_as_normal() -> None:
    wanted = [5, 40, 12, 60, 8, 33, 21, 50, 17, 28, 45, 9]
    result = par(_fridays(wanted), F(4, 5))
    assert result.method is ParMethod.NORMAL
    assert result.quantity == 43
    assert result.backing is Backing.MANY_WEEKS


def test_like_days_stay_empirical_however_many() -> None:
    result = par(_fridays([10] * 20), F(4, 5))
    assert result.quantity == result.low == result.high == 10


def test_running_out_at_or_below_the_par_leaves_it_open() -> None:
    assert par(_fridays([12, 18, 15, 22], sold_out=0), F(3, 4)).at_least
    assert not par(_fridays([12, 18, 15, 22], sold_out=3), F(3, 4)).at_least


@given(st.lists(st.integers(0, 100), min_size=1, max_size=30), st.integers(5, 95).map(lambda n: F(n, 100)))
def test_the_par_lies_in_its_interval(wanted: list[int], fractile: Fraction) -> None:
    result = par(_fridays(wanted), fractile)
    assert result.quantity >= 0
    assert result.low is None or result.low <= result.quantity
    assert result.high is None or result.high >= result.quantity
    assert 0 <= result.coverage <= 1
    assert result.days == len(wanted)


@pytest.mark.parametrize("count", [6, 9, 11, 15, 30])
def test_intervals_cover_four_times_in_five(count: int) -> None:
    source = random.Random(11)
    fractile, truth = F(7, 10), stats.norm.ppf(0.7, 50, 12)
    held = []
    for _ in range(600):
        result = par(_fridays([max(0, round(source.gauss(50, 12))) for _ in range(count)]), fractile)
        held.append(
            (result.low is None or result.low <= truth + 0.5)
            and (result.high is None or result.high >= truth - 0.5)
        )
    assert sum(held) / len(held) > 0.76


@pytest.mark.parametrize("count", [12, 20, 52])
@pytest.mark.parametrize("fractile", [F(1, 2), F(7, 10), F(9, 10)])
def test_the_normal_interval_is_near_the_exact_one(count: int, fractile: Fraction) -> None:
    wanted = [50 + 12 * float(stats.norm.ppf((k + 0.5) / count)) for k in range(count)]
    low, high = normal_par_interval(wanted, fractile)
    mean, deviation = sum(wanted) / count, stats.tstd(wanted)
    shift = stats.norm.ppf(float(fractile)) * count**0.5
    exact = [mean + deviation * stats.nct.ppf(end, count - 1, shift) / count**0.5 for end in (0.1, 0.9)]
    width = exact[1] - exact[0]
    assert abs(low - exact[0]) < 0.15 * width
    assert abs(high - exact[1]) < 0.15 * width
    assert (high - low) == pytest.approx(width, rel=0.1)


def test_weekdays_are_kept_apart() -> None:
    days = _fridays([10, 12, 14]) + [
        DemandDay(FRIDAY + timedelta(days=1, weeks=number), 30) for number in range(3)
    ]
    found = par_by_weekday(days, F(1, 2))
    assert {number: one.quantity for number, one in found.items()} == {4: 12, 5: 30}


def test_plain_distributions() -> None:
    assert normal_par(10, 20, F(1, 100)) == 0
    assert normal_par(10, 0.5, F(1, 2)) == pytest.approx(10)
    assert uniform_par(50, 80, F(2, 7)) == pytest.approx(58.571428)
    assert discrete_par({3: 1}, F(1)) == 3


@pytest.mark.parametrize(
    "ask",
    [
        lambda: critical_fractile(Decimal(0), Decimal(0)),
        lambda: critical_fractile(Decimal(-1), Decimal(1)),
        lambda: fractile_from_prices(Decimal(3), Decimal(5)),
        lambda: fruit_overage(Decimal(1), Decimal(2)),
        lambda: fruit_overage(Decimal(1), Decimal(1), Decimal(2)),
        lambda: normal_par(1, 0, F(1, 2)),
        lambda: normal_par(1, 1, F(1)),
        lambda: uniform_par(2, 1, F(1, 2)),
        lambda: poisson_par(-1, F(1, 2)),
        lambda: discrete_par({1: 1}, F(2)),
        lambda: par(_fridays([-1]), F(1, 2)),
    ],
)
def test_impossible_quantities_are_refused(ask: object) -> None:
    assert callable(ask)
    with pytest.raises(OutOfRangeError):
        ask()


def test_no_days_have_no_par() -> None:
    with pytest.raises(NoDemandError):
        par([], F(1, 2))
    with pytest.raises(NoDemandError):
        par_by_weekday([], F(1, 2))
    with pytest.raises(NoDemandError):
        discrete_par({}, F(1, 2))


def test_backing_by_weeks() -> None:
    assert [backing(weeks) for weeks in (1, 3, 4, 11, 12)] == [
        Backing.FEW_WEEKS,
        Backing.FEW_WEEKS,
        Backing.SOME_WEEKS,
        Backing.SOME_WEEKS,
        Backing.MANY_WEEKS,
    ]
