from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.errors import OutOfRangeError
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.liquids import ethanol
from bot.trade.liquids.densities import Correction, density_of
from bot.trade.liquids.density_table import GLYCEROL_PER_K, PROPYLENE_GLYCOL_PER_K, TABLE
from bot.trade.liquids.sucrose import syrup, syrup_density_g_per_ml
from bot.trade.sources import HowKnown
from tests.outside.checks_density import glycerol_by_library, glycol_by_library

_OIL = IngredientKind.CITRUS_OIL


@pytest.mark.parametrize(
    ("kind", "name", "row"),
    [
        (_OIL, "Sweet orange oil", "sweet orange oil"),
        (_OIL, "bitter orange", "bitter orange oil"),
        (_OIL, "Mandarin orange oil", "mandarin oil"),
        (_OIL, "lemon oil", "lemon oil, cold-pressed"),
        (_OIL, "lemon, distilled", "distilled lemon oil"),
        (_OIL, "distilled lime oil", "distilled lime oil"),
        (_OIL, "key lime", "Mexican lime oil, cold-pressed"),
        (_OIL, "lime", "lime oil, cold-pressed"),
        (_OIL, "grapefruit oil", "grapefruit oil, cold-pressed"),
        (_OIL, "yuzu", "citrus oil of another fruit"),
        (IngredientKind.CARRIER_OIL, "MCT oil", "medium-chain triglycerides"),
        (IngredientKind.CARRIER_OIL, "olive oil", "vegetable oil"),
        (IngredientKind.ACID, "citric acid monohydrate", "citric acid monohydrate"),
        (IngredientKind.ACID, "Citric acid", "citric acid, anhydrous"),
        (IngredientKind.OTHER, "fine salt", "table salt (sodium chloride) crystals"),
    ],
)
def test_the_name_picks_the_row(kind: IngredientKind, name: str, row: str) -> None:
    found = density_of(kind, name)
    assert found is not None
    assert found.name == row


@pytest.mark.parametrize(
    ("kind", "name"),
    [
        (IngredientKind.OTHER, "salt solution"),
        (IngredientKind.OTHER, "cream"),
        (IngredientKind.ACID, "tartaric acid"),
        (IngredientKind.JUICE, "pineapple juice"),
        (IngredientKind.FRUIT, "orange"),
        (IngredientKind.SPIRIT, "vodka"),
        (IngredientKind.OTHER, "syrup 97:1"),
        (IngredientKind.OTHER, "maple syrup"),
    ],
)
def test_what_no_source_covers_has_no_density(kind: IngredientKind, name: str) -> None:
    assert density_of(kind, name) is None


@given(st.floats(min_value=-20, max_value=40))
def test_the_middle_lies_in_the_range_and_warm_is_not_heavier(celsius: float) -> None:
    for entry in TABLE:
        found = density_of(entry.kind, entry.name, None, celsius)
        assert found is not None
        assert found.low <= found.middle <= found.high
        warmer = density_of(entry.kind, entry.name, None, 40.0)
        assert warmer is not None
        assert warmer.middle <= found.middle


def test_every_row_can_be_reached_by_its_own_name() -> None:
    for row in TABLE:
        found = density_of(row.kind, row.name)
        assert found is not None
        assert found.name == row.name
        assert found.source == row.source


def test_the_answer_says_whether_it_was_corrected() -> None:
    lemon_25, lemon_20 = density_of(_OIL, "lemon", None, 25.0), density_of(_OIL, "lemon", None, 20.0)
    carrier = density_of(IngredientKind.CARRIER_OIL, "mct", None, 25.0)
    assert lemon_25 is not None
    assert lemon_20 is not None
    assert carrier is not None
    assert lemon_25.correction is Correction.NOT_NEEDED
    assert lemon_20.correction is Correction.DONE
    assert lemon_20.middle > lemon_25.middle
    assert carrier.correction is Correction.NOT_DONE
    assert lemon_25.low == pytest.approx(0.849 * 0.99704, abs=1e-4)


def test_the_spirit_follows_its_strength_and_temperature() -> None:
    found = density_of(IngredientKind.SPIRIT, "vodka", 40.0, 25.0)
    assert found is not None
    assert found.middle == pytest.approx(0.94467, abs=1e-5)
    assert found.is_exact


def test_the_room_that_grams_take_and_back() -> None:
    found = density_of(IngredientKind.PROPYLENE_GLYCOL)
    assert found is not None
    assert found.volume_ml(found.mass_g(20.0)) == pytest.approx(20.0)
    assert 20.7 < found.mass_g(20.0) < 20.8


def test_only_memory_and_practice_are_left_without_a_date() -> None:
    for row in TABLE:
        assert (row.source.seen is None) == (row.source.how_known in {HowKnown.MEMORY, HowKnown.COMPUTED})


def test_the_expansion_of_the_glycols_is_that_of_the_library() -> None:
    for density, ours in (
        (glycol_by_library, PROPYLENE_GLYCOL_PER_K),
        (glycerol_by_library, GLYCEROL_PER_K),
    ):
        assert (density(20.0) - density(25.0)) / 5.0 == pytest.approx(ours, abs=1e-5)


@given(st.floats(min_value=0, max_value=80), st.floats(min_value=0, max_value=80))
def test_more_sugar_is_heavier(one: float, other: float) -> None:
    low, high = sorted((one, other))
    if high - low > 1e-6:
        assert syrup_density_g_per_ml(low) < syrup_density_g_per_ml(high)


def test_syrup_without_sugar_is_water() -> None:
    assert syrup_density_g_per_ml(0.0) == pytest.approx(ethanol.water_density_g_per_ml(), abs=1e-5)


def test_one_to_one_and_two_to_one_syrup() -> None:
    even, rich = syrup(1000.0, 1000.0), syrup(2000.0, 1000.0)
    assert even.volume_ml == pytest.approx(1626.5, abs=0.1)
    assert even.sugar_g_per_l == pytest.approx(614.8, abs=0.1)
    assert rich.volume_ml == pytest.approx(2261.2, abs=0.1)
    assert rich.sugar_g_per_l == pytest.approx(884.5, abs=0.1)
    assert not rich.above_saturation
    assert syrup(700.0, 300.0).above_saturation


def test_syrups_are_known_by_ratio_percent_or_word() -> None:
    for name, percent in (
        ("syrup 3:2", 60.0),
        ("Syrup 65 %", 65.0),
        ("simple syrup", 50.0),
        ("rich syrup", 66.6667),
    ):
        found = density_of(IngredientKind.OTHER, name)
        assert found is not None
        assert found.middle == pytest.approx(syrup_density_g_per_ml(percent), abs=1e-5)


@pytest.mark.parametrize(("sugar", "water"), [(-1.0, 5.0), (0.0, 0.0), (9.0, 1.0), (float("nan"), 1.0)])
def test_syrups_that_cannot_be_are_refused(sugar: float, water: float) -> None:
    with pytest.raises(OutOfRangeError):
        syrup(sugar, water)


def test_temperatures_outside_are_refused() -> None:
    with pytest.raises(OutOfRangeError):
        density_of(IngredientKind.GLYCEROL, "", None, 60.0)
