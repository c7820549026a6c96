"""The cost of the spray of a fruit by the formula and prices of the bar, for the time before a switch."""

from __future__ import annotations

from dataclasses import dataclass

from bot.trade.numbers.uncertainty import Estimate
from bot.work.context import Context
from bot.work.formulas.formulas import FormulaView
from bot.work.formulas.ingredients import IngredientView
from bot.work.money import cost as costing
from bot.work.savings import cash


@dataclass(frozen=True, slots=True)
class OwnSpray:
    """The bar's formula for a fruit's garnish and what a drink's spray costs; None without every price.

    `unpriced` are its ingredients without a price.
    """

    formula: FormulaView
    a_drink: Estimate | None
    unpriced: tuple[str, ...]


def own_spray(context: Context, fruit: IngredientView) -> OwnSpray | None:
    """Return the formula that replaces this garnish, one with all its prices before another, or None."""
    found = []
    for view in cash.sprays(context, fruit):
        if view.archived or view.sprays is None or view.garnish != fruit:
            continue
        cost = costing.as_last_made(context, view).cost
        a_drink = None if cost.is_partial or not cost.per_drink else Estimate.between(*cost.per_drink)
        found.append(OwnSpray(view, a_drink, cost.missing))
    return next((one for one in found if one.a_drink), found[0] if found else None)
