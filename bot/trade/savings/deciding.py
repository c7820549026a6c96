"""Cost and savings that a switch from fresh fruit to a spray may bring, and the nights that would show them.

Nights: sample size for a ratio of over-dispersed counts, on the log scale (Zhu and Lakkis, Statistics in
Medicine 33, 2014, 376, from memory), for a difference in differences with other fruit thrown out as much.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from statistics import NormalDist

from bot.trade.errors import OutOfRangeError
from bot.trade.numbers.ranges import Range
from bot.trade.numbers.uncertainty import Estimate, Figure, draws, swings, usual_range
from bot.trade.savings.before_after import FEWEST_NIGHTS
from bot.trade.words import N_

SCATTER = 2.0
"""Variance of a count over its mean. Common practice, no source: bad fruit comes by the crate."""
POWER = 0.8
# What a drink's spray costs, of one cut garnish: a twentieth to a half, likely a sixth. No source: nobody
# knows before a batch is priced. Oil at 0.30 to 1.50 a ml, 2 to 6 % of it in spirit at 20 a litre, and 0.2 to
# 0.6 ml a drink make 0.005 to 0.07, beside a garnish of 0.05 to 0.15.
SPRAY_SHARE = Estimate.between(Fraction(1, 20), Fraction(1, 2), Fraction(1, 6))
_COUNTED_BY_HEART = Fraction(1, 5)  # drinks named without a count; common practice, no source
_WASTE_BY_HEART = Fraction(1, 2)  # waste named without a log; the same

INPUT_NAMES: dict[str, str] = {
    "drinks": N_("drinks a week"),
    "garnishes": N_("garnishes from a fruit"),
    "wasted": N_("fruit thrown out a week"),
    "spray": N_("what the spray costs"),
}


@dataclass(frozen=True, slots=True)
class Plan:
    """Money a week: spent on fresh fruit, on a spray, and saved; the most that a drink's spray may cost.

    `matters` has the estimated inputs by field name, each with how much the saving moves over its range, the
    largest first.
    """

    fresh: float
    spray: Range[float]
    saved: Range[float]
    most_a_drink: float
    matters: tuple[tuple[str, float], ...]


def plan(
    price: Fraction,
    garnishes: Estimate,
    drinks: Fraction,
    wasted: Fraction,
    spray_a_drink: Estimate | None = None,
) -> Plan:
    """Return the plan for a fruit at this price each, with drinks and pieces thrown out a week as told.

    A drink's spray costs SPRAY_SHARE of a cut garnish unless `spray_a_drink` is known. Raises OutOfRangeError
    for a negative number, or no garnishes or drinks.
    """
    for name, number in (("price", price), ("garnishes", garnishes.low), ("drinks", drinks)):
        if number <= 0:
            raise OutOfRangeError(name, float(number), 0, None, "")
    if wasted < 0:
        raise OutOfRangeError("wasted", float(wasted), 0, None, "")
    estimates = {
        "drinks": _about(drinks, _COUNTED_BY_HEART),
        "garnishes": garnishes,
        "wasted": _about(wasted, _WASTE_BY_HEART),
        "spray": spray_a_drink or _share_of(price / garnishes.likely),
    }

    def fresh_cost(values: Mapping[str, Figure]) -> Figure:
        fruit = values["drinks"] / values["garnishes"] + values["wasted"]
        return type(fruit)(price) * fruit

    def saved(values: Mapping[str, Figure]) -> Figure:
        return fresh_cost(values) - values["drinks"] * values["spray"]

    def both(values: Mapping[str, float]) -> tuple[float, float]:
        return saved(values), values["drinks"] * values["spray"]

    fresh = price * (drinks / garnishes.likely + wasted)
    drawn = draws(both, estimates)
    return Plan(
        float(fresh),
        usual_range([row[1] for row in drawn]),
        usual_range([row[0] for row in drawn]),
        float(fresh / drinks),
        tuple(
            (one.name, float(one.width))
            for one in swings(saved, estimates)
            if one.name != "spray" or spray_a_drink is None
        ),
    )


def _share_of(garnish: Fraction) -> Estimate:
    ends = (garnish * end for end in (SPRAY_SHARE.low, SPRAY_SHARE.high, SPRAY_SHARE.likely))
    return Estimate.between(*ends)


def _about(number: Fraction, share: Fraction) -> Estimate:
    return Estimate.between(number * (1 - share), number * (1 + share), number)


def nights_to_show(
    pieces_a_night: float, drop: float, scatter: float = SCATTER, *, beside_others: bool = True
) -> int:
    """Return the nights needed before and again after, to show a drop (0.5 for half) eight times in ten.

    Beside other fruit thrown out as much, or else of the fruit alone. Raises OutOfRangeError unless pieces
    are above 0 and the drop between 0 and 1.
    """
    if pieces_a_night <= 0:
        raise OutOfRangeError("pieces", pieces_a_night, 0, None, "")
    if not 0 < drop < 1:
        raise OutOfRangeError("drop", drop, 0, 1, "")
    standard = NormalDist()
    sure = standard.inv_cdf(0.975) + standard.inv_cdf(POWER)
    # The fruit before and after its drop, and other fruit before and after.
    sums = 1 + 1 / (1 - drop) + (2 if beside_others else 0)
    spread = scatter * sums / pieces_a_night
    return max(FEWEST_NIGHTS, math.ceil(sure**2 * spread / math.log(1 - drop) ** 2))
