"""Telling a database that cannot work just now from a program that asks it nonsense."""

from __future__ import annotations

import sqlite3

from sqlalchemy.exc import DBAPIError, InterfaceError, OperationalError
from sqlalchemy.exc import TimeoutError as PoolTimeoutError

# SQLite calls a misspelt column an operational error too; these are about the file, its disk and its locks
# (SQLite documentation, "Result and Error Codes").
_PASSING = frozenset(
    {
        sqlite3.SQLITE_BUSY,
        sqlite3.SQLITE_LOCKED,
        sqlite3.SQLITE_NOMEM,
        sqlite3.SQLITE_READONLY,
        sqlite3.SQLITE_IOERR,
        sqlite3.SQLITE_FULL,
        sqlite3.SQLITE_CANTOPEN,
        sqlite3.SQLITE_PROTOCOL,
    }
)
_PRIMARY = 0xFF  # the extended codes carry their kind in the lowest byte


def is_passing(error: BaseException) -> bool:
    """Whether the same may well succeed later: locked, full, restarting, out of reach."""
    if isinstance(error, PoolTimeoutError):
        return True
    if not isinstance(error, DBAPIError):
        return False
    if isinstance(error.orig, sqlite3.Error):
        code = getattr(error.orig, "sqlite_errorcode", None)
        return code is not None and code & _PRIMARY in _PASSING
    return error.connection_invalidated or isinstance(error, OperationalError | InterfaceError)
