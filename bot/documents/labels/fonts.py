"""The fonts of labels: find the font files, and report missing characters."""

from __future__ import annotations

import importlib.util
import unicodedata
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, cast

from bot.documents.labels.boxes import MM_PER_POINT
from bot.documents.labels.sheets import LabelError

if TYPE_CHECKING:
    from fpdf import FPDF
    from fpdf.fonts import TTFFont

FAMILY = "label"
_PLAIN = "labelplain"
CONDENSED_PERCENT = 90.0  # the face's own condensed cut is its regular one at 0.9 of the width
MISSING_SIGN = "\u25a1"  # an empty square replaces a character without a glyph
_WIDEST_EM = 3.0  # a glyph wider than this many times its size could outgrow a narrow label
_MOST_ACCENTS = 3  # per letter; more would leave the line
_JOINERS = "\u200c\u200d"


class FontsMissingError(LabelError):
    """The font files of matplotlib are missing from its package."""


def _package_folder(package: str) -> Path | None:
    # find_spec of a top-level package does not import it.
    found = importlib.util.find_spec(package)
    return Path(found.origin).parent if found and found.origin else None


def main_font_files() -> tuple[Path, Path]:
    """Regular and bold DejaVu Sans (Latin, Greek, Cyrillic, Arabic, Hebrew), as bundled with matplotlib.

    Raises:
        FontsMissingError: the files are missing.
    """
    folder = _package_folder("matplotlib")
    if folder:
        fonts = folder / "mpl-data" / "fonts" / "ttf"
        files = fonts / "DejaVuSans.ttf", fonts / "DejaVuSans-Bold.ttf"
        if all(file.is_file() for file in files):
            return files
    raise FontsMissingError


def ideograph_font_files() -> list[Path]:
    """Noto Sans CJK (Chinese, Japanese, Korean), if its optional package is installed."""
    folder = _package_folder("noto_cjk_sans_jp_regular")
    return sorted(folder.glob("*.otf")) if folder else []


def _tidy(text: str) -> str:
    """Compose accents, collapse spaces, and remove characters that have an effect but no shape."""
    kept = []
    for character in unicodedata.normalize("NFC", text):
        category = unicodedata.category(character)
        if category in {"Cc", "Zl", "Zp"} or character == "\u3000":
            kept.append(" ")
        elif category != "Cf" or character in _JOINERS:
            kept.append(character)
    words = "".join(kept).split(" ")  # split on the plain space only: no-break spaces stay
    return " ".join(word for word in words if word)


class Letters:
    """The fonts of one document; measures text, and replaces characters without a glyph.

    `missing` collects the characters without a glyph, each once, in order of appearance. More font files are
    searched only when a character needs them, `extra_fonts` first. The files stay open until close().

    Raises:
        FontsMissingError: the main font files are missing.
    """

    def __init__(self, pdf: FPDF, extra_fonts: Sequence[Path] = ()) -> None:
        self._pdf = pdf
        self.missing = ""
        regular, bold = main_font_files()
        pdf.add_font(FAMILY, "", regular)
        pdf.add_font(FAMILY, "B", bold)
        self._untried = [*extra_fonts, *ideograph_font_files()]
        self._fallbacks: list[str] = []
        self._add_fallback(regular)  # characters that only the regular cut has, inside bold text
        self._widths: dict[tuple[str, bool], float] = {}
        pdf.set_stretching(CONDENSED_PERCENT)
        # Ligatures are off so that copied text matches the input.
        pdf.set_text_shaping(use_shaping_engine=True, features={"liga": False, "clig": False})

    def close(self) -> None:
        """Close the font files; nothing can be measured or drawn with them afterwards."""
        for font in self._pdf.fonts.values():
            cast("TTFFont", font).ttfont.close()

    def _add_fallback(self, file: Path) -> None:
        name = f"{_PLAIN}{len(self._fallbacks)}"
        self._pdf.add_font(name, "", file)
        self._fallbacks.append(name)
        self._pdf.set_fallback_fonts(self._fallbacks, exact_match=False)

    def _has(self, family: str, character: str) -> bool:
        font = cast("TTFFont", self._pdf.fonts[family])  # contains only files
        code = ord(character)
        return code in font.cmap and font.cw[code] <= _WIDEST_EM * 1000

    def _has_glyph(self, character: str) -> bool:
        if any(self._has(family, character) for family in self._fallbacks):
            return True
        while self._untried:
            self._add_fallback(self._untried.pop(0))
            if self._has(self._fallbacks[-1], character):
                return True
        return False

    def clean(self, text: str) -> str:
        """Return the text in printable form; characters without a glyph become an empty square."""
        printable = []
        accents = 0
        for character in _tidy(text):
            accents = accents + 1 if unicodedata.category(character) in {"Mn", "Me"} else 0
            if accents <= _MOST_ACCENTS and (character == " " or self._has_glyph(character)):
                printable.append(character)
                continue
            if character in _JOINERS:
                continue
            if character not in self.missing:
                self.missing += character
            if not accents:
                printable.append(MISSING_SIGN)
        shown = "".join(printable)
        # Removing an accent may leave two spaces or two characters that now compose; each pass shortens the
        # text.
        return shown if _tidy(shown) == shown else self.clean(shown)

    def width_mm(self, text: str, size_pt: float, bold: bool) -> float:
        """Return the drawn width of a line in mm."""
        key = (text, bold)
        if key not in self._widths:
            self._pdf.set_font(FAMILY, "B" if bold else "", 100)
            self._widths[key] = self._pdf.get_string_width(text) / (100 * MM_PER_POINT)
        return self._widths[key] * size_pt * MM_PER_POINT
