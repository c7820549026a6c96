"""Tables as CSV text, safe to open in a spreadsheet, and back."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Mapping, Sequence

# A spreadsheet takes a cell that begins so for a formula, and a formula can call out or run something.
# The signs are those of the OWASP page on CSV injection (from memory).
_DANGEROUS = ("=", "+", "-", "@", "\t", "\r")
_GUARD = "'"
_MARK = "\ufeff"  # by which spreadsheets know UTF-8


def guarded(cell: str) -> str:
    """Return a cell that no spreadsheet takes for a formula: a dangerous one gets an apostrophe in front."""
    return _GUARD + cell if cell.startswith(_DANGEROUS) else cell


def unguarded(cell: str) -> str:
    """Return a cell as it was before it was guarded."""
    return cell[1:] if cell.startswith(_GUARD) and cell[1:].startswith(_DANGEROUS) else cell


def write_csv(columns: Sequence[str], rows: Iterable[Mapping[str, str]]) -> bytes:
    """Return rows as CSV (RFC 4180: commas, CRLF) in UTF-8 with its mark; every cell is guarded."""
    text = io.StringIO(newline="")
    text.write(_MARK)
    writer = csv.writer(text)
    writer.writerow(columns)
    for row in rows:
        writer.writerow([guarded(row.get(name, "")) for name in columns])
    return text.getvalue().encode("utf-8")


class TooLargeError(ValueError):
    """A table has more columns or rows than are read."""


def read_csv(
    content: bytes, most_columns: int, most_rows: int
) -> tuple[list[str], list[tuple[int, dict[str, str]]]]:
    """Return the columns, and each row with the number of the line it ends on; empty rows are left out.

    Commas, semicolons and tabs are understood, whichever the first line has most of. Raises
    UnicodeDecodeError or csv.Error for what is no such text, and TooLargeError before more is held.
    """
    text = content.decode("utf-8-sig")
    first = text.partition("\n")[0]
    sign = max(",;\t", key=first.count)
    if first.count(sign) >= most_columns:
        raise TooLargeError
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=sign, strict=True)
    columns = [name.strip().casefold() for name in next(reader, [])]
    rows: list[tuple[int, dict[str, str]]] = []
    for cells in reader:
        if not any(cell.strip() for cell in cells):
            continue
        if len(rows) >= most_rows:
            raise TooLargeError
        named = dict(zip(columns, (unguarded(cell.strip()) for cell in cells), strict=False))
        rows.append((reader.line_num, named))
    return columns, rows
