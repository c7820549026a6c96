"""The cost of a formula, compared with fresh garnish."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from bot.trade.formulas.amounts import ByFactor, ByTotal
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.formulas.measures import Dimension
from bot.trade.money.cost import (
    Cost,
    PackPrice,
    Spraying,
    Vessel,
    break_even_price_each,
    break_even_sprays,
    cost,
    fresh_per_drink,
    fresh_to_spray,
)
from bot.trade.money.money import as_decimal
from bot.work.context import Context
from bot.work.formulas.formulas import FormulaView
from bot.work.formulas.ingredients import IngredientView
from bot.work.formulas.scaling import ScaleAnswer, densities, scale_formula
from bot.work.money import prices
from storage.tables import Batch

_WATER = PackPrice(Fraction(1), Dimension.VOLUME, Decimal(0))


@dataclass(frozen=True, slots=True)
class FreshAgainst:
    """Fresh garnish against the spray: money per drink, and the cost ratio, low and high.

    `even_price` is the price of a piece of fruit at which both cost the same, computed with the more
    expensive end of the spray; `even_sprays` the number of sprays that costs as much as one garnish.
    """

    fruit: IngredientView
    price_each: Decimal
    garnishes: tuple[Fraction, Fraction]
    per_drink: tuple[Decimal, Decimal]
    times: tuple[Fraction, Fraction]
    even_price: Decimal
    even_sprays: Fraction


@dataclass(frozen=True, slots=True)
class CostAnswer:
    """The cost of a scaled formula; `fresh` is None if the replaced fruit has no price or is not set."""

    answer: ScaleAnswer
    cost: Cost
    bottle_ml: Fraction | None
    fresh: FreshAgainst | None
    fresh_missing: str | None  # the fruit with an unknown price or number of garnishes


def cost_of(context: Context, answer: ScaleAnswer, bottle_ml: Fraction | None = None) -> CostAnswer:
    """Compute the cost of a scaled formula at current prices."""
    view = answer.formula
    wanted = [line.ingredient.id for line in view.lines]
    if view.garnish is not None:
        wanted.append(view.garnish.id)
    in_force = prices.in_force(context, wanted)
    spraying = None if view.sprays is None else Spraying(view.sprays, view.spray_ml)
    result = cost(
        answer.measured.recipe.lines,
        _packs(answer, in_force),
        densities_g_per_ml=densities(view),
        finished_ml=answer.finished_ml,
        loss_share=answer.loss_share,
        bottle=None if bottle_ml is None else Vessel(bottle_ml),
        spraying=spraying,
    )
    fresh, missing = _fresh(view.garnish, in_force, result)
    return CostAnswer(answer, result, bottle_ml, fresh, missing)


def last_made_ml(context: Context, formula_id: int) -> Fraction | None:
    """Return the whole mL of the last batch of a formula, or None if it was never made."""
    made_here = Batch.state != "undone", Batch.came_from.is_(None)
    row = context.book.one(Batch, Batch.formula_id == formula_id, *made_here, order=Batch.id.desc())
    return None if row is None or row.total_ml < 1 else Fraction(round(row.total_ml))


_USUAL_BOTTLE_ML = Fraction(50)


def as_last_made(context: Context, view: FormulaView) -> CostAnswer:
    """Compute the cost of a formula in its last amount, or as written; with the bar's loss."""
    ml = last_made_ml(context, view.id)
    target = ByFactor(Fraction(1)) if ml is None else ByTotal(ml)
    loss = Fraction(context.bar.settings.loss_percent) / 100
    return cost_of(context, scale_formula(context, view, target, loss_share=loss), _USUAL_BOTTLE_ML)


def _packs(answer: ScaleAnswer, in_force: Mapping[int, prices.PriceView]) -> dict[str, PackPrice]:
    packs = {}
    for line in answer.formula.lines:
        price = in_force.get(line.ingredient.id)
        if price is not None:
            packs[line.ingredient.name] = price.pack_price
        elif line.ingredient.kind is IngredientKind.WATER:
            packs[line.ingredient.name] = _WATER  # tap water is free unless the bar prices it
    return packs


def _fresh(
    fruit: IngredientView | None, in_force: Mapping[int, prices.PriceView], result: Cost
) -> tuple[FreshAgainst | None, str | None]:
    if fruit is None:
        return None, None
    price = in_force.get(fruit.id)
    if price is None or price.dimension is not Dimension.COUNT or price.garnishes is None:
        return None, fruit.name
    if result.per_drink is None or result.per_spray is None or result.is_partial or not result.per_drink[0]:
        return None, None
    each = as_decimal(price.per_base)
    few, many = price.garnishes
    dear, cheap = fresh_per_drink(each, few), fresh_per_drink(each, many)
    low = fresh_to_spray(cheap, result.per_drink)[0]
    high = fresh_to_spray(dear, result.per_drink)[1]
    return (
        FreshAgainst(
            fruit,
            each,
            price.garnishes,
            (cheap, dear),
            (low, high),
            break_even_price_each(result.per_drink[1], few),
            break_even_sprays(dear, result.per_spray[1]),
        ),
        None,
    )
