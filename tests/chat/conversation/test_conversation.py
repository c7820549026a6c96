"""Tests of the whole conversation: the intent of each message."""

from __future__ import annotations

import threading

import pytest

from tests.house import House, first_lines, lines, text

MIST = (
    "new formula Grapefruit mist\ngrapefruit oil 12 ml\npropylene glycol 22 ml\n"
    "neutral spirit 96 % 62 ml\nkind aroma mist\nreplaces grapefruit"
)


@pytest.mark.parametrize("line", ["scale", "cost", "scale grapefruit mist", "which"])
def test_a_command_that_only_reads_can_ask_too(house: House, line: str) -> None:
    ana = house.open_bar(said=[MIST])
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
    assert sorted(replies) == ["Logged: 3 limes, mouldy.", "That button is old."]


def test_the_close_prompt_is_answered_without_a_command_word(house: House) -> None:
    ana = house.open_bar()
    assert first_lines(ana.says("6 oranges mouldy, 2 limes")) == ["Logged 2 lines"]
    assert first_lines(ana.says("1.5 kg lemons")) == ["Logged: 1.5 kg lemons."]
    for line in ("6 tyres", "12 ml grapefruit oil", "oranges", "6", "good evening"):
        assert not first_lines(ana.says(line))[0].startswith("Logged"), line


def test_a_stranger_logs_nothing_by_such_words(house: House) -> None:
    house.open_bar()
    assert first_lines(house.person("Zoe").says("6 oranges mouldy")) == ["You are not in a bar yet."]


@pytest.mark.parametrize("sign", ["$9", "9 USD", "£9", "9 ¥"])
def test_another_currency_is_never_taken_for_the_bars_own(house: House, sign: str) -> None:
    ana = house.open_bar()
    assert "This bar counts in EUR" in ana.says(f"price lime oil 10 ml {sign}")[0].first_line


def test_a_dollar_is_the_dollar_of_the_bar(house: House) -> None:
    ana = house.open_bar()
    ana.says("bar currency CAD")
    assert first_lines(ana.says("price lime oil 10 ml $9")) == ["lime oil: CA$9.00 for 10 ml"]


def test_a_price_without_its_pack_is_mended_by_a_tap(house: House) -> None:
    ana = house.open_bar()
    (asked,) = ana.says("price neutral spirit €22.50")
    assert asked.first_line.startswith("How much is in the pack for €22.50?")
    assert first_lines(ana.taps("700 ml")) == ["neutral spirit: €22.50 for 700 ml"]


@pytest.mark.parametrize("words", ["2-3", "2–3", "2 - 3", "2 to 3"])
def test_ranges(house: House, words: str) -> None:
    ana = house.open_bar(said=[MIST])
    assert "2 to 3 sprays a drink" in text(ana.says(f"change grapefruit mist: sprays {words}"))
    assert "2 to 3 garnishes each" in text(ana.says(f"price grapefruits 0.90 each, {words} garnishes each"))


@pytest.mark.parametrize("line", ["batch 1/2", "check ½ clear", "open 1.5", "undo ½", "later 1 99:99"])
def test_half_a_number_names_nothing(house: House, line: str) -> None:
    ana = house.open_bar()
    assert len(ana.says(line)) == 1


def test_a_house_measure_says_what_it_was_taken_for_until_it_is_set(house: House) -> None:
    ana = house.open_bar(said=[MIST])
    taken = "A dash is taken as 0.8 ml, common practice. Yours: bar dash 0.8 ml"
    assert taken in text(ana.says("scale grapefruit mist to 50 dashes")).replace("\n", " ")
    ana.says("bar dash 0.9 ml")
    assert "taken as" not in text(ana.says("scale grapefruit mist to 50 dashes"))


def test_a_batch_is_not_thrown_out_by_one_tap(house: House) -> None:
    ana = house.open_bar(said=[MIST])
    ana.says("batch grapefruit mist to 400 ml")
    assert first_lines(ana.says("discard 1")) == ["How much goes?"]
    ana.says("cancel")
    assert first_lines(ana.says("discard 1, smelt old")) == [
        "Batch 1, Grapefruit mist, is discarded: 402 ml."
    ]


def test_the_list_of_cautions_comes_by_the_page(house: House) -> None:
    ana = house.open_bar()
    (page,) = ana.says("cautions")
    pages = 1
    while "More" in [button.label for row in page.buttons for button in row]:
        assert len("\n".join(lines(page))) < 2000
        (page,) = ana.taps("More")
        pages += 1
    assert pages > 3
    assert "this list is not complete" in text([page])


def test_what_follows_a_gap_waits_until_the_gap_is_filled(house: House) -> None:
    ana = house.open_bar()
    assert first_lines(ana.says("price 0.60")) == ["The price of what? Tap it, or type: lime oil 10 ml 7.90"]
    ana.says("oranges")
    assert first_lines(ana.taps("5")) == ["orange: €0.60 each"]


@pytest.mark.parametrize("line", ["done ½", "later ½ 1 day", "price 1", "which #1"])
def test_no_number_is_a_fault(house: House, line: str) -> None:
    assert house.open_bar().says(line)[0].first_line


def test_waste_without_a_price_is_never_said_to_have_cost_nothing(house: House) -> None:
    ana = house.open_bar()
    said = text(ana.says("waste 6 oranges mouldy"))
    assert "€0.00" not in said
    week = text(ana.says("week"))
    assert week.startswith("Waste: no prices yet")
    assert "€0.00" not in week


def test_fruit_is_weighed_as_the_bar_weighs(house: House) -> None:
    ana = house.open_bar()
    assert first_lines(ana.says("waste 1.2 kg limes mouldy")) == ["Logged: 1.2 kg limes, mouldy."]
    assert "1.2 kg" in text(ana.says("week"))
    ana.says("bar units us")
    assert first_lines(ana.says("waste 3 lb lemons mouldy")) == ["Logged: 3 lb lemons, mouldy."]
