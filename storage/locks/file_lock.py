"""A lock on a file of its own."""

from __future__ import annotations

from pathlib import Path
from typing import IO

try:
    import fcntl
except ImportError:  # Windows, where these locks keep nobody away
    fcntl = None  # type: ignore[assignment]


class FileLock:
    """A lock, `shared` or not. The operating system frees it when the process ends, however it ends."""

    def __init__(self, path: Path, *, shared: bool = False) -> None:
        self._path = path
        self._shared = shared
        self._file: IO[str] | None = None

    def take(self) -> bool:
        """Take the lock; False while another process has it. Raises OSError if the file cannot be written."""
        if self._file is not None:
            return True
        file = self._path.open("a")
        if fcntl is not None:
            try:
                fcntl.flock(file, (fcntl.LOCK_SH if self._shared else fcntl.LOCK_EX) | fcntl.LOCK_NB)
            except BlockingIOError:
                file.close()
                return False
        self._file = file
        return True

    def release(self) -> None:
        """Release it."""
        if self._file is not None:
            self._file.close()
        self._file = None
