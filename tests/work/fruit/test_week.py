"""Tests of the sums of waste: prices that were missing, undone lines, and the period before."""

from __future__ import annotations

from datetime import timedelta
from decimal import Decimal
from fractions import Fraction

from bot.trade.fruit.balance import FEWEST_DAYS
from bot.work.fruit import week
from bot.work.fruit.week import WasteSummary
from tests.house import House
from tests.work.acting import acting


def _numbers(*values: float | Decimal | Fraction) -> list[float]:
    return [float(one) for one in values]


def _week(house: House, weeks_ago: int = 0) -> WasteSummary:
    with acting(house) as context:
        return week.this_week(context, weeks_ago)


def test_lines_without_a_price_are_counted_and_an_undone_one_is_not(house: House) -> None:
    ana = house.open_bar()
    ana.says("waste 3 limes mouldy")
    ana.says("waste 2 limes mouldy")
    assert [one.unpriced for one in _week(house).fruit] == [2]
    ana.says("undo")
    (lime,) = _week(house).fruit
    assert _numbers(lime.count, lime.unpriced, lime.cost) == [3, 1, 0]
    ana.says("price limes 0.20 each")
    ana.says("waste 5 limes dry")
    summary = _week(house)
    (lime,) = summary.fruit
    assert _numbers(lime.count, lime.unpriced, lime.cost) == [8, 1, 1]
    assert _numbers(*lime.uncounted) == [3, 0, 0]
    assert {reason: _numbers(part.count, part.unpriced) for reason, part in summary.reasons} == {
        "mouldy": [3, 1],
        "dried out": [5, 0],
    }
    assert summary.cost == Decimal("1.00")


def test_a_fruit_that_is_all_undone_is_not_listed(house: House) -> None:
    ana = house.open_bar()
    ana.says("waste 3 limes mouldy")
    ana.says("undo")
    assert _week(house).fruit == ()
    assert _week(house).reasons == ()


def test_a_running_week_is_compared_with_as_many_days_of_the_last(house: House) -> None:
    ana = house.open_bar()  # a Wednesday
    ana.says("price limes 1 each")
    house.clock.turn(days=-9)  # Monday of the week before
    for _day in range(7):
        ana.says("waste 1 lime mouldy")
        house.clock.turn(days=1)
    house.clock.turn(days=2)
    before_anything = _week(house)
    assert _numbers(before_anything.days_so_far, before_anything.before) == [2, 2]
    ana.says("waste 4 limes mouldy")
    running = _week(house)
    assert _numbers(running.days_so_far, running.before, running.cost) == [3, 3, 4]
    assert running.before_last - running.before_first == timedelta(days=2)
    assert not running.comparable
    whole = _week(house, weeks_ago=1)
    assert _numbers(whole.days_so_far, whole.cost, whole.before, whole.anything_before) == [7, 7, 0, 0]


def test_a_month_is_compared_with_the_month_before(house: House) -> None:
    ana = house.open_bar()
    ana.says("price limes 1 each")
    house.clock.turn(days=-31)  # 25 October
    ana.says("waste 2 limes mouldy")
    house.clock.turn(days=7)  # 1 November
    ana.says("waste 3 limes mouldy")
    with acting(house) as context:
        november = week.month(context, 2026, 11)
        october = week.month(context, 2026, 10)
    assert _numbers(november.first.day, november.last.day, november.cost) == [1, 30, 3]
    assert (november.before_first.month, november.before_first.day) == (10, 1)
    assert _numbers(october.first.day, october.last.day, october.cost) == [1, 31, 2]
    assert october.before_first.month == 9
    with acting(house) as context:
        assert week.this_month(context).first.month == 11
        assert week.this_month(context, 2).first.month == 9


def test_two_periods_compare_from_seven_nights_since_the_first_waste_on(house: House) -> None:
    ana = house.open_bar()
    house.clock.turn(days=-9)
    ana.says("waste 1 lime mouldy")  # Monday of last week
    house.clock.turn(days=13)  # Sunday of this week
    ana.says("waste 1 lime mouldy")
    assert FEWEST_DAYS == 7
    assert _week(house).comparable
    house.clock.turn(days=-13)
    ana.says("waste 1 lime mouldy")
    ana.says("undo")


def test_waste_is_shared_by_shift_and_fruit_and_the_dearest_comes_first(house: House) -> None:
    ana = house.open_bar()
    ana.says("price limes 0.20 each")
    ana.says("price oranges 0.50 each")
    ana.says("waste 5 limes mouldy")
    ana.says("waste 5 oranges dry")
    summary = _week(house)
    assert [(one.name, one.cost) for one in summary.fruit] == [
        ("orange", Decimal("2.50")),
        ("lime", Decimal("1.00")),
    ]
    assert [reason for reason, _part in summary.reasons] == ["dried out", "mouldy"]
    assert summary.early.cost + summary.late.cost == Decimal("3.50")


def test_the_costs_by_week_stand_under_their_own_week(house: House) -> None:
    ana = house.open_bar()
    ana.says("price limes 1 each")
    ana.says("waste 2 limes mouldy")
    house.clock.turn(days=-7)
    ana.says("waste 3 limes mouldy")
    house.clock.turn(days=7)
    with acting(house) as context:
        costs = week.by_week(context, context.today, weeks=3)
    assert {name: _numbers(*row) for name, row in costs.fruit.items()} == {"lime": [0, 3, 2]}
    assert [day.isoformat() for day in costs.weeks] == ["2026-11-09", "2026-11-16", "2026-11-23"]


def test_the_share_wasted_is_of_what_was_bought(house: House) -> None:
    ana = house.open_bar()
    ana.says("bought 20 limes 4")
    ana.says("waste 5 limes mouldy")
    (lime,) = _week(house).fruit
    assert lime.share is not None
    assert float(lime.share) == 0.25
    assert _week(house).bought == 4
