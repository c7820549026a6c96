"""Before and after, beside other fruit: the model fitted by a general library, and its interval."""

from __future__ import annotations

from functools import cache
from math import ceil, exp, log, sqrt

import numpy as np
from numpy.typing import NDArray
from scipy import optimize, stats

from bot.trade.savings.before_after import Effect, Period, dispersion, effect
from bot.trade.savings.deciding import SCATTER, nights_to_show
from tests.outside.check import Check, Mark
from tests.trade.savings.coverage import Bars, coverage

_FIT = "Poisson log-linear model fitted by scipy.optimize (sources of the model: the module's docstring)"
_NOMINAL = "the stated 95 %; more where the scatter is rounded up to Poisson's"
_NIGHTS = 6.0
_BEFORE, _AFTER = (41, 33, 52, 38, 47), (17, 12, 20, 9)
_OTHERS_BEFORE, _OTHERS_AFTER = (28, 35, 24, 31, 30), (26, 33, 29, 22)


def _period(pieces: tuple[int, ...]) -> Period:
    return Period(tuple(map(float, pieces)), (_NIGHTS,) * len(pieces))


_CELLS = [_period(one) for one in (_BEFORE, _AFTER, _OTHERS_BEFORE, _OTHERS_AFTER)]


def _ours() -> Effect:
    return effect(_CELLS[0], _CELLS[1], (30, 24), (_CELLS[2], _CELLS[3]))


@cache
def _fitted() -> tuple[NDArray[np.float64], NDArray[np.float64], float]:
    """Return coefficients, their covariance without scatter, and the scatter; the last is the effect."""
    rows, counts = [], []
    for place, cell in enumerate(_CELLS):
        after, sprayed = place % 2, place < 2
        # Half a piece for each sum, as the rule adds, spread over the cell's weeks.
        for pieces in cell.pieces:
            rows.append([1, after, sprayed, after * sprayed])
            counts.append(pieces + 0.5 / len(cell.pieces))
    x, y = np.array(rows, dtype=float), np.array(counts)

    def loss(beta: NDArray[np.float64]) -> float:
        means = np.exp(x @ beta) * _NIGHTS
        return float((means - y * np.log(means)).sum())

    beta = optimize.minimize(loss, np.zeros(4), tol=1e-12).x
    means = np.exp(x @ beta) * _NIGHTS
    scatter = float(((y - means) ** 2 / means).sum() / (len(y) - 4))
    return beta, np.linalg.inv(x.T @ (x * means[:, None])), scatter


def _end(side: int) -> float:
    beta, covariance, scatter = _fitted()
    error = sqrt(max(scatter, 1) * covariance[3, 3])
    return exp(beta[3] + side * float(stats.t.ppf(0.975, len(_BEFORE) * 2 + len(_AFTER) * 2 - 4)) * error)


def _ends() -> tuple[float, float]:
    found = _ours().interval
    if found is None:
        raise ValueError("nine weeks have an interval")
    return found.low, found.high


def _check(what: str, expected: float, got: float, tolerance: float) -> Check:
    return Check("before and after", what, _FIT, Mark.COMPUTED, expected, lambda: got, "", tolerance)


def _shown(pieces: float, drop: float) -> float:
    """Return the share of simulated bars that show a drop after the nights that were said, six a week."""
    weeks = ceil(nights_to_show(pieces, drop) / _NIGHTS)
    return coverage(Bars(weeks, weeks, SCATTER, 1 - drop, pieces), 400).called


CHECKS: list[Check] = [
    *(
        Check(
            "before and after",
            f"share of 400 simulated bars that show a drop by {drop:.0%} after the nights said for it",
            "power aimed at: 80 % (few weeks take a little more)",
            Mark.COMPUTED,
            (0.6, 0.95),
            lambda drop=drop: _shown(4.0, drop),  # type: ignore[misc]
        )
        for drop in (0.5, 0.7)
    ),
    _check("effect of the switch, as a logarithm", float(_fitted()[0][3]), log(_ours().ratio or 0), 1e-4),
    _check("scatter of the weeks against Poisson's", _fitted()[2], dispersion(_CELLS)[0], 0.02),
    _check("95 % interval, lower end", _end(-1), _ends()[0], 0.002),
    _check("95 % interval, upper end", _end(1), _ends()[1], 0.005),
    *(
        Check(
            "before and after",
            f"share of 400 simulated bars whose interval holds the truth, scatter {scatter:g}",
            _NOMINAL,
            Mark.COMPUTED,
            (0.93, 1.0),
            lambda scatter=scatter: coverage(Bars(4, 4, scatter, 0.5), 400).holds,  # type: ignore[misc]
        )
        for scatter in (1.0, 2.0, 4.0)
    ),
]
