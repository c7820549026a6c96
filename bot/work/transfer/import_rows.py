"""Read an uploaded JSON or CSV file into rows, and collect its errors with their place."""

from __future__ import annotations

import csv
import hashlib
import json
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any, get_args

from pydantic import ValidationError

from bot.documents.spreadsheets import is_workbook
from bot.documents.tables import TooLargeError, read_csv
from bot.work.transfer.fields import What
from bot.work.transfer.problems import MOST_BYTES, Problem, UnreadableFileError
from bot.work.transfer.rows import SECTIONS

MOST_ROWS = 100_000
# These are inserted one by one and searched completely: no bar has so many of them.
MOST_SINGLE = 20_000
_SINGLE = frozenset(
    {
        "ingredients",
        "formulas",
        "sprayers",
        "prices",
        "batches",
        "counts",
        "pars",
        "wordings",
        "reminders",
        "events",
        "menu",
        "peeled",
        "trials",
    }
)
MOST_COLUMNS = 100
# A row takes a few hundred bytes of memory however short it is, so rows are counted in advance.
_MOST_OBJECTS = 4 * MOST_ROWS
MOST_PROBLEMS = 200
_LINE = " line"  # the line of a table that contains this nested row
# The error types of pydantic itself.
_WHAT = {
    **dict.fromkeys(("too_short", "list_type", "model_type"), "missing"),
    **dict.fromkeys(("bool_parsing", "bool_type"), "choice"),
    "too_long": "long",
}
_MINE = frozenset(get_args(What))


@dataclass(slots=True)
class Given:
    """A row of a file: its line or place, and its fields by name."""

    line: int
    data: dict[str, Any]

    def text(self, name: str) -> str:
        """Return a field as text, '' if it is empty."""
        value = self.data.get(name)
        return "" if value is None else str(value).strip()


@dataclass
class Sheet:
    """The content of a file: its bar of origin, and rows by kind. `is_table` marks a CSV."""

    bar: dict[str, Any]
    rows: dict[str, list[Given]]
    is_table: bool
    problems: list[Problem] = field(default_factory=list)

    def of(self, kind: str) -> list[Given]:
        """Return the rows of a kind."""
        return self.rows.get(kind, [])

    @property
    def count(self) -> int:
        """The total number of rows."""
        return sum(map(len, self.rows.values()))

    def wrong(self, kind: str, row: Given, what: str, path: Sequence[str | int]) -> None:
        """Record that the value at the end of a path through the row is wrong or missing."""
        line, names = row.line, [""]
        value: Any = row.data
        for step in path:
            if isinstance(step, str):
                names.append(step)
                value = value.get(step) if isinstance(value, dict) else None
                continue
            names[-1] += f" {step + 1}"
            value = value[step] if isinstance(value, list) and step < len(value) else None
            if isinstance(value, dict) and _LINE in value:
                line, names = value[_LINE], [""]
        shown = "" if value is None or isinstance(value, list | dict) else str(value)[:40]
        self.problems.append(Problem(kind, line, ", ".join(names[1:]), shown, what))

    def refused(self, kind: str, row: Given, error: ValidationError) -> None:
        """Record all errors of a row."""
        for one in error.errors(include_url=False, include_input=False):
            path = (*one["loc"], *one.get("ctx", {}).get("inside", ()))
            self.wrong(
                kind, row, one["type"] if one["type"] in _MINE else _WHAT.get(one["type"], "number"), path
            )

    def refs_seen_twice(self, kind: str) -> None:
        """Record rows with the reference of an earlier row."""
        seen: set[str] = set()
        for row in self.of(kind):
            ref = row.text("ref")
            if ref and ref in seen:
                self.wrong(kind, row, "twice", ("ref",))
            seen.add(ref)


def read_file(name: str, content: bytes, known: tuple[str, int]) -> Sheet:
    """Read a file by its content. `known` is the format's name and version. Raises UnreadableFileError."""
    if len(content) > MOST_BYTES:
        raise UnreadableFileError("size")
    start = content.removeprefix("\ufeff".encode()).lstrip()[:1]
    return _read_json(content, known) if start in {b"{", b"["} else _read_table(content)


def is_foreign(content: bytes) -> bool:
    """Whether a file is a table that was not made here: its columns have other names than ours."""
    start = content.removeprefix("\ufeff".encode()).lstrip()[:1]
    if is_workbook(content):
        return True
    if start in {b"{", b"["}:
        return False
    try:
        columns, _rows = read_csv(content.partition(b"\n")[0], MOST_COLUMNS, 1)
    except (UnicodeDecodeError, csv.Error, TooLargeError):
        return True
    return not any(needed <= set(columns) for _name, needed in (*_TABLES, ("batches", _BATCHES)))


def _read_json(content: bytes, known: tuple[str, int]) -> Sheet:
    if content.count(b"{") + content.count(b"[") > _MOST_OBJECTS:
        raise UnreadableFileError("size")
    try:
        found = json.loads(content.decode("utf-8-sig"))
    except (ValueError, RecursionError) as error:
        raise UnreadableFileError("json", str(error)[:80]) from None
    if not isinstance(found, dict) or found.get("format") != known[0]:
        raise UnreadableFileError("format")
    if found.get("version") != known[1]:
        raise UnreadableFileError("version", str(found.get("version"))[:20])
    bar = found.get("bar")
    sheet = Sheet(bar if isinstance(bar, dict) else {}, {}, False)
    count = 0
    for kind in SECTIONS:
        listed = found.get(kind, [])
        if not isinstance(listed, list):
            raise UnreadableFileError("format", kind)
        count += len(listed)
        if count > MOST_ROWS or (kind in _SINGLE and len(listed) > MOST_SINGLE):
            raise UnreadableFileError("size")
        sheet.rows[kind] = [
            Given(at, one if isinstance(one, dict) else {}) for at, one in enumerate(listed, start=1)
        ]
    return sheet


# The columns that identify the kind of a table.
_TABLES: tuple[tuple[str, frozenset[str]], ...] = (
    ("formulas", frozenset({"formula", "ingredient", "amount", "unit"})),
    ("waste", frozenset({"day", "fruit"})),
    ("prices", frozenset({"ingredient", "pack_amount", "pack_unit", "price"})),
)
_BATCHES = frozenset({"number", "formula", "total_ml"})


def _read_table(content: bytes) -> Sheet:
    try:
        columns, found = read_csv(content, MOST_COLUMNS, MOST_ROWS)
    except (UnicodeDecodeError, csv.Error) as error:
        raise UnreadableFileError("csv", str(error)[:80]) from None
    except TooLargeError:
        raise UnreadableFileError("size") from None
    if set(columns) >= _BATCHES:
        raise UnreadableFileError("batches")
    kind = next((name for name, needed in _TABLES if needed <= set(columns)), None)
    if kind is None:
        raise UnreadableFileError("columns", ", ".join(columns)[:80])
    if kind in _SINGLE and len(found) > MOST_SINGLE:
        raise UnreadableFileError("size")
    sheet = Sheet({}, {}, True)
    rows = [Given(line, dict(data)) for line, data in found]
    give_references(kind, rows)
    sheet.rows[kind] = _grouped(rows, sheet) if kind == "formulas" else rows
    return sheet


def give_references(kind: str, rows: Sequence[Given]) -> None:
    """Give rows without a reference one from their content, so that the same file is imported once."""
    seen: dict[str, int] = {}
    for row in rows:
        if row.data.get("ref"):
            continue
        said = json.dumps([kind, sorted(row.data.items())], ensure_ascii=False)
        digest = hashlib.sha256(said.encode()).hexdigest()[:24]
        seen[digest] = seen.get(digest, 0) + 1
        row.data["ref"] = f"csv:{digest}:{seen[digest]}"


def _grouped(rows: Sequence[Given], sheet: Sheet) -> list[Given]:
    """Group the lines of a formula table into one row per formula, as in the JSON."""
    by_name: dict[str, list[Given]] = {}
    for row in rows:
        if not row.text("formula"):
            sheet.wrong("formulas", row, "missing", ("formula",))
        by_name.setdefault(row.text("formula").casefold(), []).append(row)
    grouped = []
    for name, lines in by_name.items():
        first = lines[0]
        version = {**first.data, "number": 1, "lines": [{**line.data, _LINE: line.line} for line in lines]}
        data = {
            "ref": f"csv:formula:{name}"[:80],
            "name": first.data.get("formula"),
            "preparation": first.data.get("preparation"),
            "versions": [version],
        }
        grouped.append(Given(first.line, data))
    return grouped
