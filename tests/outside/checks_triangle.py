"""The triangle test: critical numbers, and the error rates of its sequential form by simulation."""

from __future__ import annotations

from collections.abc import Callable

from scipy import stats

from bot.trade.trials.triangle import DISCRIMINATORS, FALSE_ALARM, MISS, critical_number
from tests.outside.check import Check, Mark
from tests.trade.trials.error_rates import simulated

_BINOMIAL = "binomial law with p = 1/3 by scipy.stats; the test: ISO 4120:2021 (scope read)"
_WALD = "error rates aimed at (Wald 1947); the walk ends beyond its bounds, so fewer errors"


def _scipy(tastings: int) -> float:
    return float(stats.binom.isf(0.05, tastings, 1 / 3)) + 1


def _ours(tastings: int) -> Callable[[], float]:
    return lambda: float(critical_number(tastings))


CHECKS: list[Check] = [
    *(
        Check(
            "triangle test",
            f"fewest right of {tastings} at 5 %",
            _BINOMIAL,
            Mark.COMPUTED,
            _scipy(tastings),
            _ours(tastings),
        )
        for tastings in (6, 10, 12, 15, 18, 20, 24, 30, 36)
    ),
    Check(
        "triangle test",
        "share of 2,000 simulated tests that say they can tell, nobody can",
        _WALD,
        Mark.COMPUTED,
        (0.03, FALSE_ALARM + 0.005),
        lambda: simulated(0.0).different,
    ),
    Check(
        "triangle test",
        "share of 2,000 simulated tests that say they cannot tell, half can",
        _WALD,
        Mark.COMPUTED,
        (0.03, MISS),
        lambda: 1 - simulated(DISCRIMINATORS).different,
    ),
]
