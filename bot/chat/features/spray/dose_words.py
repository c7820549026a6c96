"""Word a dose: the amounts, their relation to each limit, and the changes that stay under it."""

from __future__ import annotations

from fractions import Fraction

from bot.chat.i18n.language import _, ngettext, show_full_day, show_number, show_sensibly
from bot.chat.reply.message import Block, Grid, Reply, Text, reply
from bot.trade.numbers.ranges import Range
from bot.trade.safety.jurisdiction import Jurisdiction
from bot.trade.safety.limits import (
    LIMONENE_NOTE,
    LIMONENE_SOURCE,
    NEAR_SHARE,
    NO_LIMIT_ON_FILE,
    LimitKind,
    Part,
)
from bot.trade.sources import Source
from bot.trade.spray.dose import LimitState, Mend, Verdict
from bot.trade.words import N_
from bot.work.spray.dose import DoseAnswer, composition

PART_WORDS = {Part.OIL: N_("oil"), Part.GLYCOL: N_("glycol"), Part.ETHANOL: N_("ethanol")}
_STATES = {LimitState.UNDER: N_("under"), LimitState.NEAR: N_("near"), LimitState.OVER: N_("over")}
_TITLES = {
    LimitState.UNDER: N_("under the limits"),
    LimitState.NEAR: N_("near a limit"),
    LimitState.OVER: N_("over a limit"),
}


def state_words(answer: DoseAnswer) -> str:
    """Return the relation of the dose to the limits, in a few words."""
    counted = _counted_words(answer)
    if not answer.held:
        return counted
    names = ", ".join(_(one.name) for one in answer.held)
    if answer.worst is None:
        return _("{substances} not counted").format(substances=names)
    return _("{counted}, {substances} not counted").format(counted=counted, substances=names)


def _counted_words(answer: DoseAnswer) -> str:
    worst = answer.worst
    if worst is None:
        return _("no limit on file")
    verdict = next(one for one in answer.verdicts if one.state is worst)
    if verdict.state_low is not worst:
        return _("may pass a limit") if worst is LimitState.OVER else _("may come near a limit")
    return _(_TITLES[worst])


def spread(value: Range[float], figures: int = 2) -> str:
    """Write a range with few figures: '32-71', '720-1,600'."""
    low, high = (show_sensibly(Fraction(f"{end:.{figures}g}"), figures) for end in (value.low, value.high))
    return low if low == high else f"{low}-{high}"


def table(answer: DoseAnswer) -> list[Block]:
    """Return mg a drink and an evening, and the content of each part in a drink."""
    drinks = answer.question.drinks
    all_of_them = ngettext("{count} drink", "{count} drinks", drinks).format(count=drinks)
    head = (_("mg in"), _("a drink"), all_of_them)
    rows: list[tuple[str, ...]] = [head if drinks > 1 else head[:2]]
    for one in answer.parts:
        row = [_(PART_WORDS[one.part]), spread(one.mg_per_drink)]
        if drinks > 1:
            row.append(spread(one.mg_per_evening))
        rows.append(tuple(row))
    return [
        Grid(tuple(rows)),
        Text(_("ml a drink: {parts}").format(parts=_listed(answer, "ml_per_drink"))),
        Text(_("mg/kg in the drink: {parts}").format(parts=_listed(answer, "mg_per_kg"))),
    ]


def _listed(answer: DoseAnswer, what: str) -> str:
    return ", ".join(f"{_(PART_WORDS[one.part])} {spread(getattr(one, what))}" for one in answer.parts)


def limit_lines(answer: DoseAnswer) -> list[str]:
    """Return one line for each limit: its text, the amount here, and the relation."""
    return [_limit_line(one, answer) for one in answer.verdicts]


def held_lines(answer: DoseAnswer, jurisdiction: Jurisdiction) -> list[str]:
    """Return what is on file about each substance whose amount nobody can compute."""
    lines = []
    for one in answer.held:
        lines.append(
            _("I can't tell how much {substance} is in it: have it measured, or leave it out.").format(
                substance=_(one.name)
            )
        )
        rules = one.rules_in(jurisdiction)
        lines += [f"{_(rule.text)}. {_source(rule.source)}" for rule in rules]
        if not rules:
            lines.append(_("No rule on it is on file here: a licensed adviser and your local code decide."))
    return lines


def _limit_line(one: Verdict, answer: DoseAnswer) -> str:
    state = _(_STATES[one.state])
    if one.state_low is not one.state:
        state = _("{low} to {high}").format(low=_(_STATES[one.state_low]), high=state)
    if one.limit.kind is LimitKind.INTAKE:
        weight = answer.question.body_weight_kg
        kilos = show_number(Fraction(70) if weight is None else weight, 0)
        here = _("{amount} mg/kg at {kilos} kg").format(amount=spread(one.amount), kilos=kilos)
    else:
        here = f"{spread(one.amount, 3)} {_(one.limit.unit.value)}"
    return _("{limit}. Here {amount}: {state}.").format(limit=_(one.limit.text), amount=here, state=state)


def mend_line(answer: DoseAnswer) -> str:
    """Return the largest spray and other changes that stay under the tightest limit, or ''."""
    verdicts = [one for one in composition(answer) if one.mend.largest_spray_ml is not None]
    if not verdicts:
        verdicts = [one for one in answer.verdicts if one.mend.largest_spray_ml is not None]
    if not verdicts:
        return ""
    tightest = min(verdicts, key=lambda one: one.mend.largest_spray_ml or 0.0)
    mend = tightest.mend
    text = _("Most that stays within it: {volume} ml a drink").format(
        volume=show_sensibly(Fraction(str(mend.largest_spray_ml)), 3)
    )
    if answer.question.taken_ml is None and mend.most_sprays is not None:
        text += " " + ngettext("({count} spray)", "({count} sprays)", mend.most_sprays).format(
            count=show_number(mend.most_sprays)
        )
    others = _others(tightest, mend) if tightest.state is not LimitState.UNDER else []
    return text + _("; or {ways}.").format(ways=_(" or ").join(others)) if others else text + "."


def others_line(answer: DoseAnswer) -> str:
    """Return what else counts towards the limits on glycol, or ''."""
    if not any(one.part is Part.GLYCOL for one in answer.parts) or not answer.verdicts:
        return ""
    text = _("Flavourings, syrups and bitters in the drink may carry glycol (E 1520) as well: it all counts.")
    if answer.question.drinks > 1:
        return text
    return text + " " + _("So does the guest's evening: this is one drink.")


def _others(one: Verdict, mend: Mend) -> list[str]:
    ways = []
    if mend.smallest_drink_ml is not None:
        ways.append(_("a drink of {volume} ml").format(volume=show_number(_up(mend.smallest_drink_ml), 0)))
    if mend.largest_share is not None:
        percent = Fraction(str(int(1000 * mend.largest_share) / 10))
        ways.append(
            _("at most {percent} % {part} in the mix").format(
                percent=show_number(percent, 1), part=_(PART_WORDS[one.limit.part])
            )
        )
    if mend.most_drinks is not None:
        ways.append(
            ngettext("{count} drink", "{count} drinks", mend.most_drinks).format(count=mend.most_drinks)
        )
    return ways


def _up(value: float) -> int:
    return -int(-value // 1)


def sources_reply(answer: DoseAnswer) -> Reply:
    """Return each limit in full: text, note and source, how the source is known and when it was seen."""
    lines: list[str] = []
    for one in answer.verdicts:
        lines += [f"{_(one.limit.text)}.", _(one.limit.note), _source(one.limit.source)]
    if not answer.has_composition_limit:
        lines.append(_(NO_LIMIT_ON_FILE))
    if any(one.part is Part.OIL for one in answer.parts):
        lines += [_(LIMONENE_NOTE), _source(LIMONENE_SOURCE)]
    lines.append(
        _("“Near” starts at {percent} % of a limit: our own choice. Under a limit is no clearance.").format(
            percent=show_number(Fraction(str(100 * NEAR_SHARE)), 0)
        )
    )
    return reply(_("{name}: the limits and their sources").format(name=answer.view.name), *lines)


def _source(source: Source) -> str:
    text = _("Source: {source} ({how})").format(source=_(source.title), how=_(source.how_known))
    if source.seen is not None:
        text += _(", seen {day}").format(day=show_full_day(source.seen))
    return text + "."
