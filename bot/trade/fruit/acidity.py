"""Acidity of citrus juices, and the acid that brings one juice to the acidity of another.

Acidity is titratable acidity in grams of anhydrous citric acid equivalents per litre (g/L): the citric acid
that would need as much base. Added acid is counted per litre of the original juice; dissolving 40 g makes
that litre about 2 % larger, which is less than the difference between juices, and is left out.

Measured juices differ more than any of this: titrate your own, or taste.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from bot.trade.errors import OutOfRangeError, TradeError
from bot.trade.fruit.acidity_table import (
    CITRIC_G_PER_MOL,
    CITRIC_MONOHYDRATE_G_PER_MOL,
    MALIC_AS_CITRIC,
    READINGS,
    RULES_OF_THUMB,
    Juice,
    Reading,
    citric_equivalents,
)
from bot.trade.numbers.ranges import Range
from bot.trade.sources import HowKnown, Source

# Citric acid's share of the added acids by mass, if none is given. Common practice, no source: the 32 to 20
# of the rule of thumb for lime, citric acid alone for the rest.
_LIME_CITRIC_SHARE = Decimal(32) / Decimal(52)


@dataclass
class UnknownAcidityError(TradeError):
    """The table has no measured acidity of this `juice`, and none was given."""

    juice: str


class CitricForm(StrEnum):
    """The form of citric acid: anhydrous, or the monohydrate, which is 1.094 times as heavy."""

    ANHYDROUS = "anhydrous"
    MONOHYDRATE = "monohydrate"

    @property
    def weight(self) -> Decimal:
        """Grams of this form that contain one gram of anhydrous citric acid."""
        if self is CitricForm.MONOHYDRATE:
            return CITRIC_MONOHYDRATE_G_PER_MOL / CITRIC_G_PER_MOL
        return Decimal(1)


@dataclass(frozen=True, slots=True)
class Acidity:
    """Titratable acidity in g/L of citric equivalents: the likely value and its published range.

    `sources` is empty when the bar measured it itself.
    """

    likely_g_per_l: Decimal
    range_g_per_l: Range[Decimal]
    sources: tuple[Source, ...]


@dataclass(frozen=True, slots=True)
class AcidRecipe:
    """Acids to dissolve in each litre of juice, in g/L as weighed."""

    citric_g_per_l: Decimal
    malic_g_per_l: Decimal
    citric_form: CitricForm = CitricForm.ANHYDROUS

    @property
    def equivalents_g_per_l(self) -> Decimal:
        """The acidity that the recipe adds, in g/L of citric equivalents."""
        return citric_equivalents(self.citric_g_per_l / self.citric_form.weight, self.malic_g_per_l)


@dataclass(frozen=True, slots=True)
class AcidAddition:
    """Acid for one volume of juice: grams of each for the likely juice, and their ranges.

    The ranges run from the sourest source and the mildest target to the opposite ends. `already_there` means
    that the likely juice needs no acid.
    """

    citric_g: Decimal
    malic_g: Decimal
    citric_range_g: Range[Decimal]
    malic_range_g: Range[Decimal]
    already_there: bool
    source: Acidity
    target: Acidity


@dataclass(frozen=True, slots=True)
class AcidOutcome:
    """The result of a given recipe, in g/L of citric equivalents, and its distance from the target.

    `overshoot` is the share (0.3 for a third too much) beyond the target, from the mildest source and the
    sourest target to the opposite ends; negative falls short. `citric_g` and `malic_g` are for the volume.
    """

    recipe: AcidRecipe
    citric_g: Decimal
    malic_g: Decimal
    ends_at_g_per_l: Range[Decimal]
    overshoot: Range[Decimal]


def readings(juice: Juice) -> tuple[Reading, ...]:
    """Return every published reading of a juice, including those that do not count."""
    return tuple(reading for reading in READINGS if reading.juice is juice)


def acidity(juice: Juice, measured_g_per_l: Decimal | None = None) -> Acidity:
    """Return the acidity of a juice in g/L of citric equivalents.

    `measured_g_per_l` is the bar's own titration and overrides the literature. Otherwise the range covers
    every reading with a source, with one standard deviation either side where published, and the likely
    value is the mean of the middles of those that count. Raises UnknownAcidityError, OutOfRangeError.
    """
    if measured_g_per_l is not None:
        if not 0 < measured_g_per_l <= 200:
            raise OutOfRangeError("acidity", float(measured_g_per_l), 0, 200, "g/L")
        return Acidity(measured_g_per_l, Range.exactly(measured_g_per_l), ())
    found = [reading for reading in readings(juice) if reading.counts]
    if not found:
        raise UnknownAcidityError(juice.value)
    middles = [reading.equivalents.middle for reading in found]
    sourced = [one for one in readings(juice) if one.source.how_known is not HowKnown.PRACTICE]
    spread = Range(
        min(reading.equivalents.low for reading in sourced),
        max(reading.equivalents.high for reading in sourced),
    )
    sources = tuple(dict.fromkeys(reading.source for reading in sourced))
    return Acidity(sum(middles, Decimal(0)) / len(middles), spread, sources)


def acid_to_add(
    volume_ml: Decimal,
    source: Acidity,
    target: Acidity,
    citric_share: Decimal,
    citric_form: CitricForm = CitricForm.ANHYDROUS,
) -> AcidAddition:
    """Return the citric and malic acid, in grams, that bring `volume_ml` of juice to the target.

    `citric_share` is citric acid's share (0 to 1) of the two by mass, counted as anhydrous; the answer is in
    the form that the bar has. A juice at or above the target needs none. Raises OutOfRangeError.
    """
    _check_volume(volume_ml)
    if not 0 <= citric_share <= 1:
        raise OutOfRangeError("citric share", float(citric_share), 0, 1, "")
    here, there = source.range_g_per_l, target.range_g_per_l
    missing = Range(_at_least_none(there.low - here.high), _at_least_none(there.high - here.low))
    likely = _at_least_none(target.likely_g_per_l - source.likely_g_per_l)
    litres = volume_ml / 1000
    # grams of the anhydrous mixture for each gram of citric equivalents
    mixture = 1 / (citric_share + (1 - citric_share) * MALIC_AS_CITRIC)
    citric = litres * mixture * citric_share * citric_form.weight
    malic = litres * mixture * (1 - citric_share)
    return AcidAddition(
        likely * citric,
        likely * malic,
        missing * citric,
        missing * malic,
        likely == 0,
        source,
        target,
    )


def outcome(volume_ml: Decimal, source: Acidity, target: Acidity, recipe: AcidRecipe) -> AcidOutcome:
    """Return the result of a given recipe, the bar's own or the rule of thumb.

    Raises OutOfRangeError for a volume that is not positive or a negative amount of acid.
    """
    _check_volume(volume_ml)
    for amount in (recipe.citric_g_per_l, recipe.malic_g_per_l):
        if not amount >= 0:
            raise OutOfRangeError("acid", float(amount), 0, None, "g/L")
    litres = volume_ml / 1000
    ends = source.range_g_per_l + recipe.equivalents_g_per_l
    there = target.range_g_per_l
    beyond = Range(ends.low / there.high - 1, ends.high / there.low - 1)
    return AcidOutcome(recipe, recipe.citric_g_per_l * litres, recipe.malic_g_per_l * litres, ends, beyond)


def rule_of_thumb(source: Juice, target: Juice) -> AcidRecipe | None:
    """Return the usual grams per litre that bars pass on, or None if there is no such rule.

    For orange to lime 32 g citric and 20 g malic acid: more than the measured lime needs by a third to a
    half. Common practice, no source.
    """
    grams = RULES_OF_THUMB.get((source, target))
    return None if grams is None else AcidRecipe(*grams)


def usual_citric_share(target: Juice) -> Decimal:
    """Return citric acid's usual share (0 to 1) by mass of the added acids.

    Common practice, no source: 32 in 52 towards lime, all of it otherwise.
    """
    return _LIME_CITRIC_SHARE if target is Juice.LIME else Decimal(1)


def _at_least_none(amount: Decimal) -> Decimal:
    return max(Decimal(0), amount)


def _check_volume(volume_ml: Decimal) -> None:
    if not volume_ml > 0:
        raise OutOfRangeError("volume", float(volume_ml), 0, None, "mL")
