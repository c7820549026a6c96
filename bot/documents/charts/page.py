"""Cards as one printed page in PDF, with text that can be searched."""

from __future__ import annotations

import io
from collections.abc import Sequence

from bot.documents.charts.canvas import Sheet
from bot.documents.labels.drawing import PDFIUM_LOCK

# Points. ISO 216: 297 x 210 mm; ANSI/ASME Y14.1: 11 x 8.5 inches.
_PAPERS = {"A4": (841.9, 595.3), "Letter": (792.0, 612.0)}
_MARGIN, _GAP = 28.0, 14.0


def landscape(columns: Sequence[Sheet], paper: str) -> bytes:
    """Return the cards side by side on one page of "A4" or "Letter", as large as they fit."""
    import pypdfium2  # noqa: PLC0415 - loaded only when a page is made

    drawn = [_drawn(one) for one in columns]
    width, height = _PAPERS[paper]
    with PDFIUM_LOCK:
        page = pypdfium2.PdfDocument.new()
        cards = [pypdfium2.PdfDocument(one) for one in drawn]
        sizes = [card[0].get_size() for card in cards]
        scale = min(
            (width - 2 * _MARGIN - _GAP * (len(sizes) - 1)) / sum(size[0] for size in sizes),
            (height - 2 * _MARGIN) / max(size[1] for size in sizes),
        )
        sheet_page = page.new_page(width, height)
        left = (width - scale * sum(size[0] for size in sizes) - _GAP * (len(sizes) - 1)) / 2
        for card, size in zip(cards, sizes, strict=True):
            placed = card.page_as_xobject(0, page).as_pageobject()
            low = height - _MARGIN - size[1] * scale
            placed.set_matrix(pypdfium2.PdfMatrix().scale(scale, scale).translate(left, low))
            sheet_page.insert_obj(placed)
            left += size[0] * scale + _GAP
        sheet_page.gen_content()
        out = io.BytesIO()
        page.save(out)
        page.close()
        for card in cards:
            card.close()
    return out.getvalue()


def _drawn(sheet: Sheet) -> bytes:
    import matplotlib as mpl  # noqa: PLC0415 - slow to load, see canvas

    out = io.BytesIO()
    with mpl.rc_context({"pdf.fonttype": 42}):
        sheet.figure(on_paper=True).savefig(out, format="pdf", metadata={"CreationDate": None})
    return out.getvalue()
