"""The usual time of a preparation, shortened for what is too weak, too wet or too fresh to keep that long.

Spirit keeps a tincture only as long as there is enough of it, and nothing fresh in it. The lines drawn here
are common practice, no source, unless a source is named; the Food Code's seven days are the measure of short.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from bot.trade.formulas.kinds import PREPARATION_DEFAULTS, IngredientKind, Preparation
from bot.trade.formulas.perishables import is_fat_egg_milk_or_garlic, spoils
from bot.trade.sources import PRACTICE, HowKnown, Source
from bot.trade.words import N_

# FDA Food Code 3-501.17: refrigerated, ready-to-eat food that needs time and temperature control, held longer
# than 24 h, must be used or thrown out within 7 calendar days at 5 °C (41 °F), counting the day of
# preparation as day 1; a mixture takes the earliest date of its parts.
FOOD_CODE_DAYS = 7
FOOD_CODE_SOURCE = Source(
    N_("FDA Food Code 3-501.17, as adopted in Minnesota Rules 4626.0400"), HowKnown.READ, date(2026, 11, 25)
)
# The day of making is day one, so the seventh day is six days later.
SHORT_DAYS = FOOD_CODE_DAYS - 1
# Sugar or acid keeps a weak mix about as long as a simple syrup.
SWEET_OR_SOUR_DAYS = 14
# Fruit, peel or herbs in enough spirit: long enough to steep and use, never a season.
STEEPED_DAYS = 30

WEAK_BELOW_PERCENT = 20.0
SWEET_FROM_G_PER_L = 600.0  # a 1:1 syrup holds 615 g/L (ICUMSA)
SOUR_FROM_G_PER_L = 10.0
_DRY_UP_TO_SHARE = 0.1

# Kinds whose usual time rests on strong spirit or on oil.
STRONG_KINDS = frozenset({Preparation.AROMA_MIST, Preparation.TINCTURE, Preparation.INFUSION})


@dataclass(frozen=True, slots=True)
class Made:
    """The facts about a mix that decide how long it keeps; an unknown one is None.

    `contents` are names and kinds; `strength_percent` counts glycol, which keeps as spirit does, as well.
    `water_share` is the share of the volume that is watery, `sugar_g_per_l` and `acid_g_per_l` what was
    weighed in.
    """

    contents: tuple[tuple[str, IngredientKind], ...] = ()
    strength_percent: float | None = None
    water_share: float | None = None
    sugar_g_per_l: float = 0.0
    acid_g_per_l: float = 0.0

    @property
    def is_fragile(self) -> bool:
        """Whether it holds fat, egg, milk, garlic or fresh juice, which no spirit here keeps."""
        return any(
            kind is IngredientKind.JUICE or is_fat_egg_milk_or_garlic(name) for name, kind in self.contents
        )

    @property
    def is_fresh(self) -> bool:
        """Whether anything in it spoils: also fruit, peel and herbs."""
        return any(spoils(name, kind) for name, kind in self.contents)

    @property
    def is_weak(self) -> bool:
        """Whether it is watery and below 20 % vol."""
        if self.strength_percent is None or self.strength_percent >= WEAK_BELOW_PERCENT:
            return False
        return self.water_share is None or self.water_share > _DRY_UP_TO_SHARE


NOTHING_KNOWN = Made()


@dataclass(frozen=True, slots=True)
class UsualTime:
    """How many days a mix usually keeps after the day of making; `shortened` below the time of its kind."""

    days: int
    shortened: bool
    source: Source


def usual_time(preparation: Preparation, made: Made) -> UsualTime:
    """Return the usual time of a kind of preparation, shortened by what is in it.

    Fat, egg, milk and garlic shorten every kind; juice, fruit and weakness those kept by spirit or oil.
    """
    defaults = PREPARATION_DEFAULTS[preparation]
    days, source = _limit(preparation, made)
    if days is None or days >= defaults.discard_days:
        return UsualTime(defaults.discard_days, False, defaults.source)
    return UsualTime(days, True, source)


def _limit(preparation: Preparation, made: Made) -> tuple[int | None, Source]:
    if any(is_fat_egg_milk_or_garlic(name) for name, _ in made.contents):
        return SHORT_DAYS, FOOD_CODE_SOURCE
    if preparation not in STRONG_KINDS:
        return None, PRACTICE
    if made.is_fragile:
        return SHORT_DAYS, FOOD_CODE_SOURCE
    if made.is_weak:
        if made.sugar_g_per_l >= SWEET_FROM_G_PER_L or made.acid_g_per_l >= SOUR_FROM_G_PER_L:
            return SWEET_OR_SOUR_DAYS, PRACTICE
        return SHORT_DAYS, FOOD_CODE_SOURCE
    if made.is_fresh:
        return STEEPED_DAYS, PRACTICE
    return None, PRACTICE
