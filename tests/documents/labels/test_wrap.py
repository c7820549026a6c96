"""Tests that line breaking loses nothing and breaks at natural places."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.documents.labels.wrap import is_right_to_left, take_line


def lines(text: str, most: int) -> list[str]:
    found = []
    while text:
        line, text = take_line(text, lambda candidate: len(candidate) <= most)
        found.append(line)
    return found


@pytest.mark.parametrize(
    ("text", "most", "expected"),
    [
        ("cool and dark", 8, ["cool and", "dark"]),
        ("cold-pressed oil", 8, ["cold-", "pressed", "oil"]),
        ("12-03-2026", 8, ["12-03-20", "26"]),  # a date breaks only if nothing else is left
        ("furocoumarin", 5, ["furoc", "oumar", "in"]),
        ("柚子の霧、冬", 4, ["柚子の", "霧、冬"]),  # no line begins with a comma
        ("霧（冬）", 2, ["霧", "（冬", "）"]),  # nor ends with an opening bracket
        ("자몽 향기", 4, ["자몽", "향기"]),  # Korean words stay whole
        ("50\u00a0mL oil", 6, ["50\u00a0mL", "oil"]),
    ],
)
def test_where_lines_end(text: str, most: int, expected: list[str]) -> None:
    assert lines(text, most) == expected


def test_an_accent_stays_with_its_letter() -> None:
    assert lines("ae\u0323\u0302b", 2) == ["a", "e\u0323\u0302", "b"]


@given(st.text(st.characters(exclude_categories=["Cs"]), max_size=60), st.integers(1, 20))
def test_nothing_is_lost_and_it_ends(text: str, most: int) -> None:
    tidy = " ".join(word for word in text.split(" ") if word)
    assert "".join(lines(tidy, most)).replace(" ", "") == tidy.replace(" ", "")


@given(st.text(st.characters(categories=["L", "N", "P", "Zs"]), min_size=1, max_size=60), st.integers(1, 20))
def test_lines_keep_to_the_width(text: str, most: int) -> None:
    tidy = " ".join(word for word in text.split(" ") if word)
    assert all(len(line) <= most for line in lines(tidy, most))


@pytest.mark.parametrize(
    ("text", "expected"), [("12 שמן", True), ("mL שמן", False), ("", False), ("12", False)]
)
def test_direction_is_that_of_the_first_letter(text: str, expected: bool) -> None:
    assert is_right_to_left(text) is expected
