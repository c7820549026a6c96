"""Tests of the contributor guide and the README: files exist, commands start, lengths are kept."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

_ROOT = Path(__file__).parents[1]
_DOCUMENTS = [_ROOT / "DEVELOPERS.md", _ROOT / "README.md"]
_MOST_LINES = 450
_COMMAND = re.compile(r"python -m ((?:tests|bot)(?:\.[a-z_]+)*)")
_PATH = re.compile(r"`((?:bot|storage|tests|deploy|chat|work|trade|channels)/[\w/.]+\.\w+)`")
_LINK = re.compile(r"\]\(([\w/.-]+)\)")


def _modules() -> list[str]:
    return sorted({name for document in _DOCUMENTS for name in _COMMAND.findall(document.read_text("utf-8"))})


@pytest.mark.long
@pytest.mark.parametrize("module", _modules())
def test_a_command_that_is_named_starts(module: str) -> None:
    if module == "tests":
        return  # it runs this test
    done = subprocess.run(
        [sys.executable, "-m", module, "--help"],
        cwd=_ROOT,
        capture_output=True,
        text=True,
        check=False,
        timeout=120,
        env={**os.environ, "PYTHONPATH": str(_ROOT)},
    )
    assert done.returncode == 0, done.stderr
    assert "usage" in done.stdout


@pytest.mark.parametrize("document", _DOCUMENTS, ids=lambda path: path.name)
def test_a_file_that_is_named_exists(document: Path) -> None:
    text = document.read_text("utf-8")
    named = {*_PATH.findall(text), *_LINK.findall(text)}
    assert named
    missing = [
        name for name in sorted(named) if not any((_ROOT / top / name).exists() for top in ("", "bot"))
    ]
    assert missing == []


def test_the_guide_is_short_enough_to_read() -> None:
    assert len((_ROOT / "DEVELOPERS.md").read_text("utf-8").splitlines()) <= _MOST_LINES


def test_the_map_names_every_subject() -> None:
    guide = (_ROOT / "DEVELOPERS.md").read_text("utf-8")
    rows = set(re.findall(r"^\| ([a-z]+) \|", guide, re.MULTILINE))
    for layer in ("trade", "work"):
        packages = {path.parent.name for path in (_ROOT / "bot" / layer).glob("*/__init__.py")}
        assert packages - {"numbers", "inbox"} <= rows
