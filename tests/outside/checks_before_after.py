"""The fewest nights of a before-and-after comparison, against the power of comparing two Poisson rates."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal
from math import sqrt

import numpy as np
from scipy import stats

from bot.trade.fruit.balance import FEWEST_DAYS, Sureness, compare
from tests.outside.check import Check, Mark

_POWER = (
    "power of a two-sample Poisson rate test, normal approximation (a statistics program's public manual): "
    "the change in standard errors, less 1.96"
)
_RUNS = 400


def _power(before: float, now: float, nights: int) -> float:
    error = sqrt((before + now) / nights)  # pooled and own are the same with as many nights on either side
    return float(stats.norm.cdf((before - now) / error - stats.norm.ppf(0.975)))


def _called_clear(before: float, now: float, nights: int) -> Callable[[], float]:
    def share() -> float:
        source = np.random.default_rng(7)
        clear = 0
        for _ in range(_RUNS):
            earlier, later = (
                [Decimal(int(one)) for one in source.poisson(mean, nights)] for mean in (before, now)
            )
            clear += compare(later, earlier).sureness is Sureness.CLEAR
        return clear / _RUNS

    return share


def _check(what: str, before: float, now: float, nights: int) -> Check:
    power = _power(before, now, nights)
    # Welch's interval with few nights is a little wider than the normal one.
    return Check(
        "before and after",
        f"share of {what} that {nights} nights on either side call clear",
        _POWER,
        Mark.COMPUTED,
        (power - 0.12, power + 0.05),
        _called_clear(before, now, nights),
    )


CHECKS: list[Check] = [
    _check("falls from 3 pieces a night to 0.9", 3, 0.9, FEWEST_DAYS),
    _check("falls from 3 pieces a night to 1.5", 3, 1.5, FEWEST_DAYS),
    _check("falls from 3 pieces a night to 1.5", 3, 1.5, 2 * FEWEST_DAYS),
    Check(
        "before and after",
        f"share of no change at all that {FEWEST_DAYS} nights on either side call clear",
        "the 5 % level",
        Mark.COMPUTED,
        (0.01, 0.08),
        _called_clear(3, 3, FEWEST_DAYS),
    ),
]
