"""Tests of printed labels, read back from the PDF and the picture by independent tools."""

from __future__ import annotations

import io
import subprocess
import sys
from dataclasses import replace
from pathlib import Path
from typing import cast

import pytest
from hypothesis import HealthCheck, given
from hypothesis import strategies as st
from PIL import Image

from bot.documents.labels.labels import MOST_COPIES, LabelText, NumberingError, label_preview, label_sheet
from bot.documents.labels.sheets import STOCKS, CountError, Roll, Sheet, Stock
from tests.documents.labels.label_texts import IDEOGRAPHS, LINK, LONG, PLAIN, SCRIPTS
from tests.documents.reading import Page, poppler, read_pages, read_symbols
from tests.examples import examples

A4 = cast("Sheet", STOCKS["a4-3x7 64x38"])
# The short part prints on the smallest and the largest labels, and on a roll.
_IN_SHORT = {"a4-5x13 38x21", "letter-2x3 102x85", "roll 57x32"}
EVERY_STOCK = [
    pytest.param(stock, id=name, marks=[] if name in _IN_SHORT else [pytest.mark.long])
    for name, stock in STOCKS.items()
]


def squeezed(text: str) -> str:
    return "".join(text.split())


def label_areas(
    stock: Sheet, first: int, count: int, shrink: float
) -> list[tuple[float, float, float, float]]:
    return [
        (
            stock.corner_mm(index)[0] + shrink,
            stock.corner_mm(index)[1] + shrink,
            stock.label_width_mm - 2 * shrink,
            stock.label_height_mm - 2 * shrink,
        )
        for index in range(first, first + count)
    ]


def assert_ink_inside(page: Page, areas: list[tuple[float, float, float, float]]) -> None:
    assert page.ink_outside(areas) is None


@pytest.mark.parametrize("stock", EVERY_STOCK)
def test_pages_have_the_size_of_the_stock(stock: Stock, tmp_path: Path) -> None:
    made = label_sheet(PLAIN, stock, copies=2)
    pages = read_pages(made.pdf, 2)
    assert len(pages) == made.pages
    for page in pages:
        if isinstance(stock, Sheet):
            assert page.width_mm == pytest.approx(stock.page_width_mm, abs=0.02)
            assert page.height_mm == pytest.approx(stock.page_height_mm, abs=0.02)
        else:
            assert page.width_mm == pytest.approx(stock.width_mm, abs=0.02)
            if stock.length_mm:
                assert page.height_mm == pytest.approx(stock.length_mm, abs=0.02)
            else:
                assert stock.shortest_mm <= page.height_mm <= stock.longest_mm
    told = poppler("pdfinfo", "-box", pdf=made.pdf, folder=tmp_path)
    if told:
        first = pages[0]
        box = next(line for line in told.splitlines() if line.startswith("MediaBox")).split()[1:]
        points = [float(value) for value in box]
        assert points[2] * 25.4 / 72 == pytest.approx(first.width_mm, abs=0.02)
        assert points[3] * 25.4 / 72 == pytest.approx(first.height_mm, abs=0.02)


@pytest.mark.parametrize("stock", EVERY_STOCK)
@pytest.mark.parametrize(
    "text", [pytest.param(PLAIN, id="plain", marks=pytest.mark.long), pytest.param(LONG, id="long")]
)
def test_every_symbol_opens_the_batch_as_a_thermal_printer_prints_it(stock: Stock, text: LabelText) -> None:
    made = label_sheet(text, stock, copies=3)
    assert not made.link_left_out
    pages = read_pages(made.pdf, 203 / 25.4)  # the dots of a common print head, black or white only
    printed = [page.picture.point(lambda grey: 255 if grey > 127 else 0) for page in pages]
    found = [symbol for picture in printed for symbol in read_symbols(picture)]
    assert [symbol.text for symbol in found] == [LINK] * 3
    assert {symbol.ec_level for symbol in found} <= {"M", "Q", "H"}


@pytest.mark.parametrize("stock", EVERY_STOCK)
def test_all_words_can_be_read_back(stock: Stock, tmp_path: Path) -> None:
    made = label_sheet(LONG, stock)
    texts = ["".join(page.text for page in read_pages(made.pdf, 1))]
    told = poppler("pdftotext", "-raw", pdf=made.pdf, folder=tmp_path)
    if told:
        texts.append(told)
    for text in texts:
        for part in (LONG.name, LONG.batch, LONG.flammable, LONG.storage, *LONG.ingredients.split()):
            assert squeezed(part) in squeezed(text)


@pytest.mark.long
@pytest.mark.parametrize("name", [*SCRIPTS.values(), *IDEOGRAPHS.values()], ids=[*SCRIPTS, *IDEOGRAPHS])
def test_names_in_other_scripts_can_be_read_back(name: str) -> None:
    made = label_sheet(replace(PLAIN, name=name, link=""), Roll("own", 100, 60))
    assert made.missing_glyphs == ""
    assert sorted(squeezed(name)) == sorted(squeezed(read_pages(made.pdf, 1)[0].text.splitlines()[0]))


def test_labels_begin_at_the_first_free_place_and_go_on_to_the_next_page() -> None:
    text = replace(PLAIN, cautions=(), ingredients="")
    made = label_sheet(text, A4, copies=6, start=19)
    assert (made.labels, made.pages, made.continued) == (6, 2, False)
    first, second = read_pages(made.pdf)
    assert_ink_inside(first, label_areas(A4, 18, 3, 0.8))
    assert_ink_inside(second, label_areas(A4, 0, 3, 0.8))
    for page, places in ((first, range(18, 21)), (second, range(3))):
        for place in places:
            left, top = A4.corner_mm(place)
            crop = page.crop_mm(left, top, A4.label_width_mm, A4.label_height_mm)
            assert [symbol.text for symbol in read_symbols(crop)] == [LINK]


def test_every_bottle_has_its_number() -> None:
    made = label_sheet(PLAIN, STOCKS["roll 100x50"], copies=8)
    pages = read_pages(made.pdf, 1)
    for number, page in enumerate(pages, start=1):
        assert f"{number} of 8" in page.text
    later = label_sheet(PLAIN, STOCKS["roll 100x50"], copies=2, first_bottle=11, bottles=12)
    assert ["11 of 12" in page.text or "12 of 12" in page.text for page in read_pages(later.pdf, 1)] == [
        True,
        True,
    ]
    single = label_sheet(PLAIN, STOCKS["roll 100x50"])
    assert "1 of 1" not in read_pages(single.pdf, 1)[0].text


def test_a_continued_label_numbers_both_of_a_bottle() -> None:
    made = label_sheet(LONG, STOCKS["roll 57x32"], copies=3)
    assert made.continued
    pages = read_pages(made.pdf, 1)
    assert len(pages) == made.labels == 6
    for place, page in enumerate(pages):
        assert f"{place // 2 + 1} of 3" in page.text
        assert ("continued" in page.text) is (place % 2 == 1)


def test_missing_glyphs_are_named_and_printed_as_squares() -> None:
    made = label_sheet(replace(PLAIN, name="Lemon \U0001f34b mist"), A4)
    assert made.missing_glyphs == "\U0001f34b"
    assert "Lemon □ mist" in read_pages(made.pdf, 1)[0].text


def test_half_a_character_is_printed_as_a_square_too() -> None:
    made = label_sheet(replace(PLAIN, name="\ud83c mist"), A4)
    assert made.missing_glyphs == "\ud83c"
    assert "□ mist" in read_pages(made.pdf, 1)[0].text


def test_the_flammable_word_stands_in_a_frame_only_where_given() -> None:
    stock = Roll("own", 100, 60)
    with_word, without = (
        read_pages(label_sheet(replace(PLAIN, flammable=word), stock).pdf, 12)[0]
        for word in ("FLAMMABLE", "")
    )
    assert "FLAMMABLE" in with_word.text
    assert "FLAMMABLE" not in without.text

    def frames(page: Page) -> int:
        """Rows of pixels with an unbroken dark run of 12 mm, except the rule across the label."""
        ink = page.picture.point(lambda grey: 1 if grey < 128 else 0)
        longest = []
        for row in range(ink.height):
            line = ink.crop((0, row, ink.width, row + 1)).tobytes()
            longest.append(max(len(run) for run in line.split(b"\x00")))
        return sum(12 * 12 <= run < 60 * 12 for run in longest)

    assert frames(with_word) > 0
    assert frames(without) == 0


def test_labels_are_black_on_white() -> None:
    preview = label_preview(PLAIN, A4)
    picture = Image.open(io.BytesIO(preview.png))
    assert picture.mode == "L"
    histogram = picture.histogram()
    assert histogram[255] > 0.6 * sum(histogram)
    assert histogram[0] > 0


def test_outlines_are_drawn_on_request_only() -> None:
    plain = read_pages(label_sheet(PLAIN, A4).pdf)[0]
    outlined = read_pages(label_sheet(PLAIN, A4, outlines=True).pdf)[0]
    inner = label_areas(A4, 0, 1, 0.8)
    assert plain.ink_outside(inner) is None
    box = outlined.ink_outside(inner)
    assert box is not None
    corners = [value / outlined.pixels_per_mm for value in box]
    left, top = A4.corner_mm(0)
    wanted = [left, top, left + A4.label_width_mm, top + A4.label_height_mm]
    assert corners == pytest.approx(wanted, abs=0.25)


@pytest.mark.long
@examples(6, HealthCheck.too_slow)
@given(
    st.one_of(
        st.sampled_from([*SCRIPTS.values(), "gjpqy" * 16, "ÅẾǕ" * 20]), st.text(min_size=1, max_size=80)
    ),
    st.text(max_size=120),
    st.sampled_from(["a4-3x7 64x38", "a4-5x13 38x21", "letter-3x10 67x25"]),
)
def test_no_ink_reaches_a_labels_edge(name: str, ingredients: str, stock_name: str) -> None:
    stock = STOCKS[stock_name]
    assert isinstance(stock, Sheet)
    made = label_sheet(replace(PLAIN, name=name, ingredients=ingredients), stock, copies=2)
    for number, page in enumerate(read_pages(made.pdf, 10)):
        here = min(stock.per_page, made.labels - number * stock.per_page)
        assert_ink_inside(page, label_areas(stock, 0, here, 0.4))


def test_a_tower_of_accents_stays_on_its_label() -> None:
    tall = "M" + "\u0302" * 40
    made = label_sheet(replace(PLAIN, name=f"{tall} {tall}"), A4)
    assert_ink_inside(read_pages(made.pdf)[0], label_areas(A4, 0, made.labels, 0.1))


@pytest.mark.parametrize("stock", EVERY_STOCK)
def test_the_preview_shows_what_prints(stock: Stock) -> None:
    preview = label_preview(LONG, stock, bottle=3, bottles=12)
    picture = Image.open(io.BytesIO(preview.png))
    assert picture.size == (preview.width_px, preview.height_px)
    assert max(picture.size) <= 2401
    assert [symbol.text for symbol in read_symbols(picture)] == [LINK]
    assert preview.continued == label_sheet(LONG, stock, first_bottle=3, bottles=12).continued


def test_the_preview_agrees_with_the_sheet_dot_for_dot() -> None:
    preview = label_preview(PLAIN, A4)
    shown = Image.open(io.BytesIO(preview.png))
    page = read_pages(label_sheet(PLAIN, A4).pdf, 12)[0]
    left, top = A4.corner_mm(0)
    inset = 1.0
    size = (A4.label_width_mm - 2 * inset, A4.label_height_mm - 2 * inset)
    on_sheet = page.crop_mm(left + inset, top + inset, *size).resize((240, 140))
    corner = round((3 + inset) * 12)
    width, height = (round(side * 12) for side in size)
    on_preview = shown.crop((corner, corner, corner + width, corner + height)).resize((240, 140))
    differences = [
        abs(one - other) for one, other in zip(on_sheet.tobytes(), on_preview.tobytes(), strict=True)
    ]
    assert sum(differences) / len(differences) < 8  # of 255: only the rounding of edges to pixels


@pytest.mark.parametrize(
    ("given_", "what"),
    [
        ({"copies": 0}, "copies"),
        ({"copies": MOST_COPIES + 1}, "copies"),
        ({"start": 0}, "start"),
        ({"start": 22}, "start"),
        ({"first_bottle": 0}, "first_bottle"),
        ({"copies": 3, "bottles": 2}, "bottles"),
    ],
)
def test_counts_outside_their_range_are_refused(given_: dict[str, int], what: str) -> None:
    with pytest.raises(CountError) as refused:
        label_sheet(PLAIN, A4, **given_)  # type: ignore[arg-type]
    assert refused.value.what == what


@pytest.mark.parametrize(
    "pattern", ["{number", "{bottle} of {total}", "bottle", "{number} " + "of many bottles " * 3]
)
def test_unusable_numbering_is_refused(pattern: str) -> None:
    with pytest.raises(NumberingError):
        label_sheet(replace(PLAIN, numbering=pattern), A4, copies=2)


def test_the_pdf_asks_not_to_be_scaled(tmp_path: Path) -> None:
    made = label_sheet(PLAIN, A4)
    assert b"/PrintScaling /None" in made.pdf
    told = poppler("pdffonts", pdf=made.pdf, folder=tmp_path)
    if told:
        rows = told.splitlines()[2:]
        assert rows
        assert all(row.split()[-5:-2] == ["yes", "yes", "yes"] for row in rows)  # embedded, subset, mapped


def test_nothing_heavy_is_loaded_before_it_is_used() -> None:
    heavy = "{'fpdf', 'matplotlib', 'segno', 'PIL', 'pypdfium2', 'uharfbuzz', 'noto_cjk_sans_jp_regular'}"
    code = f"import sys, bot.documents.labels.labels; print(sorted({heavy} & set(sys.modules)))"
    done = subprocess.run([sys.executable, "-c", code], check=True, capture_output=True, text=True)
    assert done.stdout.strip() == "[]"
