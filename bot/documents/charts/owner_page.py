"""The owner's page: facts, waste by week on one scale, and cash against what was spent once.

One card for a phone, or two columns for a sheet of paper.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from bot.documents.charts.canvas import MARGIN, SMALL_SIZE, TEXT_SIZE, WIDTH, Sheet, ticks
from bot.documents.charts.charts import Layer, Number, bars_by_week, names_below, totals_of, value_axis

_NEAR = 26  # from the sum at the end with its figure to the dashed line
_PANEL_HEIGHT = 105
_DASHED = (0, (4, 2))


@dataclass(frozen=True, slots=True)
class Panel:
    """Bars by week under a heading."""

    heading: str
    layers: tuple[Layer, ...]


@dataclass(frozen=True, slots=True)
class Waste:
    """Panels on one scale. `switches` are places between weeks (2.5: the middle of the third).

    `unlogged` are the places of weeks without a log, which are not weeks without waste.
    """

    panels: tuple[Panel, ...]
    weeks: tuple[str, ...]
    switches: tuple[float, ...]
    running: bool
    notes: tuple[str, ...]
    unlogged: frozenset[int] = frozenset()


@dataclass(frozen=True, slots=True)
class CashLine:
    """The sum saved at the end of each week, against what was spent once (0 for nothing)."""

    heading: str
    weeks: tuple[str, ...]
    sums: tuple[float, ...]
    outlay: float
    outlay_word: str


Section = tuple[str, Sequence[str]]  # a heading and its lines


@dataclass(frozen=True, slots=True)
class OwnersPage:
    """All that the page shows. `pieces` and `money` format values."""

    title: str
    unit: str
    first: Sequence[Section]
    waste: Waste
    cash: CashLine | None
    last: Sequence[Section]
    pieces: Number
    money: Number


def owner_card(page: OwnersPage, dark: bool = False) -> Sheet:
    """Return the page as one card."""
    sheet = Sheet(dark)
    _facts(sheet, page, page.first)
    _charts(sheet, page)
    for section in page.last:
        _section(sheet, section)
    return sheet


def owner_columns(page: OwnersPage) -> tuple[Sheet, Sheet]:
    """Return the page in two columns for paper: all words, and all charts."""
    words, charts = Sheet(dark=False), Sheet(dark=False)
    _facts(words, page, [*page.first, *page.last])
    _charts(charts, page)
    return words, charts


def _facts(sheet: Sheet, page: OwnersPage, sections: Sequence[Section]) -> None:
    sheet.heading(page.title, page.unit)
    for section in sections:
        _section(sheet, section)


def _charts(sheet: Sheet, page: OwnersPage) -> None:
    _waste(sheet, page.waste, page.pieces)
    if page.cash is not None:
        _cash(sheet, page.cash, page.money)


def _section(sheet: Sheet, section: Section) -> None:
    heading, lines = section
    sheet.paragraph(heading, bold=True)
    for line in lines:
        sheet.paragraph(line)
    sheet.top += 7


def _waste(sheet: Sheet, waste: Waste, number: Number) -> None:
    highest = max((total for panel in waste.panels for total in totals_of(panel.layers)), default=0.0)
    marks = ticks(highest, about=3)
    for panel in waste.panels:
        sheet.paragraph(panel.heading, bold=True)
        top = len(sheet)
        to_x, to_y = bars_by_week(
            sheet,
            panel.layers,
            waste.weeks,
            marks,
            number,
            height=_PANEL_HEIGHT,
            running=waste.running,
            unlogged=waste.unlogged,
        )
        for place in waste.switches:
            ends = to_y(marks[-1]) - 12, to_y(0)
            sheet.line([to_x(place)] * 2, ends, color=sheet.look.ink, width=1.4, dashes=_DASHED, at=top)
        sheet.top += 8
    for line in waste.notes:
        sheet.paragraph(line, size=SMALL_SIZE, color=sheet.look.quiet)
    sheet.top += 7


def _cash(sheet: Sheet, cash: CashLine, number: Number) -> None:
    sheet.paragraph(cash.heading, bold=True)
    step = ticks(max(*cash.sums, cash.outlay, -min(cash.sums), 1.0), about=3)[1]
    low = min(0.0, *cash.sums)
    below = 0 if low >= 0 else -int(-(low // step))
    high = max(*cash.sums, cash.outlay)
    marks = [step * place for place in range(below, int(-(-high // step)) + 1)]
    left, to_y = value_axis(sheet, marks, number, _PANEL_HEIGHT)
    right = WIDTH - MARGIN - 8
    step_x = (right - left) / max(1, len(cash.sums))
    xs = [left + step_x * place for place in range(len(cash.sums) + 1)]
    color, end = sheet.look.fills[2], cash.sums[-1]
    sheet.line(xs, [to_y(0), *map(to_y, cash.sums)], color=color, width=2.2, marker="o")
    if cash.outlay:
        y = to_y(cash.outlay)
        sheet.line([left, right], [y, y], color=sheet.look.ink, width=1.4, dashes=_DASHED)
        # Above the dashed line, unless the cash ends just there.
        beside = y + 9 if 0 < y - to_y(end) < _NEAR else y - 8
        sheet.text(right, beside, cash.outlay_word, size=SMALL_SIZE, align="right")
    falls = end < (cash.sums[-2] if len(cash.sums) > 1 else 0.0)
    label_y = to_y(end) + (14 if falls else -10)
    sheet.text(right, label_y, number(end), size=TEXT_SIZE, bold=True, align="right", over_area=True)
    sheet.top = to_y(marks[0]) + 12
    names_below(sheet, list(zip(xs[1:], cash.weeks, strict=True)))
    sheet.top += 12
