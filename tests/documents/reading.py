"""Read printed files back with independent tools."""

from __future__ import annotations

import shutil
import subprocess
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pypdfium2
import zxingcpp
from PIL import Image

MM_PER_POINT = 25.4 / 72


@dataclass(frozen=True)
class Page:
    """One page: size in mm, words, and a grey picture at a known scale."""

    width_mm: float
    height_mm: float
    text: str
    picture: Image.Image
    pixels_per_mm: float

    def crop_mm(self, left: float, top: float, width: float, height: float) -> Image.Image:
        x, y, right, bottom = (
            round(corner * self.pixels_per_mm) for corner in (left, top, left + width, top + height)
        )
        return self.picture.crop((x, y, right, bottom))

    def ink_outside(self, areas: list[tuple[float, float, float, float]]) -> tuple[int, int, int, int] | None:
        """The corners of anything printed outside `areas` (left, top, width, height in mm), or None."""
        rest = self.picture.point(lambda grey: 255 if grey < 160 else 0)
        for left, top, width, height in areas:
            corners = [round(value * self.pixels_per_mm) for value in (left, top, left + width, top + height)]
            rest.paste(0, (corners[0], corners[1], corners[2], corners[3]))
        return rest.getbbox()


def read_pages(pdf: bytes, pixels_per_mm: float = 8.0) -> list[Page]:
    document = pypdfium2.PdfDocument(pdf)
    pages = []
    try:
        for number in range(len(document)):
            page = document[number]
            left, bottom, right, top = page.get_mediabox()
            picture = page.render(scale=pixels_per_mm * MM_PER_POINT, grayscale=True).to_pil()
            textpage = page.get_textpage()
            text = textpage.get_text_range()
            textpage.close()
            pages.append(
                Page(
                    (right - left) * MM_PER_POINT,
                    (top - bottom) * MM_PER_POINT,
                    text,
                    picture,
                    pixels_per_mm,
                )
            )
            page.close()
    finally:
        document.close()
    return pages


def read_symbols(picture: Image.Image) -> list[Any]:
    """Every QR symbol that the decoder finds in a picture."""
    return list(
        zxingcpp.read_barcodes(picture, formats=zxingcpp.BarcodeFormats(zxingcpp.BarcodeFormat.QRCode))
    )


def poppler(tool: str, *options: str, pdf: bytes, folder: Path) -> str | None:
    """The output of a poppler tool for a PDF, or None if poppler is not installed."""
    program = shutil.which(tool)
    if program is None:
        return None
    file = folder / "file.pdf"
    file.write_bytes(pdf)
    target = ["-"] if tool == "pdftotext" else []
    done = subprocess.run([program, *options, str(file), *target], check=True, capture_output=True, text=True)
    return done.stdout
