"""Tests of the triangle test: balanced glasses, and an answer that comes in time."""

from __future__ import annotations

from collections import Counter

import pytest

from bot.trade.errors import OutOfRangeError
from bot.trade.trials.triangle import (
    DISCRIMINATORS,
    FALSE_ALARM,
    MISS,
    MOST_TASTINGS,
    Answer,
    critical_number,
    judge,
    rates,
    serving,
)


@pytest.mark.parametrize("seed", range(5))
def test_each_order_comes_once_in_six_servings(seed: int) -> None:
    for block in range(3):
        found = [serving(seed, 6 * block + number) for number in range(6)]
        assert len({one.contents for one in found}) == 6
        assert Counter(one.odd for one in found) == {0: 2, 1: 2, 2: 2}
        assert sum(one.contents[one.odd] == "S" for one in found) == 3


def test_the_order_of_glasses_differs_between_tests() -> None:
    first = {tuple(serving(seed, number).contents for number in range(6)) for seed in range(20)}
    assert len(first) > 10


def test_codes_differ_and_tell_nothing() -> None:
    found = [serving(4, number) for number in range(60)]
    assert all(len(set(one.codes)) == 3 and min(one.codes) > 100 for one in found)
    lowest = sum(one.codes.index(min(one.codes)) == one.odd for one in found)
    assert 8 <= lowest <= 32
    assert serving(4, 7) == serving(4, 7) != serving(5, 7)


def test_five_right_ahead_say_different_and_four_wrong_alike() -> None:
    assert judge([True] * 4) is Answer.OPEN
    assert judge([True] * 5) is Answer.DIFFERENT
    assert judge([False] * 3) is Answer.OPEN
    assert judge([False] * 4) is Answer.ALIKE
    # What comes after the answer changes nothing.
    assert judge([*[False] * 4, *[True] * 20]) is Answer.ALIKE


def test_it_ends_by_the_critical_number_at_the_latest() -> None:
    undecided = [True, False] * (MOST_TASTINGS // 2)
    assert judge(undecided[:-1]) is Answer.OPEN
    assert judge(undecided) is Answer.DIFFERENT  # 15 of 30
    fewer = [False, True] * (MOST_TASTINGS // 2 - 1) + [False, False]
    assert judge(fewer) is Answer.ALIKE


def test_both_error_rates_hold_their_aim() -> None:
    assert rates(0).different <= FALSE_ALARM
    assert 1 - rates(DISCRIMINATORS).different <= MISS
    assert DISCRIMINATORS == 0.5  # the share that the bot states: half the tasters
    assert rates(1).tastings == 5


def test_too_few_tastings_are_never_enough() -> None:
    assert critical_number(2) == 3
    with pytest.raises(OutOfRangeError):
        critical_number(0)
    with pytest.raises(OutOfRangeError):
        rates(1.5)
