"""Draw a packing list: a picture as wide as a phone, and a page to print with boxes to tick."""

from __future__ import annotations

import io
import textwrap
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from bot.documents.charts.canvas import LIGHT, PIXELS_PER_POINT, WIDTH

_INCH = 100  # points per inch of the picture
_PAGES = {"A4": (8.27, 11.69), "Letter": (8.5, 11.0)}  # inches
_LINE, _HEAD, _TOP = 22, 30, 46  # points of height
_LETTER = 7.6  # points of width of a letter, on the whole
_LEFT, _RIGHT = 36, 14
# A page is drawn as large as it fits, between these sizes of the picture's.
_LARGEST, _SMALLEST, _STEP = 1.6, 0.6, 0.05


@dataclass(frozen=True, slots=True)
class Packing:
    """A list with a title, a line below it, and sections of lines to tick."""

    title: str
    below: str
    sections: tuple[tuple[str, tuple[str, ...]], ...]


def picture(packing: Packing) -> bytes:
    """Return the list as a PNG for a phone."""
    drawn = _Drawn(packing, WIDTH)
    figure = _figure((WIDTH / _INCH, drawn.height / _INCH), drawn, drawn.height, 1.0)
    return _saved(figure, "png", facecolor=LIGHT.card, dpi=_INCH * PIXELS_PER_POINT)


def page(packing: Packing, paper: str) -> bytes:
    """Return the list as a PDF page, A4 or Letter; a long one is drawn smaller, so that it stays one page."""
    width, height = (side * _INCH for side in _PAGES[paper])
    scale = _LARGEST
    while scale > _SMALLEST and _Drawn(packing, width / scale).height > height / scale:
        scale -= _STEP
    figure = _figure(_PAGES[paper], _Drawn(packing, width / scale), height / scale, scale)
    return _saved(figure, "pdf")


class _Drawn:
    """A list cut to lines of a width in points."""

    def __init__(self, packing: Packing, width: float) -> None:
        letters = int((width - _LEFT - _RIGHT) / _LETTER)
        self.width, self.title = width, packing.title
        self.below = textwrap.wrap(packing.below, letters)
        self.sections = [(head, _wrapped(lines, letters)) for head, lines in packing.sections]

    @property
    def height(self) -> float:
        """The height in points."""
        lines = len(self.below) + 1 + sum(len(one) for _head, one in self.sections)
        return _TOP + lines * _LINE + len(self.sections) * _HEAD


def _wrapped(lines: Sequence[str], letters: int) -> list[tuple[bool, str]]:
    """Return the lines cut to the width, each with whether it begins with a box."""
    return [
        (number == 0, part)
        for line in lines
        for number, part in enumerate(textwrap.wrap(line, letters) or [""])
    ]


def _figure(size: tuple[float, float], drawn: _Drawn, height: float, scale: float) -> Any:
    from matplotlib.figure import Figure  # noqa: PLC0415 - slow to load, and many runs draw nothing

    figure = Figure(figsize=size)
    axes = figure.add_axes((0, 0, 1, 1))
    axes.set_axis_off()
    axes.set_xlim(0, drawn.width)
    axes.set_ylim(height, 0)
    points = 72 / _INCH * scale  # of a font of one point
    axes.text(14, 24, drawn.title, size=16 * points, weight="bold", color=LIGHT.ink, va="center")
    at = float(_TOP)
    for part in drawn.below:
        axes.text(14, at, part, size=12 * points, color=LIGHT.quiet, va="center")
        at += _LINE
    for head, lines in drawn.sections:
        axes.text(14, at + 6, head, size=13 * points, weight="bold", color=LIGHT.ink, va="center")
        at += _HEAD
        for begins, text in lines:
            if begins:
                axes.text(14, at, "\u2610", size=14 * points, color=LIGHT.ink, va="center")
            axes.text(_LEFT, at, text, size=12.5 * points, color=LIGHT.ink, va="center")
            at += _LINE
    return figure


def _saved(figure: Any, kind: str, **how: Any) -> bytes:
    out = io.BytesIO()
    metadata = {"CreationDate": None} if kind == "pdf" else {"Software": None}
    figure.savefig(out, format=kind, metadata=metadata, **how)
    return out.getvalue()
