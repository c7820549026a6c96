"""The boxes of a label: the position of each printed element, in mm from the label's corner."""

from __future__ import annotations

from dataclasses import dataclass

MM_PER_POINT = 25.4 / 72
LINE_PER_SIZE = 1.22  # line height per letter size: room for accents above and descenders below


def line_height_mm(size_pt: float) -> float:
    """Return the height in mm of one line of letters of `size_pt` points."""
    return size_pt * LINE_PER_SIZE * MM_PER_POINT


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """A rectangle on a label, in mm; `left` and `top` are from the label's upper left corner."""

    left: float
    top: float
    width: float
    height: float

    @property
    def right(self) -> float:
        """Distance of the box's right edge from the label's left edge, in mm."""
        return self.left + self.width

    @property
    def bottom(self) -> float:
        """Distance of the box's lower edge from the label's upper edge, in mm."""
        return self.top + self.height

    def overlaps(self, other: Box) -> bool:
        """Whether the boxes share more than an edge (an edge is up to a thousandth of a millimetre)."""
        edge = 0.001
        across = min(self.right, other.right) - max(self.left, other.left)
        down = min(self.bottom, other.bottom) - max(self.top, other.top)
        return across > edge and down > edge


@dataclass(frozen=True, slots=True, kw_only=True)
class TextBox(Box):
    """One printed line. `part` is the part of the label that it belongs to; `framed` draws a frame."""

    part: str
    text: str
    size_pt: float
    bold: bool = False
    framed: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class RuleBox(Box):
    """A thin black rule, as thick as the box is high."""


@dataclass(frozen=True, slots=True, kw_only=True)
class QrBox(Box):
    """A QR symbol with its quiet zone; `module_mm` is the side of one module."""

    module_mm: float
    link: str


@dataclass(frozen=True, slots=True)
class Face:
    """The printed content of one label of `width_mm` by `height_mm`."""

    width_mm: float
    height_mm: float
    boxes: tuple[Box, ...]
