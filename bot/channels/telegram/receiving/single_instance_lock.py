"""A lock that allows one poller per token on a machine."""

from __future__ import annotations

from pathlib import Path
from types import TracebackType
from typing import IO

try:
    import fcntl
except ImportError:  # Windows, where Telegram alone tells two pollers apart
    fcntl = None  # type: ignore[assignment]


class AlreadyRunningError(RuntimeError):
    """Another process on this machine polls with the same token."""


class NoLockError(RuntimeError):
    """The lock file cannot be written; the text is the system's message."""


class OnlyOne:
    """Holds a file lock while the program runs; the file has the bot's name, which must not be its token."""

    def __init__(self, folder: Path, name: str) -> None:
        self._path = folder / f"poller-{name}.lock"
        self._file: IO[str] | None = None

    def __enter__(self) -> OnlyOne:
        try:
            self._path.parent.mkdir(parents=True, exist_ok=True)
            self._file = self._path.open("w")
        except OSError as error:
            raise NoLockError(error.strerror) from error
        if fcntl is None:
            return self
        try:
            fcntl.flock(self._file, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            self._file.close()
            raise AlreadyRunningError from None
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        if self._file is not None:
            self._file.close()
