"""Draw the README's pictures and compare them with the stored ones."""

from __future__ import annotations

import io
import tempfile
from collections.abc import Iterator
from pathlib import Path

from PIL import Image, ImageChops, ImageStat

from tests.demo_bar import demo_bar

FOLDER = Path(__file__).parent
# The message to the demo bar for each picture.
ASKED = {
    "waste": "week picture",
    "matters": "cost grapefruit mist picture",
    "price": "price oranges picture",
    "map": "clear grapefruit mist picture",
}
LOOKS = ("light", "dark")
# Two pixels per point of a phone 380 points wide, and few colours: small files that are sharp on any screen.
_WIDTH = 760
_COLOURS = 48
_SMALL = 95  # wide; at this size the smoothing of letters makes no difference


def path(name: str, look: str) -> Path:
    """Return the path of a picture."""
    return FOLDER / f"{name}-{look}.png"


def drawn() -> Iterator[tuple[Path, bytes]]:
    """Draw every picture with the program, with its place."""
    with tempfile.TemporaryDirectory() as folder, demo_bar(Path(folder)) as robin:
        for look in LOOKS:
            robin.says(f"bar pictures {look}")
            for name, line in ASKED.items():
                (said,) = robin.says(line)
                yield path(name, look), smaller(said.files[0].content)


def smaller(png: bytes) -> bytes:
    """Return a picture in the README's size."""
    with Image.open(io.BytesIO(png)) as full:
        height = round(full.height * _WIDTH / full.width)
        small = full.convert("RGB").resize((_WIDTH, height), Image.Resampling.LANCZOS)
    out = io.BytesIO()
    small.quantize(_COLOURS, dither=Image.Dither.NONE).save(out, "PNG", optimize=True)
    return out.getvalue()


def difference(one: bytes, other: bytes) -> float:
    """Return the difference of two pictures: 0 for the same, 255 for black and white; 255 for other sizes."""
    first, second = (_seen(png) for png in (one, other))
    if first.size != second.size:
        return 255.0
    return max(ImageStat.Stat(ImageChops.difference(first, second)).mean)


def _seen(png: bytes) -> Image.Image:
    with Image.open(io.BytesIO(png)) as full:
        return full.convert("RGB").resize((_SMALL, round(full.height * _SMALL / full.width)))
