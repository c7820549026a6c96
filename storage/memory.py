"""What was read and may be used again while the bar stays as it is."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable, Hashable
from threading import Lock
from typing import TypeVar

Thing = TypeVar("Thing")
_MOST = 4096


class Memory:
    """The things last used, of one database; the oldest give way."""

    def __init__(self, most: int = _MOST) -> None:
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
