"""Tests of QR symbols, read back by an independent decoder."""

from __future__ import annotations

import io
import string

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image

from bot.documents.labels.qr import MODULE_SIZES_MM, SMALLEST_MODULE_MM, LinkError, qr_png, qr_squares
from tests.documents.labels.label_texts import LINK
from tests.documents.reading import read_symbols
from tests.examples import examples

PAYLOAD = st.text(string.ascii_letters + string.digits + "_-", min_size=1, max_size=64)


@examples(10)
@given(PAYLOAD)
def test_every_deep_link_reads_back(payload: str) -> None:
    link = f"https://t.me/corner_bar_ledger_bot?start={payload}"
    found = read_symbols(Image.open(io.BytesIO(qr_png(link, 4))))
    assert [symbol.text for symbol in found] == [link]
    assert found[0].ec_level in {"M", "Q", "H"}


def test_the_quiet_zone_is_four_white_modules_on_every_side() -> None:
    picture = Image.open(io.BytesIO(qr_png(LINK, 5))).convert("L")
    dark = picture.point(lambda grey: 255 if grey < 128 else 0).getbbox()
    side = picture.width
    assert picture.height == side
    assert dark == (20, 20, side - 20, side - 20)


def test_runs_cover_the_dark_modules_and_no_others() -> None:
    squares = qr_squares(LINK)
    covered = {
        (row - 4, column - 4 + step) for row, column, length in squares.runs() for step in range(length)
    }
    dark = {(row, column) for row, line in enumerate(squares.rows) for column, one in enumerate(line) if one}
    assert covered == dark


def test_side_follows_the_version() -> None:
    squares = qr_squares(LINK)
    assert len(squares.rows) == 17 + 4 * squares.version  # the standard's own rule
    assert squares.modules == len(squares.rows) + 8


def test_no_module_is_smaller_than_the_smallest() -> None:
    assert min(MODULE_SIZES_MM) == SMALLEST_MODULE_MM == 0.4
    assert sorted(MODULE_SIZES_MM, reverse=True) == list(MODULE_SIZES_MM)


@pytest.mark.parametrize("link", ["", "x" * 5000])
def test_links_that_no_symbol_holds_are_refused(link: str) -> None:
    with pytest.raises(LinkError) as refused:
        qr_squares(link)
    assert refused.value.length == len(link)
