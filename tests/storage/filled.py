"""Databases with a realistic bar, and their contents in a comparable form."""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator
from datetime import UTC, datetime
from itertools import count
from pathlib import Path

import pytest

from bot.demo import filling
from storage import census, migrate, moving
from storage.store import Store
from storage.tables import Base
from tests import postgres
from tests.conftest import need_postgres
from tests.house import CHANNEL, Hands

NOW = datetime(2026, 11, 25, 9, 30, tzinfo=UTC)
Make = Callable[..., str]


def everything(store: Store) -> dict[str, list[bytes]]:
    """Every row of every table, in key order."""
    with store.engine.connect() as connection:
        return {
            table.name: [census.plain(row) for row in census.rows_of(connection, table)]
            for table in Base.metadata.sorted_tables
        }


@pytest.fixture(scope="session")
def demo_file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A SQLite file with the demo bar; copy it before changing it."""
    path = tmp_path_factory.mktemp("demo") / "demo.sqlite"
    store = Store(f"sqlite:///{path}")
    migrate.upgrade(store)
    filling.fill(store, Hands(NOW), CHANNEL, "Robin")
    store.close()
    return path


@pytest.fixture
def place(tmp_path: Path) -> Iterator[Make]:
    """Return the URL of a new, empty database of a kind: sqlite or postgresql."""
    made = []
    numbers = count(1)

    def make(kind: str, copied: str | None = None) -> str:
        if kind == "sqlite":
            return f"sqlite:///{tmp_path / f'place-{next(numbers)}.sqlite'}"
        need_postgres()
        made.append(postgres.create_database(copied))
        return made[-1].render_as_string(hide_password=False)

    yield make
    for url in made:
        postgres.drop_database(url)


@pytest.fixture(scope="session")
def demo_database(demo_file: Path) -> Iterator[str | None]:
    """The name of a PostgreSQL database with the demo bar, to be copied."""
    need_postgres()
    url = postgres.create_database()
    source, target = Store(f"sqlite:///{demo_file}"), Store(url.render_as_string(hide_password=False))
    moving.move(source, target)
    migrate.reopen(source)
    source.close()
    target.close()
    yield url.database
    postgres.drop_database(url)


@pytest.fixture
def filled(place: Make, demo_file: Path, request: pytest.FixtureRequest) -> Iterator[Callable[[str], Store]]:
    """Open a database of a kind with the demo bar in it."""
    opened = []

    def fill(kind: str) -> Store:
        if kind == "sqlite":
            url = place("sqlite")
            shutil.copy(demo_file, url.removeprefix("sqlite:///"))
        else:
            url = place(kind, request.getfixturevalue("demo_database"))
        opened.append(Store(url))
        return opened[-1]

    yield fill
    for store in opened:
        store.close()
