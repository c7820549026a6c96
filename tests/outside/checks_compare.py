"""Fresh against spray: trade figures, the simulation against exact answers, and scipy for intervals."""

from __future__ import annotations

import statistics
from collections.abc import Callable
from decimal import Decimal

from scipy import stats

from bot.trade.fruit import handbook
from bot.trade.numbers.ranges import Range
from bot.trade.numbers.uncertainty import Estimate, draws, usual_range
from bot.trade.savings.fresh_versus_spray import Fresh, FreshAgainstSpray, House, Spray, compare
from tests.outside.check import Check, Mark

_PRACTICE = "common practice, no source"
_ERS = "USDA Economic Research Service, fruit prices 2020: oranges 1.2131 $/lb; 179 g as purchased by SR28"
_TRIANGLE = "sum of triangles: means (a+b+c)/3, variances (a2+b2+c2-ab-ac-bc)/18"

_COUNT = 40_000
exactly = Estimate.exactly


def _fresh(price: Estimate, waste: str = "0.2") -> Fresh:
    return Fresh(price, exactly(5), exactly(Decimal(waste)), exactly(0))


def _spray(cents_a_drink: Estimate) -> Spray:
    # One batch of 100 drinks, so that its ingredient cost equals the cents per drink.
    return Spray(
        ingredients_cost=cents_a_drink,
        batch_minutes=exactly(0),
        bottle_cost=exactly(0),
        label_cost=exactly(0),
        loss_share=exactly(0),
        ml_per_spray=exactly(1),
        sprays_per_drink=exactly(1),
        batch_ml=Decimal(100),
        bottle_ml=Decimal(100),
    )


def _ask(fresh: Fresh, cents_a_drink: Estimate, count: int = 100) -> FreshAgainstSpray:
    house = House(drinks_per_week=exactly(100))
    return compare(fresh, _spray(cents_a_drink), house, count)


def _fresh_cents_from_published_price() -> float:
    price = handbook.price_per_fruit("orange", Decimal("1.2131") / Decimal("0.45359237"))
    return 100 * float(_ask(_fresh(exactly(price)), exactly(4)).fresh.per_drink.likely)


def _times_cheaper() -> Range[Decimal]:
    twelve_cents = _fresh(exactly(Decimal("0.48")))
    return _ask(twelve_cents, Estimate.between(3, 4)).times_cheaper.whole


# A linear case: price / 4 (five garnishes, a fifth wasted) and minutes at 0.30 each.
_PRICE = Estimate.between(Decimal("0.30"), Decimal("0.80"), Decimal("0.45"))
_MINUTES = Estimate.between(Decimal("0.1"), Decimal("0.6"), Decimal("0.2"))


def _mean(one: Estimate) -> float:
    return float((one.low + one.likely + one.high) / 3)


def _variance(one: Estimate) -> float:
    a, b, c = one.low, one.high, one.likely
    return float((a * a + b * b + c * c - a * b - a * c - b * c) / 18)


def _drawn() -> list[float]:
    rough = {"price": _PRICE, "minutes": _MINUTES}
    return [row[0] for row in draws(lambda v: (v["price"] / 4 + v["minutes"] * 0.3,), rough, _COUNT)]


def _scipy_triangle(one: Estimate) -> Callable[[float], float]:
    width = float(one.high - one.low)
    shape = stats.triang(float(one.likely - one.low) / width, loc=float(one.low), scale=width)
    return lambda share: float(shape.ppf(share))


def _usual_fresh() -> Range[float]:
    return _ask(_fresh(_PRICE), exactly(4), _COUNT).fresh.per_drink.usual


def _usual_of_one() -> Range[float]:
    return usual_range([row[0] for row in draws(lambda v: (v["price"],), {"price": _PRICE}, _COUNT)])


CHECKS: list[Check] = [
    Check(
        "compare",
        "fresh orange peel by the drink: 5 garnishes, a fifth wasted, no labour",
        _PRACTICE + " (about 12 cents); price: " + _ERS,
        Mark.PRACTICE,
        12.0,
        _fresh_cents_from_published_price,
        "cents",
        0.5,
    ),
    Check(
        "compare",
        "12 cents fresh against 4 cents of spray: times cheaper",
        _PRACTICE + " (3 to 4 times)",
        Mark.PRACTICE,
        3.0,
        lambda: float(_times_cheaper().low),
        "times",
        1e-9,
    ),
    Check(
        "compare",
        "12 cents fresh against 3 cents of spray: times cheaper",
        _PRACTICE + " (3 to 4 times)",
        Mark.PRACTICE,
        4.0,
        lambda: float(_times_cheaper().high),
        "times",
        1e-9,
    ),
    Check(
        "compare",
        "simulation of a linear case, mean",
        _TRIANGLE,
        Mark.APART,
        _mean(_PRICE) / 4 + _mean(_MINUTES) * 0.3,
        lambda: statistics.fmean(_drawn()),
        "money",
        0.001,
    ),
    Check(
        "compare",
        "simulation of a linear case, standard deviation",
        _TRIANGLE,
        Mark.APART,
        (_variance(_PRICE) / 16 + _variance(_MINUTES) * 0.09) ** 0.5,
        lambda: statistics.stdev(_drawn()),
        "money",
        0.001,
    ),
    Check(
        "compare",
        "usual range of one triangle, 5 % end",
        "scipy.stats.triang",
        Mark.COMPUTED,
        _scipy_triangle(_PRICE)(0.05),
        lambda: _usual_of_one().low,
        "money",
        0.003,
    ),
    Check(
        "compare",
        "usual range of one triangle, 95 % end",
        "scipy.stats.triang",
        Mark.COMPUTED,
        _scipy_triangle(_PRICE)(0.95),
        lambda: _usual_of_one().high,
        "money",
        0.003,
    ),
    Check(
        "compare",
        "usual cost of a fresh garnish, 5 % end: a quarter of the price's",
        "scipy.stats.triang",
        Mark.COMPUTED,
        _scipy_triangle(_PRICE)(0.05) / 4,
        lambda: _usual_fresh().low,
        "money",
        0.001,
    ),
    Check(
        "compare",
        "usual cost of a fresh garnish, 95 % end: a quarter of the price's",
        "scipy.stats.triang",
        Mark.COMPUTED,
        _scipy_triangle(_PRICE)(0.95) / 4,
        lambda: _usual_fresh().high,
        "money",
        0.001,
    ),
    Check(
        "compare",
        "whole range of a linear case is its two ends",
        "0.30 / 4 and 0.80 / 4",
        Mark.APART,
        0.20 - 0.075,
        lambda: float(_ask(_fresh(_PRICE), exactly(4)).fresh.per_drink.whole.width),
        "money",
        1e-9,
    ),
]
