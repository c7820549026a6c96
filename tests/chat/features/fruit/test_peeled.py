"""Tests of peeled fruit: its time limit, its reminder, its three ends, its juice and the acid for it."""

from __future__ import annotations

from fractions import Fraction

import pytest

from bot.chat.dialogue.turn import presence_of
from bot.chat.reply.message import Message
from bot.work.fruit import peeled
from tests.house import House, Person, first_lines, text


@pytest.fixture
def ana(house: House) -> Person:
    """The owner of a bar with an empty book."""
    return house.open_bar()


def _lying(house: House, ana: Person) -> dict[str, Fraction]:
    with house.store.reading() as unit:
        talk_bar = presence_of(unit, _message(house, ana))
        context = talk_bar.context(unit, house.clock.now(), "look")
        found: dict[str, Fraction] = {}
        for one in peeled.waiting(context):
            found[one.ingredient.name] = found.get(one.ingredient.name, Fraction(0)) + one.left
        return found


def _message(house: House, ana: Person) -> Message:
    return Message(
        "house", ana.sender, house.room(None, ana).place, "", key="look", sent_at=house.clock.now()
    )


def test_peeled_fruit_has_a_clock_and_a_reminder_before_it_is_lost(house: House, ana: Person) -> None:
    house.clock.turn(hours=2)  # 20:00: lost at 20:00 the next day, reminded six hours before
    assert "good until Thu, 26 Nov 20:00" in text(ana.says("peeled 4 oranges"))
    house.clock.turn(hours=17, minutes=59)
    assert [one for one in house.reminders() if one.due.kind == "peeled"] == []
    house.clock.turn(minutes=2)
    (sent,) = [one for one in house.reminders() if one.due.kind == "peeled"]
    assert sent.reply.first_line.startswith("Peeled: 4 oranges still there, no good after Thu, 26 Nov 20:00")
    assert [button.label for row in sent.reply.buttons for button in row][:3] == [
        "Juiced",
        "Binned",
        "In a batch",
    ]
    ana.taps("Juiced")
    assert first_lines(ana.says("280 ml")) == ["Juiced: 4 oranges gave 280 ml, 70 ml each."]
    assert _lying(house, ana) == {}


def test_what_found_its_end_is_not_asked_about(house: House, ana: Person) -> None:
    ana.says("peeled 4 oranges")
    ana.says("juiced 3 oranges 200 ml")
    ana.says("waste 1 orange peeled")
    house.clock.turn(days=1)
    assert [one for one in house.reminders() if one.due.kind == "peeled"] == []


def test_a_reminder_in_the_quiet_hours_comes_before_them_where_after_is_too_late(
    house: House, ana: Person
) -> None:
    ana.says("bar peeled fruit 12 h")
    house.clock.turn(hours=4)  # 22:00: lost at 10:00, within the quiet hours from 05:00 to 11:00
    ana.says("peeled 4 oranges")
    house.clock.turn(hours=6, minutes=58)
    assert [one for one in house.reminders() if one.due.kind == "peeled"] == []
    house.clock.turn(minutes=2)
    assert len([one for one in house.reminders() if one.due.kind == "peeled"]) == 1


def test_every_end_takes_the_oldest_first_and_undo_lays_it_back(house: House, ana: Person) -> None:
    ana.says("peeled 4 oranges")
    house.clock.turn(hours=1)
    ana.says("peeled 3 oranges")
    ana.says("juiced 5 oranges 350 ml")
    assert _lying(house, ana) == {"orange": 2}
    ana.taps("Undo")
    assert _lying(house, ana) == {"orange": 7}
    ana.says("bin peeled 1 orange")
    assert _lying(house, ana) == {"orange": 6}
    ana.taps("Undo")
    assert _lying(house, ana) == {"orange": 7}
    ana.says("peeled 2 oranges")
    ana.taps("Undo")
    assert _lying(house, ana) == {"orange": 7}


def test_a_reason_given_later_takes_it_off_the_peeled_fruit(house: House, ana: Person) -> None:
    ana.says("peeled 4 oranges")
    ana.says("waste 3 oranges")
    assert _lying(house, ana) == {"orange": 4}
    ana.taps("peeled and not used")
    assert _lying(house, ana) == {"orange": 1}


def test_into_another_batch(house: House, ana: Person) -> None:
    ana.says("new formula Brine\nsalt 20 g\nwater 80 ml\nkind saline\nrest 2 h")
    ana.says("batch brine x1")
    assert "No peeled fruit" in text(ana.says("peeled in batch"))
    ana.says("peeled 4 oranges")
    assert first_lines(ana.says("peeled in batch 4 oranges 1")) == ["4 oranges went into batch 1, Brine."]
    assert _lying(house, ana) == {}
    ana.taps("Undo")
    assert _lying(house, ana) == {"orange": 4}


def test_the_bars_own_yield_takes_over(ana: Person) -> None:
    """86 g of juice a fruit at 248 g a cup (USDA SR28): 82.04 mL; four of the bar's own weigh 4 in 16."""
    assert "About 330 ml juice (250 ml to 410 ml; published yield)" in text(ana.says("peeled 4 oranges"))
    juiced = text(ana.says("juiced 4 oranges 280 ml"))
    assert "I'll now assume 79 ml per orange, counting 4 of your own." in juiced
    for _number in range(3):
        ana.says("juiced 12 oranges 840 ml")
    assert "your own yield" in text(ana.says("peeled 4 oranges"))


def test_acid_to_a_target_stands_beside_the_rule_that_overshoots(ana: Person) -> None:
    """Lime 45.86 g/l (Penniston 2008) less orange 14.9 g/l, shared 32 to 20 between the two acids."""
    said = text(ana.says("acid 280 ml orange juice to lime"))
    assert said.startswith("280 ml orange juice to lime strength: 5.4 g citric + 3.4 g malic acid")
    assert "rule of thumb     9 g  5.6 g" in said
    assert "The rule of thumb ends between 22 % short of and 84 % beyond the measured" in said


def test_the_bars_own_recipe_comes_first(ana: Person) -> None:
    ana.says(
        "new formula Lime-strength orange\norange juice 1 l\ncitric acid 20 g\nmalic acid 12 g\n"
        "kind acid-adjusted juice"
    )
    said = text(ana.says("acid 500 ml orange juice to lime"))
    assert said.startswith("500 ml orange juice to lime strength: 10 g citric + 6 g malic acid")
    assert "your recipe" in said
    assert "Lime-strength orange ends" in said
    assert "your recipe" not in text(ana.says("acid 500 ml orange juice to lemon"))
    assert "In the book: Lime-strength orange." in text(ana.says("peeled 4 oranges"))


def test_what_is_sour_enough_needs_none(ana: Person) -> None:
    assert "no acid needed" in text(ana.says("acid 100 ml lemon juice to lime"))


def test_what_nobody_measured_is_said(ana: Person) -> None:
    assert "no measured acidity of apple juice" in text(ana.says("acid 1 l apple juice to lime"))
