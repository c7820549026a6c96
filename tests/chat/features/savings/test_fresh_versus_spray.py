"""Tests of fresh versus spray by conversation, price rises, and tax."""

from __future__ import annotations

from io import BytesIO

import pytest
from PIL import Image

from tests.house import House, Person, first_lines, text

MIST = (
    "new formula Mist\ngrapefruit oil 10 ml\nneutral spirit 96 % 90 ml\nkind aroma mist\n"
    "replaces grapefruit\nsprays 2\nrest 1 day\ndiscard 365 days"
)


@pytest.fixture
def ana(house: House) -> Person:
    """The owner of a bar with a mist whose costs are all known exactly."""
    return house.open_bar(
        said=[
            MIST,
            "bar spray size 0.1",
            "price grapefruit oil 10 ml 5",
            "price neutral spirit 90 ml 1",
            "price grapefruit 0.80 each, 8 garnishes each",
            "bar drinks a week 100",
        ]
    )


def _row(said: str, name: str) -> list[str]:
    """Return the cells of the row with this beginning."""
    return next(line for line in said.splitlines() if line.strip().startswith(name)).split()[2:]


def test_what_is_known_exactly_has_no_ranges(ana: Person) -> None:
    """100 mL (oil adds as an ideal volume) for €6: 500 drinks of 2 x 0.1 mL, €0.012 each."""
    said = text(ana.says("cost mist x1 more"))
    assert said.startswith("Mist saves €8.80 a week against fresh grapefruit")
    assert _row(said, "a drink") == ["€0.100", "€0.012"]
    assert _row(said, "a week") == ["€10.00", "€1.20"]
    assert _row(said, "a year") == ["€520.00", "€62.40"]
    assert "usually" not in said
    # Break-even: 8 garnishes of 1.2 cents; 10 cents over 0.6 a spray; 6 euros in 52 weeks over 10 cents a
    # drink.
    assert "Breaks even at €0.10 a fruit, or 16.7 sprays, or 1 drink a week" in said
    assert "100 drinks a week as you said." in said


def test_bottle_label_and_waste_cost_money_and_work_stays_apart(ana: Person) -> None:
    """Batch: 6 + 2 bottles at 1.05: 8.10 over 500 drinks. A garnish 6 s, a batch 30 min for five weeks.

    Ten of fifty grapefruits wasted: 80 cents over 6.4 garnishes is 12.5 cents.
    """
    for line in (
        "bar wage 12",
        "bar batch minutes 30",
        "bar garnish minutes 0.1",
        "bar bottle price 1.00",
        "bar label price 0.05",
        "bar outlay 59",
        "bought 50 grapefruits 40",
        "waste 10 grapefruits mouldy",
    ):
        ana.says(line)
    said = text(ana.says("cost mist x1 more"))
    assert _row(said, "a drink") == ["€0.125", "€0.016"]
    assert said.startswith("Mist saves €10.88 a week")
    assert "Time, apart: 4 min saved a week, about €0.80 at your wage" in said
    assert "€59.00 spent once: earned back in 5.4 weeks" in said
    assert "20 % of the fruit wasted" in said
    assert "Not counted" not in said


def test_cutting_without_mixing_is_not_all_the_time(ana: Person) -> None:
    ana.says("bar garnish minutes 0.3")
    assert "Not counted: batch minutes" in text(ana.says("cost mist x1 more"))
    ana.says("bar batch minutes 20")
    assert "batch minutes" not in text(ana.says("cost mist x1 more"))


def test_ranges_name_the_two_inputs_that_matter_most_and_can_be_drawn(ana: Person) -> None:
    for line in (
        "price grapefruit 0.80 each, 6-10 garnishes each",
        "bar drinks a week 80-120",
    ):
        ana.says(line)
    said = text(ana.says("cost mist x1 more"))
    assert "usually" in said
    assert "What matters most: garnishes from a fruit and drinks a week" in said
    (drawn,) = ana.taps("What matters: picture")
    (file,) = drawn.files
    assert Image.open(BytesIO(file.content)).width == 1140
    assert text(ana.says("cost mist x1 more")) == said  # the random draws are the same each time


def test_no_batch_size_is_needed_to_compare(ana: Person) -> None:
    ana.says("batch mist to 200 ml")
    assert text(ana.says("cost mist more")) == text(ana.says("cost mist to 200 ml more"))


@pytest.mark.parametrize(
    ("line", "way"),
    [
        ("bar drinks a week off", "Say how many drinks a week take it: bar drinks a week 300"),
        ("change mist: rosemary oil 1 ml", "An ingredient has no price"),
    ],
)
def test_what_is_missing_is_said(ana: Person, line: str, way: str) -> None:
    ana.says(line)
    assert way in text(ana.says("cost mist x1 more"))


def test_the_bottles_used_up_tell_the_drinks_a_week(house: House, ana: Person) -> None:
    """100 mL used in seven days, three times over: 500 drinks a week."""
    ana.says("bar drinks a week off")
    for number in (1, 2, 3):
        assert "Say how many drinks a week" in text(ana.says("cost mist x1 more"))
        ana.says("batch mist x1")
        house.clock.turn(days=2)
        ana.says(f"open {number}")
        house.clock.turn(days=6)
        ana.says(f"used up {number}")
    assert "500 drinks a week by the bottles used up" in text(ana.says("cost mist x1 more"))


def test_a_rise_since_the_last_batch_is_said_when_costing(house: House, ana: Person) -> None:
    ana.says("price grapefruit oil 10 ml 5.40")
    assert "Dearer" not in text(ana.says("cost mist x1"))  # never made: there is no earlier price
    ana.says("price grapefruit oil 10 ml 5")
    ana.says("batch mist x1")
    house.clock.turn(days=1)
    ana.says("price grapefruit oil 10 ml 5.40")
    assert "Dearer" not in text(ana.says("cost mist x1"))  # 8 % is below the bar's 10 %
    ana.says("bar price rise 8 %")
    assert "Dearer since batch 1 (Wed, 25 Nov): grapefruit oil 8 %" in text(ana.says("cost mist x1"))


@pytest.mark.parametrize(
    ("setting", "total", "said"),
    [
        ("20 % taken out", "€5.00", "Without the 20 % tax in prices."),
        ("20 % added", "€7.20", "With 20 % tax added to prices."),
        ("off", "€6.00", ""),
    ],
)
def test_tax_in_or_out(ana: Person, setting: str, total: str, said: str) -> None:
    ana.says(f"bar tax {setting}")
    answer = text(ana.says("cost mist x1"))
    assert answer.startswith(f"Mist, as written: {total}")
    assert said in answer
    assert "grapefruit oil: €5.00 for 10 ml" in text(ana.says("price grapefruit oil"))  # as typed


def test_a_price_has_a_history_in_a_picture(house: House, ana: Person) -> None:
    assert "Picture" not in [
        button.label for row in ana.says("price grapefruit oil")[0].buttons for button in row
    ]
    house.clock.turn(days=9)
    ana.says("price grapefruit oil 10 ml 6")
    ana.says("price grapefruit oil")
    (drawn,) = ana.taps("Picture")
    assert drawn.files[0].picture
    assert "need two prices" in text(ana.says("price grapefruit picture"))


def test_settings_that_cannot_be_are_asked_again(ana: Person) -> None:
    assert "Which one?" in text(ana.says("bar tax 20 %"))
    assert "A number from 0" in text(ana.says("bar wage 20000"))
    assert "Write hours" in text(ana.says("bar peeled fruit soon"))
    assert first_lines(ana.says("bar peeled fruit wrapped")) == ["Peeled fruit: cold, wrapped tight: 72 h"]
    assert first_lines(ana.says("bar wage 12-10")) != ["Wage: €12.00 to €10.00"]
