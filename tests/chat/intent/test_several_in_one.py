"""Tests of several things in one message: fruit bought, counted and peeled; and the undo of one of them."""

from __future__ import annotations

import pytest

from tests.chat.features.liquids.mixes import said
from tests.house import House, Person, first_lines, lines, text
from tests.work.stock.test_on_hand import BRINE, TINCTURE


@pytest.fixture
def ana(house: House) -> Person:
    """The owner of a bar with an empty book."""
    return house.open_bar()


def test_several_deliveries_each_with_its_own_undo(ana: Person) -> None:
    (said,) = ana.says("bought 80 oranges 34.00; 2 cases limes 40 each 8")
    assert said.first_line == "2 deliveries logged."
    assert "Bought: 80 limes (2 packs of 40), €16.00." in text([said])
    ana.taps("Undo lime")
    assert "€34.00" in text(ana.says("price oranges"))
    assert "no price" in text(ana.says("waste 1 lime")).casefold()


def test_deliveries_a_line_each(ana: Person) -> None:
    assert first_lines(ana.says("bought 80 oranges 34\n40 limes 8\n12 lemons")) == ["3 deliveries logged."]


def test_a_reminder_and_a_note_a_line_each(ana: Person) -> None:
    remind, note = first_lines(ana.says("remind me in 1 hour to check ice\nnote: buy straws"))
    assert remind.endswith("check ice")
    assert note.endswith("buy straws")


def test_several_counts_show_what_was_used_since(ana: Person) -> None:
    ana.says("count oranges 100 and 50 limes")
    ana.says("waste 6 oranges mouldy")
    (said,) = ana.says("count oranges 80, limes 40")
    assert [line.split() for line in lines(said)[2:4]] == [
        ["orange", "80", "14", "?"],
        ["lime", "40", "10", "?"],
    ]
    ana.taps("Undo orange")
    assert "100" in text(ana.says("count oranges 90"))


def test_several_sorts_peeled(house: House, ana: Person) -> None:
    (said,) = ana.says("peeled 4 oranges, 3 limes")
    assert [line.split() for line in lines(said)[1:3]] == [
        ["4", "oranges", "330", "ml"],
        ["3", "limes", "130", "ml"],
    ]
    house.clock.turn(days=1)
    assert [one.due.name for one in house.reminders() if one.due.kind == "peeled"] == ["orange", "lime"]


@pytest.mark.parametrize(
    ("line", "missing"),
    [
        ("bought 80 oranges 34; limes", "In “limes” I miss an amount."),
        ("count oranges 24, limes", "In “limes” I miss a number."),
        ("peeled 4 oranges, limes", "In “limes” I miss a number."),
    ],
)
def test_one_that_is_not_complete_stops_them_all(ana: Person, line: str, missing: str) -> None:
    assert missing in text(ana.says(line))
    assert "orange" not in text(ana.says("log"))
    assert "No fruit was counted twice yet." in text(ana.says("fruit"))


def test_two_commands_of_one_kind_in_one_message(ana: Person) -> None:
    assert first_lines(ana.says("waste 6 oranges mouldy\nwaste 2 limes mouldy")) == [
        "Logged: 6 oranges, mouldy.",
        "Logged: 2 limes, mouldy.",
    ]
    assert first_lines(ana.says("bought 80 oranges 34\nbought 40 limes 8")) == [
        "Bought: 80 oranges, €34.00.",
        "Bought: 40 limes, €8.00.",
    ]


def test_an_undone_batch_lays_back_the_peeled_fruit_that_it_took(ana: Person) -> None:
    ana.says(BRINE)
    ana.says("peeled 4 oranges")
    ana.says("batch brine x1")
    (made,) = [button.line for row in ana.house.room(None, ana).shown[-1].reply.buttons for button in row][
        -1:
    ]
    ana.says("peeled in batch 3 oranges 1")
    assert "1 orange " in text(ana.says("peeled"))
    ana.says("cancel")
    assert "Undone: batch 1, Brine" in text(ana.says(made))
    assert "4 oranges" in text(ana.says("peeled"))


@pytest.mark.parametrize(
    ("since", "first", "told"),
    [
        pytest.param(
            (),
            "2 run low.",
            ("lime oil: ", "left, par 95 ml", "left, par 1,000 ml", "[Shopping list] [All stock]"),
            id="what runs low at once is one message",
        ),
        pytest.param(
            ("stock bought lime oil 100 ml",),
            "neutral spirit runs low: 920 ml left, par 1,000 ml.",
            (),
            id="what is bought before the message goes is not in it",
        ),
    ],
)
def test_one_batch_lets_two_run_low(
    house: House, ana: Person, since: tuple[str, ...], first: str, told: tuple[str, ...]
) -> None:
    for line in (
        TINCTURE,
        "stock neutral spirit 1.1 l",
        "stock lime oil 100 ml",
        "par neutral spirit 1 l",
        "par lime oil 95 ml",
        "batch lime drops to 200 ml",
        *since,
    ):
        ana.says(line)
    (sent,) = house.reminders()
    assert sent.reply.first_line == first
    said = "\n".join(lines(sent.reply))
    assert [part for part in told if part not in said] == []


def test_a_blind_bottle_shows_nothing_of_what_is_in_it_until_the_trial_ends(ana: Person) -> None:
    ana.says(TINCTURE)
    ana.says("trial lime drops\nlime oil 12 ml")
    for _step in range(4):
        shown = ana.house.room(None, ana).shown[-1].reply
        if not shown.choosing:
            break
        ana.taps(shown.buttons[0][0].label)
    ana.says("trial made 1")
    card = text(ana.says("batch 1"))
    assert "Blind trial 1: what went in stays hidden until it ends." in card
    assert "neutral spirit" not in card.split("Caution")[0]
    assert "% vol" not in card.split("Caution")[0]
    ana.says("trial close 1")
    assert "neutral spirit" in text(ana.says("batch 1")).split("Caution")[0]


def test_what_a_missing_fruit_costs_is_the_bars_to_say(house: House, ana: Person) -> None:
    ana.says("price oranges 0.60 each, 5 garnishes each")
    for _night in range(10):
        ana.says("drinks 45 orange")
        house.clock.turn(days=1)
    assert "Running one short costs 2 times its price, so have enough on 67 %" in said(
        ana, "fruit par orange"
    )
    assert "missing fruit" in text(ana.says("bar costs")).casefold()
    ana.says("bar missing fruit 5 times")
    assert "Running one short costs 4 times its price, so have enough on 80 %" in said(
        ana, "fruit par orange"
    )
    assert "How many times" in text(ana.says("bar missing fruit 1"))
    ana.says("undo")
    assert "enough on 67 %" in said(ana, "fruit par orange")


def test_the_words_on_a_button_may_be_typed(house: House, ana: Person) -> None:
    ana.says(TINCTURE)
    ana.says("cost lime drops")
    assert first_lines(ana.says("As written")) == ["Lime drops: no prices yet"]
    ana.says("waste orange")
    assert ana.says("other number")[0].buttons[0][0].label == "1"  # the pad of digits
    ana.says("cancel")
    ana.says("trial lime drops: lime oil 12 ml")
    ana.says("50 ml")
    assert "Trial 1 of Lime drops begins." in text(ana.says("blind"))


@pytest.mark.parametrize(
    ("asked", "first"),
    [
        ("peeled fruit", "Which fruit was peeled?"),
        ("price history oranges", "orange: €0.60 each"),
        ("how much waste?", "No waste logged"),
        ("what should I make?", "Nothing to plan yet"),
        ("waste 3 fruits", "Which fruit? Such as: orange"),
    ],
)
def test_ways_to_ask_that_were_not_understood(ana: Person, asked: str, first: str) -> None:
    ana.says("price oranges 0.60 each")
    assert text(ana.says(asked)).startswith(first)
