"""Elect one leader among the processes on a database."""

from __future__ import annotations

from sqlalchemy import Connection, text
from sqlalchemy.exc import SQLAlchemyError

from storage.store import Store
from storage.trouble import told_apart

_TAKE = text("SELECT pg_try_advisory_lock(hashtextextended(:name, 0))")
# A stalled leader sends nothing, so the server ends its session, and with it the lock. A live leader sends a
# query with every request to Telegram; the longest request takes 35 seconds.
SILENT_SECONDS = 90
_SINCE = (14,)  # the first version of PostgreSQL with this setting


class Leadership:
    """A named right, held by at most one process until it exits or loses its connection.

    On PostgreSQL this is a session-level advisory lock, lost when the process is silent for a minute and a
    half. A SQLite file has one process, which always leads.
    """

    def __init__(self, store: Store, name: str) -> None:
        self._store = store
        self._name = name
        self._session: Connection | None = None

    @property
    def undisputed(self) -> bool:
        """Whether there can be no other leader, so that no query is needed."""
        return self._store.is_sqlite

    def take(self) -> bool:
        """Take the right, or confirm that this process still has it; False while another process has it.

        Raises AwayError while the database is out of reach.
        """
        if self.undisputed:
            return True
        if self._session is not None:
            if self._alive(self._session):
                return True
            self._drop()
        with told_apart():
            session = self._store.engine.connect().execution_options(isolation_level="AUTOCOMMIT")
            # Kept for the life of the process, outside the connection pool.
            session.detach()
            if (session.dialect.server_version_info or ()) >= _SINCE:
                session.execute(text(f"SET idle_session_timeout = '{SILENT_SECONDS}s'"))
            if session.scalar(_TAKE, {"name": self._name}):
                self._session = session
            else:
                session.close()
        return self._session is not None

    @staticmethod
    def _alive(session: Connection) -> bool:
        try:
            session.scalar(text("SELECT 1"))
        except SQLAlchemyError:
            return False
        return True

    def _drop(self) -> None:
        session, self._session = self._session, None
        if session is not None:
            try:
                session.close()
            except SQLAlchemyError:
                session.invalidate()

    def give_up(self) -> None:
        """Release the right."""
        self._drop()
