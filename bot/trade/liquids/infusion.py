"""Strength of spirit in which fresh fruit or peel stands: the fruit gives it water."""

from __future__ import annotations

import re
from collections.abc import Iterable
from datetime import date

from bot.trade.errors import OutOfRangeError
from bot.trade.formulas.ingredient_names.reading import read_name
from bot.trade.formulas.kinds import Preparation
from bot.trade.formulas.measures import Dimension
from bot.trade.liquids.ethanol import water_density_g_per_ml
from bot.trade.liquids.strength import Component, Mixed, Portion, check_volume, formula_strength, mix
from bot.trade.numbers.ranges import Range
from bot.trade.numbers.roots import crossing
from bot.trade.sources import HowKnown, Source
from bot.trade.words import N_

# Water, share of the mass: orange peel 72.5 %, lemon peel 81.6 %; orange 86.8 %, strawberries 91 % (the last
# from memory).
WATER_IN_PEEL: Range[float] = Range(0.725, 0.816)
WATER_IN_FRUIT: Range[float] = Range(0.868, 0.91)
_STEEPED = frozenset({Preparation.INFUSION, Preparation.TINCTURE})
_PEEL = re.compile(r"\b(?:peels?|zests?|rinds?)\b")
# What a jug's marks may add to what came out. Common practice, no source.
_READ_TOO_HIGH = 1.02
WATER_SOURCE = Source(
    N_("USDA food composition, raw orange peel, lemon peel and orange, as reprinted"),
    HowKnown.READ_SECOND_HAND,
    date(2026, 11, 29),
)


def is_steeped(preparation: str, dimensions: Iterable[str]) -> bool:
    """Whether solids, by the dimensions of the ingredients, stand in a kind of preparation to be strained."""
    return preparation in _STEEPED and any(one != Dimension.VOLUME for one in dimensions)


def water_ml(name: str, grams: float) -> float:
    """Return the most water, mL, that fresh fruit or peel of this name and mass in g can give.

    Raises OutOfRangeError for a negative mass.
    """
    check_volume("fruit", grams)
    share = WATER_IN_PEEL if _PEEL.search(read_name(name)) else WATER_IN_FRUIT
    return grams * share.high / water_density_g_per_ml(20.0)


def infused_percent(
    components: Iterable[Component], most_water_ml: float, out_ml: float = 0.0
) -> Range[float]:
    """Return the strength, % vol, of a mix in which fresh fruit stands that holds at most so much water.

    From all the water mixed in, by mass balance with the densities of OIML R 22, to none of it; where more
    comes out after straining (`out_ml`) than was poured, to the least water that makes as much. Raises
    OutOfRangeError if not even all the water makes as much, and the errors of formula_strength.
    """
    poured = list(components)
    alone = formula_strength(poured)
    if not alone.volume_ml:
        return Range(0.0, 0.0)

    def with_water(ml: float) -> Mixed:
        return mix([Portion(alone.volume_ml, alone.strength_percent), Portion(ml, 0.0)])

    most = with_water(most_water_ml)
    if out_ml > most.volume_ml * _READ_TOO_HIGH:
        raise OutOfRangeError("strained", out_ml, 0.0, most.volume_ml, "mL")
    least_ml = 0.0
    if out_ml > alone.volume_ml:
        out_ml = min(out_ml, most.volume_ml)
        least_ml = crossing(lambda ml: with_water(ml).volume_ml, out_ml, 0.0, most_water_ml, 1e-6)
    return Range(most.strength_percent, with_water(least_ml).strength_percent)
