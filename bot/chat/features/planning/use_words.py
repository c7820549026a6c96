"""Wording of the evidence for a plan and of its interval."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from bot.chat.i18n.language import _, ngettext, show_day, show_number
from bot.chat.reply.units import show_ml, show_range
from bot.work.planning.plan import FormulaPlan
from bot.work.planning.usage import FEWEST_BOTTLES, SHORTEST_USE, Doubt, Evidence, Said

# Fewer nights do not cover every weekday.
_WEEK = 7
_MOST_LEFT_OUT = 3


def how_sure(one: FormulaPlan, units: str) -> str:
    """Return the evidence for the use of a formula, with its interval once anything was counted."""
    evidence = one.evidence
    counted = _counted(evidence)
    if one.use is None or not counted:
        return _("From what you said: {said}.").format(said=_said(evidence.said)) if evidence.said else ""
    low, high = (show_ml(Fraction(f"{end:.2g}"), units) for end in (one.use.a_day.low, one.use.a_day.high))
    parts = [_("what you said ({said})").format(said=_said(evidence.said))] if evidence.said else []
    return _("From {what}: 9 in 10 between {low} and {high} a day.").format(
        what=_(" and ").join([*parts, *counted]), low=low, high=high
    )


def _said(said: Said) -> str:
    text = _("{count} drinks a week").format(count=show_range(*said.drinks))
    if said.shared_by == 1:
        return text
    return _("{drinks}, shared by {count} formulas").format(drinks=text, count=said.shared_by)


def _counted(evidence: Evidence) -> list[str]:
    nights, bottles = len(evidence.nights), evidence.enough_bottles
    parts = []
    if nights:
        parts.append(ngettext("{count} night counted", "{count} nights counted", nights).format(count=nights))
    if bottles is not None:
        parts.append(_("{count} batches used up").format(count=bottles.bottles))
    return parts


def how_sure_all(plans: Sequence[FormulaPlan]) -> list[str]:
    """Return the plans that rest on the stated figure alone, on less than a week, or leave entries out."""
    said = [one.view.name for one in plans if one.use is not None and not _counted(one.evidence)]
    few = [one.view.name for one in plans if _counted(one.evidence) and _days(one.evidence) < _WEEK]
    doubts = [one.view.name for one in plans if one.evidence.doubts]
    lines = []
    if said:
        lines.append(_("From what you said, nothing counted yet: {names}").format(names=", ".join(said)))
    if few:
        lines.append(_("Less than a week counted, so a rough guess: {names}").format(names=", ".join(few)))
    if doubts:
        lines.append(_("Far more logged than you said, not counted: {names}").format(names=", ".join(doubts)))
    return lines


def _days(evidence: Evidence) -> float:
    bottles = evidence.enough_bottles
    return len(evidence.nights) + (0 if bottles is None else bottles.days)


def left_out(evidence: Evidence) -> list[str]:
    """Return the plans that have only the stated figure, less than a week of use, or omitted entries."""
    lines = [_doubt(one) for one in evidence.doubts]
    hours = int(SHORTEST_USE.total_seconds() // 3600)
    lines += [
        _("Batch {number} was empty within {hours} hours: not counted.").format(number=number, hours=hours)
        for number in evidence.too_quick
    ]
    return lines[-_MOST_LEFT_OUT:]


def _doubt(one: Doubt) -> str:
    times = show_number(Fraction(round(one.times)))
    if one.night is not None:
        return _("{day}, {count} drinks: {times} times what you said, not counted.").format(
            day=show_day(one.night.day), count=show_number(one.night.drinks), times=times
        )
    return _("Batch {number}: used {times} times as fast as you said, not counted.").format(
        number=one.batch, times=times
    )


def how_to_tell(one: FormulaPlan) -> list[str]:
    """Return the ways to tell the bot the use of a formula."""
    if one.view.sprays is None:
        bottles = one.evidence.bottles
        return [
            _("Tap Used up when a batch is empty: {count} of {needed} so far.").format(
                count=0 if bottles is None else bottles.bottles, needed=FEWEST_BOTTLES
            )
        ]
    return [_("Say it: bar drinks a week 300. Or count a night: drinks 60 {name}").format(name=one.view.name)]
