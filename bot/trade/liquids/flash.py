"""Flash point of a spirit by its strength, as a band, because the sources differ by some degrees."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from itertools import pairwise

from bot.trade.liquids import ethanol
from bot.trade.numbers.ranges import Range
from bot.trade.sources import HowKnown, Source
from bot.trade.words import N_

# Ethanol percentage, flash point in °C. Two public pages print this table as % by volume, a third
# prints the same figures as % by mass, so both readings are kept.
PUBLISHED_FLASH_C: tuple[tuple[float, float], ...] = (
    (10, 49), (20, 36), (30, 29), (40, 26), (50, 24), (60, 22), (70, 21), (80, 20), (90, 17), (96, 17),
    (100, 17),
)  # fmt: skip

# % vol at 20 °C, flash point in °C. Computed as the temperature at which ethanol above the mixture reaches
# the vapour pressure that pure ethanol has at 12 °C, its closed-cup flash point in IEC 60079-20-1.
COMPUTED_FLASH_C: tuple[tuple[float, float], ...] = (
    (10, 42.1), (20, 32.9), (30, 29.1), (40, 26.9), (50, 25.3), (60, 23.9), (70, 22.2), (80, 19.9),
    (90, 16.8), (95, 14.7), (96, 14.2), (100, 12.0),
)  # fmt: skip

PUBLISHED_SOURCE = Source(
    N_("flash points of ethanol in water, handbook table on public pages (two as % vol, one as % mass)"),
    HowKnown.READ_SECOND_HAND,
    date(2026, 11, 25),
)
COMPUTED_SOURCE = Source(
    N_("original UNIFAC activity and vapour pressure from the library thermo, pure ethanol at 12 °C"),
    HowKnown.COMPUTED,
    date(2026, 11, 25),
)

WEAKEST_PERCENT = 10.0
HIGHLY_FLAMMABLE_BELOW_C = 23.0
FLAMMABLE_UP_TO_C = 60.0

# From this strength on every mixture flashes near room temperature: below about 28 °C by every reading.
ROOM_TEMPERATURE_STRENGTH_PERCENT = 40.0


class FlammableCategory(StrEnum):
    """Flammability category by flash point, as defined by the Globally Harmonised System."""

    HIGHLY_FLAMMABLE = N_("highly flammable (category 2: flashes below 23 °C)")
    FLAMMABLE = N_("flammable (category 3: flashes from 23 to 60 °C)")
    BELOW_TABLE = N_("weaker than the tables start")


@dataclass(frozen=True, slots=True)
class FlashPoint:
    """The band of flash points from all readings, in °C, and the categories at its two ends.

    `band_c` is None for a mixture weaker than 10 % vol, where the tables stop. `category` is the stricter one
    and `category_high` the milder.
    """

    strength_percent: float
    band_c: Range[float] | None
    category: FlammableCategory
    category_high: FlammableCategory


def flash_point(strength_percent: float) -> FlashPoint:
    """Return the flash point band of ethanol in water at `strength_percent` (% vol at 20 °C), in °C.

    The band holds three readings: the published table taken as % vol, the same table taken as % mass, and a
    computed curve (PUBLISHED_SOURCE and COMPUTED_SOURCE); each is interpolated linearly. Oil and glycol in a
    mix are ignored: citrus oil flashes at 43 to 48 °C and propylene glycol near 100 °C, both above a strong
    spirit. Categories: GHS, flash point below 23 °C and from 23 to 60 °C (read second-hand). A hint for
    labels and storage, not a test of the mix. Raises OutOfRangeError outside 0 to 100.
    """
    ethanol.check_strength(strength_percent)
    if strength_percent < WEAKEST_PERCENT:
        below = FlammableCategory.BELOW_TABLE
        return FlashPoint(strength_percent, None, below, below)
    mass_percent = 100 * ethanol.mass_fraction(strength_percent)
    readings = (
        _between(PUBLISHED_FLASH_C, strength_percent),
        _between(PUBLISHED_FLASH_C, mass_percent),
        _between(COMPUTED_FLASH_C, strength_percent),
    )
    band = Range(min(readings), max(readings))
    return FlashPoint(strength_percent, band, category_of(band.low), category_of(band.high))


def category_of(flash_point_c: float) -> FlammableCategory:
    """Return the category of a closed-cup flash point in °C, for values that the tables here can give."""
    if flash_point_c < HIGHLY_FLAMMABLE_BELOW_C:
        return FlammableCategory.HIGHLY_FLAMMABLE
    if flash_point_c <= FLAMMABLE_UP_TO_C:
        return FlammableCategory.FLAMMABLE
    return FlammableCategory.BELOW_TABLE


def _between(points: tuple[tuple[float, float], ...], percent: float) -> float:
    """Interpolate a table linearly; below its first point, extend the first line."""
    for (left, left_c), (right, right_c) in pairwise(points):
        if percent <= right:
            return left_c + (right_c - left_c) * (percent - left) / (right - left)
    return points[-1][1]
