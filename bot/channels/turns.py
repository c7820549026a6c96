"""Turns: the updates of one chat are worked one after another, those of different chats side by side."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager


class Turns:
    """A fair lock for each key; a key that nobody holds or waits for is forgotten."""

    def __init__(self) -> None:
        self._locks: dict[str, asyncio.Lock] = {}
        self._users: dict[str, int] = {}

    @asynccontextmanager
    async def of(self, key: str) -> AsyncIterator[None]:
        """Wait for the key's turn; the order of asking is kept."""
        lock = self._locks.setdefault(key, asyncio.Lock())
        self._users[key] = self._users.get(key, 0) + 1
        try:
            async with lock:
                yield
        finally:
            self._users[key] -= 1
            if not self._users[key]:
                del self._users[key], self._locks[key]
