"""Mixtures for the chemistry rules: volumes in mL at 20 °C, by kind of ingredient."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from typing import Any

from bot.trade.errors import OutOfRangeError
from bot.trade.formulas.kinds import IngredientKind, is_carrier_name, is_oil_name
from bot.trade.formulas.measures import Dimension
from bot.trade.formulas.perishables import spoils
from bot.trade.liquids.densities import density_of
from bot.trade.liquids.flash import FlashPoint, flash_point_of
from bot.trade.liquids.infusion import infused_percent, water_ml
from bot.trade.liquids.strength import Component, FormulaStrength, formula_strength
from bot.trade.numbers.ranges import Range
from bot.work.formulas.formulas import FormulaLineView, FormulaView
from bot.work.formulas.ingredients import IngredientView


@dataclass(frozen=True, slots=True)
class Poured:
    """One ingredient with its amount in mL at 20 °C, g or pieces, and its known properties.

    `strength_percent` in % vol at 20 °C, `density_g_per_ml` the bar's own density; None if unknown.
    """

    name: str
    kind: IngredientKind
    amount: Fraction
    dimension: Dimension
    strength_percent: Fraction | None = None
    density_g_per_ml: Fraction | None = None

    @property
    def volume_ml(self) -> float | None:
        """The volume in the mix, mL; None if neither a volume nor a density is known."""
        if self.dimension is Dimension.VOLUME:
            return float(self.amount)
        density = self.density(20.0) if self.dimension is Dimension.MASS else None
        return None if density is None else float(self.amount) / density

    def density(self, temperature_c: float) -> float | None:
        """Return the density, g/mL: the bar's own, else the handbook's at the temperature, else None."""
        if self.density_g_per_ml is not None:
            return float(self.density_g_per_ml)
        percent = None if self.strength_percent is None else float(self.strength_percent)
        try:
            found = density_of(self.kind, self.name, percent, temperature_c)
        except OutOfRangeError:
            return None
        return None if found is None else found.middle

    @property
    def is_oil(self) -> bool:
        """Whether it is an aromatic oil, not a carrier."""
        if self.kind is IngredientKind.CITRUS_OIL:
            return True
        return self.kind is IngredientKind.OTHER and is_oil_name(self.name) and not is_carrier_name(self.name)

    @property
    def lacks_strength(self) -> bool:
        """Whether it is a spirit of unknown strength."""
        return self.kind is IngredientKind.SPIRIT and self.strength_percent is None


@dataclass(frozen=True, slots=True)
class Mix:
    """All ingredients of a mix, in the order of the formula."""

    poured: tuple[Poured, ...]

    @property
    def components(self) -> tuple[Component, ...]:
        """The ingredients with a volume, as components for the strength and clearing rules."""
        found = []
        for one in self.poured:
            volume = one.volume_ml
            if volume is not None:
                percent = 0.0 if one.strength_percent is None else float(one.strength_percent)
                found.append(Component(one.kind, one.name, volume, percent))
        return tuple(found)

    @property
    def left_out(self) -> tuple[str, ...]:
        """Names of the ingredients without a known volume: pieces, and solids of unknown density."""
        return tuple(one.name for one in self.poured if one.volume_ml is None)

    @property
    def without_strength(self) -> tuple[str, ...]:
        """Names of the spirits of unknown strength."""
        return tuple(one.name for one in self.poured if one.lacks_strength)

    @property
    def strength(self) -> FormulaStrength | None:
        """Strength, volume and contraction; None if a spirit's strength is unknown."""
        return None if self.without_strength else _strength(self.components)

    @property
    def flash(self) -> FlashPoint | None:
        """The flash point; None if a spirit's strength is unknown."""
        return None if self.without_strength else flash_point_of(self.components)

    def infused_percent(self, out_ml: float = 0.0) -> Range[float] | None:
        """Return the strength, % vol, with the water of the fruit weighed in; None without fruit or strength.

        `out_ml` is what came out after straining. Raises OutOfRangeError if it is more than can be.
        """
        water = sum(
            water_ml(one.name, float(one.amount))
            for one in self.poured
            if one.kind is IngredientKind.FRUIT
            and one.dimension is Dimension.MASS
            and spoils(one.name, one.kind)
        )
        if not water or self.without_strength:
            return None
        return infused_percent(self.components, water, out_ml)

    @property
    def strongest_percent(self) -> float | None:
        """The strength of the strongest ingredient, % vol; None if a spirit's strength is unknown."""
        if self.without_strength:
            return None
        return max((float(one.strength_percent or 0) for one in self.poured), default=0.0)

    @property
    def has_oil(self) -> bool:
        """Whether it contains any kind of oil, so that it may not stay one clear liquid."""
        return any(one.is_oil or one.kind is IngredientKind.CARRIER_OIL for one in self.poured)

    @property
    def has_spirit(self) -> bool:
        """Whether it contains a spirit."""
        return any(one.kind is IngredientKind.SPIRIT for one in self.poured)


@lru_cache(maxsize=4096)
def _strength(components: tuple[Component, ...]) -> FormulaStrength:
    return formula_strength(components)


def mix_of(view: FormulaView) -> Mix:
    """Return the mix of a formula as written."""
    return Mix(tuple(poured(line.ingredient, line.amount, line.dimension) for line in view.lines))


def poured(ingredient: IngredientView, amount: Fraction, dimension: Dimension) -> Poured:
    """Return an amount of an ingredient, with its properties known now."""
    return Poured(
        ingredient.name,
        ingredient.kind,
        amount,
        dimension,
        ingredient.strength_percent,
        ingredient.density_g_per_ml,
    )


def scaled_line(line: FormulaLineView, amount: Fraction) -> Poured:
    """Return a formula's line with another amount."""
    return poured(line.ingredient, amount, line.dimension)


def mix_of_batch(lines: Iterable[Mapping[str, Any]]) -> Mix:
    """Return the mix of a batch, from its frozen copy: what is left of each line where some was lost."""
    return Mix(
        tuple(
            Poured(
                str(line["name"]),
                IngredientKind(line["kind"]),
                Fraction(line.get("left", line["amount"])),
                Dimension(line["dimension"]),
                None if line.get("strength_percent") is None else Fraction(line["strength_percent"]),
                None if line.get("density_g_per_ml") is None else Fraction(line["density_g_per_ml"]),
            )
            for line in lines
        )
    )
