"""Tests of used, lost and wasted fruit."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.errors import OutOfRangeError
from bot.trade.fruit.balance import fruit_use, waste_share

amounts = st.decimals(min_value=0, max_value=500, places=1)


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


@pytest.mark.parametrize("place", range(5))
def test_negative_amounts_are_refused(place: int) -> None:
    given = [Decimal(1)] * 5
    given[place] = Decimal(-1)
    with pytest.raises(OutOfRangeError):
        fruit_use(*given)


def test_negative_waste_is_refused() -> None:
    with pytest.raises(OutOfRangeError):
        waste_share(Decimal(-1), Decimal(1))
