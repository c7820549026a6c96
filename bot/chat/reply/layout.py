"""Lay out a reply as lines of text that fit a phone."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Sequence
from unicodedata import east_asian_width

WIDTH = 32  # characters of fixed width that fit a 380-pixel phone
PHONE_WIDTH = 38  # characters of usual width in a line of a small phone
LABEL_LENGTH = 40  # characters of a button
_NARROWEST = 10
_BREAKS = re.compile(r"[ \t\r\n]+")  # a space that holds a number and its unit together stays


def columns_of(text: str) -> int:
    """Return the character columns of a text; wide scripts take two a letter."""
    return sum(2 if east_asian_width(char) in "WF" else 1 for char in text)


def height(text: str) -> int:
    """Return the lines of a text on a small phone."""
    return sum(len(textwrap.wrap(line, PHONE_WIDTH)) or 1 for line in text.split("\n"))


def shortened(text: str, most: int = LABEL_LENGTH) -> str:
    """Return a text on one line, cut where it is too long, by default for a button."""
    flat = _BREAKS.sub(" ", text.strip())
    return flat if len(flat) <= most else flat[: most - 1] + "…"


def grid_lines(rows: Sequence[Sequence[str]], width: int = WIDTH) -> list[str]:
    """Align rows: first column left, others right; a long first cell wraps and is never cut."""
    if not rows:
        return []
    count = max(len(row) for row in rows)
    cells = [[*row, *[""] * (count - len(row))] for row in rows]
    others = [max(columns_of(row[at]) for row in cells) for at in range(1, count)]
    taken = sum(others) + 2 * len(others)
    first = min(max(columns_of(row[0]) for row in cells), max(width - taken, _NARROWEST))
    if first + taken > width:
        return _stacked(cells, width)
    lines: list[str] = []
    for row in cells:
        name = textwrap.wrap(row[0], first, break_long_words=True) or [""]
        rest = "".join("  " + " " * (others[at] - columns_of(cell)) + cell for at, cell in enumerate(row[1:]))
        # The numbers are beside the last line of a wrapped name.
        lines += name[:-1]
        lines.append((name[-1] + " " * (first - columns_of(name[-1])) + rest).rstrip())
    return lines


def _stacked(cells: Sequence[Sequence[str]], width: int) -> list[str]:
    """Lay out rows that are too wide: the name, then its values indented below."""
    lines: list[str] = []
    for row in cells:
        lines += textwrap.wrap(row[0], width) or [""]
        values = "  ".join(cell for cell in row[1:] if cell)
        lines += textwrap.wrap(values, width - 2, initial_indent="  ", subsequent_indent="  ")
    return lines
