"""Migrate a database to the tables of this program."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

from sqlalchemy import (
    Column,
    Connection,
    Engine,
    MetaData,
    PrimaryKeyConstraint,
    String,
    Table,
    create_engine,
    event,
    insert,
    inspect,
    select,
    text,
)

from storage.store import Store
from storage.tables import Base

if TYPE_CHECKING:
    from alembic.config import Config

# Any fixed number, the same in every process of this program.
_ADVISORY_LOCK = 7_335_5371
_WAIT_MILLISECONDS = 60_000
# Marks are tables of one row.
MOVING = "move_in_progress"  # while rows are moved into the database; names the source
MOVED = "moved_to"  # once all rows were moved to another database; names that
# Alembic's own table, as it creates it.
_VERSION = Table(
    "alembic_version",
    MetaData(),
    Column("version_num", String(32), nullable=False),
    PrimaryKeyConstraint("version_num", name="alembic_version_pkc"),
)


class NewerDatabaseError(RuntimeError):
    """A newer program wrote the database. `revision` is the revision found."""

    def __init__(self, revision: str) -> None:
        super().__init__(revision)
        self.revision = revision


class UnfinishedMoveError(RuntimeError):
    """A move of rows into this database is incomplete; nothing else may write until it is done."""


class MovedAwayError(RuntimeError):
    """The rows of this database were moved to another one. `target` is its URL without the password."""

    def __init__(self, target: str) -> None:
        super().__init__(target)
        self.target = target


class BrokenReferencesError(RuntimeError):
    """A migration left rows with broken references; it was rolled back."""


def _config() -> Config:
    from alembic.config import Config  # noqa: PLC0415 - only a migration pays for it

    config = Config()
    config.set_main_option("script_location", str(Path(__file__).parent / "migrations"))
    return config


@cache
def revisions() -> tuple[str, ...]:
    """Return the revisions that this program knows, oldest first.

    They come from the file names (0001_what_it_does.py), so that a start without a migration does not load
    Alembic; a test compares the names with the contents of the files.
    """
    found = (Path(__file__).parent / "migrations" / "versions").glob("[0-9]*_*.py")
    return tuple(sorted(path.name.partition("_")[0] for path in found))


def head() -> str:
    """Return the newest revision that this program knows."""
    if not revisions():
        raise RuntimeError("no migrations were installed")
    return revisions()[-1]


def is_known(revision: str) -> bool:
    """Whether this program knows the revision; if not, a newer program wrote it."""
    return revision in revisions()


def current(store: Store) -> str | None:
    """Return the revision of the database, or None when it is empty."""
    with store.engine.connect() as connection:
        return _found(connection)


def _found(connection: Connection) -> str | None:
    if not inspect(connection).has_table(_VERSION.name):
        return None
    found: str | None = connection.scalar(select(_VERSION.c.version_num))
    return found


def refuse_newer_revision(revision: str | None) -> None:
    """Raise NewerDatabaseError for a revision that this program does not know."""
    if revision is not None and not is_known(revision):
        raise NewerDatabaseError(revision)


def refuse_newer(store: Store) -> None:
    """Raise NewerDatabaseError if a newer program wrote the database."""
    refuse_newer_revision(current(store))


def marked(connection: Connection, mark: str) -> str | None:
    """Return what a mark names, None without the mark."""
    if not inspect(connection).has_table(mark):
        return None
    return str(connection.scalar(text(f"SELECT * FROM {mark}")))  # noqa: S608 - our name


def set_mark(connection: Connection, mark: str, names: str) -> None:
    """Mark a database, in the open transaction."""
    connection.execute(text(f"CREATE TABLE {mark} (names VARCHAR(1000) NOT NULL PRIMARY KEY)"))
    connection.execute(text(f"INSERT INTO {mark} VALUES (:names)"), {"names": names})  # noqa: S608


def remove_mark(connection: Connection, mark: str) -> None:
    """Take a mark away, in the open transaction."""
    connection.execute(text(f"DROP TABLE {mark}"))


def refuse_marked(connection: Connection) -> None:
    """Raise UnfinishedMoveError during a move into the database, MovedAwayError after one out of it."""
    if marked(connection, MOVING) is not None:
        raise UnfinishedMoveError
    target = marked(connection, MOVED)
    if target is not None:
        raise MovedAwayError(target)


def reopen(store: Store) -> bool:
    """Take the mark of a moved database away; return whether it had one."""
    with store.writing() as unit:
        if marked(unit.connection, MOVED) is None:
            return False
        remove_mark(unit.connection, MOVED)
    return True


def upgrade(store: Store, to: str = "head") -> None:
    """Migrate the database to revision `to`.

    Raises NewerDatabaseError when the database is ahead of this program, UnfinishedMoveError when a move into
    it was interrupted, MovedAwayError when its rows are elsewhere by now, and BrokenReferencesError when the
    result has rows with broken references.
    """
    with store.engine.connect() as connection:
        at = _found(connection)
        refuse_newer_revision(at)
        refuse_marked(connection)
    if to == "head" and at == head():
        return
    # A separate engine: a migration on SQLite rebuilds tables, and with foreign keys on, as in Store,
    # dropping the old table would cascade into its children.
    engine = create_engine(store.url)
    if store.is_sqlite:
        _as_one_transaction(engine)
    try:
        with engine.connect() as connection:
            if store.is_sqlite:
                _on_sqlite(connection, to)
            else:
                connection.execute(text("SELECT pg_advisory_lock(:key)"), {"key": _ADVISORY_LOCK})
                _run(connection, to)
                connection.commit()
                connection.execute(text("SELECT pg_advisory_unlock(:key)"), {"key": _ADVISORY_LOCK})
                connection.commit()
    finally:
        engine.dispose()


def _as_one_transaction(engine: Engine) -> None:
    """Make a SQLite migration atomic, and make other processes wait for it."""

    @event.listens_for(engine, "connect")
    def _prepare(connection: Any, record: object) -> None:
        # By default the driver begins a transaction at the first INSERT, which would leave new tables outside
        # it.
        connection.isolation_level = None
        connection.execute(f"PRAGMA busy_timeout={_WAIT_MILLISECONDS}")
        connection.execute("PRAGMA foreign_keys=OFF")

    @event.listens_for(engine, "begin")
    def _begin(connection: Connection) -> None:
        connection.exec_driver_sql("BEGIN IMMEDIATE")


def _on_sqlite(connection: Connection, to: str) -> None:
    # Begins the transaction; Alembic then reads the revision that the last process left.
    connection.execute(text("SELECT 1"))
    _run(connection, to)
    broken = connection.exec_driver_sql("PRAGMA foreign_key_check").fetchall()
    if broken:
        connection.rollback()
        raise BrokenReferencesError(str(broken[:5]))
    connection.commit()


def _run(connection: Connection, to: str) -> None:
    if to == "head" and _found(connection) is None:
        _create(connection)
        return
    from alembic import command  # noqa: PLC0415 - see _config

    config = _config()
    config.attributes["connection"] = connection
    command.upgrade(config, to)


def _create(connection: Connection) -> None:
    """Create the current tables; a test compares the result with that of all migrations."""
    Base.metadata.create_all(connection, checkfirst=False)
    _VERSION.create(connection)
    connection.execute(insert(_VERSION), {"version_num": head()})
