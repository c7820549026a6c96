"""Tests of reminders: their targets, and that each is sent once."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

import pytest

from bot.work.batches import batch_life, batches
from bot.work.errors import NotThereError
from bot.work.reminders import planning
from bot.work.reminders.delivery import Outcome
from tests.house import House, first_lines
from tests.work.acting import acting


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


def test_at_noon_said_at_noon_is_tomorrows_noon(house: House) -> None:
    house.open_bar()
    house.clock.turn(hours=10, minutes=30)
    (asked,) = house.reminders()
    house.clock.set(datetime(2026, 11, 26, 11, 59, tzinfo=UTC))
    with acting(house) as context:
        due = planning.snooze_until(context, asked.due.id, 12 * 60)
    assert due == datetime(2026, 11, 26, 12, tzinfo=UTC)
    house.clock.turn(minutes=1)
    with acting(house) as context:
        due = planning.snooze_until(context, asked.due.id, 12 * 60)
    assert due == datetime(2026, 11, 27, 12, tzinfo=UTC)


def test_what_is_done_is_not_postponed(house: House) -> None:
    house.open_bar()
    house.clock.turn(hours=10, minutes=30)
    (asked,) = house.reminders()
    with acting(house) as context:
        assert planning.done(context, asked.due.id) == "close"
        assert planning.done(context, asked.due.id) is None
        for number in (asked.due.id, 999):
            with pytest.raises(NotThereError):
                planning.snooze(context, number, timedelta(hours=1))
        with pytest.raises(NotThereError):
            planning.done(context, 999)


def _kinds(house: House, days: int) -> list[str]:
    """Return the kinds of reminders that come within this many days."""
    kinds = []
    for _quarter in range(4 * days):
        kinds += [one.due.kind for one in house.reminders()]
        house.clock.turn(hours=6)
    return kinds


@pytest.mark.parametrize(("discard", "looks"), [(8, 1), (7, 0)])
def test_a_second_look_is_asked_for_only_before_the_discard_date(
    house: House, discard: int, looks: int
) -> None:
    ana = house.open_bar()
    ana.says("bar close reminder off")
    ana.says(f"new formula Rich\nsugar 200 g\nwater 100 ml\nkind syrup\nrest 0 h\ndiscard {discard} days")
    ana.says("batch rich x1")
    assert _kinds(house, 9).count("recheck") == looks


@pytest.mark.parametrize(("days", "looks"), [(8, 1), (7, 0), (3, 0)])
def test_a_lot_that_expires_first_takes_the_second_look_away(house: House, days: int, looks: int) -> None:
    ana = house.open_bar()
    ana.says("bar close reminder off")
    ana.says("new formula Rich\nsugar 200 g\nwater 100 ml\nkind syrup\nrest 0 h\ndiscard 9 days")
    ana.says("batch rich x1")
    with acting(house) as context:
        sugar = batches.get(context, 1).lines[0].ingredient_id
        best_before = context.today + timedelta(days=days)
        assert batch_life.note_lot(context, 1, sugar, "S1", best_before).discard_on == best_before
    assert _kinds(house, 10).count("recheck") == looks


def test_an_ended_batch_reminds_nobody(house: House) -> None:
    ana = house.open_bar()
    ana.says("bar close reminder off")
    ana.says("new formula Brine\nsalt 20 g\nwater 80 ml\nkind saline\nrest 2 h\ndiscard 4 days")
    ana.says("batch brine x1")
    ana.says("batch brine x1")
    with acting(house) as context:
        batch_life.use_up(context, 1)
        batch_life.discard(context, 2, None, "spilt")
    assert _kinds(house, 5) == []
