"""Tests of phrases as typed in a bar: understood, or near readings offered and never run silently."""

from __future__ import annotations

import pytest

from tests.house import House, Person, first_lines, lines, text


@pytest.fixture
def database() -> str:
    """The words do not depend on the database."""
    return "sqlite"


@pytest.fixture
def ana(house: House) -> Person:
    """The owner of a bar with two formulas, prices and two batches."""
    return house.open_bar(
        said=[
            "new formula Grapefruit mist\ngrapefruit oil 12 ml\npropylene glycol 22 ml\n"
            "neutral spirit 96% 62 ml\nreplaces grapefruit\nkind aroma mist",
            "new formula Lime cordial\nlime juice 500 ml\nsugar 400 g\nkind cordial",
            "price grapefruit oil 10 ml 7.90",
            "price oranges 0.60 each, 5 garnishes each",
            "batch grapefruit mist to 400 ml",
            "batch lime cordial x1",
        ]
    )


@pytest.mark.parametrize(
    ("said", "wanted"),
    [
        ("threw out 6 oranges, mouldy", "6 oranges, mouldy"),
        ("tossed 3 limes", "3 limes"),
        ("chucked 2 lemons mouldy", "2 lemons, mouldy"),
        ("binned 4 grapefruits", "4 grapefruits"),
        ("6 mouldy oranges", "6 oranges, mouldy"),
        ("six oranges mouldy", "6 oranges, mouldy"),
        ("half a dozen limes dried out", "6 limes, dried out"),
        ("a couple of lemons", "2 lemons"),
        ("waste 2 dozen limes", "24 limes"),
        ("waste limes 4 dried", "4 limes, dried out"),
        ("wasted two oranges and three limes", "3 limes"),
        ("waste oranges: 6", "6 oranges"),
        ("waste 3 limes bruised", "3 limes, damaged on delivery"),
        ("waste 3 limes because mouldy", "3 limes, mouldy"),
        ("we threw out 3 limes", "3 limes"),
        ("had to bin 3 limes", "3 limes"),
        ("waste 1 1/2 kg lemons", "1.5 kg lemons"),
        ("6 oranges mouldy, 2 limes", "2 limes"),
        ("6 oranges, mouldy, 2 limes, dried", "2 limes"),
    ],
)
def test_waste(ana: Person, said: str, wanted: str) -> None:
    answer = text(ana.says(said))
    assert answer.startswith("Logged"), answer
    assert " ".join(wanted.split()) in " ".join(answer.split()), answer


@pytest.mark.parametrize(
    ("said", "first"),
    [
        ("grapefruit mist", "Grapefruit mist: aroma mist, version 1"),
        ("grapefruit mist to 400 ml", "Grapefruit mist: 400 ml"),
        ("8 x 50 ml grapefruit mist", "Grapefruit mist: 8 x 50 ml"),
        ("scale 400 ml of grapefruit mist", "Grapefruit mist: 400 ml"),
        ("double the grapefruit mist", "Grapefruit mist: x 2"),
        ("scale up grapefruit mist 3 times", "Grapefruit mist: x 3"),
        ("recipe for grapefruit mist", "Grapefruit mist: aroma mist, version 1"),
        ("show formulas", "2 formulas in the book"),
        ("what does grapefruit mist cost", "How much of Grapefruit mist?"),
        ("price of oranges", "orange: €0.60 each"),
        ("check batch 1 is clear", "Batch 1, Grapefruit mist: clear."),
        ("how is batch 1", "Batch 1: Grapefruit mist, resting"),
        ("what’s ready", "2 resting"),
        ("last week", "No waste logged"),
        ("waste this week", "No waste logged"),
        ("bin batch 2", "How much goes?"),
        ("label for batch 1", "Which labels are in the printer?"),
        ("made 400 ml grapefruit mist", "Batch 3: Grapefruit mist, 402 ml"),
        ("never mind", "Nothing is in progress."),
    ],
)
def test_other_phrases(ana: Person, said: str, first: str) -> None:
    assert first in first_lines(ana.says(said))


@pytest.mark.parametrize(
    ("said", "offered"),
    [
        ("waste 6 oragnes mouldy", "oranges"),
        ("waste 6 oranges moudly", "mouldy"),
        ("wsate 3 limes", "waste 3 limes"),
        ("scale grapefriut mist x2", "Grapefruit mist"),
        ("scale grapefruit mist 8x50", "scale grapefruit mist 8x50 ml"),
        ("oranges 0.65 each", "price oranges 0.65 each"),
        ("batch 1 is clear", "check batch 1 is clear"),
        ("1 is hazy", "check 1 is hazy"),
        ("log 3 limes", "waste 3 limes"),
    ],
)
def test_what_is_near_is_offered_and_not_taken(ana: Person, said: str, offered: str) -> None:
    before = text(ana.says("log"))
    (reply,) = ana.says(said)
    assert f"[{offered}]" in "\n".join(lines(reply)), lines(reply)
    assert text(ana.says("log")) == before


def test_a_price_is_no_waste_and_a_sentence_no_fruit(ana: Person) -> None:
    before = text(ana.says("log"))
    for said in ("oranges 0.65 each", "set orange price 0.70 each", "who threw out the oranges"):
        ana.says(said)
    assert text(ana.says("log")) == before


def test_several_commands_in_one_message_are_done_in_order(ana: Person) -> None:
    replies = ana.says("waste 3 limes\ncheck 1 clear\nweek")
    assert [one.first_line for one in replies] == [
        "Logged: 3 limes.",
        "Batch 1, Grapefruit mist: clear.",
        "Waste: no prices yet",
    ]


@pytest.mark.parametrize(
    ("said", "number"),
    [
        ("waste 3 limes\ncheck 99 clear", 2),
        ("waste 3 limes\nbatch", 2),
        ("check 1 blue\nwaste 3 limes", 1),
        ("waste 3 limes\nwaste 2 oragnes\nweek", 2),
    ],
)
def test_several_commands_are_done_all_or_none(ana: Person, said: str, number: int) -> None:
    before = text(ana.says("log"))
    (reply,) = ana.says(said)
    assert reply.first_line.startswith(f"Line {number}, “{said.splitlines()[number - 1]}”, stops here")
    assert not reply.buttons
    assert text(ana.says("log")) == before


def test_lines_of_a_formula_are_no_commands(ana: Person) -> None:
    (reply, *_rest) = ana.says("new formula Test\nlime oil 10 ml\nneutral spirit 96 % 90 ml\nkind tincture")
    assert reply.first_line == "Test is in the book."


def test_help_has_this_bars_own_names(ana: Person) -> None:
    ana.says("waste 9 lemons")
    said = text(ana.says("help"))
    assert "waste 6 lemons mouldy" in said
    assert "scale Grapefruit mist to 8 x 50 ml" in said
    assert len(said.splitlines()) <= 7
    assert "change Grapefruit mist: grapefruit oil 14 ml" in text(ana.says("help change"))
    assert "All I can do, by subject" in text(ana.says("help all"))


def test_help_in_an_empty_bar_says_the_first_step(house: House) -> None:
    ben = house.open_bar("Ben", "The Second")
    said = text(ben.says("help"))
    assert "new formula: write down the first thing you make" in said
    assert "waste 6 oranges mouldy" in said
