"""Tests of the package audit: the offline part, and its report if the online part fails."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from packaging.requirements import Requirement

from tests import audit


# Not the versions: tests also run with newer ones than locked, to find early what they break.
@pytest.mark.parametrize("looks", [audit.conflicts, audit.changed_files, audit.unknown_licences])
def test_what_is_installed_is_whole_and_under_known_licences(looks: Callable[[], list[str]]) -> None:
    assert looks() == []


def test_the_lock_file_is_read_whole() -> None:
    found = audit.locked()
    assert len(found) > 40
    assert all(str(one.specifier).startswith("==") for one in found)


def test_a_changed_file_is_seen(monkeypatch: pytest.MonkeyPatch) -> None:
    read = Path.read_bytes
    monkeypatch.setattr(audit, "locked", lambda: [Requirement("lark==1.3.1")])
    monkeypatch.setattr(
        Path, "read_bytes", lambda path: read(path) + (b"#" if path.name == "lark.py" else b"")
    )
    assert audit.changed_files() == ["lark: lark/lark.py"]


def test_another_version_is_seen(monkeypatch: pytest.MonkeyPatch) -> None:
    wanted = [Requirement("lark==0.0.1"), Requirement("not-there-at-all==1")]
    monkeypatch.setattr(audit, "locked", lambda: wanted)
    assert [one.partition(":")[0] for one in audit.other_versions()] == ["lark==0.0.1", "not-there-at-all==1"]


_ANSWERS = {
    "nothing": ("", "could not be reached"),
    "none known": ('{"dependencies": [{"name": "a", "skip_reason": "not found"}]}', "knew none of the 1"),
    "well": ('{"dependencies": [{"name": "a", "version": "1", "vulns": []}]}', "1 of 1 packages asked about"),
    "bad": (
        '{"dependencies": [{"name": "a", "version": "1", "vulns": [{"id": "PYSEC-1"}]}]}',
        "1 of 1 packages asked about",
    ),
}


@pytest.mark.parametrize("answer", _ANSWERS)
def test_what_the_service_said_is_told_and_only_a_finding_fails(tmp_path: Path, answer: str) -> None:
    output, said = _ANSWERS[answer]
    program = tmp_path / "pip-audit"
    program.write_text(f"#!/bin/sh\ncat <<'END'\n{output}\nEND\nexit 1\n")
    program.chmod(0o755)
    how, found = audit.vulnerable(str(program))
    assert said in how
    assert found == (["a 1: PYSEC-1"] if answer == "bad" else [])
