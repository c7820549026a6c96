"""A chart as one A4 page in PDF, with text that can be searched."""

from __future__ import annotations

import io

from bot.documents.charts.canvas import Sheet
from bot.documents.labels.drawing import PDFIUM_LOCK

_A4 = (595.3, 841.9)  # points, ISO 216: 210 x 297 mm
_MARGIN = 28.0


def a4(sheet: Sheet) -> bytes:
    """Return the card as large as fits on one A4 page."""
    import matplotlib as mpl  # noqa: PLC0415 - slow to load, see canvas
    import pypdfium2  # noqa: PLC0415 - loaded only when a page is made

    drawn = io.BytesIO()
    with mpl.rc_context({"pdf.fonttype": 42}):
        sheet.figure().savefig(drawn, format="pdf", metadata={"CreationDate": None})
    with PDFIUM_LOCK:
        card, page = pypdfium2.PdfDocument(drawn.getvalue()), pypdfium2.PdfDocument.new()
        width, height = card[0].get_size()
        scale = min((_A4[0] - 2 * _MARGIN) / width, (_A4[1] - 2 * _MARGIN) / height)
        placed = card.page_as_xobject(0, page).as_pageobject()
        left, low = (_A4[0] - width * scale) / 2, _A4[1] - _MARGIN - height * scale
        placed.set_matrix(pypdfium2.PdfMatrix().scale(scale, scale).translate(left, low))
        sheet_page = page.new_page(*_A4)
        sheet_page.insert_obj(placed)
        sheet_page.gen_content()
        out = io.BytesIO()
        page.save(out)
        page.close()
        card.close()
    return out.getvalue()
