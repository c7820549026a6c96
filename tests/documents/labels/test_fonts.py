"""Tests of printable characters, and of the report on missing ones."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator, Sequence
from contextlib import ExitStack, closing
from pathlib import Path

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from bot.documents.labels import fonts as module
from bot.documents.labels.drawing import new_document
from bot.documents.labels.fonts import FontsMissingError, Letters, ideograph_font_files, main_font_files
from tests.documents.labels.label_texts import IDEOGRAPHS, SCRIPTS
from tests.examples import examples

LEMON = "\U0001f34b"  # a picture sign that neither font has


@pytest.fixture
def fresh() -> Iterator[Callable[..., Letters]]:
    """Provides letters without missing characters, and closes them after the test."""
    with ExitStack() as stack:

        def make(extra_fonts: Sequence[Path] = ()) -> Letters:
            return stack.enter_context(closing(Letters(new_document(""), extra_fonts)))

        yield make


@pytest.fixture(scope="module")
def letters() -> Iterator[Letters]:
    with closing(Letters(new_document(""))) as fonts:
        yield fonts


@pytest.mark.parametrize("text", SCRIPTS.values(), ids=SCRIPTS)
def test_other_alphabets_print_whole(text: str, fresh: Callable[..., Letters]) -> None:
    letters = fresh()
    assert letters.clean(text) == text
    assert letters.missing == ""


@pytest.mark.parametrize("text", IDEOGRAPHS.values(), ids=IDEOGRAPHS)
def test_ideographs_print_whole_with_the_optional_font(text: str, fresh: Callable[..., Letters]) -> None:
    letters = fresh()
    assert letters.clean(text) == text.replace("\u3000", " ")
    assert letters.missing == ""


def test_ideographs_without_the_optional_font_are_said_to_be_missing(
    monkeypatch: pytest.MonkeyPatch, fresh: Callable[..., Letters]
) -> None:
    monkeypatch.setattr(module, "ideograph_font_files", list)
    letters = fresh()
    assert letters.clean("柚子 mist 柚") == "□□ mist □"
    assert letters.missing == "柚子"


def test_an_extra_font_file_fills_the_gap(
    monkeypatch: pytest.MonkeyPatch, fresh: Callable[..., Letters]
) -> None:
    files = ideograph_font_files()
    monkeypatch.setattr(module, "ideograph_font_files", list)
    letters = fresh(extra_fonts=files)
    assert letters.clean("柚子") == "柚子"


def test_a_picture_sign_becomes_a_square_and_is_named_once(fresh: Callable[..., Letters]) -> None:
    letters = fresh()
    assert letters.clean(f"{LEMON} lemon {LEMON}") == "□ lemon □"
    assert letters.missing == LEMON


def test_what_has_no_shape_is_dropped_and_white_is_one_space(letters: Letters) -> None:
    assert letters.clean("  a\tb\n\nc\u202e\u200b\ufeff  d ") == "a b c d"
    assert letters.clean("50\u00a0mL 1\u202f000") == "50\u00a0mL 1\u202f000"


def test_accents_are_composed_and_a_tower_of_them_is_cut_down(fresh: Callable[..., Letters]) -> None:
    letters = fresh()
    assert letters.clean("e\u0301") == "é"
    tower = letters.clean("q" + "\u0301" * 30)
    assert tower == "q" + "\u0301" * 3
    assert letters.missing == "\u0301"


@examples(40)
@given(st.text(max_size=40))
@example("0 \ua825")  # an accent that no font has, alone after a space
def test_anything_can_be_measured_and_cleaning_twice_changes_nothing(letters: Letters, text: str) -> None:
    clean = letters.clean(text)
    assert letters.clean(clean) == clean
    assert letters.width_mm(clean, 10, True) >= 0


def test_width_grows_with_the_size(letters: Letters) -> None:
    assert letters.width_mm("mist", 20, False) == pytest.approx(2 * letters.width_mm("mist", 10, False))
    assert letters.width_mm("mist", 10, True) > letters.width_mm("mist", 10, False)


def test_missing_font_files_are_an_error_of_their_own(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    assert all(file.is_file() for file in main_font_files())
    monkeypatch.setattr(module, "_package_folder", lambda package: tmp_path)
    with pytest.raises(FontsMissingError):
        main_font_files()
    assert ideograph_font_files() == []


def test_finding_the_fonts_does_not_run_their_packages(monkeypatch: pytest.MonkeyPatch) -> None:
    for package in ("matplotlib", "noto_cjk_sans_jp_regular"):
        monkeypatch.delitem(sys.modules, package, raising=False)
    main_font_files()
    ideograph_font_files()
    assert not {"matplotlib", "noto_cjk_sans_jp_regular"} & set(sys.modules)
