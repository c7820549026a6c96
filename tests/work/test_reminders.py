"""Reminders: where they go, and that each comes once."""

from __future__ import annotations

from tests.house import House


def test_without_a_team_chat_the_close_prompt_goes_to_whoever_is_responsible(house: House) -> None:
    house.open_bar("Ana")
    house.joins("Ben")
    house.joins("Cleo", manager=True)
    house.clock.turn(hours=6, minutes=30)
    assert [one.room for one in house.reminders()] == ["private ana"]


def test_a_batch_reminds_whoever_made_it(house: House) -> None:
    house.open_bar("Ana")
    house.joins("Ben")
    house.person("Ana").says("new formula Brine\nsalt 20 g\nwater 80 ml\nkind saline\nrest 2 h")
    house.person("Ben").says("batch brine x1")
    house.clock.turn(hours=2)
    assert [(one.room, one.due.kind) for one in house.reminders()] == [("private ben", "rested")]
