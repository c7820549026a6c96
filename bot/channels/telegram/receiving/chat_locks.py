"""Chat locks and duplicate detection: one chat's updates in order, those of others in parallel."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager


class Lately:
    """The most recent numbers seen, to drop duplicates."""

    def __init__(self, most: int) -> None:
        self._most = most
        self._numbers: dict[int, None] = {}  # keeps insertion order

    def __contains__(self, number: int) -> bool:
        return number in self._numbers

    def add(self, number: int) -> None:
        """Remember a number, and forget the oldest above the limit."""
        self._numbers[number] = None
        if len(self._numbers) > self._most:
            del self._numbers[next(iter(self._numbers))]

    def discard(self, number: int) -> None:
        """Forget a number."""
        self._numbers.pop(number, None)


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
