"""Chat locks and duplicate detection: one chat's updates in order, those of others in parallel."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator, Awaitable, Callable
from contextlib import asynccontextmanager
from typing import Generic, TypeVar

from storage.trouble import AwayError

Thing = TypeVar("Thing")
_MOST_PEOPLE = 10_000
_MINUTE = 60.0


class Lately(Generic[Thing]):
    """The most recent things seen, each with the number it came with first, to drop duplicates."""

    def __init__(self, most: int) -> None:
        self._most = most
        self._things: dict[Thing, int] = {}  # keeps insertion order

    def __contains__(self, thing: Thing) -> bool:
        return thing in self._things

    def add(self, thing: Thing) -> None:
        """Remember a thing, and forget the oldest above the limit."""
        self.first(thing, 0)

    def first(self, thing: Thing, number: int) -> int:
        """Remember a thing and return the number that it came with first."""
        found = self._things.setdefault(thing, number)
        if len(self._things) > self._most:
            del self._things[next(iter(self._things))]
        return found


async def _nobody(person: str) -> bool:
    return False


class PersonPace:
    """Limits the messages of each person: a burst at once, then so many a minute. The rest waits in order."""

    def __init__(self, per_minute: int, is_newcomer: Callable[[str], Awaitable[bool]] = _nobody) -> None:
        """As many as `per_minute` may come at once; 0 for no limit. A newcomer has about half of both."""
        self._gap = _MINUTE / per_minute if per_minute else 0.0
        self._free = _MINUTE
        self._next: dict[str, float] = {}  # when a person's next message would be due without a burst
        self._is_newcomer = is_newcomer
        self._asked: dict[str, asyncio.Task[bool]] = {}  # about those who send much just now

    async def wait(self, person: str) -> None:
        """Wait for the turn of a person's next message."""
        if not self._gap:
            return
        now = asyncio.get_running_loop().time()
        if len(self._next) > _MOST_PEOPLE:
            self._next = {one: due for one, due in self._next.items() if due > now}
            self._asked = {one: task for one, task in self._asked.items() if one in self._next}
        due = max(self._next.get(person, 0.0), now)
        share = 2 if self._is_held_back(person, due - now) else 1
        self._next[person] = due + share * self._gap
        wait = due - now - self._free / share
        if wait > 0:
            await asyncio.sleep(wait)

    def _is_held_back(self, person: str, ahead: float) -> bool:
        """Whether it is a newcomer who sends much. No message waits for the answer, so they stay in order."""
        if ahead < self._free / 4:
            self._asked.pop(person, None)
            return False
        if person not in self._asked:
            self._asked[person] = asyncio.create_task(self._known(person))
        asked = self._asked[person]
        return asked.done() and asked.result()

    async def _known(self, person: str) -> bool:
        try:
            return await self._is_newcomer(person)
        except AwayError:
            return False


class Turns:
    """A fair lock per key; a key without holder and waiters is forgotten."""

    def __init__(self) -> None:
        self._locks: dict[str, asyncio.Lock] = {}
        self._users: dict[str, int] = {}

    @asynccontextmanager
    async def of(self, key: str) -> AsyncIterator[None]:
        """Wait for the key's lock, in the order of the requests."""
        lock = self._locks.setdefault(key, asyncio.Lock())
        self._users[key] = self._users.get(key, 0) + 1
        try:
            async with lock:
                yield
        finally:
            self._users[key] -= 1
            if not self._users[key]:
                del self._users[key], self._locks[key]
