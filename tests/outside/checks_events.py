"""Amounts for an event: the quantile and the spreads by scipy, and simulated events."""

from __future__ import annotations

import numpy as np
from scipy import stats

from bot.trade.events.amounts import DRINKS_SPREAD, ENOUGH_AT_90, SHARE_SPREAD, need, uniform_spread
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


CHECKS: list[Check] = [
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
