"""Uses of the flesh: acid adjustment of its juice, and formulas with it."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from bot.trade.formulas.ingredient_names.reading import plain_name
from bot.trade.formulas.kinds import IngredientKind, Preparation
from bot.trade.formulas.measures import Dimension
from bot.trade.fruit.acidity import (
    AcidAddition,
    AcidOutcome,
    AcidRecipe,
    acid_to_add,
    acidity,
    outcome,
    rule_of_thumb,
    usual_citric_share,
)
from bot.trade.fruit.acidity_table import Juice
from bot.trade.numbers.uncertainty import to_decimal
from bot.work.context import Context
from bot.work.errors import NotThereError
from bot.work.formulas import formulas
from bot.work.formulas.formulas import FormulaLineView, FormulaView
from bot.work.formulas.ingredients import IngredientView, handbook_key

_JUICES = {"navel": "orange", "valencia": "orange", "florida": "orange"}
_MOST_SHOWN = 3


@dataclass(frozen=True, slots=True)
class OwnRecipe:
    """A formula of the bar that acidifies this juice, and its result."""

    formula_id: int
    name: str
    outcome: AcidOutcome


@dataclass(frozen=True, slots=True)
class Souring:
    """Acid for a volume of juice, mL: computed, by the rule of thumb (None: none), and the bar's own recipe.

    `measured` means that the bar titrated a juice itself, so that the computed acid comes first.
    """

    source: Juice
    target: Juice
    volume_ml: Fraction
    computed: AcidAddition
    thumb: AcidOutcome | None
    own: OwnRecipe | None
    measured: bool


def juice_named(name: str, language: str = "en") -> Juice | None:
    """Return the juice with a measured acidity for a fruit's or juice's name, or None."""
    key = handbook_key(name, language)
    return None if key is None else Juice(_JUICES.get(key, key))


def sour(
    context: Context,
    source_name: str,
    target_name: str,
    volume_ml: Fraction,
    source_g_per_l: Fraction | None = None,
    target_g_per_l: Fraction | None = None,
) -> Souring:
    """Return the acid that brings a juice to the acidity of another; own titrations in g/L come first.

    Raises NotThereError for a fruit whose acidity is not in the handbook, OutOfRangeError for no volume or an
    impossible titration.
    """
    language = context.bar.language
    source, target = _known(source_name, language), _known(target_name, language)
    here = acidity(source, None if source_g_per_l is None else to_decimal(source_g_per_l))
    there = acidity(target, None if target_g_per_l is None else to_decimal(target_g_per_l))
    volume = to_decimal(volume_ml)
    computed = acid_to_add(volume, here, there, usual_citric_share(target))
    passed_on = rule_of_thumb(source, target)
    thumb = None if passed_on is None else outcome(volume, here, there, passed_on)
    own = _own(context, source, target)
    recipe = None
    if own is not None:
        view, acids = own
        recipe = OwnRecipe(view.id, view.name, outcome(volume, here, there, acids))
    measured = source_g_per_l is not None or target_g_per_l is not None
    return Souring(source, target, volume_ml, computed, thumb, recipe, measured)


def _known(name: str, language: str) -> Juice:
    juice = juice_named(name, language)
    if juice is None:
        raise NotThereError("measured acidity of", name)
    return juice


def _own(context: Context, source: Juice, target: Juice) -> tuple[FormulaView, AcidRecipe] | None:
    """Return the bar's own formula that acidifies this juice for this target, or None."""
    for name in formulas.listed(context):
        if name.preparation is not Preparation.ACID_ADJUSTED_JUICE:
            continue
        view = formulas.get(context, name.id)
        named = {juice for juice in (Juice.LIME, Juice.LEMON) if juice.value in plain_name(view.name)}
        acids = _acids_in(view, source)
        if acids is not None and (not named or target in named):
            return view, acids
    return None


def _acids_in(view: FormulaView, source: Juice) -> AcidRecipe | None:
    """Return a formula's acids in g per litre of this juice; None without such juice or acid."""
    juice_ml = sum((line.amount for line in view.lines if _is_juice_of(line, source)), Fraction(0))
    acids = {"citric": Fraction(0), "malic": Fraction(0)}
    for line in view.lines:
        if line.ingredient.kind is not IngredientKind.ACID:
            continue
        word = next((one for one in acids if one in plain_name(line.ingredient.name)), None)
        if word is None or line.dimension is not Dimension.MASS:
            return None  # another acid, or one measured by the spoon: its strength is unknown here
        acids[word] += line.amount
    if not juice_ml or not any(acids.values()):
        return None
    citric, malic = (to_decimal(acids[one] / juice_ml * 1000) for one in ("citric", "malic"))
    return AcidRecipe(citric, malic)


def _is_juice_of(line: FormulaLineView, source: Juice) -> bool:
    return (
        line.ingredient.kind is IngredientKind.JUICE
        and line.dimension is Dimension.VOLUME
        and juice_named(line.ingredient.name) is source
    )


def formulas_using(context: Context, fruit: IngredientView) -> list[formulas.FormulaName]:
    """Return the formulas with this fruit or its juice, by name."""
    language = context.bar.language
    key = handbook_key(fruit.name, language)
    found = []
    for name in formulas.listed(context):
        for line in formulas.get(context, name.id).lines:
            flesh = line.ingredient.kind in {IngredientKind.FRUIT, IngredientKind.JUICE}
            alike = key is not None and handbook_key(line.ingredient.name, language) == key
            if line.ingredient.id == fruit.id or (flesh and alike):
                found.append(name)
                break
    return found[:_MOST_SHOWN]


def likely_acid_g(souring: Souring) -> tuple[Decimal, Decimal]:
    """Return the citric and malic acid to weigh in, g: the bar's own recipe, unless it titrated."""
    if souring.own is not None and not souring.measured:
        return souring.own.outcome.citric_g, souring.own.outcome.malic_g
    return souring.computed.citric_g, souring.computed.malic_g
