"""Scaling and drinks against the trade's figures for sprayed citrus aroma."""

from __future__ import annotations

from fractions import Fraction
from functools import partial

from bot.trade.formulas.amounts import ByIngredient, ByTotal, Line, Recipe, drinks_in, scale
from bot.trade.formulas.measures import Dimension
from tests.outside.check import Check, Mark

PRACTICE = "common practice, no source"

_MIX = Recipe(
    (
        Line("citrus oil", Fraction(10), Dimension.VOLUME),
        Line("propylene glycol", Fraction(20), Dimension.VOLUME),
        Line("spirit, 95 % vol", Fraction("36.5"), Dimension.VOLUME),
    )
)
_SPRAYS = (Fraction(2), Fraction(3))
_ML_PER_SPRAY = (Fraction(1, 15), Fraction(1, 10))


def _amount_with(oil_ml: int, at: int) -> float:
    return float(scale(_MIX, ByIngredient("citrus oil", Fraction(oil_ml))).lines[at].amount)


def _oil_share_in(total_ml: int) -> float:
    scaled = scale(_MIX, ByTotal(Fraction(total_ml)))
    return float(scaled.lines[0].amount / scaled.total_ml)


def _fewest_drinks(volume_ml: int) -> float:
    return drinks_in(Fraction(volume_ml), _SPRAYS, _ML_PER_SPRAY)[0]


def _check(
    what: str, expected: float | tuple[float, float], got: partial[float], unit: str, digits: float
) -> Check:
    return Check("amounts", what, PRACTICE, Mark.PRACTICE, expected, got, unit, digits)


CHECKS = [
    _check("propylene glycol with 10 mL of oil", 20, partial(_amount_with, 10, 1), "mL", 1e-12),
    _check("spirit with 10 mL of oil", 36.5, partial(_amount_with, 10, 2), "mL", 1e-12),
    _check("propylene glycol with 30 mL of oil", 60, partial(_amount_with, 30, 1), "mL", 1e-12),
    _check("spirit with 30 mL of oil", 109.5, partial(_amount_with, 30, 2), "mL", 1e-12),
    _check("share of oil in a large batch", 10 / 66.5, partial(_oil_share_in, 10_000), "", 1e-15),
    _check(
        "fewest drinks from a 50 mL bottle at the default sprays",
        (150, 10**6),
        partial(_fewest_drinks, 50),
        "drinks",
        0,
    ),
    _check("drinks of 3 sprays of 0.1 mL in 50 mL", 166, partial(_fewest_drinks, 50), "drinks", 0),
]
