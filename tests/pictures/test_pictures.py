"""The pictures in the README are what the program draws today, from the demo bar."""

from __future__ import annotations

import io

import pytest
from PIL import Image

from bot.documents.charts.canvas import DARK, LIGHT
from tests.pictures.draw import ASKED, FOLDER, LOOKS, difference, drawn, path
from tests.transcript import README

# Letters' edges differ a little from one version of the drawing library to the next; another bar does not
# come that near (see the last test).
_SAME = 2.0
_MOST_BYTES = 60_000


@pytest.mark.long
def test_each_is_what_the_program_draws_today() -> None:
    for place, png in drawn():
        apart = difference(png, place.read_bytes())
        assert apart < _SAME, f"{place.name}: renew it with python -m tests.pictures --write"


def test_the_readme_shows_each_of_them_in_both_looks_and_no_other_lies_there() -> None:
    shown = README.read_text("utf-8")
    files = {path(name, look) for name in ASKED for look in LOOKS}
    assert set(FOLDER.glob("*.png")) == files
    for one in files:
        assert f"tests/pictures/{one.name}" in shown
    assert "python -m tests.pictures --write" in shown


@pytest.mark.parametrize("look", LOOKS)
def test_each_is_small_and_as_wide_as_a_phone_at_two_pixels_a_point(look: str) -> None:
    card = (LIGHT if look == "light" else DARK).card
    for name in ASKED:
        png = path(name, look).read_bytes()
        assert len(png) < _MOST_BYTES
        with Image.open(io.BytesIO(png)) as found:
            assert found.width == 2 * 380
            corner = found.convert("RGB").getpixel((0, 0))
        assert isinstance(corner, tuple)
        wanted = tuple(int(card[at : at + 2], 16) for at in (1, 3, 5))
        assert max(abs(one - other) for one, other in zip(corner, wanted, strict=True)) <= 4


def test_what_is_another_picture_is_told_apart() -> None:
    light, dark = (path("waste", look).read_bytes() for look in LOOKS)
    assert difference(light, light) == 0
    assert difference(light, dark) > 100
    assert difference(light, path("price", "light").read_bytes()) > _SAME
    # One bar of one week, a fifth of the height taller.
    with Image.open(io.BytesIO(light)) as found:
        changed = found.convert("RGB")
    changed.paste((205, 124, 32), (100, 250, 150, 400))
    out = io.BytesIO()
    changed.save(out, "PNG")
    assert difference(light, out.getvalue()) > 0.5
