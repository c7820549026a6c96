"""Label sheets and QR symbols against the standards, measured on the finished PDF by another library."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from fontTools.ttLib import TTFont

from bot.documents.labels.boxes import MM_PER_POINT
from bot.documents.labels.fonts import main_font_files
from bot.documents.labels.labels import label_sheet
from bot.documents.labels.layout import SMALLEST_PT
from bot.documents.labels.qr import qr_squares
from bot.documents.labels.sheets import STOCKS
from tests.documents.labels.label_texts import LINK, PLAIN
from tests.documents.reading import Page, read_pages, read_symbols
from tests.outside.check import Check, Mark

_ISO_216 = "ISO 216, size A4 (as given in public paper size tables)"
_ANSI = "ANSI/ASME Y14.1, size A: 8.5 x 11 inches (as given in public paper size tables)"
_QUIET = "ISO/IEC 18004, quiet zone (as stated on the QR Code maker's own site, denso-wave.com)"
_CAPACITY = "a public table of QR capacities (ryanagibson.com): version 4, level M, up to 62 bytes"
_LEGIBLE = (
    "guidance on ec.europa.eu to Regulation (EU) 1169/2011, article 13: x-height 1.2 mm, on small packs "
    "0.9 mm, as a yardstick"
)
# Short words directly beside and above the symbol.
_CROWDED = replace(PLAIN, allergens="lime " * 110, storage="", cautions=(), made_by="", bar="")
_STOCK = STOCKS["roll 62"]
_A4, _LETTER = "a4-2x7 99x38", "letter-3x10 67x25"


def _page(stock_name: str) -> Page:
    return read_pages(label_sheet(PLAIN, STOCKS[stock_name]).pdf, 2)[0]


def _side(stock_name: str, side: str) -> Callable[[], float]:
    return lambda: float(getattr(_page(stock_name), side))


def _quiet_modules(edge: str) -> Callable[[], float]:
    """Modules of white beside the symbol on the printed page, as the decoder locates the symbol."""

    def measure() -> float:
        page = read_pages(label_sheet(_CROWDED, _STOCK).pdf, 40)[0]
        symbol = read_symbols(page.picture)[0]
        position = symbol.position
        left, top = position.top_left.x, position.top_left.y
        right, bottom = position.bottom_right.x, position.bottom_right.y
        module = (right - left) / (17 + 4 * qr_squares(LINK).version)
        ink = page.picture.point(lambda grey: 255 if grey < 128 else 0)
        width, height = ink.size
        middle = round(module)  # skips the symbol's own blurred edge
        strips = {
            "left": (0, top, left - middle // 2, bottom),
            "right": (right + middle // 2, top, width, bottom),
            "above": (left, 0, right, top - middle // 2),
            "below": (left, bottom + middle // 2, right, height),
        }
        box = ink.crop(strips[edge]).getbbox()
        if edge == "left":
            white = left - (box[2] if box else 0)
        elif edge == "right":
            white = (right + middle // 2 + box[0] if box else width) - right
        elif edge == "above":
            white = top - (box[3] if box else 0)
        else:
            white = (bottom + middle // 2 + box[1] if box else height) - bottom
        return float(white / module)

    return measure


def _x_height_mm() -> float:
    with TTFont(main_font_files()[0]) as font:
        return float(font["glyf"]["x"].yMax / font["head"].unitsPerEm * SMALLEST_PT * MM_PER_POINT)


def _level() -> str:
    page = read_pages(label_sheet(_CROWDED, _STOCK).pdf, 20)[0]
    return "M or better" if read_symbols(page.picture)[0].ec_level in {"M", "Q", "H"} else "less"


def _version(length: int) -> Callable[[], float]:
    return lambda: float(qr_squares("x" * length).version)


CHECKS = [
    Check(
        "labels", "page width of an A4 sheet", _ISO_216, Mark.READ, 210.0, _side(_A4, "width_mm"), "mm", 0.01
    ),
    Check(
        "labels",
        "page height of an A4 sheet",
        _ISO_216,
        Mark.READ,
        297.0,
        _side(_A4, "height_mm"),
        "mm",
        0.01,
    ),
    Check(
        "labels",
        "page width of a Letter sheet",
        _ANSI,
        Mark.READ,
        215.9,
        _side(_LETTER, "width_mm"),
        "mm",
        0.01,
    ),
    Check(
        "labels",
        "page height of a Letter sheet",
        _ANSI,
        Mark.READ,
        279.4,
        _side(_LETTER, "height_mm"),
        "mm",
        0.01,
    ),
    *(
        Check(
            "labels",
            f"white {edge} of the symbol, at least",
            _QUIET,
            Mark.READ,
            (3.9, 200),
            _quiet_modules(edge),
            "modules",
        )
        for edge in ("left", "right", "above", "below")
    ),
    Check(
        "labels",
        "error level of the printed symbol",
        "common practice, no source",
        Mark.PRACTICE,
        "M or better",
        _level,
    ),
    Check("labels", "symbol version for 62 bytes", _CAPACITY, Mark.READ, 4, _version(62)),
    Check("labels", "symbol version for 63 bytes", _CAPACITY, Mark.READ, 5, _version(63)),
    Check(
        "labels",
        "height of the letter x in the smallest letters",
        _LEGIBLE,
        Mark.READ,
        (0.9, 1.2),
        _x_height_mm,
        "mm",
    ),
]
