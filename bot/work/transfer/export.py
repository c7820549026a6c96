"""Everything a bar has in its book, as one JSON document and as tables."""

from __future__ import annotations

import json
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

from bot.work.context import Context
from bot.work.fruit import peeled
from bot.work.transfer.export_rows import RowWriter, moment
from bot.work.transfer.export_tables import tables
from storage.tables import (
    Batch,
    BatchEvent,
    BatchLine,
    Delivery,
    DrinksCount,
    Juicing,
    Numbered,
    Price,
    Sprayer,
    StockCount,
    StockPar,
    Waste,
)

FORMAT = "peel-ledger"
VERSION = 1
_TELL_EVERY = 500


@dataclass(frozen=True, slots=True)
class Export:
    """The files: their names with what is in them, and how many rows of each kind they hold."""

    files: tuple[tuple[str, bytes], ...]
    rows: dict[str, int]


def export(context: Context) -> Export:
    """Write the book down: formulas, prices, waste and batches as CSV, and all of it as JSON."""
    found = document(context)
    text = json.dumps(found, ensure_ascii=False, indent=1).encode("utf-8")
    counts = {name: len(found[name]) for name in ("formulas", "prices", "waste", "batches")}
    return Export((*tables(found).items(), ("peel-ledger.json", text)), counts)


def document(context: Context) -> dict[str, Any]:
    """Return all that stands in the book; what was taken back is left out."""
    book, write = context.book, RowWriter(context)
    deliveries, wasted = _standing(context, Delivery), _wasted(context)
    made = book.all(Batch, Batch.state != "undone", order=Batch.id)
    standing = {
        "delivery": [row.id for row in deliveries],
        "waste": [row.id for row in wasted],
        "batch": [row.id for row in made],
    }
    return {
        "format": FORMAT,
        "version": VERSION,
        "exported_at": moment(context.now.replace(microsecond=0)),
        "bar": write.bar_facts(),
        "ingredients": [write.ingredient(row) for row in write.ingredients],
        "formulas": [write.formula(row) for row in write.formulas],
        "sprayers": [write.sprayer(row) for row in book.all(Sprayer, order=Sprayer.id)],
        "prices": [write.price(row) for row in _standing(context, Price)],
        "deliveries": _each(context, deliveries, write.delivery),
        "waste": _each(context, wasted, write.waste),
        "juicings": [write.juicing(row) for row in _standing(context, Juicing)],
        "batches": _batches(context, made, write),
        "drinks": _each(context, _standing(context, DrinksCount), write.drinks),
        "counts": [write.count(row, standing) for row in _standing(context, StockCount)],
        "peeled": [write.peeled(one) for one in peeled.waiting(context)],
        "pars": [write.par(row) for row in book.all(StockPar, order=StockPar.ingredient_id)],
    }


def _each(
    context: Context, rows: Sequence[Any], write: Callable[[Any], dict[str, Any]]
) -> list[dict[str, Any]]:
    """Write rows of which there can be very many, and tell how far it is."""
    written = []
    for number, row in enumerate(rows, start=1):
        written.append(write(row))
        if number % _TELL_EVERY == 0:
            context.watch(number, len(rows))
    return written


def _batches(context: Context, rows: Sequence[Batch], write: RowWriter) -> list[dict[str, Any]]:
    lines: dict[int, list[BatchLine]] = {}
    for line in context.book.all(BatchLine, order=(BatchLine.batch_id, BatchLine.position)):
        lines.setdefault(line.batch_id, []).append(line)
    events: dict[int, list[BatchEvent]] = {}
    for event in context.book.all(BatchEvent, order=BatchEvent.id):
        events.setdefault(event.batch_id, []).append(event)
    return [write.batch(row, lines.get(row.id, []), events.get(row.id, [])) for row in rows]


def _standing(context: Context, table: type[Any]) -> list[Any]:
    """Return rows that were not taken back; rows that only take back are left out too."""
    rows = context.book.all(table, order=table.id)
    corrected = {row.corrects for row in rows if row.corrects is not None}
    return [
        row
        for row in rows
        if row.id not in corrected and not getattr(row, "void", False) and not _reverses(row)
    ]


def _wasted(context: Context) -> list[Waste]:
    return [row for row in _standing(context, Waste) if (row.count_milli or row.grams_milli or 0) > 0]


def _reverses(row: Numbered) -> bool:
    """Whether a row only takes another back by the opposite sign."""
    return isinstance(row, Delivery) and row.amount_milli < 0
