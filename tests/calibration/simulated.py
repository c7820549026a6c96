"""Bars that exist only in numbers: draw the truth of an oil, let the bar look, and compare with the answer.

The first kind of bar is drawn as the rule assumes; the others break one of its assumptions each.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from bot.trade.liquids.clearing import evidence
from bot.trade.liquids.clearing.evidence import Look, offset_of
from bot.trade.liquids.clearing.miscibility import Outcome

LOOKS = (1, 3, 10)
BARS = 1000
_COLD_C, _COLD_LOOKS = 5.0, 0.25


@dataclass(frozen=True)
class World:
    """How bars are drawn: factors of the assumed spreads, and an error of the look itself."""

    name: str
    oil: float = 1.0
    lot: float = 1.0
    mix: float = 1.0
    look: float = 1.0
    cold: float = 1.0
    wax: float = evidence.WAX_SHARE


WORLDS = (
    World("as the rule assumes"),
    World("oils twice as far from the models", oil=2.0),
    World("the models' shape twice as wrong", mix=2.0),
    World("lots twice as different", lot=2.0),
    World("amounts and temperatures twice as rough", look=2.0),
    World("cold twice as harmful", cold=2.0),
    World("twice the haze of waxes", wax=2 * evidence.WAX_SHARE),
)


@dataclass(frozen=True)
class Outcomes:
    """Of many bars: the share of true limits inside the interval, its width, and the next look."""

    covered: float
    width: float
    said: tuple[float, ...]  # the probability of clear given for the next look
    was: tuple[bool, ...]  # and whether that was clear


def _seen(margin: float, world: World, dice: np.random.Generator) -> Outcome:
    if dice.random() < evidence.LAPSE_SHARE:
        return (Outcome.CLEAR, Outcome.HAZE, Outcome.SPLIT)[dice.integers(3)]
    noisy = margin + dice.normal(0.0, world.look * evidence.LOOK_SPREAD)
    if noisy < -evidence.HAZE_HALF_WIDTH:
        return Outcome.SPLIT
    if noisy < evidence.HAZE_HALF_WIDTH or dice.random() < world.wax:
        return Outcome.HAZE
    return Outcome.CLEAR


@dataclass(frozen=True)
class _Mix:
    """One mix of a bar: the models' margin, what they are wrong by, its lot, and what cold takes away."""

    middle: float
    own: float
    lot: str
    cold: float


def _mix(world: World, dice: np.random.Generator) -> _Mix:
    return _Mix(
        dice.normal(0.0, 1.0),
        dice.normal(0.0, world.mix * evidence.MIX_SPREAD),
        "ab"[dice.integers(2)],
        abs(dice.normal(0.0, world.cold * 0.5)),
    )


def _bar(world: World, number: int, dice: np.random.Generator) -> tuple[bool, float, float, bool]:
    """Return whether the interval holds the limit, its width, the probability said, and the next look."""
    oil = world.oil * evidence.OIL_SCALE * dice.standard_t(evidence.OIL_FREEDOM)
    lots = dict(zip("ab", dice.normal(0.0, world.lot * evidence.LOT_SPREAD, 2), strict=True))
    mixes = [_mix(world, dice) for _ in range(1 + number // 3)]
    looks = []
    for which in (dice.integers(len(mixes)) for _ in range(number)):
        mix = mixes[which]
        degrees = _COLD_C if dice.random() < _COLD_LOOKS else 20.0
        truth = mix.middle + oil + lots[mix.lot] + mix.own - (mix.cold if degrees == _COLD_C else 0.0)
        looks.append(Look(mix.middle, _seen(truth, world, dice), int(which), mix.lot, degrees))
    middle, lot = mixes[0].middle, mixes[0].lot
    truth = oil + lots[lot] + mixes[0].own
    offset = offset_of(looks, lot, 0)
    low, high = offset.quantile(0.1), offset.quantile(0.9)
    was = _seen(middle + truth, world, dice) is Outcome.CLEAR
    return low <= truth <= high, high - low, offset.clear(middle), was


def run(world: World, number: int, bars: int = BARS) -> Outcomes:
    """Simulate bars with so many looks each; the same every time."""
    dice = np.random.default_rng(1000 * number + WORLDS.index(world))
    found = [_bar(world, number, dice) for _ in range(bars)]
    return Outcomes(
        sum(one[0] for one in found) / bars,
        sum(one[1] for one in found) / bars,
        tuple(one[2] for one in found),
        tuple(one[3] for one in found),
    )


def reliability(outcomes: Sequence[Outcomes]) -> list[tuple[float, float, float, int]]:
    """Return for each fifth of the scale: its lower end, the mean said, the share seen, and how many."""
    said = np.array([one for each in outcomes for one in each.said])
    was = np.array([one for each in outcomes for one in each.was], float)
    rows = []
    for low in (0.0, 0.2, 0.4, 0.6, 0.8):
        inside = (said >= low) & (said < low + 0.2)
        if inside.any():
            rows.append((low, float(said[inside].mean()), float(was[inside].mean()), int(inside.sum())))
    return rows
