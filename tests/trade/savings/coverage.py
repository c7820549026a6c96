"""python -m tests.trade.savings.coverage: how often the before-and-after interval holds the truth.

Simulated bars throw out counts with more scatter than Poisson's (negative binomial), in weeks whose trade
varies for all fruit alike, with a season between before and after. `--write` renews COVERAGE.md.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import product
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from bot.trade.savings.before_after import Period, Verdict, effect
from tests.written import print_or_write

BARS = 2000
_TABLE = Path(__file__).with_name("COVERAGE.md")
_NIGHTS = 6
_TRADE_SPREAD = 0.15  # of the logarithm of a week's trade, the same for every fruit
_WEEKS = ((3, 3), (4, 4), (12, 3), (12, 5), (12, 12))


@dataclass(frozen=True, slots=True)
class Bars:
    """A kind of bar: weeks before and after, variance of a count over its mean, and true ratio.

    `pieces` are those of each fruit a night; by default bars differ.
    """

    before: int
    after: int
    scatter: float
    ratio: float
    pieces: float | None = None


@dataclass(frozen=True, slots=True)
class Coverage:
    """Shares of simulated bars: the interval holds the truth; a change is called more than chance."""

    holds: float
    called: float


def coverage(kind: Bars, bars: int = BARS, seed: int = 16) -> Coverage:
    """Simulate bars of this kind."""
    source = np.random.default_rng(seed)
    holds = called = 0
    for _bar in range(bars):
        drawn = source.uniform(1.5, 7, 2)
        sprayed, other = (drawn if kind.pieces is None else np.full(2, kind.pieces)) * _NIGHTS
        before = np.exp(source.normal(0, _TRADE_SPREAD, kind.before))
        after = np.exp(source.normal(0, _TRADE_SPREAD, kind.after)) * source.uniform(0.8, 1.25)
        found = effect(
            _period(source, sprayed * before, kind.scatter),
            _period(source, sprayed * kind.ratio * after, kind.scatter),
            (_NIGHTS * kind.before, _NIGHTS * kind.after),
            (_period(source, other * before, kind.scatter), _period(source, other * after, kind.scatter)),
        )
        if found.interval is None:
            raise ValueError("too few weeks to simulate")
        holds += found.interval.low <= kind.ratio <= found.interval.high
        called += found.verdict is not Verdict.CHANCE
    return Coverage(holds / bars, called / bars)


def _period(source: np.random.Generator, means: NDArray[np.float64], scatter: float) -> Period:
    rates = means if scatter == 1 else source.gamma(means / (scatter - 1), scatter - 1)
    return Period(tuple(map(float, source.poisson(rates))), (float(_NIGHTS),) * len(means))


def table() -> list[str]:
    """Return the lines of COVERAGE.md."""
    lines = [
        "# How often the before-and-after interval holds the truth",
        "",
        f"{BARS:,} simulated bars a row, six nights a week; `python -m tests.trade.savings.coverage`",
        "Called: a change is said to be more than chance; with a true change of none, that is wrong.",
        "",
        "| weeks before | weeks since | variance over mean | true change | interval holds it | called |",
        "| -- | -- | -- | -- | -- | -- |",
    ]
    for (before, after), scatter, ratio in product(_WEEKS, (1.0, 2.0, 4.0), (1.0, 0.6, 0.3)):
        found = coverage(Bars(before, after, scatter, ratio))
        true = "none" if ratio == 1 else f"{1 - ratio:.0%} less"
        row = (f"{before}", f"{after}", f"{scatter:g}", true, f"{found.holds:.1%}", f"{found.called:.1%}")
        lines.append("| " + " | ".join(row) + " |")
    return lines


if __name__ == "__main__":
    print_or_write("tests.trade.savings.coverage", _TABLE, lambda: "\n".join(table()) + "\n")
