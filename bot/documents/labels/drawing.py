"""Draw laid-out labels, black on white, into a PDF, and a PDF page into a picture."""

from __future__ import annotations

import io
import threading
from typing import TYPE_CHECKING

from bot.documents.labels.boxes import Box, Face, QrBox, RuleBox, TextBox
from bot.documents.labels.fonts import FAMILY
from bot.documents.labels.qr import qr_squares

if TYPE_CHECKING:
    from fpdf import FPDF

_FRAME_MM = 0.35
_CUT_LINE_MM = 0.1
# The renderer's library keeps global state and is not thread-safe.
PDFIUM_LOCK = threading.Lock()


def new_document(language: str) -> FPDF:
    """Return an empty PDF in millimetres that asks to be printed at its true size."""
    from fpdf import FPDF, ViewerPreferences  # noqa: PLC0415 - loaded only when a label is made

    pdf = FPDF(unit="mm")
    pdf.set_auto_page_break(auto=False)
    pdf.set_margin(0)
    pdf.c_margin = 0
    if language:
        pdf.set_lang(language)
    # A viewer that fits pages to the printer would shift every label.
    pdf.viewer_preferences = ViewerPreferences(print_scaling="None")
    return pdf


def draw_face(pdf: FPDF, face: Face, left: float, top: float) -> None:
    """Draw one label with its corner at `left`, `top` of the current page, in mm."""
    for box in face.boxes:
        _draw_box(pdf, box, left + box.left, top + box.top)


def draw_outline(pdf: FPDF, left: float, top: float, width: float, height: float) -> None:
    """Draw a thin line at the label's edge, in mm."""
    pdf.set_line_width(_CUT_LINE_MM)
    pdf.rect(left, top, width, height)


def _draw_box(pdf: FPDF, box: Box, x: float, y: float) -> None:
    if isinstance(box, TextBox):
        pdf.set_font(FAMILY, "B" if box.bold else "", box.size_pt)
        pdf.set_xy(x, y)
        pdf.cell(box.width, box.height, box.text, align="C" if box.framed else "L")
        if box.framed:
            pdf.set_line_width(_FRAME_MM)
            pdf.rect(x, y, box.width, box.height)
    elif isinstance(box, RuleBox):
        pdf.set_fill_color(0)
        pdf.rect(x, y, box.width, box.height, style="F")
    elif isinstance(box, QrBox):
        _draw_squares(pdf, box, x, y)


def _draw_squares(pdf: FPDF, box: QrBox, x: float, y: float) -> None:
    from fpdf.drawing import PaintedPath  # noqa: PLC0415 - loaded only when a label is made

    # One path for the whole symbol: separate squares show hairlines on some screens.
    path = PaintedPath()
    path.style.fill_color = "#000000"
    path.style.stroke_color = None
    side = box.module_mm
    for row, column, length in qr_squares(box.link).runs():
        path.rectangle(x + column * side, y + row * side, length * side, side)
    with pdf.drawing_context() as drawing:
        drawing.add_item(path, clone=False)


def page_png(pdf: bytes, pixels_per_mm: float, page: int = 0) -> tuple[bytes, int, int]:
    """Return one page of a PDF as a grey PNG, with its width and height in pixels."""
    import pypdfium2  # noqa: PLC0415 - loaded only when a picture is made

    with PDFIUM_LOCK:
        document = pypdfium2.PdfDocument(pdf)
        try:
            picture = document[page].render(scale=pixels_per_mm * 25.4 / 72, grayscale=True).to_pil()
            out = io.BytesIO()
            picture.save(out, "PNG", optimize=True)
        finally:
            document.close()
    return out.getvalue(), picture.width, picture.height
