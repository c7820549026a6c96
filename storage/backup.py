"""Back up and restore the database; each copy is checked before it gets its name.

SQLite is copied by `VACUUM INTO` (SQLite manual, "VACUUM"): one read transaction that lets others read and
write, and omits the pages of deleted rows. PostgreSQL is copied by `pg_dump` in the custom format, in the
same snapshot as the row counts.
"""

from __future__ import annotations

import os
import re
import sqlite3
import tempfile
from collections.abc import Iterator
from contextlib import closing, contextmanager, suppress
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

from sqlalchemy import Connection, text
from sqlalchemy.engine import URL
from sqlalchemy.exc import DatabaseError

from storage import census, dumps, migrate
from storage.locks.holding import held
from storage.refusals import (
    AlreadyThereError,
    Checked,
    NoFileError,
    NotABackupError,
    NotWholeError,
    ToolFailedError,
    WrongKindError,
    first_difference,
)
from storage.store import Store

SQLITE_SUFFIX, POSTGRES_SUFFIX = ".sqlite", ".dump"
_NAME = "peel-ledger-{at:%Y%m%dT%H%M%SZ}{suffix}"
_DATED = re.compile(r"peel-ledger-\d{8}T\d{6}Z\.(?:sqlite|dump)")
_LEFT_AFTER_SECONDS = 86_400
_SQLITE_MAGIC, _POSTGRES_MAGIC = b"SQLite format 3\x00", b"PGDMP"
_PRIVATE = 0o600  # a backup holds all data of the bars


def dated_name(store: Store, now: datetime) -> str:
    """Return the file name of a backup made now; names sort by time."""
    suffix = SQLITE_SUFFIX if store.is_sqlite else POSTGRES_SUFFIX
    return _NAME.format(at=now.astimezone(UTC), suffix=suffix)


def exists(store: Store) -> bool:
    """Whether there is a database; checking does not create a missing SQLite file."""
    if not census.is_there(store):
        return False
    with store.engine.connect() as connection:
        return bool(census.tables_of(connection))


def back_up(store: Store, path: Path) -> Checked:
    """Write one consistent copy to `path`, check it, and only then give it its name.

    Raises AlreadyThereError, NotWholeError, ToolMissingError, ToolFailedError, census.NoDatabaseError and
    migrate.NewerDatabaseError. An error leaves nothing at `path`.
    """
    if not exists(store):
        raise census.NoDatabaseError(store.shown)
    migrate.refuse_newer(store)
    if path.exists():
        raise AlreadyThereError(str(path))
    with _written_aside(path) as aside:
        made = _copy_sqlite(store, aside) if store.is_sqlite else dumps.dump(store, aside)
    return replace(made, path=path)


@contextmanager
def _written_aside(path: Path) -> Iterator[Path]:
    """Provide a private file next to `path`; on success it is synced to disk and renamed to `path`."""
    aside: Path | None = None
    try:
        path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        handle, name = tempfile.mkstemp(prefix=f".{path.name}.", suffix=".part", dir=path.parent)
        os.close(handle)  # created without rights for others
        aside = Path(name)
        yield aside
        with aside.open("rb+") as written:
            os.fsync(written.fileno())
        _give_name(aside, path)
        _sync_folder(path.parent)
    except OSError as error:
        raise ToolFailedError(error.strerror or str(error)) from error
    finally:
        if aside is not None:
            aside.unlink(missing_ok=True)


def _give_name(aside: Path, path: Path) -> None:
    """Rename the file without replacing one that appeared in the meantime."""
    try:
        path.hardlink_to(aside)
    except FileExistsError:
        raise AlreadyThereError(str(path)) from None
    except OSError:
        # FAT file systems have no hard links: reserve the name first, then replace the reserved file.
        try:
            path.touch(mode=_PRIVATE, exist_ok=False)
        except FileExistsError:
            raise AlreadyThereError(str(path)) from None
        aside.replace(path)


def _sync_folder(folder: Path) -> None:
    handle = os.open(folder, os.O_RDONLY | os.O_DIRECTORY)
    try:
        with suppress(OSError):  # some file systems do not support this; the file itself is on disk
            os.fsync(handle)
    finally:
        os.close(handle)


# -- SQLite ----------------------------------------------------------------------------------


def _copy_sqlite(store: Store, aside: Path) -> Checked:
    """Copy while others write; if the counts leave a doubt, copy once more with writers locked out."""
    before = _counted(store)
    _vacuum_into(store, aside)
    after = _counted(store)
    copied = check_sqlite(aside)
    if _between(before, copied.rows, after):
        return copied
    with store.writing() as unit:  # takes the write lock
        held = census.count_rows(unit.session.connection())
        aside.write_bytes(b"")
        _vacuum_into(store, aside)
    copied = check_sqlite(aside)
    if copied.rows != held:
        raise NotWholeError(first_difference(held, copied.rows))
    return copied


def _counted(store: Store) -> dict[str, int]:
    with store.engine.connect() as connection:
        return census.count_rows(connection)


def _between(before: dict[str, int], copied: dict[str, int], after: dict[str, int]) -> bool:
    """Whether each table of the copy has a row count within those before and after the copy."""
    if not before.keys() == copied.keys() == after.keys():
        return False
    return all(
        min(before[name], after[name]) <= rows <= max(before[name], after[name])
        for name, rows in copied.items()
    )


def _vacuum_into(store: Store, aside: Path) -> None:
    connection = store.engine.raw_connection()
    try:
        # SQLite treats an empty file as a new database, so the file keeps its mode.
        connection.cursor().execute("VACUUM INTO ?", (str(aside),))
    except sqlite3.Error as error:
        raise ToolFailedError(str(error)) from error
    finally:
        connection.close()


def check_sqlite(path: Path) -> Checked:
    """Check all of a SQLite file: structure, references, counts. Raises NotWholeError."""
    try:
        with closing(sqlite3.connect(f"{path.resolve().as_uri()}?mode=ro", uri=True)) as connection:
            _check(connection.execute("PRAGMA integrity_check").fetchall() == [("ok",)], "integrity_check")
            _check(not connection.execute("PRAGMA foreign_key_check").fetchall(), "foreign_key_check")
            names = [
                name
                for (name,) in connection.execute(
                    "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'"
                )
            ]
            versions = "alembic_version" in names
            rows = {
                name: connection.execute(f'SELECT count(*) FROM "{name}"').fetchone()[0]  # noqa: S608
                for name in names
                if name != "alembic_version"
            }
            found = (
                connection.execute("SELECT version_num FROM alembic_version").fetchone() if versions else ()
            )
            return Checked(path, found[0] if found else None, rows)
    except sqlite3.DatabaseError as error:
        raise NotWholeError(str(error)) from error


def _check(good: bool, what: str) -> None:
    if not good:
        raise NotWholeError(what)


# -- retention -------------------------------------------------------------------------------


def thin_out(folder: Path, keep: int, newest: Path) -> list[Path]:
    """Delete all but the `keep` latest dated backups of a folder; return the deleted ones.

    Never touches files with other names, nor `newest`, in case the clock went back.
    """
    dated = sorted((one for one in folder.iterdir() if _DATED.fullmatch(one.name)), reverse=True)
    kept = {newest, *[one for one in dated if one != newest][: max(keep - 1, 0)]}
    gone = [one for one in dated if one not in kept]
    for one in gone:
        one.unlink()
    limit = datetime.now(UTC).timestamp() - _LEFT_AFTER_SECONDS
    for left in folder.glob(".peel-ledger-*.part"):  # left by a killed run
        if left.stat().st_mtime < limit:
            left.unlink(missing_ok=True)
    return gone


def newest_dated(folder: Path) -> tuple[datetime, int] | None:
    """Return the time of the newest dated backup of a folder, from its name, and its size in bytes."""
    found = sorted(one for one in folder.glob("*") if _DATED.fullmatch(one.name))
    if not found:
        return None
    at = datetime.fromisoformat(found[-1].name.partition(".")[0].removeprefix("peel-ledger-"))
    return at, found[-1].stat().st_size


# -- restore ---------------------------------------------------------------------------------


def check(path: Path) -> Checked:
    """Check all of a backup. Raises NoFileError, NotABackupError or NotWholeError."""
    if not path.is_file():
        raise NoFileError(str(path))
    with path.open("rb") as opened:
        begins = opened.read(len(_SQLITE_MAGIC))
    if begins == _SQLITE_MAGIC:
        return check_sqlite(path)
    if begins.startswith(_POSTGRES_MAGIC):
        return dumps.check(path)
    raise NotABackupError(str(path))


def is_dump(path: Path) -> bool:
    """Whether this is a PostgreSQL dump rather than a SQLite file."""
    with path.open("rb") as opened:
        return opened.read(len(_POSTGRES_MAGIC)) == _POSTGRES_MAGIC


def restore(path: Path, into: Store) -> Checked:
    """Restore a backup into an empty database of its kind, and check that the contents match.

    Raises the errors of `check`, census.OccupiedError when there are rows already, holding.InUseError,
    WrongKindError, ToolMissingError, ToolFailedError, and migrate.NewerDatabaseError for a backup from a
    newer program.
    """
    backup = check(path)
    migrate.refuse_newer_revision(backup.revision)
    if is_dump(path) and into.is_sqlite:
        raise WrongKindError(str(path))
    with held(into, alone=True):
        with into.engine.connect() as connection:
            census.must_be_empty(connection, into.shown)
        if is_dump(path):
            dumps.restore(path, into)
        else:
            _restore_file(path, into)
    with into.engine.connect() as connection:
        rows, revision = census.count_rows(connection), census.revision_of(connection)
    if rows != backup.rows or revision != backup.revision:
        raise NotWholeError(first_difference(backup.rows, rows) or "alembic_version")
    return Checked(path, revision, rows)


def _restore_file(path: Path, into: Store) -> None:
    """Overwrite the empty file with SQLite's backup API, which locks out other users."""
    assert into.is_sqlite  # noqa: S101 - a SQLite file goes into PostgreSQL by storage.moving
    target = into.engine.raw_connection()
    try:
        with closing(sqlite3.connect(f"{path.resolve().as_uri()}?mode=ro", uri=True)) as source:
            source.backup(target.driver_connection)  # type: ignore[arg-type]
    except (sqlite3.Error, DatabaseError) as error:
        raise ToolFailedError(str(error)) from error
    finally:
        target.close()
        into.engine.dispose()
    if into.file is not None:
        into.file.chmod(_PRIVATE)


def drill(path: Path, like: Store) -> Checked:
    """Restore a backup into a temporary database and open it with this program.

    A SQLite file goes into a temporary file, a dump into a temporary database on the server of `like`. Raises
    the errors of `restore`, and ToolFailedError when the server does not allow a new database.
    """
    with _throw_away(path, like) as place:
        found = restore(path, place)
        migrate.upgrade(place)
        with place.engine.connect() as connection:
            after = census.revision_of(connection)
        if after != migrate.head():
            raise NotWholeError("alembic_version")
        return found


@contextmanager
def _throw_away(path: Path, like: Store) -> Iterator[Store]:
    if not is_dump(path):
        with tempfile.TemporaryDirectory(prefix="peel-ledger-drill-") as folder:
            place = Store(
                URL.create("sqlite", database=str(Path(folder) / "drill.sqlite")).render_as_string()
            )
            try:
                yield place
            finally:
                place.close()
        return
    if like.is_sqlite:
        raise WrongKindError(str(path))
    name = f"peel_ledger_drill_{os.getpid()}"
    try:
        _outside_transaction(like, f'CREATE DATABASE "{name}"')
    except DatabaseError as error:
        raise ToolFailedError(str(error.orig).strip().partition("\n")[0]) from error
    place = Store(like.url.set(database=name).render_as_string(hide_password=False))
    try:
        yield place
    finally:
        place.close()
        _outside_transaction(like, f'DROP DATABASE "{name}"')


def _outside_transaction(store: Store, statement: str) -> None:
    connection: Connection
    with store.engine.connect().execution_options(isolation_level="AUTOCOMMIT") as connection:
        connection.execute(text(statement))
