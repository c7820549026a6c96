"""Tests of the comparison of a sprayed fruit with others, before and since the spray."""

from __future__ import annotations

import pytest

from bot.trade.errors import OutOfRangeError
from bot.trade.savings.before_after import FEWEST_NIGHTS, Period, Verdict, effect

NIGHTS = (24, 24)


def _weeks(*pieces: float, exposure: float = 6) -> Period:
    return Period(pieces, (exposure,) * len(pieces))


FALL = (_weeks(40, 44, 38, 42), _weeks(14, 11, 13, 12))


def test_a_fall_that_the_other_fruit_shares_shows_nothing() -> None:
    alone = effect(*FALL, NIGHTS)
    assert (alone.verdict, alone.controlled) == (Verdict.LESS, False)
    shared = effect(*FALL, NIGHTS, (_weeks(60, 63, 59, 62), _weeks(19, 18, 20, 17)))
    assert (shared.verdict, shared.controlled) == (Verdict.CHANCE, True)
    beside = effect(*FALL, NIGHTS, (_weeks(60, 63, 59, 62), _weeks(61, 60, 58, 66)))
    assert beside.verdict is Verdict.LESS
    assert beside.ratio == pytest.approx((50.5 / 164.5) / (245.5 / 244.5))


def test_half_the_drinks_explain_half_the_waste() -> None:
    before, after = _weeks(40, 44, 38, 42, exposure=300), _weeks(20, 22, 19, 21, exposure=150)
    found = effect(before, after, NIGHTS)
    assert found.ratio == pytest.approx(1, abs=0.01)
    assert found.verdict is Verdict.CHANCE


@pytest.mark.parametrize(
    ("before", "after", "nights"),
    [
        (*FALL, (FEWEST_NIGHTS - 1, 24)),
        (*FALL, (24, FEWEST_NIGHTS - 1)),
        (FALL[0], _weeks(3), (24, 24)),
        (_weeks(0, 0, 0), FALL[1], NIGHTS),
        (Period((), ()), FALL[1], NIGHTS),
    ],
)
def test_no_verdict_from_too_little(before: Period, after: Period, nights: tuple[int, int]) -> None:
    found = effect(before, after, nights)
    assert (found.verdict, found.ratio, found.interval) == (Verdict.FEW_NIGHTS, None, None)


def test_scattered_weeks_widen_the_interval() -> None:
    steady = effect(*FALL, NIGHTS).interval
    wild = effect(_weeks(10, 90, 4, 60), _weeks(2, 30, 1, 17), NIGHTS).interval
    assert steady is not None
    assert wild is not None
    assert wild.high / wild.low > 3 * steady.high / steady.low


def test_a_fall_to_nothing_has_an_interval() -> None:
    found = effect(FALL[0], _weeks(0, 0, 0, 0), NIGHTS)
    assert found.verdict is Verdict.LESS
    assert found.ratio is not None
    assert found.ratio < 0.01


def test_impossible_weeks_are_refused() -> None:
    for pieces, exposure in (((-1.0,), (6.0,)), ((1.0,), (0.0,)), ((1.0, 2.0), (6.0,))):
        with pytest.raises(OutOfRangeError):
            Period(pieces, exposure)
