"""Uncertain numbers: random draws, ranges, and the inputs that matter most."""

from __future__ import annotations

import math
import random
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import TypeVar

from bot.trade.errors import OutOfRangeError, TradeError
from bot.trade.numbers.ranges import Range

# A number type that the rules accept: exact, or fast enough for thousands of draws.
Figure = TypeVar("Figure", Fraction, float)

Given = Decimal | Fraction | int
FEWEST_DRAWS = 100


@dataclass
class EstimateOrderError(TradeError):
    """The likely value of an estimate is not between its low and high ends."""

    low: Fraction
    likely: Fraction
    high: Fraction


@dataclass(frozen=True, slots=True)
class Estimate:
    """A number with a likely value somewhere from `low` to `high`, in the caller's unit.

    Raises EstimateOrderError unless low <= likely <= high.
    """

    low: Fraction
    likely: Fraction
    high: Fraction

    def __post_init__(self) -> None:
        if not self.low <= self.likely <= self.high:
            raise EstimateOrderError(self.low, self.likely, self.high)

    @classmethod
    def exactly(cls, value: Given) -> Estimate:
        """Return the estimate of a known number."""
        return cls(Fraction(value), Fraction(value), Fraction(value))

    @classmethod
    def between(cls, low: Given, high: Given, likely: Given | None = None) -> Estimate:
        """Return the estimate from `low` to `high`; the middle is likely unless given."""
        middle = (Fraction(low) + Fraction(high)) / 2 if likely is None else Fraction(likely)
        return cls(Fraction(low), middle, Fraction(high))

    @property
    def is_exact(self) -> bool:
        """Whether the number is known exactly."""
        return self.low == self.high


@dataclass(frozen=True, slots=True)
class Swing:
    """The effect of one input on a result, with the others at their likely values.

    `at_low` and `at_high` are the results at the ends of that input.
    """

    name: str
    at_low: Decimal
    at_high: Decimal

    @property
    def width(self) -> Decimal:
        """The difference between the two results."""
        return abs(self.at_high - self.at_low)


def to_decimal(value: Fraction) -> Decimal:
    """Return a fraction as a decimal of 28 digits, without further rounding."""
    return Decimal(value.numerator) / Decimal(value.denominator)


def likely_values(estimates: Mapping[str, Estimate]) -> dict[str, Fraction]:
    """Return every input at its likely value."""
    return {name: estimate.likely for name, estimate in estimates.items()}


def swings(
    rule: Callable[[Mapping[str, Fraction]], Fraction], estimates: Mapping[str, Estimate]
) -> tuple[Swing, ...]:
    """Return the effect of each inexact input on `rule`, the largest first.

    One at a time, the rest at their likely values: the data of a tornado chart. Exact; inputs without effect
    are left out.
    """
    found = []
    for name, estimate in estimates.items():
        if estimate.is_exact:
            continue
        values = likely_values(estimates)
        ends = [to_decimal(rule({**values, name: end})) for end in (estimate.low, estimate.high)]
        if ends[0] != ends[1]:
            found.append(Swing(name, *ends))
    return tuple(sorted(found, key=lambda swing: (-swing.width, swing.name)))


def draws(
    rules: Callable[[Mapping[str, float]], tuple[float, ...]],
    estimates: Mapping[str, Estimate],
    count: int = 4000,
    seed: int = 1,
) -> list[tuple[float, ...]]:
    """Return `count` results of `rules` for inputs drawn independently from triangular distributions.

    The distribution runs from low to high with its peak at the likely value, the usual shape when only those
    three are known (common practice, no source). The same seed gives the same draws. Raises OutOfRangeError
    below 100 draws.
    """
    if count < FEWEST_DRAWS:
        raise OutOfRangeError("draws", count, FEWEST_DRAWS, None, "")
    source = random.Random(seed)  # noqa: S311 - a repeatable simulation, no secret
    known = {name: float(one.likely) for name, one in estimates.items() if one.is_exact}
    drawn = {
        name: (float(one.low), float(one.high), float(one.likely))
        for name, one in estimates.items()
        if not one.is_exact
    }
    return [
        rules({**known, **{name: source.triangular(*ends) for name, ends in drawn.items()}})
        for _ in range(count)
    ]


def usual_range(results: list[float], share: float = 0.9) -> Range[float]:
    """Return the range that holds the middle `share` of the results, by nearest rank.

    Raises OutOfRangeError without results, or for a share not between 0 and 1.
    """
    if not 0 < share < 1:
        raise OutOfRangeError("share", share, 0, 1, "")
    if not results:
        raise OutOfRangeError("results", 0, 1, None, "")
    ordered = sorted(results)
    tail = (1 - share) / 2
    low = max(0, math.ceil(tail * len(ordered)) - 1)
    return Range(ordered[low], ordered[len(ordered) - 1 - low])
