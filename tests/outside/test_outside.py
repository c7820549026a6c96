"""Tests that every outside check agrees with its source, and of the command that prints them."""

from __future__ import annotations

import pytest

from tests.outside import all_checks
from tests.outside.__main__ import main, table
from tests.outside.check import Check, Mark

_CHECKS = [
    pytest.param(
        check,
        id=f"{check.rule}: {check.what}",
        marks=[pytest.mark.long] if "simulated" in check.what else [],  # each takes seconds
    )
    for check in all_checks()
]


@pytest.mark.parametrize("check", _CHECKS)
def test_agrees_with_its_source(check: Check) -> None:
    got = check.got()
    assert check.passes(got), f"{check.source}: expected {check.value} {check.unit}, got {got}"


@pytest.mark.parametrize("line", [["no-such-rule"], ["--no-such-option"], ["dose", "--write"], ["--wri"]])
def test_what_the_command_does_not_know_is_said_and_fails(
    line: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    with pytest.raises(SystemExit) as ended:
        main(line)
    assert ended.value.code == 2
    assert line[0] in capsys.readouterr().err


def test_a_table_has_no_noise_of_floats() -> None:
    noisy = Check("noise", "a third", "arithmetic", Mark.APART, 0.3, lambda: 0.1 + 0.2, "", 1e-12)
    none = Check("noise", "nothing", "arithmetic", Mark.APART, 0.0, lambda: 2.2e-16, "", 1e-12)
    lines, bad = table([noisy, none])
    assert bad == 0
    assert "| 0.3 | 0.3 |  | 0 |" in lines[2]
    assert "| 0 | 0 |  | 0 |" in lines[3]


def test_what_was_worked_apart_is_not_said_to_come_from_a_library() -> None:
    mixed = [check.what for check in all_checks() if check.mark is Mark.COMPUTED and "apart" in check.source]
    assert mixed == []
