"""Elect one leader among the processes on a database."""

from __future__ import annotations

from storage.locks.session_lock import SessionLock
from storage.store import Store

# A stalled leader sends nothing, so the server ends its session, and with it the lock. A live leader sends a
# query with every request to Telegram; the longest request takes 35 seconds.
SILENT_SECONDS = 90


class Leadership:
    """A named right, held by at most one process until it exits or loses its connection.

    On PostgreSQL this is a lock that is lost when the process is silent for a minute and a half. A SQLite
    file has one process, which always leads.
    """

    def __init__(self, store: Store, name: str) -> None:
        self._lock = SessionLock(store, name)
        # Whether there can be no other leader, so that no query is needed.
        self.undisputed = store.is_sqlite

    def take(self) -> bool:
        """Take the right, or confirm that this process still has it; False while another process has it.

        Raises AwayError while the database is out of reach.
        """
        return self.undisputed or self._lock.take(SILENT_SECONDS)

    def give_up(self) -> None:
        """Release the right."""
        self._lock.release()
