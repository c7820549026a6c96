"""Tests of delivering reminders: a claim belongs to one process, and each retry waits longer."""

from __future__ import annotations

from datetime import datetime, timedelta

from bot.work.reminders import delivery
from bot.work.reminders.delivery import LEASE, DueReminder, Outcome, Sent
from bot.work.reminders.planning import ReminderState
from storage.tables import Reminder
from tests.house import CHANNEL, House
from tests.work.acting import acting


def _due(house: House) -> None:
    """A waste prompt is due to Ana."""
    house.open_bar()
    house.clock.turn(hours=10, minutes=30)


def _claim(house: House) -> list[DueReminder]:
    return delivery.claim(house.store, CHANNEL, house.clock.now())


def _settle(house: House, due: DueReminder, outcome: Outcome, wait: int = 0) -> ReminderState | None:
    sent = Sent(outcome, wait=timedelta(seconds=wait))
    return delivery.settle(house.store, due, sent, house.clock.now())


def _row(house: House, due: DueReminder) -> tuple[str, int, datetime]:
    with acting(house) as context:
        row = context.book.get(Reminder, due.id)
        assert row is not None
        return row.state, row.attempts, row.due_at


def test_who_lost_a_claim_no_longer_settles_it(house: House) -> None:
    _due(house)
    (stalled,) = _claim(house)
    assert _claim(house) == []
    house.clock.turn(seconds=LEASE.total_seconds() + 1)
    (taken_over,) = _claim(house)
    assert taken_over.id == stalled.id
    assert taken_over.unsure
    for outcome in Outcome:
        assert _settle(house, stalled, outcome) is None
    assert _row(house, taken_over)[:2] == (ReminderState.SENDING, 2)
    assert _settle(house, taken_over, Outcome.SENT) is ReminderState.SENT
    assert _settle(house, taken_over, Outcome.NOT_SENT) is None
    house.clock.turn(hours=2)
    assert _claim(house) == []


def test_each_retry_waits_twice_as_long_up_to_a_limit(house: House) -> None:
    _due(house)
    waits = []
    for _attempt in range(10):
        (due,) = _claim(house)
        assert _settle(house, due, Outcome.NOT_SENT) is ReminderState.WAITING
        waits.append(_row(house, due)[2] - house.clock.now())
        house.clock.set(_row(house, due)[2] - timedelta(seconds=1))
        assert _claim(house) == []
        house.clock.turn(seconds=1)
    assert waits[1:8] == [2 * one for one in waits[:7]]
    assert waits[8:] == [waits[7], waits[7]]


def test_a_longer_wait_that_the_channel_asks_for_is_kept(house: House) -> None:
    _due(house)
    (due,) = _claim(house)
    _settle(house, due, Outcome.NOT_SENT, wait=1800)
    assert _row(house, due)[2] == house.clock.now() + timedelta(minutes=30)


def test_an_unsure_send_stays_unsure_until_one_has_surely_arrived(house: House) -> None:
    _due(house)
    (due,) = _claim(house)
    assert not due.unsure
    _settle(house, due, Outcome.UNSURE)
    house.clock.turn(hours=1)
    (due,) = _claim(house)
    assert due.unsure
    _settle(house, due, Outcome.NOT_SENT)
    house.clock.turn(hours=1)
    (due,) = _claim(house)
    assert due.unsure
    _settle(house, due, Outcome.SENT)
    with acting(house) as context:
        row = context.book.get(Reminder, due.id)
        assert row is not None
        assert (row.unsure, row.sent_at) == (False, context.now)


def test_late_ones_are_counted_with_the_longest_delay(house: House) -> None:
    _due(house)
    assert delivery.late(house.store, CHANNEL, house.clock.now()) == (0, 0.0)
    house.clock.turn(minutes=5)
    count, seconds = delivery.late(house.store, CHANNEL, house.clock.now())
    assert count == 1
    assert seconds >= 300
