from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.formulas.kinds import IngredientKind
from bot.trade.safety.grade import (
    GRADE_TEXTS,
    LISTED_OILS,
    FoodGrade,
    GradedIngredient,
    GradeReason,
    OilStanding,
    listed_oil,
    oil_standing,
    question_for,
)

K = IngredientKind


@pytest.mark.parametrize(
    ("name", "standing"),
    [
        ("grapefruit oil", OilStanding.CITRUS_LISTED),
        ("Cold-pressed lime oil", OilStanding.CITRUS_LISTED),
        ("limonene", OilStanding.CITRUS_LISTED),
        ("yuzu oil", OilStanding.CITRUS_NOT_NAMED),
        ("makrut lime oil", OilStanding.CITRUS_NOT_NAMED),
        ("lavender oil", OilStanding.LISTED),
        ("orange blossom oil", OilStanding.LISTED),
        ("lemongrass oil", OilStanding.LISTED),
        ("tea tree oil", OilStanding.UNLISTED),
        ("wintergreen oil", OilStanding.UNLISTED),
        ("sunflower oil", None),
        ("vodka", None),
        ("oranges", None),
    ],
)
def test_standing_of_an_oil_by_its_name(name: str, standing: OilStanding | None) -> None:
    assert oil_standing(name) is standing


def test_the_longest_name_decides() -> None:
    found = listed_oil("bitter orange oil")
    assert found is not None
    assert found.name == "bitter orange"


def test_every_listed_oil_is_found_by_its_own_name() -> None:
    for oil in LISTED_OILS:
        name = oil.name if oil.name == "d-limonene" else f"{oil.name} oil"
        found = listed_oil(name)
        assert found is not None, oil.name
        assert found.name == oil.name


@pytest.mark.parametrize(
    ("name", "kind", "reason", "stop"),
    [
        ("grapefruit oil", K.CITRUS_OIL, GradeReason.NOT_CONFIRMED, False),
        ("yuzu oil", K.CITRUS_OIL, GradeReason.CITRUS_NOT_NAMED, False),
        ("tea tree oil", K.OTHER, GradeReason.OIL_UNLISTED, True),
        ("peppermint oil", K.OTHER, GradeReason.NOT_CONFIRMED, False),
        ("PG", K.PROPYLENE_GLYCOL, GradeReason.NOT_CONFIRMED, False),
        ("MCT oil", K.CARRIER_OIL, GradeReason.NOT_CONFIRMED, False),
        ("96 % alcohol", K.SPIRIT, GradeReason.NOT_CONFIRMED, False),
        ("isopropyl alcohol", K.SPIRIT, GradeReason.NOT_FOR_DRINKS, True),
        ("vodka", K.SPIRIT, None, False),
        ("water", K.WATER, None, False),
        ("limes", K.FRUIT, None, False),
    ],
)
def test_what_has_to_be_asked(
    name: str, kind: IngredientKind, reason: GradeReason | None, stop: bool
) -> None:
    question = question_for(GradedIngredient(name, kind))
    assert (question.reason if question else None) is reason
    assert (question.stop if question else False) == stop


def test_a_confirmed_grade_answers_all_but_a_name_not_for_drinks() -> None:
    for name, kind in (("tea tree oil", K.OTHER), ("grapefruit oil", K.CITRUS_OIL)):
        assert question_for(GradedIngredient(name, kind, FoodGrade.CONFIRMED)) is None
    poison = question_for(GradedIngredient("denatured alcohol", K.SPIRIT, FoodGrade.CONFIRMED))
    assert poison is not None
    assert poison.stop


def test_every_reason_has_its_words() -> None:
    # A substance brings its own words.
    assert set(GRADE_TEXTS) == set(GradeReason) - {GradeReason.HOLDS_POISON}


@given(st.text(max_size=60), st.sampled_from(IngredientKind))
def test_a_kind_that_needs_a_grade_never_goes_unasked(name: str, kind: IngredientKind) -> None:
    asked = question_for(GradedIngredient(name, kind))
    if kind in {K.CITRUS_OIL, K.PROPYLENE_GLYCOL, K.GLYCEROL, K.CARRIER_OIL}:
        assert asked is not None
