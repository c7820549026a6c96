"""Distinguish an unavailable database from an invalid statement."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager

from sqlalchemy.exc import DBAPIError, IntegrityError, InterfaceError, OperationalError, SQLAlchemyError
from sqlalchemy.exc import TimeoutError as PoolTimeoutError

# The errors that a store raises, for callers that must not depend on SQLAlchemy.
DatabaseError = SQLAlchemyError
ConflictError = IntegrityError  # another process wrote the row, or it breaks a constraint

# SQLite reports a misspelt column as an operational error too; these codes concern the file, its disk and its
# locks (SQLite documentation, "Result and Error Codes").
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
_NO_DATABASE = frozenset({sqlite3.SQLITE_NOTADB, sqlite3.SQLITE_CORRUPT})
_NO_RIGHT = "42501"  # insufficient_privilege (PostgreSQL documentation, appendix A)
_PRIMARY = 0xFF  # the extended codes have their kind in the lowest byte


class AwayError(SQLAlchemyError):
    """The database is unavailable for now: locked, full, restarting or out of reach."""


@contextmanager
def told_apart() -> Iterator[None]:
    """Turn database and driver errors that mean unavailability into AwayError."""
    try:
        yield
    except (DBAPIError, PoolTimeoutError) as error:
        if not is_passing(error):
            raise
        raise AwayError(_said(error)) from error


def _said(error: DBAPIError | PoolTimeoutError) -> str:
    """Return the driver's message without the statement, which is long and says nothing about the reason."""
    first = error.orig if isinstance(error, DBAPIError) and error.orig is not None else error
    return f"({type(first).__name__}) {str(first).partition(chr(10))[0]}"


def cannot_be_used(error: BaseException) -> bool:
    """Whether the database itself cannot be used, now or at all, rather than the statement."""
    if not isinstance(error, DBAPIError):
        return is_passing(error)
    if isinstance(error.orig, sqlite3.Error):
        code = getattr(error.orig, "sqlite_errorcode", None)
        return is_passing(error) or (code is not None and code & _PRIMARY in _NO_DATABASE)
    return is_passing(error) or getattr(error.orig, "sqlstate", None) == _NO_RIGHT


def may_be_mended(error: BaseException) -> bool:
    """Whether a SQLite file can be used once somebody frees its lock, its disk or its rights.

    A file that cannot even be opened is more likely a wrong setting.
    """
    return _code_of(error) in _PASSING - {sqlite3.SQLITE_CANTOPEN}


def is_read_only(error: BaseException) -> bool:
    """Whether SQLite could not write the file; a connection stays so, even if the file is mended."""
    return _code_of(error) == sqlite3.SQLITE_READONLY


def is_damaged(error: BaseException | None) -> bool:
    """Whether SQLite found a damaged page in the file."""
    return _code_of(error) == sqlite3.SQLITE_CORRUPT


def _code_of(error: BaseException | None) -> int | None:
    """Return the kind of an error of SQLite, or None for any other."""
    first = error.__cause__ if isinstance(error, AwayError) else error
    driver = first.orig if isinstance(first, DBAPIError) else None
    code = getattr(driver, "sqlite_errorcode", None)
    return None if code is None else int(code) & _PRIMARY


def is_passing(error: BaseException) -> bool:
    """Whether a retry may succeed later: locked, full, restarting, out of reach."""
    if isinstance(error, PoolTimeoutError):
        return True
    if not isinstance(error, DBAPIError):
        return False
    if isinstance(error.orig, sqlite3.Error):
        code = getattr(error.orig, "sqlite_errorcode", None)
        return code is not None and code & _PRIMARY in _PASSING
    return error.connection_invalidated or isinstance(error, OperationalError | InterfaceError)
