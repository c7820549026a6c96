"""Tests that the rules read Spanish ingredient names as they read English ones."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.formulas.ingredient_names.reading import read_name
from bot.trade.formulas.kinds import IngredientKind, guess_kind, is_not_for_drinks, is_peel_oil_name
from bot.trade.safety.allergens import Allergen, allergen_lines, to_declare
from bot.trade.safety.grade import OilStanding, oil_standing
from bot.trade.safety.jurisdiction import Jurisdiction


@pytest.mark.parametrize(
    ("name", "kind"),
    [
        ("aceite de pomelo", IngredientKind.CITRUS_OIL),
        ("Aceite esencial de naranja amarga", IngredientKind.CITRUS_OIL),
        ("aceite de limón prensado en frío", IngredientKind.CITRUS_OIL),
        ("aceite de coco", IngredientKind.CARRIER_OIL),
        ("aceite de girasol", IngredientKind.CARRIER_OIL),
        ("propilenglicol", IngredientKind.PROPYLENE_GLYCOL),
        ("glicerina vegetal", IngredientKind.GLYCEROL),
        ("alcohol neutro", IngredientKind.SPIRIT),
        ("ginebra", IngredientKind.SPIRIT),
        ("agua", IngredientKind.WATER),
        ("azúcar", IngredientKind.SUGAR),
        ("ácido cítrico", IngredientKind.ACID),
        ("zumo de naranja", IngredientKind.JUICE),
        ("jugo de limón", IngredientKind.JUICE),
        ("limones", IngredientKind.FRUIT),
        ("toronja", IngredientKind.FRUIT),
        ("piel de naranja", IngredientKind.FRUIT),
        ("jarabe de azúcar", IngredientKind.OTHER),
        ("licor de naranja", None),
    ],
)
def test_kinds_are_guessed_from_spanish_words(name: str, kind: IngredientKind | None) -> None:
    assert guess_kind(name) is kind


@pytest.mark.parametrize(
    "name",
    ["alcohol isopropílico", "metanol", "alcohol desnaturalizado", "etilenglicol", "alcohol sanitario"],
)
def test_what_is_not_made_for_drinking_is_not_offered_as_spirit(name: str) -> None:
    assert is_not_for_drinks(name)
    assert guess_kind(name) is None


@pytest.mark.parametrize(
    ("name", "allergen"),
    [
        ("leche de almendras", Allergen.TREE_NUTS),
        ("nueces", Allergen.TREE_NUTS),
        ("clara de huevo", Allergen.EGGS),
        ("nata", Allergen.MILK),
        ("cacahuetes", Allergen.PEANUTS),
        ("maní", Allergen.PEANUTS),
        ("salsa de soja", Allergen.SOYBEANS),
        ("cerveza", Allergen.OTHER_GLUTEN),
        ("harina de trigo", Allergen.WHEAT),
        ("apio", Allergen.CELERY),
        ("mostaza", Allergen.MUSTARD),
        ("sésamo", Allergen.SESAME),
        ("vino blanco", Allergen.SULPHITES),
        ("altramuces", Allergen.LUPIN),
        ("gambas", Allergen.CRUSTACEANS),
        ("mejillones", Allergen.MOLLUSCS),
        ("anchoas", Allergen.FISH),
    ],
)
def test_all_fourteen_allergens_are_known_by_spanish_words(name: str, allergen: Allergen) -> None:
    assert allergen in to_declare(allergen_lines([name], Jurisdiction.EU))


def test_milk_of_almonds_is_no_milk() -> None:
    assert Allergen.MILK not in to_declare(allergen_lines(["leche de almendras"], Jurisdiction.EU))


def test_a_pomelo_is_a_grapefruit_only_among_spanish_words() -> None:
    assert read_name("aceite de pomelo") == "grapefruit oil"
    assert read_name("pomelo oil") == "pomelo oil"
    assert read_name("Pomelo") == "pomelo"
    assert read_name("Pomelo", "es") == "grapefruit"
    assert oil_standing("aceite de pomelo") is OilStanding.CITRUS_LISTED
    assert is_peel_oil_name("aceite de limón")


@given(st.from_regex(r"[a-z]{1,12}( [a-z]{1,12}){0,4}", fullmatch=True))
def test_what_was_put_into_english_stays(name: str) -> None:
    # Reading twice changes nothing more: rules may pass a name already read to each other.
    once = read_name(name)
    assert read_name(once) == once


@pytest.mark.parametrize(
    "name",
    [
        "grapefruit oil",
        "lime juice",
        "neutral spirit",
        "mandarin",
        "coconut cream",
        "sodium saline",
        "pina colada",
    ],
)
def test_english_names_keep_their_kind(name: str) -> None:
    assert read_name(name).replace("pineapple", "pina") == name
