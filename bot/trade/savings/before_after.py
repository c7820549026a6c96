"""Difference in differences of fruit thrown out: a sprayed fruit beside fruit that was not sprayed.

Pieces are counted by whole weeks, so that every weekday weighs the same and a bad crate stays within one
count. Sources, from memory: the estimate is a ratio of two ratios of rates (Card and Krueger, American
Economic Review 84, 1994, 772, on a log scale); the variance is proportional to the mean (quasi-Poisson,
McCullagh and Nelder, Generalized Linear Models, 2nd ed. 1989, 6.2); half a piece is added to each sum so that
a zero has a logarithm (Haldane, Annals of Human Genetics 20, 1956). How often the interval holds the truth:
`python -m tests.trade.savings.coverage`.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from bot.trade.errors import OutOfRangeError
from bot.trade.numbers.ranges import Range
from bot.trade.numbers.student_t import two_sided_quantile
from bot.trade.words import N_

FEWEST_NIGHTS = 14
"""Nights, in whole weeks, on either side of the switch: with fewer there is no verdict and no interval."""
FEWEST_WEEKS = 2  # one week on a side shows no scatter
_HALF = 0.5


class Verdict(StrEnum):
    """What the weeks before and after show. The values are shown to people."""

    FEW_NIGHTS = N_("too few nights to say")
    CHANCE = N_("may be chance")
    LESS = N_("less, beyond chance")
    MORE = N_("more, beyond chance")


@dataclass(frozen=True, slots=True)
class Period:
    """Whole weeks of one fruit: pieces thrown out in each, and nights (or drinks) in each, all above zero.

    Raises OutOfRangeError for a negative number, a week without exposure, or lists of different lengths.
    """

    pieces: tuple[float, ...]
    exposure: tuple[float, ...]

    def __post_init__(self) -> None:
        if len(self.pieces) != len(self.exposure):
            raise OutOfRangeError("weeks", len(self.exposure), len(self.pieces), len(self.pieces), "")
        for name, numbers in (("pieces", self.pieces), ("exposure", self.exposure)):
            for number in numbers:
                if number < 0 or (name == "exposure" and number == 0):
                    raise OutOfRangeError(name, number, 0, None, "")

    @property
    def rate(self) -> float:
        """Pieces per night (or drink); 0 without weeks."""
        return sum(self.pieces) / sum(self.exposure) if self.exposure else 0.0


@dataclass(frozen=True, slots=True)
class Effect:
    """The sprayed fruit since the switch, as a multiple of what it would be had it gone as the other fruit.

    `ratio` 0.4 means 60 % less. `interval` holds the true ratio with 95 % confidence; both are None without a
    verdict. `controlled` is False if there was no other fruit, and then the ratio is simply after to before.
    """

    verdict: Verdict
    controlled: bool
    ratio: float | None
    interval: Range[float] | None


def effect(
    before: Period, after: Period, nights: tuple[int, int], others: tuple[Period, Period] | None = None
) -> Effect:
    """Return the effect of the switch on a fruit, beside `others` (before and after) if there are any.

    `nights` are the nights before and after. No verdict below FEWEST_NIGHTS or FEWEST_WEEKS on either side,
    nor if none of the fruit was thrown out before.
    """
    cells = (before, after, *(others or ()))
    weeks = min(len(cell.pieces) for cell in cells)
    if min(nights) < FEWEST_NIGHTS or weeks < FEWEST_WEEKS or not sum(before.pieces):
        return Effect(Verdict.FEW_NIGHTS, others is not None, None, None)
    logs = [math.log((sum(cell.pieces) + _HALF) / sum(cell.exposure)) for cell in cells]
    change = logs[1] - logs[0] - (logs[3] - logs[2] if others else 0.0)
    scatter, freedom = dispersion(cells)
    error = math.sqrt(scatter * sum(1 / (sum(cell.pieces) + _HALF) for cell in cells))
    half = two_sided_quantile(0.95, freedom) * error
    verdict = Verdict.CHANCE
    if abs(change) > half:
        verdict = Verdict.LESS if change < 0 else Verdict.MORE
    interval = Range(math.exp(change - half), math.exp(change + half))
    return Effect(verdict, others is not None, math.exp(change), interval)


def dispersion(cells: Sequence[Period]) -> tuple[float, int]:
    """Return the scatter of the weeks as a multiple of Poisson's, at least 1, and its degrees of freedom.

    Pearson's chi-squared over its degrees of freedom, each period with its own rate. Less scatter than
    Poisson's is luck.
    """
    freedom = sum(len(cell.pieces) - 1 for cell in cells)
    squares = 0.0
    for cell in cells:
        for pieces, exposure in zip(cell.pieces, cell.exposure, strict=True):
            expected = cell.rate * exposure
            squares += (pieces - expected) ** 2 / expected if expected else 0.0
    return max(1.0, squares / freedom), freedom
