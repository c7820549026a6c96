"""Tests of several people, threads and processes at once."""

from __future__ import annotations

import multiprocessing
import threading
from collections import Counter
from collections.abc import Callable, Sequence
from datetime import datetime, timedelta
from functools import partial
from typing import Any

import pytest

from bot.work.reminders import delivery
from bot.work.reminders.delivery import Outcome, Sent
from bot.work.reminders.planning import ReminderState
from storage.store import Store
from storage.tables import Entry, Reminder, Waste
from tests.house import CHANNEL, House, Person, first_lines, text
from tests.work.claiming import claim_all, claim_in_process

MIST = "new formula Grapefruit mist\ngrapefruit oil 12 ml\nneutral spirit 96 % 62 ml\nkind aroma mist"


def at_once(*works: Callable[[], Any]) -> list[Any]:
    """Run several functions at the same moment; return their results, or raise the first error."""
    ready = threading.Barrier(len(works))
    results: list[Any] = [None] * len(works)

    def run(number: int) -> None:
        ready.wait()
        try:
            results[number] = works[number]()
        except BaseException as error:
            results[number] = error

    threads = [threading.Thread(target=run, args=(number,)) for number in range(len(works))]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    for result in results:
        if isinstance(result, BaseException):
            raise result
    return results


def _said(person: Person, line: str) -> str:
    return first_lines(person.says(line))[0]


def test_everything_logged_at_the_same_moment_is_there(house: House) -> None:
    house.open_bar("Ana")
    persons = [house.person("Ana"), *(house.joins(name) for name in ("Ben", "Cleo", "Dan"))]

    def log_often(number: int) -> list[str]:
        return [first_lines(persons[number].says(f"waste {number + 1} limes mouldy"))[0] for _ in range(6)]

    said = at_once(*[partial(log_often, number) for number in range(4)])
    assert all(line.startswith("Logged: ") for lines in said for line in lines)
    with house.store.reading() as unit:
        book = unit.bar(1)
        rows = book.all(Waste)
        assert sum(row.count_milli or 0 for row in rows) == 6 * (1 + 2 + 3 + 4) * 1000
        assert sorted(row.id for row in rows) == list(range(1, 25))
        numbers = [entry.id for entry in book.all(Entry)]
        assert len(set(numbers)) == len(numbers)


def test_a_batch_ends_once(house: House) -> None:
    ana = house.open_bar("Ana")
    ben = house.joins("Ben")
    ana.says(MIST)
    for number in range(1, 6):
        ana.says("batch grapefruit mist x1")
        said = at_once(partial(_said, ana, f"used {number}"), partial(_said, ben, f"discard {number}, spilt"))
        refused = [line for line in said if line in {f"Batch {number} is {state}." for state in _ENDED}]
        assert len(refused) == 1, said


_ENDED = ("used up", "discarded")


def test_one_undo_of_two_takes_effect(house: House) -> None:
    ana = house.open_bar("Ana")
    for _time in range(4):
        ana.says("waste 3 limes mouldy")
        _message, line = house.room(None, ana).button("Undo")
        said = [first_lines(one)[0] for one in at_once(*[partial(ana.taps_line, line)] * 2)]
        assert sorted(said) == ["Undone: 3 limes, mouldy", "You undid that at 18:00."]


def test_a_code_for_one_lets_one_in(house: House) -> None:
    ana = house.open_bar("Ana")
    (invited,) = ana.says("team invite")
    code = next(line for line in text([invited]).splitlines() if line.startswith("join "))
    ben, cleo = house.person("Ben"), house.person("Cleo")
    said = at_once(partial(_said, ben, code), partial(_said, cleo, code))
    assert sorted(line.split(" ")[0] for line in said) == ["That", "Welcome"]


def _put_reminders(store: Store, count: int, due: datetime) -> None:
    with store.writing() as unit:
        unit.bar(1).add_all(
            [
                Reminder(
                    channel=CHANNEL,
                    key=f"test:{number}",
                    kind="rested",
                    batch_id=1,
                    person_id=1,
                    details={},
                    first_due_at=due,
                    due_at=due,
                    state=ReminderState.WAITING,
                )
                for number in range(count)
            ]
        )


def _each_once(house: House, taken: Sequence[Sequence[int]]) -> None:
    counted = Counter(number for numbers in taken for number in numbers)
    with house.store.reading() as unit:
        due = {row.id for row in unit.bar(1).all(Reminder, Reminder.key.like("test:%"))}
    assert set(counted) >= due
    assert set(counted.values()) == {1}


def _house_with_reminders(house: House) -> datetime:
    ana = house.open_bar("Ana")
    ana.says(MIST)
    ana.says("batch grapefruit mist x1")
    _put_reminders(house.store, 60, house.clock.now())
    return house.clock.now() + timedelta(minutes=1)


def test_threads_claim_each_reminder_once(house: House) -> None:
    now = _house_with_reminders(house)
    _each_once(house, at_once(*[partial(claim_all, house.store, CHANNEL, now)] * 5))


def test_processes_claim_each_reminder_once(house: House, store_url: str) -> None:
    now = _house_with_reminders(house)
    context = multiprocessing.get_context("spawn")
    taken = context.Queue()
    processes = [
        context.Process(target=claim_in_process, args=(store_url, CHANNEL, now.timestamp(), taken))
        for _ in range(3)
    ]
    for process in processes:
        process.start()
    found = [taken.get(timeout=60) for _process in processes]
    for process in processes:
        process.join(60)
    _each_once(house, found)


def test_who_comes_late_neither_sends_nor_settles(house: House, monkeypatch: pytest.MonkeyPatch) -> None:
    """It stalled for longer than its lease, and its claims were claimed again."""
    begin = _house_with_reminders(house)
    late = delivery.claim(house.store, CHANNEL, begin, most=1)[0]
    over = begin + delivery.LEASE
    monkeypatch.setattr(delivery, "uptime", lambda: late.claimed_at + delivery.LEASE.total_seconds())
    # Nobody has claimed it yet: it is claimed for another lease, in which no other process claims it.
    assert delivery.still_ours(house.store, late, over - timedelta(seconds=1))
    claim_all(house.store, CHANNEL, over)
    assert delivery.still_ours(house.store, late, over)
    second = next(
        one for one in delivery.claim(house.store, CHANNEL, over + delivery.LEASE, 90) if one.id == late.id
    )
    assert second.unsure
    assert not delivery.still_ours(house.store, late, over + delivery.LEASE)
    assert delivery.settle(house.store, late, Sent(Outcome.SENT), over + delivery.LEASE) is None
    assert (
        delivery.settle(house.store, second, Sent(Outcome.SENT), over + delivery.LEASE) is ReminderState.SENT
    )
