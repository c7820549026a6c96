"""Use cases for people's own tables: propose a reading, change it, convert the rows."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date
from typing import Any

from bot.documents.spreadsheets import Cells, UnreadableTableError, read_cells
from bot.documents.tables import TooLargeError
from bot.work.context import BarSettings, Context
from bot.work.errors import NotThereError
from bot.work.transfer.foreign.reading import Reading, Words, propose, settle
from bot.work.transfer.foreign.rows import Converter
from bot.work.transfer.import_rows import (
    MOST_COLUMNS,
    MOST_ROWS,
    Given,
    Sheet,
    give_references,
)
from bot.work.transfer.problems import MOST_BYTES, Problem, UnreadableFileError
from storage.tables import Bar, Upload

_KEPT = "tables"  # in the bar's other settings: readings by the shape of their table
_DAYS = "table_days"  # beside them: the day of a stored table without one, by its upload
_MOST_KEPT = 30
_MOST_DAYS = 5
_SHOWN = 4


@dataclass(frozen=True, slots=True)
class Proposal:
    """A stored table, its reading, its first rows as they would be logged, and the number of rows."""

    upload: int
    name: str
    reading: Reading
    first: tuple[Given, ...]
    count: int
    wrong: int
    new_names: tuple[str, ...]


def look(context: Context, upload: int, words: Words, **changed: Any) -> Proposal:
    """Return the reading of a stored table, after changes by the field names of `Reading`.

    The answers about a table are kept for the next of its shape. Raises NotThereError, UnreadableFileError.
    """
    row = context.book.get(Upload, upload)
    if row is None:
        raise NotThereError("file", str(upload))
    cells = cells_of(row.content)
    reading = _reading(context, cells, words, row)
    if changed:
        undecided = {"decimal": None, "order": None} if "columns" in changed else {}
        reading = settle(
            replace(reading, **{**undecided, **changed}), cells[reading.first :], words, context.bar
        )
        _keep(context, upload, reading)
    converted = Converter(reading, words, context.bar, context.today).convert(cells)
    names = {str(one.data.get("fruit") or one.data.get("ingredient")) for one in converted.rows}
    return Proposal(
        upload,
        row.name,
        reading,
        tuple(converted.rows[:_SHOWN]),
        len(converted.rows),
        len(converted.wrong),
        tuple(sorted(name for name in names if not words.known(name))),
    )


def sheet_of(context: Context, row: Upload, words: Words) -> Sheet:
    """Return a table as the sheet for an import. Raises UnreadableFileError while questions are open."""
    cells = cells_of(row.content)
    reading = _reading(context, cells, words, row)
    if reading.open or reading.kind is None:
        raise UnreadableFileError("open", reading.open[0])
    converted = Converter(reading, words, context.bar, context.today).convert(cells)
    give_references(reading.kind, converted.rows)
    sheet = Sheet({}, {reading.kind: converted.rows}, True)
    sheet.problems = [
        Problem(reading.kind, line, meaning, cell[:40], "day" if meaning == "day" else "number")
        for line, meaning, cell in converted.wrong
    ]
    return sheet


def cells_of(content: bytes) -> Cells:
    """Return the cells of a table's first sheet with content. Raises UnreadableFileError."""
    if len(content) > MOST_BYTES:
        raise UnreadableFileError("size")
    try:
        tables = read_cells(content, MOST_COLUMNS, MOST_ROWS)
    except UnreadableTableError as error:
        raise UnreadableFileError("csv", str(error)) from None
    except TooLargeError:
        raise UnreadableFileError("size") from None
    wide = [cells for cells in tables if any(len(row) > 1 for _line, row in cells)]
    if not wide:
        raise UnreadableFileError("columns", "")
    return wide[0]


def _reading(context: Context, cells: Cells, words: Words, row: Upload) -> Reading:
    more = context.bar.settings.more
    found = propose(cells, words, context.bar, row.name)
    kept: Mapping[str, Any] | None = more.get(_KEPT, {}).get(found.shape)
    if kept is not None:
        found = propose(cells, words, context.bar, row.name, kept)
    day = more.get(_DAYS, {}).get(str(row.id))
    if day is None:
        return found
    return settle(replace(found, day=date.fromisoformat(day)), cells[found.first :], words, context.bar)


def _keep(context: Context, upload: int, reading: Reading) -> None:
    """Store a reading for the next table of its shape, and the day of this one."""
    row = context.book.session.get(Bar, context.bar.id)
    if row is None:
        raise NotThereError("bar", context.bar.name)
    settings = BarSettings.from_json(row.settings)
    more = dict(settings.more)
    more[_KEPT] = _with(more.get(_KEPT, {}), reading.shape, reading.kept(), _MOST_KEPT)
    if reading.day is not None:
        more[_DAYS] = _with(more.get(_DAYS, {}), str(upload), reading.day.isoformat(), _MOST_DAYS)
    row.settings = settings.changed(more=more).to_json()
    context.book.touched()
    context.bar = replace(context.bar, settings=BarSettings.from_json(row.settings))


def _with(kept: Mapping[str, Any], key: str, value: object, most: int) -> dict[str, Any]:
    """Return the stored items with one more; beyond `most` the oldest are dropped."""
    rest = [(one, known) for one, known in kept.items() if one != key]
    return dict([*rest, (key, value)][-most:])
