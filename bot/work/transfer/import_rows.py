"""Reading a sent file: JSON or CSV into rows whose every field is checked, with what is wrong and where."""

from __future__ import annotations

import csv
import hashlib
import json
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, time
from fractions import Fraction
from typing import Any

from bot.documents.tables import TooLargeError, read_csv
from bot.trade.formulas.measures import dimension
from bot.trade.formulas.unit_words import UnknownUnitError, look_up
from bot.work.errors import WorkError

MOST_BYTES = 5 * 1024 * 1024
MOST_ROWS = 100_000
# These are written one by one and looked through whole: no bar has so many of them.
MOST_SINGLE = 20_000
_SINGLE = frozenset({"ingredients", "formulas", "sprayers", "prices", "batches", "counts", "pars"})
MOST_COLUMNS = 100
# A row takes a few hundred bytes of memory whatever little stands in it, so they are counted beforehand.
_MOST_OBJECTS = 4 * MOST_ROWS
MOST_PROBLEMS = 200
_LONGEST_NUMBER = 40
_LARGEST = 10**12
_LINE = " line"  # the line of a table that a row within another one stood on
_YES = {"yes", "true", "1", "y"}


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing that is wrong: in which list and row (as counted by a spreadsheet in CSV, from 1 in JSON).

    `what` is 'missing', 'number', 'day', 'moment', 'unit', 'choice', 'unknown', 'long' or 'twice'.
    """

    kind: str
    row: int
    field: str
    value: str
    what: str


@dataclass
class UnreadableFileError(WorkError):
    """The file cannot be taken in at all.

    `why` is 'size', 'names', 'json', 'csv', 'columns', 'batches', 'format' or 'version'.
    """

    why: str
    detail: str = ""


@dataclass
class Row:
    """One row of a list, whose fields are read by name; what is wrong goes to `problems`."""

    kind: str
    line: int
    data: dict[str, Any]
    problems: list[Problem]
    inside: str = ""

    def wrong(self, name: str, what: str) -> None:
        """Note that a field is wrong."""
        value = self.data.get(name)
        self.problems.append(
            Problem(self.kind, self.line, self.inside + name, "" if value is None else str(value)[:40], what)
        )

    def says(self, *names: str) -> bool:
        """Whether any of these fields has something in it, right or wrong."""
        return any(self.data.get(name) not in (None, "") for name in names)

    def _raw(self, name: str, needed: bool) -> Any:
        value = self.data.get(name)
        if value is None or value == "":
            if needed:
                self.wrong(name, "missing")
            return None
        return value

    def text(self, name: str, needed: bool = True, most: int = 80) -> str:
        """Return a text without control characters, '' where there is none."""
        value = self._raw(name, needed)
        if value is None:
            return ""
        clean = "".join(sign for sign in str(value) if sign.isprintable() or sign == "\n").strip()
        if len(clean) > most:
            self.wrong(name, "long")
        elif needed and not clean:
            self.wrong(name, "missing")
        return clean[:most]

    def number(self, name: str, needed: bool = True, above: bool = False) -> Fraction | None:
        """Return an exact number from nothing up (`above`: more than nothing)."""
        value = self._raw(name, needed)
        if value is None:
            return None
        text = str(value).strip()
        try:
            found = Fraction(text) if len(text) <= _LONGEST_NUMBER and "e" not in text.casefold() else None
        except (ValueError, ZeroDivisionError):
            found = None
        if found is None or not 0 <= found <= _LARGEST or (above and not found):
            self.wrong(name, "number")
            return None
        return found

    def whole(self, name: str, needed: bool = True) -> int | None:
        """Return a whole number."""
        found = self.number(name, needed)
        if found is not None and found.denominator != 1:
            self.wrong(name, "number")
            return None
        return None if found is None else int(found)

    def day(self, name: str, needed: bool = True) -> date | None:
        """Return a day written as 2026-11-25."""
        value = self._raw(name, needed)
        if value is None:
            return None
        try:
            return date.fromisoformat(str(value))
        except ValueError:
            self.wrong(name, "day")
            return None

    def moment(self, name: str, needed: bool = True) -> datetime | None:
        """Return an instant written as 2026-11-25T18:00:00Z; a day alone is its noon in UTC."""
        value = self._raw(name, needed)
        if value is None:
            return None
        text = str(value)
        try:
            if len(text) == len("2026-11-25"):
                return datetime.combine(date.fromisoformat(text), time(12), UTC)
            found = datetime.fromisoformat(text)
            return found.replace(tzinfo=UTC) if found.tzinfo is None else found.astimezone(UTC)
        except (ValueError, OverflowError):
            self.wrong(name, "moment")
            return None

    def choice(self, name: str, known: Iterable[str], needed: bool = True) -> str:
        """Return one of some words, '' where there is none."""
        value = self._raw(name, needed)
        if value is None:
            return ""
        found = str(value).strip().casefold()
        if found not in set(known):
            self.wrong(name, "choice")
        return found

    def unit(self, name: str) -> str:
        """Return a canonical unit, also from a plain word that means just one."""
        value = self._raw(name, True)
        if value is None:
            return "each"
        word = str(value).strip()
        try:
            dimension(word)
        except UnknownUnitError:
            meant = look_up(word)
            if not isinstance(meant, str):
                self.wrong(name, "unit")
                return "each"
            return meant
        return word

    def flag(self, name: str) -> bool:
        """Return yes or no; nothing is no."""
        return str(self.data.get(name) or "").strip().casefold() in _YES

    def rows(self, name: str) -> Iterator[Row]:
        """Return the rows of a list within this one."""
        value = self.data.get(name)
        if value is None:
            return
        if not isinstance(value, list):
            self.wrong(name, "missing")
            return
        for at, one in enumerate(value, start=1):
            where = f"{self.inside}{name} {at}, "
            if isinstance(one, dict):
                yield Row(
                    self.kind, one.get(_LINE, self.line), one, self.problems, "" if _LINE in one else where
                )
            else:
                self.wrong(name, "missing")


@dataclass
class Sheet:
    """What a file holds: the bar it came from, and rows by kind. `is_table` marks a CSV."""

    bar: dict[str, Any]
    rows: dict[str, list[Row]]
    is_table: bool
    problems: list[Problem] = field(default_factory=list)

    def of(self, kind: str) -> list[Row]:
        """Return the rows of a kind."""
        return self.rows.get(kind, [])

    @property
    def count(self) -> int:
        """How many rows there are of all kinds."""
        return sum(map(len, self.rows.values()))


KINDS = (
    "ingredients",
    "formulas",
    "sprayers",
    "prices",
    "deliveries",
    "waste",
    "juicings",
    "batches",
    "drinks",
    "counts",
    "peeled",
    "pars",
)


def read_file(name: str, content: bytes, known: tuple[str, int]) -> Sheet:
    """Read a file by what is in it. `known` is the format's name and version. Raises UnreadableFileError."""
    if len(content) > MOST_BYTES:
        raise UnreadableFileError("size")
    start = content.removeprefix("\ufeff".encode()).lstrip()[:1]
    return _read_json(content, known) if start in {b"{", b"["} else _read_table(content)


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
    for kind in KINDS:
        listed = found.get(kind, [])
        if not isinstance(listed, list):
            raise UnreadableFileError("format", kind)
        count += len(listed)
        if count > MOST_ROWS or (kind in _SINGLE and len(listed) > MOST_SINGLE):
            raise UnreadableFileError("size")
        sheet.rows[kind] = [
            Row(kind, at, one if isinstance(one, dict) else {}, sheet.problems)
            for at, one in enumerate(listed, start=1)
        ]
    return sheet


# Which columns tell what a table holds.
_TABLES: tuple[tuple[str, frozenset[str]], ...] = (
    ("formulas", frozenset({"formula", "ingredient", "amount", "unit"})),
    ("waste", frozenset({"day", "fruit"})),
    ("prices", frozenset({"ingredient", "pack_amount", "pack_unit", "price"})),
)


def _read_table(content: bytes) -> Sheet:
    try:
        columns, found = read_csv(content, MOST_COLUMNS, MOST_ROWS)
    except (UnicodeDecodeError, csv.Error) as error:
        raise UnreadableFileError("csv", str(error)[:80]) from None
    except TooLargeError:
        raise UnreadableFileError("size") from None
    if {"number", "formula", "total_ml"} <= set(columns):
        raise UnreadableFileError("batches")
    kind = next((name for name, needed in _TABLES if needed <= set(columns)), None)
    if kind is None:
        raise UnreadableFileError("columns", ", ".join(columns)[:80])
    if kind in _SINGLE and len(found) > MOST_SINGLE:
        raise UnreadableFileError("size")
    sheet = Sheet({}, {}, True)
    rows = [Row(kind, line, dict(data), sheet.problems) for line, data in found]
    _give_refs(kind, rows)
    sheet.rows[kind] = _grouped(rows, sheet) if kind == "formulas" else rows
    return sheet


def _give_refs(kind: str, rows: Sequence[Row]) -> None:
    """Give rows without a reference one by what they say, so that the same file comes in once."""
    seen: dict[str, int] = {}
    for row in rows:
        if row.data.get("ref"):
            continue
        said = json.dumps([kind, sorted(row.data.items())], ensure_ascii=False)
        digest = hashlib.sha256(said.encode()).hexdigest()[:24]
        seen[digest] = seen.get(digest, 0) + 1
        row.data["ref"] = f"csv:{digest}:{seen[digest]}"


def _grouped(rows: Sequence[Row], sheet: Sheet) -> list[Row]:
    """Gather the lines of a formula table into one row for each formula, as the JSON has them."""
    by_name: dict[str, list[Row]] = {}
    for row in rows:
        by_name.setdefault(row.text("formula").casefold(), []).append(row)
    grouped = []
    for lines in by_name.values():
        first = lines[0]
        version = {**first.data, "number": 1, "lines": [{**line.data, _LINE: line.line} for line in lines]}
        data = {
            "ref": f"csv:formula:{first.text('formula', needed=False).casefold()}"[:80],
            "name": first.data.get("formula"),
            "preparation": first.data.get("preparation"),
            "versions": [version],
        }
        grouped.append(Row("formulas", first.line, data, sheet.problems))
    return grouped


def refs_seen_twice(rows: Sequence[Row], ref: Callable[[Row], str]) -> None:
    """Note rows that say they are one that stood above already."""
    seen: set[str] = set()
    for row in rows:
        one = ref(row)
        if one in seen:
            row.wrong("ref", "twice")
        seen.add(one)
