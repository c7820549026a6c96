"""Tests of label grids: on the page, not overlapping, and refused if impossible."""

from __future__ import annotations

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.documents.labels.sheets import (
    A4_MM,
    PRINTER_MARGIN_MM,
    STOCKS,
    Roll,
    Sheet,
    StockError,
    UnknownStockError,
    centred_sheet,
    stock_named,
)

SHEETS = [stock for stock in STOCKS.values() if isinstance(stock, Sheet)]


@pytest.mark.parametrize("sheet", SHEETS, ids=lambda sheet: sheet.name)
def test_labels_lie_on_the_page_and_apart(sheet: Sheet) -> None:
    corners = [sheet.corner_mm(index) for index in range(sheet.per_page)]
    for left, top in corners:
        assert left >= 0
        assert top >= 0
        assert left + sheet.label_width_mm <= sheet.page_width_mm + 0.05
        assert top + sheet.label_height_mm <= sheet.page_height_mm + 0.05
    for (left, top), (other_left, other_top) in itertools.combinations(corners, 2):
        across = abs(left - other_left) >= sheet.label_width_mm - 1e-6
        down = abs(top - other_top) >= sheet.label_height_mm - 1e-6
        assert across or down


@pytest.mark.parametrize("sheet", SHEETS, ids=lambda sheet: sheet.name)
def test_text_keeps_away_from_the_edge_of_the_page(sheet: Sheet) -> None:
    right = sheet.page_width_mm - sheet.corner_mm(sheet.columns - 1)[0] - sheet.label_width_mm
    bottom = sheet.page_height_mm - sheet.corner_mm(sheet.per_page - 1)[1] - sheet.label_height_mm
    nearest = min(sheet.left_mm, sheet.top_mm, right, bottom)
    assert nearest + sheet.inset_mm >= PRINTER_MARGIN_MM - 1e-6


def test_names_tell_the_grid_and_the_size() -> None:
    for sheet in SHEETS:
        page, size = sheet.name.split(" ")
        grid = page.split("-")[1]
        assert grid == f"{sheet.columns}x{sheet.rows}"
        assert size == f"{round(sheet.label_width_mm)}x{round(sheet.label_height_mm)}"


def test_order_is_along_the_rows_and_begins_again_on_each_page() -> None:
    sheet = Sheet("own", 210, 297, 2, 3, 90, 80, 10, 20, 5, 4)
    assert sheet.corner_mm(0) == (10, 20)
    assert sheet.corner_mm(1) == (105, 20)
    assert sheet.corner_mm(2) == (10, 104)
    assert sheet.corner_mm(6) == sheet.corner_mm(0)


@given(st.integers(1, 8), st.integers(1, 15), st.floats(25, 110), st.floats(15, 150), st.floats(0, 8))
def test_a_centred_grid_has_equal_margins_or_is_refused(
    columns: int, rows: int, width: float, height: float, gap: float
) -> None:
    across = columns * width + (columns - 1) * gap
    down = rows * height + (rows - 1) * gap
    if across > A4_MM[0] + 1e-6 or down > A4_MM[1] + 1e-6:
        with pytest.raises(StockError):
            centred_sheet("own", A4_MM, (columns, rows), (width, height), (gap, gap))
    elif across < A4_MM[0] - 1e-6 and down < A4_MM[1] - 1e-6:
        sheet = centred_sheet("own", A4_MM, (columns, rows), (width, height), (gap, gap))
        right = A4_MM[0] - sheet.corner_mm(columns - 1)[0] - width
        bottom = A4_MM[1] - sheet.corner_mm(sheet.per_page - 1)[1] - height
        assert right == pytest.approx(sheet.left_mm, abs=1e-6)
        assert bottom == pytest.approx(sheet.top_mm, abs=1e-6)


@pytest.mark.parametrize(
    ("make", "what"),
    [
        (lambda: Sheet("own", 210, 297, 3, 7, 71, 38, 0, 0), "width"),
        (lambda: Sheet("own", 210, 297, 2, 8, 99, 38, 0, 0), "height"),
        (lambda: Sheet("own", 210, 297, 0, 8, 99, 38, 0, 0), "columns"),
        (lambda: Sheet("own", 210, 297, 2, 7, 99, 38, -1, 0), "left_mm"),
        (lambda: Sheet("own", 210, 297, 2, 7, 24, 38, 0, 0), "label width"),
        (lambda: Roll("own", 50, 14), "label height"),
        (lambda: Roll("own", 62, None, 60, 50), "longest_mm"),
    ],
)
def test_impossible_stock_is_refused_with_the_dimension_at_fault(make: object, what: str) -> None:
    assert callable(make)
    with pytest.raises(StockError) as refused:
        make()
    assert refused.value.what == what


def test_unknown_names_list_the_known_ones() -> None:
    assert stock_named("a4-2x7 99x38").name == "a4-2x7 99x38"
    with pytest.raises(UnknownStockError) as refused:
        stock_named("a3-1x1")
    assert "roll 62" in refused.value.known
