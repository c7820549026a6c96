"""A quantity known only as a range: 2 to 3 sprays, 0.07 to 0.10 mL per spray."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Generic, TypeVar

from bot.trade.errors import TradeError

Number = TypeVar("Number", Decimal, float, Fraction)
Other = TypeVar("Other", Decimal, float, Fraction)


@dataclass
class RangeOrderError(TradeError):
    """A range has its lower end above its upper end, or an end that is not a number."""

    low: Decimal | float | Fraction
    high: Decimal | float | Fraction


@dataclass(frozen=True, slots=True)
class Range(Generic[Number]):
    """Every value from `low` to `high`, both included, in the caller's unit.

    Sums and products follow interval arithmetic: the result contains every value that the two ranges can
    give. Raises RangeOrderError when `low` is above `high` or either is not a number.
    """

    low: Number
    high: Number

    def __post_init__(self) -> None:
        # Written this way to refuse a NaN too, because a NaN compares false with everything.
        if not self.low <= self.high:
            raise RangeOrderError(self.low, self.high)

    @classmethod
    def exactly(cls, value: Number) -> Range[Number]:
        """Return the range that holds one value only."""
        return cls(value, value)

    @classmethod
    def around(cls, first: Number, second: Number) -> Range[Number]:
        """Return the range between two values given in either order."""
        return cls(min(first, second), max(first, second))

    @property
    def width(self) -> Number:
        """The distance from the lower to the upper end."""
        return self.high - self.low

    @property
    def middle(self) -> Number:
        """The value half way between the ends."""
        return (self.low + self.high) / 2

    @property
    def is_exact(self) -> bool:
        """Whether both ends are the same value."""
        return self.low == self.high

    def contains(self, value: Number) -> bool:
        """Whether `value` lies in the range, ends included."""
        return self.low <= value <= self.high

    def __contains__(self, value: Number) -> bool:
        return self.contains(value)

    def __add__(self, other: Range[Number] | Number) -> Range[Number]:
        if isinstance(other, Range):
            return Range(self.low + other.low, self.high + other.high)
        return Range(self.low + other, self.high + other)

    __radd__ = __add__

    def __mul__(self, other: Range[Number] | Number) -> Range[Number]:
        if isinstance(other, Range):
            corners = [a * b for a in (self.low, self.high) for b in (other.low, other.high)]
            return Range(min(corners), max(corners))
        return Range.around(self.low * other, self.high * other)

    __rmul__ = __mul__

    def map(self, rule: Callable[[Number], Other]) -> Range[Other]:
        """Return the range of a monotonic `rule` over this one."""
        return Range.around(rule(self.low), rule(self.high))


def as_range(value: Range[Number] | Number) -> Range[Number]:
    """Return `value` if it is a range, else the range that holds only it."""
    return value if isinstance(value, Range) else Range.exactly(value)
