"""The picture of labels in the README: a printed sheet beside the preview in the chat.

python -m tests.label_picture            draws it again

Both come from a batch made in a real dialogue, and from the PDF sent there.
"""

from __future__ import annotations

import argparse
import io
import tempfile
from datetime import UTC, datetime
from pathlib import Path

import pypdfium2
from PIL import Image

from storage import migrate
from storage.store import Store
from tests.house import BOT_NAME, Hands, House

PICTURE = Path(__file__).parents[1] / "deploy" / "pictures" / "labels.png"
_EVENING = datetime(2026, 11, 25, 18, 0, tzinfo=UTC)
_MIST = (
    "new formula Grapefruit mist\ngrapefruit oil 12 ml\npropylene glycol 22 ml\nneutral spirit 96 % 62 ml\n"
    "replaces grapefruit\nkind aroma mist"
)
_HEIGHT, _GAP, _GREYS = 760, 24, 8
_TABLE = 205


def made() -> bytes:
    """Return the picture as a PNG with a few greys."""
    with tempfile.TemporaryDirectory() as folder:
        store = Store(f"sqlite:///{Path(folder) / 'bar.sqlite'}")
        migrate.upgrade(store)
        house = House(store, Hands(_EVENING))
        house.conversation.deep_link = lambda payload: f"https://t.me/{BOT_NAME}?start={payload}"
        ana = house.open_bar()
        for line in (
            _MIST,
            "grade grapefruit oil yes",
            "grade propylene glycol yes",
            "batch grapefruit mist to 14 x 50 ml",
        ):
            ana.says(line)
        house.clock.turn(hours=25)
        ana.says("check 1 clear")
        preview, sheet = ana.says("label 1 a4-2x7 x14")[0].files
        house.close()
    return _side_by_side(_page(sheet.content), Image.open(io.BytesIO(preview.content)).convert("L"))


def _page(pdf: bytes) -> Image.Image:
    document = pypdfium2.PdfDocument(pdf)
    try:
        page = document[0]
        picture: Image.Image = page.render(scale=_HEIGHT / page.get_height(), grayscale=True).to_pil()
        return picture.convert("L")
    finally:
        document.close()


def _side_by_side(page: Image.Image, preview: Image.Image) -> bytes:
    scaled = preview.resize((640, round(640 * preview.height / preview.width)), Image.Resampling.LANCZOS)
    width = page.width + scaled.width + 3 * _GAP
    whole = Image.new("L", (width, _HEIGHT + 2 * _GAP), _TABLE)
    whole.paste(page, (_GAP, _GAP))
    whole.paste(scaled, (page.width + 2 * _GAP, _GAP))
    out = io.BytesIO()
    whole.quantize(_GREYS).save(out, "PNG", optimize=True)
    return out.getvalue()


def main() -> None:
    """Draw the picture again."""
    PICTURE.parent.mkdir(exist_ok=True)
    PICTURE.write_bytes(made())


if __name__ == "__main__":
    argparse.ArgumentParser(prog="python -m tests.label_picture", description=__doc__).parse_args()
    main()
