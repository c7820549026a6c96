"""Dose of a sprayed drink, per drink and per evening, compared with published limits."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from bot.trade.errors import OutOfRangeError
from bot.trade.liquids import ethanol
from bot.trade.numbers.ranges import Range, as_range
from bot.trade.safety.limits import NEAR_SHARE, Limit, LimitKind, LimitUnit, Part

# g/mL at 20 °C. Propylene glycol: from memory, 0.03 % below the 1.0364 of the library thermo and inside the
# pharmacopoeia's 1.035 to 1.040 (20/20). Citrus oil: middle of sweet orange, relative density 0.842 to 0.850
# (20/20). A caller that knows the bottle's density passes it.
GLYCOL_DENSITY_G_PER_ML = 1.0361
OIL_DENSITY_G_PER_ML = 0.8445

# The density of a finished drink, taken as that of water: common practice, no source; sugar makes it heavier.
DRINK_DENSITY_G_PER_ML = 1.0

# The default adult body weight in EFSA's guidance of 2012; from memory.
ADULT_BODY_WEIGHT_KG = 70.0

# Ethanol and water contract on mixing, so shares by separate volume may add up to slightly over one.
_MOST_TOTAL_SHARE = 1.05


@dataclass(frozen=True, slots=True)
class Mix:
    """The composition of a sprayed mix, as shares by volume from 0 to 1.

    `ethanol_share` is pure ethanol at 20 °C, so a mix of 58 % vol has 0.58. Densities in g/mL. Raises
    OutOfRangeError for a share outside 0 to 1, shares that add up to more than 1.05, or a density that is not
    above zero.
    """

    oil_share: float
    glycol_share: float
    ethanol_share: float
    density_g_per_ml: float
    oil_density_g_per_ml: float = OIL_DENSITY_G_PER_ML
    glycol_density_g_per_ml: float = GLYCOL_DENSITY_G_PER_ML

    def __post_init__(self) -> None:
        shares = (self.oil_share, self.glycol_share, self.ethanol_share)
        for part, share in zip(Part, shares, strict=True):
            ethanol.check_range(f"share of {part.value}", share, 0, 1, "")
        ethanol.check_range("sum of the shares", sum(shares), 0, _MOST_TOTAL_SHARE, "")
        for density in (self.density_g_per_ml, self.oil_density_g_per_ml, self.glycol_density_g_per_ml):
            if not 0 < density < math.inf:
                raise OutOfRangeError("density", density, 0, None, "g/mL")

    def share(self, part: Part) -> float:
        """Return the share by volume of one part, 0 to 1."""
        return {
            Part.OIL: self.oil_share,
            Part.GLYCOL: self.glycol_share,
            Part.ETHANOL: self.ethanol_share,
        }[part]

    def part_density_g_per_ml(self, part: Part) -> float:
        """Return the density of one pure part, in g/mL (ethanol: OIML R 22 at 20 °C)."""
        return {
            Part.OIL: self.oil_density_g_per_ml,
            Part.GLYCOL: self.glycol_density_g_per_ml,
            Part.ETHANOL: ethanol.ethanol_density_g_per_ml(),
        }[part]

    def mg_per_ml(self, part: Part) -> float:
        """Return the mass of one part per millilitre of the mix, in mg."""
        return 1000 * self.share(part) * self.part_density_g_per_ml(part)


@dataclass(frozen=True, slots=True)
class Beside:
    """What other preparations bring into the same drink: mL and g of all, mg of each part."""

    ml: float = 0.0
    grams: float = 0.0
    mg: Mapping[Part, float] = field(default_factory=dict)

    def of(self, part: Part) -> float:
        """Return the mg of one part in a drink."""
        return self.mg.get(part, 0.0)


def beside(others: Iterable[tuple[Mix, float]]) -> Beside:
    """Return what other preparations bring into a drink, from each one's composition and mL."""
    found = list(others)
    for _, ml in found:
        ethanol.check_range("amount beside", ml, 0, 5000, "mL")
    mg = {part: sum(mix.mg_per_ml(part) * ml for mix, ml in found) for part in Part}
    grams = sum(mix.density_g_per_ml * ml for mix, ml in found)
    return Beside(sum(ml for _, ml in found), grams, mg)


@dataclass(frozen=True, slots=True)
class Serving:
    """How a drink is sprayed: sprays per drink, mL per spray, volume without the spray, drinks per evening.

    Ranges run from the least to the most. Volumes in mL, `density_g_per_ml` is that of the drink, `beside`
    what other preparations bring into it. Raises OutOfRangeError for negative sprays, a drink or density that
    is not above zero, or fewer than one drink.
    """

    sprays: Range[float]
    ml_per_spray: Range[float]
    drink_ml: Range[float]
    drinks: int = 1
    density_g_per_ml: float = DRINK_DENSITY_G_PER_ML
    beside: Beside = Beside()

    def __post_init__(self) -> None:
        for name, given, unit in (("sprays", self.sprays, ""), ("spray", self.ml_per_spray, "mL")):
            if not 0 <= given.low <= given.high < math.inf:
                raise OutOfRangeError(name, given.low, 0, None, unit)
        if not 0 < self.drink_ml.low <= self.drink_ml.high < math.inf:
            raise OutOfRangeError("drink", self.drink_ml.low, 0, None, "mL")
        if not 0 < self.density_g_per_ml < math.inf:
            raise OutOfRangeError("density", self.density_g_per_ml, 0, None, "g/mL")
        if self.drinks < 1:
            raise OutOfRangeError("drinks", self.drinks, 1, None, "")

    @property
    def spray_ml(self) -> Range[float]:
        """Mix sprayed on one drink, in mL."""
        return self.sprays * self.ml_per_spray


def serving(
    sprays: Range[float] | float,
    ml_per_spray: Range[float] | float,
    drink_ml: Range[float] | float,
    drinks: int = 1,
    density_g_per_ml: float = DRINK_DENSITY_G_PER_ML,
    others: Iterable[tuple[Mix, float]] = (),
) -> Serving:
    """Return a Serving from single values or ranges; raises the errors of Serving.

    `others` are other preparations in the same drink: the composition of each, and its mL.
    """
    ranges = as_range(sprays), as_range(ml_per_spray), as_range(drink_ml)
    return Serving(*ranges, drinks, density_g_per_ml, beside(others))


@dataclass(frozen=True, slots=True)
class PartDose:
    """One part of the mix in one drink and in an evening, from the least to the most.

    The concentrations are those of the finished drink, spray included.
    """

    part: Part
    ml_per_drink: Range[float]
    mg_per_drink: Range[float]
    ml_per_evening: Range[float]
    mg_per_evening: Range[float]
    mg_per_litre: Range[float]
    mg_per_kg: Range[float]


def dose(mix: Mix, served: Serving) -> dict[Part, PartDose]:
    """Return the dose of each part in a drink and in an evening, if all spray lands in the drink.

    mg/L = mg sprayed / (drink + spray in L), volumes adding ideally; mg/kg the same by mass; what is beside
    counts above and below. Mass balance only; some spray drifts off, so this is an upper bound.
    """
    doses = {}
    for part in Part:
        there_mg = served.beside.of(part)
        there_ml = there_mg / (1000 * mix.part_density_g_per_ml(part))
        per_drink_ml = served.spray_ml * mix.share(part) + there_ml
        per_drink_mg = served.spray_ml * mix.mg_per_ml(part) + there_mg
        doses[part] = PartDose(
            part=part,
            ml_per_drink=per_drink_ml,
            mg_per_drink=per_drink_mg,
            ml_per_evening=per_drink_ml * float(served.drinks),
            mg_per_evening=per_drink_mg * float(served.drinks),
            mg_per_litre=_concentration(mix, part, served, LimitUnit.MG_PER_LITRE),
            mg_per_kg=_concentration(mix, part, served, LimitUnit.MG_PER_KG),
        )
    return doses


def _concentration(mix: Mix, part: Part, served: Serving, unit: LimitUnit) -> Range[float]:
    # The lowest value is the least spray in the largest drink, the highest the most spray in the smallest.
    per_ml, there_mg = mix.mg_per_ml(part), served.beside.of(part)
    drink_weight, spray_weight, there = _weights(mix, served, unit)

    def of(spray_ml: float, drink_ml: float) -> float:
        whole = drink_weight * drink_ml + spray_weight * spray_ml + there
        return 1000 * (per_ml * spray_ml + there_mg) / whole

    return Range(
        of(served.spray_ml.low, served.drink_ml.high),
        of(served.spray_ml.high, served.drink_ml.low),
    )


def _weights(mix: Mix, served: Serving, unit: LimitUnit) -> tuple[float, float, float]:
    """Return the weight of one mL of drink, one mL of spray and all beside in a unit's denominator."""
    if unit is LimitUnit.MG_PER_LITRE:
        return 1.0, 1.0, served.beside.ml
    return served.density_g_per_ml, mix.density_g_per_ml, served.beside.grams


class LimitState(StrEnum):
    """The position of an amount relative to a limit; near begins at 80 % of it (limits.NEAR_SHARE)."""

    UNDER = "under"
    NEAR = "near"
    OVER = "over"


@dataclass(frozen=True, slots=True)
class Mend:
    """The values that keep the most sprayed drink within a limit, each changed alone.

    `largest_spray_ml` is the most mix on one drink (None: no amount passes the limit) and `most_sprays` whole
    sprays of the largest size; `largest_share` the part's share by volume in the mix; `smallest_drink_ml` the
    drink's volume, for composition limits; `most_drinks` the drinks per evening, for daily intakes. A field
    that does not apply, or has no limit, is None.
    """

    largest_spray_ml: float | None
    most_sprays: int | None
    largest_share: float | None
    smallest_drink_ml: float | None
    most_drinks: int | None


@dataclass(frozen=True, slots=True)
class Verdict:
    """A dose against one limit, in the limit's own unit.

    `state` judges the upper end of the range, `state_low` the lower end: under and over together mean that
    the amount sprayed decides.
    """

    limit: Limit
    amount: Range[float]
    state: LimitState
    state_low: LimitState
    mend: Mend


def state_of(amount: float, limit_value: float) -> LimitState:
    """Return over above the limit, near from 80 % of it up to the limit itself, else under."""
    # A binary rounding error must not turn a spray exactly at the limit into one over it.
    if amount > limit_value * (1 + 1e-9):
        return LimitState.OVER
    return LimitState.NEAR if amount >= NEAR_SHARE * limit_value else LimitState.UNDER


def judge(
    mix: Mix, served: Serving, limits: Iterable[Limit], body_weight_kg: float = ADULT_BODY_WEIGHT_KG
) -> list[Verdict]:
    """Return the verdict on each limit, in the order given; mends change only this mix, not what is beside.

    `body_weight_kg` applies to daily intakes only. Raises OutOfRangeError for a body weight that is not above
    zero.
    """
    if not 0 < body_weight_kg < math.inf:
        raise OutOfRangeError("body weight", body_weight_kg, 0, None, "kg")
    doses = dose(mix, served)
    return [_judge_one(mix, served, limit, doses[limit.part], body_weight_kg) for limit in limits]


def _judge_one(mix: Mix, served: Serving, limit: Limit, part: PartDose, body_weight_kg: float) -> Verdict:
    if limit.kind is LimitKind.INTAKE:
        amount = part.mg_per_evening * (1 / body_weight_kg)
        mend = _mend_intake(mix, served, limit, limit.value * body_weight_kg)
    else:
        amount = part.mg_per_litre if limit.unit is LimitUnit.MG_PER_LITRE else part.mg_per_kg
        mend = _mend_composition(mix, served, limit)
    return Verdict(limit, amount, state_of(amount.high, limit.value), state_of(amount.low, limit.value), mend)


def largest_spray_ml(mix: Mix, served: Serving, limit: Limit) -> float | None:
    """Return the largest amount of mix, in mL, that keeps the smallest drink within a composition limit.

    s = V L / (1000 g - L) with V in mL, L in mg/L and g the part's mg in a mL of mix, for a limit by volume;
    for one by mass each volume is multiplied by its density. What is beside counts first. None when even the
    pure mix stays within the limit.
    """
    drink_weight, spray_weight, _ = _weights(mix, served, limit.unit)
    spare = 1000 * mix.mg_per_ml(limit.part) - limit.value * spray_weight
    if spare <= 0:
        return None
    allowed = served.drink_ml.low * drink_weight * limit.value + _spare_beside(mix, served, limit)
    return max(0.0, allowed) / spare


def _spare_beside(mix: Mix, served: Serving, limit: Limit) -> float:
    """Return what other preparations leave of the limit for their own share of the drink; it may be negative.

    The same mass balance as `largest_spray_ml`.
    """
    return limit.value * _weights(mix, served, limit.unit)[2] - 1000 * served.beside.of(limit.part)


def _mend_composition(mix: Mix, served: Serving, limit: Limit) -> Mend:
    most_ml = largest_spray_ml(mix, served, limit)
    drink_weight, spray_weight, _ = _weights(mix, served, limit.unit)
    there = _spare_beside(mix, served, limit)
    spray_ml = served.spray_ml.high
    largest_share = smallest_drink = None
    if spray_ml > 0:
        finished = served.drink_ml.low * drink_weight + spray_ml * spray_weight
        largest_share = _share(mix, limit.part, max(0.0, limit.value * finished + there) / (1000 * spray_ml))
        spare = 1000 * mix.mg_per_ml(limit.part) - limit.value * spray_weight
        smallest_drink = max(0.0, (spray_ml * spare - there) / (limit.value * drink_weight))
    return Mend(most_ml, _whole_sprays(most_ml, served), largest_share, smallest_drink, None)


def _mend_intake(mix: Mix, served: Serving, limit: Limit, allowance_mg: float) -> Mend:
    per_ml, there = mix.mg_per_ml(limit.part), served.beside.of(limit.part)
    a_drink = max(0.0, allowance_mg / served.drinks - there)
    most_ml = a_drink / per_ml if per_ml > 0 else None
    largest_share = most_drinks = None
    spray_ml = served.spray_ml.high
    if spray_ml > 0:
        largest_share = _share(mix, limit.part, a_drink / spray_ml)
        if per_ml > 0:
            most_drinks = _floor(allowance_mg / (spray_ml * per_ml + there))
    return Mend(most_ml, _whole_sprays(most_ml, served), largest_share, None, most_drinks)


def _share(mix: Mix, part: Part, mg_per_ml: float) -> float:
    return min(1.0, mg_per_ml / (1000 * mix.part_density_g_per_ml(part)))


def _whole_sprays(most_ml: float | None, served: Serving) -> int | None:
    if most_ml is None or served.ml_per_spray.high == 0:
        return None
    return _floor(most_ml / served.ml_per_spray.high)


def _floor(value: float) -> int:
    # A binary rounding error must not turn three sprays exactly at the limit into two.
    return math.floor(value + 1e-9)
