"""Copy all rows of one database into another, of the same or another kind.

Works table by table, parents before children, a thousand rows per transaction. The copy is read back and
compared with the source row by row. An interrupted move resumes where it stopped: the rows present are the
first ones of the source, in key order.
"""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Iterator, Sequence
from contextlib import closing, contextmanager
from dataclasses import dataclass
from itertools import islice, zip_longest
from typing import Any

from sqlalchemy import Connection, Integer, Table, func, select, text
from sqlalchemy.exc import DBAPIError, OperationalError

from storage import census, migrate
from storage.locks.holding import InUseError, held
from storage.store import Store
from storage.tables import Base

_AT_ONCE = 1_000
_DIGEST_SHOWN = 16

Progress = Callable[[str, int, int], object]
"""Progress callback: the table, the rows copied so far, and the total."""


class MoveError(RuntimeError):
    """The move failed or did not finish; `subject` is its subject."""

    def __init__(self, subject: str = "") -> None:
        super().__init__(subject)
        self.subject = subject


class UnmigratedError(MoveError):
    """The source has an older revision, named in `subject`; migrate it first."""


class SamePlaceError(MoveError):
    """Source and target are one database."""


class OtherSourceError(MoveError):
    """An earlier move into this target had another source."""


class RowRefusedError(MoveError):
    """The target refused a row: `subject` gives the table and the reason, `key` the row."""

    def __init__(self, subject: str, key: str) -> None:
        super().__init__(subject)
        self.key = key


class DifferentRowError(MoveError):
    """The target differs from the source: `subject` is the table, `key` the first such row."""

    def __init__(self, subject: str, key: str) -> None:
        super().__init__(subject)
        self.key = key


@dataclass(frozen=True, slots=True)
class MovedTable:
    """A table with all rows compared: the row count and the start of their digest."""

    name: str
    rows: int
    digest: str


@dataclass(frozen=True, slots=True)
class Moved:
    """All tables as copied; `resumed` means that this continued an interrupted move."""

    tables: tuple[MovedTable, ...]
    resumed: bool

    @property
    def total(self) -> int:
        """The total number of rows."""
        return sum(table.rows for table in self.tables)


def move(source: Store, target: Store, progress: Progress = lambda table, done, of: None) -> Moved:
    """Copy every row of `source` into `target`: empty, or with an interrupted move from `source`.

    The rows of the source stay, nobody can write there meanwhile, and at the end it is marked as moved.
    Raises census.NoDatabaseError, UnmigratedError, migrate.NewerDatabaseError, migrate.MovedAwayError,
    SamePlaceError, holding.InUseError, census.OccupiedError, OtherSourceError, RowRefusedError and
    DifferentRowError.
    """
    _check_source(source, target)
    tables = Base.metadata.sorted_tables
    with held(source, alone=True), held(target, alone=True), _locked(source) as reading:
        resumed = _prepare(reading, target)
        for table in tables:
            _carry(reading, target, table, progress)
        with target.engine.connect() as arrived:
            compared = tuple(_compare(reading, arrived, table) for table in tables)
        _finish(target, tables)
        reading.execution_options(stream_results=False, yield_per=None)
        migrate.set_mark(reading, migrate.MOVED, target.shown)
        reading.commit()
    return Moved(compared, resumed)


def _check_source(source: Store, target: Store) -> None:
    if source.url == target.url:
        raise SamePlaceError(source.shown)
    at = migrate.current(source) if census.is_there(source) else None
    if at is None:
        raise census.NoDatabaseError(source.shown)
    migrate.refuse_newer(source)
    if at != migrate.head():
        raise UnmigratedError(at)
    with source.engine.connect() as connection:
        migrate.refuse_marked(connection)
    if census.is_there(target):
        migrate.refuse_newer(target)


@contextmanager
def _locked(source: Store) -> Iterator[Connection]:
    """Provide one view of the source and lock out writers while it is open."""
    options = {"writes": True} if source.is_sqlite else {}
    with source.engine.connect().execution_options(**options) as reading:
        try:
            if source.is_sqlite:
                reading.execute(text("SELECT 1"))  # takes the write lock
            else:
                names = ", ".join(f'"{table.name}"' for table in Base.metadata.sorted_tables)
                reading.execute(text(f"LOCK TABLE {names} IN SHARE MODE NOWAIT"))
        except OperationalError as error:
            raise InUseError(source.shown) from error
        yield reading


# -- the mark in the target ------------------------------------------------------------------


def _prepare(reading: Connection, target: Store) -> bool:
    """Create the tables and the marker that blocks every other command; return whether it existed."""
    mark = _digest_of(census.rows_of(reading, Base.metadata.tables["bar"]))
    with target.engine.connect() as connection:
        begun = migrate.marked(connection, migrate.MOVING)
        if begun is not None:
            if begun != mark:
                raise OtherSourceError(target.shown)
            return True
        census.must_be_empty(connection, target.shown)
    migrate.upgrade(target)
    with _writing(target) as connection:
        migrate.set_mark(connection, migrate.MOVING, mark)
    return False


def _finish(target: Store, tables: Sequence[Table]) -> None:
    with _writing(target) as connection:
        if not target.is_sqlite:
            for table in tables:
                count_on(connection, table)
        migrate.remove_mark(connection, migrate.MOVING)


def count_on(connection: Connection, table: Table) -> None:
    """Set PostgreSQL's sequence after the highest copied number; SQLite does this by itself."""
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
        # The error does not name the row; insert the good rows before it.
        for row in page:
            _insert(target, table, [row])


def _compare(reading: Connection, arrived: Connection, table: Table) -> MovedTable:
    """Compare every row of the table in both databases."""
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
