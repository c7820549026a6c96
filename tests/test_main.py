"""Tests of the command that runs everything, and of the checks among the tests."""

from __future__ import annotations

import subprocess
from pathlib import Path
from typing import Any

import pytest

from tests import test_checks
from tests.__main__ import main


def test_what_is_asked_for_is_passed_on_and_its_code_returned(monkeypatch: pytest.MonkeyPatch) -> None:
    asked: list[str] = []

    def run(arguments: list[str]) -> int:
        asked.extend(arguments)
        return 3

    monkeypatch.setattr(pytest, "main", run)
    assert main(["--all", "tests/trade"]) == 3
    assert asked[-2:] == ["--all", "tests/trade"]


@pytest.mark.parametrize("name", test_checks.CHECKS)
@pytest.mark.parametrize("code", [1, 2, -9])
def test_a_check_that_fails_or_is_killed_fails_its_test(
    monkeypatch: pytest.MonkeyPatch, name: str, code: int
) -> None:
    def run(command: list[str], **options: Any) -> subprocess.CompletedProcess[str]:
        return subprocess.CompletedProcess(command, code, "its own words", "")

    monkeypatch.setattr(subprocess, "run", run)
    with pytest.raises(pytest.fail.Exception, match="its own words"):
        test_checks.test_nothing_to_object(name)


def test_every_tool_named_is_there_to_run() -> None:
    for command in test_checks.CHECKS.values():
        assert Path(command[0]).exists()


def test_the_build_machine_runs_the_very_line_of_the_readme() -> None:
    root = Path(__file__).parent.parent
    line = next(
        line for line in (root / "README.md").read_text("utf-8").splitlines() if line.endswith("-m tests")
    )
    assert line.startswith("python3 -m venv .venv && ")
    # With the long part too.
    assert (root / ".ci" / "run").read_text("utf-8").splitlines()[-1] == f"{line} --all"
    assert line in (root / "DEVELOPERS.md").read_text("utf-8").splitlines()
