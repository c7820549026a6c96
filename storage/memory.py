"""What was read and may be used again while the bar stays as it is."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable, Hashable
from threading import Lock
from typing import TypeVar

Thing = TypeVar("Thing")
_MOST_BARS = 1024
_MOST_THINGS = 128  # of one bar


class Memory:
    """The things last used; the oldest give way."""

    def __init__(self, most: int) -> None:
        self._most = most
        self._things: OrderedDict[Hashable, object] = OrderedDict()
        self._lock = Lock()

    def get(self, key: Hashable, make: Callable[[], Thing]) -> Thing:
        """Return what is kept under the key, or make and keep it."""
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
    """What was read of each bar of one database, at its newest revision; the bars last used are kept."""

    def __init__(self, most: int = _MOST_BARS) -> None:
        self._most = most
        self._bars: OrderedDict[int, tuple[int, Memory]] = OrderedDict()
        self._lock = Lock()

    def get(self, bar_id: int, revision: int, key: Hashable, make: Callable[[], Thing]) -> Thing:
        """Return what is kept of a bar at this revision under the key, or make and keep it.

        A newer revision lets go of the one before. Who still reads an older one gets what is made
        for it, and nothing of that is kept.
        """
        things = self._things(bar_id, revision)
        return make() if things is None else things.get(key, make)

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
