"""Word what became of sprayed fruit, beside fruit that was not sprayed."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from bot.chat.i18n.language import _, show_full_day, show_number
from bot.trade.numbers.ranges import Range
from bot.trade.savings.before_after import FEWEST_NIGHTS, Verdict
from bot.work.savings.before_after import Side, SprayEffect


def short_lines(effects: Sequence[SprayEffect]) -> list[str]:
    """Write the change of each fruit in one line, and in another what it shows and does not."""
    judged = [one for one in effects if one.effect.verdict is not Verdict.FEW_NIGHTS]
    if not judged:
        return [few_nights(one) for one in effects[:1]]
    said = "; ".join(f"{one.since.fruit.name} {change(one)}" for one in judged)
    others = _names(judged[0])
    if others:
        text = _("Since the spray, beside {others}: {changes}")
        return [text.format(others=others, changes=said), meaning(judged)]
    return [_("Since the spray: {changes}").format(changes=said), meaning(judged)]


def change(one: SprayEffect) -> str:
    """Write the change with its 95 % interval: '64 % less (48 to 75 % less)'."""
    found = one.effect
    if found.ratio is None or found.interval is None:
        return ""
    text = f"{_share(found.ratio)} ({_interval(found.interval)})"
    return text if found.verdict is not Verdict.CHANCE else f"{text}, {_(found.verdict)}"


def meaning(judged: Sequence[SprayEffect]) -> str:
    """Say in one plain sentence what the comparison shows, and what it does not."""
    clear = [one for one in judged if one.effect.verdict is not Verdict.CHANCE]
    if not clear:
        return _("That much changes by chance, so it shows nothing yet.")
    controlled = all(one.effect.controlled for one in clear)
    if len(clear) < len(judged):
        names = _(" and ").join(one.since.fruit.name for one in clear)
        if controlled:
            text = _("Only {names}: more than chance. It doesn't show why: a new menu would look the same.")
        else:
            text = _(
                "Only {names}: more than chance, but nothing unsprayed is logged beside it: the season would "
                "look the same."
            )
        return text.format(names=names)
    if controlled:
        return _("More than chance. It doesn't show why: a new menu would look the same.")
    return _("More than chance, but nothing unsprayed is logged beside it: the season would look the same.")


def few_nights(one: SprayEffect) -> str:
    """Say how many nights were logged in whole weeks, and how many a verdict takes."""
    return _(
        "{name}, sprayed since {day}: no verdict yet. In whole weeks {before} nights were logged before and "
        "{after} since; it takes {least} each."
    ).format(
        name=one.since.fruit.name.capitalize(),
        day=show_full_day(one.since.day),
        before=one.before.nights,
        after=one.after.nights,
        least=FEWEST_NIGHTS,
    )


def minutes_saved(low: int, high: int) -> str:
    """Write minutes saved a week, from low to high; below zero they are spent."""
    if low < 0 < high:
        text = _("from {low} min more to {high} min less a week")
    elif low == high:
        text = _("{high} min less a week") if high >= 0 else _("{high} min more a week")
    else:
        text = _("{low} to {high} min less a week") if low >= 0 else _("{low} to {high} min more a week")
        low, high = sorted((low, high), key=abs)
    return text.format(low=show_number(abs(low)), high=show_number(abs(high)))


def full_lines(one: SprayEffect) -> list[str]:
    """Write the numbers of one fruit before and since, the change beside the others, and what was kept."""
    if one.effect.verdict is Verdict.FEW_NIGHTS:
        return [few_nights(one), *kept_lines([one])]
    text = _(
        "{name}, sprayed since {day}: {now} thrown out a night in {nights} nights since, {before} in the "
        "{earlier} before."
    ).format(
        name=one.since.fruit.name.capitalize(),
        day=show_full_day(one.since.day),
        now=_a_night(one.after, one.after.pieces),
        nights=one.after.nights,
        before=_a_night(one.before, one.before.pieces),
        earlier=one.before.nights,
    )
    if one.others:
        text += " " + _("Not sprayed, {others}: {now} after {before}.").format(
            others=_names(one),
            now=_a_night(one.after, one.after.others),
            before=_a_night(one.before, one.before.others),
        )
    basis = _("a drink") if one.after.drinks is not None else _("a night")
    verdict = _("Set beside each other {basis}: {change}.") if one.others else _("Counted {basis}: {change}.")
    return [text, verdict.format(basis=basis, change=change(one)) + " " + meaning([one]), *kept_lines([one])]


def kept_lines(effects: Sequence[SprayEffect]) -> list[str]:
    """Say how many peeled pieces were used, so that they are not waste."""
    before, since = sum(one.before.kept for one in effects), sum(one.after.kept for one in effects)
    if not before + since:
        return []
    text = _("Juiced or used after peeling, so not waste: {before} before, {after} since.")
    return [text.format(before=show_number(round(before)), after=show_number(round(since)))]


def _names(one: SprayEffect) -> str:
    return _(" and ").join(view.name for view in one.others[:3])


def _a_night(side: Side, pieces: float) -> str:
    return show_number(Fraction(round(side.a_night(pieces), 1)), 1)


def _share(ratio: float) -> str:
    percent = show_number(round(abs(ratio - 1) * 100))
    return (_("{percent} % less") if ratio < 1 else _("{percent} % more")).format(percent=percent)


def _interval(ends: Range[float]) -> str:
    if ends.low < 1 < ends.high:
        return _("{low} to {high}").format(low=_share(ends.low), high=_share(ends.high))
    near, far = sorted((ends.low, ends.high), key=lambda end: abs(end - 1))
    low, high = (show_number(round(abs(end - 1) * 100)) for end in (near, far))
    return _("{low} to {high} %").format(low=low, high=high)
