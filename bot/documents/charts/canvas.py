"""The canvas of charts: a card as wide as a phone, its colours, and text that always fits.

Lengths are in points of a phone screen, 380 across; the picture has three pixels per point, so that it stays
sharp. Nothing here keeps state between pictures, and matplotlib is loaded with the first one.
"""

from __future__ import annotations

import io
import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache, lru_cache, partial
from pathlib import Path
from typing import Any, Literal

WIDTH = 380
PIXELS_PER_POINT = 3
MARGIN = 14
_INCH = 100  # points per inch of the drawing
TITLE_SIZE, TEXT_SIZE, SMALL_SIZE = 16.0, 12.5, 11.5


@dataclass(frozen=True, slots=True)
class Look:
    """Colours of one mode: card, ink, quieter ink, lines, and the fills of series in order.

    The fills are distinct for every kind of colour vision that the tests simulate, have a contrast of 3 to 1
    with the card, and each has its own hatch.
    """

    card: str
    ink: str
    quiet: str
    line: str
    fills: tuple[str, ...]


LIGHT = Look(
    card="#FFFDF8",
    ink="#23262B",
    quiet="#5A5F66",
    line="#D9D4C8",
    fills=("#CD7C20", "#4B1930", "#618DF3", "#3D006F", "#5C9878", "#574200"),
)
DARK = Look(
    card="#1E2126",
    ink="#F1EFE9",
    quiet="#B6BAC1",
    line="#41464E",
    fills=("#E98A13", "#FAF2A2", "#6793FA", "#FEBCCF", "#577646", "#896592"),
)
# Colours like the skin of the fruit; each keeps a hatch of its own for those who see no colours.
FRUIT_FILLS = {
    "orange": ("#F08A24", ""),
    "grapefruit": ("#E8777B", "...."),
    "lemon": ("#F2CF2B", "////"),
    "lime": ("#7FB23A", "\\\\\\\\"),
    "mandarin": ("#D9581F", "xxxx"),
}
HATCHES = ("", "////", "....", "\\\\\\\\", "xxxx", "----")
MARKERS = ("o", "s", "^", "D", "v", "P")
DASHES: tuple[Any, ...] = ("-", (0, (5, 2)), (0, (2, 1.5)), (0, (7, 2, 2, 2)), (0, (1, 1)), (0, (9, 3)))


Point = tuple[float, float]
_PALE = 0.28  # of the fill in the card


def pale(fill: str, card: str) -> str:
    """Return a fill thinned with the colour of the card, for areas under marks and text."""
    pairs = ((int(fill[at : at + 2], 16), int(card[at : at + 2], 16)) for at in (1, 3, 5))
    return "#" + "".join(f"{round(_PALE * one + (1 - _PALE) * other):02X}" for one, other in pairs)


def look(dark: bool) -> Look:
    """Return the colours for a dark or a light screen."""
    return DARK if dark else LIGHT


@cache
def _font_file(bold: bool) -> str:
    # The fonts bundled with matplotlib, so that pictures are the same on every machine.
    import matplotlib  # noqa: PLC0415 - slow to load, and many runs draw nothing

    name = "DejaVuSans-Bold.ttf" if bold else "DejaVuSans.ttf"
    return str(Path(matplotlib.get_data_path()) / "fonts" / "ttf" / name)


def _font(size: float, bold: bool) -> Any:
    from matplotlib.ft2font import FT2Font  # noqa: PLC0415

    font = FT2Font(_font_file(bold))
    font.set_size(size * 72 / _INCH, _INCH * PIXELS_PER_POINT)
    return font


@cache
def _known_signs() -> frozenset[int]:
    return frozenset(_font(TEXT_SIZE, bold=False).get_charmap())


def shown(text: str) -> str:
    """Return `text` on one line, with an empty box for each character missing from the font."""
    known = _known_signs()
    return "".join(sign if ord(sign) in known else "\u25a1" for sign in " ".join(text.split()))


@lru_cache(maxsize=4096)
def text_width(text: str, size: float = TEXT_SIZE, bold: bool = False) -> float:
    """Return the width of a text, in points."""
    font = _font(size, bold)
    font.set_text(shown(text))
    width: float = font.get_width_height()[0] / 64 / PIXELS_PER_POINT
    return width


def wrapped(text: str, width: float, size: float = TEXT_SIZE, bold: bool = False) -> list[str]:
    """Return `text` in lines at most `width` points wide, breaking inside a word only if necessary."""
    lines: list[str] = []
    for word in shown(text).split():
        joined = f"{lines[-1]} {word}" if lines else word
        if text_width(joined, size, bold) <= width:
            lines[-1:] = [joined]
            continue
        while text_width(word, size, bold) > width and len(word) > 1:
            fits = next(
                (n for n in range(len(word) - 1, 0, -1) if text_width(word[:n], size, bold) <= width), 1
            )
            lines.append(word[:fits])
            word = word[fits:]  # noqa: PLW2901 - the rest of a word too long for any line
        lines.append(word)
    return lines


def line_height(size: float) -> float:
    """Return the distance from one line of text to the next, in points."""
    return size * 1.3


def ticks(high: float, about: int = 4) -> list[float]:
    """Return round tick values from 0 to `high` or just above it; to 1 if nothing is above 0."""
    rough = (high if high > 0 else 1.0) / about
    step = 10.0 ** math.floor(math.log10(rough))
    step *= next(factor for factor in (1, 2, 2.5, 5, 10) if factor * step >= rough * (1 - 1e-9))
    return [number * step for number in range(math.ceil(rough * about / step - 1e-9) + 1)]


class Sheet:
    """One card, filled from the top: `top` is the position of the next element, in points.

    Elements are stored and drawn once the height is known, again for each drawing.
    """

    def __init__(self, dark: bool) -> None:
        self.look = look(dark)
        self.top = float(MARGIN)
        self._artists: list[Callable[[], Any]] = []

    def __len__(self) -> int:
        """The number of elements so far."""
        return len(self._artists)

    def text(
        self,
        x: float,
        y: float,
        text: str,
        *,
        size: float = TEXT_SIZE,
        color: str | None = None,
        bold: bool = False,
        align: Literal["left", "center", "right"] = "left",
        over_area: bool = False,
    ) -> None:
        """Add one line of text, its middle at the height `y`; over an area it is edged like the card."""
        from matplotlib.font_manager import FontProperties  # noqa: PLC0415
        from matplotlib.patheffects import withStroke  # noqa: PLC0415
        from matplotlib.text import Text  # noqa: PLC0415

        edge = [withStroke(linewidth=4, foreground=self.look.card)] if over_area else []

        self._artists.append(
            partial(
                Text,
                x,
                y,
                shown(text),
                color=color or self.look.ink,
                fontproperties=FontProperties(fname=_font_file(bold), size=size * 72 / _INCH),
                horizontalalignment=align,
                verticalalignment="center_baseline",
                path_effects=edge,
                parse_math=False,  # two dollar signs mean money, not a formula
            )
        )

    def paragraph(
        self, text: str, *, size: float = TEXT_SIZE, color: str | None = None, bold: bool = False
    ) -> None:
        """Add a text across the card, in as many lines as needed, and move `top` below it."""
        for line in wrapped(text, WIDTH - 2 * MARGIN, size, bold):
            self.text(MARGIN, self.top + line_height(size) / 2, line, size=size, color=color, bold=bold)
            self.top += line_height(size)

    def heading(self, title: str, unit: str) -> None:
        """Add the title and, less prominent, the meaning of the numbers."""
        self.paragraph(title, size=TITLE_SIZE, bold=True)
        if unit:
            self.paragraph(unit, size=TEXT_SIZE, color=self.look.quiet)
        self.top += 8

    def rectangle(
        self, x: float, y: float, width: float, height: float, place: int | None, fruit: str | None = None
    ) -> None:
        """Add a bar in the fill and hatch of a fruit, else of a series; None is the hollow one."""
        fill = self.look.card if place is None else self.look.fills[place]
        hatch = "oo" if place is None else HATCHES[place]
        if fruit in FRUIT_FILLS:
            fill, hatch = FRUIT_FILLS[fruit]
        line = self.look.ink if place is None or fruit in FRUIT_FILLS else self.look.card
        self._bar((x, y, width, height), fill, hatch, line)

    def unfinished(self, x: float, y: float, width: float, height: float) -> None:
        """Hatch a bar across, because its week still runs."""
        self._bar((x - 2, y - 2, width + 4, height + 2), "none", "///", self.look.ink, dashes=(0, (3, 2)))

    def _bar(
        self,
        box: tuple[float, float, float, float],
        fill: str,
        hatch: str,
        line: str,
        dashes: Any = "-",
    ) -> None:
        from matplotlib.patches import Rectangle  # noqa: PLC0415

        x, y, width, height = box
        self._artists.append(
            partial(
                Rectangle,
                (x, y),
                width,
                height,
                facecolor=fill,
                edgecolor=self.look.ink,
                linewidth=0.6,
                linestyle=dashes,
                hatch=hatch,
                hatchcolor=line,
                hatch_linewidth=0.7,
            )
        )

    def area(self, rings: Sequence[Sequence[Point]], place: int) -> None:
        """Add an area in the pale fill and the hatch of a series; rings inside it are holes."""
        from matplotlib.patches import PathPatch  # noqa: PLC0415
        from matplotlib.path import Path as Outline  # noqa: PLC0415

        outlines = [Outline(ring, closed=True) for ring in rings]
        self._artists.append(
            partial(
                PathPatch,
                Outline.make_compound_path(*outlines),
                facecolor=pale(self.look.fills[place], self.look.card),
                edgecolor=self.look.ink,
                linewidth=0.8,
                hatch=HATCHES[place],
                hatchcolor=self.look.fills[place],
                hatch_linewidth=0.8,
            )
        )

    def arrow(self, start: Point, end: Point) -> None:
        """Add an arrow, edged in the colour of the card so that it shows on any area."""
        from matplotlib.patches import FancyArrowPatch  # noqa: PLC0415

        for color, width in ((self.look.card, 4.5), (self.look.ink, 1.8)):
            self._artists.append(
                partial(
                    FancyArrowPatch,
                    start,
                    end,
                    arrowstyle="-|>",
                    mutation_scale=9,
                    shrinkA=0,
                    shrinkB=0,
                    color=color,
                    linewidth=width,
                )
            )

    def line(
        self,
        xs: Sequence[float],
        ys: Sequence[float],
        *,
        color: str | None = None,
        width: float = 0.7,
        dashes: Any = "-",
        marker: str = "",
        size: float = 5,
        ring: bool = False,
        at: int | None = None,
    ) -> None:
        """Add a line through points, with a marker on each if one is given; a `ring` is a hollow marker.

        `at` puts it below the elements added since there were so many.
        """
        from matplotlib.lines import Line2D  # noqa: PLC0415

        shade = color or self.look.line
        self._artists.insert(
            len(self._artists) if at is None else at,
            partial(
                Line2D,
                xs,
                ys,
                color=shade,
                linewidth=width,
                linestyle=dashes,
                marker=marker,
                markersize=size,
                markerfacecolor="none" if ring else shade,
                markeredgecolor=shade if ring else self.look.card,
                markeredgewidth=width if ring else 0.5,
                solid_capstyle="butt",
            ),
        )

    def png(self) -> bytes:
        """Return the picture: 1140 pixels wide, as high as its content."""
        figure = self.figure()
        out = io.BytesIO()
        figure.savefig(out, format="png", dpi=_INCH * PIXELS_PER_POINT, metadata={"Software": None})
        return out.getvalue()

    def figure(self, on_paper: bool = False) -> Any:
        """Return the drawn figure, white for paper; its text stays inside it, and a test checks that."""
        from matplotlib.backends.backend_agg import FigureCanvasAgg  # noqa: PLC0415
        from matplotlib.figure import Figure  # noqa: PLC0415

        height = math.ceil(self.top + MARGIN)
        figure = Figure(figsize=(WIDTH / _INCH, height / _INCH), dpi=_INCH * PIXELS_PER_POINT)
        FigureCanvasAgg(figure)
        figure.patch.set_facecolor("white" if on_paper else self.look.card)
        axes = figure.add_axes((0, 0, 1, 1))
        axes.set_axis_off()
        axes.set_xlim(0, WIDTH)
        axes.set_ylim(height, 0)
        for order, make in enumerate(self._artists):
            artist = make()
            artist.set_zorder(order)  # in insertion order, not lines above bars
            axes.add_artist(artist)
        return figure
