"""Morning par of fresh fruit: the newsvendor's critical fractile, by weekday.

One too few costs `underage`, one too many `overage`, both in money for one fruit. The best par is the
smallest quantity that covers demand with the probability underage / (underage + overage): K. J. Arrow, T.
Harris and J. Marschak, Econometrica 19, 1951 (from memory); F(Q*) = cu / (cu + co) in course notes (read).
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction
from statistics import NormalDist, fmean, stdev, variance

from bot.trade.errors import OutOfRangeError, TradeError
from bot.trade.numbers.student_t import two_sided_quantile

# Weeks of data from which a par has some support, and much. Common practice, no source.
SOME_WEEKS, MANY_WEEKS = 4, 12
# Counts with a variance of at most this many times their mean count as Poisson. Common practice, no source.
_POISSON_DISPERSION = 1.5


class NoDemandError(TradeError):
    """There is no day with logged demand."""


class Backing(StrEnum):
    """How much data, in weeks, supports a par."""

    FEW_WEEKS = "few weeks"
    SOME_WEEKS = "some weeks"
    MANY_WEEKS = "many weeks"


class ParMethod(StrEnum):
    """The method behind a par."""

    EMPIRICAL = "from the days themselves"
    POISSON = "from a Poisson distribution"
    NORMAL = "from a normal distribution"


@dataclass(frozen=True, slots=True)
class DemandDay:
    """Fruit wanted on one business day; `sold_out` means it ran out, so demand may have been higher."""

    day: date
    wanted: int
    sold_out: bool = False


@dataclass(frozen=True, slots=True)
class Par:
    """A par and its uncertainty.

    `low` and `high` bound the best par with probability `coverage` (about four in five); None where there are
    too few days to bound it. `days` is the number of logged days, in `weeks` calendar weeks. `at_least` means
    that fruit ran out on days that decide the answer: the true par may be higher.
    """

    quantity: int
    method: ParMethod
    low: int | None
    high: int | None
    coverage: float
    days: int
    weeks: int
    at_least: bool

    @property
    def backing(self) -> Backing:
        """How much data, in weeks, supports the par."""
        return backing(self.weeks)


def backing(weeks: int) -> Backing:
    """Classify a number of weeks of data: some from 4, many from 12 (common practice)."""
    if weeks >= MANY_WEEKS:
        return Backing.MANY_WEEKS
    return Backing.SOME_WEEKS if weeks >= SOME_WEEKS else Backing.FEW_WEEKS


def critical_fractile(underage: Decimal, overage: Decimal) -> Fraction:
    """Return the probability, 0 to 1, with which to cover demand: cu / (cu + co), exact.

    Raises OutOfRangeError unless both are at least 0 and one is above.
    """
    for name, cost in (("underage", underage), ("overage", overage)):
        if not cost >= 0:
            raise OutOfRangeError(name, float(cost), 0, None, "")
    if underage + overage == 0:
        raise OutOfRangeError("underage", 0, 0, None, "")
    return Fraction(underage) / (Fraction(underage) + Fraction(overage))


def fractile_from_prices(price: Decimal, cost: Decimal, salvage: Decimal = Decimal(0)) -> Fraction:
    """Return the critical fractile for buying at `cost`, selling at `price` and salvaging at `salvage`.

    Raises OutOfRangeError when it is sold below cost or salvaged above it.
    """
    return critical_fractile(price - cost, cost - salvage)


def fruit_overage(price: Decimal, spoiled_share: Decimal, salvage: Decimal = Decimal(0)) -> Decimal:
    """Return the cost of one fruit too many: its price less salvage (juice), times the share that spoils.

    `spoiled_share` (0 to 1) is the logged share of leftovers that is eventually thrown out; the rest is used
    the next day. Raises OutOfRangeError.
    """
    if not 0 <= spoiled_share <= 1:
        raise OutOfRangeError("spoiled share", float(spoiled_share), 0, 1, "")
    if not 0 <= salvage <= price:
        raise OutOfRangeError("salvage", float(salvage), 0, float(price), "")
    return spoiled_share * (price - salvage)


def normal_par(mean: float, deviation: float, fractile: Fraction) -> float:
    """Return the par for normal demand, not rounded; never below 0. Raises OutOfRangeError."""
    _check_fractile(fractile)
    if not deviation > 0:
        raise OutOfRangeError("deviation", deviation, 0, None, "")
    return max(0.0, NormalDist(mean, deviation).inv_cdf(float(fractile)))


def uniform_par(low: float, high: float, fractile: Fraction) -> float:
    """Return the par for demand spread evenly from `low` to `high`, not rounded. Raises OutOfRangeError."""
    _check_fractile(fractile)
    if not low <= high:
        raise OutOfRangeError("high", high, low, None, "")
    return low + float(fractile) * (high - low)


def poisson_par(mean: float, fractile: Fraction) -> int:
    """Return the smallest count that covers Poisson demand with at least the probability `fractile`.

    Raises OutOfRangeError.
    """
    _check_fractile(fractile)
    if not 0 <= mean <= 700:  # beyond this, exp(-mean) is no longer a normal float
        raise OutOfRangeError("mean", mean, 0, 700, "")
    term = total = math.exp(-mean)
    count = 0
    while total < float(fractile):
        count += 1
        term *= mean / count
        if total + term == total and count > mean:
            break
        total += term
    return count


def discrete_par(weights: Mapping[int, int | Fraction], fractile: Fraction) -> int:
    """Return the smallest demand at which the cumulative share of the weights reaches `fractile`.

    `weights` maps each demand to its frequency or probability. Exact, so that 4 of 6 days do reach 6/9.
    Raises NoDemandError, OutOfRangeError.
    """
    if not 0 <= fractile <= 1:
        raise OutOfRangeError("fractile", float(fractile), 0, 1, "")
    everything = sum(weights.values(), Fraction(0))
    if everything == 0:
        raise NoDemandError
    reached = Fraction(0)
    for demand in sorted(weights):
        reached += weights[demand]
        if weights[demand] and reached >= fractile * everything:
            return demand
    return max(weights)


def par(days: Sequence[DemandDay], fractile: Fraction) -> Par:
    """Return the par for similar days, for example all Fridays.

    Below twelve days the answer is one of the days (their empirical quantile); from twelve on it comes from a
    Poisson distribution if the counts spread like one, otherwise from a normal distribution. Raises
    NoDemandError, OutOfRangeError.
    """
    if not days:
        raise NoDemandError
    wanted = [one.wanted for one in days]
    if min(wanted) < 0:
        raise OutOfRangeError("wanted", min(wanted), 0, None, "")
    method = _method(wanted, fractile)
    if method is ParMethod.EMPIRICAL:
        quantity = discrete_par({demand: wanted.count(demand) for demand in wanted}, fractile)
        low, high, coverage = _order_interval(sorted(wanted), float(fractile))
    elif method is ParMethod.POISSON:
        quantity = poisson_par(fmean(wanted), fractile)
        low, high = (poisson_par(mean, fractile) for mean in _mean_interval(wanted))
        coverage = _CONFIDENCE
    else:
        quantity = math.ceil(normal_par(fmean(wanted), stdev(wanted), fractile))
        low, high = (math.ceil(max(0.0, end)) for end in normal_par_interval(wanted, fractile))
        coverage = _CONFIDENCE
    weeks = len({one.day.isocalendar()[:2] for one in days})
    at_least = any(one.sold_out and one.wanted <= quantity for one in days)
    return Par(quantity, method, low, high, coverage, len(days), weeks, at_least)


def par_by_weekday(days: Sequence[DemandDay], fractile: Fraction) -> dict[int, Par]:
    """Return the par of each weekday (0 for Monday) that was logged. Raises as `par` does."""
    if not days:
        raise NoDemandError
    by_weekday: dict[int, list[DemandDay]] = {}
    for one in days:
        by_weekday.setdefault(one.day.weekday(), []).append(one)
    return {number: par(by_weekday[number], fractile) for number in sorted(by_weekday)}


# Four in five: a par is a working number, and a higher coverage would have no bounds for months.
_CONFIDENCE = 0.8


def normal_par_interval(
    wanted: Sequence[float], fractile: Fraction, confidence: float = _CONFIDENCE
) -> tuple[float, float]:
    """Return the confidence interval of a par for normal demand.

    Large-sample error of a normal quantile, s * sqrt(1/n + z^2 / (2 (n - 1))), times Student's t (from
    memory; within a tenth of the exact non-central t interval of scipy from twelve days on). Raises
    OutOfRangeError.
    """
    z = NormalDist().inv_cdf(float(fractile))
    count, deviation = len(wanted), stdev(wanted)
    error = deviation * math.sqrt(1 / count + z * z / (2 * (count - 1)))
    half = two_sided_quantile(confidence, count - 1) * error
    middle = fmean(wanted) + z * deviation
    return middle - half, middle + half


def _method(wanted: Sequence[int], fractile: Fraction) -> ParMethod:
    if len(wanted) < MANY_WEEKS or not 0 < fractile < 1 or len(set(wanted)) == 1:
        return ParMethod.EMPIRICAL
    if variance(wanted) <= _POISSON_DISPERSION * fmean(wanted) <= 700:
        return ParMethod.POISSON
    return ParMethod.NORMAL


def _mean_interval(wanted: Sequence[int]) -> tuple[float, float]:
    # Score interval of a Poisson mean: (T + z^2/2 -+ z sqrt(T + z^2/4)) / n
    z = NormalDist().inv_cdf((1 + _CONFIDENCE) / 2)
    total, count = sum(wanted), len(wanted)
    middle, half = total + z * z / 2, z * math.sqrt(total + z * z / 4)
    return max(0.0, middle - half) / count, (middle + half) / count


def _order_interval(ordered: Sequence[int], fractile: float) -> tuple[int | None, int | None, float]:
    """Return the distribution-free interval of a quantile between two of the days, and its coverage.

    The number of days below the quantile is binomial, so a count of days bounds each tail; None where not
    even the outermost day bounds it.
    """
    count = len(ordered)
    tail = (1 - _CONFIDENCE) / 2
    shares = [math.comb(count, k) * fractile**k * (1 - fractile) ** (count - k) for k in range(count + 1)]
    below = [math.fsum(shares[: k + 1]) for k in range(count + 1)]  # P(at most k days are below it)
    lowest = max((j for j in range(1, count + 1) if below[j - 1] <= tail), default=None)
    highest = min((k for k in range(1, count + 1) if 1 - below[k - 1] <= tail), default=None)
    coverage = (1.0 if highest is None else below[highest - 1]) - (
        0.0 if lowest is None else below[lowest - 1]
    )
    return (
        None if lowest is None else ordered[lowest - 1],
        None if highest is None else ordered[highest - 1],
        coverage,
    )


def _check_fractile(fractile: Fraction) -> None:
    if not 0 < fractile < 1:
        raise OutOfRangeError("fractile", float(fractile), 0, 1, "")
