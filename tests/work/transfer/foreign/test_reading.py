"""Tables as bars have them: headers found, columns named, numbers and days read, doubts left open."""

from __future__ import annotations

import io
from datetime import date
from types import SimpleNamespace
from typing import Any

import pytest
from openpyxl import Workbook

from bot.chat.features.transfer.table_words import words_of
from bot.documents.spreadsheets import Cells, read_cells
from bot.trade.formulas.measures import HouseMeasures
from bot.trade.formulas.unit_words import UnitSense
from bot.work.transfer.foreign.reading import Reading, propose
from bot.work.transfer.foreign.rows import Converter
from bot.work.transfer.foreign.values import day_order, decimal_mark

_TODAY = date(2026, 11, 28)
_BAR: Any = SimpleNamespace(house=HouseMeasures({}), sense=lambda liquid: UnitSense(None, None, liquid))
_KNOWN = {"oranges": "orange", "limes": "lime", "lemons": "lemon", "orange": "orange", "lime": "lime"}


class _Names:
    def named(self, text: str, kind: str) -> Any:
        name = _KNOWN.get(text.casefold())
        return None if name is None else SimpleNamespace(name=name)


_WORDS = words_of(SimpleNamespace(vocabulary=_Names()))  # type: ignore[arg-type]


def _cells(content: str | bytes) -> Cells:
    return read_cells(content.encode() if isinstance(content, str) else content, 100, 1000)[0]


def _read(content: str | bytes, title: str = "") -> tuple[Reading, list[dict[str, Any]]]:
    cells = _cells(content)
    reading = propose(cells, _WORDS, _BAR, title)
    return reading, [one.data for one in Converter(reading, _WORDS, _BAR, _TODAY).convert(cells).rows]


def _workbook(*rows: tuple[Any, ...]) -> bytes:
    book = Workbook()
    sheet = book.active
    assert sheet is not None
    for row in rows:
        sheet.append(row)
    kept = io.BytesIO()
    book.save(kept)
    return kept.getvalue()


def test_item_quantity_cost_without_a_word_of_what_it_is_asks_only_that() -> None:
    reading, _rows = _read("Item,Qty,Cost\nOranges,24,$12.00\nLimes,40,$9.60\n")
    assert reading.columns == ("item", "amount", "cost")
    assert reading.open == ("kind",)


def test_waste_by_date_with_american_days() -> None:
    reading, rows = _read(
        "Date,Fruit,Count,Reason\n11/25/2026,Oranges,6,mouldy\n11/3/2026,Limes,2,Dried out\n"
    )
    assert (reading.kind, reading.order, reading.open) == ("waste", "mdy", ())
    assert rows == [
        {"day": "2026-11-25", "fruit": "orange", "pieces": "6", "reason": "mouldy"},
        {"day": "2026-11-03", "fruit": "lime", "pieces": "2", "reason": "dried out"},
    ]


def test_tabs_and_european_numbers() -> None:
    reading, rows = _read(
        "Fecha\tFruta\tCantidad\tCosto\tMotivo\n25/11/2026\tLimes\t1,5 kg\t3,80 €\tpodrido\n"
    )
    assert (reading.kind, reading.decimal, reading.order) == ("waste", ",", "dmy")
    assert rows == [
        {"day": "2026-11-25", "cost": "19/5", "fruit": "lime", "grams": "1500", "reason": "podrido"}
    ]


def test_a_titled_sheet_with_a_sum_below() -> None:
    title = "The Copper Gull - waste log\n\nWeek 48;;\n"
    text = f"{title}Day;What;Pcs\n2026-11-24;Lemons;3\n2026-11-25;Limes;1\n;Total;4\n"
    reading, rows = _read(text)
    assert (reading.kind, reading.columns, reading.open) == ("waste", ("day", "item", "amount"), ())
    assert [row["fruit"] for row in rows] == ["lemon", "lime"]


def test_a_workbook_with_real_days_and_numbers() -> None:
    content = _workbook(
        ("Deliveries",),
        (None,),
        ("Delivery date", "Product", "Qty", "Unit", "Unit price"),
        (date(2026, 11, 24), "Oranges", 80, "pcs", 0.45),
        (date(2026, 11, 24), "Neutral spirit", 2, "l", 24.5),
    )
    reading, rows = _read(content)
    assert (reading.kind, reading.open) == ("deliveries", ())
    assert rows[0] == {
        "day": "2026-11-24",
        "cost": "36",
        "ingredient": "orange",
        "dimension": "count",
        "amount": "80",
    }
    assert rows[1]["cost"] == "49"
    assert rows[1]["amount"] == "2000"


def test_ounces_of_nobody_knows_what_are_asked() -> None:
    reading, _rows = _read("Item,Amount,Cost\nLemon oil,4 oz,$38.00\n", "price list.csv")
    assert reading.kind == "prices"
    assert reading.open == ("unit",)


def test_a_table_without_a_header_finds_day_and_item_by_their_cells() -> None:
    reading, _rows = _read("2026-11-24,oranges,6\n2026-11-25,limes,2\n", "waste.csv")
    assert reading.columns == ("day", "item", "")
    assert reading.open == ("amount",)


@pytest.mark.parametrize(
    ("cells", "mark"),
    [
        (["1,234.50", "12"], "."),
        (["1.234,50"], ","),
        (["3,8", "12"], ","),
        (["$38.00"], "."),
        (["1,234"], None),
        (["1.234", "2.5"], "."),
        (["0,125"], ","),
        (["1.234.567"], ","),
        (["7"], "."),
    ],
)
def test_the_decimal_mark_is_found_or_left_open(cells: list[str], mark: str | None) -> None:
    assert decimal_mark(cells) == mark


@pytest.mark.parametrize(
    ("cells", "order"),
    [
        (["11/25/2026", "11/03/2026"], "mdy"),
        (["25/11/2026", "03/11/2026"], "dmy"),
        (["2026-11-25"], "ymd"),
        (["03/11/2026"], None),
        (["25.11.26"], "dmy"),
    ],
)
def test_the_order_of_a_day_is_found_or_left_open(cells: list[str], order: str | None) -> None:
    assert day_order(cells) == order
