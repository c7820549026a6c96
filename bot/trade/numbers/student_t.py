"""Student's t distribution, for intervals from few weighings."""

from __future__ import annotations

import math

from bot.trade.errors import OutOfRangeError

_MOST_DEGREES = 10_000  # the series below has half this many terms, so it needs a bound


def central_probability(t: float, degrees_of_freedom: int) -> float:
    """Return the probability that a Student t variable lies between -t and t.

    `degrees_of_freedom` is a whole number from 1 to 10,000; otherwise
    OutOfRangeError. Source: the finite trigonometric series for whole degrees
    of freedom, Abramowitz and Stegun, Handbook of Mathematical Functions,
    26.7.3 and 26.7.4 (from memory; checked against scipy).
    """
    _check(degrees_of_freedom)
    return _central(math.atan(abs(t) / math.sqrt(degrees_of_freedom)), degrees_of_freedom)


def two_sided_quantile(confidence: float, degrees_of_freedom: int) -> float:
    """Return the t for which a Student t variable lies between -t and t with probability `confidence`.

    `confidence` is above 0 and below 1 (0.95 for a 95 % interval), and
    `degrees_of_freedom` a whole number from 1 to 10,000; otherwise
    OutOfRangeError. Found by halving the angle of the series of
    `central_probability`.
    """
    _check(degrees_of_freedom)
    if not 0 < confidence < 1:
        raise OutOfRangeError("confidence", confidence, 0, 1, "")
    low, high = 0.0, math.pi / 2
    for _ in range(100):
        middle = (low + high) / 2
        if _central(middle, degrees_of_freedom) < confidence:
            low = middle
        else:
            high = middle
        if high - low <= 1e-16 * high:
            break
    return math.sqrt(degrees_of_freedom) * math.tan((low + high) / 2)


def _check(degrees_of_freedom: int) -> None:
    if not 1 <= degrees_of_freedom <= _MOST_DEGREES:
        raise OutOfRangeError("degrees of freedom", degrees_of_freedom, 1, _MOST_DEGREES, "")


def _central(angle: float, degrees_of_freedom: int) -> float:
    cosine, sine = math.cos(angle), math.sin(angle)
    odd = degrees_of_freedom % 2
    # Terms: 1, c2/2, c4 1*3/(2*4) ... for even degrees; c, c3 2/3, c5 2*4/(3*5) ... for odd ones.
    term = cosine if odd else 1.0
    total = 0.0
    for step in range(1, (degrees_of_freedom - odd) // 2 + 1):
        total += term
        term *= cosine * cosine * (2 * step - 1 + odd) / (2 * step + odd)
    if odd:
        return 2 / math.pi * (angle + sine * total)
    return sine * total
