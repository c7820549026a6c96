"""Everything a change has to pass, in one go: python -m tests [--all] [what pytest understands].

Lint, format, types and layers are tests as well (`tests/test_checks.py`). `--all` adds the long part: what is
marked so, the second database for every conversation, and many more examples.
"""

from __future__ import annotations

import os
import sys
from pathlib import Path

import pytest

_ROOT = Path(__file__).parent.parent
# One process more than there are cores, since some test always waits: for a clock, a disk or a program.
EVERYTHING = ["-n", str((os.cpu_count() or 1) + 1), "--dist", "worksteal"]


def main(arguments: list[str]) -> int:
    """Run the tests on every core; return pytest's code."""
    os.chdir(_ROOT)
    return int(pytest.main([*EVERYTHING, *arguments]))


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
