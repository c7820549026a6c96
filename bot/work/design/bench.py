"""The inputs of a design: the wishes, the ingredients on the shelf, their cost, and the limits."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from bot.trade.design import design as rules
from bot.trade.design.design import Bounds, Shelf
from bot.trade.formulas.amounts import ByBottles, ByTotal
from bot.trade.formulas.ingredient_names.reading import read_name
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.formulas.measures import Dimension, Quantity
from bot.trade.numbers.ranges import Range
from bot.trade.safety.jurisdiction import Jurisdiction
from bot.trade.safety.limits import Limit, LimitKind, LimitUnit, Part, limits_for
from bot.trade.sources import PRACTICE
from bot.trade.spray import dose as doses
from bot.work.context import Context
from bot.work.formulas import ingredients, scaling, spray_output
from bot.work.formulas.formulas import FormulaLineView
from bot.work.formulas.ingredients import IngredientView
from bot.work.money import prices
from bot.work.money.prices import PriceView
from bot.work.stock.on_hand import on_hand

# Where nobody said them: the size of a design, and the drink it is sprayed on. Common practice, no source.
USUAL_ML = {"metric": Fraction(100), "us": Fraction(2957353, 25000), "imperial": Fraction(2841307, 25000)}
USUAL_DRINK_ML = Fraction(60)
_WEAKEST_SPIRIT = 55  # % vol; below this no citrus oil stays in it


@dataclass(frozen=True, slots=True)
class Wishes:
    """What a spray should be; None where nobody said it.

    `oil_ml` is the oil in all of it, or all there is where no size was said; `oil_percent` a share of what is
    poured. `glycol_g_per_l` is the most glycol in a drink of `drink_ml`.
    """

    fruit: str
    oil_ml: Fraction | None = None
    oil_percent: Fraction | None = None
    spirit_percent: Fraction | None = None
    target: ByTotal | ByBottles | None = None
    glycol_g_per_l: Fraction | None = None
    drink_ml: Fraction | None = None
    sprays: tuple[Fraction, Fraction] | None = None
    temperature_c: float | None = None
    cheapest: bool = False


@dataclass(frozen=True, slots=True)
class Names:
    """The names of ingredients that the bar does not have yet."""

    oil: str
    glycol: str
    spirit: str
    other_spirit: str


@dataclass(frozen=True, slots=True)
class Bench:
    """What a design is made from, and how it is judged."""

    context: Context
    wishes: Wishes
    bounds: Bounds
    oil: IngredientView
    glycol: IngredientView
    spirits: dict[Shelf, IngredientView]
    sprays: tuple[Fraction, Fraction]
    spray_ml: tuple[Fraction, Fraction]

    @property
    def shelves(self) -> list[Shelf]:
        """The spirits to choose from."""
        return list(self.spirits)


def bench_for(context: Context, wishes: Wishes, names: Names) -> Bench:
    """Return what a design is made from."""
    oil = _on_the_shelf(context, IngredientKind.CITRUS_OIL, names.oil, wishes.fruit)
    glycol = _on_the_shelf(context, IngredientKind.PROPYLENE_GLYCOL, names.glycol)
    settings = context.bar.settings
    usual = Fraction(settings.sprays_low), Fraction(settings.sprays_high)
    weighed = spray_output.sprayed_by(context, 0)
    spirits = _spirits(context, wishes, names)
    cost = _costs(context, [oil, glycol, *spirits])
    bench = Bench(
        context,
        wishes,
        Bounds(context.bar.coldest_c if wishes.temperature_c is None else wishes.temperature_c),
        oil,
        glycol,
        {Shelf(float(one.strength_percent or 0), cost(one), cost(oil), cost(glycol)): one for one in spirits},
        wishes.sprays or usual,
        context.bar.spray_ml if weighed is None else weighed.ml,
    )
    return replace(bench, bounds=replace(bench.bounds, most_glycol=_most_glycol(bench)))


def _on_the_shelf(context: Context, kind: IngredientKind, new: str, called: str = "") -> IngredientView:
    """Return the bar's ingredient of a kind that is not used up, or else a new one."""
    language = context.bar.language
    word = read_name(called, language)
    known = [
        one for one in ingredients.all_of(context, kind) if not word or word in read_name(one.name, language)
    ]
    there = _not_used_up(context, known)
    return (there or known or [_new(new, kind)])[0]


def _not_used_up(context: Context, known: Sequence[IngredientView]) -> list[IngredientView]:
    counted = on_hand(context, [one.id for one in known])
    return [one for one in known if one.id not in counted or counted[one.id].amount > 0]


def _spirits(context: Context, wishes: Wishes, names: Names) -> list[IngredientView]:
    """Return the spirits of the wanted strength, or all strong ones; a new one if there are none."""
    wanted = wishes.spirit_percent
    known = [
        one
        for one in ingredients.all_of(context, IngredientKind.SPIRIT)
        if one.strength_percent is not None
        and (one.strength_percent >= _WEAKEST_SPIRIT if wanted is None else one.strength_percent == wanted)
    ]
    found = _not_used_up(context, known) or known
    if found:
        return found
    usual = Fraction(95 if context.bar.jurisdiction == Jurisdiction.US else 96)
    taken = ingredients.by_name(context, names.spirit) is not None
    return [_new(names.other_spirit if taken else names.spirit, IngredientKind.SPIRIT, wanted or usual)]


def _new(name: str, kind: IngredientKind, percent: Fraction | None = None) -> IngredientView:
    return IngredientView(0, name, kind, percent, None, None, None, None)


def _costs(context: Context, known: Sequence[IngredientView]) -> Callable[[IngredientView], float]:
    """Return the cost of a mL of an ingredient; 0 for all where one has no price: none must look cheap."""
    in_force = prices.in_force(context, [one.id for one in known if one.id])
    found = {one.id: _per_ml(one, in_force.get(one.id)) for one in known}
    return lambda one: found[one.id] if all(found.values()) else 0.0


def _per_ml(one: IngredientView, price: PriceView | None) -> float:
    if price is None or price.dimension is Dimension.COUNT:
        return 0.0
    if price.dimension is Dimension.VOLUME:
        return float(price.per_base)
    grams = scaling.mass_of(line_of(one, Fraction(1)), Fraction(1)).grams
    return 0.0 if grams is None else float(price.per_base * grams)


def _most_glycol(bench: Bench) -> float:
    """Return the most glycol, percent, that keeps a drink within the limits: the wanted and the bar's."""
    only = doses.Mix(
        oil_share=0.0,
        glycol_share=1.0,
        ethanol_share=0.0,
        density_g_per_ml=doses.GLYCOL_DENSITY_G_PER_ML,
        oil_density_g_per_ml=doses.OIL_DENSITY_G_PER_ML,
        glycol_density_g_per_ml=doses.GLYCOL_DENSITY_G_PER_ML,
    )
    sprays = Range(float(bench.sprays[0]), float(bench.sprays[1]))
    spray = Range(float(bench.spray_ml[0]), float(bench.spray_ml[1]))
    served = doses.serving(sprays, spray, float(bench.wishes.drink_ml or USUAL_DRINK_ML))
    verdicts = doses.judge(only, served, _limits(bench))
    shares = [one.mend.largest_share for one in verdicts if one.mend.largest_share is not None]
    return min([100.0 * share for share in shares] + [float(rules.MOST_GLYCOL)])


def _limits(bench: Bench) -> list[Limit]:
    """Return the limits of a drink's glycol: those of the bar's rules, and the one that was asked for."""
    jurisdiction = Jurisdiction(bench.context.bar.jurisdiction)
    found = [one for one in limits_for(jurisdiction) if one.kind is LimitKind.COMPOSITION]
    asked = bench.wishes.glycol_g_per_l
    if asked is not None:
        own = Limit(
            id="asked",
            part=Part.GLYCOL,
            kind=LimitKind.COMPOSITION,
            value=1000.0 * float(asked),
            unit=LimitUnit.MG_PER_LITRE,
            jurisdictions=frozenset(Jurisdiction),
            alcoholic=None,
            text="",
            note="",
            source=PRACTICE,
        )
        found.append(own)
    return found


def line_of(ingredient: IngredientView, ml: Fraction) -> FormulaLineView:
    """Return a volume of an ingredient as a line of a formula."""
    return FormulaLineView(ingredient, Quantity(ml, "ml"), ml, Dimension.VOLUME)
