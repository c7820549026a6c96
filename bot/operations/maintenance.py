"""The maintenance commands and their messages: backup, restore, move-database."""

from __future__ import annotations

import sqlite3
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from pathlib import Path

from sqlalchemy.exc import ArgumentError, DBAPIError, SQLAlchemyError

from bot.settings import Settings
from storage import backup, census, migrate, moving, refusals
from storage.locks import holding
from storage.store import NoFolderError, Store, UnsupportedDatabaseError
from storage.trouble import AwayError, cannot_be_used

Write = Callable[[str], object]
_SAY_EVERY_SECONDS = 2.0
# A database that was found unusable, or an unusable address.
_NO_DATABASE = (
    migrate.NewerDatabaseError,
    migrate.UnfinishedMoveError,
    migrate.MovedAwayError,
    holding.InUseError,
    UnsupportedDatabaseError,
    NoFolderError,
)
_NO_DRIVER = "PostgreSQL needs its driver: pip install 'peel-ledger[postgres]'"

# With the arguments and attributes of the error.
_SENTENCES: dict[type[Exception], str] = {
    migrate.NewerDatabaseError: (
        "The database is newer than this program (revision {}): install the newer one."
    ),
    UnsupportedDatabaseError: "{} is not supported: use a sqlite:/// or postgresql:// URL.",
    NoFolderError: "The folder {folder} cannot be made ({why}): check DATABASE_URL, or its rights.",
    migrate.UnfinishedMoveError: (
        "A move into this database was broken off: run the same python -m bot move-database again, "
        "it goes on where it stopped."
    ),
    migrate.MovedAwayError: (
        "All of this database was moved to {}: set DATABASE_URL to that one. "
        "To use this one again all the same: python -m bot migrate --reopen"
    ),
    holding.InUseError: "A program uses {}: stop the bot and every console first.",
    census.NoDatabaseError: "There is no database of this program at {}.",
    census.OccupiedError: (
        "{shown} is not new: rows in {table}: {rows}. Nothing there is ever overwritten; choose a new place."
    ),
    refusals.AlreadyThereError: "{} is there already and was left as it is: choose another name.",
    refusals.NoFileError: "There is no file {}.",
    refusals.NotABackupError: "{} is neither a SQLite file nor a dump of PostgreSQL.",
    refusals.NotWholeError: "Not whole ({}): nothing was kept of this. Try again, and check the disk.",
    refusals.ToolMissingError: "{} was not found: install PostgreSQL's client programs.",
    refusals.ToolFailedError: "It was refused: {}",
    refusals.WrongKindError: (
        "{} is a dump of PostgreSQL and goes into PostgreSQL only: give its URL with --into. "
        "From there python -m bot move-database leads to SQLite."
    ),
    moving.UnmigratedError: (
        "The source is of an older version (revision {}): bring it up to date first, "
        "DATABASE_URL=... python -m bot migrate"
    ),
    moving.SamePlaceError: "Both are the same database: {}",
    moving.OtherSourceError: (
        "A move into {} was begun from another database, or that one has changed since: "
        "make the target anew and begin again."
    ),
    moving.RowRefusedError: "The target refused a row: {} ({key})",
    moving.DifferentRowError: (
        "A row of {} is not the same in both ({key}): make the target anew and begin again."
    ),
}


class GaveUpError(RuntimeError):
    """The command failed; the text gives the reason in a sentence for people."""


def refusal(error: Exception) -> str | None:
    """Return the message for a database that any command cannot use or must not touch.

    None for any other error.
    """
    if isinstance(error, GaveUpError):
        return str(error)
    if isinstance(error, ModuleNotFoundError) and error.name == "psycopg":
        return _NO_DRIVER
    known = isinstance(error, (*_NO_DATABASE, ArgumentError, AwayError))
    return sentence(error) if known or cannot_be_used(error) else None


def sentence(error: Exception) -> str:
    """Return the reason for the failure as a sentence, never with a password."""
    if type(error) in _SENTENCES:
        return _SENTENCES[type(error)].format(*error.args, **vars(error))
    if isinstance(error, ArgumentError):
        return "This is no database URL: use sqlite:///FILE or postgresql://USER@HOST/NAME."
    first = error.orig if isinstance(error, DBAPIError) else error.__cause__
    if isinstance(first, sqlite3.Error):
        return f"The SQLite file cannot be used ({first}): check DATABASE_URL, the file and its rights."
    return f"The database did not answer ({type(error).__name__}). Is it up? Check the URL."


@contextmanager
def _worded() -> Iterator[None]:
    try:
        yield
    except (
        *_NO_DATABASE,
        census.NoDatabaseError,
        census.OccupiedError,
        refusals.BackupError,
        moving.MoveError,
        SQLAlchemyError,
    ) as error:
        raise GaveUpError(sentence(error)) from error


@contextmanager
def _opened(url: str) -> Iterator[Store]:
    with _worded():
        try:
            store = Store(url)
        except ModuleNotFoundError as error:
            raise GaveUpError(_NO_DRIVER) from error
        try:
            yield store
        finally:
            store.close()


def back_up(settings: Settings, file: str, keep: int | None, drill: bool, write: Write) -> int:
    """Write a backup to a file, or under a dated name to a folder that keeps the last `keep`.

    Without `file` it goes into the folder `backups` beside the database or in the current folder.
    """
    with _opened(settings.database) as store:
        place = Path(file) if file else _usual_folder(store)
        into_folder = not file or file.endswith("/") or place.is_dir()
        if keep is not None and not into_folder:
            raise GaveUpError("--keep is for a folder of dated backups: give a folder instead of a file.")
        path = place / backup.dated_name(store, datetime.now(UTC)) if into_folder else place
        made = backup.back_up(store, path)
        write(f"{path}: {_size(path)}, {_holds(made)}; whole and consistent.")
        if drill:
            _say_drill(backup.drill(path, store), write)
        if keep is not None:
            for gone in backup.thin_out(place, keep, path):
                write(f"deleted {gone.name}")
    return 0


def _usual_folder(store: Store) -> Path:
    return (Path() if store.file is None else store.file.parent) / "backups"


def _size(path: Path) -> str:
    size = path.stat().st_size
    return f"{size / 1e6:,.1f} MB" if size >= 100_000 else f"{size / 1e3:,.1f} kB"


def _holds(found: refusals.Checked) -> str:
    return f"revision {found.revision}, {found.total:,} rows in {len(found.rows)} tables"


def _say_drill(found: refusals.Checked, write: Write) -> None:
    write(f"drill: restored into a place of its own: {_holds(found)}, the same; this program opens it.")


def restore(settings: Settings, file: str, into: str, drill: bool, write: Write) -> int:
    """Restore a backup into an empty database: the usual one, or `into`."""
    path = Path(file)
    with _opened(into or settings.database) as target:
        if drill:
            _say_drill(backup.drill(path, target), write)
            return 0
        if not target.is_sqlite and path.is_file() and not backup.is_dump(path):
            return _restore_by_moving(path, target, write)
        found = backup.restore(path, target)
        write(f"{target.shown}: {_holds(found)}; the same as in {path}.")
    return 0


def _restore_by_moving(path: Path, target: Store, write: Write) -> int:
    """Restore a SQLite file into PostgreSQL, through a migrated copy."""
    with tempfile.TemporaryDirectory(prefix="peel-ledger-restore-") as folder:
        copy = Store(f"sqlite:///{Path(folder) / 'copy.sqlite'}")
        try:
            backup.restore(path, copy)
            migrate.upgrade(copy)
            moved = moving.move(copy, target)
        finally:
            copy.close()
    write(f"{target.shown}: {moved.total:,} rows, each compared with those of {path}.")
    return 0


def move_database(source: str, target: str, write: Write, tell: Write) -> int:
    """Copy all rows of one database into another, and report the compared rows of each table."""
    with _opened(source) as leaving, _opened(target) as arriving:
        moved = moving.move(leaving, arriving, _Progress(tell))
        for table in moved.tables:
            write(f"{table.name:<18}{table.rows:>12,}  {table.digest}")
        again = " (taken up where it had stopped)" if moved.resumed else ""
        write(f"{moved.total:,} rows moved, each compared with its source{again}.")
        write(f"Now set DATABASE_URL to {arriving.shown}; the source keeps its rows, closed.")
    return 0


class _Progress:
    """Reports the progress of a table: at its start and end, and every two seconds between."""

    def __init__(self, tell: Write) -> None:
        self._tell = tell
        self._said_at = 0.0

    def __call__(self, table: str, done: int, of: int) -> None:
        now = time.monotonic()
        if of and (done == of or now - self._said_at > _SAY_EVERY_SECONDS):
            self._said_at = now
            self._tell(f"{table} {done:,} of {of:,}")
