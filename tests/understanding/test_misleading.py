"""Misleading lines write no row that was not meant."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tests.house import House
from tests.understanding.misleading import LANGUAGES, lines, said


@pytest.mark.parametrize("language", LANGUAGES)
def test_no_misleading_line_writes_a_row(language: str, another_house: Callable[[], House]) -> None:
    """The rows that each line writes are those that the table names: none for all but a few."""
    table = lines(language)
    found = said(another_house, language, table)
    wrong = [f"{one.line}: {', '.join(sorted(one.written))}" for one in found if one.written != one.meant]
    assert len(table) >= 150
    assert wrong == []
