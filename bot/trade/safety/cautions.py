"""Select the handling cautions for a step of the work, the most important first."""

from __future__ import annotations

from bot.trade.formulas.kinds import Preparation
from bot.trade.safety.caution import Caution, Contents, Step
from bot.trade.safety.caution_list import CAUTIONS
from bot.trade.safety.jurisdiction import Jurisdiction

__all__ = ["CAUTIONS", "Caution", "Contents", "Step", "caution_by_id", "cautions_for"]


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
