"""Place lines one below the other on a label, narrower beside the QR symbol."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from bot.documents.labels.boxes import Box, Face, QrBox, RuleBox, TextBox, line_height_mm
from bot.documents.labels.qr import QUIET_MODULES, qr_squares
from bot.documents.labels.wrap import is_right_to_left, take_line

JOINER = " · "
_RULE_MM = 0.25
_FRAME_PAD_MM = (1.0, 0.35)  # horizontal: between a framed word and its frame
_FRAME_WHITE_MM = 0.4  # above and below a frame, so that it touches no line
_FRAME_GAP_MM = 1.6  # between a frame and the words beside it
_PARAGRAPH_GAP = 0.14  # extra white between two items, per letter size

# Width in mm of a text at a size in points, bold or not.
Measure = Callable[[str, float, bool], float]


@dataclass(frozen=True, slots=True)
class Item:
    """One item to print: neighbours with the same `row` share a line if they fit."""

    part: str
    text: str
    bold: bool = False
    framed: bool = False
    row: str = ""
    heading: bool = False  # set in the larger size, with a rule under the last one


@dataclass(frozen=True, slots=True)
class FaceSpec:
    """The input of one label: its size, items, QR symbol and letter sizes."""

    width_mm: float
    height_mm: float
    inset_mm: float
    items: tuple[Item, ...]
    body_pt: float
    name_pt: float
    link: str = ""
    module_mm: float = 0.0


def qr_box(spec: FaceSpec) -> QrBox | None:
    """Return the position of the QR symbol: the lower right corner, its squares aligned with the text."""
    if not spec.link:
        return None
    side = qr_squares(spec.link).modules * spec.module_mm
    # The quiet zone is white, so it may overlap the label's white edge.
    edge = max(0.3, spec.inset_mm - QUIET_MODULES * spec.module_mm)
    return QrBox(
        left=spec.width_mm - edge - side,
        top=spec.height_mm - edge - side,
        width=side,
        height=side,
        module_mm=spec.module_mm,
        link=spec.link,
    )


class _Flow:
    """Places items from the top; `leftover` holds the items without room, from the first on."""

    def __init__(self, spec: FaceSpec, measure: Measure) -> None:
        self.spec = spec
        self.measure = measure
        self.symbol = qr_box(spec)
        self.boxes: list[Box] = []
        self.y = spec.inset_mm

    def width_at(self, height: float) -> float:
        """Return the width available to a line of this height at the current position."""
        right = self.spec.width_mm - self.spec.inset_mm
        if self.symbol and self.y + height > self.symbol.top:
            right = min(right, self.symbol.left)
        return right - self.spec.inset_mm

    def has_height(self, height: float) -> bool:
        return self.y + height <= self.spec.height_mm - self.spec.inset_mm + 1e-9

    def add_line(self, item: Item, text: str, size: float, left: float, room: float) -> TextBox:
        """Add one line at `left`, or at the right end of `room` for a right-to-left text."""
        pad_across, pad_down = _FRAME_PAD_MM if item.framed else (0.0, 0.0)
        width = self.measure(text, size, item.bold) + 2 * pad_across
        if is_right_to_left(text):
            left += max(0.0, room - width)
        box = TextBox(
            left=left,
            top=self.y,
            width=width,
            height=line_height_mm(size) + 2 * pad_down,
            part=item.part,
            text=text,
            size_pt=size,
            bold=item.bold,
            framed=item.framed,
        )
        self.boxes.append(box)
        return box

    def place(self, item: Item) -> str:
        """Wrap one item into lines; return the text without room."""
        size = self.spec.name_pt if item.heading else self.spec.body_pt
        pad_across, pad_down = _FRAME_PAD_MM if item.framed else (0.0, 0.0)
        height = line_height_mm(size) + 2 * pad_down
        self.y += _FRAME_WHITE_MM if item.framed else 0.0
        rest = item.text
        while rest:
            if not self.has_height(height):
                return rest
            room = self.width_at(height)
            narrow = room - 2 * pad_across

            def fits(text: str, limit: float = narrow) -> bool:
                return self.measure(text, size, item.bold) <= limit

            line, rest = take_line(rest, fits)
            self.add_line(item, line, size, self.spec.inset_mm, room)
            self.y += height + (_FRAME_WHITE_MM if item.framed else 0.0)
        return ""

    def place_row(self, row: Sequence[Item]) -> int:
        """Place the first items of `row` on one line, as many as fit, a framed one first; return the count.

        Fewer than two is not a row: it then places nothing and returns 0.
        """
        size = self.spec.body_pt
        framed = row[0] if row[0].framed else None
        pad_across, pad_down = _FRAME_PAD_MM if framed else (0.0, 0.0)
        height = line_height_mm(size) + 2 * pad_down
        white = _FRAME_WHITE_MM if framed else 0.0
        left, room = self.spec.inset_mm, self.width_at(height + white)
        if not self.has_height(height + white) or any(is_right_to_left(item.text) for item in row):
            return 0
        indent = 0.0
        if framed:
            indent = self.measure(framed.text, size, framed.bold) + 2 * pad_across + _FRAME_GAP_MM
        plain = list(row[1:] if framed else row)
        while plain and indent + self.measure(_joined(plain), size, plain[0].bold) > room:
            plain.pop()
        count = len(plain) + (1 if framed else 0)
        if count < 2:
            return 0
        self.y += white
        if framed:
            self.add_line(framed, framed.text, size, left, room)
        self.y += pad_down
        self.add_line(plain[0], _joined(plain), size, left + indent, room)
        self.y += height - pad_down + white
        return count

    def rule(self) -> None:
        """Add a thin rule under the heading, if there is enough height."""
        gap = 0.5
        if self.has_height(2 * gap + _RULE_MM):
            self.y += gap
            width = self.width_at(_RULE_MM)
            self.boxes.append(RuleBox(left=self.spec.inset_mm, top=self.y, width=width, height=_RULE_MM))
            self.y += _RULE_MM + gap

    def gap(self) -> None:
        self.y += self.spec.body_pt * _PARAGRAPH_GAP * 25.4 / 72


def _joined(items: Sequence[Item]) -> str:
    return JOINER.join(item.text for item in items)


def _rows(items: Sequence[Item]) -> list[list[Item]]:
    """Group neighbours of the same named row."""
    rows: list[list[Item]] = []
    for item in items:
        if item.row and rows and rows[-1][0].row == item.row:
            rows[-1].append(item)
        else:
            rows.append([item])
    return rows


def flow(spec: FaceSpec, measure: Measure) -> tuple[Face, tuple[Item, ...]]:
    """Place the items of `spec`; return the label and the items, or the remainder of one, without room."""
    state = _Flow(spec, measure)
    waiting = _rows(spec.items)
    leftover: list[Item] = []
    while waiting and not leftover:
        row = waiting.pop(0)
        placed = state.place_row(row) if len(row) > 1 else 0
        item, *others = row if not placed else [row[0], *row[placed:]]
        if others:
            waiting.insert(0, others)
        if placed:
            state.gap()
            continue
        rest = state.place(item)
        if rest:
            leftover = [replace(item, text=rest)]
        elif item.heading and not (waiting and waiting[0][0].heading):
            state.rule()
        else:
            state.gap()
    leftover += [item for row in waiting for item in row]
    boxes = [*state.boxes, *([state.symbol] if state.symbol else [])]
    return Face(spec.width_mm, spec.height_mm, tuple(boxes)), tuple(leftover)
