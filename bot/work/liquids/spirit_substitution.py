"""Replace a spirit by one of another strength with the same amount of ethanol."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from bot.trade.formulas.kinds import IngredientKind
from bot.trade.formulas.measures import Dimension, Quantity
from bot.trade.liquids.spirit_substitution import Swap, swap_spirit
from bot.trade.liquids.strength import FormulaStrength
from bot.work.errors import WorkError
from bot.work.formulas.formulas import FormulaLineView, FormulaView
from bot.work.formulas.ingredients import IngredientView
from bot.work.formulas.mixture import mix_of, scaled_line


@dataclass
class NoSpiritError(WorkError):
    """A formula contains no spirit to replace. `name` is the formula's."""

    name: str


@dataclass
class UnknownStrengthError(WorkError):
    """The strength of a spirit is unknown. `name` is the spirit's, `formula` the formula that needs it."""

    name: str
    formula: str


@dataclass(frozen=True, slots=True)
class SwapLine:
    """One spirit of the formula and its replacement, for the formula as written."""

    name: str
    new_name: str
    swap: Swap


@dataclass(frozen=True, slots=True)
class Swapped:
    """A formula with every spirit replaced for the same ethanol; nothing else is changed.

    `view` is the formula with the replacement, which is not a stored version. `ingredient` is the named
    spirit, None if only its strength was given.
    """

    view: FormulaView
    percent: Fraction
    ingredient: IngredientView | None
    lines: tuple[SwapLine, ...]
    before: FormulaStrength
    after: FormulaStrength


def swap_in(view: FormulaView, percent: Fraction, ingredient: IngredientView | None = None) -> Swapped:
    """Return the formula with its spirits replaced by one of `percent` % vol.

    Raises NoSpiritError, UnknownStrengthError, or the errors of bot.trade.liquids.spirit_substitution.
    """
    mix = mix_of(view)
    if mix.without_strength:
        raise UnknownStrengthError(mix.without_strength[0], view.name)
    lines: list[FormulaLineView] = []
    swaps: list[SwapLine] = []
    for line in view.lines:
        if line.ingredient.kind is not IngredientKind.SPIRIT:
            lines.append(line)
            continue
        changed, swap = _swap_line(line, percent, ingredient)
        lines.append(changed)
        swaps.append(swap)
    if not swaps:
        raise NoSpiritError(view.name)
    new = replace(view, lines=tuple(lines))
    before, after = mix.strength, mix_of(new).strength
    if before is None or after is None:
        raise UnknownStrengthError(swaps[0].name, view.name)
    return Swapped(new, percent, ingredient, tuple(swaps), before, after)


def _swap_line(
    line: FormulaLineView, percent: Fraction, ingredient: IngredientView | None
) -> tuple[FormulaLineView, SwapLine]:
    old = line.ingredient
    new = replace(old if ingredient is None else ingredient, strength_percent=percent)
    volume = scaled_line(line, line.amount).volume_ml or 0.0
    swap = swap_spirit(volume, float(old.strength_percent or 0), float(percent))
    if line.dimension is Dimension.VOLUME:
        # Volumes are in inverse proportion to the strengths, so the exact amount stays exact.
        ml = line.amount * (old.strength_percent or 0) / percent
    else:
        ml = Fraction(round(swap.to_ml, 3)).limit_denominator(1000)
    changed = FormulaLineView(new, Quantity(ml, "ml"), ml, Dimension.VOLUME)
    return changed, SwapLine(old.name, new.name, swap)
