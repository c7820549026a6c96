from __future__ import annotations

import time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.formulas.ingredient_names.reading import plain_name
from bot.trade.formulas.kinds import (
    INGREDIENT_PROPERTIES,
    PREPARATION_DEFAULTS,
    IngredientKind,
    Preparation,
    guess_kind,
    is_not_for_drinks,
    is_peel_oil_name,
)
from bot.trade.safety.cautions import CAUTIONS

K = IngredientKind


@pytest.mark.parametrize(
    ("name", "kind"),
    [
        ("grapefruit oil", K.CITRUS_OIL),
        ("Cold-pressed LIME oil", K.CITRUS_OIL),
        ("d-limonene", K.CITRUS_OIL),
        ("blood orange oil", K.CITRUS_OIL),
        ("neutral spirit", K.SPIRIT),
        ("vodka", K.SPIRIT),
        ("gin", K.SPIRIT),
        ("overproof", K.SPIRIT),
        ("rectified spirit 96", K.SPIRIT),
        ("Cachaça", K.SPIRIT),
        ("190 proof", K.SPIRIT),
        ("lemon vodka", K.SPIRIT),
        ("PG", K.PROPYLENE_GLYCOL),
        ("food-grade glycol", K.PROPYLENE_GLYCOL),
        ("E 1520", K.PROPYLENE_GLYCOL),
        ("glycerine", K.GLYCEROL),
        ("vegetable glycerin", K.GLYCEROL),
        ("MCT oil", K.CARRIER_OIL),
        ("lemon olive oil", K.CARRIER_OIL),
        ("filtered water", K.WATER),
        ("soda water", K.WATER),
        ("ice", K.WATER),
        ("caster sugar", K.SUGAR),
        ("citric acid", K.ACID),
        ("lime juice", K.JUICE),
        ("acid-adjusted orange juice", K.JUICE),
        ("oranges", K.FRUIT),
        ("lemon peel", K.FRUIT),
        ("mango", K.FRUIT),
        ("strawberries", K.FRUIT),
        ("simple syrup", K.OTHER),
        ("salt", K.OTHER),
        ("peppermint oil", K.OTHER),
        ("lemongrass oil", K.OTHER),
        ("lemon verbena oil", K.OTHER),
        ("orange blossom oil", K.OTHER),
    ],
)
def test_guesses_from_ordinary_words(name: str, kind: IngredientKind) -> None:
    assert guess_kind(name) is kind


@pytest.mark.parametrize(
    "name",
    [
        "ginger",
        "orange bitters",
        "orange flower water",
        "tonic water",
        "triple sec",
        "gin liqueur",
        "",
        "rumba",
    ],
)
def test_does_not_guess_where_words_do_not_say(name: str) -> None:
    assert guess_kind(name) is None


@pytest.mark.parametrize(
    "name",
    ["isopropyl alcohol", "rubbing alcohol", "denatured spirit", "ethylene glycol", "orange fragrance oil"],
)
def test_never_offers_a_kind_for_what_is_not_for_drinks(name: str) -> None:
    assert is_not_for_drinks(name)
    assert guess_kind(name) is None


def test_a_carrier_is_no_peel_oil() -> None:
    assert is_peel_oil_name("bergamot oil")
    assert not is_peel_oil_name("lemon grass oil")
    assert not is_peel_oil_name("orange leaf oil")
    assert not is_peel_oil_name("lemon olive oil")
    assert not is_peel_oil_name("oranges")


def test_stored_values_do_not_move() -> None:
    assert "|".join(Preparation) == (
        "aroma mist|tincture|infusion|syrup|cordial|juice|acid-adjusted juice|saline|other"
    )
    assert "|".join(IngredientKind) == (
        "citrus oil|spirit|propylene glycol|glycerol|carrier oil|water|sugar|acid|juice|fruit|other"
    )


def test_every_kind_brings_its_defaults() -> None:
    assert set(PREPARATION_DEFAULTS) == set(Preparation)
    assert set(INGREDIENT_PROPERTIES) == set(IngredientKind)
    known = {caution.id for caution in CAUTIONS}
    for preparation, defaults in PREPARATION_DEFAULTS.items():
        assert defaults.label_lines, preparation
        assert set(defaults.caution_ids) <= known, preparation
        # The rest must end, and a second check must come, before the discard date.
        assert defaults.rest_hours < 24 * defaults.discard_days
        assert defaults.recheck_days is None or defaults.recheck_days < defaults.discard_days
        assert 0 < defaults.opened_days <= defaults.discard_days


def test_plain_name_drops_accents_case_and_spaces() -> None:
    assert plain_name("  Crème   de CACHAÇA ") == "creme de cachaca"


@given(st.text(max_size=200))
def test_never_fails_on_any_name(name: str) -> None:
    assert guess_kind(name) in {None, *IngredientKind}


@pytest.mark.parametrize("unit", ["hot ", "ice", "berry", "gin ", "o", "lemon oil "])
def test_a_long_name_costs_no_time(unit: str) -> None:
    name = unit * (4096 // len(unit))
    start = time.perf_counter()
    guess_kind(name)
    assert time.perf_counter() - start < 0.5


@pytest.mark.parametrize(
    ("preparation", "rest_hours", "keeps", "opened", "look", "cold"),
    [
        (Preparation.AROMA_MIST, 24, 180, 90, 30, False),
        (Preparation.TINCTURE, 14 * 24, 365, 180, 7, False),
        (Preparation.INFUSION, 48, 90, 60, 1, False),
        (Preparation.SYRUP, 0, 14, 14, 7, True),
        (Preparation.CORDIAL, 24, 21, 14, 7, True),
        (Preparation.JUICE, 0, 1, 1, None, True),
        (Preparation.ACID_ADJUSTED_JUICE, 0, 3, 2, None, True),
        (Preparation.SALINE, 0, 30, 30, None, False),
        (Preparation.OTHER, 0, 7, 3, 3, True),
    ],
)
def test_the_usual_times_of_the_trade(
    preparation: Preparation, rest_hours: int, keeps: int, opened: int, look: int | None, cold: bool
) -> None:
    # Common practice, no source.
    usual = PREPARATION_DEFAULTS[preparation]
    assert (usual.rest_hours, usual.discard_days, usual.opened_days) == (rest_hours, keeps, opened)
    assert (usual.recheck_days, usual.keep_cold) == (look, cold)
