"""Strength of spirit in which fresh fruit or peel stands: the fruit gives it water."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

from bot.trade.liquids.ethanol import water_density_g_per_ml
from bot.trade.liquids.strength import Component, Portion, check_volume, formula_strength, mix
from bot.trade.numbers.ranges import Range
from bot.trade.sources import HowKnown, Source
from bot.trade.words import N_

# Water in fresh citrus, share of its mass: orange peel 72.5 %, lemon peel 81.6 %, raw orange 86.8 %.
WATER_IN_FRUIT: Range[float] = Range(0.725, 0.868)
WATER_SOURCE = Source(
    N_("USDA food composition, raw orange peel, lemon peel and orange, as reprinted"),
    HowKnown.READ_SECOND_HAND,
    date(2026, 11, 29),
)


def infused_percent(components: Iterable[Component], fruit_g: float) -> Range[float]:
    """Return the strength, % vol, of a mix in which `fruit_g` of fresh fruit or peel stands.

    From all the fruit's water mixed in to none of it. Raises OutOfRangeError for a negative mass and the
    errors of formula_strength.
    """
    check_volume("fruit", fruit_g)
    poured = list(components)
    alone = formula_strength(poured)
    if not alone.volume_ml:
        return Range(0.0, 0.0)
    spirit = Portion(alone.volume_ml, alone.strength_percent)
    water = Portion(fruit_g * WATER_IN_FRUIT.high / water_density_g_per_ml(20.0), 0.0)
    return Range(mix([spirit, water]).strength_percent, alone.strength_percent)
