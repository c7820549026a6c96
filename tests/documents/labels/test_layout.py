"""Tests of laid-out labels: boxes on the label, not overlapping, and all of the text in them."""

from __future__ import annotations

import itertools
from collections import Counter
from collections.abc import Iterator
from contextlib import closing
from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given
from hypothesis import strategies as st

from bot.documents.labels.boxes import Face, QrBox, TextBox
from bot.documents.labels.drawing import new_document
from bot.documents.labels.flow import Measure
from bot.documents.labels.fonts import Letters
from bot.documents.labels.labels import LabelText, label_items
from bot.documents.labels.layout import MOVE_ORDER, SMALLEST_PT, Arrangement, Heading, arrange, faces
from bot.documents.labels.qr import SMALLEST_MODULE_MM
from bot.documents.labels.sheets import STOCKS, Roll, Stock
from tests.documents.labels.label_texts import IDEOGRAPHS, LONG, PLAIN, SCRIPTS
from tests.examples import examples

AGAIN = {"name_again", "batch_again", "bottle_again", "continued"}
SMALL = Roll("small", 38, 21)

words = st.one_of(
    st.sampled_from(
        [*SCRIPTS.values(), *IDEOGRAPHS.values(), "Grapefruit mist", "W" * 40, "(limonene, citral)"]
    ),
    st.text(st.characters(exclude_categories=["Cs"]), max_size=30),
)
phrases = st.lists(words, max_size=6).map(" ".join)
label_texts = st.builds(
    replace,
    st.just(PLAIN),
    name=phrases.map(lambda text: text[:80] or "Mist"),
    ingredients=phrases,
    discard_by=phrases.map(lambda text: text[:40]),
    flammable=words.map(lambda text: text[:20]),
    allergens=phrases,
    cautions=st.lists(phrases, max_size=3).map(tuple),
    link=st.sampled_from(["", PLAIN.link, PLAIN.link + "x" * 40]),
)
stocks = st.one_of(
    st.sampled_from(list(STOCKS.values())),
    st.builds(Roll, st.just("own"), st.floats(25, 120), st.floats(15, 90)),
)


@pytest.fixture(scope="module")
def letters() -> Iterator[Letters]:
    with closing(Letters(new_document(""))) as fonts:
        yield fonts


def tidy(letters: Letters, text: LabelText) -> LabelText:
    clean = {
        part: letters.clean(getattr(text, part))
        for part in ("name", "ingredients", "discard_by", "flammable")
    }
    cautions = tuple(letters.clean(caution) for caution in text.cautions)
    return replace(text, cautions=cautions, allergens=letters.clean(text.allergens), **clean)


def laid_out(
    text: LabelText, stock: Stock, measure: Measure, bottle: str = ""
) -> tuple[Arrangement, tuple[Face, ...]]:
    heading = Heading(text.name, text.batch, bottle, text.continued)
    arrangement = arrange(label_items(text, bottle), heading, text.link, stock, measure)
    return arrangement, faces(arrangement, measure)


def printed(shown: tuple[Face, ...]) -> list[TextBox]:
    return [box for face in shown for box in face.boxes if isinstance(box, TextBox)]


def signs(texts: list[str]) -> Counter[str]:
    """Count each character in the texts, without spaces and the dots between joined items."""
    return Counter(sign for text in texts for sign in text if sign not in " ·")


def check_boxes(shown: tuple[Face, ...], measure: Measure) -> None:
    for face in shown:
        for box in face.boxes:
            assert box.left >= 0
            assert box.top >= 0
            assert box.right <= face.width_mm + 1e-6
            assert box.bottom <= face.height_mm + 1e-6
            if isinstance(box, TextBox):
                assert measure(box.text, box.size_pt, box.bold) <= box.width + 1e-6
                assert box.size_pt >= SMALLEST_PT
            if isinstance(box, QrBox):
                assert box.module_mm >= SMALLEST_MODULE_MM
        for one, other in itertools.combinations(face.boxes, 2):
            assert not one.overlaps(other), (one, other)


@examples(30, HealthCheck.too_slow)
@given(label_texts, stocks, st.sampled_from(["", "3 of 12"]))
def test_boxes_stay_apart_on_the_label_and_hold_the_whole_text(
    letters: Letters, text: LabelText, stock: Stock, bottle: str
) -> None:
    text = tidy(letters, text)
    arrangement, shown = laid_out(text, stock, letters.width_mm, bottle)
    check_boxes(shown, letters.width_mm)
    own = [box.text for box in printed(shown) if box.part not in AGAIN]
    wanted = [item.text for item in label_items(text, bottle)]
    # Items of the repeated heading share a line with the word for 'continued' only.
    assert signs(own) == signs(wanted)
    symbols = [box.link for face in shown for box in face.boxes if isinstance(box, QrBox)]
    assert symbols == ([text.link] if text.link and not arrangement.link_left_out else [])


@pytest.mark.parametrize("stock", STOCKS.values(), ids=lambda stock: stock.name)
@pytest.mark.parametrize("text", [PLAIN, LONG], ids=["plain", "long"])
def test_every_stock_keeps_the_essentials_on_the_first_label(
    letters: Letters, text: LabelText, stock: Stock
) -> None:
    arrangement, shown = laid_out(text, stock, letters.width_mm, "3 of 12")
    check_boxes(shown, letters.width_mm)
    first = " ".join(box.text for box in printed(shown[:1]))
    for essential in (text.name, text.batch, "3 of 12", text.flammable, text.discard_by):
        assert essential in first
    assert not arrangement.link_left_out


def test_lines_leave_in_the_stated_order(letters: Letters) -> None:
    """Items on a second label precede, in the order of leaving, all that stayed."""
    seen_moved = False
    for height in range(16, 80, 2):
        _, shown = laid_out(replace(PLAIN, link=""), Roll("own", 50, height), letters.width_mm)
        stayed = "".join(box.text for box in printed(shown[:1])).replace(" ", "")
        parts = [part for part in MOVE_ORDER if part != "caution"]
        moved = [part for part in parts if getattr(PLAIN, part).replace(" ", "") not in stayed]
        assert moved == parts[: len(moved)]
        seen_moved = seen_moved or 0 < len(moved) < len(parts)
    assert seen_moved


def test_a_larger_label_never_needs_more_labels(letters: Letters) -> None:
    counts = [
        len(laid_out(LONG, Roll("own", 50, height), letters.width_mm)[1]) for height in range(20, 90, 5)
    ]
    assert counts == sorted(counts, reverse=True)
    assert counts[0] > 1
    assert counts[-1] == 1


def test_the_second_label_repeats_name_batch_and_bottle(letters: Letters) -> None:
    _, shown = laid_out(LONG, Roll("own", 60, 32), letters.width_mm, "3 of 12")
    assert len(shown) > 1
    again = " ".join(box.text for box in printed(shown[1:2]))
    for part in (LONG.name, LONG.batch, "3 of 12", LONG.continued):
        assert part in again


def test_a_continuous_roll_grows_instead_of_shrinking_its_letters(letters: Letters) -> None:
    roll = STOCKS["roll 62"]
    short, long = (laid_out(text, roll, letters.width_mm)[1] for text in (PLAIN, LONG))
    assert len(short) == len(long) == 1
    assert long[0].height_mm > short[0].height_mm
    assert min(box.size_pt for box in printed(long)) >= 9


def test_the_symbol_moves_to_the_second_label_when_the_essentials_need_its_place(letters: Letters) -> None:
    text = replace(LONG, name="W" * 60)
    _, shown = laid_out(text, SMALL, letters.width_mm, "3 of 12")
    first, second = (any(isinstance(box, QrBox) for box in face.boxes) for face in shown[:2])
    assert (first, second) == (False, True)


def test_a_symbol_too_large_for_the_stock_is_left_out_and_said_so(letters: Letters) -> None:
    text = replace(PLAIN, link="https://t.me/" + "x" * 150)
    arrangement, shown = laid_out(text, SMALL, letters.width_mm)
    assert arrangement.link_left_out
    assert not any(isinstance(box, QrBox) for face in shown for box in face.boxes)


def test_right_to_left_lines_stand_at_the_right(letters: Letters) -> None:
    text = replace(PLAIN, name=letters.clean(SCRIPTS["Hebrew"]), link="")
    stock = Roll("own", 100, 60)
    _, shown = laid_out(text, stock, letters.width_mm)
    name = next(box for box in printed(shown) if box.part == "name")
    assert name.right == pytest.approx(stock.width_mm - stock.inset_mm)
    batch = next(box for box in printed(shown) if box.part == "batch")
    assert batch.left == pytest.approx(stock.inset_mm)


def test_moving_order_names_only_parts_that_exist() -> None:
    parts = {item.part for item in label_items(PLAIN, "1 of 2")}
    assert set(MOVE_ORDER) == parts - {"name", "batch", "bottle", "flammable", "discard_by"}
