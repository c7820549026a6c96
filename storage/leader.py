"""One of several processes on the same database does what only one may do."""

from __future__ import annotations

from sqlalchemy import Connection, text
from sqlalchemy.exc import SQLAlchemyError

from storage.store import Store
from storage.trouble import told_apart

_TAKE = text("SELECT pg_try_advisory_lock(hashtextextended(:name, 0))")
# A leader that stands still says nothing, and the server takes the right away by ending its session. One
# that lives is heard of with every question to Telegram, the longest of which takes 35 seconds.
SILENT_SECONDS = 90
_SINCE = (14,)  # the version of PostgreSQL from which on it does


class Leadership:
    """A right with a name, held by at most one process until that ends or loses its connection.

    On PostgreSQL it is a session's advisory lock, lost where nothing is heard of the process for a minute
    and a half. A SQLite file has one process, which has it.
    """

    def __init__(self, store: Store, name: str) -> None:
        self._store = store
        self._name = name
        self._session: Connection | None = None

    @property
    def undisputed(self) -> bool:
        """Whether nobody else can have it, so that there is nothing to ask."""
        return self._store.is_sqlite

    def take(self) -> bool:
        """Take the right, or make sure of having it still; False while another has it.

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
            # Kept as long as the process lives: not one of those that go back and forth.
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
        """Let another have it."""
        self._drop()
