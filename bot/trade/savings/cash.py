"""Cash that changes hands by the week: before the spray and since, with an interval for the difference."""

from __future__ import annotations

import math
from collections.abc import Sequence
from statistics import fmean, variance

from bot.trade.numbers.ranges import Range
from bot.trade.numbers.student_t import two_sided_quantile


def weekly_saving(before: Sequence[float], since: Sequence[float]) -> tuple[float, Range[float] | None]:
    """Return how much less is paid a week since, and the range that holds it with 95 % confidence.

    Student's interval for two means with unequal spreads; its degrees of freedom are those of the shorter
    side, the careful bound of Welch's (Biometrika 34, 1947, from memory). No range below two weeks on a side;
    both sides need one week.
    """
    saved = fmean(before) - fmean(since)
    fewest = min(len(before), len(since))
    if fewest < 2:
        return saved, None
    error = math.sqrt(variance(before) / len(before) + variance(since) / len(since))
    half = two_sided_quantile(0.95, fewest - 1) * error
    return saved, Range(saved - half, saved + half)
