"""Hold a database: running programs share it, and a move or a restore needs it alone.

On SQLite this is a lock on a file beside the database, on PostgreSQL a lock of a session. A database in
memory, or one beside which nobody can write, needs none.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from storage.locks.file_lock import FileLock
from storage.locks.session_lock import SessionLock
from storage.store import Store


class InUseError(RuntimeError):
    """A program uses the database, or it is being moved. `shown` is its URL without the password."""

    def __init__(self, shown: str) -> None:
        super().__init__(shown)
        self.shown = shown


class Hold:
    """A hold on a database, shared by programs or `alone`."""

    def __init__(self, store: Store, alone: bool = False) -> None:
        self._shown = store.shown
        self._lock: FileLock | SessionLock | None = None
        if not store.is_sqlite:
            self._lock = SessionLock(store, "peel-ledger in use", shared=not alone)
        elif store.file is not None:
            self._lock = FileLock(Path(f"{store.file}-in-use"), shared=not alone)

    def take(self) -> None:
        """Take it, or confirm it after the server was away. Raises InUseError and AwayError."""
        try:
            taken = self._lock is None or self._lock.take()
        except OSError:
            return
        if not taken:
            raise InUseError(self._shown)

    def release(self) -> None:
        """Release it."""
        if self._lock is not None:
            self._lock.release()


@contextmanager
def held(store: Store, *, alone: bool = False) -> Iterator[Hold]:
    """Hold a database during the block. Raises InUseError and AwayError."""
    hold = Hold(store, alone)
    hold.take()
    try:
        yield hold
    finally:
        hold.release()
