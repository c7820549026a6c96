"""Tests of reminders that people write themselves."""

from __future__ import annotations

from sqlalchemy import update

from bot.work.reminders import delivery
from bot.work.reminders.own import OWN
from bot.work.reminders.planning import UNDELIVERED
from storage.tables import Reminder, Room
from tests.house import CHANNEL, House


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
