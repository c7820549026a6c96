"""Open a database by URL: a SQLite file or PostgreSQL."""

from __future__ import annotations

import math
import time
from collections.abc import Iterator
from contextlib import closing, contextmanager, nullcontext
from pathlib import Path
from threading import RLock
from typing import Any

from sqlalchemy import Connection, Engine, create_engine, event, make_url
from sqlalchemy.engine import URL
from sqlalchemy.exc import ArgumentError, DisconnectionError
from sqlalchemy.pool import ConnectionPoolEntry

from storage.memory import BarMemory
from storage.trouble import DatabaseError, is_damaged, is_read_only, told_apart
from storage.unit import Unit

_CONNECT_SECONDS = 10  # until a server that does not answer counts as away
_SURE_SECONDS = 5.0  # a connection used within this many seconds is reused without a check


class UnsupportedDatabaseError(ValueError):
    """The URL names an unsupported kind of database. `name` is the name it gave."""

    def __init__(self, name: str) -> None:
        super().__init__(name)
        self.name = name


class NoFolderError(OSError):
    """The folder of a SQLite file is missing and cannot be created: its path, and the system's message."""

    def __init__(self, folder: Path, why: str) -> None:
        super().__init__(f"{folder}: {why}")
        self.folder, self.why = folder, why


def read_url(text: str) -> URL:
    """Return the SQLAlchemy URL for a DATABASE_URL.

    `postgres://` and `postgresql://` work without a driver name. Raises UnsupportedDatabaseError for anything
    but SQLite and PostgreSQL, ArgumentError for an invalid URL.
    """
    try:
        url = make_url(text)
    except ValueError as error:  # a port that is not a number
        raise ArgumentError(str(error)) from error
    backend = url.get_backend_name()
    if backend in {"postgres", "postgresql"}:
        return url.set(drivername="postgresql+psycopg")
    if backend != "sqlite":
        raise UnsupportedDatabaseError(backend)
    return url


def file_of(url: URL) -> Path | None:
    """Return the file of a SQLite URL; None for PostgreSQL, a database in memory or a URI with parameters."""
    place = url.database
    if url.get_backend_name() != "sqlite" or not place or place == ":memory:" or place.startswith("file:"):
        return None
    return Path(place)


class Store:
    """One database. `reading()` and `writing()` each give a unit of work.

    `shown` is its URL without the password, `file` the file of a SQLite database.

    Writers on SQLite begin with BEGIN IMMEDIATE: otherwise a transaction that reads before it writes could
    lose another's update or fail immediately as locked.

    With `idle_seconds` PostgreSQL ends a transaction that is idle for that long: otherwise a stalled process
    would keep its bar's rows locked and block other writers.
    """

    def __init__(self, url: str, idle_seconds: int | None = None) -> None:
        self.url = read_url(url)
        self.is_sqlite = self.url.get_backend_name() == "sqlite"
        self.shown = self.url.render_as_string(hide_password=True)
        self.file = file_of(self.url)
        if self.file is not None:
            # Only for the user who runs the program, whatever the umask: the file holds the rows of all bars.
            folder = self.file.parent
            try:
                folder.mkdir(mode=0o700, parents=True, exist_ok=True)
            except OSError as error:
                raise NoFolderError(folder, error.strerror or "") from error
        self.engine = _open_sqlite(self.url) if self.is_sqlite else _open_postgres(self.url, idle_seconds)
        self.memory = BarMemory()
        # SQLite has one writer; waiting on a lock here is cheaper than its busy polling.
        self._line = RLock()

    @contextmanager
    def reading(self) -> Iterator[Unit]:
        """Provide a read-only unit; its changes are discarded. Raises AwayError as `writing` does."""
        with (
            self._reopened_if_unusable(),
            told_apart(),
            self.engine.connect() as connection,
            closing(Unit(connection, self.memory, writes=False)) as unit,
        ):
            yield unit

    @contextmanager
    def writing(self) -> Iterator[Unit]:
        """Provide a unit whose changes are committed together, or rolled back if an exception leaves it.

        Raises AwayError while the database is unavailable.
        """
        with (
            self._reopened_if_unusable(),
            told_apart(),
            self._line if self.is_sqlite else nullcontext(),
            self.engine.connect() as connection,
        ):
            connection.execution_options(writes=True)
            with closing(Unit(connection, self.memory)) as unit:
                yield unit
                unit.flush()
                connection.commit()

    @contextmanager
    def _reopened_if_unusable(self) -> Iterator[None]:
        try:
            yield
        except DatabaseError as error:
            if is_read_only(error) or is_damaged(error):
                # Once the file is mended or restored, only a new connection sees it.
                self.engine.dispose()
            raise

    @property
    def is_open(self) -> bool:
        """Whether a connection to the database is open, in use or in the pool."""
        pool: Any = self.engine.pool
        return bool(pool.checkedin() + pool.checkedout())

    def write_log_back(self) -> None:
        """Write SQLite's write-ahead log into the file, and open both anew: the log's file was removed.

        The open connections still have it, but what they write would be lost with the process.
        """
        with told_apart(), self._line:
            with self.engine.connect() as connection:
                driver: Any = connection.connection.driver_connection
                driver.execute("PRAGMA wal_checkpoint(TRUNCATE)")
            self.engine.dispose()

    def close(self) -> None:
        """Close all connections."""
        self.engine.dispose()


def _open_sqlite(url: URL) -> Engine:
    engine = create_engine(url, connect_args={"check_same_thread": False}, hide_parameters=True)

    @event.listens_for(engine, "connect")
    def _prepare(connection: Any, record: object) -> None:
        # Stop the driver from opening transactions: _begin below does it.
        connection.isolation_level = None
        for pragma in ("busy_timeout=5000", "journal_mode=WAL", "synchronous=FULL", "foreign_keys=ON"):
            connection.execute(f"PRAGMA {pragma}")

    @event.listens_for(engine, "begin")
    def _begin(connection: Connection) -> None:
        if connection.get_execution_options().get("writes"):
            connection.exec_driver_sql("BEGIN IMMEDIATE")
        else:
            # Never blocks or fails, so it bypasses SQLAlchemy and goes directly to the driver.
            connection.connection.cursor().execute("BEGIN")

    return engine


def _open_postgres(url: URL, idle_seconds: int | None) -> Engine:
    engine = create_engine(
        url,
        pool_size=8,
        max_overflow=8,
        hide_parameters=True,
        connect_args={"connect_timeout": _CONNECT_SECONDS},
    )

    @event.listens_for(engine, "checkin")
    def _used(connection: Any, record: ConnectionPoolEntry) -> None:
        record.info["used"] = time.monotonic()

    @event.listens_for(engine, "checkout")
    def _still_there(connection: Any, record: ConnectionPoolEntry, proxy: object) -> None:
        # Not before every transaction: the work itself notices a server that has just gone away.
        if time.monotonic() - record.info.get("used", math.inf) < _SURE_SECONDS:
            return
        try:
            engine.dialect.do_ping(connection)
        except engine.dialect.loaded_dbapi.Error as error:
            raise DisconnectionError from error

    if idle_seconds is not None:

        @event.listens_for(engine, "connect")
        def _prepare(connection: Any, record: object) -> None:
            connection.execute(f"SET idle_in_transaction_session_timeout = '{idle_seconds}s'")
            connection.commit()

    return engine
