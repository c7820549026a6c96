"""Everything a change has to pass, in one go: python -m tests [what pytest understands].

Lint, format, types, layers, and last of all pytest, so that its summary stands at the end. Returns the
worst code of all of them.
"""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

_ROOT = Path(__file__).parent.parent
# The whole suite runs on every core, the tests of one file together: they share what is dear to set up. One
# more than there are cores, since a third of the time some test waits: for a clock, a disk or a program.
_EVERYTHING = ["-n", str((os.cpu_count() or 1) + 1), "--dist", "loadfile"]


def checks(pytest_arguments: list[str]) -> list[tuple[str, list[str]]]:
    """Return the name and the command of each check, in order."""
    python = sys.executable
    return [
        ("ruff check", [python, "-m", "ruff", "check", "."]),
        ("ruff format", [python, "-m", "ruff", "format", "--check", "."]),
        ("mypy", [python, "-m", "mypy", "--strict"]),
        # It has no module to run; its script stands beside the interpreter.
        ("lint-imports", [str(Path(python).with_name("lint-imports"))]),
        ("pytest", [python, "-m", "pytest", *(pytest_arguments or _EVERYTHING)]),
    ]


def main(pytest_arguments: list[str]) -> int:
    """Run them all, whatever the ones before said; return the worst code."""
    worst = 0
    failed: list[str] = []
    for name, command in checks(pytest_arguments):
        if failed:
            print(f"== failed so far: {', '.join(failed)}", flush=True)
        print(f"== {name}", flush=True)
        code = abs(subprocess.run(command, cwd=_ROOT, check=False).returncode)
        if code:
            failed.append(name)
        worst = max(worst, code)
    return worst


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
