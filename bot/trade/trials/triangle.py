"""The triangle test: three coded glasses, two alike, and each taster taps the odd one.

The method, its chance of one in three and its critical numbers are those of ISO 4120:2021. The test is
sequential (Wald's probability ratio test, Sequential Analysis, 1947, from memory): it ends when the answer is
in. Error rates of the test as it is used here: `python -m tests.trade.trials.error_rates`.
"""

from __future__ import annotations

import math
import random
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import permutations

from bot.trade.errors import OutOfRangeError

CHANCE = 1 / 3
FALSE_ALARM = 0.05
"""Error rate aimed at if nobody can tell the two apart: the test says that they can."""
MISS = 0.10
"""Error rate aimed at if half the tasters can: the test says that they cannot."""
DISCRIMINATORS = 0.5
"""The share of tasters who truly can tell that must not be missed."""
MOST_TASTINGS = 30
"""The test ends here at the latest, by the critical number: 15 of 30."""
GLASSES = 3
SPRAYED, FRESH = "S", "F"
# Each order once in six servings: both are the odd one equally often, at each place.
_ORDERS = tuple(sorted({*permutations("SSF"), *permutations("SFF")}))


class Answer(StrEnum):
    """What the test says so far. The values are not stored."""

    DIFFERENT = "different"
    ALIKE = "alike"
    OPEN = "open"


@dataclass(frozen=True, slots=True)
class Serving:
    """Three glasses: their codes, what is in each, and the place (0 to 2) of the odd one."""

    codes: tuple[int, int, int]
    contents: tuple[str, str, str]

    @property
    def odd(self) -> int:
        """The place of the odd glass."""
        return next(place for place, one in enumerate(self.contents) if self.contents.count(one) == 1)


def serving(seed: int, number: int) -> Serving:
    """Return the glasses of a serving, the first is 0, which depend only on `seed` and `number`.

    Codes have three digits, so that none comes first or best.
    """
    block, place = divmod(number, len(_ORDERS))
    orders = list(_ORDERS)
    random.Random(f"{seed} orders {block}").shuffle(orders)  # noqa: S311 - hides an order, keeps no secret
    codes = random.Random(f"{seed} codes {number}").sample(range(101, 1000), GLASSES)  # noqa: S311 - as above
    first, second, third = orders[place]
    return Serving((codes[0], codes[1], codes[2]), (first, second, third))


def judge(right: Sequence[bool]) -> Answer:
    """Return the answer after these tastings, in order; those after the answer was in do not count."""
    for number in range(1, len(right) + 1):
        answer = _standing(sum(right[:number]), number)
        if answer is not Answer.OPEN:
            return answer
    return Answer.OPEN


def _step(right: bool) -> float:
    """Return the logarithm of how much likelier one tasting is if half the tasters can tell."""
    can_tell = DISCRIMINATORS + (1 - DISCRIMINATORS) * CHANCE
    return math.log(can_tell / CHANCE) if right else math.log((1 - can_tell) / (1 - CHANCE))


def critical_number(tastings: int, level: float = FALSE_ALARM) -> int:
    """Return the fewest right answers that chance gives at most at this level (one-sided binomial law).

    One more than `tastings` if not even all right are enough. Raises OutOfRangeError below one tasting.
    """
    if tastings < 1:
        raise OutOfRangeError("tastings", tastings, 1, None, "")
    tail = 0.0
    for right in range(tastings, -1, -1):
        tail += math.comb(tastings, right) * CHANCE**right * (1 - CHANCE) ** (tastings - right)
        if tail > level:
            return right + 1
    return 0


@dataclass(frozen=True, slots=True)
class Rates:
    """Probability that the test says 'different', and the mean number of tastings it takes."""

    different: float
    tastings: float


def rates(can_tell: float) -> Rates:
    """Return the exact rates if this share (0 to 1) of the tasters can tell the two apart.

    Follows every count of right answers until the test ends. Raises OutOfRangeError outside 0 to 1.
    """
    if not 0 <= can_tell <= 1:
        raise OutOfRangeError("share", can_tell, 0, 1, "")
    chance = can_tell + (1 - can_tell) * CHANCE
    going = {0: 1.0}  # right answers so far: probability
    different = tastings = 0.0
    for number in range(1, MOST_TASTINGS + 1):
        tastings += sum(going.values())
        following: dict[int, float] = {}
        for right, share in going.items():
            for more, weight in ((1, chance), (0, 1 - chance)):
                found = right + more
                answer = _standing(found, number)
                if answer is Answer.OPEN:
                    following[found] = following.get(found, 0.0) + share * weight
                elif answer is Answer.DIFFERENT:
                    different += share * weight
        going = following
    return Rates(different, tastings)


def _standing(right: int, number: int) -> Answer:
    lead = right * _step(True) + (number - right) * _step(False)
    if lead >= math.log((1 - MISS) / FALSE_ALARM):
        return Answer.DIFFERENT
    if lead <= math.log(MISS / (1 - FALSE_ALARM)):
        return Answer.ALIKE
    if number < MOST_TASTINGS:
        return Answer.OPEN
    return Answer.DIFFERENT if right >= critical_number(number) else Answer.ALIKE
