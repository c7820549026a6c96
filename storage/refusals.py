"""Why a backup or a restore was not done, and what is known of one that was checked."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path


class BackupError(RuntimeError):
    """A backup or a restore was not done; `subject` is what it was about."""

    def __init__(self, subject: str = "") -> None:
        super().__init__(subject)
        self.subject = subject


class AlreadyThereError(BackupError):
    """The file to write exists already, and is left as it is."""


class NoFileError(BackupError):
    """There is no such file to restore from."""


class NotABackupError(BackupError):
    """The file is neither a SQLite database nor a dump of PostgreSQL."""


class NotWholeError(BackupError):
    """What was written or read is not whole; `subject` says how that showed."""


class ToolMissingError(BackupError):
    """A program of PostgreSQL is not installed; `subject` is its name."""


class ToolFailedError(BackupError):
    """A program of PostgreSQL or the disk refused; `subject` is what it said last."""


class WrongKindError(BackupError):
    """A dump of PostgreSQL can only go into PostgreSQL."""


@dataclass(frozen=True, slots=True)
class Checked:
    """A database or a backup that was found whole: its revision and how many rows each table holds."""

    path: Path
    revision: str | None
    rows: dict[str, int]

    @property
    def total(self) -> int:
        """How many rows it holds in all."""
        return sum(self.rows.values())


def first_difference(expected: dict[str, int], found: dict[str, int]) -> str:
    """Name the first table that holds not as many rows as expected: how many of how many."""
    for name in sorted(expected.keys() | found.keys()):
        if expected.get(name) != found.get(name):
            return f"{name}: {found.get(name)}/{expected.get(name)}"
    return ""
