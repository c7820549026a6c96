"""python -m tests.faults [--quick] [--write] [WORDS]: inject faults and print the results as a table."""

from __future__ import annotations

import argparse
import asyncio
import sys
from pathlib import Path

from tests.faults.program import Loaded
from tests.faults.running import FAULTS, lacks, run
from tests.faults.tally import Tally, table

_TABLE = Path(__file__).with_name("README.md")
_BEGIN, _END = "<!-- faults: begin -->", "<!-- faults: end -->"


def _write(lines: list[str]) -> None:
    before, _begin, rest = _TABLE.read_text("utf-8").partition(_BEGIN)
    after = rest.partition(_END)[2]
    shown = "\n".join(lines)
    _TABLE.write_text(f"{before}{_BEGIN}\n\n{shown}\n\n{_END}{after}", "utf-8")


async def _all(words: str, quick: bool) -> list[Tally]:
    found = []
    with Loaded() as loaded:
        for fault in FAULTS:
            if words not in fault.name:
                continue
            for database in fault.databases:
                reason = lacks(fault, database)
                if reason:
                    print(f"left out, {reason}: {fault.name}", file=sys.stderr)
                    continue
                found.append(await run(loaded, fault, database, quick=quick))
                print("\t".join(found[-1].cells()), file=sys.stderr)
    return found


def main() -> int:
    """Inject all faults and print the table; the exit code is 1 if anything was lost or doubled."""
    parser = argparse.ArgumentParser(prog="python -m tests.faults")
    parser.add_argument("words", nargs="?", default="", help="only faults whose name holds these words")
    parser.add_argument("--quick", action="store_true", help="each a few times, as in the test suite")
    parser.add_argument("--write", action="store_true", help="put the table into README.md")
    wanted = parser.parse_args()
    found = asyncio.run(_all(wanted.words, wanted.quick))
    lines = table(found)
    if wanted.write:
        _write(lines)
    else:
        print("\n".join(lines))
    return 0 if all(one.clean for one in found) else 1


if __name__ == "__main__":
    sys.exit(main())
