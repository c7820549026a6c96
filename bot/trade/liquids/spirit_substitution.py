"""Replace a spirit by one of another strength with the same amount of ethanol.

Volumes are mL at 20 °C, strengths % vol at 20 °C.
"""

from __future__ import annotations

from dataclasses import dataclass

from bot.trade.liquids import ethanol
from bot.trade.liquids.strength import (
    Portion,
    StrengthOrderError,
    check_volume,
)


@dataclass(frozen=True, slots=True)
class Swap:
    """Another spirit for the same ethanol: mL at 20 °C.

    `water_ml` is the water to add with the new spirit so that ethanol and water are both unchanged; it is
    negative when the new spirit is weaker and brings that much excess water.
    """

    from_percent: float
    to_percent: float
    from_ml: float
    to_ml: float
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
        water_ml=water_g / ethanol.water_density_g_per_ml(),
    )
