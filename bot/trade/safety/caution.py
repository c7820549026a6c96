"""Handling cautions and the steps of the work at which they apply."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum

from bot.trade.formulas.kinds import IngredientKind, Preparation
from bot.trade.liquids.ethanol import check_strength
from bot.trade.liquids.flash import flash_point
from bot.trade.safety.jurisdiction import Jurisdiction
from bot.trade.sources import PRACTICE, Source


class Step(StrEnum):
    """A step of the work, from adding an ingredient to the book to discarding a batch."""

    ADDING = "adding"
    MIXING = "mixing"
    RESTING = "resting"
    BOTTLING = "bottling"
    SPRAYING = "spraying"
    STORING = "storing"
    LABELLING = "labelling"
    SERVING = "serving"
    DISCARDING = "discarding"


# The steps at which the neat ingredients are handled, not only the finished mix.
_NEAT = frozenset({Step.ADDING, Step.MIXING})


@dataclass(frozen=True, slots=True)
class Contents:
    """The facts about a mix that decide its cautions; an unknown value (None) never hides one.

    `strength_percent` and `flash_c` are those of the finished mix, % vol at 20 °C and °C (infinite for a mix
    that gives no flash); `strongest_percent` is the strongest thing poured into it. `names` are those of the
    ingredients, None if unknown. Raises OutOfRangeError for a strength outside 0 to 100.
    """

    kinds: frozenset[IngredientKind]
    strength_percent: float | None = None
    flash_c: float | None = None
    strongest_percent: float | None = None
    volume_ml: float | None = None
    names: tuple[str, ...] | None = None

    def __post_init__(self) -> None:
        for strength in (self.strength_percent, self.strongest_percent):
            if strength is not None:
                check_strength(strength)

    def strength_at(self, step: Step) -> float | None:
        """Return the strength that counts at a step: before mixing that of the strongest thing poured."""
        if step not in _NEAT:
            return self.strength_percent
        if self.strength_percent is None or self.strongest_percent is None:
            return None
        return max(self.strength_percent, self.strongest_percent)

    def flash_at(self, step: Step) -> float | None:
        """Return the flash point in °C that counts at a step: before mixing the lowest of all poured."""
        if step not in _NEAT:
            return self.flash_c
        if self.flash_c is None or self.strongest_percent is None:
            return None
        return min(self.flash_c, flash_point(self.strongest_percent).low_c)


@dataclass(frozen=True, slots=True)
class Caution:
    """One handling caution, and when it applies.

    `steps` pairs each step with a rank; 1 is shown first. An empty set of kinds, preparations or
    jurisdictions means any. `from_percent` is the strength in % vol from which it applies, `up_to_flash_c`
    the flash point in °C up to which, `from_ml` the volume of mix; None means any. `for_name` says
    of an ingredient's name whether it calls for the caution.
    """

    id: str
    text: str
    steps: tuple[tuple[Step, int], ...]
    kinds: frozenset[IngredientKind] = frozenset()
    preparations: frozenset[Preparation] = frozenset()
    jurisdictions: frozenset[Jurisdiction] = frozenset()
    from_percent: float | None = None
    up_to_flash_c: float | None = None
    from_ml: float | None = None
    for_name: Callable[[str], bool] | None = None
    source: Source = PRACTICE

    def rank_at(self, step: Step) -> int | None:
        """Return the caution's rank at a step, or None if it does not apply there."""
        return dict(self.steps).get(step)

    def concerns(self, step: Step, contents: Contents) -> bool:
        """Whether the contents of a mix call for it at a step."""
        if self.kinds and not self.kinds & contents.kinds:
            return False
        if not _at_least(contents.strength_at(step), self.from_percent):
            return False
        if not _at_least(contents.volume_ml, self.from_ml):
            return False
        flash = contents.flash_at(step)
        if flash is not None and self.up_to_flash_c is not None and flash > self.up_to_flash_c:
            return False
        if self.for_name is None or contents.names is None:
            return True
        return any(map(self.for_name, contents.names))


def _at_least(value: float | None, threshold: float | None) -> bool:
    return value is None or threshold is None or value >= threshold
