"""Tests of the leased inbox: each update has one owner, in the order of its chat, and none is lost."""

from __future__ import annotations

import random
import threading
import time
from collections import defaultdict
from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, datetime

import pytest
from sqlalchemy import text

from bot.work.inbox import inbox, leased_inbox
from bot.work.inbox.inbox import Letter
from storage.store import Store

pytestmark = pytest.mark.parametrize("database", ["postgresql"], indirect=True)
NOW = datetime(2026, 11, 26, 18, 0, tzinfo=UTC)
CHANNEL = "telegram"


def _letter(number: int, chat: str) -> Letter:
    return Letter(CHANNEL, number, "{}", chat=chat)


def _take_in(store: Store, owner: str, *letters: Letter, most: int = 10) -> list[int]:
    return [one.update_id for one in leased_inbox.take_in(store, letters, owner, most, NOW)]


def _claim(store: Store, owner: str, most: int = 10) -> list[int]:
    return [one.update_id for one in leased_inbox.claim(store, CHANNEL, owner, most)]


def _answered(store: Store, *numbers: int) -> None:
    inbox.put_away(store, [_letter(number, "a") for number in numbers], NOW)


def _run_out(store: Store, owner: str) -> None:
    """Expire the leases of an owner that has been silent."""
    with store.writing() as unit:
        unit.session.execute(
            text("UPDATE inbox SET lease_until = lease_until - 3600 WHERE owner = :owner"), {"owner": owner}
        )


def test_whoever_takes_in_works(store: Store) -> None:
    assert _take_in(store, "ann", _letter(1, "a"), _letter(2, "a"), _letter(3, "b")) == [1, 3, 2]
    assert _claim(store, "ben") == []


def test_what_is_known_is_not_taken_twice(store: Store) -> None:
    assert _take_in(store, "ann", _letter(1, "a")) == [1]
    assert _take_in(store, "ben", _letter(1, "a"), _letter(2, "b")) == [2]
    _answered(store, 1)
    assert _take_in(store, "ben", _letter(1, "a")) == []


def test_a_chat_stays_with_whoever_has_its_earlier_updates(store: Store) -> None:
    assert _take_in(store, "ann", _letter(1, "a")) == [1]
    assert _take_in(store, "ben", _letter(2, "a")) == []
    assert _claim(store, "ben") == []
    assert _claim(store, "ann") == [2]
    assert _take_in(store, "ben", _letter(3, "a")) == []
    _answered(store, 1, 2)
    assert _claim(store, "ben") == [3]


def test_no_more_than_there_is_room_for(store: Store) -> None:
    letters = [_letter(number, str(number)) for number in range(1, 6)]
    assert _take_in(store, "ann", *letters, most=2) == [1, 2]
    assert _claim(store, "ben", most=2) == [3, 4]
    assert _claim(store, "ann", most=0) == []
    assert _claim(store, "ann") == [5]


def test_what_a_process_left_is_taken_up_when_its_lease_has_run_out(store: Store) -> None:
    assert _take_in(store, "ann", _letter(1, "a"), _letter(2, "a")) == [1, 2]
    _run_out(store, "ann")
    assert _claim(store, "ben", most=1) == [1]
    assert _claim(store, "ann") == []  # too late: another process owns the chat now
    assert _claim(store, "ben") == [2]


def test_who_renews_keeps(store: Store) -> None:
    _take_in(store, "ann", _letter(1, "a"))
    _run_out(store, "ann")
    leased_inbox.renew(store, CHANNEL, "ann", [1])
    assert _claim(store, "ben") == []
    leased_inbox.renew(store, CHANNEL, "ben", [1])  # not ben's to renew or to release
    leased_inbox.release(store, CHANNEL, "ben", [1])
    assert _claim(store, "ben") == []
    leased_inbox.release(store, CHANNEL, "ann", [1])
    assert _claim(store, "ben") == [1]


def test_replies_that_were_kept_come_along(store: Store) -> None:
    _take_in(store, "ann", _letter(1, "a"))
    with store.writing() as unit:
        assert inbox.mark_worked(unit, _letter(1, "a"), "[]", NOW)
    _run_out(store, "ann")
    found = leased_inbox.claim(store, CHANNEL, "ben", 1)
    assert found[0].replies == "[]"
    with store.writing() as unit:
        assert not inbox.mark_worked(unit, _letter(1, "a"), "[]", NOW)


class Floor:
    """A place for several workers, with checks of what must not happen."""

    def __init__(self, store: Store) -> None:
        self.store = store
        self.worked: dict[str, list[int]] = defaultdict(list)
        self.wrong: list[str] = []
        self.arrived = threading.Event()
        self._inside: dict[str, str] = {}
        self._guard = threading.Lock()

    def work(self, owner: str, found: list[Letter]) -> None:
        """Work on letters as their owner."""
        for letter in found:
            with self._guard:
                if self._inside.setdefault(letter.chat, owner) != owner:
                    self.wrong.append(f"{owner} and {self._inside[letter.chat]} in {letter.chat}")
                self.worked[letter.chat].append(letter.update_id)
            time.sleep(0.001)  # others get a chance in between
        with self._guard:
            for letter in found:
                self._inside.pop(letter.chat, None)
        inbox.put_away(self.store, found, NOW)

    def listen(self, owner: str, letters: list[Letter]) -> None:
        """Store all updates, some at a time, and immediately work on the leased ones."""
        for at in range(0, len(letters), 8):
            self.work(owner, leased_inbox.take_in(self.store, letters[at : at + 8], owner, 5, NOW))

    def help(self, owner: str) -> None:
        """Claim until everything has arrived and nothing is left."""
        while True:
            last = self.arrived.is_set()
            found = leased_inbox.claim(self.store, CHANNEL, owner, 6)
            self.work(owner, found)
            if last and not found and not inbox.waiting(self.store, CHANNEL):
                return


def test_four_at_once_share_without_losing_doubling_or_overtaking(store: Store) -> None:
    """One stores and three claim; at no moment do two of them work on one chat, and its order is kept."""
    chance = random.Random(6)
    letters = [_letter(number, f"chat {chance.randrange(12)}") for number in range(1, 241)]
    floor = Floor(store)
    with ThreadPoolExecutor(4) as people:
        helping = [people.submit(floor.help, name) for name in ("ben", "cleo", "dora")]
        people.submit(floor.listen, "ann", letters).result(60)
        floor.arrived.set()
        for one in helping:
            one.result(60)
    assert not floor.wrong
    assert sorted(number for chat in floor.worked.values() for number in chat) == list(range(1, 241))
    assert all(numbers == sorted(numbers) for numbers in floor.worked.values())


def _work(store: Store, owner: str, number: int) -> bool:
    with store.writing() as unit:
        return leased_inbox.mark_worked(unit, _letter(number, "a"), owner, "[]")


def test_who_comes_late_can_keep_nothing(store: Store) -> None:
    _take_in(store, "ann", _letter(1, "a"))
    _run_out(store, "ann")
    assert not _work(store, "ann", 1)  # nobody has claimed it yet, but somebody may at any moment
    assert _claim(store, "ben") == [1]
    assert not _work(store, "ann", 1)
    assert leased_inbox.hold_on(store, _letter(1, "a"), "ann") is None
    assert _work(store, "ben", 1)
    assert not _work(store, "ben", 1)
    # An update forgotten long ago belongs to nobody: it must not be processed as new.
    assert not _work(store, "ben", 2)


def test_who_comes_late_before_anybody_else_goes_on(store: Store) -> None:
    _take_in(store, "ann", _letter(1, "a"), _letter(2, "a"))
    _run_out(store, "ann")
    assert leased_inbox.hold_on(store, _letter(2, "a"), "ann") is not None
    assert _work(store, "ann", 2)
    held = leased_inbox.hold_on(store, _letter(2, "a"), "ann")
    assert held is not None
    assert held.replies == "[]"
    _answered(store, 2)
    assert leased_inbox.hold_on(store, _letter(2, "a"), "ann") is None


def test_who_comes_late_does_not_overtake(store: Store) -> None:
    """Another owns the first of a chat by now: the second must not run before it."""
    _take_in(store, "ann", _letter(1, "a"), _letter(2, "a"))
    _run_out(store, "ann")
    assert _claim(store, "ben", most=1) == [1]
    assert leased_inbox.renew(store, CHANNEL, "ann", [1, 2]) == set()
    assert leased_inbox.hold_on(store, _letter(2, "a"), "ann") is None
    _answered(store, 1)
    assert leased_inbox.renew(store, CHANNEL, "ann", [1, 2]) == {2}


def test_what_another_began_is_known_for_it(store: Store) -> None:
    assert not leased_inbox.take_in(store, [_letter(1, "a"), _letter(2, "b")], "ann", 1, NOW)[0].again
    assert not leased_inbox.claim(store, CHANNEL, "ben", 1)[0].again
    _run_out(store, "ann")
    assert leased_inbox.claim(store, CHANNEL, "ben", 1)[0].again
