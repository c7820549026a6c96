"""Hold a database: running programs share it, and a move or a restore needs it alone.

On SQLite this is a lock on a file beside the database, on PostgreSQL an advisory lock of a session. The
operating system or the server frees it when the process ends, however it ends.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import IO

from sqlalchemy import Connection, text
from sqlalchemy.exc import SQLAlchemyError

from storage.store import Store
from storage.trouble import told_apart

try:
    import fcntl
except ImportError:  # Windows, where nothing keeps a move from a running program
    fcntl = None  # type: ignore[assignment]

_NAME = "hashtextextended('peel-ledger in use', 0)"
_TAKE = {
    False: text(f"SELECT pg_try_advisory_lock_shared({_NAME})"),
    True: text(f"SELECT pg_try_advisory_lock({_NAME})"),
}
_RELEASE = text("SELECT pg_advisory_unlock_all()")


class InUseError(RuntimeError):
    """A program uses the database, or it is being moved. `shown` is its URL without the password."""

    def __init__(self, shown: str) -> None:
        super().__init__(shown)
        self.shown = shown


class Hold:
    """A hold on a database, shared by programs or `alone`."""

    def __init__(self, store: Store, alone: bool = False) -> None:
        self._store = store
        self._alone = alone
        self._file: IO[str] | None = None
        self._session: Connection | None = None

    def take(self) -> None:
        """Take it, or confirm it after the server was away. Raises InUseError and AwayError."""
        if self._store.is_sqlite:
            taken = self._file is not None or self._lock_file()
        else:
            taken = self._is_alive() or self._lock_session()
        if not taken:
            raise InUseError(self._store.url.render_as_string(hide_password=True))

    def _lock_file(self) -> bool:
        path = self._store.url.database
        if fcntl is None or not path or path.startswith("file:") or path == ":memory:":
            return True
        try:
            file = Path(f"{path}-in-use").open("a")  # noqa: SIM115 - open for as long as it is held
        except OSError:
            return True  # nobody can write there anyway
        kind = fcntl.LOCK_EX if self._alone else fcntl.LOCK_SH
        try:
            fcntl.flock(file, kind | fcntl.LOCK_NB)
        except OSError:
            file.close()
            return False
        self._file = file
        return True

    def _is_alive(self) -> bool:
        if self._session is None:
            return False
        try:
            self._session.scalar(text("SELECT 1"))
        except SQLAlchemyError:
            with suppress(SQLAlchemyError):
                self._session.invalidate()
            self._session = None
        return self._session is not None

    def _lock_session(self) -> bool:
        with told_apart():
            session = self._store.engine.connect().execution_options(isolation_level="AUTOCOMMIT")
            session.detach()
            if session.scalar(_TAKE[self._alone]):
                self._session = session
            else:
                session.close()
        return self._session is not None

    def release(self) -> None:
        """Release it."""
        if self._file is not None:
            self._file.close()
        if self._session is not None:
            with suppress(SQLAlchemyError):
                # The server lets go of a closed session only a moment later.
                self._session.execute(_RELEASE)
                self._session.close()
        self._file = self._session = None


@contextmanager
def held(store: Store, *, alone: bool = False) -> Iterator[Hold]:
    """Hold a database during the block. Raises InUseError and AwayError."""
    hold = Hold(store, alone)
    hold.take()
    try:
        yield hold
    finally:
        hold.release()
