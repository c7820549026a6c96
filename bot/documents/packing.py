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
_MOST_LETTERS = 44  # in a line of the picture


@dataclass(frozen=True, slots=True)
class Packing:
    """A list with a title, a line below it, and sections of lines to tick."""

    title: str
    below: str
    sections: tuple[tuple[str, tuple[str, ...]], ...]


def _wrapped(lines: Sequence[str]) -> list[tuple[bool, str]]:
    """Return the lines cut to the width, each with whether it begins with a box."""
    found = []
    for line in lines:
        for number, part in enumerate(textwrap.wrap(line, _MOST_LETTERS) or [""]):
            found.append((number == 0, part))
    return found


def picture(packing: Packing) -> bytes:
    """Return the list as a PNG for a phone."""
    height = _height(packing)
    figure = _figure((WIDTH / _INCH, height / _INCH), packing, height, 1.0)
    return _saved(figure, "png", facecolor=LIGHT.card, dpi=_INCH * PIXELS_PER_POINT)


def page(packing: Packing, paper: str) -> bytes:
    """Return the list as a PDF page, A4 or Letter; a long one is drawn smaller, so that it stays one page."""
    width, height = _PAGES[paper]
    scale = min(1.6, 0.9 * height * _INCH / _height(packing))
    figure = _figure((width, height), packing, height * _INCH / scale, scale)
    return _saved(figure, "pdf")


def _height(packing: Packing) -> float:
    lines = sum(len(_wrapped(one)) for _head, one in packing.sections)
    below = len(textwrap.wrap(packing.below, _MOST_LETTERS))
    return _TOP + below * _LINE + len(packing.sections) * _HEAD + lines * _LINE + _LINE


def _figure(size: tuple[float, float], packing: Packing, height: float, scale: float) -> Any:
    from matplotlib.figure import Figure  # noqa: PLC0415 - slow to load, and many runs draw nothing

    figure = Figure(figsize=size)
    axes = figure.add_axes((0, 0, 1, 1))
    axes.set_axis_off()
    axes.set_xlim(0, size[0] * _INCH / scale)
    axes.set_ylim(height, 0)
    points = 72 / _INCH * scale  # of a font of one point
    axes.text(14, 24, packing.title, size=16 * points, weight="bold", color=LIGHT.ink, va="center")
    at = float(_TOP)
    for part in textwrap.wrap(packing.below, _MOST_LETTERS):
        axes.text(14, at, part, size=12 * points, color=LIGHT.quiet, va="center")
        at += _LINE
    for head, lines in packing.sections:
        axes.text(14, at + 6, head, size=13 * points, weight="bold", color=LIGHT.ink, va="center")
        at += _HEAD
        for begins, text in _wrapped(lines):
            if begins:
                axes.text(14, at, "\u2610", size=14 * points, color=LIGHT.ink, va="center")
            axes.text(36, at, text, size=12.5 * points, color=LIGHT.ink, va="center")
            at += _LINE
    return figure


def _saved(figure: Any, kind: str, **how: Any) -> bytes:
    out = io.BytesIO()
    metadata = {"CreationDate": None} if kind == "pdf" else {"Software": None}
    figure.savefig(out, format=kind, metadata=metadata, **how)
    return out.getvalue()
