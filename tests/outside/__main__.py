"""Print every outside check as a table: python -m tests.outside [--markdown]."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from tests.outside import all_checks
from tests.outside.check import Check

_TABLE = Path(__file__).with_name("TABLE.md")
_BEGIN, _END = "<!-- outside checks: begin -->", "<!-- outside checks: end -->"


def _show(value: float | tuple[float, float] | str) -> str:
    if isinstance(value, str):
        return value
    if isinstance(value, tuple):
        return f"{value[0]:.6g} to {value[1]:.6g}"
    return f"{value:.6g}"


def _row(check: Check) -> tuple[list[str], bool]:
    got = check.got()
    good = check.passes(got)
    expected = check.value
    gap = ""
    if isinstance(got, float | int) and isinstance(expected, float | int):
        gap = f"{got - expected:+.3g}"
    cells = [check.rule, check.what, _show(expected), _show(got), check.unit, gap]
    return [*cells, check.mark.value, check.source, "ok" if good else "DIFFERS"], good


def table(rule: str | None = None) -> tuple[list[str], int]:
    """Return the table's lines, and the number of checks that differ from their source."""
    head = ["rule", "what", "expected", "got", "unit", "difference", "known how", "source", ""]
    lines = ["| " + " | ".join(head) + " |", "|" + " -- |" * len(head)]
    bad = 0
    for check in all_checks():
        if rule and check.rule != rule:
            continue
        cells, good = _row(check)
        bad += not good
        lines.append("| " + " | ".join(cell.replace("|", "/") for cell in cells) + " |")
    return lines, bad


def _write(lines: list[str]) -> None:
    before, _begin, rest = _TABLE.read_text("utf-8").partition(_BEGIN)
    after = rest.partition(_END)[2]
    shown = "\n".join(lines)
    _TABLE.write_text(f"{before}{_BEGIN}\n\n{shown}\n\n{_END}{after}", "utf-8")


def main() -> int:
    """Print the table or write it to TABLE.md; the exit code is 1 if any check differs from its source."""
    parser = argparse.ArgumentParser(prog="python -m tests.outside")
    parser.add_argument("rule", nargs="?", help="only the checks of this rule")
    parser.add_argument("--write", action="store_true", help="put the whole table into TABLE.md")
    wanted = parser.parse_args()
    lines, bad = table(None if wanted.write else wanted.rule)
    if wanted.write:
        _write(lines)
    else:
        print("\n".join(lines))
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
