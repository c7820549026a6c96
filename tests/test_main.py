"""The one command that runs all checks."""

from __future__ import annotations

import subprocess
from pathlib import Path
from typing import Any

import pytest

from tests.__main__ import checks, main


def _pretend(monkeypatch: pytest.MonkeyPatch, codes: dict[str, int]) -> list[str]:
    ran: list[str] = []
    names = {tuple(command): name for name, command in checks([])}

    def run(command: list[str], **options: Any) -> subprocess.CompletedProcess[bytes]:
        name = names[tuple(command)]
        ran.append(name)
        return subprocess.CompletedProcess(command, codes.get(name, 0))

    monkeypatch.setattr(subprocess, "run", run)
    return ran


def test_a_failure_stops_nothing_and_is_what_is_returned(monkeypatch: pytest.MonkeyPatch) -> None:
    ran = _pretend(monkeypatch, {"ruff check": 1, "mypy": 2})
    assert main([]) == 2
    assert ran == ["ruff check", "ruff format", "mypy", "lint-imports", "pytest"]


def test_all_well_is_zero(monkeypatch: pytest.MonkeyPatch) -> None:
    _pretend(monkeypatch, {})
    assert main([]) == 0


def test_a_killed_check_counts_as_failed(monkeypatch: pytest.MonkeyPatch) -> None:
    _pretend(monkeypatch, {"pytest": -9})
    assert main([]) == 9


def test_every_tool_named_is_there_to_run() -> None:
    for _name, command in checks([]):
        assert Path(command[0]).exists()


def test_the_build_machine_runs_the_very_line_of_the_readme() -> None:
    root = Path(__file__).parent.parent
    line = next(
        line for line in (root / "README.md").read_text("utf-8").splitlines() if line.endswith("-m tests")
    )
    assert line.startswith("python3 -m venv .venv && ")
    assert (root / ".ci" / "run").read_text("utf-8").splitlines()[-1] == line
    assert line in (root / "DEVELOPERS.md").read_text("utf-8").splitlines()
