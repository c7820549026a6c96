"""QR symbols as plain squares, with the quiet zone that readers need."""

from __future__ import annotations

import io
from dataclasses import dataclass
from functools import lru_cache

from bot.documents.labels.sheets import LabelError

QUIET_MODULES = 4  # ISO/IEC 18004: the quiet zone of a QR symbol is four modules wide on every side
SMALLEST_MODULE_MM = 0.4  # common practice for phone cameras at arm's length
# Whole dots of a 203 dpi print head (0.125 mm), largest first; the smallest is slightly over three dots.
MODULE_SIZES_MM = (0.75, 0.625, 0.5, SMALLEST_MODULE_MM)


@dataclass
class LinkError(LabelError):
    """A link too long for any QR symbol, or empty; `length` is the number of characters."""

    length: int


@dataclass(frozen=True, slots=True)
class QrSquares:
    """A QR symbol: rows of dark (True) and light modules, without the quiet zone.

    `version` (1 to 40) and `level` ('M', 'Q' or 'H') are those of ISO/IEC 18004.
    """

    rows: tuple[tuple[bool, ...], ...]
    version: int
    level: str

    @property
    def modules(self) -> int:
        """The number of modules along one side, including the quiet zone on both sides."""
        return len(self.rows) + 2 * QUIET_MODULES

    def runs(self) -> list[tuple[int, int, int]]:
        """Dark runs as (row, first column, length), counted from the corner of the quiet zone."""
        found = []
        for down, row in enumerate(self.rows):
            start = None
            for across, dark in enumerate((*row, False)):
                if dark and start is None:
                    start = across
                elif not dark and start is not None:
                    found.append((down + QUIET_MODULES, start + QUIET_MODULES, across - start))
                    start = None
        return found


@lru_cache(maxsize=64)
def qr_squares(link: str) -> QrSquares:
    """Return the smallest QR symbol for `link` at error level M, or better if that takes no more space.

    Raises:
        LinkError: the link is empty or too long for a symbol.
    """
    import segno  # noqa: PLC0415 - loaded only when a symbol is made

    if not link:
        raise LinkError(0)
    try:
        symbol = segno.make_qr(link, error="m", boost_error=True)
    except segno.DataOverflowError:
        raise LinkError(len(link)) from None
    rows = tuple(tuple(bool(module) for module in row) for row in symbol.matrix)
    return QrSquares(rows, int(symbol.version), str(symbol.error))


def qr_png(link: str, module_px: int = 12) -> bytes:
    """Return a sharp PNG of the QR symbol for `link`, quiet zone included, `module_px` pixels per module.

    Raises:
        LinkError: the link is empty or too long for a symbol.
    """
    from PIL import Image  # noqa: PLC0415 - loaded only when a picture is made

    squares = qr_squares(link)
    small = Image.new("1", (squares.modules, squares.modules), 1)
    for row, column, length in squares.runs():
        for across in range(column, column + length):
            small.putpixel((across, row), 0)
    side = squares.modules * module_px
    out = io.BytesIO()
    small.resize((side, side), Image.Resampling.NEAREST).save(out, "PNG", optimize=True)
    return out.getvalue()
