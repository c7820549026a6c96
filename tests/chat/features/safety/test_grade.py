"""Tests of food grade questions and marks, the stop at unlisted oils, and allergen lines."""

from __future__ import annotations

import pytest

from tests.chat.features.liquids.mixes import MIST, bar_with, labels, said, tapped
from tests.house import House, Person

pytestmark = pytest.mark.parametrize("database", ["sqlite"], indirect=True)

TEA = "new formula Tea mist\ntea tree oil 1 ml\nneutral spirit 96 % 60 ml\nkind aroma mist"


def tapped_after(person: Person, line: str) -> str:
    """Say a line and tap the confirmation of the papers."""
    person.says(line)
    answered = tapped(person, "It is sold for food, I saw the papers")
    return tapped(person, "Yes, new") if answered.startswith("New here: ") else answered


def test_adding_an_oil_asks_for_its_grade_and_marks_until_confirmed(house: House) -> None:
    ana = bar_with(house)
    replies = ana.says(MIST)
    assert "grapefruit oil: food grade" in labels(replies)
    assert "Not sure" in labels(replies)
    ana.says("batch grapefruit mist to 400 ml")
    mark = "Caution: Food grade not confirmed: grapefruit oil, propylene glycol"
    assert mark in said(ana, "formula grapefruit mist")
    assert mark in said(ana, "batch 1")
    confirmed = tapped(ana, "grapefruit oil: food grade")
    assert confirmed.startswith("grapefruit oil: food grade confirmed.\nBy Ana.")
    assert "21 CFR 182.20" in tapped(ana, "Sources")
    # The next question follows at once.
    tapped(ana, "propylene glycol: food grade")
    assert "not confirmed" not in said(ana, "batch 1")
    assert "not confirmed" not in said(ana, "formula grapefruit mist")
    assert said(ana, "grade") == "Nothing here waits for a word on food grade."


def test_not_sure_keeps_the_mark_and_undo_takes_a_word_back(house: House) -> None:
    ana = bar_with(house, MIST)
    answer = said(ana, "grade grapefruit oil no")
    assert answer.startswith("grapefruit oil is marked: food grade not confirmed.")
    ana.says("grade grapefruit oil yes")
    assert "grapefruit oil" not in said(ana, "grade").splitlines()[1]
    ana.says("undo")
    assert "grapefruit oil" in said(ana, "grade")


def test_a_plain_member_cannot_confirm_a_grade(house: House) -> None:
    bar_with(house, MIST)
    caio = house.joins("Caio")
    assert said(caio, "grade grapefruit oil yes").startswith("Only a manager can do that.")
    assert said(caio, "grade").startswith("2 ingredients wait for a word on food grade")


def test_an_unlisted_oil_stops_until_somebody_saw_its_papers(house: House) -> None:
    ana = bar_with(house)
    stopped = said(ana, TEA)
    assert stopped.startswith("tea tree oil: This oil is not on the list of flavouring oils known here: stop")
    assert said(ana, "formula tea mist").startswith("I know no formula")
    written = tapped_after(ana, TEA)
    assert written.startswith("Tea mist is in the book.")
    assert "not confirmed" not in written
    assert "tea tree oil: food grade confirmed" not in said(ana, "grade tea tree oil")


def test_the_stop_comes_in_the_guide_and_in_a_change_too(house: House) -> None:
    ana = bar_with(house, MIST)
    assert "stop" in said(ana, "change grapefruit mist: tea tree oil 1 ml")
    assert "version 1" in said(ana, "formula grapefruit mist")
    changed = tapped_after(ana, "change grapefruit mist: tea tree oil 1 ml")
    assert changed.startswith("Grapefruit mist is now version 2.")
    ana.says("new formula")
    ana.says("Camphor mist")
    assert "stop" in said(ana, "camphor oil 1 ml")
    assert "camphor oil" in tapped(ana, "It is sold for food, I saw the papers")
    assert tapped(ana, "Done").startswith("How long does it rest before use?")


def test_what_is_not_for_drinks_is_refused_by_its_name(house: House) -> None:
    ana = bar_with(house)
    replies = ana.says("new formula Bad\nisopropyl alcohol 10 ml\nwater 5 ml\nkind other")
    assert replies[0].first_line.startswith("isopropyl alcohol: The name is that of something not made for")
    assert labels(replies) == []
    assert said(ana, "formula bad").startswith("I know no formula")


def test_allergens_stand_on_card_and_batch_and_stay_with_the_batch(house: House) -> None:
    flip = "new formula Flip\norgeat 20 ml\ncream 30 ml\negg white 1 each\nkind other"
    ana = bar_with(house, flip)
    line = "Allergens to declare: milk, eggs, perhaps tree nuts."
    assert line in said(ana, "formula flip")
    ana.says("batch flip x1")
    assert line in said(ana, "batch 1")
    ana.says("change flip: remove cream")
    assert "milk" not in said(ana, "formula flip")
    assert line in said(ana, "batch 1")
    detail = said(ana, "allergens flip")
    assert "Only names were looked at: read the packaging" in detail
    assert "Regulation (EU) No 1169/2011" in detail


def test_coconut_carriers_are_spoken_of_by_the_rules_of_the_bar(house: House) -> None:
    soft = "new formula Soft mist\ncoconut MCT oil 30 ml\nneutral spirit 96 % 60 ml\nkind other"
    ana = bar_with(house, soft, rules="US")
    assert "Contains coconut" in said(ana, "formula soft mist")
    assert "January 2025" in said(ana, "allergens soft mist")
