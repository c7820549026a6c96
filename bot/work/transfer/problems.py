"""Errors of an imported file and its rows, in a module that does not load what reads files."""

from __future__ import annotations

from dataclasses import dataclass

from bot.work.errors import WorkError

MOST_BYTES = 5 * 1024 * 1024


@dataclass(frozen=True, slots=True)
class Problem:
    """One error: its list and row (counted as in a spreadsheet for CSV, from 1 for JSON).

    `what` is 'missing', 'number', 'day', 'moment', 'unit', 'choice', 'unknown', 'long' or 'twice'.
    """

    kind: str
    row: int
    field: str
    value: str
    what: str


@dataclass
class UnreadableFileError(WorkError):
    """The file cannot be imported at all.

    `why` is 'size', 'names', 'new bar', 'json', 'csv', 'columns', 'batches', 'format' or 'version'.
    """

    why: str
    detail: str = ""
