"""The conversation as a whole: what a message is taken for."""

from __future__ import annotations

import threading

import pytest

from tests.house import House, first_lines

MIST = (
    "new formula Grapefruit mist\ngrapefruit oil 12 ml\npropylene glycol 22 ml\n"
    "neutral spirit 96 % 62 ml\nkind aroma mist\nreplaces grapefruit"
)


@pytest.mark.parametrize("line", ["scale", "cost", "scale grapefruit mist", "which"])
def test_a_command_that_only_reads_can_ask_too(house: House, line: str) -> None:
    ana = house.open_bar()
    ana.says(MIST)
    (asked,) = ana.says(line)
    assert asked.choosing


@pytest.mark.parametrize("line", ["join", "new formula", "lot 1 salt", "bar name"])
def test_cancel_is_understood_where_any_words_would_be_an_answer(house: House, line: str) -> None:
    ana = house.open_bar()
    ana.says("new formula Brine\nsalt 20 g\nwater 80 ml\nkind saline")
    ana.says("batch brine x1")
    assert ana.says(line)[0].choosing
    assert first_lines(ana.says("cancel")) == ["Cancelled. Nothing was logged."]
    assert first_lines(ana.says("cancel")) == ["Nothing is in progress."]


def test_back_can_be_typed(house: House) -> None:
    ana = house.open_bar()
    asked = first_lines(ana.says("waste"))
    ana.says("limes")
    assert first_lines(ana.says("back")) == asked


def test_a_command_is_no_new_name(house: House) -> None:
    ana = house.open_bar()
    ana.says("waste")
    assert first_lines(ana.says("week")) == ["No waste logged"]


def test_a_pad_of_digits_takes_any_number(house: House) -> None:
    ana = house.open_bar()
    ana.says("waste limes")
    ana.taps("Other number")
    for label in "1402":
        ana.taps(label)
    (typed,) = ana.taps("Erase")
    assert typed.first_line == "How many limes? 140_"
    ana.taps("OK")
    assert first_lines(ana.taps("mouldy")) == ["Logged: 140 limes, mouldy."]


def test_back_from_the_pad_brings_the_choices_again(house: House) -> None:
    ana = house.open_bar()
    asked = ana.says("waste limes")
    ana.taps("Other number")
    ana.taps("7")
    (again,) = ana.taps("Back")
    assert [[one.label for one in row] for row in again.buttons] == [
        [one.label for one in row] for row in asked[0].buttons
    ]


@pytest.mark.parametrize(
    "text", ["waste 6 li\0mes mouldy", "waste 6 limes\ud83c mouldy", "\0", "\udc00 week"]
)
def test_characters_that_no_database_keeps_do_no_harm(house: House, text: str) -> None:
    ana = house.open_bar()
    assert ana.says(text)[0].blocks


def test_two_answers_to_one_question_at_the_same_moment_log_once(house: House) -> None:
    ana = house.open_bar()
    ana.says("waste limes")
    ana.taps("3")
    _message, line = house.room(None, ana).button("mouldy")
    ready = threading.Barrier(2)
    replies: list[str] = []

    def tap() -> None:
        ready.wait()
        replies.extend(first_lines(ana.taps_line(line)))

    threads = [threading.Thread(target=tap) for _ in range(2)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert sorted(replies) == ["Logged: 3 limes, mouldy.", "This button is out of date."]
