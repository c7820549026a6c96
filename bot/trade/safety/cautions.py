"""Select the handling cautions for a step of the work, the most important first."""

from __future__ import annotations

from bot.trade.formulas.kinds import Preparation
from bot.trade.safety.caution import Caution, Contents, Step
from bot.trade.safety.caution_list import (
    BODY_CAUTIONS,
    FIRE_CAUTIONS,
    FOOD_CAUTIONS,
    GUEST_CAUTIONS,
    PAPER_CAUTIONS,
)
from bot.trade.safety.held_substances import HELD_SUBSTANCES
from bot.trade.safety.jurisdiction import Jurisdiction

__all__ = [
    "CAUTIONS",
    "FIRE_CAUTIONS",
    "HELD_CAUTIONS",
    "Caution",
    "Contents",
    "Step",
    "caution_by_id",
    "cautions_for",
]

HELD_CAUTIONS: tuple[Caution, ...] = tuple(
    Caution(
        one.id,
        one.text,
        ((Step.ADDING, 0), (Step.MIXING, 0), (Step.SERVING, 0)),
        for_name=one.is_in,
        source=one.source,
    )
    for one in HELD_SUBSTANCES
)

CAUTIONS: tuple[Caution, ...] = (
    *FIRE_CAUTIONS,
    *BODY_CAUTIONS,
    *GUEST_CAUTIONS,
    *FOOD_CAUTIONS,
    *HELD_CAUTIONS,
    *PAPER_CAUTIONS,
)


def cautions_for(
    step: Step, contents: Contents, jurisdiction: Jurisdiction, preparation: Preparation | None
) -> list[Caution]:
    """Return the cautions that apply at `step`, the most important first.

    Before mixing the strongest thing poured counts, later the finished mix. A preparation of None never hides
    a caution. Each caution names its source or 'common practice'.
    """
    ranked = []
    for caution in CAUTIONS:
        rank = caution.rank_at(step)
        if rank is None or not caution.concerns(step, contents):
            continue
        if _fits(caution, jurisdiction, preparation):
            ranked.append((rank, caution))
    # Sorting is stable, so cautions of one rank keep the order of the list: fire, body, guests, food, paper.
    return [caution for _, caution in sorted(ranked, key=lambda pair: pair[0])]


def caution_by_id(caution_id: str) -> Caution:
    """Return the caution with this id; raises KeyError for an id that is not in the list."""
    return {caution.id: caution for caution in CAUTIONS}[caution_id]


def _fits(caution: Caution, jurisdiction: Jurisdiction, preparation: Preparation | None) -> bool:
    if caution.preparations and preparation is not None and preparation not in caution.preparations:
        return False
    return not caution.jurisdictions or jurisdiction in caution.jurisdictions
