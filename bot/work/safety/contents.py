"""The facts about a formula or a batch that decide its cautions."""

from __future__ import annotations

from bot.trade.safety.caution import Contents
from bot.work.formulas.mixture import Mix


def contents_of(mix: Mix, volume_ml: float | None = None) -> Contents:
    """Return the facts about a mix; `volume_ml` is what is made of it, None if unknown."""
    strength, flash = mix.strength, mix.flash
    return Contents(
        frozenset(one.kind for one in mix.poured),
        None if strength is None else strength.strength_percent,
        None if flash is None else flash.low_c,
        mix.strongest_percent,
        volume_ml,
        tuple(one.name for one in mix.poured),
    )
