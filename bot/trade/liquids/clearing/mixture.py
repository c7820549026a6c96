"""A mixture for the clearing model: mL of each modelled substance, and the ingredients outside the model."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, fields, replace

from bot.trade.errors import OutOfRangeError
from bot.trade.formulas.ingredient_names.reading import read_name
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.liquids import ethanol
from bot.trade.liquids.clearing.substances import CARRIER, ETHANOL, GLYCEROL, GLYCOL, LIMONENE, WATER
from bot.trade.liquids.strength import Component, Portion, mix

# Names of carrier oils that are medium-chain triglycerides; other vegetable oils are outside the model.
_MEDIUM_CHAIN = re.compile(r"\bmct\b|medium[ -]chain|caprylic|fractionated coconut")


@dataclass(frozen=True, slots=True)
class Mixture:
    """The ingredients of a mixture, mL at 20 °C, the spirit with its % vol at 20 °C.

    `carrier_ml` is medium-chain triglyceride only. `oil_name` is the name of the citrus oil if there is only
    one. `outside` names ingredients that the model does not know, `outside_ml` their volume. Raises
    OutOfRangeError for negative volumes or strengths outside 0 to 100.
    """

    oil_ml: float = 0.0
    carrier_ml: float = 0.0
    glycol_ml: float = 0.0
    glycerol_ml: float = 0.0
    water_ml: float = 0.0
    spirit_ml: float = 0.0
    spirit_percent: float = 0.0
    oil_name: str = ""
    outside: tuple[str, ...] = ()
    outside_ml: float = 0.0

    def __post_init__(self) -> None:
        for field in fields(self):
            value = getattr(self, field.name)
            if field.name.endswith("_ml") and not 0.0 <= value < float("inf"):
                raise OutOfRangeError(field.name, value, 0.0, None, "mL")
        ethanol.check_strength(self.spirit_percent)

    @property
    def modelled_ml(self) -> float:
        """The sum of the modelled volumes, mL, before any contraction."""
        return (
            self.oil_ml + self.carrier_ml + self.glycol_ml + self.glycerol_ml + self.water_ml + self.spirit_ml
        )

    @property
    def total_ml(self) -> float:
        """The sum of all volumes, mL, before any contraction."""
        return self.modelled_ml + self.outside_ml

    @property
    def ethanol_g(self) -> float:
        """The mass of ethanol in g."""
        return Portion(self.spirit_ml, self.spirit_percent).ethanol_g

    @property
    def modelled_g(self) -> float:
        """The mass of the modelled part in g, each substance at its own density at 20 °C."""
        return (
            self.oil_ml * LIMONENE.density_g_per_ml
            + self.carrier_ml * CARRIER.density_g_per_ml
            + self.glycol_ml * GLYCOL.density_g_per_ml
            + self.glycerol_ml * GLYCEROL.density_g_per_ml
            + self.water_ml * WATER.density_g_per_ml
            + Portion(self.spirit_ml, self.spirit_percent).mass_g
        )

    @property
    def ethanol_mass_fraction(self) -> float:
        """The mass fraction of ethanol in the modelled part, 0 to 1."""
        return self.ethanol_g / self.modelled_g if self.modelled_ml > 0.0 else 0.0

    @property
    def water_mass_fraction(self) -> float:
        """The mass fraction of water in the modelled part, 0 to 1."""
        return self.moles()[-1] * WATER.molar_mass_g / self.modelled_g if self.modelled_ml > 0.0 else 0.0

    def moles(self) -> tuple[float, ...]:
        """Return the moles of each of bot.trade.liquids.clearing.substances.SUBSTANCES, in their order."""
        spirit = Portion(self.spirit_ml, self.spirit_percent)
        water_g = spirit.mass_g - spirit.ethanol_g + self.water_ml * WATER.density_g_per_ml
        return (
            self.oil_ml * LIMONENE.density_g_per_ml / LIMONENE.molar_mass_g,
            self.carrier_ml * CARRIER.density_g_per_ml / CARRIER.molar_mass_g,
            self.glycol_ml * GLYCOL.density_g_per_ml / GLYCOL.molar_mass_g,
            self.glycerol_ml * GLYCEROL.density_g_per_ml / GLYCEROL.molar_mass_g,
            spirit.ethanol_g / ETHANOL.molar_mass_g,
            max(0.0, water_g) / WATER.molar_mass_g,
        )

    def watered(self) -> tuple[float, float]:
        """Return the volume (mL at 20 °C) and strength (% vol) of the spirit with the added water."""
        mixed = mix([Portion(self.spirit_ml, self.spirit_percent), Portion(self.water_ml, 0.0)])
        return mixed.volume_ml, mixed.strength_percent

    def rounded(self) -> Mixture:
        """Return the mixture with volumes to 0.001 mL and strength to 0.01 % vol, as a cache key."""
        volumes = {f.name: round(getattr(self, f.name), 3) for f in fields(self) if f.name.endswith("_ml")}
        return replace(self, spirit_percent=round(self.spirit_percent, 2), **volumes)


def mixture_of(components: Iterable[Component]) -> Mixture:
    """Return the mixture of a formula's components, mL at 20 °C.

    Several spirits are combined (by mass balance, OIML R 22). Carrier oils other than medium-chain
    triglycerides, sugar, acid, juice, fruit and anything else go to `outside` by name.
    """
    volumes: dict[IngredientKind, float] = {}
    spirits: list[Portion] = []
    oils: list[str] = []
    outside: list[str] = []
    outside_ml = 0.0
    for component in components:
        kind = component.kind
        medium_chain = _MEDIUM_CHAIN.search(read_name(component.name)) is not None
        if kind is IngredientKind.SPIRIT:
            spirits.append(Portion(component.volume_ml, component.strength_percent))
        elif kind in _MODELLED or (kind is IngredientKind.CARRIER_OIL and medium_chain):
            volumes[kind] = volumes.get(kind, 0.0) + component.volume_ml
            if kind is IngredientKind.CITRUS_OIL:
                oils.append(component.name)
        else:
            outside.append(component.name)
            outside_ml += component.volume_ml
    spirit = mix(spirits)
    return Mixture(
        oil_ml=volumes.get(IngredientKind.CITRUS_OIL, 0.0),
        carrier_ml=volumes.get(IngredientKind.CARRIER_OIL, 0.0),
        glycol_ml=volumes.get(IngredientKind.PROPYLENE_GLYCOL, 0.0),
        glycerol_ml=volumes.get(IngredientKind.GLYCEROL, 0.0),
        water_ml=volumes.get(IngredientKind.WATER, 0.0),
        spirit_ml=spirit.volume_ml,
        spirit_percent=spirit.strength_percent,
        oil_name=oils[0] if len(oils) == 1 else "",
        outside=tuple(outside),
        outside_ml=outside_ml,
    )


_MODELLED = frozenset(
    {
        IngredientKind.CITRUS_OIL,
        IngredientKind.PROPYLENE_GLYCOL,
        IngredientKind.GLYCEROL,
        IngredientKind.WATER,
    }
)
