from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.errors import OutOfRangeError
from bot.trade.liquids.flash import (
    ROOM_TEMPERATURE_STRENGTH_PERCENT,
    FlammableCategory,
    category_of,
    flash_point,
)


def test_a_band_holds_all_three_readings_at_half_strength() -> None:
    # 50 % vol is 42.4 % mass: table 24, table by mass 26 - 2 x 0.2426 = 25.5, computed 25.3.
    band = flash_point(50.0).band_c
    assert band is not None
    assert band.low == pytest.approx(24.0)
    assert band.high == pytest.approx(25.515, abs=0.01)


def test_between_the_points_of_the_table() -> None:
    band = flash_point(15.0).band_c
    assert band is not None
    assert band.contains(42.5)


@given(st.floats(10, 99), st.floats(0.01, 1))
def test_a_stronger_spirit_never_flashes_later(strength: float, more: float) -> None:
    weak, strong = flash_point(strength).band_c, flash_point(strength + more).band_c
    assert weak is not None
    assert strong is not None
    assert strong.low <= weak.low + 1e-9
    assert strong.high <= weak.high + 1e-9


@given(st.floats(ROOM_TEMPERATURE_STRENGTH_PERCENT, 100))
def test_from_forty_percent_on_it_flashes_in_a_warm_room(strength: float) -> None:
    band = flash_point(strength).band_c
    assert band is not None
    assert band.high < 28.1


def test_categories_may_differ_between_the_ends() -> None:
    middling = flash_point(60.0)
    assert middling.category is FlammableCategory.HIGHLY_FLAMMABLE
    assert middling.category_high is FlammableCategory.FLAMMABLE
    assert flash_point(95.0).category_high is FlammableCategory.HIGHLY_FLAMMABLE


def test_weaker_than_the_tables_gives_no_band() -> None:
    weak = flash_point(9.9)
    assert weak.band_c is None
    assert weak.category is FlammableCategory.BELOW_TABLE


@pytest.mark.parametrize(
    ("celsius", "category"),
    [
        (22.99, FlammableCategory.HIGHLY_FLAMMABLE),
        (23.0, FlammableCategory.FLAMMABLE),
        (60.0, FlammableCategory.FLAMMABLE),
        (60.1, FlammableCategory.BELOW_TABLE),
    ],
)
def test_category_lines(celsius: float, category: FlammableCategory) -> None:
    assert category_of(celsius) is category


@pytest.mark.parametrize("strength", [-0.1, 100.1, math.nan])
def test_refuses_a_strength_that_cannot_be(strength: float) -> None:
    with pytest.raises(OutOfRangeError):
        flash_point(strength)
