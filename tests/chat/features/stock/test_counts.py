"""Tests of deliveries and counts as people type them."""

from __future__ import annotations

import pytest

from tests.house import House, Person, first_lines, text


@pytest.fixture
def ana(house: House) -> Person:
    """The owner of a bar that prices oranges."""
    return house.open_bar(said=["price oranges 0.45 each, 6 garnishes each"])


@pytest.mark.parametrize(
    ("line", "answer"),
    [
        ("bought 2 cases oranges 80 each 34.00", "Bought: 160 oranges (2 packs of 80), €68.00."),
        ("bought 2 cases of 80 oranges 34.00", "Bought: 160 oranges (2 packs of 80), €68.00."),
        ("bought 2 cases oranges 80 each 34.00 in all", "Bought: 160 oranges (2 packs of 80), €34.00."),
        ("bought 80 oranges 34.00", "Bought: 80 oranges, €34.00."),
        ("bought 80 oranges 0.40 each", "Bought: 80 oranges, €32.00."),
        ("bought 3 dozen limes 7.20", "Bought: 3 dozen limes, €7.20."),
        ("bought 5 kg limes for 14", "Bought: 5 kg limes, €14.00."),
        ("bought 40 oranges", "Bought: 40 oranges."),
    ],
)
def test_what_was_understood_is_said(ana: Person, line: str, answer: str) -> None:
    assert first_lines(ana.says(line)) == [answer]


def test_what_a_price_was_for_can_be_mended_by_one_tap(ana: Person) -> None:
    ana.says("count oranges 0")
    ana.says("bought 2 cases oranges 80 each 34.00")
    (mended,) = ana.taps("€34.00 was for all")
    assert mended.first_line == "Bought: 160 oranges (2 packs of 80), €34.00."
    assert "Price from now on: €17.00 for 80 pieces." in text([mended])
    assert "Should be on hand: 160 oranges" in text([mended])  # the first entry was undone
    (back,) = ana.taps("€34.00 was for one")
    assert back.first_line == "Bought: 160 oranges (2 packs of 80), €68.00."


def test_a_delivery_taken_back_leaves_price_and_stock_as_they_were(ana: Person) -> None:
    ana.says("count oranges 10")
    ana.says("bought 100 oranges 60")
    assert first_lines(ana.taps("Undo")) == ["Undone: 100 oranges bought"]
    assert "orange: €0.45 each" in text(ana.says("price oranges"))
    ana.says("count oranges 4")
    assert "6 oranges used" in text(ana.says("fruit orange"))


def test_used_is_what_came_and_was_there_less_waste_and_what_is_left(house: House, ana: Person) -> None:
    assert "After the next one" in text(ana.says("count oranges 30"))
    house.clock.turn(hours=2)
    ana.says("bought 2 cases oranges 40 each 18.00")
    ana.says("waste 9 oranges mouldy")
    ana.says("waste 60 oranges mouldy")
    ana.taps("Undo")
    house.clock.turn(hours=2)
    counted = text(ana.says("count oranges 41"))
    for row in ("+ bought             80", "- wasted              9", "= used               60"):
        assert row in counted
    assert "Nothing says where it went" in counted


def test_what_the_log_explains_is_no_loss(house: House, ana: Person) -> None:
    ana.says("count oranges 30")
    house.clock.turn(hours=1)
    ana.says("peeled 12 oranges")
    ana.says("juiced 10 oranges 700 ml")  # from the peeled ones: not counted twice
    ana.says("bin peeled 2 oranges")  # now part of the waste
    house.clock.turn(hours=1)
    counted = text(ana.says("count oranges 14"))
    assert "- wasted              2" in counted
    assert "The log explains 10 of it; unexplained loss: 4." in counted


def test_more_than_there_can_be_is_said(house: House, ana: Person) -> None:
    ana.says("count oranges 30")
    house.clock.turn(hours=1)
    assert "20 more than there can be" in text(ana.says("count oranges 50"))


def test_fruit_bought_by_weight_is_counted_in_pieces(house: House, ana: Person) -> None:
    """A lime weighs 67 g with an edible part of 84 % (USDA SR28): 79.8 g as bought."""
    ana.says("count limes 10")
    house.clock.turn(hours=1)
    ana.says("bought 8 kg limes 24")
    assert "+ bought             100.3" in text(ana.says("count limes 60"))


def test_a_count_taken_back_gives_way_to_the_one_before(house: House, ana: Person) -> None:
    ana.says("count oranges 30")
    house.clock.turn(hours=1)
    ana.says("count oranges 20")
    assert first_lines(ana.taps("Undo")) == ["Undone: 20 oranges counted"]
    assert "not counted twice" in text(ana.says("fruit orange"))


def test_guided_all_the_way(ana: Person) -> None:
    assert first_lines(ana.says("bought")) == ["What came in?"]
    ana.taps("orange")
    ana.says("24")
    assert first_lines(ana.taps("Not known")) == ["Bought: 24 oranges."]
    ana.says("bought 2 cases oranges")
    ana.says("80 each")
    assert first_lines(ana.says("34.00")) == ["Bought: 160 oranges (2 packs of 80), €68.00."]


def test_a_member_of_another_bar_sees_none_of_it(house: House, ana: Person) -> None:
    ana.says("count oranges 30")
    house.clock.turn(hours=1)
    ana.says("count oranges 20")
    eve = house.open_bar("Eve", "The Other", "Madrid")
    assert first_lines(eve.says("fruit")) == ["No fruit was counted twice yet."]
