"""An advisory lock of a session of PostgreSQL."""

from __future__ import annotations

from contextlib import suppress
from typing import Any

from sqlalchemy import Connection, text
from sqlalchemy.exc import SQLAlchemyError

from storage.store import Store
from storage.trouble import told_apart

_SINCE = 140000  # PostgreSQL 14 has the setting; as the driver counts versions
_RELEASE = text("SELECT pg_advisory_unlock_all()")


class SessionLock:
    """A lock with a name, `shared` or not. The server frees it when the process or the connection ends.

    The session stays outside the connection pool for as long as the lock is held.
    """

    def __init__(self, store: Store, name: str, *, shared: bool = False) -> None:
        self._store = store
        self._name = name
        self._take = text(
            f"SELECT pg_try_advisory_lock{'_shared' if shared else ''}(hashtextextended(:name, 0))"
        )
        self._session: Connection | None = None

    def take(self, silent_seconds: int | None = None) -> bool:
        """Take the lock, or confirm that it is still held; False while another session has it.

        The server ends a session that is silent for `silent_seconds`. Raises AwayError while the database is
        out of reach.
        """
        if self._session is not None and not self._is_alive(self._session):
            self.release()
        if self._session is not None:
            return True
        with told_apart():
            session = self._store.engine.connect()
            session.detach()
            # As an execution option it would stay with the pool's record and hit its next user.
            driver: Any = session.connection.dbapi_connection
            driver.autocommit = True
            if silent_seconds is not None and driver.info.server_version >= _SINCE:
                session.execute(text(f"SET idle_session_timeout = '{silent_seconds}s'"))
            if session.scalar(self._take, {"name": self._name}):
                self._session = session
            else:
                session.close()
        return self._session is not None

    @staticmethod
    def _is_alive(session: Connection) -> bool:
        try:
            session.scalar(text("SELECT 1"))
        except SQLAlchemyError:
            return False
        return True

    def release(self) -> None:
        """Release it."""
        session, self._session = self._session, None
        if session is not None:
            try:
                # The server frees the lock of a closed session only a moment later.
                session.execute(_RELEASE)
                session.close()
            except SQLAlchemyError:
                with suppress(SQLAlchemyError):
                    session.invalidate()
