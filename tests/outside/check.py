"""One check against a source outside this project."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from enum import Enum


class Mark(Enum):
    """How the expected value is known."""

    READ = "read"  # the source's text or table was seen
    COMPUTED = "computed by a general library"
    MEMORY = "from memory"
    PRACTICE = "common practice, no source"


@dataclass(frozen=True, slots=True)
class Check:
    """One published (or otherwise outside) value and this program's value for it.

    `expected` is a number, or a pair (low, high) if the source gives a range, or a word if the answer is a
    state. `tolerance` is absolute, in `unit`; it is unused for ranges and words.
    """

    rule: str  # the rule of the trade, e.g. "strength"
    what: str  # the compared quantity, in words
    source: str  # document and place, or 'common practice, no source'
    mark: Mark
    expected: float | tuple[float, float] | str
    got: Callable[[], float | str]
    unit: str = ""
    tolerance: float = 0.0

    def passes(self, got: float | str) -> bool:
        """Whether `got` agrees with the source within the stated tolerance or range."""
        if isinstance(self.expected, str) or isinstance(got, str):
            return got == self.expected
        if isinstance(self.expected, tuple):
            low, high = self.expected
            return low <= got <= high
        return abs(got - self.expected) <= self.tolerance
