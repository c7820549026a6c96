"""python -m tests.trade.trials.error_rates: how often the sequential triangle test is wrong.

Simulated panels taste the glasses that the rule serves, guessing where they cannot tell. `--write` renews
ERROR_RATES.md.
"""

from __future__ import annotations

import random
from pathlib import Path

from bot.trade.trials.triangle import Answer, Rates, judge, rates, serving
from tests.written import print_or_write

TESTS = 2000
_TABLE = Path(__file__).with_name("ERROR_RATES.md")
_SHARES = (0.0, 0.1, 0.25, 0.5, 0.75, 1.0)


def simulated(can_tell: float, tests: int = TESTS, seed: int = 16) -> Rates:
    """Return the share of tests that say 'different', and the mean number of tastings."""
    source = random.Random(seed)
    different = tastings = 0
    for number in range(tests):
        right: list[bool] = []
        while (answer := judge(right)) is Answer.OPEN:
            odd = serving(seed * tests + number, len(right)).odd
            picked = odd if source.random() < can_tell else source.randrange(3)
            right.append(picked == odd)
        different += answer is Answer.DIFFERENT
        tastings += len(right)
    return Rates(different / tests, tastings / tests)


def table() -> list[str]:
    """Return the lines of ERROR_RATES.md."""
    lines = [
        "# How often the sequential triangle test says that they can tell",
        "",
        f"{TESTS:,} simulated tests a row, and exact rates; `python -m tests.trade.trials.error_rates`.",
        "With nobody who can, the answer is wrong; with half or more, its absence is.",
        "",
        "| who can tell | says so, simulated | says so, exact | tastings, simulated | tastings, exact |",
        "| -- | -- | -- | -- | -- |",
    ]
    for share in _SHARES:
        seen, exact = simulated(share), rates(share)
        row = (f"{share:.0%}", f"{seen.different:.1%}", f"{exact.different:.1%}")
        lines.append("| " + " | ".join((*row, f"{seen.tastings:.1f}", f"{exact.tastings:.1f}")) + " |")
    return lines


if __name__ == "__main__":
    print_or_write("tests.trade.trials.error_rates", _TABLE, lambda: "\n".join(table()) + "\n")
