"""Tests of reminders: their targets, and that each is sent once."""

from __future__ import annotations

from bot.work.reminders.delivery import Outcome
from tests.house import House, first_lines


def test_without_a_team_chat_the_close_prompt_goes_to_every_manager(house: House) -> None:
    house.open_bar("Ana")
    house.joins("Ben")
    house.joins("Cleo", manager=True)
    house.clock.turn(hours=10, minutes=30)
    asked = [one.room for one in (*house.reminders(), *house.reminders())]
    assert asked == ["private ana", "private cleo"]
    house.person("Cleo").taps("Nothing tonight")
    assert first_lines(house.person("Ana").taps("Nothing tonight")) == ["That was already done."]


def test_a_batch_reminds_whoever_made_it(house: House) -> None:
    house.open_bar("Ana")
    house.joins("Ben")
    house.person("Ana").says("new formula Brine\nsalt 20 g\nwater 80 ml\nkind saline\nrest 2 h")
    house.person("Ben").says("batch brine x1")
    house.clock.turn(hours=2)
    assert [(one.room, one.due.kind) for one in house.reminders()] == [("private ben", "rested")]


def test_at_noon_is_the_next_noon_on_the_bars_clock(house: House) -> None:
    ana = house.open_bar()
    house.clock.turn(hours=10, minutes=30)
    assert len(house.reminders()) == 1
    assert first_lines(ana.taps("At noon")) == ["I will remind you again Thu, 26 Nov 12:00."]
    house.clock.turn(hours=7, minutes=29)
    assert house.reminders() == []
    house.clock.turn(minutes=1)
    assert len(house.reminders()) == 1


def test_after_two_nights_without_network_the_prompt_comes_once_and_counts_the_night_before(
    house: House,
) -> None:
    house.open_bar()
    house.clock.turn(hours=10, minutes=30)
    for _attempt in range(9):  # no send succeeds until after the next prompt
        house.reminders(Outcome.NOT_SENT)
        house.clock.turn(hours=3)
    sent = house.reminders()
    assert [one.due.details for one in sent] == [{"day": "2026-11-26", "own": True, "missed": 1}]
