"""Tests of reminders that people write themselves."""

from __future__ import annotations

from collections.abc import Callable

from sqlalchemy import update

from bot.work.reminders import delivery
from bot.work.reminders.own import OWN
from bot.work.reminders.planning import UNDELIVERED
from storage.tables import Reminder, Room
from tests.house import CHANNEL, House, text


def test_one_that_nobody_could_have_does_not_mark_the_next(house: House) -> None:
    ana = house.open_bar("Ana")
    ana.says("remind me every Monday 15:00 count fruit")
    with house.store.writing() as unit:
        unit.connection.execute(update(Room).values(reachable=False))
    for _day in range(14):
        house.clock.turn(days=1)
        delivery.claim(house.store, CHANNEL, house.clock.now())
    with house.store.reading() as unit:
        rows = unit.bar(1).all(Reminder, Reminder.kind == OWN, order=Reminder.first_due_at)
        assert [UNDELIVERED in row.details for row in rows] == [True, True, False]


def test_the_hour_taken_is_said(house: House) -> None:
    ana = house.open_bar()
    said = text(ana.says("remind everyone on mondays at 3 count the fruit"))
    assert said.splitlines()[0] == "I will remind the team every Mon 15:00: count the fruit"


def test_a_fraction_is_a_day_in_the_order_of_the_country(another_house: Callable[[], House]) -> None:
    for city, day in (("Lisbon", "Sat 3 Apr 2027 16:00"), ("Chicago", "Thu, Mar 4, 2027 4:00 PM")):
        (said,) = another_house().open_bar(city=city).says("remind me 3/4 order limes")
        assert said.first_line == f"I will remind you {day}: order limes"


def test_a_note_keeps_the_words_that_name_no_day(house: House) -> None:
    ana = house.open_bar()
    assert "Noted for Wed, 25 Nov: mondays are slow" in text(ana.says("note mondays are slow"))
    assert "Noted for Thu, 26 Nov: plumber tomorrow at 3" in text(ana.says("note plumber tomorrow at 3"))
