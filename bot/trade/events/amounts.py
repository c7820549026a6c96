"""Amounts of each preparation for an event, and the latest day to make it.

What is not known before an event is taken as independent relative spreads: how many drinks are served, how
they are shared among several drinks, the sprays of a drink and the size of a spray. The amount is enough nine
times in ten by the normal approximation: mean plus 1.2816 standard deviations (quantile of the standard
normal distribution at 0.9). A range of sprays or of their size counts as uniform: its standard deviation is
its width divided by the square root of 12. As a product of spreads is skewed, the amount was enough for 88.7
to 89.2 % of 200,000 simulated events (tests/outside/checks_events.py).

What earlier events of the bar used for each expected drink takes the place of sprays and sizes. Such a rate
is a product of positive factors, and its logarithm counts as normal. From n logarithms the amount for the
next event is the upper end of a prediction interval of a normal sample, exp(mean + t * s * sqrt(1 + 1/n)):
G. J. Hahn and W. Q. Meeker, Statistical Intervals, on the lognormal distribution. As one or two events show
no spread, s is taken together with the assumed spread, which counts as _BELIEVED_EVENTS events: the
predictive Student distribution of a normal sample with a scaled inverse chi-squared variance, A. Gelman and
others, Bayesian Data Analysis, 3rd edition, sections 2.6 and 3.2 (both from memory; checked by integration
and by simulation in tests/outside/checks_events.py).

The interval is taken of logarithms because the assumed spread is relative. As a share of the sample's mean it
is too small wherever that mean is too low, and such an interval held only 88 % after one event and 89 % after
two. The spread of a logarithm does not depend on the mean.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from statistics import fmean

from bot.trade.numbers.student_t import two_sided_quantile

ENOUGH_AT_90 = 1.2815515655446004
# Relative standard deviations. Common practice, no source.
DRINKS_SPREAD = 0.10
SHARE_SPREAD = 0.25
# The number of events that the assumed spread weighs as much as. Common practice, no source.
_BELIEVED_EVENTS = 4
# Guests that one open bottle serves, and spare sprayers of each preparation. Common practice, no source.
GUESTS_A_SPRAYER = 100
SPARE_SPRAYERS = 1


@dataclass(frozen=True, slots=True)
class Need:
    """The likely amount in mL, the amount that is enough nine times in ten, and the margin between."""

    likely_ml: float
    enough_ml: float

    @property
    def margin(self) -> float:
        """The margin as a share of the likely amount."""
        return self.enough_ml / self.likely_ml - 1 if self.likely_ml else 0.0


def uniform_spread(low: float, high: float) -> float:
    """Return the relative standard deviation of a value anywhere in a range."""
    middle = (low + high) / 2
    return 0.0 if not middle else (high - low) / math.sqrt(12) / middle


def need(
    drinks: float, shared: bool, sprays: tuple[float, float], spray_ml: tuple[float, float], loss_share: float
) -> Need:
    """Return the need of a preparation for a number of drinks; `shared` if guests choose among several."""
    likely = drinks * sum(sprays) / 2 * sum(spray_ml) / 2
    spread = math.hypot(_event_spread(shared), uniform_spread(*sprays), uniform_spread(*spray_ml))
    enough = likely * (1 + ENOUGH_AT_90 * spread) / (1 - loss_share)
    return Need(likely, enough)


def _event_spread(shared: bool) -> float:
    """Return the assumed relative standard deviation from one event to another."""
    return math.hypot(DRINKS_SPREAD, SHARE_SPREAD if shared else 0.0)


def learned_need(drinks: float, shared: bool, used: Sequence[float]) -> Need:
    """Return the need by the mL that earlier events used, above 0, for each expected drink, losses included.

    The likely amount is the geometric mean, which the next event passes as often as not.
    """
    logs = [math.log(one) for one in used]
    mean = fmean(logs)
    believed = _BELIEVED_EVENTS * math.log1p(_event_spread(shared) ** 2)
    freedom = _BELIEVED_EVENTS + len(used) - 1
    variance = (believed + sum((one - mean) ** 2 for one in logs)) / freedom
    margin = two_sided_quantile(0.8, freedom) * math.sqrt(variance * (1 + 1 / len(used)))
    likely = drinks * math.exp(mean)
    return Need(likely, likely * math.exp(margin))


def latest_to_make(day: date, rest_hours: float, tries: int = 2) -> date:
    """Return the last day to start so that a failed batch can be made and rested once more before the day."""
    return day - timedelta(days=1 + tries * math.ceil(rest_hours / 24))


def sprayers(guests: int) -> int:
    """Return how many sprayers of one preparation to take."""
    return math.ceil(guests / GUESTS_A_SPRAYER) + SPARE_SPRAYERS
