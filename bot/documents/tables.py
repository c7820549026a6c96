"""Write and read tables as CSV text that is safe to open in a spreadsheet."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Mapping, Sequence

# A spreadsheet treats a cell with one of these first characters as a formula, and a formula can call out or
# run something. The characters are those of the OWASP page on CSV injection (from memory).
_DANGEROUS = ("=", "+", "-", "@", "\t", "\r")
_GUARD = "'"
_MARK = "\ufeff"  # spreadsheets detect UTF-8 by this mark


def guarded(cell: str) -> str:
    """Return a cell that no spreadsheet treats as a formula; dangerous ones get a leading apostrophe."""
    return _GUARD + cell if cell.startswith(_DANGEROUS) else cell


def unguarded(cell: str) -> str:
    """Return a cell without the apostrophe of `guarded`."""
    return cell[1:] if cell.startswith(_GUARD) and cell[1:].startswith(_DANGEROUS) else cell


def write_csv(columns: Sequence[str], rows: Iterable[Mapping[str, str]]) -> bytes:
    """Return rows as CSV (RFC 4180: commas, CRLF) in UTF-8 with a BOM; every cell is guarded."""
    text = io.StringIO(newline="")
    text.write(_MARK)
    writer = csv.writer(text)
    writer.writerow(columns)
    for row in rows:
        writer.writerow([guarded(row.get(name, "")) for name in columns])
    return text.getvalue().encode("utf-8")


class TooLargeError(ValueError):
    """A table has too many columns or rows."""


def read_csv(
    content: bytes, most_columns: int, most_rows: int
) -> tuple[list[str], list[tuple[int, dict[str, str]]]]:
    """Return the columns, and each row with the number of its last line; empty rows are left out.

    The separator is the most frequent of comma, semicolon and tab in the first line. Raises
    UnicodeDecodeError or csv.Error for invalid input, and TooLargeError before reading more.
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
