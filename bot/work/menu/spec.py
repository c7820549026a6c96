"""The spec card of a drink: what its aroma costs, its dose, its allergens, and what it replaces."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from bot.trade.formulas.amounts import ByFactor
from bot.trade.formulas.kinds import IngredientKind
from bot.work.context import Context
from bot.work.formulas import scaling
from bot.work.formulas.ingredients import IngredientView
from bot.work.liquids.spirit_substitution import UnknownStrengthError
from bot.work.menu.menu import MenuDrinkView, ServedView
from bot.work.money import cost
from bot.work.safety import allergens
from bot.work.safety.allergens import Named
from bot.work.spray import dose
from bot.work.spray.dose import DoseAnswer, DoseQuestion, NothingToDoseError

_USUAL_GLASS_ML = Fraction(90)  # for the dose, where the glass is not said. Common practice, no source.


@dataclass(frozen=True, slots=True)
class Spec:
    """A drink with what it costs and carries; money per drink, low and high.

    `cost` is None where a price is missing; `unpriced` names those preparations. `fresh` is the cost of the
    garnishes it replaces. `dose` counts all preparations of the drink; None if nothing in it has one.
    """

    drink: MenuDrinkView
    replaces: tuple[IngredientView, ...]
    cost: tuple[Decimal, Decimal] | None
    unpriced: tuple[str, ...]
    fresh: tuple[Decimal, Decimal] | None
    dose: DoseAnswer | None
    allergens: tuple[Named, ...]
    has_alcohol: bool
    citrus: tuple[str, ...]


def spec(context: Context, drink: MenuDrinkView) -> Spec:
    """Return the spec card of a drink at current prices."""
    costs = [(one, _cost(context, one)) for one in drink.lines]
    known = [found for _one, found in costs if found is not None]
    whole = len(known) == len(costs)
    fresh = [found.fresh for found in known]
    lines = [line for one in drink.lines for line in allergens.lines_of(context, one.formula)]
    kinds = {kind for one in drink.lines for kind in one.formula.kinds}
    return Spec(
        drink,
        tuple(
            {
                one.formula.garnish.id: one.formula.garnish
                for one in drink.lines
                if one.formula.garnish is not None
            }.values()
        ),
        _total([found.each for found in known]) if whole else None,
        tuple(one.formula.name for one, found in costs if found is None),
        _total([one for one in fresh if one is not None]) if any(fresh) else None,
        _dose(context, drink),
        tuple(allergens.once(lines)),
        IngredientKind.SPIRIT in kinds,
        tuple(sorted({name for one in drink.lines for name in _citrus(one)})),
    )


@dataclass(frozen=True, slots=True)
class _Each:
    each: tuple[Decimal, Decimal]
    fresh: tuple[Decimal, Decimal] | None


def _cost(context: Context, one: ServedView) -> _Each | None:
    """Return the cost of a preparation in one drink, None if its price is not known."""
    found = cost.cost_of(context, scaling.scale_formula(context, one.formula, ByFactor(Fraction(1))))
    if found.cost.is_partial or found.cost.per_ml is None:
        return None
    low, high = (found.cost.per_ml * ml.numerator / ml.denominator for ml in one.ml_each)
    return _Each((low, high), None if found.fresh is None else found.fresh.per_drink)


def _total(parts: list[tuple[Decimal, Decimal]]) -> tuple[Decimal, Decimal]:
    return sum((low for low, _high in parts), Decimal(0)), sum((high for _low, high in parts), Decimal(0))


def _dose(context: Context, drink: MenuDrinkView) -> DoseAnswer | None:
    """Return the dose of the first preparation that has one, with all others in the drink beside it."""
    glass = drink.glass_ml or _USUAL_GLASS_ML
    for at, one in enumerate(drink.lines):
        others = [other for number, other in enumerate(drink.lines) if number != at]
        question = DoseQuestion(
            glass,
            sprays=one.sprays,
            taken_ml=one.ml,
            beside=tuple((other.formula, other.ml_each[1]) for other in others if _has_dose(other)),
        )
        try:
            return dose.answer(context, one.formula, question)
        except (NothingToDoseError, UnknownStrengthError):
            continue
    return None


def _has_dose(one: ServedView) -> bool:
    try:
        dose.mix_shares(one.formula)
    except (NothingToDoseError, UnknownStrengthError):
        return False
    return True


def _citrus(one: ServedView) -> list[str]:
    """Return the citrus of a preparation: its oils, juices and fruit."""
    kinds = {IngredientKind.CITRUS_OIL, IngredientKind.JUICE, IngredientKind.FRUIT}
    return [line.ingredient.name for line in one.formula.lines if line.ingredient.kind in kinds]
