"""Estimate how long a formula keeps, from its ingredients."""

from __future__ import annotations

from bot.trade.batches.keeping import Made, UsualTime, usual_time
from bot.trade.formulas.ingredient_names.reading import read_name
from bot.trade.formulas.kinds import PREPARATION_DEFAULTS, IngredientKind
from bot.trade.formulas.measures import Dimension
from bot.trade.liquids.densities import syrup_mass_percent
from bot.work.formulas.formulas import FormulaView
from bot.work.formulas.mixture import Mix, Poured, mix_of

_GLYCOLS = frozenset({IngredientKind.PROPYLENE_GLYCOL, IngredientKind.GLYCEROL})


def made_of(mix: Mix) -> Made:
    """Return the facts that decide how long a mix keeps."""
    contents = tuple((one.name, one.kind) for one in mix.poured)
    strength = mix.strength
    if strength is None or not strength.volume_ml:
        return Made(contents)
    total = strength.volume_ml
    glycol = sum(one.volume_ml or 0.0 for one in mix.poured if one.kind in _GLYCOLS)
    oil = sum(
        one.volume_ml or 0.0 for one in mix.poured if one.is_oil or one.kind is IngredientKind.CARRIER_OIL
    )
    sugar = sum(_sugar_g(one) for one in mix.poured)
    acid = sum(_grams(one) for one in mix.poured if one.kind is IngredientKind.ACID)
    return Made(
        contents,
        strength.strength_percent + 100 * glycol / total,
        1 - (strength.ethanol_ml + glycol + oil) / total,
        1000 * sugar / total,
        1000 * acid / total,
    )


def _grams(one: Poured) -> float:
    if one.dimension is Dimension.MASS:
        return float(one.amount)
    density, volume = one.density(20.0), one.volume_ml
    return 0.0 if density is None or volume is None else density * volume


def _sugar_g(one: Poured) -> float:
    if one.kind is IngredientKind.SUGAR:
        return _grams(one)
    percent = syrup_mass_percent(read_name(one.name)) if one.kind is IngredientKind.OTHER else None
    return 0.0 if percent is None else _grams(one) * percent / 100


def usual_of(view: FormulaView) -> UsualTime:
    """Return the usual time of what a formula makes."""
    return usual_time(view.preparation, made_of(mix_of(view)))


def kept_days(view: FormulaView) -> int:
    """Return the days after which a batch is thrown out: the formula's own time, else the usual one."""
    if view.discard_days != PREPARATION_DEFAULTS[view.preparation].discard_days:
        return view.discard_days
    return usual_of(view).days
