"""Tests of the plan before a switch, and of the nights that would show a drop."""

from __future__ import annotations

from fractions import Fraction

import pytest

from bot.trade.errors import OutOfRangeError
from bot.trade.numbers.uncertainty import Estimate
from bot.trade.savings.before_after import FEWEST_NIGHTS
from bot.trade.savings.cash import weekly_saving
from bot.trade.savings.deciding import nights_to_show, plan

FIVE = Estimate.exactly(5)


def test_the_plain_case_by_hand() -> None:
    found = plan(Fraction(1, 2), FIVE, Fraction(300), Fraction(20))
    assert found.fresh == 40  # 60 garnished and 20 thrown out, at 0.50
    assert found.most_a_drink == pytest.approx(40 / 300)
    assert 40 / 4 < found.spray.low < 40 / 2 < found.spray.high < 40
    assert 0 < found.saved.low < 40 / 2 < found.saved.high
    # the spray costs a quarter to three quarters of 40; drinks are 20 % more or fewer, at half of 0.10 each
    assert [name for name, _width in found.matters[:2]] == ["spray_share", "drinks"]
    assert [width for _name, width in found.matters[:2]] == pytest.approx([20, 6])


def test_a_small_drop_takes_more_nights_and_a_great_one_never_too_few() -> None:
    found = [nights_to_show(3, drop) for drop in (0.2, 0.4, 0.6, 0.8)]
    assert found == sorted(found, reverse=True)
    assert nights_to_show(500, 0.9) == FEWEST_NIGHTS
    assert nights_to_show(3, 0.5, scatter=4) > nights_to_show(3, 0.5)
    assert nights_to_show(3, 0.5, beside_others=False) < nights_to_show(3, 0.5)


def test_a_weeks_saving_has_a_range_only_with_two_weeks_on_each_side() -> None:
    assert weekly_saving([10.0], [4.0, 5.0]) == (5.5, None)
    saved, ends = weekly_saving([10.0, 12.0, 11.0], [4.0, 5.0, 3.0])
    assert saved == 7
    assert ends is not None
    assert ends.low < 7 < ends.high


@pytest.mark.parametrize(("pieces", "drop"), [(0, 0.5), (3, 0), (3, 1)])
def test_impossible_questions_are_refused(pieces: float, drop: float) -> None:
    with pytest.raises(OutOfRangeError):
        nights_to_show(pieces, drop)


@pytest.mark.parametrize(("price", "drinks", "wasted"), [(0, 300, 20), (1, 0, 20), (1, 300, -1)])
def test_impossible_plans_are_refused(price: int, drinks: int, wasted: int) -> None:
    with pytest.raises(OutOfRangeError):
        plan(Fraction(price), FIVE, Fraction(drinks), Fraction(wasted))
