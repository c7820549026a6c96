"""Find where a function crosses a value, to invert formulas without a closed inverse."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from bot.trade.errors import TradeError


@dataclass
class NoBracketError(TradeError):
    """The function does not reach the wanted value between the two ends."""

    target: float
    at_low: float
    at_high: float


def crossing(
    function: Callable[[float], float],
    target: float,
    low: float,
    high: float,
    tolerance: float = 1e-13,
) -> float:
    """Return x between `low` and `high` where a continuous function equals `target`.

    Illinois variant of the false-position method, with a bisection whenever three steps have not halved the
    bracket: the answer stays bracketed at every step, so it cannot diverge or stall. `tolerance` is the width
    in x at which it stops. Raises NoBracketError when both ends lie on the same side of `target`.
    """
    at_low, at_high = function(low) - target, function(high) - target
    if at_low == 0.0:
        return low
    if at_high == 0.0:
        return high
    if (at_low < 0.0) == (at_high < 0.0):
        raise NoBracketError(target, at_low + target, at_high + target)
    side, since_halving, width = 0, 0, high - low
    while high - low > tolerance and low < (low + high) / 2 < high:
        x = (low + high) / 2
        if since_halving < 3 and at_high != at_low:
            x = min(max(low, high - at_high * (high - low) / (at_high - at_low)), high)
        value = function(x) - target
        if value == 0.0:
            return x
        if (value < 0.0) == (at_high < 0.0):
            high, at_high = x, value
            # The same end was kept twice: halve the weight of the other, or it would never move.
            at_low = at_low / 2 if side == 1 else at_low
            side = 1
        else:
            low, at_low = x, value
            at_high = at_high / 2 if side == -1 else at_high
            side = -1
        since_halving += 1
        if high - low <= width / 2:
            since_halving, width = 0, high - low
    return (low + high) / 2
