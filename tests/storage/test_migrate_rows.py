"""Tests that a migration from every past revision with real rows loses and changes no row.

The rows are those of a bar filled by this program, as far as the older tables had room for them.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from datetime import UTC, datetime
from typing import Any

import pytest
from sqlalchemy import JSON, Boolean, Connection, MetaData, Table, create_engine, select

from bot.work.inbox import inbox
from storage import migrate
from storage.store import Store
from storage.tables import Base
from tests.house import Hands, House
from tests.security import two_bars

_PAST = migrate.revisions()[:-1]
_TRIED = [  # in the short part the newest, and every fourth before it
    pytest.param(one, marks=pytest.mark.long) if number % 4 else one
    for number, one in enumerate(reversed(_PAST))
]
Rows = dict[str, list[dict[str, Any]]]
# Columns that a later one replaced; tests of that migration follow their values.
_REPLACED = {"entry": {"undo_of", "corrects"}}


@pytest.fixture(scope="module")
def real_rows(tmp_path_factory: pytest.TempPathFactory) -> Rows:
    """The rows of two bars, with some in every table, as plain values."""
    url = f"sqlite:///{tmp_path_factory.mktemp('real') / 'bars.sqlite'}"
    store = Store(url)
    migrate.upgrade(store)
    house = House(store, Hands(datetime(2026, 11, 25, 18, tzinfo=UTC)))
    two_bars.fill(house)
    inbox.take_in(store, [inbox.Letter("house", 300_000_001, '{"update_id": 300000001}')], house.clock.now())
    house.close()
    engine = create_engine(url)
    with engine.connect() as connection:
        found = dict(_rows_in(connection))
    engine.dispose()
    return found


def _tables(connection: Connection) -> list[Table]:
    known = MetaData()
    known.reflect(connection)
    return [one for one in known.sorted_tables if one.name != "alembic_version"]


def _rows_in(connection: Connection) -> Iterator[tuple[str, list[dict[str, Any]]]]:
    for table in _tables(connection):
        rows = connection.execute(select(table).order_by(*table.primary_key.columns)).mappings()
        yield table.name, [dict(row) for row in rows]


def _fill(connection: Connection, rows: Rows) -> Rows:
    """Insert the columns that older tables have; return the inserted rows."""
    written: Rows = {}
    for table in _tables(connection):
        given = [
            {column.name: _value(column, row) for column in table.columns} for row in rows.get(table.name, ())
        ]
        if given:
            connection.execute(table.insert(), given)
        written[table.name] = given
    return written


def _value(column: Any, row: dict[str, Any]) -> Any:
    value = row.get(column.name)
    if value is None:
        return None if column.nullable or column.name in row else 0  # a column that no longer exists
    if isinstance(column.type, JSON) and isinstance(value, str):
        return json.loads(value)
    return bool(value) if isinstance(column.type, Boolean) else value


@pytest.mark.parametrize("revision", _TRIED)
def test_real_rows_of_every_past_revision_are_all_there_in_the_newest(
    empty_url: str, real_rows: Rows, revision: str
) -> None:
    store = Store(empty_url)
    migrate.upgrade(store, revision)
    with store.engine.begin() as connection:
        before = _fill(connection, real_rows)
    assert [name for name, rows in before.items() if not rows] == []  # a table without rows proves nothing
    migrate.upgrade(store)
    with store.engine.connect() as connection:
        after = dict(_rows_in(connection))
    assert set(Base.metadata.tables) == set(after)
    for name, rows in before.items():
        assert len(after[name]) == len(rows), name
        key = [column.name for column in Base.metadata.tables[name].primary_key]
        now = {tuple(row[one] for one in key): row for row in after[name]}
        for row in rows:
            kept = now[tuple(row[one] for one in key)]
            assert row.keys() - kept.keys() <= _REPLACED.get(name, set()), name
            assert kept == {**kept, **{one: row[one] for one in row if one in kept}}, name
    store.close()
