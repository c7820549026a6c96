"""Fit a label's text to its stock: shrink, wrap, then move lines to a second label."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from bot.documents.labels.boxes import Face, TextBox, line_height_mm
from bot.documents.labels.flow import FaceSpec, Item, Measure, flow
from bot.documents.labels.qr import MODULE_SIZES_MM, SMALLEST_MODULE_MM, qr_squares
from bot.documents.labels.sheets import Roll, Stock

# Smallest letters, in points. At 5 pt the letter x of the face used is 0.96 mm high.
SMALLEST_PT = 5.0
SMALLEST_NAME_PT = 6.0
COMFORTABLE_PT = 7.0  # the QR symbol is dropped before the letters go below this size
_LARGEST_PT = 12.0
_LARGEST_NEXT_PT = 8.0  # on a second label, which seldom holds much text
_ROLL_PT = 9.0  # a continuous roll gets longer instead of using smaller letters
_STEP_PT = 0.5
_NAME_RATIOS = (2.0, 1.8, 1.6, 1.4, 1.2)  # size of the name relative to the other letters

# The parts that move from the first label to a second one, in this order. The name, the batch, the bottle's
# number, the word for flammable and the discard date always stay.
MOVE_ORDER = (
    "bar", "made_by", "clear_checked", "ingredients", "caution", "storage", "made", "volume", "strength",
    "allergens",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Room:
    """The dimensions of one label, in mm."""

    width_mm: float
    height_mm: float
    inset_mm: float


@dataclass(frozen=True, slots=True)
class Heading:
    """The items repeated on a second label: name, batch, bottle number and the word for 'continued'."""

    name: str
    batch: str
    bottle: str
    continued: str


@dataclass(frozen=True, slots=True)
class Arrangement:
    """The labels of one bottle, in order; `link_left_out` if no QR symbol fits the stock."""

    specs: tuple[FaceSpec, ...]
    link_left_out: bool = False


def _modules(room: Room, link: str) -> list[float]:
    """Module sizes to try, largest first: a symbol should leave most of the label to words."""
    if not link:
        return [0.0]
    side = qr_squares(link).modules
    most = min(room.height_mm * 0.62, room.width_mm * 0.36)
    return [size for size in MODULE_SIZES_MM if side * size <= most] or [SMALLEST_MODULE_MM]


def symbol_fits(room: Room, link: str) -> bool:
    """Whether the smallest readable QR symbol for `link` fits on a label, with words beside or above it."""
    side = qr_squares(link).modules * SMALLEST_MODULE_MM
    line = line_height_mm(SMALLEST_PT)
    # At least one line of words must fit, above the symbol or beside it.
    free_height = room.height_mm - room.inset_mm - side
    free_width = room.width_mm - room.inset_mm - side
    within = side <= min(room.width_mm, room.height_mm) - 0.6
    return within and (free_height >= line + room.inset_mm or free_width >= 8)


def _with_name_sizes(spec: FaceSpec, measure: Measure) -> Iterator[FaceSpec]:
    """Name sizes to try, largest first: those that give one line, else those that wrap."""
    names = [item for item in spec.items if item.heading]
    sizes = [max(SMALLEST_NAME_PT, spec.body_pt * ratio) for ratio in _NAME_RATIOS]
    on_one_line = [size for size in sizes if _name_lines(spec, names, size, measure) <= 1]
    for size in dict.fromkeys(on_one_line or sizes[2:]):
        yield replace(spec, name_pt=size)


def _name_lines(spec: FaceSpec, names: list[Item], size: float, measure: Measure) -> float:
    """The number of lines of the name at `size`; infinite if it does not fit."""
    face, leftover = flow(replace(spec, items=tuple(names), name_pt=size), measure)
    return math.inf if leftover else sum(isinstance(box, TextBox) for box in face.boxes)


class _Fitter:
    """Tries letter sizes and QR sizes for one label."""

    def __init__(self, room: Room, measure: Measure, largest_pt: float = _LARGEST_PT) -> None:
        self.room = room
        self.measure = measure
        self.largest_pt = min(largest_pt, max(COMFORTABLE_PT, round(room.height_mm * 0.26 * 2) / 2))

    def sizes(self, smallest_pt: float) -> Iterator[float]:
        """Letter sizes from the largest down to `smallest_pt`."""
        size = self.largest_pt
        while size >= smallest_pt:
            yield size
            size -= _STEP_PT

    def spec(self, items: Sequence[Item], body_pt: float, link: str, module_mm: float) -> FaceSpec:
        """Return a label with letters of this size; its name is no larger than the smallest name."""
        return FaceSpec(
            width_mm=self.room.width_mm,
            height_mm=self.room.height_mm,
            inset_mm=self.room.inset_mm,
            items=tuple(items),
            body_pt=body_pt,
            name_pt=max(SMALLEST_NAME_PT, body_pt * _NAME_RATIOS[-1]),
            link=link,
            module_mm=module_mm if link else 0.0,
        )

    def fits(self, spec: FaceSpec) -> bool:
        """Whether the label holds all of its items."""
        return not flow(spec, self.measure)[1]

    def named(self, spec: FaceSpec) -> FaceSpec | None:
        """Return the label with the largest name that leaves room for everything, or None."""
        return next(filter(self.fits, _with_name_sizes(spec, self.measure)), None)

    def whole(self, items: Sequence[Item], link: str) -> FaceSpec | None:
        """Return the best label that holds all of `items`, or None."""
        if not self.fits(self.smallest(items, link)):
            return None
        tries = [
            (module, body) for module in _modules(self.room, link) for body in self.sizes(COMFORTABLE_PT)
        ]
        tries += [(SMALLEST_MODULE_MM, body) for body in self.sizes(SMALLEST_PT)]
        for module, body in tries:
            spec = self.named(self.spec(items, body, link, module))
            if spec:
                return spec
        return self.smallest(items, link)

    def smallest(self, items: Sequence[Item], link: str) -> FaceSpec:
        """Return the label with the smallest letters, whether or not it holds all of `items`."""
        return self.spec(items, SMALLEST_PT, link, SMALLEST_MODULE_MM)


def _leaving_order(items: Sequence[Item]) -> list[int]:
    """Indices of the items that may move, in order; of several cautions the last moves first."""
    order = {part: rank for rank, part in enumerate(MOVE_ORDER)}
    movable = [(order[item.part], -place) for place, item in enumerate(items) if item.part in order]
    return [-place for _, place in sorted(movable)]


def _first_label(fitter: _Fitter, items: Sequence[Item], link: str) -> tuple[FaceSpec, list[Item]] | None:
    """Return the first label and the items for the next, or None if not even the essentials fit."""
    leaving = _leaving_order(items)
    for count in range(len(leaving) + 1):
        gone = set(leaving[:count])
        spec = fitter.whole([item for place, item in enumerate(items) if place not in gone], link)
        if spec:
            return spec, [item for place, item in enumerate(items) if place in gone]
    return None


def _heading_items(heading: Heading, fitter: _Fitter, link: str) -> tuple[Item, ...]:
    """Return the second label's first lines, without those that would take more than half of it."""
    name = Item("name_again", heading.name, bold=True)
    word = Item("continued", heading.continued, row="batch")
    parts = (("batch_again", heading.batch), ("bottle_again", heading.bottle))
    batch = tuple(Item(part, text, row="batch") for part, text in parts if text)
    half = replace(fitter.room, height_mm=fitter.room.height_mm / 2 + fitter.room.inset_mm / 2)
    tight = _Fitter(half, fitter.measure)
    for items in ((name, *batch, word), (*batch, word), (word,)):
        spec = tight.smallest(items, "")
        if link:  # only this much width is left beside the symbol
            side = qr_squares(link).modules * SMALLEST_MODULE_MM
            spec = replace(spec, width_mm=max(side, spec.width_mm - side))
        if tight.fits(spec):
            return items
    return ()


def _next_labels(fitter: _Fitter, heading: Heading, items: Sequence[Item], link: str) -> list[FaceSpec]:
    """Return the second and further labels, until everything is printed."""
    specs: list[FaceSpec] = []
    waiting = [replace(item, heading=False) for item in items]
    while waiting or link:
        head = _heading_items(heading, fitter, link)
        spec = fitter.whole([*head, *waiting], link)
        if spec:
            return [*specs, spec]
        spec, leftover = _as_much(fitter, (*head, *waiting), link)
        if len(leftover) >= len(waiting) and leftover[-len(waiting) :] == waiting:
            spec, leftover = _as_much(fitter, tuple(waiting), link)
        specs.append(spec)
        waiting, link = leftover, ""
    return specs


def _as_much(fitter: _Fitter, items: tuple[Item, ...], link: str) -> tuple[FaceSpec, list[Item]]:
    """Return the label with as many of `items` as fit, and the rest."""
    spec = fitter.smallest(items, link)
    leftover = list(flow(spec, fitter.measure)[1])
    return replace(spec, items=_shortened(items, leftover)), leftover


def _shortened(items: tuple[Item, ...], leftover: list[Item]) -> tuple[Item, ...]:
    """Return the printed part of `items`, with the beginning of the one that was cut."""
    whole = len(items) - len(leftover)
    printed = list(items[:whole])
    if leftover:
        cut, rest = items[whole], leftover[0].text
        beginning = cut.text[: len(cut.text) - len(rest)].rstrip(" ")
        if beginning:
            printed.append(replace(cut, text=beginning))
    return tuple(printed)


def _room(stock: Stock, height_mm: float | None = None) -> Room:
    if isinstance(stock, Roll):
        return Room(stock.width_mm, height_mm or stock.length_mm or stock.longest_mm, stock.inset_mm)
    return Room(stock.label_width_mm, stock.label_height_mm, stock.inset_mm)


def _cut_to_length(items: Sequence[Item], link: str, roll: Roll, measure: Measure) -> Arrangement | None:
    """Return the shortest piece of a continuous roll that holds all in comfortable letters, or None."""
    height = roll.shortest_mm
    while height <= roll.longest_mm:
        fitter = _Fitter(_room(roll, height), measure)
        if not link or symbol_fits(fitter.room, link):
            spec = fitter.named(fitter.spec(items, _ROLL_PT, link, _modules(fitter.room, link)[0]))
            if spec:
                return Arrangement((spec,))
        height += 1
    return None


def arrange(
    items: Sequence[Item], heading: Heading, link: str, stock: Stock, measure: Measure
) -> Arrangement:
    """Choose the labels for one bottle on this stock.

    Letters shrink to SMALLEST_PT and the QR symbol to modules of SMALLEST_MODULE_MM; then lines move to a
    second label in MOVE_ORDER; then the QR symbol moves there; then the rest of a text that is longer than a
    label goes on the next. Nothing is cut off.
    """
    left_out = bool(link) and not symbol_fits(_room(stock), link)
    wanted = "" if left_out else link
    if isinstance(stock, Roll) and stock.length_mm is None:
        cut = _cut_to_length(items, wanted, stock, measure)
        if cut:
            return replace(cut, link_left_out=left_out)
    fitter = _Fitter(_room(stock), measure)
    first = _first_label(fitter, items, wanted)
    pending = ""
    if first is None and wanted:
        first, pending = _first_label(fitter, items, ""), wanted
    if first is None:
        first = _as_much(fitter, tuple(items), "")
    spec, moved = first
    later = _Fitter(fitter.room, measure, _LARGEST_NEXT_PT)
    return Arrangement((spec, *_next_labels(later, heading, moved, pending)), left_out)


def faces(arrangement: Arrangement, measure: Measure) -> tuple[Face, ...]:
    """Return the boxes of every label of an arrangement."""
    return tuple(flow(spec, measure)[0] for spec in arrangement.specs)
