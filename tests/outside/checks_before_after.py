"""Before and after, beside other fruit: the model fitted by a general library, and its interval."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from itertools import count
from math import ceil, exp, log

import numpy as np
import statsmodels.api as sm
from scipy import stats
from statsmodels.stats.rates import power_poisson_ratio_2indep

from bot.trade.savings.before_after import Effect, Period, dispersion, effect
from bot.trade.savings.deciding import POWER, SCATTER, nights_to_show
from tests.outside.check import Check, Mark
from tests.trade.savings.coverage import Bars, coverage

_FIT = "statsmodels: GLM, Poisson, scale X2 (sources of the model: the module's docstring)"
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
def _fitted() -> tuple[float, float, float]:
    """Return the effect on the logarithm, its standard error, and the scatter."""
    rows, counts = [], []
    for place, cell in enumerate(_CELLS):
        after, sprayed = place % 2, place < 2
        # Half a piece for each sum, as the rule adds, spread over the cell's weeks.
        for pieces in cell.pieces:
            rows.append([1, after, sprayed, after * sprayed])
            counts.append(pieces + 0.5 / len(cell.pieces))
    model = sm.GLM(
        np.array(counts),
        np.array(rows, dtype=float),
        family=sm.families.Poisson(),
        exposure=np.full(len(counts), _NIGHTS),
    )
    found = model.fit(scale="X2")
    return float(found.params[3]), float(found.bse[3]), float(found.scale)


def _end(side: int) -> float:
    change, error, _scatter = _fitted()
    freedom = len(_BEFORE) * 2 + len(_AFTER) * 2 - 4
    return exp(change + side * float(stats.t.ppf(0.975, freedom)) * error)


def _power_alone(pieces: float, drop: float, nights: int) -> float:
    return float(
        power_poisson_ratio_2indep(
            pieces * (1 - drop),
            pieces,
            nights,
            value=1,
            dispersion=SCATTER,
            alternative="two-sided",
            return_results=False,
        )
    )


def _power_beside(pieces: float, drop: float, nights: int) -> float:
    """Return the power from the standard error that a fit to the expected counts gives."""
    halves = nights / 2 * np.array([pieces, pieces, pieces, pieces * (1 - drop)])
    counts = np.concatenate([0.9 * halves, 1.1 * halves])  # no model fits perfectly
    cells = np.array([[1.0, 0, 0, 0], [1, 1, 0, 0], [1, 0, 1, 0], [1, 1, 1, 1]] * 2)
    found = sm.GLM(counts, cells, family=sm.families.Poisson()).fit(scale=SCATTER)
    return float(stats.norm.cdf(abs(found.params[3]) / found.bse[3] - stats.norm.ppf(0.975)))


def _fewest(power: Callable[[float, float, int], float], pieces: float, drop: float) -> int:
    return next(nights for nights in count(14) if power(pieces, drop, nights) >= POWER)


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
    *(
        Check(
            "before and after",
            f"nights that show a drop by {drop:.0%} of 3 pieces a night, {how}",
            "statsmodels: " + source,
            Mark.COMPUTED,
            lambda power=power, drop=drop: _fewest(power, 3.0, drop),  # type: ignore[misc]
            lambda drop=drop, beside=beside: nights_to_show(3.0, drop, beside_others=beside),  # type: ignore[misc]
            "nights",
            1,
        )
        for how, beside, power, source in (
            ("alone", False, _power_alone, "power_poisson_ratio_2indep, dispersion 2, two-sided"),
            ("beside another fruit", True, _power_beside, "GLM of the expected counts, scale 2"),
        )
        for drop in (0.3, 0.5, 0.7)
    ),
    _check("effect of the switch, as a logarithm", _fitted()[0], log(_ours().ratio or 0), 1e-4),
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
