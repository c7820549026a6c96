"""Bottle labels: a PDF for sheets and rolls, and a picture of one label for the chat.

All words come from the caller, in the reader's language. A label prints its input; whether it meets a rule on
labelling is for the bar and its inspector to decide.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import closing, contextmanager
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from bot.documents.labels.boxes import Face
from bot.documents.labels.drawing import draw_face, draw_outline, new_document, page_png
from bot.documents.labels.flow import Item
from bot.documents.labels.fonts import Letters
from bot.documents.labels.layout import Arrangement, Heading, arrange, faces
from bot.documents.labels.sheets import CountError, LabelError, Sheet, Stock

if TYPE_CHECKING:
    from fpdf import FPDF

MOST_COPIES = 200
MOST_NUMBERING_LETTERS = 24
_PREVIEW_EDGE_MM = 3.0
_PREVIEW_PIXELS_PER_MM = 12.0
_PREVIEW_LARGEST_PX = 2400.0


@dataclass
class NumberingError(LabelError):
    """The bottle numbering pattern lacks its number, has unknown fields or is too long."""

    pattern: str


@dataclass(frozen=True, slots=True)
class LabelText:
    """The texts of a label, in the reader's language and order; empty ones are not printed.

    Captions ("Made", "Discard by") are part of each text. `numbering` is a pattern with {number} and {total},
    e.g. "{number} of {total}"; it is used for more than one bottle. `flammable` is the word to print in a
    frame, or empty; the caller decides by strength. The QR symbol opens `link`.
    """

    name: str
    batch: str
    bar: str = ""
    made: str = ""
    clear_checked: str = ""
    discard_by: str = ""
    strength: str = ""
    volume: str = ""
    ingredients: str = ""
    allergens: str = ""
    flammable: str = ""
    storage: str = ""
    made_by: str = ""
    cautions: tuple[str, ...] = ()
    link: str = ""
    numbering: str = "{number} / {total}"
    continued: str = "…"
    language: str = ""


@dataclass(frozen=True, slots=True)
class LabelSheet:
    """A PDF of labels. `missing_glyphs` are characters without a glyph, printed as an empty square.

    `continued` means that a bottle's text continues on a second label, `link_left_out` that the labels are
    too small for the QR symbol; `labels` and `pages` are the printed counts.
    """

    pdf: bytes
    missing_glyphs: str
    continued: bool
    link_left_out: bool
    labels: int
    pages: int


@dataclass(frozen=True, slots=True)
class LabelPreview:
    """A PNG of one bottle's label or labels; the other fields are as in LabelSheet."""

    png: bytes
    width_px: int
    height_px: int
    missing_glyphs: str
    continued: bool
    link_left_out: bool


def _numbered(pattern: str, number: int, total: int) -> str:
    if total <= 1:
        return ""
    try:
        text = pattern.format(number=number, total=total)
    except (LookupError, ValueError, AttributeError):
        raise NumberingError(pattern) from None
    if str(number) not in text or len(text) > MOST_NUMBERING_LETTERS:
        raise NumberingError(pattern)
    return text


def label_items(text: LabelText, bottle: str) -> tuple[Item, ...]:
    """Return the printed items from the top down; `bottle` is its number, empty for a single one."""
    items = (
        Item("name", text.name, bold=True, heading=True),
        Item("batch", text.batch, row="facts"),
        Item("bottle", bottle, row="facts"),
        Item("strength", text.strength, row="facts"),
        Item("volume", text.volume, row="facts"),
        Item("flammable", text.flammable, bold=True, framed=True, row="discard"),
        Item("discard_by", text.discard_by, bold=True, row="discard"),
        Item("made", text.made, row="made"),
        Item("clear_checked", text.clear_checked, row="made"),
        Item("ingredients", text.ingredients),
        Item("allergens", text.allergens, bold=True),
        Item("storage", text.storage, row="notes"),
        *(Item("caution", caution, row="notes") for caution in text.cautions),
        Item("made_by", text.made_by, row="who"),
        Item("bar", text.bar, row="who"),
    )
    return tuple(item for item in items if item.text)


class _Press:
    """One document with its fonts, and the labels for a text on a stock."""

    def __init__(self, text: LabelText, stock: Stock, total: int, pdf: FPDF, letters: Letters) -> None:
        self.pdf = pdf
        self.letters = letters
        self.stock = stock
        self.total = total
        words = {
            part: letters.clean(getattr(text, part))
            for part in LabelText.__dataclass_fields__
            if part not in {"cautions", "link", "numbering", "language"}
        }
        cautions = tuple(letters.clean(caution) for caution in text.cautions)
        self.text = replace(text, cautions=cautions, **words)
        # One layout serves all bottles, so that they look alike: that of the widest number.
        self.arrangement = self._arrange(self._bottle(total))
        self.alike = all(
            item.text == self._bottle(total)
            for spec in self.arrangement.specs
            for item in spec.items
            if item.part == "bottle"
        )

    def _bottle(self, number: int) -> str:
        return self.letters.clean(_numbered(self.text.numbering, number, self.total))

    def _arrange(self, bottle: str) -> Arrangement:
        text = self.text
        heading = Heading(text.name, text.batch, bottle, text.continued)
        return arrange(label_items(text, bottle), heading, text.link, self.stock, self.letters.width_mm)

    def faces(self, number: int) -> tuple[Face, ...]:
        """Return the labels of one bottle, in order."""
        bottle = self._bottle(number)
        if not self.alike:
            return faces(self._arrange(bottle), self.letters.width_mm)
        specs = tuple(
            replace(
                spec,
                items=tuple(
                    replace(item, text=bottle) if item.part in {"bottle", "bottle_again"} else item
                    for item in spec.items
                ),
            )
            for spec in self.arrangement.specs
        )
        return faces(replace(self.arrangement, specs=specs), self.letters.width_mm)


@contextmanager
def _press(text: LabelText, stock: Stock, total: int, fonts: Sequence[Path]) -> Iterator[_Press]:
    """Provide a press, and close its font files afterwards in any case."""
    pdf = new_document(text.language)
    with closing(Letters(pdf, fonts)) as letters:
        press = _Press(text, stock, total, pdf, letters)
        pdf.set_title(f"{press.text.name} {press.text.batch}")  # after cleaning: the input may be any text
        yield press


def _check(what: str, value: int, low: int, high: int) -> None:
    if not low <= value <= high:
        raise CountError(what, value, low, high)


def label_sheet(
    text: LabelText,
    stock: Stock,
    *,
    copies: int = 1,
    start: int = 1,
    first_bottle: int = 1,
    bottles: int | None = None,
    outlines: bool = False,
    fonts: Sequence[Path] = (),
) -> LabelSheet:
    """Make a PDF of labels, one per bottle, at true size.

    `start` is the first free label of a partly used sheet, counted along the rows from 1. Bottles are
    numbered from `first_bottle` to the last of `bottles` (by default as many as are printed). `outlines`
    draws every label's edge, to compare a trial print with the sheet. `fonts` are additional font files to
    search for missing characters.

    Raises:
        CountError: copies, start, first_bottle or bottles outside their range.
        NumberingError: a numbering pattern that cannot be used.
        LinkError: a link too long for a QR symbol.
        FontsMissingError: the main font files are not installed.
    """
    _check("copies", copies, 1, MOST_COPIES)
    _check("start", start, 1, stock.per_page if isinstance(stock, Sheet) else 1)
    last = first_bottle + copies - 1
    total = last if bottles is None else bottles
    _check("first_bottle", first_bottle, 1, 9999)
    _check("bottles", total, last, 99999)
    with _press(text, stock, total, fonts) as press:
        labels = 0
        for number in range(first_bottle, last + 1):
            for face in press.faces(number):
                _print_label(press, face, start - 1 + labels, outlines, first=labels == 0)
                labels += 1
        return LabelSheet(
            pdf=bytes(press.pdf.output()),
            missing_glyphs=press.letters.missing,
            continued=labels > copies,
            link_left_out=press.arrangement.link_left_out,
            labels=labels,
            pages=press.pdf.pages_count,
        )


def _print_label(press: _Press, face: Face, index: int, outlines: bool, *, first: bool) -> None:
    """Draw one label at its position, on a new page if it is the first of one."""
    left, top = 0.0, 0.0
    if isinstance(press.stock, Sheet):
        left, top = press.stock.corner_mm(index)
        page = (press.stock.page_width_mm, press.stock.page_height_mm)
        new_page = first or index % press.stock.per_page == 0
    else:
        page = (face.width_mm, face.height_mm)
        new_page = True
    if new_page:
        press.pdf.add_page(format=page)
    if outlines:
        draw_outline(press.pdf, left, top, face.width_mm, face.height_mm)
    draw_face(press.pdf, face, left, top)


def _stacked(shown: Sequence[Face]) -> Iterator[tuple[Face, float]]:
    top = _PREVIEW_EDGE_MM
    for face in shown:
        yield face, top
        top += face.height_mm + _PREVIEW_EDGE_MM


def label_preview(
    text: LabelText, stock: Stock, *, bottle: int = 1, bottles: int = 1, fonts: Sequence[Path] = ()
) -> LabelPreview:
    """Return a picture of one bottle's label, or labels one below the other, with their edges drawn.

    It renders the PDF page, so it shows exactly what prints. Raises as label_sheet.
    """
    _check("bottles", bottles, 1, 99999)
    _check("bottle", bottle, 1, bottles)
    with _press(text, stock, bottles, fonts) as press:
        shown = press.faces(bottle)
        width = shown[0].width_mm + 2 * _PREVIEW_EDGE_MM
        height = sum(face.height_mm + _PREVIEW_EDGE_MM for face in shown) + _PREVIEW_EDGE_MM
        press.pdf.add_page(format=(width, height))
        for face, top in _stacked(shown):
            draw_outline(press.pdf, _PREVIEW_EDGE_MM, top, face.width_mm, face.height_mm)
            draw_face(press.pdf, face, _PREVIEW_EDGE_MM, top)
        scale = min(_PREVIEW_PIXELS_PER_MM, _PREVIEW_LARGEST_PX / max(width, height))
        png, width_px, height_px = page_png(bytes(press.pdf.output()), scale)
        return LabelPreview(
            png=png,
            width_px=width_px,
            height_px=height_px,
            missing_glyphs=press.letters.missing,
            continued=len(shown) > 1,
            link_left_out=press.arrangement.link_left_out,
        )
