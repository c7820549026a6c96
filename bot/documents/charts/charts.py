"""Charts for a phone: waste by week, price history, tornado, and before and after.

Each returns a Sheet, for a light or a dark screen; its `png()` is the picture, 1140 pixels wide. All words
come from the caller, translated; `number` formats a value in the reader's locale. Bars and lines differ by
hatch, dash or marker as well as by colour, and every important value is written out.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from operator import itemgetter

from bot.documents.charts.canvas import (
    DASHES,
    MARGIN,
    MARKERS,
    SMALL_SIZE,
    TEXT_SIZE,
    WIDTH,
    Sheet,
    line_height,
    text_width,
    ticks,
    wrapped,
)

Number = Callable[[float], str]

_MOST_SERIES = 6
_PLOT_HEIGHT = 190
_BAR_HEIGHT = 20
_SWATCH = 18
_GAP = 6


@dataclass(frozen=True, slots=True)
class Swing:
    """One row of a tornado: the result with this input at its low and at its high end."""

    name: str
    at_low: float
    at_high: float


@dataclass(frozen=True, slots=True)
class Layer:
    """One fruit's values by week: its place in the series, None for the rest, and its handbook name."""

    place: int | None
    name: str
    values: Sequence[float]
    fruit: str | None = None


def plain(value: float) -> str:
    """Return a number with a decimal point and no unnecessary digits; the default `number`."""
    return f"{value:.4g}"


def waste_by_week(
    title: str,
    unit: str,
    weeks: Sequence[str],
    waste: Mapping[str, Sequence[float]],
    *,
    rest_word: str,
    number: Number = plain,
    dark: bool = False,
    fruit: Mapping[str, str | None] | None = None,
    running: bool = False,
) -> Sheet:
    """Return stacked bars by week, one layer per fruit, with the total of each week.

    `weeks` are the labels below the bars; `waste` has a list of the same length for each fruit. Beyond six
    fruit, the smallest are combined as `rest_word`. `fruit` gives the handbook name of each, for its colour;
    the last week is hatched across if it is `running`. Raises ValueError when a list is not as long as
    `weeks`.
    """
    layers = _layers(waste, rest_word, fruit or {})
    if any(len(layer.values) != len(weeks) for layer in layers):
        raise ValueError("every fruit needs one value a week")
    sheet = Sheet(dark)
    sheet.heading(title, unit)
    bars_by_week(sheet, layers, weeks, ticks(max(totals_of(layers), default=0)), number, running=running)
    return sheet


def totals_of(layers: Sequence[Layer]) -> list[float]:
    """Return the sum of each week."""
    return [sum(values) for values in zip(*(layer.values for layer in layers), strict=True)]


def bars_by_week(
    sheet: Sheet,
    layers: Sequence[Layer],
    weeks: Sequence[str],
    marks: Sequence[float],
    number: Number,
    *,
    height: float = _PLOT_HEIGHT,
    running: bool = False,
    unlogged: Collection[int] = (),
) -> tuple[Callable[[float], float], Callable[[float], float]]:
    """Add a legend and stacked bars below `top`; return the positions of a week's place and of a value.

    Weeks at the places `unlogged` show a dash, because nobody knows their value.
    """
    legend(sheet, [(layer.place, layer.name, layer.fruit) for layer in layers])
    left, to_y = value_axis(sheet, marks, number, height)
    slot = (WIDTH - MARGIN - left) / max(1, len(weeks))
    bar, totals = min(46.0, slot * 0.72), totals_of(layers)
    shown = ["–" if week in unlogged else number(total) for week, total in enumerate(totals)]
    totals_fit = max((text_width(one, SMALL_SIZE) for one in shown), default=0) <= slot - 1
    for week, total in enumerate(totals):
        x, base = left + slot * (week + 0.5), 0.0
        for layer in layers:
            if layer.values[week] > 0:
                y = to_y(base + layer.values[week])
                sheet.rectangle(x - bar / 2, y, bar, to_y(base) - y, layer.place, layer.fruit)
                base += layer.values[week]
        if running and week == len(totals) - 1 and total:
            sheet.unfinished(x - bar / 2, to_y(total), bar, to_y(0) - to_y(total))
        if totals_fit or week in unlogged:
            sheet.text(x, to_y(total) - 9, shown[week], size=SMALL_SIZE, align="center", over_area=True)
    sheet.top = to_y(0) + 12
    names_below(sheet, [(left + slot * (week + 0.5), name) for week, name in enumerate(weeks)])
    return lambda place: left + slot * place, to_y


def price_history(
    title: str,
    unit: str,
    prices: Mapping[str, Sequence[tuple[date, float]]],
    *,
    until: date,
    day: Callable[[date], str],
    number: Number = plain,
    dark: bool = False,
) -> Sheet:
    """Return prices as steps, each holding until the next, with the last one written out.

    `until` is the end of the chart (today); `day` formats a date. If a day has several prices, the last in
    the given order counts. At most six lines; raises ValueError for more, and for none.
    """
    # The last price given for a day counts.
    by_day = {name: dict(sorted(points, key=itemgetter(0))) for name, points in prices.items()}
    known = {name: list(points.items()) for name, points in by_day.items() if points}
    if not 1 <= len(known) <= _MOST_SERIES:
        raise ValueError("one to six lines of prices")
    sheet = Sheet(dark)
    sheet.heading(title, unit)
    for place, (name, points) in enumerate(known.items()):
        _line_key(sheet, place, name, number(points[-1][1]))
    sheet.top += _GAP
    values = [price for points in known.values() for _, price in points]
    first = min(points[0][0] for points in known.values())
    last = max(until, *(points[-1][0] for points in known.values()))
    left, to_y = value_axis(sheet, ticks(max(values)), number)
    right, days = WIDTH - MARGIN - 6, max(1, (last - first).days)

    def to_x(when: date) -> float:
        return left + (right - left) * (when - first).days / days

    for place, points in enumerate(known.values()):
        xs, ys = [], []
        for (when, price), (end, _) in zip(points, [*points[1:], (last, 0.0)], strict=True):
            xs += [to_x(when), to_x(end)]
            ys += [to_y(price)] * 2
        color = sheet.look.fills[place]
        sheet.line(xs, ys, color=color, width=2.0, dashes=DASHES[place])
        changes = [to_x(when) for when, _ in points], [to_y(price) for _, price in points]
        sheet.line(*changes, color=color, width=0, marker=MARKERS[place])
    sheet.top = to_y(0) + 12
    sheet.text(left, sheet.top, day(first), size=SMALL_SIZE, color=sheet.look.quiet)
    sheet.text(WIDTH - MARGIN, sheet.top, day(last), size=SMALL_SIZE, color=sheet.look.quiet, align="right")
    sheet.top += line_height(SMALL_SIZE) / 2
    return sheet


def tornado(
    title: str,
    unit: str,
    likely: float,
    swings: Sequence[Swing],
    *,
    low_word: str,
    high_word: str,
    likely_word: str,
    number: Number = plain,
    dark: bool = False,
) -> Sheet:
    """Return the effect of each input on a result, as bars from the `likely` result.

    The rows are drawn in the order given (widest first); `low_word` and `high_word` label the ends of an
    input, `likely_word` the line in the middle.
    """
    sheet = Sheet(dark)
    sheet.heading(title, unit)
    legend(sheet, [(0, low_word, None), (1, high_word, None)])
    sheet.paragraph(f"{likely_word} {number(likely)}", size=SMALL_SIZE, color=sheet.look.quiet)
    sheet.top += _GAP
    ends = [likely, *(end for swing in swings for end in (swing.at_low, swing.at_high))]
    room = 5 + max(text_width(number(end), SMALL_SIZE) for end in ends)
    left, right = MARGIN + room, WIDTH - MARGIN - room
    span = (max(ends) - min(ends)) or 1.0

    def to_x(value: float) -> float:
        return left + (right - left) * (value - min(ends)) / span

    for swing in swings:
        _row_name(sheet, swing.name)
        middle = sheet.top + _BAR_HEIGHT / 2
        # the longer bar first, in case both ends are on one side of the likely result
        bars = sorted(((0, swing.at_low), (1, swing.at_high)), key=lambda bar: -abs(bar[1] - likely))
        for place, value in bars:
            x = min(to_x(value), to_x(likely))
            sheet.rectangle(x, sheet.top, abs(to_x(value) - to_x(likely)), _BAR_HEIGHT, place)
        low, high = sorted((swing.at_low, swing.at_high))
        sheet.text(min(to_x(low), to_x(likely)) - 4, middle, number(low), size=SMALL_SIZE, align="right")
        sheet.text(max(to_x(high), to_x(likely)) + 4, middle, number(high), size=SMALL_SIZE)
        sheet.line(
            [to_x(likely)] * 2, [sheet.top - 3, sheet.top + _BAR_HEIGHT + 3], color=sheet.look.ink, width=1.4
        )
        sheet.top += _BAR_HEIGHT + _GAP + 3
    return sheet


def _layers(
    waste: Mapping[str, Sequence[float]], rest_word: str, fruit: Mapping[str, str | None]
) -> list[Layer]:
    """Return the layers of a chart; beyond six, the smallest are combined, hollow, on top."""
    order = sorted(waste, key=lambda name: -sum(waste[name]))
    kept = [name for name in waste if name in order[:_MOST_SERIES]]
    layers = [Layer(place, name, waste[name], fruit.get(name)) for place, name in enumerate(kept)]
    rest = [waste[name] for name in order[_MOST_SERIES:]]
    if rest:
        layers.append(Layer(None, rest_word, [float(sum(week)) for week in zip(*rest, strict=True)]))
    return layers


def legend(sheet: Sheet, entries: Sequence[tuple[int | None, str, str | None]]) -> None:
    """Add swatches with their names, side by side while they fit."""
    x, height = float(MARGIN), line_height(TEXT_SIZE) + 2
    for place, name, fruit in entries:
        lines = wrapped(name, WIDTH - 2 * MARGIN - _SWATCH - _GAP)
        width = _SWATCH + _GAP + max(text_width(line) for line in lines) + 14
        if x > MARGIN and x + width - 14 > WIDTH - MARGIN:
            x, sheet.top = float(MARGIN), sheet.top + height
        sheet.rectangle(x, sheet.top + (height - 12) / 2, _SWATCH, 12, place, fruit)
        for number, line in enumerate(lines):
            sheet.text(x + _SWATCH + _GAP, sheet.top + height * (number + 0.5), line)
        x += width
        if len(lines) > 1:
            x, sheet.top = float(MARGIN), sheet.top + height * len(lines)
    sheet.top += (height if x > MARGIN else 0) + _GAP


def _line_key(sheet: Sheet, place: int, name: str, value: str) -> None:
    """Add one line's dashes, marker and name, with its last value at the right edge."""
    height, color = line_height(TEXT_SIZE) + 2, sheet.look.fills[place]
    lines = wrapped(name, WIDTH - 2 * MARGIN - 44 - text_width(value, bold=True))
    y = sheet.top + height / 2
    sheet.line([MARGIN, MARGIN + 26], [y, y], color=color, width=2.0, dashes=DASHES[place])
    sheet.line([MARGIN + 13], [y], color=color, width=0, marker=MARKERS[place])
    sheet.text(WIDTH - MARGIN, y, value, bold=True, align="right")
    for number, line in enumerate(lines):
        sheet.text(MARGIN + 34, y + height * number, line)
    sheet.top += height * max(1, len(lines))


def _row_name(sheet: Sheet, name: str) -> None:
    sheet.paragraph(name, size=TEXT_SIZE)
    sheet.top += 2


def value_axis(
    sheet: Sheet, marks: Sequence[float], number: Number, height: float = _PLOT_HEIGHT
) -> tuple[float, Callable[[float], float]]:
    """Add grid lines with their values below `top`; return the plot's left edge and value-to-height."""
    left = MARGIN + max(text_width(number(mark), SMALL_SIZE) for mark in marks) + 7
    upper = sheet.top + 14  # room for a value above the highest bar

    def to_y(value: float) -> float:
        return upper + height * (marks[-1] - value) / (marks[-1] - marks[0])

    for mark in marks:
        y = to_y(mark)
        sheet.line([left, WIDTH - MARGIN], [y, y], color=sheet.look.quiet if mark == 0 else None)
        sheet.text(left - 6, y, number(mark), size=SMALL_SIZE, color=sheet.look.quiet, align="right")
    return left, to_y


def names_below(sheet: Sheet, names: Sequence[tuple[float, str]]) -> None:
    """Add names centred below the axis; always the last, the others where they do not collide."""
    widest = max((text_width(name, SMALL_SIZE) for _, name in names), default=0.0) + 6
    slot = names[1][0] - names[0][0] if len(names) > 1 else float(WIDTH)
    free = float(WIDTH)
    for x, name in names[:: -max(1, math.ceil(widest / slot))]:
        half = text_width(name, SMALL_SIZE) / 2
        held = min(max(x, MARGIN + half), WIDTH - MARGIN - half)
        if held + half <= free:
            sheet.text(held, sheet.top, name, size=SMALL_SIZE, color=sheet.look.quiet, align="center")
            free = held - half - 4
    sheet.top += line_height(SMALL_SIZE) / 2
