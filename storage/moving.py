"""Carrying all rows of one database into another, of the same or of the other kind.

Table by table, parents before children, a thousand rows to a transaction. What arrived is read
back and compared with the source row by row. Broken off, it goes on where it stopped: the rows
that are there are the first ones of the source, in the order of the key.
"""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Iterator, Sequence
from contextlib import closing, contextmanager
from dataclasses import dataclass
from itertools import islice, zip_longest
from typing import Any

from sqlalchemy import Connection, Integer, Table, func, inspect, select, text
from sqlalchemy.exc import DBAPIError, OperationalError

from storage import census, migrate
from storage.store import Store
from storage.tables import Base

_AT_ONCE = 1_000
_DIGEST_SHOWN = 16

Progress = Callable[[str, int, int], object]
"""Told the table, how many of its rows have arrived, and how many there are."""


class MoveError(RuntimeError):
    """The move was not done, or not to its end; `subject` is what it was about."""

    def __init__(self, subject: str = "") -> None:
        super().__init__(subject)
        self.subject = subject


class UnmigratedError(MoveError):
    """The source is of an older revision, which `subject` names: it has to be migrated first."""


class SamePlaceError(MoveError):
    """Source and target are one database."""


class OtherSourceError(MoveError):
    """A move into this target was begun from another database."""


class InUseError(MoveError):
    """Another process writes to the source."""


class RowRefusedError(MoveError):
    """The target refused a row: `subject` says of which table and why, `key` which one."""

    def __init__(self, subject: str, key: str) -> None:
        super().__init__(subject)
        self.key = key


class DifferentRowError(MoveError):
    """What the target holds differs from the source: `subject` is the table, `key` the first such row."""

    def __init__(self, subject: str, key: str) -> None:
        super().__init__(subject)
        self.key = key


@dataclass(frozen=True, slots=True)
class MovedTable:
    """A table of which every row was compared: how many there are and the start of their digest."""

    name: str
    rows: int
    digest: str


@dataclass(frozen=True, slots=True)
class Moved:
    """All tables as they arrived; `resumed`: a move that was broken off was taken up again."""

    tables: tuple[MovedTable, ...]
    resumed: bool

    @property
    def total(self) -> int:
        """How many rows there are in all."""
        return sum(table.rows for table in self.tables)


def move(source: Store, target: Store, progress: Progress = lambda table, done, of: None) -> Moved:
    """Carry every row of `source` into `target`, which must be new or a move from `source` broken off.

    The source stays as it is, and nobody can write to it meanwhile. Raises census.NoDatabaseError,
    UnmigratedError, migrate.NewerDatabaseError, SamePlaceError, InUseError, census.OccupiedError,
    OtherSourceError, RowRefusedError and DifferentRowError.
    """
    _check_source(source, target)
    tables = Base.metadata.sorted_tables
    with _held(source) as reading:
        resumed = _prepare(reading, target)
        for table in tables:
            _carry(reading, target, table, progress)
        with target.engine.connect() as arrived:
            compared = tuple(_compare(reading, arrived, table) for table in tables)
        _finish(target, tables)
    return Moved(compared, resumed)


def _check_source(source: Store, target: Store) -> None:
    if source.url == target.url:
        raise SamePlaceError(census.shown(source.url))
    at = migrate.current(source) if census.is_there(source) else None
    if at is None:
        raise census.NoDatabaseError(census.shown(source.url))
    migrate.refuse_newer(source)
    if at != migrate.head():
        raise UnmigratedError(at)
    with source.engine.connect() as connection:
        if inspect(connection).has_table(migrate.MOVING):
            raise migrate.UnfinishedMoveError
    if census.is_there(target):
        migrate.refuse_newer(target)


@contextmanager
def _held(source: Store) -> Iterator[Connection]:
    """Give one view of the source that nobody can write past while it is open."""
    options = {"writes": True} if source.is_sqlite else {}
    with source.engine.connect().execution_options(**options) as reading:
        try:
            if source.is_sqlite:
                reading.execute(text("SELECT 1"))  # begins as the one writer
            else:
                names = ", ".join(f'"{table.name}"' for table in Base.metadata.sorted_tables)
                reading.execute(text(f"LOCK TABLE {names} IN SHARE MODE NOWAIT"))
        except OperationalError as error:
            raise InUseError(census.shown(source.url)) from error
        yield reading
        reading.rollback()


# -- the mark in the target ------------------------------------------------------------------


def _prepare(reading: Connection, target: Store) -> bool:
    """Make the tables and the mark that keeps every other command out; return whether it was there."""
    mark = _digest_of(census.rows_of(reading, Base.metadata.tables["bar"]))
    with target.engine.connect() as connection:
        there = inspect(connection).has_table(migrate.MOVING)
        if there:
            if connection.scalar(text(f"SELECT source FROM {migrate.MOVING}")) != mark:  # noqa: S608
                raise OtherSourceError(census.shown(target.url))
            return True
        census.must_be_empty(connection, target.url)
    migrate.upgrade(target)
    with _writing(target) as connection:
        connection.execute(text(f"CREATE TABLE {migrate.MOVING} (source VARCHAR(64) NOT NULL PRIMARY KEY)"))
        connection.execute(text(f"INSERT INTO {migrate.MOVING} VALUES (:mark)"), {"mark": mark})  # noqa: S608
    return False


def _finish(target: Store, tables: Sequence[Table]) -> None:
    with _writing(target) as connection:
        if not target.is_sqlite:
            for table in tables:
                _count_on(connection, table)
        connection.execute(text(f"DROP TABLE {migrate.MOVING}"))


def _count_on(connection: Connection, table: Table) -> None:
    """Let PostgreSQL give out the number after the highest that came along; SQLite does so by itself."""
    column = table.autoincrement_column
    if column is None or not isinstance(column.type, Integer):
        return
    sequence = connection.scalar(
        text("SELECT pg_get_serial_sequence(:table, :column)"), {"table": table.name, "column": column.name}
    )
    if sequence is not None:
        highest = connection.scalar(select(func.max(column)))
        connection.execute(select(func.setval(sequence, highest or 1, highest is not None)))


@contextmanager
def _writing(store: Store) -> Iterator[Connection]:
    options = {"writes": True} if store.is_sqlite else {}
    with store.engine.connect().execution_options(**options) as connection, connection.begin():
        yield connection


# -- the rows --------------------------------------------------------------------------------


def _carry(reading: Connection, target: Store, table: Table, progress: Progress) -> None:
    with target.engine.connect() as connection:
        done = census.how_many(connection, table)
    total = census.how_many(reading, table)
    progress(table.name, done, total)
    with closing(census.rows_of(reading, table, skip=done)) as rows:
        while page := list(islice(rows, _AT_ONCE)):
            _insert(target, table, page)
            done += len(page)
            progress(table.name, done, total)


def _insert(target: Store, table: Table, page: Sequence[Any]) -> None:
    values = [row._asdict() for row in page]
    try:
        with _writing(target) as connection:
            connection.execute(table.insert(), values)
    except (DBAPIError, UnicodeError) as error:
        if len(page) == 1:
            said = str(getattr(error, "orig", error)).strip().partition("\n")[0]
            raise RowRefusedError(f"{table.name}: {said}", census.key_of(table, page[0])) from error
        # Which of them it was nobody says; the good ones before it may go in.
        for row in page:
            _insert(target, table, [row])


def _compare(reading: Connection, arrived: Connection, table: Table) -> MovedTable:
    """Read both databases side by side, every row of the table."""
    digest = hashlib.sha256()
    rows = 0
    with (
        closing(census.rows_of(reading, table)) as source,
        closing(census.rows_of(arrived, table)) as target,
    ):
        for here, there in zip_longest(source, target):
            left, right = (None if row is None else census.plain(row) for row in (here, there))
            if left != right:
                raise DifferentRowError(table.name, census.key_of(table, there if here is None else here))
            digest.update(right or b"")
            digest.update(b"\n")
            rows += 1
    return MovedTable(table.name, rows, digest.hexdigest()[:_DIGEST_SHOWN])


def _digest_of(rows: Iterator[Sequence[Any]]) -> str:
    digest = hashlib.sha256()
    for row in rows:
        digest.update(census.plain(row))
        digest.update(b"\n")
    return digest.hexdigest()
