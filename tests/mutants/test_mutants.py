"""Tests of the mutation tests: what is changed, and that a small sample of the faults is noticed."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

import pytest

from tests.mutants.__main__ import sample
from tests.mutants.changes import ROOT, Change, all_changes, changes_in
from tests.mutants.equal import EQUAL, is_equal

_SOURCE = '''"""A rule."""

LIMIT = 2.0
TEXT = "12"


def rule(number: int, names: list[str]) -> float:
    """Return a number."""
    if number < 1 or not names:
        raise ValueError(f"not {number + 1}")
    return LIMIT - number
'''


def _found(tmp_path: Path) -> list[Change]:
    path = tmp_path / "rule.py"
    path.write_text(_SOURCE, "utf-8")
    return list(changes_in(path, tmp_path))


def test_the_faults_of_a_small_module(tmp_path: Path) -> None:
    found = [(one.place, one.was, one.now) for one in _found(tmp_path)]
    assert found[:2] == [("LIMIT", "2.0", "2.04"), ("LIMIT", "2.0", "1.96")]
    assert [now for place, _was, now in found if place == "rule"] == [
        "pass",
        "(number < 1 and (not names))",
        "(number <= 1)",
        "(number >= 1)",
        "(2)",
        "(0)",
        "(names)",
        "(LIMIT + number)",
    ]


def test_a_fault_changes_one_place_only(tmp_path: Path) -> None:
    for one in _found(tmp_path):
        text = one.text(tmp_path)
        assert text.encode()[: one.start] == _SOURCE.encode()[: one.start]
        assert text.endswith(_SOURCE.encode()[one.end :].decode())
        assert text != _SOURCE
        compile(text, "rule.py", "exec")


def test_a_sample_is_the_same_for_the_same_seed() -> None:
    changes = all_changes()
    assert len(changes) > 5000
    assert sample(changes, 20, 1) == sample(changes, 20, 1) != sample(changes, 20, 2)


def test_every_fault_named_as_equal_is_one_that_exists() -> None:
    assert sum(is_equal(one) for one in all_changes()) >= len(EQUAL)


@pytest.mark.long
def test_nine_of_ten_in_a_small_sample_are_noticed() -> None:
    command = [sys.executable, "-m", "tests.mutants", "trade/money", "trade/trials", "--count", "20"]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=True, timeout=600)
    found = re.search(r"(\d+) of 20 noticed", done.stdout)
    assert found is not None
    assert int(found[1]) >= 18, done.stdout
