"""One check against a source outside this project."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from enum import Enum


class Mark(Enum):
    """How the expected value is known."""

    READ = "read"  # the source's text or table was seen
    COMPUTED = "computed by a general library"  # in the same run, by a library that others use too
    # By hand, or by another program with the same formula and coefficients: shows errors of copying and
    # coding, not of the formula.
    APART = "worked apart"
    MEMORY = "from memory"
    PRACTICE = "common practice, no source"


Value = float | tuple[float, float] | str


@dataclass(frozen=True, slots=True)
class Check:
    """One published (or otherwise outside) value and this program's value for it.

    `expected` is a number, or a pair (low, high) if the source gives a range, or a word if the answer is a
    state, or a function that returns one of these where a library is slow to load. `tolerance` is absolute,
    in `unit`; it is unused for ranges and words.
    """

    rule: str  # the rule of the trade, e.g. "strength"
    what: str  # the compared quantity, in words
    source: str  # document and place, or 'common practice, no source'
    mark: Mark
    expected: Value | Callable[[], Value]
    got: Callable[[], float | str]
    unit: str = ""
    tolerance: float = 0.0

    @property
    def value(self) -> Value:
        """The outside value."""
        return self.expected() if callable(self.expected) else self.expected

    def passes(self, got: float | str) -> bool:
        """Whether `got` agrees with the source within the stated tolerance or range."""
        value = self.value
        if isinstance(value, str) or isinstance(got, str):
            return got == value
        if isinstance(value, tuple):
            low, high = value
            return low <= got <= high
        return abs(got - value) <= self.tolerance
