"""Errors of backup and restore, and the result of a check."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path


class BackupError(RuntimeError):
    """A backup or a restore failed; `subject` is its subject."""

    def __init__(self, subject: str = "") -> None:
        super().__init__(subject)
        self.subject = subject


class AlreadyThereError(BackupError):
    """The file to write already exists and was not changed."""


class NoFileError(BackupError):
    """The file to restore does not exist."""


class NotABackupError(BackupError):
    """The file is neither a SQLite database nor a PostgreSQL dump."""


class NotWholeError(BackupError):
    """The copy is damaged or incomplete; `subject` gives the evidence."""


class ToolMissingError(BackupError):
    """A PostgreSQL program is not installed; `subject` is its name."""


class ToolFailedError(BackupError):
    """A PostgreSQL program or the disk failed; `subject` is the last message."""


class WrongKindError(BackupError):
    """A PostgreSQL dump can only be restored into PostgreSQL."""


@dataclass(frozen=True, slots=True)
class Checked:
    """A database or a backup that passed the check: its revision and the row count of each table."""

    path: Path
    revision: str | None
    rows: dict[str, int]

    @property
    def total(self) -> int:
        """The total number of rows."""
        return sum(self.rows.values())


def first_difference(expected: dict[str, int], found: dict[str, int]) -> str:
    """Name the first table whose row count differs: found and expected."""
    for name in sorted(expected.keys() | found.keys()):
        if expected.get(name) != found.get(name):
            return f"{name}: {found.get(name)}/{expected.get(name)}"
    return ""
