"""Tests of words that mean the last thing: whose it is, where it was said, and what is never written."""

from __future__ import annotations

import pytest

from tests.house import House, Person, first_lines


@pytest.fixture
def ana(house: House) -> Person:
    return house.open_bar("Ana", said=["price limes 0.30 each"])


def _said(person: Person, text: str, room: str | None = None) -> str:
    return first_lines(person.says(text, room))[0]


@pytest.mark.parametrize(
    "words",
    [
        *("that was 5 not 6", "it was 5, not 6", "make it 5", "make that 5", "should be 5", "sorry, 5"),
        *("sorry i meant 5", "oops 5", "no, 5", "no, i meant five", "5 not 6", "not 6, 5", "Actually 5."),
        *("change it to 5", "it's 5 not 6", "correct 5", "correct 5 not 6", "5 limes not 6 limes"),
    ],
)
def test_five_instead_of_six_is_said_in_many_ways(ana: Person, words: str) -> None:
    ana.says("waste 6 limes mouldy")
    assert _said(ana, words) == "Corrected: 5 limes instead of 6, still mouldy"


@pytest.mark.parametrize(
    "words", ["that was 5 not 7", "make it grapefruit oil", "make it 12 ml", "sorry about that", "make it so"]
)
def test_words_that_do_not_fit_change_nothing(ana: Person, words: str) -> None:
    ana.says("waste 6 limes mouldy")
    assert not _said(ana, words).startswith("Corrected")
    assert _said(ana, "undo") == "Undone: 6 limes, mouldy"


def test_another_person_is_not_meant(house: House, ana: Person) -> None:
    ben = house.joins("Ben")
    ana.says("waste 6 limes mouldy")
    assert _said(ben, "make it 5") == "You have logged nothing here tonight."
    assert _said(ben, "same again") == "You have logged nothing here tonight."


def test_another_chat_is_asked_about(house: House, ana: Person) -> None:
    house.clock.turn(hours=12)
    ana.says("/start", "Gull")
    ana.says("/waste 6 limes mouldy", "Gull")
    replies = ana.says("make it 5")
    assert replies[0].first_line == "You have logged nothing here tonight."
    assert first_lines(ana.taps("6 limes, mouldy")) == ["Corrected: 5 limes instead of 6, still mouldy"]


def test_in_a_group_a_reply_means_the_entry_it_answers(house: House, ana: Person) -> None:
    ana.says("/start", "Gull")
    ana.says("/waste 6 limes mouldy", "Gull")
    ana.says("make it 5", "Gull")  # not addressed to the bot
    assert first_lines(ana.answers("make it 4", "Gull")) == ["Corrected: 4 limes instead of 6, still mouldy"]
    assert first_lines(ana.says("/correct 3", "Gull")) == ["Corrected: 3 limes instead of 4, still mouldy"]
    assert first_lines(ana.says("/again", "Gull")) == ["Logged: 3 limes, mouldy, €0.90."]


def test_a_member_cannot_correct_what_another_logged(house: House, ana: Person) -> None:
    ben = house.joins("Ben")
    ana.says("/start", "Gull")
    ana.says("/waste 6 limes mouldy", "Gull")
    refused = ben.answers("make it 5", "Gull")[0].first_line
    assert refused == "Only a manager or Ana can change that."


def test_a_correction_goes_on_the_same_chain(ana: Person) -> None:
    ana.says("waste 6 limes")
    ana.taps("dried out")
    assert _said(ana, "make it 5") == "Corrected: 5 limes instead of 6, still dried out"
    assert _said(ana, "sorry, mouldy") == "Corrected: 5 limes, mouldy instead of dried out"
    assert _said(ana, "undo") == "Undone: 5 limes, mouldy"
    assert _said(ana, "undo") == "Undone: price of lime, €0.30 each"
    week = "\n".join(first_lines(ana.says("week")))
    assert week == "No waste logged"


def test_editing_the_first_message_changes_what_was_corrected_since(ana: Person) -> None:
    ana.says("waste 6 limes mouldy")
    ana.says("make it 5")
    assert first_lines(ana.edits("waste 7 limes mouldy", 2)) == [
        "Corrected: 7 limes instead of 5, still mouldy"
    ]


def test_a_restart_forgets_nothing(house: House, ana: Person) -> None:
    ana.says("waste 6 limes mouldy")
    house.restart()
    assert _said(ana, "half of it") == "Corrected: 3 limes instead of 6, still mouldy"
    assert _said(ana, "and 2 oranges dried out") == "Logged: 2 oranges, dried out."


def test_several_things_replace_all_of_an_entry(ana: Person) -> None:
    ana.says("waste 6 limes mouldy")
    assert _said(ana, "make it 5 limes mouldy, 1 lime dried out").startswith(
        "Corrected: 5 limes instead of 6"
    )


def test_a_swapped_batch_is_not_made_again_without_its_swap(ana: Person) -> None:
    ana.says("new formula Mist\ngrapefruit oil 12 ml\nneutral spirit 96 % 62 ml")
    ana.says("batch mist to 400 ml with 75 % instead")
    assert "does not fit" in _said(ana, "make it 300 ml")
