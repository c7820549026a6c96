"""Estimate daily use, with an interval, from a stated figure and from counts.

Amounts are mL, or drinks, or any one unit throughout; estimates are computed in floating point.

The model is Gamma-Poisson with exposure: amounts y in x days at a rate r per day, y ~ Poisson(x r), and a
rate known beforehand as Gamma(a, b) is afterwards Gamma(a + sum y, b + sum x): A. Gelman and others, Bayesian
Data Analysis, 3rd edition, section 2.6 and exercise 2.18 (its solution read). Days vary more than a Poisson
count does, so amounts are counted in units of their variance divided by their mean (quasi-Poisson).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal

from bot.trade.errors import OutOfRangeError, TradeError
from bot.trade.numbers.gamma import gamma_quantile
from bot.trade.numbers.ranges import Range

# A stated figure is assumed right within a factor of two either way, nine times in ten: the 95 % point of a
# Gamma distribution of this shape is four times its 5 % point. Common practice, no source.
SAID_SHAPE = 6.0
# The standard deviation of a day, as a share of its weekday's average, and the number of days at which the
# counted days weigh as much as this assumption. Common practice, no source.
_DAY_SPREAD, _SPREAD_DAYS = 0.7, 4
# The number of counted days at which a weekday's own average weighs as much as the usual pattern. Common
# practice, no source.
_PATTERN_DAYS = 1
EVERY_DAY_ALIKE = (1.0,) * 7


class NoUseError(TradeError):
    """Neither a stated figure nor a count shows any use."""


@dataclass(frozen=True, slots=True)
class UsedUp:
    """Bottles used up without any other count: each is one event in the `days` they lasted together."""

    bottles: int
    amount: float
    days: float


@dataclass(frozen=True, slots=True)
class WeekdayUse:
    """Daily use by weekday, Monday first, 0 on closed days.

    The true level is the average times a Gamma variable of mean 1 and this `shape`; a single day differs from
    the average of its weekday by `day_spread` of it (standard deviation).
    """

    means: tuple[float, ...]
    shape: float
    day_spread: float

    @property
    def a_week(self) -> float:
        """The likely use per week."""
        return sum(self.means)

    @property
    def a_day(self) -> Range[float]:
        """The use per open day on average, between the 5 % and the 95 % point."""
        mean = self.a_week / sum(one > 0 for one in self.means)
        return Range(gamma_quantile(0.05, self.shape, mean), gamma_quantile(0.95, self.shape, mean))

    def on(self, day: date) -> float:
        """Return the likely use on a date."""
        return self.means[day.weekday()]

    def likely(self, first: date, days: int) -> float:
        """Return the likely use over `days` days starting on `first`."""
        return sum(self.on(first + timedelta(days=number)) for number in range(days))

    def at_least(self, first: date, days: int, chance: float = 0.9) -> float:
        """Return the use that `days` days starting on `first` reach with this probability.

        A Gamma variable with the mean and variance of the sum: of the level, and of its single days.
        """
        amounts = [self.on(first + timedelta(days=number)) for number in range(days)]
        likely = sum(amounts)
        if not likely:
            return 0.0
        variance = likely**2 / self.shape + sum((self.day_spread * one) ** 2 for one in amounts)
        return gamma_quantile(1 - chance, likely**2 / variance, likely)


def estimate_use(
    days: Sequence[tuple[date, Decimal]],
    *,
    said: float | None = None,
    used_up: UsedUp | None = None,
    usual: Sequence[float] = EVERY_DAY_ALIKE,
    one: float = 0.0,
) -> WeekdayUse:
    """Return the use by weekday from the stated use per open day, the counted days and the bottles used up.

    Count a day without use as 0. `usual` is the relative volume of each weekday, 0 if closed; `one` is the
    smallest amount used at once. Raises NoUseError without any use, OutOfRangeError for a negative amount.
    """
    for _day, amount in days:
        if not amount >= 0:
            raise OutOfRangeError("use", float(amount), 0, None, "")
    pattern = _pattern(days, usual)
    seen = [(day.weekday(), float(amount)) for day, amount in days if pattern[day.weekday()]]
    total, exposure = sum(amount for _day, amount in seen), sum(pattern[number] for number, _amount in seen)
    spread = _day_spread(seen, pattern, total / exposure if total else 0.0)
    shape = rate = 0.0
    if said:
        shape, rate = SAID_SHAPE, SAID_SHAPE / said
    if total or (said and seen):
        unit = max(one, spread**2 * (total / exposure or said or 0.0))
        shape, rate = shape + total / unit, rate + exposure / unit
    if used_up is not None and used_up.amount > 0:
        shape, rate = shape + used_up.bottles, rate + used_up.bottles * used_up.days / used_up.amount
    if not shape:
        raise NoUseError
    return WeekdayUse(tuple(share * shape / rate for share in pattern), shape, spread)


def _pattern(days: Sequence[tuple[date, Decimal]], usual: Sequence[float]) -> list[float]:
    """Return the relative volume of each weekday; the open ones average 1."""
    usual = _levelled(usual)
    totals, counts = [0.0] * 7, [0] * 7
    for day, amount in days:
        totals[day.weekday()] += float(amount)
        counts[day.weekday()] += 1
    if not any(totals):
        return usual
    mean = sum(totals) / len(days)
    return _levelled(
        [
            (totals[number] / mean + _PATTERN_DAYS * usual[number]) / (counts[number] + _PATTERN_DAYS)
            for number in range(7)
        ]
    )


def _levelled(shares: Sequence[float]) -> list[float]:
    average = sum(shares) / max(1, sum(one > 0 for one in shares))
    return [one / average for one in shares] if average else list(EVERY_DAY_ALIKE)


def _day_spread(seen: Sequence[tuple[int, float]], pattern: Sequence[float], level: float) -> float:
    """Return the standard deviation of a day around its weekday's average, as a share of it."""
    believed = _SPREAD_DAYS * _DAY_SPREAD**2
    if not level:
        return _DAY_SPREAD
    squares = sum((amount / (level * pattern[number]) - 1) ** 2 for number, amount in seen)
    freedom = len(seen) - len({number for number, _amount in seen})
    return math.sqrt((believed + squares) / (_SPREAD_DAYS + freedom))
