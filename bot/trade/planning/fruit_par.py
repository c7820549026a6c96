"""How much fresh fruit to have in the morning: the newsvendor's critical fractile, by weekday.

Having one too few costs `underage`, one too many `overage`, both in money for
one fruit. The best par is the smallest quantity that covers demand with the
chance underage / (underage + overage): K. J. Arrow, T. Harris and J. Marschak,
Econometrica 19, 1951 (from memory); F(Q*) = cu / (cu + co) in course notes
(read).
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
from bot.trade.planning.plan import MANY_WEEKS, Backing, backing

# Counts whose variance is at most this many times their mean pass for Poisson. Common practice, no source.
_POISSON_DISPERSION = 1.5


class NoDemandError(TradeError):
    """No day with logged demand was given."""


class ParMethod(StrEnum):
    """How the par was found."""

    EMPIRICAL = "from the days themselves"
    POISSON = "from a Poisson distribution"
    NORMAL = "from a normal distribution"


@dataclass(frozen=True, slots=True)
class DemandDay:
    """Fruit wanted on one business day; `sold_out` when it ran out, so that more might have been wanted."""

    day: date
    wanted: int
    sold_out: bool = False


@dataclass(frozen=True, slots=True)
class Par:
    """Fruit to have, and how sure that is.

    `low` and `high` hold the best par with the chance `coverage` (about four
    in five); None where so few days cannot bound it. `days` is how many were
    logged, on `weeks` calendar weeks. `at_least` says that fruit ran out on
    days that decide the answer: the true par may be higher.
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
        """How many weeks of data this rests on."""
        return backing(self.weeks)


def critical_fractile(underage: Decimal, overage: Decimal) -> Fraction:
    """Return the chance, 0 to 1, with which demand should be covered: cu / (cu + co), exact.

    Raises OutOfRangeError unless both are at least 0 and one is above.
    """
    for name, cost in (("underage", underage), ("overage", overage)):
        if not cost >= 0:
            raise OutOfRangeError(name, float(cost), 0, None, "")
    if underage + overage == 0:
        raise OutOfRangeError("underage", 0, 0, None, "")
    return Fraction(underage) / (Fraction(underage) + Fraction(overage))


def fractile_from_prices(price: Decimal, cost: Decimal, salvage: Decimal = Decimal(0)) -> Fraction:
    """Return the critical fractile of a thing bought at `cost`, sold at `price`, left over worth `salvage`.

    Raises OutOfRangeError when it is sold below cost or salvaged above it.
    """
    return critical_fractile(price - cost, cost - salvage)


def fruit_overage(price: Decimal, spoiled_share: Decimal, salvage: Decimal = Decimal(0)) -> Decimal:
    """Return what one fruit too many costs: its price less salvage (juice), for the share that spoils.

    `spoiled_share` (0 to 1) is how much of what is left over at close is
    thrown out in the end, as logged; the rest is used the next day. Raises
    OutOfRangeError.
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
    """Return the smallest count that Poisson demand stays within, with at least the chance `fractile`.

    Raises OutOfRangeError.
    """
    _check_fractile(fractile)
    if not 0 <= mean <= 700:  # beyond that exp(-mean) is no longer a normal float
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
    """Return the smallest demand whose share of the weights, with all below it, reaches `fractile`.

    `weights` maps each demand to how often it came, or its probability. Exact,
    so that 4 of 6 days do reach 6/9. Raises NoDemandError, OutOfRangeError.
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
    """Return the par for days that are alike, say all Fridays.

    Below twelve days the answer is one of the days themselves (their empirical
    quantile); from then on a Poisson distribution where the counts spread like
    one, a normal distribution otherwise. Raises NoDemandError,
    OutOfRangeError.
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


# Four in five: a par is a working number, and a narrower promise would have no bounds for months.
_CONFIDENCE = 0.8


def normal_par_interval(
    wanted: Sequence[float], fractile: Fraction, confidence: float = _CONFIDENCE
) -> tuple[float, float]:
    """Return the ends between which the par of normal demand lies with this confidence.

    Large-sample error of a normal quantile, s * sqrt(1/n + z^2 / (2 (n - 1))),
    times Student's t (from memory; within a tenth of the exact non-central t
    interval of scipy from twelve days on). Raises OutOfRangeError.
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
    """Distribution-free interval of a quantile between two of the days, and what it covers.

    The number of days below the quantile is binomial, so each tail is bounded
    by a count of days; None where not even the outermost day bounds it.
    """
    count = len(ordered)
    tail = (1 - _CONFIDENCE) / 2
    shares = [math.comb(count, k) * fractile**k * (1 - fractile) ** (count - k) for k in range(count + 1)]
    below = [math.fsum(shares[: k + 1]) for k in range(count + 1)]  # P(at most k days lie below it)
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
