"""Amounts for an event: quantile, spreads and prediction by scipy, and simulated events."""

from __future__ import annotations

import numpy as np
from scipy import optimize, stats

from bot.trade.events.amounts import (
    DRINKS_SPREAD,
    ENOUGH_AT_90,
    SHARE_SPREAD,
    learned_need,
    need,
    uniform_spread,
)
from tests.outside.check import Check, Mark

_SPRAYS, _SPRAY_ML, _DRINKS = (2.0, 3.0), (0.07, 0.10), 600.0
_EVENTS = 200_000


def _share_enough(shared: bool) -> float:
    """Return the share of simulated events for which the amount was enough."""
    random = np.random.default_rng(20261129)
    drinks = _DRINKS * random.normal(1.0, DRINKS_SPREAD, _EVENTS)
    if shared:
        drinks = drinks * random.normal(1.0, SHARE_SPREAD, _EVENTS)
    used = drinks * random.uniform(*_SPRAYS, _EVENTS) * random.uniform(*_SPRAY_ML, _EVENTS)
    return float(np.mean(used <= need(_DRINKS, shared, _SPRAYS, _SPRAY_ML, 0.0).enough_ml))


_RATES = (0.17, 0.21, 0.26)  # mL a drink at three events, invented
_BARS = 20_000
_BELIEVED = 4  # the events that the assumed spread counts as


def _by_integration() -> float:
    """Return the 90 % point of the next rate: the lognormal law integrated over its variance and its mean.

    The mean of the logarithm has a flat prior, its variance a scaled inverse chi-squared one.
    """
    logs = np.log(_RATES)
    prior = stats.invgamma(_BELIEVED / 2, scale=_BELIEVED * _log_variance(DRINKS_SPREAD) / 2)
    variances = np.geomspace(1e-6, 1.0, 20_001)
    # After integrating the mean out: variance^(-(n-1)/2) exp(-sum of squares / (2 variance)).
    squares = float(((logs - logs.mean()) ** 2).sum())
    likelihood = variances ** (-(len(logs) - 1) / 2) * np.exp(-squares / (2 * variances))
    weights = prior.pdf(variances) * likelihood * np.gradient(variances)
    weights /= weights.sum()
    deviations = np.sqrt(variances * (1 + 1 / len(logs)))

    def below(rate: float) -> float:
        return float((weights * stats.norm.cdf(np.log(rate), logs.mean(), deviations)).sum()) - 0.9

    return float(optimize.brentq(below, min(_RATES), 10 * max(_RATES)))


def _log_variance(spread: float) -> float:
    """Return the variance of the logarithm of a lognormal variable with this relative standard deviation."""
    return float(np.log(1 + spread**2))


def _share_covered(events: int, lognormal: bool) -> float:
    """Return the share of simulated bars whose next event stays within the amount by earlier events."""
    random = np.random.default_rng(20261129 + events)
    variance = _log_variance(DRINKS_SPREAD) if lognormal else DRINKS_SPREAD**2
    deviations = np.sqrt(_BELIEVED * variance / random.chisquare(_BELIEVED, _BARS))[:, None]
    size = (_BARS, events + 1)
    rates = (
        np.exp(random.normal(0.0, deviations, size)) if lognormal else random.normal(1.0, deviations, size)
    )
    rates = rates[(rates > 0).all(axis=1)]
    enough = [learned_need(1.0, False, tuple(row[:-1])).enough_ml for row in rates]
    return float(np.mean(rates[:, -1] <= enough))


CHECKS: list[Check] = [
    Check(
        "events",
        "mL a drink that are enough nine times in ten, after events with 0.17, 0.21 and 0.26 mL a drink",
        "predictive distribution of a normal sample, integrated over mean and variance with scipy",
        Mark.COMPUTED,
        _by_integration(),
        lambda: learned_need(1.0, False, _RATES).enough_ml,
        "mL",
        1e-4,
    ),
    *(
        Check(
            "events",
            f"share of 20,000 simulated bars whose next event had enough, by {events} earlier, {what}",
            "simulation with numpy: each bar with a spread of its own; nine in ten is stated, the standard "
            "error is 0.0021",
            Mark.COMPUTED,
            within,
            lambda events=events, lognormal=lognormal: _share_covered(events, lognormal),  # type: ignore[misc]
        )
        for lognormal, within, what in (
            (True, (0.895, 0.905), "lognormal rates"),
            # The rule takes rates for lognormal: it errs to the side of enough where they are normal.
            (False, (0.895, 0.915), "normal rates"),
        )
        for events in (1, 2, 5)
    ),
    Check(
        "events",
        "standard normal quantile at 0.9",
        "scipy.stats.norm",
        Mark.COMPUTED,
        float(stats.norm.ppf(0.9)),
        lambda: ENOUGH_AT_90,
        "",
        1e-9,
    ),
    Check(
        "events",
        "relative standard deviation of 2 to 3 sprays, uniform",
        "scipy.stats.uniform",
        Mark.COMPUTED,
        float(stats.uniform(2, 1).std() / 2.5),
        lambda: uniform_spread(*_SPRAYS),
        "",
        1e-9,
    ),
    *(
        Check(
            "events",
            f"share of 200,000 simulated events with enough, {what}",
            "simulation with numpy: products of the spreads; the rule states nine in ten",
            Mark.COMPUTED,
            (0.88, 0.93),
            lambda shared=shared: _share_enough(shared),  # type: ignore[misc]
        )
        for shared, what in ((False, "one drink"), (True, "several drinks to choose from"))
    ),
]
