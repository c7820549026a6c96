"""Print every outside check as a table: python -m tests.outside [--markdown]."""

from __future__ import annotations

import argparse
import sys

from tests.outside import all_checks
from tests.outside.check import Check


def _show(value: float | tuple[float, float] | str) -> str:
    if isinstance(value, str):
        return value
    if isinstance(value, tuple):
        return f"{value[0]:.6g} to {value[1]:.6g}"
    return f"{value:.6g}"


def _row(check: Check) -> tuple[list[str], bool]:
    got = check.got()
    good = check.passes(got)
    expected = check.expected
    gap = ""
    if isinstance(got, float | int) and isinstance(expected, float | int):
        gap = f"{got - expected:+.3g}"
    cells = [check.rule, check.what, _show(expected), _show(got), check.unit, gap]
    return [*cells, check.mark.value, check.source, "ok" if good else "DIFFERS"], good


def main() -> int:
    """Print the table; the exit code is 1 if any check differs from its source."""
    parser = argparse.ArgumentParser(prog="python -m tests.outside")
    parser.add_argument("rule", nargs="?", help="only the checks of this rule")
    wanted = parser.parse_args().rule
    head = ["rule", "what", "expected", "got", "unit", "difference", "known how", "source", ""]
    print("| " + " | ".join(head) + " |")
    print("|" + " -- |" * len(head))
    bad = 0
    for check in all_checks():
        if wanted and check.rule != wanted:
            continue
        cells, good = _row(check)
        bad += not good
        print("| " + " | ".join(cell.replace("|", "/") for cell in cells) + " |")
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
