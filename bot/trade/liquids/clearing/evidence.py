"""Move the models' limit of an oil by what a bar has seen, and give the probability that a mix stays clear.

The scale is the natural logarithm of oil to everything else by volume, as pharmacopoeias state solubility
(volumes of spirit to one of oil). On it the two models differ by much the same from mix to mix. The limit of
a mix is the middle of both models plus an offset of the oil, one of its lot, and one of the mix, since no
model has the right shape everywhere. Looks are read with a narrow band of haze around the limit, with haze of
waxes that no amount explains, and in the cold with a limit lower by an unknown amount.
"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Callable, Hashable, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TYPE_CHECKING

from bot.trade.liquids.clearing.estimate import (
    MOST_OIL_SHARE,
    NEUTRAL_SPIRIT_PERCENT,
    largest_oil_shares,
)
from bot.trade.liquids.clearing.miscibility import Outcome
from bot.trade.liquids.clearing.mixture import Mixture
from bot.trade.liquids.clearing.rounding import down, up
from bot.trade.numbers.ranges import Range

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Array = NDArray[np.float64]

# Our assumptions, without a source; tests/calibration shows how well they do on published mixes. The models
# lie about 1.1 apart, so that an oil's usual offset spans the gap between them; a few oils lie far outside.
OIL_SCALE, OIL_FREEDOM = 0.7, 4.0  # of a Student distribution
LOT_SPREAD = 0.2
MIX_SPREAD = 0.3
LOOK_SPREAD = 0.15  # amounts, strengths and temperatures as measured in a bar
HAZE_HALF_WIDTH = 0.1
WAX_SHARE = 0.05  # of mixes within the limit that look hazy all the same
LAPSE_SHARE = 0.02  # of looks noted wrongly

# In the cold the models are no guide. Cold never helps, and 15 degrees lower the limit by one of these
# logarithms, all equally likely (tenths 1, 3, 5, 7 and 9 of half a normal distribution of spread 0.5).
COLD_SHIFTS = (0.06, 0.19, 0.34, 0.52, 0.82)
_ROOM_C, _COLD_DEGREES = 20.0, 15.0

_LEAST_SHARE = 1e-4  # of oil, where a model allows next to none
_INTERVAL = 0.8
SAME_DEGREES = 2.0


@dataclass(frozen=True, slots=True)
class Look:
    """One look at a rested mix: the models' margin, what was seen, which mix, which lot of oil, °C.

    `margin` is the logarithm of the middle of both limits over the mix's own oil.
    """

    margin: float
    seen: Outcome
    mix: Hashable
    lot: str | None = None
    temperature_c: float = 20.0


@dataclass(frozen=True, slots=True)
class Belief:
    """The probability that a mix looks clear, and the range of the largest share of oil, 0 to 1 (8 in 10).

    `looks` is the number of looks that it rests on, 0 for the models alone.
    """

    clear: float
    largest_oil: Range[float]
    looks: int


def oil_ratio(mixture: Mixture) -> float:
    """Return the logarithm of oil to everything else that the models know, by volume."""
    return math.log(mixture.oil_ml / (mixture.modelled_ml - mixture.oil_ml))


def _logit(share: float) -> float:
    held = min(max(share, _LEAST_SHARE), MOST_OIL_SHARE)
    return math.log(held / (1.0 - held))


@lru_cache(maxsize=4096)
def _middle(mixture: Mixture, temperature_c: float) -> float:
    band = largest_oil_shares(mixture, temperature_c)
    return (_logit(band.original or 0.0) + _logit(band.dortmund or 0.0)) / 2.0


def margin_of(mixture: Mixture, temperature_c: float) -> float:
    """Return the logarithm of the middle of both models' limits over the oil in a mix with other parts.

    Raises OutOfRangeError outside 0 to 40 °C.
    """
    rest = mixture.modelled_ml - mixture.oil_ml
    parts = ("carrier_ml", "glycol_ml", "glycerol_ml", "water_ml", "spirit_ml")
    # Coarse, so that batches of one formula share a limit: half a percent moves it by less than 1 %.
    whole = {name: round(200.0 * getattr(mixture, name) / rest) / 2.0 for name in parts}
    scaled = Mixture(spirit_percent=round(mixture.spirit_percent, 1), **whole)
    return _middle(scaled, round(temperature_c)) - oil_ratio(mixture)


# --- the posterior --------------------------------------------------------------------------


@dataclass(frozen=True)
class _Grids:
    """Offsets and their prior weights: of the oil, its lot, and the mix, on three axes."""

    offset: Array
    oil: Array
    lot: Array
    mix: Array


@lru_cache(maxsize=1)
def _grids() -> _Grids:
    import numpy as np  # noqa: PLC0415 - only when first used

    oils = np.linspace(-4.5, 4.5, 121)
    oil = (1.0 + (oils / OIL_SCALE) ** 2 / OIL_FREEDOM) ** (-(OIL_FREEDOM + 1.0) / 2.0)
    normal = np.linspace(-2.5, 2.5, 9)
    weight = np.exp(-(normal**2) / 2.0)
    offset = oils[:, None, None] + LOT_SPREAD * normal[None, :, None] + MIX_SPREAD * normal[None, None, :]
    return _Grids(offset, oil / oil.sum(), weight / weight.sum(), weight / weight.sum())


def _below(value: Array) -> Array:
    """The normal distribution function; by tanh, right to 0.0003."""
    import numpy as np  # noqa: PLC0415

    found: Array = 0.5 * (1.0 + np.tanh(0.7978845608 * (value + 0.044715 * value**3)))
    return found


def chance(seen: Outcome, margin: Array) -> Array:
    """Return the probability of a look for true margins."""
    if seen is Outcome.HAZE:
        return 1.0 - chance(Outcome.CLEAR, margin) - chance(Outcome.SPLIT, margin)
    side = 1.0 if seen is Outcome.CLEAR else -1.0
    most = 1.0 - WAX_SHARE if seen is Outcome.CLEAR else 1.0
    plain = most * _below((side * margin - HAZE_HALF_WIDTH) / LOOK_SPREAD)
    return (1.0 - LAPSE_SHARE) * plain + LAPSE_SHARE / 3.0


def _cold(temperature_c: float) -> float:
    return max(0.0, (_ROOM_C - temperature_c) / _COLD_DEGREES)


def _likelihood(looks: Sequence[Look]) -> Array:
    """Return the likelihood of the looks at one mix, by the offsets of oil, lot and mix."""
    offset, found = _grids().offset, None
    shifts = COLD_SHIFTS if any(_cold(look.temperature_c) for look in looks) else (0.0,)
    for shift in shifts:
        one = offset * 0.0 + 1.0 / len(shifts)
        for look in looks:
            one *= chance(look.seen, look.margin + offset - shift * _cold(look.temperature_c))
        found = one if found is None else found + one
    if found is None:
        raise ValueError("no looks")
    return found


def _posterior(looks: Sequence[Look], lot: str | None, mix: Hashable) -> Array:
    """Return the weights of the offsets for one lot and one mix of an oil, given the looks at the oil."""
    grids = _grids()
    lots: dict[str | None, dict[Hashable, list[Look]]] = {lot: {}}
    for look in looks:
        lots.setdefault(look.lot, {}).setdefault(look.mix, []).append(look)
    own, oil = lots.pop(lot), grids.oil.copy()
    for mixes in lots.values():
        oil *= _over_mixes(list(mixes.values())) @ grids.lot
    weights: Array = oil[:, None, None] * grids.lot[None, :, None] * grids.mix[None, None, :]
    if mix in own:
        weights = weights * _likelihood(own.pop(mix))
    if own:
        weights = weights * _over_mixes(list(own.values()))[:, :, None]
    found: Array = weights / weights.sum()
    return found


def _over_mixes(mixes: Sequence[Sequence[Look]]) -> Array:
    """Return the likelihood of one lot's looks by oil and lot, each mix's own offset averaged out."""
    found: Array = _likelihood(mixes[0]) @ _grids().mix
    for looks in mixes[1:]:
        found = found * (_likelihood(looks) @ _grids().mix)
    return found


@dataclass(frozen=True, slots=True)
class Offset:
    """The offset of one lot and one mix: a function for its quantiles, and one for the chance of clear."""

    quantile: Callable[[float], float]
    clear: Callable[[float], float]


def offset_of(
    looks: Sequence[Look], lot: str | None, mix: Hashable, temperature_c: float = _ROOM_C
) -> Offset:
    """Return what the looks at an oil say of a mix with one of its lots at a temperature."""
    import numpy as np  # noqa: PLC0415 - only when first used

    shifts = COLD_SHIFTS if _cold(temperature_c) else (0.0,)
    offset = np.stack([_grids().offset - shift * _cold(temperature_c) for shift in shifts])
    weights = np.stack([_posterior(looks, lot, mix) / len(shifts)] * len(shifts))
    order = np.argsort(offset, axis=None)
    values, upto = offset.ravel()[order], np.cumsum(weights.ravel()[order])

    def quantile(share: float) -> float:
        return float(np.interp(share, upto, values))

    def clear(margin: float) -> float:
        return float((weights * chance(Outcome.CLEAR, margin + offset)).sum())

    return Offset(quantile, clear)


def belief(
    mixture: Mixture, temperature_c: float, looks: Sequence[Look], lot: str | None, mix: Hashable
) -> Belief:
    """Return the probability that a mix stays clear, and its largest share of oil, by models and looks.

    `looks` are all those at the oil. Plain looks at the same mix are never contradicted: after n that agree,
    the answer is at least as sure as (n + 1) / (n + 2), the rule of succession.
    """
    offset, margin = offset_of(looks, lot, mix, temperature_c), margin_of(mixture, temperature_c)
    clear = offset.clear(margin)
    same = [
        look.seen
        for look in looks
        if look.mix == mix and abs(look.temperature_c - temperature_c) <= SAME_DEGREES
    ]
    least = (len(same) + 1.0) / (len(same) + 2.0)
    if same and all(seen is Outcome.CLEAR for seen in same):
        clear = max(clear, least)
    elif same and all(seen is not Outcome.CLEAR for seen in same):
        clear = min(clear, 1.0 - least)
    limit = oil_ratio(mixture) + margin
    ends = (offset.quantile((1.0 - _INTERVAL) / 2.0), offset.quantile((1.0 + _INTERVAL) / 2.0))
    low, high = (1.0 / (1.0 + math.exp(-(limit + end))) for end in ends)
    return Belief(clear, Range(low, high), len(looks))


# --- what to add -----------------------------------------------------------------------------

_ADDED_STEPS = 24
_MOST_ADDED = 2.0  # times the mix


def spirit_to_clear(
    mixture: Mixture, temperature_c: float, offset: Offset, wanted: float = 0.8
) -> float | None:
    """Return the mL of its spirit that make a mix clear this probably; None if twice the mix do not."""

    def clears(ml: float) -> bool:
        percent = mixture.spirit_percent if mixture.spirit_ml else NEUTRAL_SPIRIT_PERCENT
        more = replace(mixture, spirit_ml=mixture.spirit_ml + ml, spirit_percent=percent)
        return offset.clear(margin_of(more, temperature_c)) >= wanted

    amounts = _growing(mixture)
    first = _first(clears, amounts)
    return None if first is None else up(amounts[first])


def water_to_cloud(mixture: Mixture, temperature_c: float, offset: Offset) -> float | None:
    """Return the mL of water with which a mix is as likely beyond the limit as within it.

    0 if it is beyond already, None if twice the mix is not enough.
    """

    def clouds(ml: float) -> bool:
        wet = replace(mixture, water_ml=mixture.water_ml + ml)
        return margin_of(wet, temperature_c) + offset.quantile(0.5) <= 0.0

    if clouds(0.0):
        return 0.0
    amounts = _growing(mixture)
    first = _first(clouds, amounts)
    return None if first is None else down(amounts[first])


def _growing(mixture: Mixture) -> list[float]:
    most, least = _MOST_ADDED * mixture.modelled_ml, 0.005 * mixture.modelled_ml
    return [least * (most / least) ** (step / _ADDED_STEPS) for step in range(_ADDED_STEPS + 1)]


def _first(holds: Callable[[float], bool], values: Sequence[float]) -> int | None:
    """Return the first index where something holds that holds from there on, or None."""
    if not holds(values[-1]):
        return None
    return bisect_left(values, True, key=holds)
