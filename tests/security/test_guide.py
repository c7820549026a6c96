"""Tests that the threat and ASVS tables of the security notes name existing tests."""

from __future__ import annotations

import re
from pathlib import Path

_ROOT = Path(__file__).parents[2]
_NOTES = Path(__file__).with_name("README.md")


def test_every_test_that_the_tables_name_is_there() -> None:
    section = _NOTES.read_text()
    named = set(re.findall(r"`(tests/[a-z_/]+\.py)`", section))
    assert len(named) > 15
    assert [one for one in sorted(named) if not (_ROOT / one).is_file()] == []
    rows = [
        line
        for line in section.splitlines()
        if line.startswith("| ") and not line.startswith(("| who |", "| item |"))
    ]
    uncovered = ("not covered", "not tested", "does not apply", "see below")
    assert [row for row in rows if "tests/" not in row and not any(one in row for one in uncovered)] == []


def test_every_file_of_these_tests_is_named_in_the_tables() -> None:
    guide = _NOTES.read_text()
    for path in Path(__file__).parent.glob("test_*.py"):
        if path != Path(__file__):
            assert f"tests/security/{path.name}" in guide, path.name
