"""Strength of spirits and formulas: mixing, dilution, strengthening, US proof and hydrometers.

Volumes are mL at 20 °C unless a temperature is given, strengths % vol at 20 °C, masses g. Ethanol and water
are mixed by mass with densities from OIML R 22, so every answer includes the contraction. Everything else
(glycol, glycerol, oils, sugar, juice) adds as an ideal volume, because no table covers it; results name the
components treated this way.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from bot.trade.errors import OutOfRangeError, TradeError
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.liquids import ethanol

US_PROOF_TEMPERATURE_C = (60.0 - 32.0) / 1.8
# Labels may be off by 0.3 % vol (Regulation (EU) No 1169/2011, Annex XII, from memory): less is no change.
_LABEL_TOLERANCE_PERCENT = 0.3
# Cubic expansion of hydrometer glass per kelvin: the usual figure for soda-lime glass, from memory; it
# changes a reading by less than 0.05 % vol in a warm bar.
_GLASS_EXPANSION_PER_K = 25e-6


@dataclass
class StrengthOrderError(TradeError):
    """Adding the given spirit or water cannot reach the wanted strength."""

    from_percent: float
    to_percent: float


def check_volume(quantity: str, volume_ml: float) -> None:
    """Raise OutOfRangeError unless `volume_ml` is a finite volume of 0 mL or more."""
    if not 0.0 <= volume_ml < float("inf"):
        raise OutOfRangeError(quantity, volume_ml, 0.0, None, "mL")


# --- volumes at another temperature, proof, hydrometers ---------------------


def volume_at_20(volume_ml: float, strength_percent: float, temperature_c: float) -> float:
    """Return the volume at 20 °C, mL, of a spirit whose volume was measured at `temperature_c`.

    Mass is conserved: V20 = V rho(t) / rho(20), OIML R 22. Raises OutOfRangeError for a negative volume, a
    strength outside 0 to 100 or a temperature outside
    -20 to 40 °C.
    """
    check_volume("volume", volume_ml)
    at_measuring = ethanol.spirit_density_g_per_ml(strength_percent, temperature_c)
    return volume_ml * at_measuring / ethanol.spirit_density_g_per_ml(strength_percent)


def volume_at(volume_at_20_ml: float, strength_percent: float, temperature_c: float) -> float:
    """Return the volume at `temperature_c`, mL, of a spirit with this volume at 20 °C.

    Inverse of volume_at_20; the same errors.
    """
    check_volume("volume", volume_at_20_ml)
    at_20 = ethanol.spirit_density_g_per_ml(strength_percent)
    return volume_at_20_ml * at_20 / ethanol.spirit_density_g_per_ml(strength_percent, temperature_c)


def is_same_label(known_percent: Fraction | None, said_percent: Fraction) -> bool:
    """Whether two strengths in % vol are one by the tolerance of labels; False for an unknown one."""
    return known_percent is not None and abs(known_percent - said_percent) < _LABEL_TOLERANCE_PERCENT


def percent_from_us_proof(proof: float) -> float:
    """Return % vol at 20 °C for a United States proof (0 to 200).

    Proof is twice the % by volume with both volumes at 60 °F (27 CFR 19.1, definition of proof), so it is
    converted to a mass fraction at 60 °F and then to % vol at 20 °C by OIML R 22. The answer differs from
    proof / 2 by less than 0.1 % vol. Raises OutOfRangeError outside 0 to 200.
    """
    ethanol.check_range("proof", proof, 0.0, 200.0, "US proof")
    fraction = ethanol.mass_fraction_from_percent_at(proof / 2.0, US_PROOF_TEMPERATURE_C)
    return ethanol.strength_percent(fraction)


def us_proof(strength_percent: float) -> float:
    """Return the United States proof of a spirit of % vol at 20 °C; inverse of percent_from_us_proof.

    Raises OutOfRangeError outside 0 to 100 % vol.
    """
    fraction = ethanol.mass_fraction(strength_percent)
    return 2.0 * ethanol.percent_by_volume_at(fraction, US_PROOF_TEMPERATURE_C)


def true_strength(reading_percent: float, temperature_c: float, calibrated_at_c: float = 20.0) -> float:
    """Return the true strength, % vol at 20 °C, from a hydrometer's reading at another temperature.

    `reading_percent` is the reading of a % vol scale calibrated at `calibrated_at_c` (20 °C; 60 °F for a
    United States scale: halve a reading in proof first). The liquid's density follows from the reading and
    the expansion of the glass (25e-6 per K, from memory), its strength from OIML R 22. Raises OutOfRangeError
    outside 0 to 100 %, -20 to 40 °C, or when no ethanol-water mixture gives this reading at that temperature.
    """
    shown = ethanol.mass_fraction_from_percent_at(reading_percent, calibrated_at_c)
    glass = 1.0 + _GLASS_EXPANSION_PER_K * (temperature_c - calibrated_at_c)
    density = ethanol.density_kg_per_m3(shown, calibrated_at_c) / glass
    return ethanol.strength_percent(ethanol.mass_fraction_from_density(density, temperature_c))


# --- mixing -----------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class Portion:
    """A volume of ethanol-water mixture: mL as measured at `temperature_c`, % vol at 20 °C."""

    volume_ml: float
    strength_percent: float
    temperature_c: float = 20.0

    @property
    def mass_g(self) -> float:
        """The mass in g."""
        check_volume("volume", self.volume_ml)
        return self.volume_ml * ethanol.spirit_density_g_per_ml(self.strength_percent, self.temperature_c)

    @property
    def ethanol_g(self) -> float:
        """The mass of ethanol in g."""
        return self.mass_g * ethanol.mass_fraction(self.strength_percent)


@dataclass(frozen=True, slots=True)
class Mixed:
    """The result of mixing ethanol-water portions: mL at 20 °C, % vol, g.

    `contraction_ml` is the sum of the portions' volumes at 20 °C less the volume of the mixture; `ethanol_ml`
    is the volume of the pure ethanol at 20 °C.
    """

    volume_ml: float
    strength_percent: float
    mass_g: float
    ethanol_ml: float
    contraction_ml: float


def mix(portions: Iterable[Portion]) -> Mixed:
    """Return the mixture of ethanol-water portions, by mass balance (OIML R 22).

    Without portions every figure is 0. Raises OutOfRangeError as Portion's quantities do.
    """
    mass = ethanol_mass = separate = 0.0
    for portion in portions:
        mass += portion.mass_g
        ethanol_mass += portion.ethanol_g
        separate += volume_at_20(portion.volume_ml, portion.strength_percent, portion.temperature_c)
    if mass == 0.0:
        return Mixed(0.0, 0.0, 0.0, 0.0, 0.0)
    fraction = min(1.0, ethanol_mass / mass)
    volume = mass / (ethanol.density_kg_per_m3(fraction) / 1000.0)
    return Mixed(
        volume_ml=volume,
        strength_percent=ethanol.strength_percent(fraction),
        mass_g=mass,
        ethanol_ml=ethanol_mass / ethanol.ethanol_density_g_per_ml(),
        contraction_ml=separate - volume,
    )


# --- dilution and strengthening ---------------------------------------------


@dataclass(frozen=True, slots=True)
class Dilution:
    """Spirit and water for a weaker spirit.

    `spirit_ml` and `water_ml` are as measured at `temperature_c`, the other volumes at 20 °C.
    `contraction_ml` is the volume lost on mixing, at 20 °C.
    """

    temperature_c: float
    from_percent: float
    to_percent: float
    spirit_ml: float
    spirit_g: float
    water_g: float
    water_ml: float
    final_ml: float
    final_ml_at_temperature: float
    final_g: float
    contraction_ml: float


def _check_down(from_percent: float, to_percent: float) -> None:
    ethanol.check_strength(from_percent)
    ethanol.check_strength(to_percent)
    if not 0.0 < to_percent <= from_percent:
        raise StrengthOrderError(from_percent, to_percent)


def dilute(volume_ml: float, from_percent: float, to_percent: float, temperature_c: float = 20.0) -> Dilution:
    """Return the water that dilutes a volume of spirit to a lower strength, by mass balance.

    `volume_ml` is as measured at `temperature_c`. Densities from OIML R 22. Raises StrengthOrderError unless
    0 < to <= from, OutOfRangeError for a negative volume, a strength outside 0 to 100 or a temperature
    outside -20 to 40 °C.
    """
    _check_down(from_percent, to_percent)
    spirit = Portion(volume_ml, from_percent, temperature_c)
    final_g = spirit.ethanol_g / ethanol.mass_fraction(to_percent)
    water_g = max(0.0, final_g - spirit.mass_g)
    spirit_at_20 = volume_at_20(volume_ml, from_percent, temperature_c)
    water_at_20 = water_g / ethanol.water_density_g_per_ml()
    final_ml = final_g / ethanol.spirit_density_g_per_ml(to_percent)
    return Dilution(
        temperature_c=temperature_c,
        from_percent=from_percent,
        to_percent=to_percent,
        spirit_ml=volume_ml,
        spirit_g=spirit.mass_g,
        water_g=water_g,
        water_ml=water_g / ethanol.water_density_g_per_ml(temperature_c),
        final_ml=final_ml,
        final_ml_at_temperature=volume_at(final_ml, to_percent, temperature_c),
        final_g=final_g,
        contraction_ml=spirit_at_20 + water_at_20 - final_ml,
    )


def make_up(total_ml: float, from_percent: float, to_percent: float, temperature_c: float = 20.0) -> Dilution:
    """Return the spirit and water for a given total of a weaker spirit.

    `total_ml` is at 20 °C; the spirit and water to pour are given as measured at `temperature_c`. Errors as
    for dilute.
    """
    check_volume("total", total_ml)
    _check_down(from_percent, to_percent)
    ethanol_g = Portion(total_ml, to_percent).ethanol_g
    spirit_g = ethanol_g / ethanol.mass_fraction(from_percent)
    spirit_ml = spirit_g / ethanol.spirit_density_g_per_ml(from_percent, temperature_c)
    return dilute(spirit_ml, from_percent, to_percent, temperature_c)


@dataclass(frozen=True, slots=True)
class Strengthening:
    """Stronger spirit to add (mL at 20 °C, g) to raise a weaker one to a strength, and the result."""

    add_ml: float
    add_g: float
    result: Mixed


def strengthen(volume_ml: float, percent: float, with_percent: float, to_percent: float) -> Strengthening:
    """Return the volume of `with_percent` spirit that raises `volume_ml` of `percent` to `to_percent`.

    All volumes at 20 °C; mass balance with OIML R 22. Raises StrengthOrderError unless percent <= to < with,
    OutOfRangeError for a value outside its range.
    """
    for strength in (percent, with_percent, to_percent):
        ethanol.check_strength(strength)
    if not percent <= to_percent < with_percent:
        raise StrengthOrderError(with_percent, to_percent)
    weak = Portion(volume_ml, percent)
    wanted, stronger = ethanol.mass_fraction(to_percent), ethanol.mass_fraction(with_percent)
    add_g = (wanted * weak.mass_g - weak.ethanol_g) / (stronger - wanted)
    add_ml = max(0.0, add_g) / ethanol.spirit_density_g_per_ml(with_percent)
    return Strengthening(add_ml, max(0.0, add_g), mix([weak, Portion(add_ml, with_percent)]))


# --- whole formulas ---------------------------------------------------------


@dataclass(frozen=True, slots=True)
class Component:
    """One ingredient of a formula by volume: mL at 20 °C and, where it holds alcohol, % vol."""

    kind: IngredientKind
    name: str
    volume_ml: float
    strength_percent: float = 0.0


@dataclass(frozen=True, slots=True)
class FormulaStrength:
    """Strength and volume of a whole formula, % vol and mL at 20 °C.

    `ideal` names the components added as ideal volumes; `taken_as_spirit` those that contain alcohol but are
    not a spirit (a liqueur, a tincture) and count as plain ethanol and water. `contraction_ml` comes from the
    ethanol-water part alone.
    """

    strength_percent: float
    volume_ml: float
    ethanol_ml: float
    contraction_ml: float
    ideal: tuple[str, ...]
    taken_as_spirit: tuple[str, ...]


def formula_strength(components: Iterable[Component]) -> FormulaStrength:
    """Return the strength and volume of a formula after contraction.

    Spirits, water and anything else with a strength contract together by OIML R 22; the rest adds as ideal
    volumes. A formula without volume has strength 0. Raises OutOfRangeError for negative volumes or strengths
    outside 0 to 100.
    """
    portions: list[Portion] = []
    ideal: list[str] = []
    taken: list[str] = []
    ideal_ml = 0.0
    for component in components:
        check_volume(component.name, component.volume_ml)
        ethanol.check_strength(component.strength_percent)
        if (
            component.kind in {IngredientKind.SPIRIT, IngredientKind.WATER}
            or component.strength_percent > 0.0
        ):
            portions.append(Portion(component.volume_ml, component.strength_percent))
            if component.kind not in {IngredientKind.SPIRIT, IngredientKind.WATER}:
                taken.append(component.name)
        else:
            ideal_ml += component.volume_ml
            ideal.append(component.name)
    mixed = mix(portions)
    volume = mixed.volume_ml + ideal_ml
    return FormulaStrength(
        strength_percent=100.0 * mixed.ethanol_ml / volume if volume else 0.0,
        volume_ml=volume,
        ethanol_ml=mixed.ethanol_ml,
        contraction_ml=mixed.contraction_ml,
        ideal=tuple(ideal),
        taken_as_spirit=tuple(taken),
    )
