"""Read the cells of a sent table: CSV and its relatives in any common encoding, or an .xlsx workbook."""

from __future__ import annotations

import csv
import io
import zipfile
from collections import Counter
from collections.abc import Iterable
from datetime import date, datetime, time

from bot.documents.tables import TooLargeError, unguarded

_DELIMITERS = ",;\t|"
_LINES_LOOKED_AT = 30
_MOST_UNPACKED = 60 * 1024 * 1024  # of a workbook, bytes
_MOST_PARTS = 1_000
_LONGEST_CELL = 2_000
Cells = list[tuple[int, list[str]]]
"""Rows that are not empty: the line as a spreadsheet counts it, and its cells without spaces around."""


class UnreadableTableError(ValueError):
    """The bytes are no table: neither text nor a workbook."""


def is_workbook(content: bytes) -> bool:
    """Return whether the bytes begin like an .xlsx file, which is a zip archive."""
    return content.startswith(b"PK\x03\x04")


def read_cells(content: bytes, most_columns: int, most_rows: int) -> list[Cells]:
    """Return the tables of a file: one for CSV, one for each sheet of a workbook that holds anything.

    Raises UnreadableTableError, or TooLargeError before more is kept than the limits allow.
    """
    if is_workbook(content):
        return _of_workbook(content, most_columns, most_rows)
    return [_of_text(_decoded(content), most_columns, most_rows)]


def _decoded(content: bytes) -> str:
    if content.startswith((b"\xff\xfe", b"\xfe\xff")):
        encodings: tuple[str, ...] = ("utf-16",)
    else:
        # What spreadsheets write on machines that do not use UTF-8.
        encodings = ("utf-8-sig", "cp1252")
    for encoding in encodings:
        try:
            text = content.decode(encoding)
        except UnicodeDecodeError:
            continue
        if "\0" not in text:
            return text
    raise UnreadableTableError


def _of_text(text: str, most_columns: int, most_rows: int) -> Cells:
    try:
        reader = csv.reader(io.StringIO(text, newline=""), delimiter=_delimiter(text))
        return _bounded(((reader.line_num, row) for row in reader), most_columns, most_rows)
    except csv.Error as error:
        if "field limit" in str(error):
            raise TooLargeError from None
        raise UnreadableTableError(str(error)) from None


def _delimiter(text: str) -> str:
    """Return the sign that cuts most lines into the same number of cells, more than one."""
    lines = [line for line in text.splitlines()[: 2 * _LINES_LOOKED_AT] if line.strip()][:_LINES_LOOKED_AT]

    def score(sign: str) -> tuple[int, int]:
        widths = Counter(len(next(csv.reader([line], delimiter=sign), [])) for line in lines)
        agreeing = [(count, width) for width, count in widths.items() if width > 1]
        return max(agreeing, default=(0, 0))

    return max(_DELIMITERS, key=score)


def _of_workbook(content: bytes, most_columns: int, most_rows: int) -> list[Cells]:
    from openpyxl import load_workbook  # noqa: PLC0415 - a few files a year need it
    from openpyxl.utils.exceptions import InvalidFileException  # noqa: PLC0415

    try:
        with zipfile.ZipFile(io.BytesIO(content)) as archive:
            parts = archive.infolist()
        if len(parts) > _MOST_PARTS or sum(one.file_size for one in parts) > _MOST_UNPACKED:
            raise TooLargeError
        workbook = load_workbook(io.BytesIO(content), read_only=True, data_only=True, keep_links=False)
    except (zipfile.BadZipFile, InvalidFileException, KeyError, ValueError, OSError) as error:
        if isinstance(error, TooLargeError):
            raise
        raise UnreadableTableError(str(error)[:80]) from None
    found = []
    try:
        for sheet in workbook.worksheets:
            sheet.reset_dimensions()  # what a file says of its own size may be wrong
            rows = sheet.iter_rows(values_only=True)
            numbered = enumerate(([_text(value) for value in row] for row in rows), start=1)
            cells = _bounded(numbered, most_columns, most_rows)
            if cells:
                found.append(cells)
    except (SyntaxError, ValueError, KeyError, TypeError) as error:  # broken XML inside
        if isinstance(error, TooLargeError):
            raise
        raise UnreadableTableError(str(error)[:80]) from None
    finally:
        workbook.close()
    return found


def _text(value: object) -> str:
    """Return a workbook's cell as one would type it: days in ISO form, whole numbers without a point."""
    if value is None:
        return ""
    if isinstance(value, datetime):
        return value.date().isoformat() if value.time() == time(0) else value.isoformat(sep=" ")
    if isinstance(value, date | time):
        return value.isoformat()
    if isinstance(value, float):
        return str(int(value)) if value.is_integer() and abs(value) < 1e15 else repr(value)
    return str(value)


def _bounded(rows: Iterable[tuple[int, list[str]]], most_columns: int, most_rows: int) -> Cells:
    kept: Cells = []
    for line, row in rows:
        cells = [unguarded(cell.strip())[:_LONGEST_CELL] for cell in row]
        while cells and not cells[-1]:
            cells.pop()
        if not cells:
            continue
        if len(cells) > most_columns or len(kept) >= most_rows:
            raise TooLargeError
        kept.append((line, cells))
    return kept
