"""Scale a recipe to a target, fill bottles and count drinks.

Rounding is in `tools`. Every amount is an exact fraction: mL for volumes, g for masses, pieces for counts.
The ratio between ingredients is kept exactly, so that larger batches taste and clear like small ones.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from math import floor
from typing import NamedTuple

from bot.trade.errors import OutOfRangeError
from bot.trade.formulas.measures import Dimension
from bot.trade.formulas.recipe import (
    ByBottles,
    ByDrinks,
    ByFactor,
    ByIngredient,
    ByStock,
    ByTotal,
    IngredientDimensionError,
    Line,
    NoVolumeError,
    Range,
    Recipe,
    Scaled,
    Target,
    UnknownIngredientError,
    above_zero,
    checked_range,
    checked_share,
)
from bot.trade.formulas.tools import (
    DEFAULT_TOOLS,
    Rounded,
    RoundedLine,
    Scale,
    Tool,
    round_to_enough,
    round_to_tools,
)

__all__ = [
    "DEFAULT_TOOLS",
    "ByBottles",
    "ByDrinks",
    "ByFactor",
    "ByIngredient",
    "ByStock",
    "ByTotal",
    "FillPlan",
    "IngredientDimensionError",
    "Line",
    "NoVolumeError",
    "Range",
    "Recipe",
    "Rounded",
    "RoundedLine",
    "Scale",
    "Scaled",
    "Target",
    "Tool",
    "UnknownIngredientError",
    "amounts_by_name",
    "drinks_in",
    "fill_plan",
    "finished_ml",
    "ideal_total_ml",
    "round_to_enough",
    "round_to_tools",
    "scale",
]


class FillPlan(NamedTuple):
    """Full bottles as (size in mL, count), largest first, and the mL left for a last, part-filled one."""

    full: tuple[tuple[Fraction, int], ...]
    left_over_ml: Fraction


def ideal_total_ml(lines: Iterable[Line]) -> Fraction:
    """Return the sum of the volumes in mL, as if liquids did not contract."""
    return sum((line.amount for line in lines if line.dimension is Dimension.VOLUME), Fraction(0))


def finished_ml(recipe: Recipe, finished_share: Fraction = Fraction(1)) -> Fraction | None:
    """Return the mL that the recipe gives: its known yield, else its volumes times `finished_share`.

    `finished_share` is finished mL per ideal mL (below 1 where spirit and water contract). None if
    the recipe has no volume and no known yield.
    """
    above_zero("finished share", finished_share, "mL/mL")
    if recipe.yield_ml is not None:
        return recipe.yield_ml
    return ideal_total_ml(recipe.lines) * finished_share or None


def amounts_by_name(lines: Iterable[Line]) -> dict[str, Line]:
    """Return each ingredient once, with the sum of its lines.

    Raises IngredientDimensionError if lines of one name are in different measures.
    """
    sums: dict[str, Line] = {}
    for line in lines:
        known = sums.get(line.name)
        if known and known.dimension is not line.dimension:
            raise IngredientDimensionError(line.name, line.dimension, known.dimension)
        before = known.amount if known else Fraction(0)
        sums[line.name] = Line(line.name, before + line.amount, line.dimension)
    return sums


def scale(recipe: Recipe, target: Target, finished_share: Fraction = Fraction(1)) -> Scaled:
    """Return the recipe scaled to a target, every ratio kept exactly.

    Targets in mL apply to the finished volume: the recipe's known yield, else its ideal total times
    `finished_share`.

    Raises OutOfRangeError (a target that is not above zero, a loss of all), UnknownIngredientError,
    IngredientDimensionError or NoVolumeError.
    """
    limiting = None
    not_counted: tuple[str, ...] = ()
    if isinstance(target, ByStock):
        factor, limiting, not_counted = _by_stock(recipe, target)
    elif isinstance(target, ByFactor):
        factor = above_zero("factor", target.factor, "")
    elif isinstance(target, ByIngredient):
        factor = _by_ingredient(recipe, target)
    else:
        made_ml = finished_ml(recipe, finished_share)
        if not made_ml:
            raise NoVolumeError
        factor = _wanted_ml(target) / made_ml
    lines = tuple(Line(line.name, line.amount * factor, line.dimension) for line in recipe.lines)
    made_ml = finished_ml(recipe, finished_share)
    return Scaled(
        factor=factor,
        lines=lines,
        total_ml=ideal_total_ml(lines),
        limiting=limiting,
        finished_ml=None if made_ml is None else made_ml * factor,
        not_counted=not_counted,
    )


def _wanted_ml(target: ByTotal | ByBottles | ByDrinks) -> Fraction:
    """Return the mL to make so that the target remains after the loss."""
    if isinstance(target, ByTotal):
        return above_zero("total", target.ml, "mL")
    kept_share = 1 - checked_share("loss share", target.loss_share)
    if isinstance(target, ByBottles):
        count = above_zero("bottles", Fraction(target.count), "")
        return count * above_zero("bottle size", target.size_ml, "mL") / kept_share
    drinks = above_zero("drinks", Fraction(target.drinks), "")
    sprays = above_zero("sprays per drink", target.sprays_per_drink, "")
    return drinks * sprays * above_zero("volume of a spray", target.ml_per_spray, "mL") / kept_share


def _by_ingredient(recipe: Recipe, target: ByIngredient) -> Fraction:
    sums = amounts_by_name(recipe.lines)
    if target.name not in sums:
        raise UnknownIngredientError(target.name, tuple(sums))
    line = sums[target.name]
    if target.dimension is not None and target.dimension is not line.dimension:
        raise IngredientDimensionError(target.name, target.dimension, line.dimension)
    needed = above_zero("amount in the recipe", line.amount, line.dimension)
    return above_zero("amount", target.amount, line.dimension) / needed


def _by_stock(recipe: Recipe, target: ByStock) -> tuple[Fraction, str, tuple[str, ...]]:
    """Return the largest factor that the stock allows, the limiting ingredient, and those not counted."""
    needed = {name: line for name, line in amounts_by_name(recipe.lines).items() if line.amount}
    factors = {}
    for name, line in needed.items():
        if name in target.on_hand:
            if target.on_hand[name] < 0:
                raise OutOfRangeError("stock", float(target.on_hand[name]), 0, None, line.dimension)
            factors[name] = target.on_hand[name] / line.amount
    if not factors:
        raise UnknownIngredientError(next(iter(target.on_hand), ""), tuple(needed))
    limiting = min(factors, key=lambda name: factors[name])
    return factors[limiting], limiting, tuple(name for name in needed if name not in factors)


def fill_plan(total_ml: Fraction, sizes: Iterable[Fraction]) -> FillPlan:
    """Return how many bottles of each size the volume fills, the largest size first, and what is left.

    Sizes that fill no bottle are left out. Raises OutOfRangeError for a volume below zero or a size
    that is not above zero.
    """
    if total_ml < 0:
        raise OutOfRangeError("volume", float(total_ml), 0, None, "mL")
    full = []
    left_ml = total_ml
    for size_ml in sorted(set(sizes), reverse=True):
        count = floor(left_ml / above_zero("bottle size", size_ml, "mL"))
        if count:
            full.append((size_ml, count))
            left_ml -= count * size_ml
    return FillPlan(tuple(full), left_ml)


def drinks_in(volume_ml: Fraction, sprays: Range, ml_per_spray: Range) -> tuple[int, int]:
    """Return the fewest and the most whole drinks that a volume garnishes.

    `sprays` per drink and `ml_per_spray` are ranges. Raises OutOfRangeError for a volume below zero
    or a range that does not lie above zero, low end first.
    """
    if volume_ml < 0:
        raise OutOfRangeError("volume", float(volume_ml), 0, None, "mL")
    fewest_sprays, most_sprays = checked_range("sprays per drink", sprays, "")
    least_ml, most_ml = checked_range("volume of a spray", ml_per_spray, "mL")
    return floor(volume_ml / (most_sprays * most_ml)), floor(volume_ml / (fewest_sprays * least_ml))
