from __future__ import annotations

import importlib
import re
from collections.abc import Iterable
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.formulas import kinds
from bot.trade.formulas.ingredient_names import reading
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
from tests.work_done import at_most_calls

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


@pytest.mark.parametrize("unit", ["hot ", "ice", "berry", "gin ", "o", "lemon oil ", "oil of "])
def test_a_long_name_costs_little_work(unit: str) -> None:
    guess_kind("gin")  # the first time reads the languages
    with at_most_calls(40_000):
        guess_kind((unit * 4096)[:4096])


_RE: Any = importlib.import_module("re._parser")


def _open_ended(parsed: Iterable[Any]) -> int:
    """Return how many repeats without an upper limit lie on one way through a parsed pattern."""
    count = 0
    for code, value in parsed:
        if code in {_RE.MAX_REPEAT, _RE.MIN_REPEAT}:
            count += (value[1] is _RE.MAXREPEAT) + _open_ended(value[2])
        elif code is _RE.BRANCH:
            count += max(map(_open_ended, value[1]))
        elif code is _RE.SUBPATTERN:
            count += _open_ended(value[-1])
        elif code in {_RE.ASSERT, _RE.ASSERT_NOT}:
            count += _open_ended(value[1])
    return count


def test_no_pattern_of_names_takes_more_steps_than_the_square_of_the_length() -> None:
    """One open-ended repeat from every beginning; the steps themselves cannot be counted."""
    patterns = [one for one in vars(kinds).values() if isinstance(one, re.Pattern)]
    for names in reading._languages():
        patterns += [names._words, names._of, names._surely, names._friends]
    for pattern in patterns:
        assert _open_ended(_RE.parse(pattern.pattern, pattern.flags)) <= 1, pattern
    assert _open_ended(_RE.parse("(?:(?:still|hot) *)*(?:a|b+)")) == 3


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
