"""Handling cautions and the steps of the work at which they apply."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from bot.trade.formulas.kinds import IngredientKind, Preparation
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


@dataclass(frozen=True, slots=True)
class Caution:
    """One handling caution, and when it applies.

    `steps` pairs each step with a rank; 1 is shown first. An empty set of kinds, preparations or
    jurisdictions means any. `from_percent` is the strength in % vol from which it applies, `from_ml` the
    volume of mix; None means any.
    """

    id: str
    text: str
    steps: tuple[tuple[Step, int], ...]
    kinds: frozenset[IngredientKind] = frozenset()
    preparations: frozenset[Preparation] = frozenset()
    jurisdictions: frozenset[Jurisdiction] = frozenset()
    from_percent: float | None = None
    from_ml: float | None = None
    source: Source = PRACTICE

    def rank_at(self, step: Step) -> int | None:
        """Return the caution's rank at a step, or None if it does not apply there."""
        return dict(self.steps).get(step)
