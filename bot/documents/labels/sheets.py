"""Label stock by its dimensions: sheets with a grid of labels, and rolls for thermal printers."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

A4_MM = (210.0, 297.0)  # ISO 216
LETTER_MM = (215.9, 279.4)  # ANSI/ASME Y14.1 size A, 8.5 x 11 inches

SMALLEST_LABEL_MM = (25.0, 15.0)
PRINTER_MARGIN_MM = 4.0  # common practice: the unprintable edge of a page on an office printer


class LabelError(ValueError):
    """A label cannot be made; subclasses carry the reason."""


@dataclass
class StockError(LabelError):
    """A label stock with impossible dimensions.

    `stock` is its name, `what` the dimension at fault, `value` its value and `limit` the maximum (or the
    minimum, for a label too small), all in mm or as plain counts.
    """

    stock: str
    what: str
    value: float
    limit: float


@dataclass
class UnknownStockError(LabelError):
    """No label stock has this name; `known` lists the available ones."""

    name: str
    known: tuple[str, ...]


@dataclass
class CountError(LabelError):
    """A count is outside its range: `what` is its plain name, `low` and `high` the range, both included."""

    what: str
    value: int
    low: int
    high: int


@dataclass(frozen=True, slots=True)
class Sheet:
    """A page of equal labels in a grid. All dimensions in mm.

    `left_mm` and `top_mm` are from the page's corner to the first label's, `gap_across_mm`
    and `gap_down_mm` from the edge of one label to the next one's.

    Raises:
        StockError: the grid leaves the page, or the labels are too small to hold text.
    """

    name: str
    page_width_mm: float
    page_height_mm: float
    columns: int
    rows: int
    label_width_mm: float
    label_height_mm: float
    left_mm: float
    top_mm: float
    gap_across_mm: float = 0.0
    gap_down_mm: float = 0.0

    def __post_init__(self) -> None:
        for what, count in (("columns", self.columns), ("rows", self.rows)):
            if count < 1:
                raise StockError(self.name, what, count, 1)
        _check_label(self.name, self.label_width_mm, self.label_height_mm)
        for what, value in (
            ("left_mm", self.left_mm),
            ("top_mm", self.top_mm),
            ("gap_across_mm", self.gap_across_mm),
            ("gap_down_mm", self.gap_down_mm),
        ):
            if value < 0:
                raise StockError(self.name, what, value, 0)
        across = self.left_mm + self.columns * self.label_width_mm + (self.columns - 1) * self.gap_across_mm
        down = self.top_mm + self.rows * self.label_height_mm + (self.rows - 1) * self.gap_down_mm
        slack = 0.05  # the total error of rounding to a tenth of a millimetre
        if across > self.page_width_mm + slack:
            raise StockError(self.name, "width", across, self.page_width_mm)
        if down > self.page_height_mm + slack:
            raise StockError(self.name, "height", down, self.page_height_mm)

    @property
    def per_page(self) -> int:
        """The number of labels on one page."""
        return self.columns * self.rows

    @property
    def inset_mm(self) -> float:
        """The white margin inside a label's edge, in mm: wider where the label meets the edge of the page."""
        right = self.page_width_mm - self.left_mm - self.columns * self.label_width_mm
        right -= (self.columns - 1) * self.gap_across_mm
        bottom = self.page_height_mm - self.top_mm - self.rows * self.label_height_mm
        bottom -= (self.rows - 1) * self.gap_down_mm
        nearest = max(0.0, min(self.left_mm, self.top_mm, right, bottom))
        usual = 1.6 if self.label_height_mm < 26 else 2.4
        return max(usual, PRINTER_MARGIN_MM - nearest)

    def corner_mm(self, index: int) -> tuple[float, float]:
        """Return left and top of label `index` on its page, in mm; 0 is the first, counted along the rows."""
        row, column = divmod(index % self.per_page, self.columns)
        return (
            self.left_mm + column * (self.label_width_mm + self.gap_across_mm),
            self.top_mm + row * (self.label_height_mm + self.gap_down_mm),
        )


@dataclass(frozen=True, slots=True)
class Roll:
    """A roll for a thermal printer, one label per page. All dimensions in mm.

    `length_mm` is None for a continuous roll, which is cut at the end of the text, between `shortest_mm` and
    `longest_mm`.

    Raises:
        StockError: the label is too small to hold text.
    """

    name: str
    width_mm: float
    length_mm: float | None = None
    shortest_mm: float = 25.0
    longest_mm: float = 250.0

    def __post_init__(self) -> None:
        _check_label(self.name, self.width_mm, self.length_mm or self.shortest_mm)
        if self.longest_mm < self.shortest_mm:
            raise StockError(self.name, "longest_mm", self.longest_mm, self.shortest_mm)

    @property
    def inset_mm(self) -> float:
        """The white margin inside a label's edge, in mm (common practice: print heads miss about 1.5 mm)."""
        return 2.0


Stock = Sheet | Roll


def _check_label(name: str, width_mm: float, height_mm: float) -> None:
    low_width, low_height = SMALLEST_LABEL_MM
    if width_mm < low_width:
        raise StockError(name, "label width", width_mm, low_width)
    if height_mm < low_height:
        raise StockError(name, "label height", height_mm, low_height)


def centred_sheet(
    name: str,
    page_mm: tuple[float, float],
    grid: tuple[int, int],
    label_mm: tuple[float, float],
    gaps_mm: tuple[float, float] = (0.0, 0.0),
) -> Sheet:
    """Return a sheet with its grid of (columns, rows) centred on the page; all dimensions in mm."""
    columns, rows = grid
    width, height = label_mm
    across, down = gaps_mm
    left = (page_mm[0] - columns * width - (columns - 1) * across) / 2
    top = (page_mm[1] - rows * height - (rows - 1) * down) / 2
    if left < 0:
        raise StockError(name, "width", page_mm[0] - 2 * left, page_mm[0])
    if top < 0:
        raise StockError(name, "height", page_mm[1] - 2 * top, page_mm[1])
    return Sheet(name, *page_mm, columns, rows, width, height, left, top, across, down)


# Dimensions seen on many makers' blank sheets and rolls: common practice, no source.
_ALL: tuple[Stock, ...] = (
    centred_sheet("a4-2x4 99x68", A4_MM, (2, 4), (99.1, 67.7), (2.5, 0)),
    centred_sheet("a4-2x7 99x38", A4_MM, (2, 7), (99.1, 38.1), (2.5, 0)),
    centred_sheet("a4-3x7 64x38", A4_MM, (3, 7), (63.5, 38.1), (2.5, 0)),
    centred_sheet("a4-3x8 70x37", A4_MM, (3, 8), (70, 37)),
    centred_sheet("a4-4x10 48x25", A4_MM, (4, 10), (48.5, 25.4)),
    centred_sheet("a4-5x13 38x21", A4_MM, (5, 13), (38.1, 21.2), (2.5, 0)),
    centred_sheet("letter-2x3 102x85", LETTER_MM, (2, 3), (101.6, 84.6), (4.76, 0)),
    centred_sheet("letter-2x5 102x51", LETTER_MM, (2, 5), (101.6, 50.8), (4.76, 0)),
    centred_sheet("letter-3x10 67x25", LETTER_MM, (3, 10), (66.68, 25.4), (3.17, 0)),
    Roll("roll 62", 62),
    Roll("roll 50x30", 50, 30),
    Roll("roll 57x32", 57, 32),
    Roll("roll 100x50", 100, 50),
)
STOCKS: Mapping[str, Stock] = MappingProxyType({stock.name: stock for stock in _ALL})


def stock_named(name: str) -> Stock:
    """Return the label stock of this name.

    Raises:
        UnknownStockError: there is none; the error lists the available ones.
    """
    try:
        return STOCKS[name]
    except KeyError:
        raise UnknownStockError(name, tuple(STOCKS)) from None
