"""Count the rows of each table, and write each row in one plain form.

The plain form is the same for every database, so that two databases can be compared row by row.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Generator, Sequence
from datetime import UTC, date, datetime
from fractions import Fraction
from typing import Any

from sqlalchemy import ColumnElement, Connection, String, Table, func, inspect, select, text

from storage.store import Store
from storage.types import exact_text

_EPOCH = datetime(1970, 1, 1, tzinfo=UTC)
# Alembic's revision is compared separately.
_OWN = "alembic_version"
_AT_ONCE = 1_000


class NoDatabaseError(RuntimeError):
    """The URL points to no database. `shown` is the URL without its password."""

    def __init__(self, shown: str) -> None:
        super().__init__(shown)
        self.shown = shown


class OccupiedError(RuntimeError):
    """A database that should be empty has rows: `rows` of them, the first in `table`."""

    def __init__(self, shown: str, table: str, rows: int) -> None:
        super().__init__(f"{shown}: {rows} in {table}")
        self.shown = shown
        self.table = table
        self.rows = rows


def is_there(store: Store) -> bool:
    """Whether the database exists: opening a missing SQLite file would create it."""
    return store.file is None or store.file.is_file()


def tables_of(connection: Connection) -> list[str]:
    """Return the names of all tables in alphabetical order, except Alembic's."""
    return sorted(name for name in inspect(connection).get_table_names() if name != _OWN)


def revision_of(connection: Connection) -> str | None:
    """Return the revision of the database, or None if it has none."""
    if not inspect(connection).has_table(_OWN):
        return None
    found: str | None = connection.scalar(text(f"SELECT version_num FROM {_OWN}"))  # noqa: S608 - our name
    return found


def count_rows(connection: Connection) -> dict[str, int]:
    """Return the row count of each existing table, at any revision."""
    quote = connection.dialect.identifier_preparer.quote
    return {
        name: connection.exec_driver_sql(f"SELECT count(*) FROM {quote(name)}").scalar_one()  # noqa: S608
        for name in tables_of(connection)
    }


def must_be_empty(connection: Connection, shown: str) -> None:
    """Raise OccupiedError if any table has a row; `shown` names the database."""
    for name, rows in count_rows(connection).items():
        if rows:
            raise OccupiedError(shown, name, rows)


def key_order(table: Table, dialect: str) -> list[ColumnElement[Any]]:
    """Return the primary key as an order that is the same in every database.

    Text is compared byte by byte: SQLite's default, but not PostgreSQL's.
    """
    return [
        column.collate("C") if dialect == "postgresql" and isinstance(column.type, String) else column
        for column in table.primary_key.columns
    ]


def rows_of(connection: Connection, table: Table, skip: int = 0) -> Generator[Sequence[Any], None, None]:
    """Yield the rows of a table in key order, with at most a thousand in memory.

    Close the generator when leaving early: the database holds a cursor for it.
    """
    query = select(table).order_by(*key_order(table, connection.dialect.name)).offset(skip or None)
    with connection.execution_options(yield_per=_AT_ONCE).execute(query) as result:
        yield from result


def how_many(connection: Connection, table: Table) -> int:
    """Return the row count of a table."""
    return connection.execute(select(func.count()).select_from(table)).scalar_one()


def plain(row: Sequence[Any]) -> bytes:
    """Write a row in one form that is the same for equal rows of any database."""
    return json.dumps([_plain(value) for value in row], sort_keys=True, ensure_ascii=False).encode()


def _plain(value: Any) -> Any:
    if isinstance(value, datetime):
        return ["instant", int((value - _EPOCH).total_seconds())]
    if isinstance(value, date):
        return ["day", value.isoformat()]
    if isinstance(value, Fraction):
        return ["exact", exact_text(value)]
    if isinstance(value, (bytes, memoryview)):
        return ["bytes", hashlib.sha256(value).hexdigest()]
    return value


def key_of(table: Table, row: Sequence[Any]) -> str:
    """Return a readable primary key, for looking up the row."""
    names = [column.name for column in table.columns]
    return ", ".join(f"{column.name} {row[names.index(column.name)]}" for column in table.primary_key.columns)
