"""A database that can be rewound, so that every button is tested from the same state."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import closing, contextmanager
from copy import copy

from storage.memory import BarMemory, Memory
from storage.store import Store
from storage.unit import Unit
from tests.security.two_bars import tables


class _Copied(BarMemory):
    """A cache that can be copied with its content."""

    def __copy__(self) -> _Copied:
        made = _Copied(self._most)
        for bar_id, (revision, things) in self._bars.items():
            copied = Memory(things._most)
            copied._things = things._things.copy()
            made._bars[bar_id] = revision, copied
        return made


class RewindingStore(Store):
    """A SQLite store whose every unit of work lives within one outer transaction."""

    def __init__(self, url: str) -> None:
        super().__init__(url)
        self.memory: BarMemory = _Copied()
        self._connection = self.engine.connect()
        self._connection.begin()

    @contextmanager
    def reading(self) -> Iterator[Unit]:
        """Provide a read-only unit."""
        point = self._connection.begin_nested()
        try:
            with closing(Unit(self._connection, self.memory, writes=False)) as unit:
                yield unit
        finally:
            point.rollback()

    @contextmanager
    def writing(self) -> Iterator[Unit]:
        """Provide a unit whose changes stay until the rewind."""
        with self._connection.begin_nested(), closing(Unit(self._connection, self.memory)) as unit:
            yield unit
            unit.flush()

    @contextmanager
    def trial(self) -> Iterator[None]:
        """Undo all changes of the block."""
        point = self._connection.begin_nested()
        known = self.memory
        # The cache is rewound too: the same revision of a bar may come to mean another state.
        self.memory = copy(known)
        try:
            yield
        finally:
            point.rollback()
            self.memory = known

    def close(self) -> None:
        """Roll everything back and close the connection."""
        self._connection.close()
        super().close()


def guard(store: Store, bar_id: int) -> int:
    """Make SQLite refuse every change of a row of this bar; return the number of guarded tables."""
    count = 0
    with store.engine.begin() as connection:
        for name, column in [*((one.name, "bar_id") for one in tables()), ("bar", "id")]:
            for change, row in (("INSERT", "NEW"), ("UPDATE", "OLD"), ("UPDATE", "NEW"), ("DELETE", "OLD")):
                connection.exec_driver_sql(
                    f"CREATE TRIGGER guard_{name}_{change}_{row} BEFORE {change} ON {name} "
                    f"WHEN {row}.{column} = {bar_id} BEGIN SELECT RAISE(ABORT, 'a row of bar {bar_id}'); END"
                )
                count += 1
    return count
