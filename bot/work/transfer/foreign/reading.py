"""Find the header, the meaning of columns and the rows of tables in other formats.

A `Reading` describes one table. It is proposed from the header and the cells. `Reading.open` lists the
ambiguities, which are asked once; the answers are kept for the next table of the same shape.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from typing import Any, Literal

from bot.documents.spreadsheets import Cells
from bot.trade.formulas.unit_words import AmbiguousUnit, AmbiguousUnitError, UnitWords, look_up, resolve_unit
from bot.work.context import BarView
from bot.work.transfer.foreign.values import (
    Decimal,
    Months,
    Order,
    day_order,
    decimal_mark,
    fold,
    is_day,
    is_number,
    read_amount,
)

Kind = Literal["waste", "deliveries", "prices", "counts"]
Meaning = Literal["item", "amount", "unit", "cost", "each", "day", "reason", "pack", ""]
KINDS: tuple[Kind, ...] = ("waste", "deliveries", "prices", "counts")
MEANINGS: tuple[Meaning, ...] = ("item", "amount", "unit", "cost", "each", "day", "reason", "pack", "")
_HEADER_WITHIN = 20  # rows: titles and blank lines precede a header, but not whole pages
_SHOWN_CELLS = 400  # cells of a column examined for its number format
_SHAPE = 16  # hex digits

Said = Mapping[Meaning, str]
"""The cells of a row by the meaning of their column."""

Question = Literal["kind", "item", "amount", "cost", "decimal", "order", "day", "unit"]


@dataclass(frozen=True, slots=True)
class Words:
    """The folded words for column headings and table names, in the languages that the bot reads."""

    meanings: Mapping[str, Meaning]
    kinds: Mapping[str, Kind]
    totals: frozenset[str]  # the text in place of an item in a total row
    months: Months
    units: UnitWords
    named: Callable[[str], str]  # the bar's own name for an item, or the text itself
    known: Callable[[str], bool]  # whether the bar has a name


@dataclass(frozen=True, slots=True)
class Reading:
    """The interpretation of a table. `open` lists the questions, the most important first."""

    shape: str
    header: tuple[str, ...]
    first: int  # the index of the first row below the header
    kind: Kind | None
    columns: tuple[Meaning, ...]
    decimal: Decimal | None
    order: Order | None
    day: date | None = None  # of all rows, if no column has one
    unit: str = ""  # of amounts without one, if a word such as oz is ambiguous
    open: tuple[Question, ...] = ()

    def column(self, meaning: Meaning) -> int | None:
        """Return the index of the column with a meaning, or None."""
        return self.columns.index(meaning) if meaning in self.columns else None

    def kept(self) -> dict[str, Any]:
        """Return the parts stored for the next table of this shape."""
        return {
            "kind": self.kind,
            "columns": list(self.columns),
            "decimal": self.decimal,
            "order": self.order,
            "unit": self.unit,
        }


def propose(
    cells: Cells, words: Words, bar: BarView, title: str = "", kept: Mapping[str, Any] | None = None
) -> Reading:
    """Return the likeliest reading of a table by its header, cells, file name and stored answers."""
    place = _header_place(cells, words)
    header = tuple(cells[place][1]) if place is not None else ()
    first = 0 if place is None else place + 1
    width = max((len(row) for _line, row in cells), default=0)
    body = cells[first:]
    columns = _by_header(header, words, width)
    columns = _by_cells(columns, body)
    above = " ".join(" ".join(row) for _line, row in cells[:first])
    reading = Reading(
        _shape(header, width), header, first, _kind(columns, f"{title} {above}", words), columns, None, None
    )
    if kept is not None and len(kept.get("columns", ())) == width:
        reading = replace(
            reading,
            kind=kept["kind"],
            columns=tuple(kept["columns"]),
            decimal=kept["decimal"],
            order=kept["order"],
            unit=kept["unit"],
        )
    return settle(reading, body, words, bar)


def settle(reading: Reading, body: Cells, words: Words, bar: BarView) -> Reading:
    """Complete a changed reading from the cells, and update its open questions."""
    found = replace(
        reading,
        decimal=reading.decimal or _decimal(reading, body),
        order=reading.order or day_order(_column(body, reading.column("day"))),
    )
    return replace(found, open=tuple(_open(found, body, words, bar)))


def _open(reading: Reading, body: Cells, words: Words, bar: BarView) -> list[Question]:
    dated = reading.column("day") is not None
    priced = reading.column("cost") is not None or reading.column("each") is not None
    checks: tuple[tuple[Question, bool], ...] = (
        ("kind", reading.kind is None),
        ("item", reading.column("item") is None),
        ("cost", reading.kind == "prices" and not priced),
        ("amount", reading.kind != "prices" and reading.column("amount") is None),
        ("decimal", reading.decimal is None),
        ("day", not dated and reading.day is None and reading.kind not in {"prices", None}),
        ("order", dated and reading.order is None),
        ("unit", not reading.unit and _has_ambiguous_unit(reading, body, words, bar)),
    )
    return [question for question, is_open in checks if is_open]


def _header_place(cells: Cells, words: Words) -> int | None:
    """Return the index of the row with most column headings, at least two; None without one."""
    best, most = None, 1
    for place, (_line, row) in enumerate(cells[:_HEADER_WITHIN]):
        known = sum(1 for cell in row if _meaning(cell, words))
        if known > most and not any(is_number(cell) for cell in row):
            best, most = place, known
    return best


def _meaning(cell: str, words: Words) -> Meaning:
    plain = fold(cell)
    if plain in words.meanings:
        return words.meanings[plain]
    # 'Qty (pcs)', 'Total cost EUR': the longest known heading in the cell counts.
    found = [word for word in words.meanings if f" {word} " in f" {plain} "]
    return words.meanings[max(found, key=len)] if found else ""


def _by_header(header: Sequence[str], words: Words, width: int) -> tuple[Meaning, ...]:
    found: list[Meaning] = []
    for cell in header:
        meaning = _meaning(cell, words)
        found.append("" if meaning in found else meaning)
    return tuple(found + [""] * (width - len(found)))


def _by_cells(columns: tuple[Meaning, ...], body: Cells) -> tuple[Meaning, ...]:
    """Give columns without a known heading a meaning if the kind of their cells allows only one."""
    found = list(columns)
    for at, meaning in enumerate(columns):
        cells = [cell for cell in _column(body, at) if cell]
        if meaning or not cells:
            continue
        if "day" not in found and all(map(is_day, cells)):
            found[at] = "day"
        elif "item" not in found and not any(any(map(str.isdigit, cell)) for cell in cells):
            found[at] = "item"
    return tuple(found)


def _kind(columns: tuple[Meaning, ...], about: str, words: Words) -> Kind | None:
    plain = f" {fold(about)} "
    named = {kind for word, kind in words.kinds.items() if f" {word} " in plain}
    if len(named) == 1:
        return named.pop()
    if "reason" in columns:
        return "waste"
    if "pack" in columns and "amount" not in columns:
        return "prices"
    return None


def _shape(header: Sequence[str], width: int) -> str:
    said = json.dumps([width, *map(fold, header)], ensure_ascii=False)
    return hashlib.sha256(said.encode()).hexdigest()[:_SHAPE]


def _column(body: Cells, at: int | None) -> list[str]:
    if at is None:
        return []
    return [row[at] for _line, row in body[:_SHOWN_CELLS] if at < len(row) and row[at]]


def _decimal(reading: Reading, body: Cells) -> Decimal | None:
    marks = {
        decimal_mark(cells)
        for at, meaning in enumerate(reading.columns)
        if meaning in {"amount", "cost", "each", "pack"}
        and (cells := _column(body, at))
        and any("." in cell or "," in cell for cell in cells)
    }
    if not marks:
        return "."
    known = marks - {None}
    return known.pop() if len(known) == 1 else None


def _has_ambiguous_unit(reading: Reading, body: Cells, words: Words, bar: BarView) -> bool:
    said = set(_column(body, reading.column("unit")))
    for cell in _column(body, reading.column("amount")):
        try:
            said.add(read_amount(cell, reading.decimal or ".")[1])
        except ValueError:
            continue
    return any(isinstance(unit_of(word, words, bar, ""), AmbiguousUnit) for word in said if word)


def unit_of(word: str, words: Words, bar: BarView, chosen: str) -> str | AmbiguousUnit | None:
    """Return the unit of a word, the word itself if it is ambiguous in the bar, None for no unit."""
    found = look_up(word, words.units)
    if not isinstance(found, AmbiguousUnit):
        return found
    if chosen in found.choices:
        return chosen
    try:
        return resolve_unit(found.word, bar.sense(None))
    except AmbiguousUnitError:
        return found
