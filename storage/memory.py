"""Cache values read from a bar until the bar changes."""

from __future__ import annotations

import time
from collections import OrderedDict
from collections.abc import Callable, Hashable
from threading import Lock
from typing import TypeVar

Thing = TypeVar("Thing")
_MOST_BARS = 1024
_LONG_SECONDS = 0.03
_MOST_THINGS = 128  # per bar


class Memory:
    """A least-recently-used cache."""

    def __init__(self, most: int) -> None:
        self._most = most
        self._things: OrderedDict[Hashable, object] = OrderedDict()
        self._lock = Lock()

    def __contains__(self, key: Hashable) -> bool:
        with self._lock:
            return key in self._things

    def get(self, key: Hashable, make: Callable[[], Thing]) -> Thing:
        """Return the value of the key, computing it on a miss."""
        with self._lock:
            if key in self._things:
                self._things.move_to_end(key)
                return self._things[key]  # type: ignore[return-value]
        made = make()
        with self._lock:
            self._things[key] = made
            while len(self._things) > self._most:
                self._things.popitem(last=False)
        return made


class BarMemory:
    """A cache for each bar of one database, at its newest revision; only recently used bars are kept."""

    def __init__(self, most: int = _MOST_BARS) -> None:
        self._most = most
        self._bars: OrderedDict[int, tuple[int, Memory]] = OrderedDict()
        self._lock = Lock()
        self._slow: set[int] = set()

    def get(self, bar_id: int, revision: int, key: Hashable, make: Callable[[], Thing]) -> Thing:
        """Return the value of the key for a bar at this revision, computing it on a miss.

        A newer revision drops the values of the older one. Stale readers bypass the cache.
        """
        things = self._things(bar_id, revision)
        begun = time.thread_time()  # not of the wall: others may have had the processor
        found = make() if things is None else things.get(key, make)
        if time.thread_time() - begun > _LONG_SECONDS:
            self._slow.add(bar_id)
        return found

    def is_quick(self, bar_id: int, revision: int, key: Hashable) -> bool:
        """Whether the value of the key is at hand, or no value of the bar ever took long to compute."""
        if bar_id not in self._slow:
            return True
        with self._lock:
            newest, things = self._bars.get(bar_id, (-1, None))
        return newest == revision and things is not None and key in things

    def _things(self, bar_id: int, revision: int) -> Memory | None:
        with self._lock:
            newest, things = self._bars.get(bar_id, (-1, None))
            if revision < newest:
                return None
            if things is None or revision > newest:
                things = Memory(_MOST_THINGS)
                self._bars[bar_id] = revision, things
                while len(self._bars) > self._most:
                    self._bars.popitem(last=False)
            else:
                self._bars.move_to_end(bar_id)
            return things
