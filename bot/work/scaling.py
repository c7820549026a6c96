"""A formula scaled to what is wanted, as it will be measured and filled."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from bot.trade.amounts import (
    DEFAULT_TOOLS,
    FillPlan,
    Rounded,
    Scale,
    Scaled,
    Target,
    Tool,
    drinks_in,
    fill_plan,
    round_to_tools,
    scale,
)
from bot.trade.densities import density_of
from bot.trade.kinds import IngredientKind, Preparation
from bot.trade.measures import Dimension
from bot.trade.strength import Component, FormulaStrength, formula_strength
from bot.work.desk import BarView, Desk
from bot.work.formulas import FormulaLineView, FormulaView


@dataclass(frozen=True, slots=True)
class LineMass:
    """What an amount weighs: g at 20 °C and where the density is from; None where it is not known."""

    grams: Fraction | None
    density_g_per_ml: Fraction | None
    source: str


@dataclass(frozen=True, slots=True)
class ScaleAnswer:
    """A scaled formula: exact, as rounded to the bar's tools, in grams, and how it fills bottles.

    Volumes in mL at 20 °C; `finished_ml` is after contraction. `drinks` is the fewest and
    the most that the volume garnishes, or None where the formula is not sprayed.
    """

    formula: FormulaView
    scaled: Scaled
    rounded: Rounded
    masses: tuple[LineMass, ...]
    strength: FormulaStrength | None
    finished_ml: Fraction | None
    loss_share: Fraction
    fill: FillPlan | None
    drinks: tuple[int, int] | None


def strength_of(view: FormulaView) -> FormulaStrength | None:
    """Return a formula's strength and volume; None where a spirit's strength is not known."""
    components = []
    for line in view.lines:
        if line.dimension is not Dimension.VOLUME:
            continue
        percent = line.ingredient.strength_percent
        if line.ingredient.kind is IngredientKind.SPIRIT and percent is None:
            return None
        components.append(_component(line))
    return formula_strength(components)


def _component(line: FormulaLineView) -> Component:
    ingredient = line.ingredient
    percent = ingredient.strength_percent
    strength = 0.0 if percent is None else float(percent)
    return Component(ingredient.kind, ingredient.name, float(line.amount), strength)


def finished_share(view: FormulaView) -> Fraction:
    """Return finished mL for each mL poured in: below 1 where spirit and water contract."""
    strength = strength_of(view)
    if strength is None or not view.total_ml:
        return Fraction(1)
    # To six decimals: the density formula is good to no more, and exact fractions stay short.
    share = Fraction(round(strength.volume_ml / float(view.total_ml), 6)).limit_denominator(10**6)
    return min(share, Fraction(1)) or Fraction(1)


def tools_of(bar: BarView) -> tuple[Tool | Scale, ...]:
    """Return the bar's measuring tools, or the usual ones for its units."""
    scales = tuple(tool for tool in DEFAULT_TOOLS["metric"] if isinstance(tool, Scale))
    if bar.settings.tools:
        own = tuple(Tool(name, Fraction(step), Fraction(up_to)) for name, step, up_to in bar.settings.tools)
        return (*own, *scales)
    return DEFAULT_TOOLS["us" if bar.units == "us" else "metric"]


def scale_formula(
    desk: Desk,
    view: FormulaView,
    target: Target,
    bottle_sizes: tuple[Fraction, ...] = (),
    loss_share: Fraction = Fraction(0),
) -> ScaleAnswer:
    """Scale a formula to a target; volumes wanted are met after contraction.

    Raises the errors of bot.trade.amounts.scale.
    """
    share = finished_share(view)
    scaled = scale(view.recipe, target, share)
    rounded = round_to_tools(scaled, tools_of(desk.bar))
    made = scaled.finished_ml
    usable = None if made is None else made * (1 - loss_share)
    fill = fill_plan(usable, bottle_sizes) if usable and bottle_sizes else None
    drinks = None
    if usable and view.sprays is not None:
        drinks = drinks_in(usable, view.sprays, view.spray_ml)
    masses = tuple(
        mass_of(line, scaled_line.amount) for line, scaled_line in zip(view.lines, scaled.lines, strict=True)
    )
    return ScaleAnswer(view, scaled, rounded, masses, strength_of(view), made, loss_share, fill, drinks)


def mass_of(line: FormulaLineView, amount: Fraction) -> LineMass:
    """Return what an amount of a line weighs, by the ingredient's own density or the handbook's."""
    if line.dimension is Dimension.MASS:
        return LineMass(amount, None, "")
    if line.dimension is Dimension.COUNT:
        return LineMass(None, None, "")
    ingredient = line.ingredient
    if ingredient.density_g_per_ml is not None:
        own = ingredient.density_g_per_ml
        return LineMass(amount * own, own, ingredient.density_source or "")
    percent = None if ingredient.strength_percent is None else float(ingredient.strength_percent)
    found = density_of(ingredient.kind, ingredient.name, percent)
    if found is None:
        return LineMass(None, None, "")
    density = Fraction(repr(found.middle)).limit_denominator(10**6)
    return LineMass(amount * density, density, found.source.title)


def densities(view: FormulaView) -> Mapping[str, Fraction]:
    """Return the densities in g/mL that are known, by ingredient name."""
    found = {}
    for line in view.lines:
        mass = mass_of(line, Fraction(1))
        if mass.density_g_per_ml is not None:
            found[line.ingredient.name] = mass.density_g_per_ml
    return found


def is_sprayed(view: FormulaView) -> bool:
    """Whether the preparation is used by the spray."""
    return view.preparation is Preparation.AROMA_MIST or view.sprays is not None
