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
COSTED = Estimate.between(Fraction(7, 1000), Fraction(16, 1000))


def test_the_plain_case_by_hand() -> None:
    found = plan(Fraction(1, 2), FIVE, Fraction(300), Fraction(20))
    assert found.fresh == 40  # 60 garnished and 20 thrown out, at 0.50
    assert found.most_a_drink == pytest.approx(40 / 300)
    # a drink's spray costs a twentieth to a half of a garnish at 0.10, for about 300 drinks
    assert 30 / 20 < found.spray.low < 30 / 6 < found.spray.high < 30 / 2 * 1.2
    assert 0 < found.saved.low < 40 - 30 / 6 < found.saved.high
    # 300 drinks at 0.05 less 300 at 0.005; half the 20 thrown out at 0.50; 60 drinks at 0.10 less a sixth
    assert found.matters[0][0] == "spray"
    assert dict(found.matters) == pytest.approx({"spray": 13.5, "wasted": 10, "drinks": 10})


def test_a_known_spray_costs_what_its_drinks_cost_and_is_no_unknown() -> None:
    found = plan(Fraction(11, 10), Estimate.exactly(6), Fraction(120), Fraction(5), COSTED)
    assert float(found.fresh) == pytest.approx(27.50)
    # 120 drinks, about a fifth more or fewer, at 0.007 to 0.016
    assert 0.84 * 0.8 < found.spray.low < found.spray.high < 1.92 * 1.2
    assert found.saved.low > 27.50 / 2
    assert "spray" not in [name for name, _width in found.matters]


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
