"""Watch the file of a SQLite database while a program uses it."""

from __future__ import annotations

from pathlib import Path

from sqlalchemy import text

from storage.store import Store
from storage.trouble import is_damaged, told_apart

REMOVED = "the database file was removed or replaced while the program runs"
NO_WAL = "the write-ahead log beside the database file was removed; what it held is in the file now"


class FileWatch:
    """Notices a removed file, a removed write-ahead log, and damaged pages."""

    def __init__(self, store: Store) -> None:
        self._store = store
        self._path = store.file
        self._file = self._number()
        self.damage = ""  # what the last check of all pages found

    def _number(self) -> tuple[int, int] | None:
        try:
            found = None if self._path is None else self._path.stat()
        except OSError:
            return None
        return None if found is None else (found.st_dev, found.st_ino)

    def look(self) -> str:
        """Return what is wrong with the files, '' if nothing; make a removed log anew. Raises AwayError."""
        if self._path is None:
            return ""
        if self._number() != self._file:
            return REMOVED
        if not Path(f"{self._path}-wal").exists() and self._store.is_open:
            self._store.write_log_back()
            return NO_WAL
        return ""

    def check(self) -> str:
        """Read all pages; return the first damage, '' if there is none. Raises AwayError."""
        if self._path is None:
            return ""
        try:
            with told_apart(), self._store.engine.connect() as connection:
                found = connection.scalar(text("PRAGMA quick_check(1)"))
        except Exception as error:
            if not is_damaged(error):
                raise
            found = "a damaged page"
        self.damage = "" if found == "ok" else str(found)
        return self.damage
