"""A lock that allows one poller per token on a machine."""

from __future__ import annotations

from pathlib import Path
from types import TracebackType

from storage.locks.file_lock import FileLock


class AlreadyRunningError(RuntimeError):
    """Another process on this machine polls with the same token."""


class NoLockError(RuntimeError):
    """The lock file cannot be written; the text is the system's message."""


class OnlyOne:
    """Holds a file lock while the program runs; the file has the bot's name, which must not be its token."""

    def __init__(self, folder: Path, name: str) -> None:
        self._folder = folder
        self._lock = FileLock(folder / f"poller-{name}.lock")

    def __enter__(self) -> OnlyOne:
        try:
            self._folder.mkdir(parents=True, exist_ok=True)
            taken = self._lock.take()
        except OSError as error:
            raise NoLockError(error.strerror) from error
        if not taken:
            raise AlreadyRunningError
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._lock.release()
