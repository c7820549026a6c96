"""Logging without secrets, and above DEBUG without anything that a person wrote."""

from __future__ import annotations

import logging
import traceback
from collections.abc import Iterable, Iterator
from types import TracebackType
from typing import TypeAlias
from urllib.parse import quote

from sqlalchemy.engine import make_url
from sqlalchemy.exc import ArgumentError, DBAPIError

from bot.settings import Secret, Settings

HIDDEN = "[secret]"
_SHAPE = "%(asctime)s %(levelname)s %(name)s: %(message)s"
# Noisy libraries; the first two log request addresses, which contain the token.
_QUIET = {
    "httpx": logging.WARNING,
    "httpcore": logging.WARNING,
    "alembic": logging.WARNING,
    "apscheduler": logging.WARNING,
    "fontTools": logging.WARNING,
    # It logs unreadable parts of a response, including people's texts; we log the error ourselves.
    "telegram": logging.CRITICAL,
}
_OURS = ("bot", "storage", "__main__")

_Raised: TypeAlias = tuple[type[BaseException], BaseException, TracebackType | None] | tuple[None, None, None]


class BareFormatter(logging.Formatter):
    """Writes records without secrets.

    Unless `whole`, a traceback shows the kind and place of an error but not its message, and library messages
    are cut to their first line: both may quote people's texts.
    """

    def __init__(self, secrets: Iterable[str], whole: bool) -> None:
        super().__init__(_SHAPE)
        # The longest first, because one may be part of another.
        self._secrets = sorted({form for one in secrets for form in _forms(one)}, key=len, reverse=True)
        self._whole = whole

    def format(self, record: logging.LogRecord) -> str:
        """Return the record as text."""
        if not self._whole:
            record = logging.makeLogRecord(record.__dict__)
            record.exc_text = None  # another handler may have cached the full traceback there
            if record.name.partition(".")[0] not in _OURS:
                record.msg, record.args = record.getMessage().partition("\n")[0], None
        text = super().format(record)
        for secret in self._secrets:
            text = text.replace(secret, HIDDEN)
        return text

    def formatException(self, ei: _Raised) -> str:  # noqa: N802 - logging's own name
        """Return a traceback: places, and the kind of each error."""
        if self._whole or ei[1] is None:
            return super().formatException(ei)
        lines: list[str] = []
        for error in _chain(ei[1]):
            lines += [part.rstrip("\n") for part in traceback.format_tb(error.__traceback__)]
            lines.append(_kind(error))
        return "\n".join(lines)


def _forms(secret: str) -> tuple[str, ...]:
    return (secret, quote(secret), quote(secret, safe=""))


def _chain(error: BaseException) -> list[BaseException]:
    """Return the errors that led to this one, the first one first."""
    found: list[BaseException] = []
    now: BaseException | None = error
    while now is not None and now not in found:
        found.append(now)
        now = now.__cause__ or (None if now.__suppress_context__ else now.__context__)
    return found[::-1]


def _kind(error: BaseException) -> str:
    """Return the kind of an error, with the message of the operating system or the database."""
    name = f"{type(error).__module__}.{type(error).__qualname__}"
    if isinstance(error, DBAPIError):
        driver = error.orig
        code = getattr(driver, "sqlite_errorname", None) or getattr(driver, "sqlstate", None)
        return f"{name}: {type(driver).__name__} {code or ''}".rstrip()
    if isinstance(error, OSError) and error.strerror:
        return f"{name}: [{error.errno}] {error.strerror}"
    return name


def secrets_of(settings: Settings) -> Iterator[str]:
    """Return every secret in the settings: secret settings, and the database's password."""
    for name in settings.names():
        value = getattr(settings, name)
        if isinstance(value, Secret) and value.reveal():
            yield value.reveal()
    try:
        password = make_url(settings.database).password
    except (ArgumentError, ValueError):
        return
    if password:
        yield password


def set_up(settings: Settings) -> None:
    """Log to standard error, from the configured level."""
    level = settings.log_level.upper()
    handler = logging.StreamHandler()
    handler.setFormatter(BareFormatter(secrets_of(settings), whole=level == "DEBUG"))
    logging.basicConfig(level=level, handlers=[handler])
    for name, least in _QUIET.items():
        logging.getLogger(name).setLevel(least)
