"""Word what was served in some days: the drinks counted, and the events apart from them."""

from __future__ import annotations

from datetime import date

from bot.chat.dialogue.turn import Turn
from bot.chat.features.spray.drinks import counted_name
from bot.chat.i18n.language import _, ngettext, show_day, show_number
from bot.chat.reply.units import show_ml
from bot.work.events import events
from bot.work.spray import drinks
from bot.work.spray.drinks import Subject

_MOST_SHOWN = 4


def service_lines(turn: Turn, first: date, last: date) -> list[str]:
    """Say the drinks counted from first to last on usual nights, and what each event used."""
    apart = events.days(turn.context)
    counted = [one for one in drinks.days(turn.context, first, last) if one.day not in apart]
    lines = []
    whole = [one for one in counted if one.is_whole]
    if whole:
        text = ngettext(
            "Drinks counted: {drinks} on {count} night",
            "Drinks counted: {drinks} on {count} nights",
            len(whole),
        )
        drinks_ = show_number(sum(one.drinks for one in whole), 0)
        lines.append(text.format(drinks=drinks_, count=len(whole)))
    sums: dict[Subject, int] = {}
    names: dict[Subject, str] = {}
    for one in counted:
        if not one.is_whole:
            sums[one.subject] = sums.get(one.subject, 0) + one.drinks
            names[one.subject] = counted_name(turn, one)
    if sums:
        most = sorted(sums, key=lambda subject: -sums[subject])
        listed = [f"{names[one]} {show_number(sums[one], 0)}" for one in most[:_MOST_SHOWN]]
        if len(most) > _MOST_SHOWN:
            listed.append(_("and {count} more").format(count=len(most) - _MOST_SHOWN))
        lines.append(_("Drinks by kind: {drinks}").format(drinks=", ".join(listed)))
    return lines + event_lines(turn, first, last)


def event_lines(turn: Turn, first: date, last: date) -> list[str]:
    """Say what each event of these days used, apart from usual nights."""
    units, lines = turn.context.bar.units, []
    for one in reversed(events.listed(turn.context)):
        if not (first <= one.asked.day <= last and one.asked.day <= turn.context.today):
            continue
        used = ", ".join(
            f"{part.formula.name} {show_ml(one.back[part.formula.id].used_ml, units)}"
            for part in one.parts
            if part.formula.id in one.back
        )
        text = _("Apart, the event on {day}: {guests} guests, used {amounts}")
        if not used:
            text = _("Apart, the event on {day}: {guests} guests; what came back is not noted")
        guests = show_number(one.asked.guests, 0)
        lines.append(text.format(day=show_day(one.asked.day), guests=guests, amounts=used))
    return lines
