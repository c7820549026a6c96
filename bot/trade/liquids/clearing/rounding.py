"""Round limits and mends to the digits that the models can know, each to its cautious side."""

from __future__ import annotations

import math
from collections.abc import Callable

# Limits and mends are told to two digits: the models know no more.
_DIGITS = 2


def up(value: float) -> float:
    """Round up to the known digits, so that a rounded limit stays on its better side."""
    return _rounded(value, math.ceil)


def down(value: float) -> float:
    """Round down to the known digits."""
    return _rounded(value, math.floor)


def _rounded(value: float, way: Callable[[float], int]) -> float:
    if value <= 0.0:
        return 0.0
    places = _DIGITS - 1 - math.floor(math.log10(value))
    # The first rounding removes binary noise from a number that is short enough already.
    return round(way(round(value * 10.0**places, 6)) / 10.0**places, max(places, 0))
