"""Work on a copy of one bar in memory, then write what changed.

Long work in a transaction would hold up every other writer. Here it needs the database twice for a short
time: to copy the bar's rows, and to write the rows that are new, changed or gone.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import islice
from typing import Any

from sqlalchemy import Connection, Table, delete, insert, or_, select, update

from storage.store import Store
from storage.tables import Bar, Base, Counter, InBar, Member, Person, Room
from storage.unit import Unit

_AT_ONCE = 1_000
_Key = tuple[Any, ...]
_Rows = dict[_Key, tuple[Any, ...]]


class StaleError(RuntimeError):
    """The bar changed while work went on with its copy."""


@dataclass(frozen=True)
class _Changes:
    """The keys of the rows of one table that the work added, changed and removed."""

    table: Table
    new: list[_Key]
    changed: list[_Key]
    gone: list[_Key]


class Workbench:
    """A copy of one bar's rows, with those of its members and chats. Used by one thread."""

    def __init__(self, store: Store, bar_id: int) -> None:
        self.store = Store("sqlite://")
        self._bar_id = bar_id
        with self.store.engine.connect() as bench:
            bench.connection.cursor().execute("PRAGMA foreign_keys=OFF")
            Base.metadata.create_all(bench)
            with store.reading() as unit:
                self._stamp = _stamp(unit.connection, bar_id)
                for table in Base.metadata.sorted_tables:
                    _copy(unit.connection, bench, table, bar_id)
            bench.commit()
            self._before = {table: _rows(bench, table) for table in _own_tables()}
        self._after: dict[Table, _Rows] = {}
        self._changes: list[_Changes] = []

    def finish(self) -> None:
        """Find out what the work changed."""
        with self.store.engine.connect() as bench:
            self._after = {table: _rows(bench, table) for table in _own_tables()}
        found = [_compared(table, self._before[table], self._after[table]) for table in _own_tables()]
        self._changes = [one for one in found if one.new or one.changed or one.gone]

    def write(self, unit: Unit) -> None:
        """Write the changes in a transaction that holds the bar. Raises StaleError."""
        unit.flush()
        connection = unit.connection
        if _stamp(connection, self._bar_id) != self._stamp:
            raise StaleError
        for one in self._changes:
            if connection.dialect.name == "sqlite":
                self._write_plain(connection, one)
            else:
                self._write_typed(connection, one)
        for one in reversed(self._changes):
            for key in one.gone:
                connection.execute(delete(one.table).where(*_is(one.table, key)))
        unit.session.expire_all()

    def _write_plain(self, connection: Connection, one: _Changes) -> None:
        """Write rows as SQLite stores them, which costs a tenth of typed values."""
        rows, name = self._after[one.table], one.table.name
        columns = [f'"{column.name}"' for column in one.table.columns]
        keys = " AND ".join(f'"{column.name}" = ?' for column in one.table.primary_key.columns)
        marks = ", ".join("?" * len(columns))
        cursor = connection.connection.cursor()
        cursor.executemany(
            f'INSERT INTO "{name}" ({", ".join(columns)}) VALUES ({marks})',  # noqa: S608 - our own names
            [rows[key] for key in one.new],
        )
        cursor.executemany(
            f'UPDATE "{name}" SET {", ".join(f"{column} = ?" for column in columns)} WHERE {keys}',  # noqa: S608
            [(*rows[key], *key) for key in one.changed],
        )

    def _write_typed(self, connection: Connection, one: _Changes) -> None:
        wanted = {*one.new, *one.changed}
        places = _key_places(one.table)
        with self.store.engine.connect() as bench:
            found = {
                key: row._asdict()
                for row in bench.execute(select(one.table))
                if (key := tuple(row[place] for place in places)) in wanted
            }
        for page in _pages([found[key] for key in one.new]):
            connection.execute(insert(one.table), page)
        for key in one.changed:
            connection.execute(update(one.table).where(*_is(one.table, key)).values(found[key]))

    def close(self) -> None:
        """Forget the copy."""
        self.store.close()


def _own_tables() -> list[Table]:
    """Return the tables of a bar, parents before children."""
    own = {mapper.local_table for mapper in Base.registry.mappers if issubclass(mapper.class_, InBar)}
    return [table for table in Base.metadata.sorted_tables if table in own or table is Bar.__table__]


def _stamp(connection: Connection, bar_id: int) -> tuple[Any, ...]:
    """Return what every change of a bar changes: its revision, and the last number of each kind of row."""
    revision = connection.scalar(select(Bar.revision).where(Bar.id == bar_id))
    counters = select(Counter.name, Counter.value).where(Counter.bar_id == bar_id).order_by(Counter.name)
    return revision, tuple(tuple(row) for row in connection.execute(counters))


def _copy(source: Connection, bench: Connection, table: Table, bar_id: int) -> None:
    members = select(Member.person_id).where(Member.bar_id == bar_id)
    rooms = select(Member.room_id).where(Member.bar_id == bar_id)
    if table is Bar.__table__:
        query = select(table).where(Bar.id == bar_id)
    elif table is Person.__table__:
        query = select(table).where(Person.id.in_(members))
    elif table is Room.__table__:
        query = select(table).where(or_(Room.id.in_(rooms), Room.bar_id == bar_id))
    elif table in _own_tables():
        query = select(table).where(table.c.bar_id == bar_id)
    else:
        return
    rows = source.execute(query)
    while page := [row._asdict() for row in islice(rows, _AT_ONCE)]:
        bench.execute(insert(table), page)


def _rows(bench: Connection, table: Table) -> _Rows:
    """Return the rows of a table by their key, as SQLite stores them."""
    places = _key_places(table)
    columns = ", ".join(f'"{column.name}"' for column in table.columns)
    found = bench.connection.cursor().execute(f'SELECT {columns} FROM "{table.name}"')  # noqa: S608
    return {tuple(row[place] for place in places): row for row in found}


def _key_places(table: Table) -> list[int]:
    """Return the places of the key's columns in a row."""
    columns = list(table.columns)
    return [columns.index(column) for column in table.primary_key.columns]


def _compared(table: Table, before: _Rows, after: _Rows) -> _Changes:
    new = [key for key in after if key not in before]
    changed = [key for key, row in after.items() if key in before and before[key] != row]
    return _Changes(table, new, changed, [key for key in before if key not in after])


def _pages(rows: list[dict[str, Any]]) -> Iterator[list[dict[str, Any]]]:
    for begin in range(0, len(rows), _AT_ONCE):
        yield rows[begin : begin + _AT_ONCE]


def _is(table: Table, key: _Key) -> list[Any]:
    return [column == value for column, value in zip(table.primary_key.columns, key, strict=True)]
