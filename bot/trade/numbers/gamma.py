"""Quantiles of the Gamma distribution, for rates known from counts."""

from __future__ import annotations

import math
from statistics import NormalDist

from bot.trade.errors import OutOfRangeError


def gamma_quantile(probability: float, shape: float, mean: float = 1.0) -> float:
    """Return the value below which a Gamma variable of this shape and mean lies with this probability.

    The cube-root approximation of E. B. Wilson and M. M. Hilferty, Proceedings of the National Academy of
    Sciences 17, 1931 (formula read in the documentation of R's fastmatrix): within 3 % of scipy from a shape
    of 2 on, for probabilities from 0.05 to 0.95. Raises OutOfRangeError.
    """
    if not 0 < probability < 1:
        raise OutOfRangeError("probability", probability, 0, 1, "")
    if not shape > 0:
        raise OutOfRangeError("shape", shape, 0, None, "")
    ninth = 1 / (9 * shape)
    root = 1 - ninth + NormalDist().inv_cdf(probability) * math.sqrt(ninth)
    return mean * max(0.0, root) ** 3
