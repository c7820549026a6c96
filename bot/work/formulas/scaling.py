"""Scale a formula to a target, with tool rounding and a fill plan."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import lru_cache

from bot.trade.formulas.amounts import (
    DEFAULT_TOOLS,
    ByBottles,
    ByDrinks,
    FillPlan,
    Line,
    Rounded,
    RoundedLine,
    Scale,
    Scaled,
    Target,
    Tool,
    drinks_in,
    fill_plan,
    round_to_enough,
    round_to_tools,
    scale,
)
from bot.trade.formulas.kinds import IngredientKind, Preparation
from bot.trade.formulas.measures import Dimension
from bot.trade.formulas.recipe import Recipe
from bot.trade.liquids.densities import Correction, density_of
from bot.trade.liquids.strength import FormulaStrength
from bot.work.context import BarView, Context
from bot.work.formulas.formulas import FormulaLineView, FormulaView
from bot.work.formulas.mixture import mix_of

REFERENCE_TEMPERATURE_C = 20.0


@dataclass(frozen=True, slots=True)
class LineMass:
    """The mass of an amount in g, and the source of the density (g/mL); None if unknown.

    `low_g` and `high_g` follow from the source's range; `corrected` is False if the density could not be
    corrected to the temperature; `own` marks the bar's own density.
    """

    grams: Fraction | None
    density_g_per_ml: Fraction | None
    source: str
    low_g: Fraction | None = None
    high_g: Fraction | None = None
    corrected: bool = True
    own: bool = False


@dataclass(frozen=True, slots=True)
class ScaleAnswer:
    """A scaled formula: exact amounts, amounts rounded to the bar's tools, grams, and the fill plan.

    Volumes in mL at 20 °C. `measured` is the formula with the amounts that are poured: rounded, or exact
    where it is weighed; strength, `finished_ml` (after contraction), fill and drinks are theirs. `drinks` is
    the fewest and the most drinks from the volume, or None if the formula is not sprayed.
    """

    formula: FormulaView
    measured: FormulaView
    scaled: Scaled
    rounded: Rounded
    masses: tuple[LineMass, ...]
    strength: FormulaStrength | None
    finished_ml: Fraction | None
    loss_share: Fraction
    fill: FillPlan | None
    drinks: tuple[int, int] | None


def strength_of(view: FormulaView) -> FormulaStrength | None:
    """Return a formula's strength and volume; None if a spirit's strength is unknown."""
    return mix_of(view).strength


def finished_share(view: FormulaView) -> Fraction:
    """Return finished mL per mL poured in: below 1 where spirit and water contract."""
    return _finished_share(view, strength_of(view))


def _finished_share(view: FormulaView, strength: FormulaStrength | None) -> Fraction:
    if strength is None or not view.total_ml or _has_solids(view):
        return Fraction(1)
    # To six decimals: the density formula is no more precise, and exact fractions stay short.
    share = Fraction(round(strength.volume_ml / float(view.total_ml), 6)).limit_denominator(10**6)
    return min(share, Fraction(1)) or Fraction(1)


def _has_solids(view: FormulaView) -> bool:
    return any(line.dimension is Dimension.MASS for line in view.lines)


def recipe_of(view: FormulaView) -> Recipe:
    """Return the recipe, with its yield in mL if something is weighed in: sugar takes up volume too."""
    return _recipe_of(view, strength_of(view))


def _recipe_of(view: FormulaView, strength: FormulaStrength | None) -> Recipe:
    if strength is None or not _has_solids(view) or not strength.volume_ml:
        return view.recipe
    return replace(view.recipe, yield_ml=Fraction(round(strength.volume_ml, 3)).limit_denominator(1000))


def made_ml(view: FormulaView) -> Fraction | None:
    """Return the mL of a formula as written, after contraction; None if no volume is known."""
    known = recipe_of(view).yield_ml
    return known or view.total_ml * finished_share(view) or None


def tools_of(bar: BarView) -> tuple[Tool | Scale, ...]:
    """Return the bar's measuring tools, or the defaults for its units."""
    scales = tuple(tool for tool in DEFAULT_TOOLS["metric"] if isinstance(tool, Scale))
    if bar.settings.tools:
        own = tuple(Tool(name, Fraction(step), Fraction(up_to)) for name, step, up_to in bar.settings.tools)
        return (*own, *scales)
    return DEFAULT_TOOLS["us" if bar.units == "us" else "metric"]


def scale_formula(
    context: Context,
    view: FormulaView,
    target: Target,
    bottle_sizes: tuple[Fraction, ...] = (),
    loss_share: Fraction = Fraction(0),
    temperature_c: float = REFERENCE_TEMPERATURE_C,
    *,
    weighed: bool = False,
) -> ScaleAnswer:
    """Scale a formula to a target; target volumes apply after contraction.

    Rounded amounts never give less than the bottles or drinks asked for. `temperature_c` is the temperature
    for the masses; `weighed` means that no tool rounds the amounts. Raises the errors of
    bot.trade.formulas.amounts.scale.
    """
    strength = strength_of(view)
    scaled = scale(_recipe_of(view, strength), target, _finished_share(view, strength))
    rounded = _rounded(context, view, scaled, target)
    measured = _with_amounts(view, scaled.lines if weighed else rounded.lines)
    made = _made_of(measured, scaled)
    usable = None if made is None else made * (1 - loss_share)
    fill = fill_plan(usable, bottle_sizes) if usable and bottle_sizes else None
    drinks = None
    if usable and view.sprays is not None:
        drinks = drinks_in(usable, view.sprays, view.spray_ml)
    masses = tuple(
        mass_of(line, scaled_line.amount, temperature_c)
        for line, scaled_line in zip(view.lines, scaled.lines, strict=True)
    )
    strength = strength_of(measured)
    return ScaleAnswer(view, measured, scaled, rounded, masses, strength, made, loss_share, fill, drinks)


def _rounded(context: Context, view: FormulaView, scaled: Scaled, target: Target) -> Rounded:
    tools, wanted = tools_of(context.bar), scaled.finished_ml
    if wanted is None or not isinstance(target, ByBottles | ByDrinks):
        return round_to_tools(scaled, tools)
    return round_to_enough(
        scaled,
        tools,
        lambda rounded: (_made_of(_with_amounts(view, rounded.lines), scaled) or 0) >= wanted,
    )


def _made_of(measured: FormulaView, scaled: Scaled) -> Fraction | None:
    """Return the mL of measured amounts: those of the exact ones exactly, without the density's rounding."""
    exact = all(line.amount == true.amount for line, true in zip(measured.lines, scaled.lines, strict=True))
    return scaled.finished_ml if exact else made_ml(measured)


def _with_amounts(view: FormulaView, lines: Iterable[Line | RoundedLine]) -> FormulaView:
    return replace(
        view,
        lines=tuple(replace(old, amount=new.amount) for old, new in zip(view.lines, lines, strict=True)),
    )


def mass_of(
    line: FormulaLineView, amount: Fraction, temperature_c: float = REFERENCE_TEMPERATURE_C
) -> LineMass:
    """Return the mass of an amount of a line, from the ingredient's own density or the handbook's.

    Volumes are as measured at `temperature_c`.
    """
    if line.dimension is Dimension.MASS:
        return LineMass(amount, None, "", amount, amount)
    if line.dimension is Dimension.COUNT:
        return LineMass(None, None, "")
    ingredient = line.ingredient
    if ingredient.density_g_per_ml is not None:
        own = ingredient.density_g_per_ml
        mass = amount * own
        at_20 = temperature_c == REFERENCE_TEMPERATURE_C
        return LineMass(mass, own, ingredient.density_source or "", mass, mass, at_20, own=True)
    percent = None if ingredient.strength_percent is None else float(ingredient.strength_percent)
    one = _one_ml(ingredient.kind, ingredient.name, percent, temperature_c)
    if one.grams is None or one.low_g is None or one.high_g is None:
        return one
    return replace(one, grams=amount * one.grams, low_g=amount * one.low_g, high_g=amount * one.high_g)


@lru_cache(maxsize=1024)
def _one_ml(kind: IngredientKind, name: str, percent: float | None, temperature_c: float) -> LineMass:
    """Return the mass of one mL from the handbook."""
    found = density_of(kind, name, percent, temperature_c)
    if found is None or found.crystal:  # the density of crystals differs from that of a spoonful
        return LineMass(None, None, "")
    middle, low, high = (
        Fraction(repr(value)).limit_denominator(10**6) for value in (found.middle, found.low, found.high)
    )
    corrected = found.correction is not Correction.NOT_DONE
    return LineMass(middle, middle, found.source.title, low, high, corrected)


def made_at_20_ml(answer: ScaleAnswer) -> Fraction | None:
    """Return the finished mL at 20 °C of amounts measured at the answer's temperature, or None.

    Every liquid keeps its mass; None if a density is unknown.
    """
    if answer.finished_ml is None:
        return None
    here = at_20 = Fraction(0)
    for line, scaled_line, mass in zip(answer.formula.lines, answer.scaled.lines, answer.masses, strict=True):
        if line.dimension is not Dimension.VOLUME:
            continue
        usual = mass_of(line, scaled_line.amount)
        if mass.grams is None or usual.grams is None:
            return None
        here += scaled_line.amount
        at_20 += scaled_line.amount * mass.grams / usual.grams
    return answer.finished_ml * at_20 / here if here else None


def densities(view: FormulaView) -> Mapping[str, Fraction]:
    """Return the known densities in g/mL, by ingredient name."""
    found = {}
    for line in view.lines:
        mass = mass_of(line, Fraction(1))
        if mass.density_g_per_ml is not None:
            found[line.ingredient.name] = mass.density_g_per_ml
    return found


def is_sprayed(view: FormulaView) -> bool:
    """Whether the preparation is dispensed by spray."""
    return view.preparation is Preparation.AROMA_MIST or view.sprays is not None
