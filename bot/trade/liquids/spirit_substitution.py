"""Replace a spirit by one of another strength with the same amount of ethanol.

Volumes are mL at 20 °C, strengths % vol at 20 °C.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from bot.trade.formulas.kinds import IngredientKind
from bot.trade.liquids import ethanol
from bot.trade.liquids.strength import (
    Component,
    FormulaStrength,
    Portion,
    StrengthOrderError,
    check_volume,
    formula_strength,
)


@dataclass(frozen=True, slots=True)
class Swap:
    """Another spirit for the same ethanol: mL at 20 °C.

    `water_ml` is the water to add with the new spirit so that ethanol and water are both unchanged; it is
    negative when the new spirit is weaker and brings that much excess water. `extra_ml` is the additional
    volume (negative if less) of the new spirit compared with the old one.
    """

    from_percent: float
    to_percent: float
    from_ml: float
    to_ml: float
    extra_ml: float
    water_ml: float


def swap_spirit(volume_ml: float, from_percent: float, to_percent: float) -> Swap:
    """Return the volume of `to_percent` spirit with the same ethanol as `volume_ml` of `from_percent`.

    Ethanol is counted as its volume at 20 °C, so the volumes are inversely proportional to the strengths; the
    water follows by mass (OIML R 22). Raises OutOfRangeError for strengths outside 0 to 100,
    StrengthOrderError when the new spirit holds no ethanol but the old one does.
    """
    check_volume("volume", volume_ml)
    ethanol.check_strength(from_percent)
    ethanol.check_strength(to_percent)
    if to_percent == 0.0 and from_percent > 0.0:
        raise StrengthOrderError(from_percent, to_percent)
    to_ml = volume_ml * from_percent / to_percent if to_percent else volume_ml
    old, new = Portion(volume_ml, from_percent), Portion(to_ml, to_percent)
    water_g = (old.mass_g - old.ethanol_g) - (new.mass_g - new.ethanol_g)
    return Swap(
        from_percent=from_percent,
        to_percent=to_percent,
        from_ml=volume_ml,
        to_ml=to_ml,
        extra_ml=to_ml - volume_ml,
        water_ml=water_g / ethanol.water_density_g_per_ml(),
    )


@dataclass(frozen=True, slots=True)
class FormulaSwap:
    """A formula with every spirit replaced for the same ethanol, before and after."""

    components: tuple[Component, ...]
    swaps: tuple[Swap, ...]
    before: FormulaStrength
    after: FormulaStrength


def swap_in_formula(components: Iterable[Component], to_percent: float) -> FormulaSwap:
    """Return the formula with every spirit replaced by one of `to_percent`, for the same ethanol.

    No water is added or removed, so the total and the strength change; `after` holds the new values. Errors
    as for swap_spirit.
    """
    old = tuple(components)
    swaps: list[Swap] = []
    new: list[Component] = []
    for component in old:
        if component.kind is IngredientKind.SPIRIT:
            swap = swap_spirit(component.volume_ml, component.strength_percent, to_percent)
            swaps.append(swap)
            new.append(replace(component, volume_ml=swap.to_ml, strength_percent=to_percent))
        else:
            new.append(component)
    return FormulaSwap(tuple(new), tuple(swaps), formula_strength(old), formula_strength(new))
