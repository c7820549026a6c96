"""Print every outside check as a table: python -m tests.outside [rule] [--write]."""

from __future__ import annotations

import argparse
import sys
from collections import Counter
from collections.abc import Sequence
from pathlib import Path

from tests.outside import all_checks
from tests.outside.check import Check, Mark

_TABLE = Path(__file__).with_name("TABLE.md")
_BEGIN, _END = "<!-- outside checks: begin -->", "<!-- outside checks: end -->"
# Smaller numbers are the last bits of a float, which differ from one processor to the next.
_NOISE = 1e-9


def _number(value: float, form: str = ".6g") -> str:
    return "0" if abs(value) < _NOISE else format(value, form)


def _show(value: float | tuple[float, float] | str) -> str:
    if isinstance(value, str):
        return value
    if isinstance(value, tuple):
        return f"{_number(value[0])} to {_number(value[1])}"
    return _number(value)


def _row(check: Check) -> tuple[list[str], bool]:
    got = check.got()
    good = check.passes(got)
    expected = check.value
    gap = ""
    if isinstance(got, float | int) and isinstance(expected, float | int):
        gap = _number(round(got - expected, 9), "+.3g")
    cells = [check.rule, check.what, _show(expected), _show(got), check.unit, gap]
    return [*cells, check.mark.value, check.source, "ok" if good else "DIFFERS"], good


def table(checks: Sequence[Check]) -> tuple[list[str], int]:
    """Return the table's lines, and the number of checks that differ from their source."""
    head = ["rule", "what", "expected", "got", "unit", "difference", "known how", "source", ""]
    lines = ["| " + " | ".join(head) + " |", "|" + " -- |" * len(head)]
    bad = 0
    for check in checks:
        cells, good = _row(check)
        bad += not good
        lines.append("| " + " | ".join(cell.replace("|", "/") for cell in cells) + " |")
    return lines, bad


def by_mark(checks: Sequence[Check]) -> list[str]:
    """Return a table of how many checks are known in which way."""
    count = Counter(check.mark for check in checks)
    return ["| known how | checks |", "| -- | -- |", *(f"| {mark.value} | {count[mark]} |" for mark in Mark)]


def _write(lines: list[str]) -> None:
    before, _begin, rest = _TABLE.read_text("utf-8").partition(_BEGIN)
    after = rest.partition(_END)[2]
    shown = "\n".join(lines)
    _TABLE.write_text(f"{before}{_BEGIN}\n\n{shown}\n\n{_END}{after}", "utf-8")


def main(arguments: Sequence[str] | None = None) -> int:
    """Print the table or write it to TABLE.md; the exit code is 1 if any check differs from its source."""
    checks = list(all_checks())
    rules = sorted({check.rule for check in checks})
    parser = argparse.ArgumentParser(prog="python -m tests.outside", allow_abbrev=False)
    parser.add_argument("rule", nargs="?", help="only the checks of this rule: " + ", ".join(rules))
    parser.add_argument("--write", action="store_true", help="put the whole table into TABLE.md")
    wanted = parser.parse_args(arguments)
    if wanted.rule and wanted.rule not in rules:
        parser.error(f"no rule “{wanted.rule}”; the rules are {', '.join(rules)}")
    if wanted.rule and wanted.write:
        parser.error(f"--write writes the whole table; leave out “{wanted.rule}”")
    lines, bad = table([check for check in checks if wanted.rule in {None, check.rule}])
    if wanted.write:
        _write([*by_mark(checks), "", *lines])
    else:
        print("\n".join(lines))
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
