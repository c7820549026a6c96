"""A ternary map for a phone: regions in a triangle, a point, arrows from it, and marks of what was seen.

The regions differ by hatch as well as by colour, the marks by shape, and each point has its number or its
label beside it. All words come from the caller, translated.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

from bot.documents.charts.canvas import (
    MARGIN,
    SMALL_SIZE,
    TEXT_SIZE,
    WIDTH,
    Point,
    Sheet,
    line_height,
    text_width,
    wrapped,
)

_SIDE = WIDTH - 2 * MARGIN - 40  # room for the scales on both sides
_PLACES = (2, 0, 1)  # the fills of the first, the second and the third kind of region
_MARKS = ("o", "^", "X")
_SWATCH, _GAP = 22, 8


@dataclass(frozen=True, slots=True)
class Corner:
    """The words at a corner, and the share of its part there, %."""

    words: str
    percent: float


@dataclass(frozen=True, slots=True)
class Triangle:
    """The nodes of the map: `kinds[i][j]` is the kind of region, 0, 1 or 2, at i steps left and j right.

    `corners` are the left, the right and the top one.
    """

    kinds: Sequence[Sequence[int]]
    corners: tuple[Corner, Corner, Corner]

    @property
    def steps(self) -> int:
        """The number of steps from corner to corner."""
        return len(self.kinds) - 1


@dataclass(frozen=True, slots=True)
class Mark:
    """A point seen: its place in steps, its kind (0, 1, 2, of the same order as the regions), its label."""

    place: Point
    kind: int
    label: str


def ternary(
    title: str,
    unit: str,
    triangle: Triangle,
    kind_words: Sequence[str],
    point: tuple[Point, str],
    arrows: Sequence[tuple[Point, str]],
    marks: Sequence[Mark],
    mark_words: Sequence[str],
    *,
    dark: bool = False,
) -> Sheet:
    """Return the map: `point` and the ends of `arrows` are places in steps, with the words of their key.

    `kind_words` name the three kinds of regions, `mark_words` what a mark of each kind means.
    """
    sheet = Sheet(dark)
    sheet.heading(title, unit)
    frame = _Frame(sheet, triangle)
    frame.regions()
    frame.scales()
    start = frame.at(point[0])
    for number, (end, _words) in enumerate(arrows, start=1):
        frame.arrow(start, frame.at(end), str(number))
    frame.point(start)
    for mark in marks:
        frame.mark(mark)
    sheet.top = frame.bottom + 2.6 * line_height(SMALL_SIZE)
    present = {kind for row in triangle.kinds for kind in row}
    for kind in sorted(present):
        _key(sheet, kind_words[kind], swatch=_PLACES[kind])
    _key(sheet, point[1], ring=True)
    for number, (_end, words) in enumerate(arrows, start=1):
        _key(sheet, words, sign=str(number))
    for kind in sorted({mark.kind for mark in marks}):
        _key(sheet, mark_words[kind], marker=_MARKS[kind])
    return sheet


class _Frame:
    """The triangle on its sheet: from steps to points of the card, and what is drawn in it."""

    def __init__(self, sheet: Sheet, triangle: Triangle) -> None:
        self.sheet, self.triangle = sheet, triangle
        self.top_lines = wrapped(triangle.corners[2].words, WIDTH - 2 * MARGIN, SMALL_SIZE, bold=True)
        self.upper = sheet.top + (len(self.top_lines) + 0.3) * line_height(SMALL_SIZE)
        self.bottom = self.upper + _SIDE * math.sqrt(3) / 2

    def at(self, place: Point) -> Point:
        """Return where a place in steps lies on the card."""
        left, right = (one / self.triangle.steps for one in place)
        x = WIDTH / 2 + _SIDE * (right - left) / 2
        return x, self.upper + (self.bottom - self.upper) * (left + right)

    def regions(self) -> None:
        """Draw the middle kind over all, and the two others over it."""
        end = self.triangle.steps
        self.sheet.area([[self.at(one) for one in ((0, 0), (end, 0), (0, end), (0, 0))]], _PLACES[1])
        for kind in (2, 0):
            for rings in _outlines(self.triangle, kind):
                self.sheet.area([[self.at(one) for one in ring] for ring in rings], _PLACES[kind])

    def scales(self) -> None:
        """Draw the shares along both sides, and the names at the corners."""
        sheet, end = self.sheet, self.triangle.steps
        left, right, _top = self.triangle.corners
        for corner, side, step in ((left, "left", 0), (right, "right", 1)):
            for share in range(10, round(corner.percent), 10):
                steps = end * share / corner.percent
                place = (steps, 0.0) if step == 0 else (0.0, steps)
                across = (steps, end - steps) if step == 0 else (end - steps, steps)
                xs, ys = zip(self.at(place), self.at(across), strict=True)
                sheet.line(xs, ys, color=sheet.look.quiet, width=0.4, dashes=(0, (1, 3)))
                if share % 20 == 0:
                    beside = -5 if side == "left" else 5
                    align: Any = "right" if side == "left" else "left"
                    sheet.text(xs[0] + beside, ys[0], f"{share} %", size=SMALL_SIZE, align=align)
        y = self.bottom + line_height(SMALL_SIZE) * 0.8
        half = (WIDTH - 2 * MARGIN - 12) / 2
        for corner, x, align in ((left, MARGIN, "left"), (right, WIDTH - MARGIN, "right")):
            for number, line in enumerate(wrapped(corner.words, half, SMALL_SIZE, bold=True)[:2]):
                at = y + number * line_height(SMALL_SIZE)
                sheet.text(x, at, line, size=SMALL_SIZE, bold=True, align=align)
        for number, line in enumerate(reversed(self.top_lines)):
            above = self.upper - line_height(SMALL_SIZE) * (number + 0.7)
            sheet.text(WIDTH / 2, above, line, size=SMALL_SIZE, bold=True, align="center")

    def arrow(self, start: Point, end: Point, label: str) -> None:
        """Draw an arrow with its number beyond its tip."""
        length = math.dist(start, end) or 1.0
        self.sheet.arrow(start, end)
        beyond = max(length + 10, 20) / length
        x, y = (one + beyond * (other - one) for one, other in zip(start, end, strict=True))
        self.sheet.text(x, y, label, size=SMALL_SIZE, bold=True, align="center", over_area=True)

    def mark(self, mark: Mark) -> None:
        """Draw what was seen, with its label beside it, inside the triangle."""
        x, y = self.at(mark.place)
        for color, size in ((self.sheet.look.card, 13), (self.sheet.look.ink, 9)):
            self.sheet.line([x], [y], color=color, width=0, marker=_MARKS[mark.kind], size=size)
        edge = WIDTH / 2 + (y - self.upper) / math.sqrt(3)
        fits = x + 12 + text_width(mark.label, SMALL_SIZE, bold=True) < edge
        align: Any = "left" if fits else "right"
        at = x + 12 if fits else x - 12
        self.sheet.text(at, y, mark.label, size=SMALL_SIZE, bold=True, align=align, over_area=True)

    def point(self, at: Point) -> None:
        """Draw the formula itself, as a ring that leaves a mark at the same place visible."""
        for color, width in ((self.sheet.look.card, 4.0), (self.sheet.look.ink, 2.0)):
            self.sheet.line([at[0]], [at[1]], color=color, width=width, marker="o", size=13, ring=True)


def _outlines(triangle: Triangle, kind: int) -> list[list[list[Point]]]:
    """Return the areas of a kind, each as its outline and its holes, in steps, smoothed within a step."""
    import numpy as np  # noqa: PLC0415 - with the drawing library only
    from contourpy import FillType, contour_generator  # noqa: PLC0415

    end = triangle.steps
    values: Any = np.ma.masked_invalid(np.full((end + 1, end + 1), np.nan))
    for i, row in enumerate(triangle.kinds):
        values[i, : len(row)] = [float(one == kind) for one in row]
    lines = contour_generator(z=_smooth(values), corner_mask=True, fill_type=FillType.OuterOffset)
    found: Any = lines.filled(0.5, 2.0)
    areas = []
    for points, offsets in zip(*found, strict=True):
        rings = [points[a:b] for a, b in pairwise(offsets)]
        areas.append([[(float(y), float(x)) for x, y in ring] for ring in rings])
    return areas


def _smooth(values: Any) -> Any:
    """Return each node's mean with its six neighbours on the map, so that a boundary has no stairs."""
    import numpy as np  # noqa: PLC0415 - with the drawing library only

    wide: Any = np.ma.masked_invalid(np.full((len(values) + 2, len(values) + 2), np.nan))
    wide[1:-1, 1:-1] = values
    steps = ((0, 0), (1, 0), (-1, 0), (0, 1), (0, -1), (1, -1), (-1, 1))
    size = len(values)
    around = np.ma.stack([wide[1 + i : 1 + i + size, 1 + j : 1 + j + size] for i, j in steps])
    return np.ma.array(around.mean(axis=0), mask=values.mask)


def _key(
    sheet: Sheet,
    words: str,
    *,
    swatch: int | None = None,
    marker: str = "",
    ring: bool = False,
    sign: str = "",
) -> None:
    """Add a swatch, a marker or a number with its words, in as many lines as they take."""
    height = line_height(TEXT_SIZE) + 1
    middle, x = sheet.top + height / 2, MARGIN + _SWATCH / 2
    if swatch is not None:
        y = middle - 6
        corners = (
            (MARGIN, y),
            (MARGIN + _SWATCH, y),
            (MARGIN + _SWATCH, y + 12),
            (MARGIN, y + 12),
            (MARGIN, y),
        )
        sheet.area([list(corners)], swatch)
    if marker:
        sheet.line([x], [middle], color=sheet.look.ink, width=0, marker=marker, size=9)
    if ring:
        sheet.line([x], [middle], color=sheet.look.ink, width=2, marker="o", size=11, ring=True)
    if sign:
        sheet.text(x, middle, sign, bold=True, align="center")
    for number, line in enumerate(wrapped(words, WIDTH - 2 * MARGIN - _SWATCH - _GAP)):
        sheet.text(MARGIN + _SWATCH + _GAP, middle + number * height, line)
        sheet.top += height
