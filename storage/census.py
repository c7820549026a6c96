"""What a database holds: how many rows of each table, and each row in one plain form.

The plain form is the same whatever the database, so that two of them can be compared row by row.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Generator, Sequence
from datetime import UTC, date, datetime
from fractions import Fraction
from pathlib import Path
from typing import Any

from sqlalchemy import ColumnElement, Connection, String, Table, func, inspect, select, text
from sqlalchemy.engine import URL

from storage.store import Store
from storage.types import exact_text

_EPOCH = datetime(1970, 1, 1, tzinfo=UTC)
# The revision that Alembic keeps beside the rows is compared by itself.
_OWN = "alembic_version"
_AT_ONCE = 1_000


class NoDatabaseError(RuntimeError):
    """There is nothing where the URL points. `shown` is the URL without its password."""

    def __init__(self, shown: str) -> None:
        super().__init__(shown)
        self.shown = shown


class OccupiedError(RuntimeError):
    """The place that should be new holds rows already: `rows` of them, the first in `table`."""

    def __init__(self, shown: str, table: str, rows: int) -> None:
        super().__init__(f"{shown}: {rows} in {table}")
        self.shown = shown
        self.table = table
        self.rows = rows


def shown(url: URL) -> str:
    """Write a URL as people may see it: without its password."""
    return url.render_as_string(hide_password=True)


def is_there(store: Store) -> bool:
    """Whether there is a database to look into: opening a SQLite file that is not there would make one."""
    path = store.url.database
    return not store.is_sqlite or not path or path.startswith("file:") or Path(path).is_file()


def tables_of(connection: Connection) -> list[str]:
    """Return the names of all tables that are there, in alphabetical order, but for Alembic's own."""
    return sorted(name for name in inspect(connection).get_table_names() if name != _OWN)


def revision_of(connection: Connection) -> str | None:
    """Return the revision that the database carries, or None when it carries none."""
    if not inspect(connection).has_table(_OWN):
        return None
    found: str | None = connection.scalar(text(f"SELECT version_num FROM {_OWN}"))  # noqa: S608 - our name
    return found


def count_rows(connection: Connection) -> dict[str, int]:
    """Return how many rows each table holds, for the tables that are there, whatever their revision."""
    quote = connection.dialect.identifier_preparer.quote
    return {
        name: connection.exec_driver_sql(f"SELECT count(*) FROM {quote(name)}").scalar_one()  # noqa: S608
        for name in tables_of(connection)
    }


def must_be_empty(connection: Connection, url: URL) -> None:
    """Raise OccupiedError when any table holds a row."""
    for name, rows in count_rows(connection).items():
        if rows:
            raise OccupiedError(shown(url), name, rows)


def key_order(table: Table, dialect: str) -> list[ColumnElement[Any]]:
    """Return the primary key as an order that is the same in every database.

    Text is compared byte by byte: SQLite does so, PostgreSQL only when told.
    """
    return [
        column.collate("C") if dialect == "postgresql" and isinstance(column.type, String) else column
        for column in table.primary_key.columns
    ]


def rows_of(connection: Connection, table: Table, skip: int = 0) -> Generator[Sequence[Any], None, None]:
    """Give the rows of a table in the order of their key, a thousand in memory at most.

    Close it when it is left early: the database holds a cursor for it.
    """
    query = select(table).order_by(*key_order(table, connection.dialect.name)).offset(skip or None)
    with connection.execution_options(yield_per=_AT_ONCE).execute(query) as result:
        yield from result


def how_many(connection: Connection, table: Table) -> int:
    """Return how many rows a table holds."""
    return connection.execute(select(func.count()).select_from(table)).scalar_one()


def plain(row: Sequence[Any]) -> bytes:
    """Write a row in one form, the same for equal rows of any database."""
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
    """Name a row by its primary key, for whoever has to look it up."""
    names = [column.name for column in table.columns]
    return ", ".join(f"{column.name} {row[names.index(column.name)]}" for column in table.primary_key.columns)
