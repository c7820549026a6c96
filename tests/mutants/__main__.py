"""Put small faults into the rules and use cases, and see whether a test notices.

python -m tests.mutants [part of a path ...] [--count N] [--seed N] [--write]
"""

from __future__ import annotations

import argparse
import os
import random
import sys
from collections.abc import Sequence
from pathlib import Path

import pytest

from tests.mutants.changes import Change, all_changes
from tests.mutants.covering import nearest
from tests.mutants.equal import EQUAL, is_equal
from tests.mutants.trying import KILLED, Loop, Tried

_TABLE = Path(__file__).with_name("TABLE.md")
_BEGIN = "<!-- faults: begin -->"


def sample(changes: Sequence[Change], count: int, seed: int) -> list[Change]:
    """Return the same choice for the same seed, in the order of the files."""
    chosen = random.Random(seed).sample(changes, min(count, len(changes)))
    return sorted(chosen, key=lambda one: (one.path, one.start))


def run(changes: list[Change], kept: Path | None = None) -> list[Tried]:
    """Try each change; tell at once of those that no test notices."""
    out = os.fdopen(os.dup(sys.stdout.fileno()), "w", buffering=1, encoding="utf-8")

    def tell(tried: Sequence[Tried]) -> None:
        if tried[-1].outcome != KILLED:
            print(_line(tried[-1]), file=out)
        if len(tried) % 10 == 0:
            print(_score(tried), file=out)

    loop = Loop(changes, tell, kept)
    without = [
        option for name in ("randomly", "cacheprovider", "terminal") for option in ("-p", f"no:{name}")
    ]
    pytest.main(["-s", "-o", "addopts=--strict-markers", *without, *nearest(changes)], plugins=[loop])
    return loop.tried


def _line(tried: Tried) -> str:
    change = tried.change
    return f"{change.path}:{change.line} {change.place}: `{change.was}` -> `{change.now}` ({tried.outcome})"


def _score(tried: Sequence[Tried]) -> str:
    noticed = sum(one.outcome == KILLED for one in tried)
    return f"{noticed} of {len(tried)} noticed, {100 * noticed / len(tried):.0f} %"


def table(tried: Sequence[Tried]) -> list[str]:
    """Return how many faults were noticed in each subject, and those that were not."""
    lines = ["| part | faults | noticed | share |", "| -- | -- | -- | -- |"]
    parts = sorted({one.change.path.rsplit("/", 1)[0] for one in tried})
    for part in (*parts, "bot/trade", "bot/work", "bot"):
        here = [one for one in tried if f"{one.change.path}".startswith(f"{part}/")]
        noticed = sum(one.outcome == KILLED for one in here)
        if here:
            lines.append(f"| {part} | {len(here)} | {noticed} | {100 * noticed / len(here):.0f} % |")
    left = [f"- {_line(one)}" for one in tried if one.outcome != KILLED]
    same = [f"- {path} {place}: `{was}` -> `{now}`: {why}" for (path, place, was, now), why in EQUAL.items()]
    return [*lines, "", "Not noticed:", "", *left, "", "Left out, because they change nothing:", "", *same]


def _write(tried: Sequence[Tried]) -> None:
    before = _TABLE.read_text("utf-8").partition(_BEGIN)[0]
    _TABLE.write_text("\n".join([f"{before}{_BEGIN}", "", *table(tried), ""]), "utf-8")


def main(arguments: Sequence[str] | None = None) -> int:
    """Try a sample of the faults; print those that survive and the score."""
    parser = argparse.ArgumentParser(prog="python -m tests.mutants", description=__doc__)
    parser.add_argument("only", nargs="*", help="parts of paths, such as work/fruit: only faults there")
    parser.add_argument("--count", type=int, default=100, help="how many faults to try")
    parser.add_argument("--seed", type=int, default=14, help="which of them")
    parser.add_argument("--covering", type=Path, help="a file to keep which test reaches which line")
    parser.add_argument("--write", action="store_true", help="put the result into TABLE.md")
    wanted = parser.parse_args(arguments)
    parts = wanted.only or ["bot/"]
    changes = [one for one in all_changes() if any(part in one.path for part in parts) and not is_equal(one)]
    if not changes:
        parser.error(f"no faults in {', '.join(wanted.only)}")
    tried = run(sample(changes, wanted.count, wanted.seed), wanted.covering)
    if not tried:
        return 1
    print(_score(tried))
    if wanted.write:
        _write(tried)
    return 0


if __name__ == "__main__":
    sys.exit(main())
