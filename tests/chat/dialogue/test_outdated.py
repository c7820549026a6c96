"""Tests of a question about a thing that somebody else has discarded or undone meanwhile."""

from __future__ import annotations

import pytest

from bot.chat.dialogue.registry import all_commands
from tests.house import House, first_lines, lines, text

_STOCKED = (
    "new formula Grapefruit mist\ngrapefruit oil 12 ml\npropylene glycol 22 ml\n"
    "neutral spirit 96 % 62 ml\nkind aroma mist\nreplaces grapefruit",
    "new formula Brine\nsalt 20 g\nwater 80 ml\nkind saline",
    "batch brine x1",
)
_SAID_THEN = ("5", "waste 2 limes mouldy", "how much salt is left", "back", "zzz qqq")


_ABOUT_A_BATCH = sorted(
    name for name, one in all_commands().items() if any(slot.name == "batch" for slot in one.slots)
)


@pytest.mark.parametrize("command", _ABOUT_A_BATCH)
@pytest.mark.parametrize("answers", [pytest.param(0, marks=pytest.mark.long), 1])
def test_no_question_breaks_when_its_batch_is_discarded(house: House, command: str, answers: int) -> None:
    ana = house.open_bar(said=list(_STOCKED))
    ben = house.joins("Ben")
    for said in _SAID_THEN:
        (*_before, asked) = ana.says(command)
        for _number in range(answers):
            if asked.choosing and len(asked.buttons) > 1:
                (*_before, asked) = ana.taps(asked.buttons[0][0].label)
        ben.says("discard 1 spilt")
        ana.says(said)  # raises what it cannot word
        ana.says("cancel")
        ben.says("undo")


def _asked_about_a_batch(house: House) -> None:
    ana = house.open_bar(said=list(_STOCKED))
    ben = house.joins("Ben")
    assert ana.says("discard 1")[0].choosing
    assert first_lines(ben.says("discard 1 spilt"))[0].startswith("Batch 1")


_REFUSED = ["Batch 1 is discarded.", "Unfinished and dropped: discard 1"]


def test_what_is_said_beside_it_is_logged_and_the_question_ends(house: House) -> None:
    _asked_about_a_batch(house)
    ana = house.person("Ana")
    logged, refused = ana.says("waste 2 limes mouldy")
    assert logged.first_line == "Logged: 2 limes, mouldy."
    assert lines(refused) == _REFUSED
    assert first_lines(ana.says("cancel")) == ["Nothing is in progress."]


@pytest.mark.parametrize("answer", ["20 ml", "zzz qqq"])
def test_an_answer_is_refused_once_and_the_question_ends(house: House, answer: str) -> None:
    _asked_about_a_batch(house)
    ana = house.person("Ana")
    (refused,) = ana.says(answer)
    assert lines(refused) == _REFUSED
    assert first_lines(ana.says("cancel")) == ["Nothing is in progress."]


def test_a_tapped_answer_is_refused_once_too(house: House) -> None:
    _asked_about_a_batch(house)
    ana = house.person("Ana")
    assert lines(ana.taps("half (44.6 ml)")[0]) == _REFUSED
    assert first_lines(ana.says("cancel")) == ["Nothing is in progress."]


def test_back_gives_up_what_is_gone(house: House) -> None:
    _asked_about_a_batch(house)
    ana = house.person("Ana")
    (refused,) = ana.taps("Back")
    assert lines(refused) == [
        "There is no batch with anything left in it.",
        "Unfinished and dropped: discard",
    ]
    assert first_lines(ana.says("cancel")) == ["Nothing is in progress."]


def test_the_dropped_line_shows_no_photo(house: House) -> None:
    ana = house.open_bar(said=list(_STOCKED))
    ben = house.joins("Ben")
    ana.says("check 1", photo="AgAC1")
    ben.says("discard 1 spilt")
    assert "AgAC1" not in text(ana.says("clear"))


def test_a_button_of_a_drink_that_was_undone_says_so(house: House) -> None:
    ana = house.open_bar(said=[*_STOCKED, "serve sour: 2 ml brine"])
    ana.says("undo")
    assert first_lines(ana.taps_line("menu #1")) == ["There is no drink sour in this bar."]
