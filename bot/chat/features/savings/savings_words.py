"""Word the effect of spraying on waste."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from fractions import Fraction

from bot.chat.i18n.language import _, show_full_day, show_number
from bot.trade.fruit.balance import Comparison, Sureness
from bot.trade.words import N_
from bot.work.savings.savings import SprayEffect

SURENESS = {
    Sureness.FEW_DAYS: N_("too few nights to say"),
    Sureness.MAY_BE_CHANCE: N_("may be chance"),
    Sureness.CLEAR: N_("more than chance"),
}


def period_line(effects: Sequence[SprayEffect]) -> str:
    """Write in one line the change of each fruit's pieces a night since the time before the spray."""
    said = [
        f"{effect.since.fruit.name} {_period(effect.period)}"
        for effect in effects
        if effect.period is not None
    ]
    return _("A night, against before the spray: {changes}").format(changes=", ".join(said)) if said else ""


def _period(found: Comparison) -> str:
    change = _change(found)
    if not change:
        return _("{now} after {before} (too few nights to say)").format(
            now=_amount(found.per_day), before=_amount(found.per_day_before)
        )
    return f"{change} ({_(SURENESS[found.sureness])})" if found.sureness is Sureness.MAY_BE_CHANCE else change


def effect_line(effect: SprayEffect) -> str:
    """Write the same over all nights since then, with their number and the certainty of the difference."""
    found = effect.whole or effect.period
    if found is None:
        return ""
    sure = _(SURENESS[found.sureness])
    change = _change(found)
    return _(
        "{name}, sprayed since {day}: {now} thrown out a night in {nights} nights since, "
        "{before} in the {earlier} before. {judgement}."
    ).format(
        name=effect.since.fruit.name.capitalize(),
        day=show_full_day(effect.since.day),
        now=_amount(found.per_day),
        nights=found.days,
        before=_amount(found.per_day_before),
        earlier=found.days_before,
        judgement=f"{change}: {sure}" if change else sure.capitalize(),
    )


def _amount(pieces: Decimal) -> str:
    return show_number(Fraction(round(pieces, 1)), 1)


def _change(found: Comparison) -> str:
    """Return the change in words, empty if there are too few nights."""
    if found.sureness is Sureness.FEW_DAYS:
        return ""
    if found.change_share is None:
        return _("none before")
    share = show_number(abs(Fraction(found.change_share)) * 100, 0)
    if found.change_per_day < 0:
        return _("{percent} % less").format(percent=share)
    if found.change_per_day > 0:
        return _("{percent} % more").format(percent=share)
    return _("as before")
