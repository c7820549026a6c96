"""The amount of each formula that the stock allows."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from bot.trade.stock.on_hand import Makeable, what_can_be_made
from bot.work.context import Context
from bot.work.formulas import formulas, scaling
from bot.work.formulas.formulas import FormulaLineView
from bot.work.stock import on_hand as stock
from bot.work.stock.on_hand import OnHand


@dataclass(frozen=True, slots=True)
class CanMake:
    """The amount of a formula that the stock allows; `finished_ml` after contraction, None if unknown."""

    formula_id: int
    name: str
    version: int
    factor: Fraction
    finished_ml: Fraction | None
    limiting: str | None
    not_counted: tuple[str, ...]


def can_make(context: Context) -> list[CanMake]:
    """Return the amount of each formula in the book that the stock allows, the largest factor first."""
    there = stock.on_hand(context)
    found = []
    for name in formulas.listed(context):
        view = formulas.get(context, name.id)
        (one,) = what_can_be_made({view.name: scaling.recipe_of(view)}, amounts_for(view.lines, there))
        found.append(_can_make(view, one))
    return sorted(found, key=lambda one: (-one.factor, one.name))


def _can_make(view: formulas.FormulaView, one: Makeable) -> CanMake:
    tap = {line.ingredient.name for line in view.lines if stock.is_tap(line.ingredient)}
    share = scaling.finished_share(view) if scaling.recipe_of(view).yield_ml is None else Fraction(1)
    finished = None if one.finished_ml is None else one.finished_ml * share
    not_counted = tuple(name for name in one.not_counted if name not in tap)
    return CanMake(view.id, view.name, view.version, one.factor, finished, one.limiting, not_counted)


def amounts_for(lines: Sequence[FormulaLineView], there: Mapping[int, OnHand]) -> dict[str, Fraction]:
    """Return the stock of a formula's ingredients by name, in the formula's measures, without tap water."""
    found = {}
    for line in lines:
        one = there.get(line.ingredient.id)
        if one is None or stock.is_tap(line.ingredient):
            continue
        turned = stock.convert(line.ingredient, one.amount, one.dimension, line.dimension)
        if turned is not None:
            found[line.ingredient.name] = turned
    return found
