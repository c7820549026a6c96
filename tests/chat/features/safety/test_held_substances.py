"""Tests of the answers about ingredients with a limited substance, and about spirits not for drinking."""

from __future__ import annotations

import pytest

from tests.chat.features.liquids.mixes import bar_with, labels, said, tapped
from tests.house import House

pytestmark = pytest.mark.parametrize("database", ["sqlite"], indirect=True)

ALMOND = "new formula Almond mist\nbitter almond oil 10 ml\nneutral spirit 96 % 100 ml\nkind aroma mist"
TONKA = "new formula Tonka mist\ntonka beans 10 g\nneutral spirit 96 % 100 ml\nkind aroma mist"


def test_bitter_almond_oil_stops_until_somebody_saw_that_it_is_free_from_prussic_acid(house: House) -> None:
    ana = bar_with(house)
    replies = ana.says(ALMOND)
    assert "hydrogen cyanide (prussic acid), a poison" in said(ana, ALMOND)
    assert labels(replies) == ["Its papers say FFPA, I saw them"]
    ana.says("formulas")
    assert said(ana, "formulas") == "This bar has no formulas yet." or "Almond mist" not in said(
        ana, "formulas"
    )
    ana.says(ALMOND)
    tapped(ana, "Its papers say FFPA, I saw them")
    # The caution stays with the formula.
    assert "(prussic acid), a poison" in said(ana, "formula almond mist")


def test_tonka_is_named_on_the_card_in_the_cautions_and_beside_the_dose(house: House) -> None:
    ana = bar_with(house)
    card = said(ana, TONKA)
    if card.startswith("New here"):
        card = tapped(ana, "Yes, new")
    assert "Caution: Tonka and woodruff hold coumarin" in card
    assert said(ana, "cautions tonka mist").splitlines()[1].startswith("1. Tonka and woodruff hold coumarin")
    dose = said(ana, "dose tonka mist 2 sprays in 90 ml")
    assert dose.splitlines()[0].endswith("coumarin not counted")
    assert "no limit on file" not in dose.splitlines()[0]
    assert "I can't tell how much coumarin is in it" in dose


@pytest.mark.parametrize(
    ("line", "answer"),
    [
        ("is tonka safe", "Tonka and woodruff hold coumarin"),
        ("is it safe to use wormwood?", "Wormwood, tansy and sage hold thujone"),
        ("can I use bitter almond oil", "hydrogen cyanide (prussic acid), a poison"),
        ("can I use rubbing alcohol", "something not made for drinking"),
        ("can I use denatured ethanol 96%?", "something not made for drinking"),
        ("isopropyl", "something not made for drinking"),
        ("is unobtainium safe", "I have no caution on unobtainium. That clears nothing."),
        ("is it flammable", "1. Put out every flame and keep sparks away"),
        ("is it safe to flame it", "1. Put out every flame and keep sparks away"),
        ("is the neutral spirit flammable?", "1. Put out every flame and keep sparks away"),
    ],
)
def test_a_question_whether_something_may_be_used_gets_its_caution_first(
    house: House, line: str, answer: str
) -> None:
    ana = bar_with(house)
    assert answer in " ".join(said(ana, line).splitlines()[:2])


@pytest.mark.parametrize(
    ("line", "answer"),
    [
        ("¿puedo usar alcohol de farmacia?", "no se hace para beber"),
        ("alcohol isopropílico", "no se hace para beber"),
        ("puedo usar alcohol desnaturalizado 96%", "no se hace para beber"),
        ("¿se puede hacer un spray con alcohol de farmacia?", "no se hace para beber"),
        ("¿es segura el haba tonka?", "cumarina"),
        ("¿el ajenjo es tóxico?", "tuyona"),
        ("es inflamable", "1. Apaga toda llama"),
    ],
)
def test_the_same_in_spanish(house: House, line: str, answer: str) -> None:
    ana = bar_with(house)
    ana.says("language español")
    assert answer in " ".join(said(ana, line).splitlines()[:2])


def test_what_is_no_danger_stays_with_the_other_commands(house: House) -> None:
    ana = bar_with(house, "new formula Mist\ngrapefruit oil 9 ml\nneutral spirit 96 % 80 ml\nkind aroma mist")
    assert "Cautions for" not in said(ana, "can I make mist with 40% vodka")
