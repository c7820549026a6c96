"""Tests of unit words: their units, and those that need a question."""

from __future__ import annotations

import contextlib

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from bot.trade.formulas.measures import HOUSE_MEASURES, UNITS
from bot.trade.formulas.unit_words import (
    LONGEST_WORD,
    NO_WORDS,
    UNIT_WORDS,
    AmbiguousUnit,
    AmbiguousUnitError,
    UnitSense,
    UnitWords,
    UnknownUnitError,
    look_up,
    nearest_words,
    normal_word,
    resolve_unit,
    unit_table,
)
from tests.work_done import at_most_calls

NOT_SET = UnitSense()


@pytest.mark.parametrize(
    ("word", "unit"),
    [
        ("ml", "ml"),
        ("mL", "ml"),
        ("ML", "ml"),
        ("㎖", "ml"),
        ("millilitres", "ml"),
        ("Milliliter", "ml"),
        ("cl", "cl"),
        ("L", "l"),
        ("ℓ", "l"),
        ("litre", "l"),
        ("g", "g"),
        ("gr", "g"),
        ("Grams", "g"),
        ("㎏", "kg"),
        ("lbs.", "pound"),
        ("dashes", "dash"),
        ("bsp", "barspoon"),
        ("bar  spoon", "barspoon"),
        ("dozen", "dozen"),
        ("pcs", "each"),
        ("pieces", "each"),
        ("bottles", "bottle"),
        ("us fl. oz.", "us_fluid_ounce"),
        ("us_fluid_ounce", "us_fluid_ounce"),
        ("uk pint", "imperial_pint"),
    ],
)
def test_plain_words(word: str, unit: str) -> None:
    assert resolve_unit(word, NOT_SET) == unit


_SPANISH = unit_table({"l": "litros", "oz": "onza", "tsp": "cucharadita, cucharaditas", "gallon": "galón"})


def test_words_of_another_language_follow_the_same_settings() -> None:
    sense = UnitSense(oz_liquid="us", household="metric", liquid=True)
    assert resolve_unit("litros", NOT_SET, _SPANISH) == "l"
    assert resolve_unit("dashes", NOT_SET, _SPANISH) == "dash"
    assert resolve_unit("onza", sense, _SPANISH) == "us_fluid_ounce"
    assert resolve_unit("cucharadita", sense, _SPANISH) == "metric_teaspoon"
    assert resolve_unit("galón", UnitSense(household="us"), _SPANISH) == "us_gallon"
    assert resolve_unit("galon", UnitSense(household="us"), _SPANISH) == "us_gallon"
    with pytest.raises(UnknownUnitError):
        resolve_unit("onza", sense)


@pytest.mark.parametrize(
    "word", ["M", "T", "c", "C", "F", "t", "min", "pinch", "shot", "", " ", "oz/l", "9**9**8", "ml#", "nan"]
)
def test_never_guessed(word: str) -> None:
    with pytest.raises(UnknownUnitError) as caught:
        resolve_unit(word, UnitSense("us", "us", liquid=True))
    assert caught.value.unit == word


FLUID = ("us_fluid_ounce", "imperial_fluid_ounce")


@pytest.mark.parametrize(
    ("sense", "answer"),
    [
        (NOT_SET, (*FLUID, "ounce")),
        (UnitSense(liquid=True), FLUID),
        (UnitSense(liquid=False), "ounce"),
        (UnitSense(oz_liquid="us"), ("us_fluid_ounce", "ounce")),
        (UnitSense(oz_liquid="imperial"), ("imperial_fluid_ounce", "ounce")),
        (UnitSense(oz_liquid="us", liquid=True), "us_fluid_ounce"),
        (UnitSense(oz_liquid="imperial", liquid=True), "imperial_fluid_ounce"),
        (UnitSense(oz_liquid="us", liquid=False), "ounce"),
        (UnitSense(household="us", liquid=True), FLUID),
    ],
)
@pytest.mark.parametrize("word", ["oz", "Ounces"])
def test_ounce_needs_the_settings(word: str, sense: UnitSense, answer: str | tuple[str, ...]) -> None:
    if isinstance(answer, str):
        assert resolve_unit(word, sense) == answer
        return
    with pytest.raises(AmbiguousUnitError) as caught:
        resolve_unit(word, sense)
    assert caught.value.choices == answer


@pytest.mark.parametrize("liquid", [True, False, None])
def test_fluid_ounce_is_a_volume_whatever_is_measured(liquid: bool | None) -> None:
    assert resolve_unit("fl oz", UnitSense("us", liquid=liquid)) == "us_fluid_ounce"
    assert resolve_unit("floz", UnitSense("imperial", liquid=liquid)) == "imperial_fluid_ounce"
    with pytest.raises(AmbiguousUnitError) as caught:
        resolve_unit("floz", UnitSense(liquid=liquid))
    assert caught.value.choices == FLUID


@pytest.mark.parametrize(
    ("word", "us", "metric", "imperial"),
    [
        ("tsp", "us_teaspoon", "metric_teaspoon", "metric_teaspoon"),
        ("tablespoons", "us_tablespoon", "metric_tablespoon", "metric_tablespoon"),
        ("cup", "us_cup", "metric_cup", "imperial_cup"),
        ("pint", "us_pint", None, "imperial_pint"),
        ("quarts", "us_quart", None, "imperial_quart"),
        ("gal", "us_gallon", None, "imperial_gallon"),
    ],
)
def test_household_measures_need_the_settings(word: str, us: str, metric: str | None, imperial: str) -> None:
    assert resolve_unit(word, UnitSense(household="us")) == us
    assert resolve_unit(word, UnitSense(household="imperial")) == imperial
    with pytest.raises(AmbiguousUnitError):
        resolve_unit(word, UnitSense(oz_liquid="us"))
    if metric:
        assert resolve_unit(word, UnitSense(household="metric")) == metric
    else:
        with pytest.raises(AmbiguousUnitError):
            resolve_unit(word, UnitSense(household="metric"))


def test_every_word_leads_to_a_unit_we_can_convert() -> None:
    known = {*UNITS, *HOUSE_MEASURES}
    for word, found in {**UNIT_WORDS, **_SPANISH}.items():
        assert word == normal_word(word)
        choices = found.choices if isinstance(found, AmbiguousUnit) else (found,)
        assert set(choices) <= known


def test_every_unit_has_a_word() -> None:
    named = {unit for unit in UNIT_WORDS.values() if isinstance(unit, str)}
    assert named | {"ounce"} == {*UNITS, *HOUSE_MEASURES}


def test_a_misspelling_is_answered_with_near_words() -> None:
    assert "grams" in nearest_words("grms")
    assert "barspoon" in nearest_words("barspon")
    assert "cucharadita" in nearest_words("cucharadta", _SPANISH)


@given(st.text(max_size=4096), st.sampled_from([NO_WORDS, _SPANISH]))
@example("e" * LONGEST_WORD, _SPANISH)
@example("teaspoon" * 512, _SPANISH)
def test_any_text_is_a_unit_or_an_error_of_ours(word: str, also: UnitWords) -> None:
    # Only a word that could be a misspelt unit is compared with all of them.
    most = 20_000 if len(word) <= LONGEST_WORD else 100
    with at_most_calls(most), contextlib.suppress(UnknownUnitError, AmbiguousUnitError):
        assert resolve_unit(word, NOT_SET, also) in {*UNITS, *HOUSE_MEASURES}


@given(st.sampled_from(sorted(UNIT_WORDS)), st.sampled_from([str.upper, str.title, str.swapcase]))
def test_letter_case_does_not_matter(word: str, change: object) -> None:
    assert callable(change)
    assert look_up(change(word)) == look_up(word)
