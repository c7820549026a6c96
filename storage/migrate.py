"""Bringing a database to the tables that this program knows."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

from sqlalchemy import Connection, Engine, create_engine, event, inspect, text

from storage.store import Store

if TYPE_CHECKING:
    from alembic.config import Config

# Any fixed number: it only has to be the same in every process of this program.
_ADVISORY_LOCK = 7_335_5371
_WAIT_MILLISECONDS = 60_000
# There only while a move into a database goes on: which database its rows come from.
MOVING = "move_in_progress"


class NewerDatabaseError(RuntimeError):
    """The database was written by a newer program. `revision` is what it carries."""

    def __init__(self, revision: str) -> None:
        super().__init__(revision)
        self.revision = revision


class UnfinishedMoveError(RuntimeError):
    """Rows are being moved into this database from another: until all are there nothing may be written."""


class BrokenReferencesError(RuntimeError):
    """After a migration some rows point nowhere; nothing was kept."""


def _config() -> Config:
    from alembic.config import Config  # noqa: PLC0415 - only a migration pays for it

    config = Config()
    config.set_main_option("script_location", str(Path(__file__).parent / "migrations"))
    return config


@cache
def revisions() -> tuple[str, ...]:
    """Return the revisions that this program knows, oldest first.

    By the names of their files (0001_what_it_does.py), so that a start that has nothing to
    migrate does not load Alembic; a test holds the names to what stands in the files.
    """
    found = (Path(__file__).parent / "migrations" / "versions").glob("[0-9]*_*.py")
    return tuple(sorted(path.name.partition("_")[0] for path in found))


def head() -> str:
    """Return the newest revision that this program knows."""
    if not revisions():
        raise RuntimeError("no migrations were installed")
    return revisions()[-1]


def is_known(revision: str) -> bool:
    """Whether this program knows the revision; if not, a newer one wrote it."""
    return revision in revisions()


def current(store: Store) -> str | None:
    """Return the revision that the database carries, or None when it is empty."""
    with store.engine.connect() as connection:
        if not inspect(connection).has_table("alembic_version"):
            return None
        found: str | None = connection.scalar(text("SELECT version_num FROM alembic_version"))
        return found


def refuse_newer_revision(revision: str | None) -> None:
    """Raise NewerDatabaseError for a revision that this program does not know."""
    if revision is not None and not is_known(revision):
        raise NewerDatabaseError(revision)


def refuse_newer(store: Store) -> None:
    """Raise NewerDatabaseError when the database was written by a newer program."""
    refuse_newer_revision(current(store))


def upgrade(store: Store, to: str = "head") -> None:
    """Bring the database to revision `to`.

    Raises NewerDatabaseError when the database is ahead of this program, UnfinishedMoveError
    when a move into it was broken off, and BrokenReferencesError when the result has rows that
    point nowhere.
    """
    refuse_newer(store)
    at = current(store)
    with store.engine.connect() as connection:
        if inspect(connection).has_table(MOVING):
            raise UnfinishedMoveError
    if to == "head" and at == head():
        return
    # An engine of its own: on SQLite a migration rebuilds tables, and dropping the old
    # one would cascade into its children if foreign keys were on, as they are in Store.
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
    """Let SQLite keep all of a migration or none, and other processes wait for it."""

    @event.listens_for(engine, "connect")
    def _prepare(connection: Any, record: object) -> None:
        # Left to itself the driver would begin at the first INSERT only, tables made before it staying.
        connection.isolation_level = None
        connection.execute(f"PRAGMA busy_timeout={_WAIT_MILLISECONDS}")
        connection.execute("PRAGMA foreign_keys=OFF")

    @event.listens_for(engine, "begin")
    def _begin(connection: Connection) -> None:
        connection.exec_driver_sql("BEGIN IMMEDIATE")


def _on_sqlite(connection: Connection, to: str) -> None:
    # Begins the transaction; Alembic then reads at which step the last process left the tables.
    connection.execute(text("SELECT 1"))
    _run(connection, to)
    broken = connection.exec_driver_sql("PRAGMA foreign_key_check").fetchall()
    if broken:
        connection.rollback()
        raise BrokenReferencesError(str(broken[:5]))
    connection.commit()


def _run(connection: Connection, to: str) -> None:
    from alembic import command  # noqa: PLC0415 - see _config

    config = _config()
    config.attributes["connection"] = connection
    command.upgrade(config, to)
