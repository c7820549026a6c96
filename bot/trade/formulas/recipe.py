"""Recipes, the targets to scale them to, and the scaled recipe.

Every amount is an exact fraction: mL for volumes, g for masses, pieces for counts.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from bot.trade.errors import OutOfRangeError, TradeError
from bot.trade.formulas.measures import Dimension

Range = tuple[Fraction, Fraction]
"""A low and a high end, both included; equal where the value is certain."""


@dataclass
class UnknownIngredientError(TradeError):
    """The recipe has no ingredient of this name; `known` are the names it has."""

    name: str
    known: tuple[str, ...]


@dataclass
class NoVolumeError(TradeError):
    """A target in mL was given for a recipe without a known volume."""


@dataclass
class IngredientDimensionError(TradeError):
    """An amount of an ingredient is in `given`, but the recipe measures it in `wanted`."""

    name: str
    given: Dimension
    wanted: Dimension


@dataclass(frozen=True, slots=True)
class Line:
    """One ingredient of a recipe: mL, g or pieces, as `dimension` says. Raises OutOfRangeError below zero."""

    name: str
    amount: Fraction
    dimension: Dimension

    def __post_init__(self) -> None:
        if self.amount < 0:
            raise OutOfRangeError("amount", float(self.amount), 0, None, self.dimension)


@dataclass(frozen=True, slots=True)
class Recipe:
    """Ingredients in the order they are listed, and their measured yield in mL, if known.

    Raises OutOfRangeError for a yield that is not above zero.
    """

    lines: tuple[Line, ...]
    yield_ml: Fraction | None = None

    def __post_init__(self) -> None:
        if self.yield_ml is not None:
            above_zero("yield", self.yield_ml, "mL")


@dataclass(frozen=True, slots=True)
class ByFactor:
    """A multiple of the recipe."""

    factor: Fraction


@dataclass(frozen=True, slots=True)
class ByTotal:
    """A total in mL of the finished preparation."""

    ml: Fraction


@dataclass(frozen=True, slots=True)
class ByBottles:
    """A number of full bottles, after losing the share `loss_share` (0 up to 1) on the way."""

    count: int
    size_ml: Fraction
    loss_share: Fraction = Fraction(0)


@dataclass(frozen=True, slots=True)
class ByIngredient:
    """A given amount of one ingredient, in the recipe's own measure; `dimension` is checked if given."""

    name: str
    amount: Fraction
    dimension: Dimension | None = None


@dataclass(frozen=True, slots=True)
class ByDrinks:
    """Enough for a number of drinks: give the high ends of sprays per drink and mL per spray."""

    drinks: int
    sprays_per_drink: Fraction
    ml_per_spray: Fraction
    loss_share: Fraction = Fraction(0)


@dataclass(frozen=True, slots=True)
class ByStock:
    """The most that the stock allows: amounts by ingredient, in the recipe's own measure.

    An ingredient missing from the stock does not limit.
    """

    on_hand: Mapping[str, Fraction]


Target = ByFactor | ByTotal | ByBottles | ByIngredient | ByDrinks | ByStock


@dataclass(frozen=True, slots=True)
class Scaled:
    """A recipe times `factor`.

    `total_ml` is the plain sum of the volumes, `finished_ml` what it comes to after contraction or as the
    recipe's known yield (None if no volume is known). `limiting` is the ingredient that runs out first, and
    `not_counted` those missing from the stock.
    """

    factor: Fraction
    lines: tuple[Line, ...]
    total_ml: Fraction
    limiting: str | None = None
    finished_ml: Fraction | None = None
    not_counted: tuple[str, ...] = field(default=())


def checked_share(quantity: str, share: Fraction) -> Fraction:
    """Return a share unchanged if it lies from 0 up to, not including, 1. Raises OutOfRangeError."""
    if not 0 <= share < 1:
        raise OutOfRangeError(quantity, float(share), 0, 1, "")
    return share


def checked_range(quantity: str, ends: Range, unit: str) -> Range:
    """Return a range unchanged if it lies above zero, low end first. Raises OutOfRangeError."""
    low, high = ends
    above_zero(quantity, low, unit)
    if high < low:
        raise OutOfRangeError(quantity, float(high), float(low), None, unit)
    return low, high


def above_zero(quantity: str, value: Fraction, unit: str) -> Fraction:
    """Return a value unchanged if it is above zero. Raises OutOfRangeError."""
    if value <= 0:
        raise OutOfRangeError(quantity, float(value), 0, None, unit)
    return value
