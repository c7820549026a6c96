"""Tests of charts: text inside the card, colours for all eyes, and the same picture every time."""

from __future__ import annotations

import itertools
import struct
import subprocess
import sys
from collections.abc import Callable
from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pypdfium2 import PdfDocument

from bot.documents.charts.canvas import (
    DARK,
    DASHES,
    FRUIT_FILLS,
    HATCHES,
    LIGHT,
    MARKERS,
    PIXELS_PER_POINT,
    WIDTH,
    Look,
    Sheet,
    shown,
    text_width,
    ticks,
    wrapped,
)
from bot.documents.charts.charts import (
    Layer,
    Swing,
    plain,
    price_history,
    tornado,
    waste_by_week,
)
from bot.documents.charts.owner_page import CashLine, OwnersPage, Panel, Waste, owner_card, owner_columns
from bot.documents.charts.page import landscape
from tests.documents.charts.colour_vision import VISIONS, contrast, difference
from tests.examples import examples

LOOKS = pytest.mark.parametrize("look", [LIGHT, DARK], ids=["light", "dark"])
FIRST = date(2026, 1, 5)


def _waste(names: list[str], weeks: int = 8, dark: bool = False, title: str = "Waste") -> Sheet:
    values = {name: [float((place + week) % 7) for week in range(weeks)] for place, name in enumerate(names)}
    labels = [f"W{week}" for week in range(weeks)]
    return waste_by_week(title, "fruit a week", labels, values, rest_word="other fruit", dark=dark)


def _prices(names: list[str], dark: bool = False) -> Sheet:
    prices = {
        name: [(FIRST + timedelta(days=7 * place), 0.4), (FIRST + timedelta(days=90), 0.5 + place)]
        for place, name in enumerate(names)
    }
    until = FIRST + timedelta(days=200)
    return price_history(
        "Prices", "$ each", prices, until=until, day=date.isoformat, number=lambda v: f"${v:.2f}", dark=dark
    )


def _tornado(names: list[str], dark: bool = False) -> Sheet:
    swings = [Swing(name, 20.0 - place, 26.0 + place) for place, name in enumerate(names)]
    words = {"low_word": "low end", "high_word": "high end", "likely_word": "likely"}
    return tornado(
        "What matters", "$ a week", 23.0, swings, number=lambda v: f"${v:,.2f}", dark=dark, **words
    )


KINDS: list[Callable[[list[str]], Sheet]] = [_waste, _prices, _tornado]


def texts_inside(sheet: Sheet) -> list[str]:
    """Return the texts of a drawn sheet, after checking that none leaves the card."""
    from matplotlib.text import Text  # noqa: PLC0415

    figure = sheet.figure()
    renderer = figure.canvas.get_renderer()
    width, height = figure.canvas.get_width_height()
    found = []
    for text in figure.findobj(Text):
        if text.get_text():
            box = text.get_window_extent(renderer)
            assert box.x0 >= 0, text.get_text()
            assert box.x1 <= width, text.get_text()
            assert box.y0 >= 0, text.get_text()
            assert box.y1 <= height, text.get_text()
            found.append(text.get_text())
    return found


def _size(png: bytes) -> tuple[int, int]:
    assert png.startswith(b"\x89PNG\r\n\x1a\n")
    width, height = struct.unpack(">II", png[16:24])
    return width, height


@LOOKS
def test_fills_stay_apart_for_every_colour_vision(look: Look) -> None:
    for vision in ("usual", "deuteranopia", "protanopia"):
        for first, second in itertools.combinations(look.fills, 2):
            assert difference(first, second, vision) > 25, (vision, first, second)


@LOOKS
def test_first_two_fills_stay_apart_even_in_grey(look: Look) -> None:
    # the two compared in a tornado and in before and after
    assert difference(look.fills[0], look.fills[1], "grey") > 25
    assert "grey" in VISIONS


@LOOKS
def test_everything_stands_out_from_the_card(look: Look) -> None:
    assert contrast(look.ink, look.card) >= 7
    assert contrast(look.quiet, look.card) >= 4.5
    for fill in look.fills:
        assert contrast(fill, look.card) >= 3, fill


def test_the_simulation_sees_what_it_should() -> None:
    # red and green of equal lightness differ for most eyes but not for a deuteranope
    assert difference("#C04040", "#807020", "usual") > 2 * difference("#C04040", "#807020", "deuteranopia")
    assert contrast("#000000", "#FFFFFF") == pytest.approx(21)


def test_series_differ_without_colour() -> None:
    assert len(set(HATCHES)) == len(set(MARKERS)) == len(set(map(str, DASHES))) == len(LIGHT.fills)
    assert len(LIGHT.fills) == len(DARK.fills)


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("dark", [False, True])
def test_pictures_are_as_wide_as_a_phone_and_repeat(kind: Callable[..., Sheet], dark: bool) -> None:
    names = ["orange", "lemon", "lime"]
    first, again = kind(names, dark=dark).png(), kind(names, dark=dark).png()
    assert first == again
    width, height = _size(first)
    assert width == WIDTH * PIXELS_PER_POINT == 1140
    assert 300 < height < 4000
    assert _size(kind(names, dark=not dark).png()) == (width, height)
    assert first != kind(names, dark=not dark).png()


words = st.text(st.characters(blacklist_categories=["Cs", "Cc"]), min_size=1, max_size=60).filter(str.strip)


@examples(8)
@given(st.lists(words, min_size=1, max_size=6, unique=True), st.sampled_from(KINDS))
def test_no_name_is_clipped(names: list[str], kind: Callable[[list[str]], Sheet]) -> None:
    together = "".join("".join(texts_inside(kind(names))).split())
    for name in names:
        assert "".join(shown(name).split()) in together


@examples(12)
@given(st.text(max_size=80), st.floats(40, 350), st.floats(8, 20), st.booleans())
def test_wrapping_keeps_every_sign_and_the_width(text: str, width: float, size: float, bold: bool) -> None:
    lines = wrapped(text, width, size, bold)
    assert "".join("".join(lines).split()) == "".join(shown(text).split())
    for line in lines:
        assert len(line) == 1 or text_width(line, size, bold) <= width


def test_money_is_not_taken_for_a_formula() -> None:
    texts = texts_inside(_tornado(["price of a fruit, $0.40 to $0.80"]))
    assert "price of a fruit, $0.40 to $0.80" in texts
    assert "$20.00" in texts


def test_signs_that_the_font_lacks_become_a_box() -> None:
    assert shown("lime \N{LEMON} лайм\nλάιμ") == "lime \u25a1 лайм λάιμ"


def test_more_than_six_fruit_are_drawn_together_and_add_up() -> None:
    names = [f"fruit {number}" for number in range(9)]
    texts = texts_inside(_waste(names, weeks=2))
    assert "other fruit" in texts
    assert sum(name in texts for name in names) == 6
    # 0+1+...+6+0+1 and 1+2+...+6+0+1+2
    assert {"22", "24"} <= set(texts)


def test_the_largest_waste_keeps_its_own_layer() -> None:
    waste = {f"fruit {number}": [float(number)] for number in range(9)}
    texts = texts_inside(waste_by_week("t", "u", ["W1"], waste, rest_word="other"))
    assert "fruit 8" in texts
    assert "fruit 2" not in texts


@pytest.mark.parametrize("weeks", [1, 5, 13, 26, 53])
def test_week_names_do_not_run_into_each_other(weeks: int) -> None:
    from matplotlib.text import Text  # noqa: PLC0415

    labels = [f"2026-W{week:02}" for week in range(1, weeks + 1)]
    sheet = waste_by_week("Waste", "fruit", labels, {"lime": [3.0] * weeks}, rest_word="other")
    figure = sheet.figure()
    renderer = figure.canvas.get_renderer()
    boxes = sorted(
        (text.get_window_extent(renderer) for text in figure.findobj(Text) if text.get_text() in labels),
        key=lambda box: float(box.x0),
    )
    assert boxes
    for left, right in itertools.pairwise(boxes):
        assert left.x1 < right.x0
    assert labels[-1] in texts_inside(sheet)


def test_nothing_thrown_out_is_a_picture_too() -> None:
    sheet = waste_by_week("Waste", "fruit", ["W1", "W2"], {"lime": [0.0, 0.0]}, rest_word="other")
    assert "0" in texts_inside(sheet)
    assert _size(sheet.png())[0] == 1140
    assert texts_inside(waste_by_week("Waste", "fruit", [], {}, rest_word="other"))


def test_a_result_beyond_the_likely_one_on_both_ends_is_drawn_from_it() -> None:
    sheet = tornado(
        "t", "u", 10.0, [Swing("odd", 12.0, 15.0)], low_word="low", high_word="high", likely_word="likely"
    )
    assert {"12", "15"} <= set(texts_inside(sheet))
    from matplotlib.patches import Rectangle  # noqa: PLC0415

    bars = [bar for bar in sheet.figure().findobj(Rectangle) if bar.get_height() == 20]
    longer, shorter = sorted(bars, key=lambda bar: float(bar.get_zorder()))
    assert longer.get_width() > shorter.get_width() > 0


def test_a_single_price_is_a_line_to_today() -> None:
    sheet = price_history("t", "u", {"lime": [(FIRST, 0.3)]}, until=FIRST, day=date.isoformat)
    assert "0.3" in texts_inside(sheet)


def test_of_several_prices_on_one_day_the_last_said_counts() -> None:
    corrected = [(FIRST, 0.3), (FIRST, 0.93), (FIRST, 0.48)]
    sheet = price_history("t", "u", {"lime": corrected}, until=FIRST, day=date.isoformat)
    shown = texts_inside(sheet)
    assert "0.48" in shown
    assert "0.93" not in shown


def test_data_that_cannot_be_drawn_are_refused() -> None:
    with pytest.raises(ValueError, match="one value a week"):
        waste_by_week("t", "u", ["W1"], {"lime": [1.0, 2.0]}, rest_word="other")
    with pytest.raises(ValueError, match="one to six"):
        price_history("t", "u", {}, until=FIRST, day=date.isoformat)
    seven = {str(number): [(FIRST, 1.0)] for number in range(7)}
    with pytest.raises(ValueError, match="one to six"):
        price_history("t", "u", seven, until=FIRST, day=date.isoformat)


@given(st.floats(1e-6, 1e9), st.integers(2, 6))
def test_ticks_are_round_and_reach_around(high: float, about: int) -> None:
    marks = ticks(high, about)
    assert marks[0] == 0
    assert marks[-2] < high <= marks[-1] * (1 + 1e-8)
    assert 2 <= len(marks) <= about + 1
    first = f"{marks[1]:e}".split("e")[0].rstrip("0").rstrip(".")
    assert first in {"1", "2", "2.5", "5"}


def test_ticks_of_nothing_reach_to_one() -> None:
    assert ticks(0) == [0, 0.25, 0.5, 0.75, 1]


def test_plain_numbers_have_no_more_digits_than_they_need() -> None:
    assert [plain(value) for value in (3.0, 0.25, 12.3456)] == ["3", "0.25", "12.35"]


def test_matplotlib_waits_until_a_picture_is_drawn_and_pyplot_stays_out() -> None:
    script = (
        "import sys, bot.documents.charts.charts as charts\n"
        "assert 'matplotlib' not in sys.modules\n"
        "charts.tornado('t', 'u', 1, [], low_word='l', high_word='h', likely_word='m').png()\n"
        "assert 'matplotlib' in sys.modules and 'matplotlib.pyplot' not in sys.modules\n"
    )
    subprocess.run([sys.executable, "-c", script], check=True)


_OTHER_SUMS = [
    pytest.param(sums, marks=pytest.mark.long) for sums in ((70.0, 150.0, 230.0), (0.0, 5.0, 61.0))
]


@pytest.mark.parametrize("dark", [False, pytest.param(True, marks=pytest.mark.long)])
@pytest.mark.parametrize("sums", [(-20.0, -35.0, -10.0), *_OTHER_SUMS])
def test_the_owners_page_fits_the_card_and_one_page(sums: tuple[float, ...], dark: bool) -> None:
    weeks = ("W44", "W45", "W46", "W47")
    page = OwnersPage(
        "The Copper Gull",
        "Spray and fresh fruit",
        [("Cash", ["€70 ahead"]), ("Time", [])],
        Waste(
            (
                Panel("Sprayed", (Layer(0, "orange", (30.0, 0.0, 9.0, 2.0), "orange"),)),
                Panel("Not sprayed", (Layer(0, "lemon", (9.0, 0.0, 12.0, 3.0), "lemon"),)),
            ),
            weeks,
            (1.5,),
            True,
            ("Dashed: orange", "Hatched across: still running"),
            unlogged=frozenset({1}),
        ),
        CashLine("Cash", weeks[1:], sums, 60.0, "spent once: €60"),
        [("Not certain", ["one", "two"])],
        pieces=lambda value: f"{value:.0f}",
        money=lambda value: f"€{value:.0f}",
    )
    texts = texts_inside(owner_card(page, dark))
    assert "spent once: €60" in texts
    assert "–" in texts  # not 0: nobody logged that week
    for paper, size in (("A4", (841.9, 595.3)), ("Letter", (792, 612))):
        pdf = PdfDocument(landscape(owner_columns(page), paper))
        assert len(pdf) == 1
        assert pdf[0].get_size() == pytest.approx(size)
        text = pdf[0].get_textpage().get_text_range()
        assert "Not certain" in text
        assert "Not sprayed" in text


def test_fruit_have_hatches_of_their_own() -> None:
    assert len({hatch for _fill, hatch in FRUIT_FILLS.values()}) == len(FRUIT_FILLS)
    for first, second in itertools.combinations(FRUIT_FILLS.values(), 2):
        assert difference(first[0], second[0], "usual") > 10
