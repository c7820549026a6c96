"""Fresh garnish against sprayed, in the trade's own figures."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal
from fractions import Fraction

from bot.trade.money.cost import break_even_price_each, fresh_per_drink, fresh_to_spray
from tests.outside.check import Check, Mark

PRACTICE = "common practice, no source"
_SPRAYED = (Decimal("0.03"), Decimal("0.04"))


def _fresh() -> float:
    """Five garnishes of an orange at 60 cents."""
    return float(fresh_per_drink(Decimal("0.60"), Fraction(5)) * 100)


def _ratio(end: int) -> Callable[[], float]:
    return lambda: float(fresh_to_spray(Decimal("0.12"), _SPRAYED)[end])


def _break_even() -> float:
    """The price of an orange at which five garnishes of 12 cents cost as much as a spray of 12 cents."""
    return float(break_even_price_each(Decimal("0.12"), Fraction(5)) * 100)


CHECKS = [
    Check(
        "cost", "fresh garnish, 5 an orange of 60 cents", PRACTICE, Mark.PRACTICE, 12, _fresh, "cents", 1e-9
    ),
    Check(
        "cost", "12 cents fresh against 4 cents sprayed", PRACTICE, Mark.PRACTICE, 3, _ratio(0), "times", 1e-9
    ),
    Check(
        "cost", "12 cents fresh against 3 cents sprayed", PRACTICE, Mark.PRACTICE, 4, _ratio(1), "times", 1e-9
    ),
    Check(
        "cost", "orange that breaks even at 12 cents", PRACTICE, Mark.PRACTICE, 60, _break_even, "cents", 1e-9
    ),
]
