"""Round limits and mends to the digits that the models can know, each to its cautious side."""

from __future__ import annotations

import math
from collections.abc import Callable

# Limits and mends are told to two digits: the models know no more.
_DIGITS = 2


def up(value: float, digits: int = _DIGITS) -> float:
    """Round up to `digits` significant digits, so that a rounded limit stays on its better side."""
    return rounded(value, digits, math.ceil)


def down(value: float, digits: int = _DIGITS) -> float:
    """Round down to `digits` significant digits."""
    return rounded(value, digits, math.floor)


def rounded(value: float, digits: int, way: Callable[[float], int]) -> float:
    """Round to so many digits by `way`, `math.floor` or `math.ceil`."""
    if value <= 0.0:
        return 0.0
    places = digits - 1 - math.floor(math.log10(value))
    # The first rounding removes binary noise from a number that is short enough already.
    return round(way(round(value * 10.0**places, 6)) / 10.0**places, max(places, 0))
