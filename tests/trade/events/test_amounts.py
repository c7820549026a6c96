"""Tests of the amounts for an event."""

from __future__ import annotations

import math

import pytest

from bot.trade.events.amounts import learned_need


def test_one_event_keeps_the_assumed_spread_widened_for_one_event() -> None:
    # By hand: t(0.9; 4) = 1.5332, sqrt(ln(1 + 0.1^2)) = 0.099751, sqrt(1 + 1/1) = 1.4142.
    need = learned_need(600.0, False, [0.2])
    assert need.likely_ml == pytest.approx(120.0)
    assert need.enough_ml == pytest.approx(120.0 * math.exp(1.5332 * 0.099751 * 1.41421), rel=1e-4)


def test_equal_events_still_leave_a_margin_and_more_of_them_a_smaller_one() -> None:
    margins = [learned_need(100.0, False, [0.2] * count).margin for count in (1, 2, 5, 20)]
    assert margins == sorted(margins, reverse=True)
    assert margins[-1] > 0.05


def test_events_that_differ_widen_the_margin() -> None:
    assert learned_need(100.0, False, [0.1, 0.3]).margin > learned_need(100.0, False, [0.19, 0.21]).margin


@pytest.mark.parametrize("times", [0.1, 10.0])
def test_the_margin_does_not_depend_on_how_much_is_used(times: float) -> None:
    used = [0.1, 0.15, 0.2]
    margin = learned_need(100.0, True, used).margin
    assert learned_need(100.0, True, [times * one for one in used]).margin == pytest.approx(margin)


def test_the_likely_amount_is_the_geometric_mean() -> None:
    assert learned_need(100.0, False, [0.1, 0.4]).likely_ml == pytest.approx(20.0)
