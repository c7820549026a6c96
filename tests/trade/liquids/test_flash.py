from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.errors import OutOfRangeError
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.liquids.flash import FlammableCategory, category_of, flash_point, flash_point_of
from bot.trade.liquids.strength import Component


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


@given(st.floats(40, 100))
def test_from_forty_percent_on_it_flashes_in_a_warm_room(strength: float) -> None:
    band = flash_point(strength).band_c
    assert band is not None
    assert band.high < 28.1


def test_the_stricter_end_decides_the_category() -> None:
    middling = flash_point(60.0)
    assert middling.band_c is not None
    assert middling.band_c.high > 23.0
    assert middling.category is FlammableCategory.HIGHLY_FLAMMABLE


def _mix(oil: float, glycol: float, spirit: float, percent: float = 96.0) -> list[Component]:
    return [
        Component(IngredientKind.CITRUS_OIL, "orange oil", oil),
        Component(IngredientKind.PROPYLENE_GLYCOL, "glycol", glycol),
        Component(IngredientKind.SPIRIT, "spirit", spirit, percent),
    ]


@given(st.floats(0, 3), st.floats(5, 60), st.floats(20, 90), st.floats(85, 95), st.floats(0.5, 5))
def test_stronger_spirit_in_a_mix_never_lights_later(
    oil: float, glycol: float, spirit: float, percent: float, more: float
) -> None:
    weak = flash_point_of(_mix(oil, glycol, spirit, percent))
    strong = flash_point_of(_mix(oil, glycol, spirit, percent + more))
    assert strong.low_c <= weak.low_c + 0.01


def test_a_mix_lights_by_its_vapours_and_not_by_its_strength() -> None:
    # The same strength in water and in glycol: by moles glycol dilutes ethanol far less.
    mix = flash_point_of(_mix(8, 30, 40))
    assert mix.low_c < 18.5
    assert mix.category is FlammableCategory.HIGHLY_FLAMMABLE
    assert flash_point(49.2).low_c > 23.0


@pytest.mark.parametrize(
    ("oil", "percent", "alone"),
    # Ethanol of 40 % alone 26 °C, of 96 % 17 °C (handbook table, read), limonene alone 43 to 48 °C (NFPA 497,
    # DIPPR). In two layers each counts as pure at most: limonene at 20 °C adds a fifth of what lights.
    [(1.0, 40.0, 26.0), (5.0, 40.0, 26.0), (10.0, 40.0, 26.0), (40.0, 40.0, 26.0), (10.0, 96.0, 17.0)],
)
def test_oil_brings_the_flash_point_of_a_spirit_down_by_a_few_degrees_at_most(
    oil: float, percent: float, alone: float
) -> None:
    spirit = Component(IngredientKind.SPIRIT, "vodka", 200.0, percent)
    mix = flash_point_of([Component(IngredientKind.CITRUS_OIL, "bergamot oil", oil), spirit])
    assert alone - 6.0 < mix.low_c < alone


def test_spirit_and_water_alone_go_by_their_strength() -> None:
    water = Component(IngredientKind.WATER, "water", 500.0)
    whole = flash_point_of([Component(IngredientKind.SPIRIT, "spirit", 500.0, 96.0), water])
    assert whole.low_c == pytest.approx(flash_point(49.5).low_c, abs=0.05)


def test_juice_and_liqueur_count_by_their_water() -> None:
    gin = Component(IngredientKind.SPIRIT, "gin", 50.0, 40.0)
    juice = Component(IngredientKind.JUICE, "lime juice", 200.0)
    assert flash_point_of([gin, juice]).band_c is None
    liqueur = Component(IngredientKind.OTHER, "triple sec", 50.0, 40.0)
    assert flash_point_of([liqueur]) == flash_point(40.0)


def test_oil_in_a_carrier_alone_is_not_flammable_by_this_estimate() -> None:
    oil = Component(IngredientKind.CITRUS_OIL, "orange oil", 10.0)
    carrier = Component(IngredientKind.CARRIER_OIL, "MCT oil", 90.0)
    assert flash_point_of([oil, carrier]).category is FlammableCategory.BELOW_TABLE
    assert 44.0 < flash_point_of([oil]).low_c < 46.0


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
