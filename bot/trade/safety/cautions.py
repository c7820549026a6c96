"""Select the handling cautions for a step of the work, the most important first."""

from __future__ import annotations

from collections.abc import Iterable

from bot.trade.formulas.kinds import IngredientKind, Preparation
from bot.trade.liquids.ethanol import check_strength
from bot.trade.safety.caution import Caution, Step
from bot.trade.safety.caution_list import CAUTIONS
from bot.trade.safety.jurisdiction import Jurisdiction

__all__ = ["CAUTIONS", "Caution", "Step", "caution_by_id", "cautions_for"]


def cautions_for(
    step: Step,
    ingredients: Iterable[IngredientKind],
    strength_percent: float | None,
    jurisdiction: Jurisdiction,
    preparation: Preparation | None,
    *,
    volume_ml: float | None = None,
) -> list[Caution]:
    """Return the cautions that apply at `step`, the most important first.

    `strength_percent` is the strength of the mix, % vol at 20 °C; `volume_ml` its volume. An unknown value
    (None) never hides a caution. Raises OutOfRangeError for a strength outside 0 to 100. Each caution names
    its source or 'common practice'.
    """
    if strength_percent is not None:
        check_strength(strength_percent)
    kinds = frozenset(ingredients)
    ranked = []
    for caution in CAUTIONS:
        rank = caution.rank_at(step)
        if rank is None or not _fits(caution, kinds, jurisdiction, preparation):
            continue
        if _at_least(strength_percent, caution.from_percent) and _at_least(volume_ml, caution.from_ml):
            ranked.append((rank, caution))
    # Sorting is stable, so cautions of one rank keep the order of the list: fire, body, guests, food, paper.
    return [caution for _, caution in sorted(ranked, key=lambda pair: pair[0])]


def caution_by_id(caution_id: str) -> Caution:
    """Return the caution with this id; raises KeyError for an id that is not in the list."""
    return {caution.id: caution for caution in CAUTIONS}[caution_id]


def _fits(
    caution: Caution,
    kinds: frozenset[IngredientKind],
    jurisdiction: Jurisdiction,
    preparation: Preparation | None,
) -> bool:
    if caution.kinds and not caution.kinds & kinds:
        return False
    if caution.preparations and preparation is not None and preparation not in caution.preparations:
        return False
    return not caution.jurisdictions or jurisdiction in caution.jurisdictions


def _at_least(value: float | None, threshold: float | None) -> bool:
    return value is None or threshold is None or value >= threshold
