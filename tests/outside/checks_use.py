"""Use per day against worked Gamma-Poisson examples, and Gamma quantiles against scipy."""

from __future__ import annotations

from datetime import date, timedelta
from decimal import Decimal

from scipy import stats

from bot.trade.numbers.gamma import gamma_quantile
from bot.trade.planning.use import UsedUp, estimate_use
from tests.outside.check import Check, Mark

_CONJUGATE = (
    "A. Gelman and others, Bayesian Data Analysis, exercise 2.18, in a public solution: "
    "Gamma(a, b) and y ~ Poisson(x r) give Gamma(a + sum y, b + sum x)"
)
_PLAIN = (
    "a public compendium on Poisson-Gamma conjugacy: flat prior, counts 20, 24, 23 give Gamma(67, 3), "
    "mean 22.33"
)
_WILSON = "scipy.stats.gamma; formula in the documentation of R's fastmatrix"


def _quantile(probability: float, shape: float) -> Check:
    exact = float(stats.gamma.ppf(probability, shape, scale=1 / shape))
    return Check(
        "use",
        f"{probability:.0%} point of a Gamma variable of mean 1 and shape {shape:g}",
        _WILSON,
        Mark.COMPUTED,
        exact,
        lambda: gamma_quantile(probability, shape),
        "",
        0.03 * exact,
    )


def _three_counts() -> float:
    # The compendium counts single events over three days.
    use = estimate_use([], used_up=UsedUp(67, 67, 3))
    return use.a_week / 7


def _conjugate() -> float:
    """Return the mean after a stated 2 a day and four bottles of one unit in ten days."""
    use = estimate_use([], said=2.0, used_up=UsedUp(4, 4, 10))
    return use.a_week / 7


def _shape() -> float:
    return estimate_use([], said=2.0, used_up=UsedUp(4, 4, 10)).shape


def _all_days_alike() -> float:
    days = [(date(2026, 7, 20) + timedelta(days=number), Decimal(12)) for number in range(28)]
    return estimate_use(days).a_week


CHECKS: list[Check] = [
    *(_quantile(probability, shape) for shape in (2, 6, 20, 100) for probability in (0.05, 0.1, 0.9, 0.95)),
    Check("use", "mean after counts 20, 24, 23", _PLAIN, Mark.READ, 22.33, _three_counts, "", 0.005),
    Check(
        "use",
        "mean of Gamma(6, 3) after 4 events in 10 days",
        _CONJUGATE + "; (6 + 4) / (3 + 10)",
        Mark.APART,
        10 / 13,
        _conjugate,
        "",
        1e-12,
    ),
    Check("use", "shape of the same", _CONJUGATE, Mark.APART, 10.0, _shape, "", 0),
    Check(
        "use",
        "four weeks of 12 a day, nothing said",
        "the average of what was counted",
        Mark.APART,
        84.0,
        _all_days_alike,
        "a week",
        1e-9,
    ),
]
