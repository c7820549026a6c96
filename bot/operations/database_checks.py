"""The checks of `doctor` on the database. They write nothing and create nothing: the bot may be running."""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from pathlib import Path

from sqlalchemy import Connection, inspect, text
from sqlalchemy.engine import URL
from sqlalchemy.exc import SQLAlchemyError

from bot.operations.finding import Finding
from bot.settings import Settings
from storage import migrate
from storage.store import Store, UnsupportedDatabaseError, file_of, read_url
from storage.trouble import is_passing, is_read_only

_LEAST_FREE_BYTES = 200_000_000


def looked_at_database(settings: Settings) -> Iterator[Finding]:
    """Check the database of the settings."""
    try:
        url = read_url(settings.database)
    except UnsupportedDatabaseError as error:
        yield Finding(
            False, f"database: {error.name} is not supported", "Use a sqlite:/// or postgresql:// URL."
        )
        return
    except SQLAlchemyError as error:
        yield Finding(False, f"database: cannot be opened ({type(error).__name__})", "Check DATABASE_URL.")
        return
    path = file_of(url)
    if path is not None and not path.exists():
        yield from _to_be_made(url, path)
        return
    try:
        store = Store(settings.database)
    except ModuleNotFoundError:
        yield Finding(
            False, "database: the driver of PostgreSQL is missing", "pip install 'peel-ledger[postgres]'"
        )
        return
    try:
        if path is not None:
            yield _space(path.parent, path.stat().st_size)
        yield from _revision(store)
        yield _write_access(store, path)
    finally:
        store.close()


def _to_be_made(url: URL, path: Path) -> Iterator[Finding]:
    """Check the place of a SQLite file that the first run will make."""
    folder = path.parent
    there = next(one for one in (folder, *folder.absolute().parents) if one.exists())
    why = ""
    if not there.is_dir():
        why = "File exists" if there == folder else "Not a directory"
    elif not os.access(there, os.W_OK | os.X_OK):
        why = "Permission denied"
    if why:
        what = f"database: the folder {folder} cannot be made ({why})"
        yield Finding(False, what, "Check DATABASE_URL, or the folder's rights.")
        return
    yield _space(there, 0)
    yield Finding(True, f"database: {url}, empty; it is set up at the first run")
    yield Finding(True, "write access: yes")


def _space(folder: Path, size: int) -> Finding:
    """Check the disk of a SQLite file: a full disk blocks every entry."""
    free = shutil.disk_usage(folder).free
    # A backup or a migration needs the same space again, and the write-ahead log some more.
    needed = max(_LEAST_FREE_BYTES, 3 * size)
    return Finding(
        free >= needed,
        f"disk: {free / 1e6:,.0f} MB free, the database takes {size / 1e6:,.1f} MB",
        f"Make room for {needed / 1e6:,.0f} MB: delete old backups, or move to a larger disk.",
    )


def _revision(store: Store) -> Iterator[Finding]:
    shown = store.shown
    try:
        at = migrate.current(store)
    except (SQLAlchemyError, OSError) as error:
        yield Finding(
            False,
            f"database: no answer from {shown} ({type(error).__name__})",
            "Is it up? Check DATABASE_URL.",
        )
        return
    if at is None:
        yield Finding(True, f"database: {shown}, empty; it is set up at the first run")
        return
    newer = "It is newer than this program: install the newer one."
    remedy = "Run: python -m bot migrate" if migrate.is_known(at) else newer
    yield Finding(at == migrate.head(), f"database: {shown}, revision {at}", remedy)


def _write_access(store: Store, path: Path | None) -> Finding:
    remedy = "Let this user write the database file and its folder."
    if path is not None and not (os.access(path, os.W_OK) and os.access(path.parent, os.W_OK)):
        return Finding(False, f"write access: no, {path} is read-only", remedy)
    try:
        with store.engine.connect() as connection:
            if store.is_sqlite:
                _take_write_lock(connection.execution_options(writes=True))
            elif not _may_write(connection):
                return Finding(False, "write access: no, PostgreSQL is read-only here", remedy)
    except SQLAlchemyError as error:
        if is_read_only(error):
            return Finding(False, "write access: no, the file is read-only", remedy)
        if store.is_sqlite and is_passing(error) and "locked" in str(error):
            return Finding(True, "write access: somebody else is writing just now")
        return Finding(False, f"write access: no ({type(error).__name__})", remedy)
    return Finding(True, "write access: yes")


def _take_write_lock(connection: Connection) -> None:
    """Begin to write, change no row, and give the lock back."""
    if inspect(connection).has_table("alembic_version"):
        connection.execute(text("UPDATE alembic_version SET version_num = version_num WHERE 0"))
    connection.rollback()


def _may_write(connection: Connection) -> bool:
    if connection.scalar(text("SHOW transaction_read_only")) == "on":
        return False
    if inspect(connection).has_table("inbox"):
        return bool(connection.scalar(text("SELECT has_table_privilege('inbox', 'INSERT')")))
    return bool(connection.scalar(text("SELECT has_schema_privilege(current_schema(), 'CREATE')")))
