"""Wording of the evidence for a plan and of its interval."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from fractions import Fraction

from bot.chat.i18n.language import _, ngettext, show_day, show_number
from bot.chat.reply.units import show_ml, show_range
from bot.work.planning.event_stock import EventPlan
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
    """Say which plans rest on the stated figure alone or on less than a week, and what they leave out."""
    nights = sorted({night for one in plans for night in one.evidence.event_nights})
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
    if nights:
        lines.append(event_nights(nights))
    return lines


def _days(evidence: Evidence) -> float:
    bottles = evidence.enough_bottles
    return len(evidence.nights) + (0 if bottles is None else bottles.days)


def left_out(evidence: Evidence) -> list[str]:
    """Say which entries do not count for the use of a formula, and why."""
    lines = [_doubt(one) for one in evidence.doubts]
    hours = int(SHORTEST_USE.total_seconds() // 3600)
    lines += [
        _("Batch {number} was empty within {hours} hours: not counted.").format(number=number, hours=hours)
        for number in evidence.too_quick
    ]
    lines = lines[-_MOST_LEFT_OUT:]
    if evidence.event_nights:
        lines.append(event_nights(evidence.event_nights))
    if evidence.for_events:
        numbers = ", ".join(str(one) for one in evidence.for_events)
        lines.append(_("Made for an event, so no usual use: batch {numbers}").format(numbers=numbers))
    return lines


def event_nights(days: Sequence[date]) -> str:
    """Say which days are left out because of an event."""
    named = ", ".join(show_day(one) for one in days[-_MOST_LEFT_OUT:])
    return _("An event, so no usual night: {days}").format(days=named)


def for_events(coming: Sequence[EventPlan], units: str, formula: int | None = None) -> list[str]:
    """Say what to make for coming events and what of the stock is kept for them, of one formula or of all."""
    lines = []
    for one in coming:
        day = show_day(one.event.asked.day)
        parts = [part for part in one.parts if formula in {None, part.part.formula.id}]
        made = ", ".join(
            f"{part.part.formula.name} {show_ml(part.make_ml, units)}"
            for part in parts
            if part in one.to_make
        )
        kept = ", ".join(
            _("{ml} of batch {batch}").format(ml=show_ml(share.ml, units), batch=share.batch)
            for part in parts
            for share in part.batches
        )
        if made:
            lines.append(_("To make for the event on {day}: {amounts}").format(day=day, amounts=made))
        if kept:
            lines.append(_("Kept for the event on {day}: {amounts}").format(day=day, amounts=kept))
    return lines


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
