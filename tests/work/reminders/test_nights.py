"""Tests that a night without waste is logged, undone and put back, and that waste overrules it."""

from __future__ import annotations

import re
from datetime import date, timedelta

from bot.work.reminders import nights
from tests.house import House, Person, first_lines, text
from tests.work.acting import acting

_NIGHT = date(2026, 11, 25)


def _at_close(house: House) -> Person:
    ana = house.open_bar()
    house.clock.turn(hours=10, minutes=30)
    house.reminders()
    return ana


def _without_waste(house: House) -> set[date]:
    with acting(house) as context:
        return set(nights.without_waste(context, date(2026, 11, 1), date(2026, 11, 30)))


def test_it_is_in_the_log_undone_and_put_back(house: House) -> None:
    ana = _at_close(house)
    assert "Undo" in str(ana.taps("Nothing tonight"))
    assert "no waste on Wed, 25 Nov" in text(ana.says("log"))
    assert _without_waste(house) == {_NIGHT}
    assert first_lines(ana.says("undo")) == ["Undone: no waste on Wed, 25 Nov"]
    assert _without_waste(house) == set()
    assert first_lines(ana.says("put it back")) == ["Put back: no waste on Wed, 25 Nov"]
    assert _without_waste(house) == {_NIGHT}
    assert first_lines(ana.says("nothing tonight")) == ["That was already done."]


def test_once_undone_it_can_be_said_again(house: House) -> None:
    ana = _at_close(house)
    ana.says("nothing tonight")
    first = ana.taps("Undo")[0].buttons[0][0].line
    assert first_lines(ana.says("nothing tonight")) == ["Noted: no waste tonight."]
    ana.taps_line(first)  # the old one is no longer there to be put back
    assert _without_waste(house) == {_NIGHT}
    ana.says("undo")
    assert _without_waste(house) == set()


def test_undo_takes_it_off_the_prompt_of_every_manager(house: House) -> None:
    ana = house.open_bar("Ana")
    house.joins("Cleo", manager=True)
    house.clock.turn(hours=10, minutes=30)
    assert len((*house.reminders(), *house.reminders())) == 2
    ana.says("nothing tonight")
    ana.says("undo")
    assert first_lines(house.person("Cleo").taps("Nothing tonight")) == ["Noted: no waste tonight."]


def test_waste_of_the_night_overrules_it(house: House) -> None:
    ana = _at_close(house)
    ana.says("nothing tonight")
    ana.says("waste 2 limes mouldy")
    assert re.search(r"lime +2 ", text(ana.says("report 2026-11-25 to 2026-11-25")))
    assert first_lines(ana.says("undo")) == ["Undone: 2 limes, mouldy"]
    assert _without_waste(house) == {_NIGHT}  # only the waste was undone


def test_said_before_the_prompt_it_is_of_this_night_and_nobody_is_asked(house: House) -> None:
    ana = _at_close(house)
    ana.taps("Nothing tonight")
    house.clock.turn(hours=19)  # the evening after
    assert first_lines(ana.says("nothing tonight")) == ["Noted: no waste tonight."]
    assert _without_waste(house) == {_NIGHT, _NIGHT + timedelta(days=1)}
    assert first_lines(ana.says("nothing tonight")) == ["That was already done."]
    house.clock.turn(hours=6)
    assert house.reminders() == []
    house.clock.turn(hours=24)
    assert len(house.reminders()) == 1  # the next night is asked about again


def test_undone_before_the_prompt_it_is_asked_again(house: House) -> None:
    ana = house.open_bar()
    ana.says("nothing tonight")
    ana.taps("Undo")
    assert _without_waste(house) == set()
    house.clock.turn(hours=10, minutes=30)
    assert len(house.reminders()) == 1


def test_before_the_prompt_it_is_not_said_of_a_night_with_waste(house: House) -> None:
    ana = house.open_bar()
    ana.says("waste 2 limes mouldy")
    assert first_lines(ana.says("nothing tonight")) == ["Waste of tonight is in the log: undo that first."]
    assert _without_waste(house) == set()
    ana.says("undo")
    assert first_lines(ana.says("nothing tonight")) == ["Noted: no waste tonight."]
