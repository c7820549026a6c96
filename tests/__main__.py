"""Run all tests that a change must pass: python -m tests [--all] [pytest arguments].

Lint, format, types and layers are tests as well (`tests/test_checks.py`). `--all` adds the long part: tests
marked as long, the second database for every conversation, and many more examples.
"""

from __future__ import annotations

import compileall
import os
import sys
from pathlib import Path

import pytest

_ROOT = Path(__file__).parent.parent
# One process more than there are cores, because some test always waits for a clock, a disk or a program; two
# more in the long part, where most faults wait.
_MORE, _MORE_IN_LONG = 1, 2


def main(arguments: list[str]) -> int:
    """Run the tests on every core; return pytest's exit code."""
    os.chdir(_ROOT)
    # The program is loaded dozens of times; compile it once, whatever the environment says.
    os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
    sys.dont_write_bytecode = False
    for package in ("bot", "storage"):
        compileall.compile_dir(_ROOT / package, quiet=1)
    more = _MORE_IN_LONG if "--all" in arguments else _MORE
    processes = str((os.cpu_count() or 1) + more)
    return int(pytest.main(["-n", processes, "--dist", "worksteal", *arguments]))


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
