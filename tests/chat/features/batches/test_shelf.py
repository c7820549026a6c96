"""Tests of discard dates by conversation: the applied rule, opening, old oil, and moving reminders."""

from __future__ import annotations

from datetime import date

import pytest
from sqlalchemy import select

from storage.tables import Reminder
from tests.chat.features.liquids.mixes import MIST, bar_with, said, tapped
from tests.house import House

JUICE = "new formula Fresh lime\nlime juice 500 ml\nkind juice"


def _discards(house: House) -> dict[str, date]:
    """Return the days of the waiting discard reminders, by key."""
    with house.store.reading() as unit:
        rows = unit.session.scalars(select(Reminder).where(Reminder.state == "waiting"))
        return {row.key: row.due_at.date() for row in rows if row.kind in {"discard", "recheck"}}


def test_a_batch_names_its_dates_and_the_rule_that_won(house: House) -> None:
    ana = bar_with(house, MIST)
    answer = said(ana, "batch grapefruit mist to 400 ml")
    assert "Check it again on 25 Dec 2026." in answer
    assert "Discard after 24 May 2027: the usual time for its kind." in answer
    ana.says("change grapefruit mist: discard 30 days")
    own = said(ana, "batch grapefruit mist to 400 ml")
    assert "Discard after 25 Dec 2026: this formula's own time." in own


def test_opening_starts_another_clock_and_moves_the_reminders(house: House) -> None:
    ana = bar_with(house, MIST)
    ana.says("batch grapefruit mist to 400 ml")
    assert _discards(house)["discard:1:0"] == date(2027, 5, 24)
    house.clock.turn(days=2)
    ana.says("check 1 clear")
    opened = said(ana, "open 1")
    assert "Opening it started another clock: time since the bottle was opened." in opened
    assert "Discard after 25 Feb 2027" in opened
    assert _discards(house)["discard:1:0"] == date(2027, 2, 25)
    assert _discards(house)["discard:1:3"] == date(2027, 2, 22)
    ana.taps("Undo")
    assert "Discard after 24 May 2027" in said(ana, "batch 1")
    assert _discards(house)["discard:1:0"] == date(2027, 5, 24)


def test_opening_late_does_not_lengthen_the_life(house: House) -> None:
    ana = bar_with(house, MIST)
    ana.says("batch grapefruit mist to 400 ml")
    house.clock.turn(days=150)
    opened = said(ana, "open 1")
    assert "another clock" not in opened
    assert "Discard after 24 May 2027" in opened


def test_a_batch_inherits_the_age_of_its_oil(house: House) -> None:
    ana = bar_with(house, MIST)
    answer = said(ana, "opened grapefruit oil 100 days ago")
    assert answer.startswith("grapefruit oil: opened 17 Aug 2026.")
    assert "Use it until 15 Feb 2027: half a year after opening; kept cold, a year." in answer
    made = said(ana, "batch grapefruit mist to 400 ml")
    assert "Discard after 15 Feb 2027: the age of the oldest oil in it, grapefruit oil." in made
    assert _discards(house)["discard:1:0"] == date(2027, 2, 15)


def test_cold_keeping_and_best_before_move_the_oils_last_day(house: House) -> None:
    ana = bar_with(house, MIST)
    ana.says("opened grapefruit oil 100 days ago")
    cold = tapped(ana, "It is kept cold")
    assert "Use it until 17 Aug 2027: a year after opening, kept cold." in cold
    best = said(ana, "opened grapefruit oil yesterday, best before 2027-02-01, kept cold")
    assert "Use it until 1 Feb 2027, its best-before day." in best
    ana.says("undo")
    ana.says("undo")
    assert "Discard after 15 Feb 2027" in said(ana, "batch grapefruit mist to 400 ml")


def test_an_oil_past_its_day_is_said_when_a_batch_is_made(house: House) -> None:
    ana = bar_with(house, MIST)
    ana.says("opened grapefruit oil on 2026-01-10")
    made = said(ana, "batch grapefruit mist to 400 ml")
    assert "That day is past: something old went into it. Use a fresh bottle." in made


def test_juice_takes_its_ingredients_date_and_the_food_code_where_it_is_followed(house: House) -> None:
    ana = bar_with(house, JUICE, "new formula Melon\nmelon juice 500 ml\nkind other", rules="US")
    assert "Discard after Nov 26, 2026: the usual time for its kind." in said(ana, "batch fresh lime x1")
    melon = said(ana, "batch melon x1")
    assert "Discard after Dec 1, 2026: seven days at 5 °C, the day of making counted as day one." in melon
    ana.says("bar rules EU")
    assert "ask your inspector" in said(ana, "batch fresh lime x1")
    ana.says("change fresh lime: discard 3 days")
    ana.says("opened lime juice best before 2026-11-27")
    dated = said(ana, "batch fresh lime x1")
    assert "Discard after 27 Nov 2026: the earliest date among what went into it, lime juice." in dated


def test_a_second_look_is_asked_for_when_its_kind_wants_one(house: House) -> None:
    ana = bar_with(house, MIST)
    ana.says("batch grapefruit mist to 400 ml")
    house.clock.turn(days=2)
    house.reminders()
    ana.says("check 1 clear")
    house.clock.turn(days=29)
    sent = [one.reply.first_line for one in house.reminders()]
    assert "Batch 1, Grapefruit mist: time for another look. How is it?" in sent


def test_days_that_cannot_be_are_refused(house: House) -> None:
    ana = bar_with(house, MIST)
    assert said(ana, "opened grapefruit oil on 2027-11-20").startswith("Sat 20 Nov 2027 is still to come.")
    assert said(ana, "opened grapefruit oil on 2026-02-30").startswith("“20")
    assert said(ana, "opened grapefriut oil").startswith("I know no ingredient called “grapefriut oil”.")


@pytest.mark.parametrize("line", ["bottle", "opened bottle"])
def test_the_guide_offers_the_oils_first(house: House, line: str) -> None:
    ana = bar_with(house, MIST)
    ana.says(line)
    assert tapped(ana, "grapefruit oil").startswith("grapefruit oil: opened 25 Nov 2026.")
