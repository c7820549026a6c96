"""Demo bars as of several moments, each filled once."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from bot.demo import filling
from storage import migrate
from storage.store import Store
from tests.house import CHANNEL, Hands

# A Wednesday: clocks went back in Lisbon on 25 October, within the twelve weeks.
AUTUMN = datetime(2026, 11, 25, 9, 30, tzinfo=UTC)
# Clocks go forward on 28 March 2027.
SPRING = datetime(2027, 4, 24, 23, 50, tzinfo=UTC)
# Every day of a week, and the hours at which a night has just ended, is running, or is about to end.
MOMENTS = [
    *(AUTUMN + timedelta(days=days) for days in range(7)),
    datetime(2026, 11, 28, 4, 55, tzinfo=UTC),
    datetime(2026, 11, 28, 5, 1, tzinfo=UTC),
    datetime(2026, 12, 1, 0, 40, tzinfo=UTC),
    SPRING,
    datetime(2027, 7, 5, 12, 0, tzinfo=UTC),
]
# Clocks go back on 25 October 2026 and forward on 28 March 2027, at 01:00 UTC: that night is the last one, or
# one in which something rested, was peeled or was checked again.
CHANGES = [
    *(datetime(2026, 10, 25, 9, tzinfo=UTC) + timedelta(days=days) for days in (0, 1, 2, 5, 15, 40)),
    *(datetime(2027, 3, 28, 9, tzinfo=UTC) + timedelta(days=days) for days in (0, 1, 2, 5, 15, 40)),
]
OWNER = "Robin"


class Filler:
    """Provides databases, filled once for each moment. SQLite: PostgreSQL is tested once, below."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder
        self._opened: list[Store] = []
        self.told: dict[datetime | None, filling.Filled] = {}
        self._make(None)

    def _path(self, now: datetime | None) -> Path:
        return self._folder / f"{now.timestamp() if now else 'empty'}.sqlite"

    def _make(self, now: datetime | None) -> None:
        if now is not None:
            shutil.copy(self._path(None), self._path(now))
        store = Store(f"sqlite:///{self._path(now)}")
        if now is None:
            migrate.upgrade(store)
        else:
            self.told[now] = fill(store, now)
        store.close()

    def at(self, now: datetime | None) -> Store:
        """Return a database filled as of a moment; empty for None."""
        if not self._path(now).exists():
            self._make(now)
        copy = self._folder / f"copy {len(self._opened)}.sqlite"
        shutil.copy(self._path(now), copy)
        self._opened.append(Store(f"sqlite:///{copy}"))
        return self._opened[-1]

    def close(self) -> None:
        """Release the databases."""
        for store in self._opened:
            store.close()


@pytest.fixture(scope="module")
def filler(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Filler]:
    made = Filler(tmp_path_factory.mktemp("demo"))
    yield made
    made.close()


@pytest.fixture
def filled(filler: Filler) -> Store:
    """A database filled on a Wednesday."""
    return filler.at(AUTUMN)


def fill(store: Store, now: datetime, name: str = OWNER) -> filling.Filled:
    return filling.fill(store, Hands(now), CHANNEL, name)
