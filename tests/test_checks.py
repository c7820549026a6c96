"""Tests of lint, format, types and layers, so that they run and fail like the other tests."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

_ROOT = Path(__file__).parent.parent
_PYTHON = [sys.executable, "-m"]
CHECKS = {
    "mypy": [*_PYTHON, "mypy", "--strict"],
    "ruff check": [*_PYTHON, "ruff", "check", "."],
    "ruff format": [*_PYTHON, "ruff", "format", "--check", "."],
    # It has no module to run; its script is next to the interpreter.
    "lint-imports": [str(Path(sys.executable).with_name("lint-imports"))],
}


@pytest.mark.first
@pytest.mark.parametrize("name", CHECKS)
def test_nothing_to_object(name: str) -> None:
    done = subprocess.run(CHECKS[name], cwd=_ROOT, capture_output=True, text=True, check=False)
    if done.returncode:
        pytest.fail(f"{name}:\n{done.stdout}{done.stderr}", pytrace=False)
