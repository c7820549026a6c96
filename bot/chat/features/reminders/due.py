"""Word due reminders."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime
from fractions import Fraction

from bot.chat.features.batches.batch_card import clarity_buttons
from bot.chat.features.fruit.peeled import ends
from bot.chat.features.reminders.today import today_reply
from bot.chat.i18n.language import _, ngettext, show_day, show_full_day, show_moment, show_number, speaking
from bot.chat.i18n.languages import ENGLISH
from bot.chat.i18n.locale_choice import bar_tongue, spoken
from bot.chat.i18n.plurals import counted_name
from bot.chat.reply.message import Block, Button, Reply, Text
from bot.chat.reply.units import show_amount, show_ml
from bot.trade.formulas.measures import Dimension
from bot.work.context import Context, Role
from bot.work.reminders.delivery import DueReminder
from bot.work.reminders.own import MORNING, OWN
from bot.work.reminders.planning import low_items
from storage.store import Store
from storage.types import JsonObject

_MOST_LOW = 6


def worded_reminder(due: DueReminder, now: datetime, store: Store) -> Reply:
    """Word a reminder in the recipient's language: the subject, its delay if late, and the buttons.

    The morning message reads the bar; every other one is worded from its own values.
    """
    language = spoken(due.language) or spoken(due.bar.language) or ENGLISH
    with speaking(bar_tongue(due.bar, language, now)):
        if due.kind == MORNING:
            return _morning(due, now, store)
        first, lines, buttons = _WORDS[due.kind](due)
        if due.late_by(now) is not None:
            lines.append(_("Late: this was due {when}.").format(when=show_moment(due.first_due_at)))
        if due.instead:
            lines.append(_("I could not write this in the team’s chat."))
        if due.unsure:
            lines.append(_("(This may be a repeat.)"))
        blocks: tuple[Block, ...] = (Text(first, strong=True), *(Text(line) for line in lines))
        return Reply(blocks, _of_bar(due, buttons), quiet=False)


def _morning(due: DueReminder, now: datetime, store: Store) -> Reply:
    with store.reading() as unit:
        book = unit.bar(due.bar.id)
        context = Context(book, due.bar, 0, "", Role.MANAGER, due.destination.room_id, now, "")
        shown = today_reply(context, edits=False)
    return replace(shown, buttons=_of_bar(due, shown.buttons), quiet=False)


def _own(due: DueReminder) -> _Worded:
    first = str(due.details["text"])
    lines = [] if due.destination.private and not due.instead else [_("For {name}.").format(name=due.name)]
    snooze = _snooze(due, (_("In an hour"), "1 hour"), (_("Tomorrow"), "1 day"))
    rows: list[tuple[Button, ...]] = [(Button(_("Done"), f"done {due.id}"), *snooze)]
    if due.details.get("days"):
        rows.append((Button(_("Stop it"), f"stop reminder {due.id}"),))
    return first, lines if due.name else [], tuple(rows)


def _of_bar(due: DueReminder, rows: tuple[tuple[Button, ...], ...]) -> tuple[tuple[Button, ...], ...]:
    """Put the bar's number before the lines: the person may be in another bar when they tap."""
    return tuple(tuple(Button(one.label, f"@{due.bar.id} {one.line}") for one in row) for row in rows)


_Worded = tuple[str, list[str], tuple[tuple[Button, ...], ...]]


def _snooze(due: DueReminder, *spans: tuple[str, str]) -> tuple[Button, ...]:
    return tuple(Button(label, f"later {due.id} {span}") for label, span in spans)


def _rested(due: DueReminder) -> _Worded:
    number = due.batch or 0
    first = _("Batch {number}, {name}, has rested. How does it look?").format(number=number, name=due.name)
    lines = [_("{volume}, discard after {day}").format(volume=_volume(due), day=_discard_day(due))]
    snooze = _snooze(due, (_("In 2 hours"), "2 hours"), (_("Tomorrow"), "1 day"))
    if due.to_strain:
        first = _("Batch {number}, {name}, has rested. Strain it: how much comes out?")
        strained = (Button(_("Strained"), f"strained {number}"),)
        return first.format(number=number, name=due.name), lines, (strained, snooze)
    return first, lines, (clarity_buttons(number), snooze)


def _recheck(due: DueReminder) -> _Worded:
    number = due.batch or 0
    if due.details.get("routine"):
        first = _("Batch {number}, {name}: time for another look. How is it?")
    else:
        first = _("Batch {number}, {name}, was not clear. How does it look now?")
    first = first.format(number=number, name=due.name)
    rows = (
        clarity_buttons(number),
        (*_snooze(due, (_("Tomorrow"), "1 day")), Button(_("Discard"), f"discard {number}")),
    )
    return first, [_volume(due)], rows


def _discard(due: DueReminder) -> _Worded:
    number = due.batch or 0
    days = int(due.details.get("days", 0))
    if days:
        first = ngettext(
            "Batch {number}, {name}: discard after {day}, {count} day left.",
            "Batch {number}, {name}: discard after {day}, {count} days left.",
            days,
        ).format(number=number, name=due.name, day=_discard_day(due), count=days)
    else:
        first = _("Batch {number}, {name}: today is its last day.").format(number=number, name=due.name)
    rows = (
        (Button(_("Used up"), f"used {number}"), Button(_("Discard"), f"discard {number}")),
        (*_snooze(due, (_("Tomorrow"), "1 day")), Button(_("Done"), f"done {due.id}")),
    )
    return first, [_volume(due)], rows


def _close(due: DueReminder) -> _Worded:
    day = date.fromisoformat(due.details["day"])
    first = _("Closing {bar}, {day}: what was thrown out?").format(bar=due.bar.name, day=show_day(day))
    if due.details.get("closer"):
        first = f"{due.details['closer']}: {first}"
    lines = [_("Type it, such as: 6 oranges mouldy, 2 limes. Or tap.")]
    missed = int(due.details.get("missed", 0))
    if missed:
        lines.append(
            ngettext(
                "I didn't ask about {count} earlier night.",
                "I didn't ask about {count} earlier nights.",
                missed,
            ).format(count=missed)
        )
    rows = (
        (Button(_("Log waste"), f"waste {day.isoformat()}"), Button(_("Nothing tonight"), f"done {due.id}")),
        _snooze(due, (_("In half an hour"), "30 min"), (_("At noon"), "12:00")),
    )
    return first, lines, rows


def _low_stock(due: DueReminder) -> _Worded:
    items = low_items(due.details)
    if len(items) > 1:
        return _several_low(due, items)
    (one,) = items
    first = _("{name} runs low: {amount} left, par {par}.").format(**_low_values(due, one))
    number = one["ingredient"]
    rows = (
        (Button(_("Bought"), f"stock bought #{number}"), Button(_("Count it"), f"stock count #{number}")),
        (*_snooze(due, (_("Tomorrow"), "1 day")), Button(_("Done"), f"done {due.id}")),
    )
    return first, [], rows


def _several_low(due: DueReminder, items: list[JsonObject]) -> _Worded:
    first = ngettext("{count} runs low.", "{count} run low.", len(items)).format(count=len(items))
    lines = [
        _("{name}: {amount} left, par {par}").format(**_low_values(due, one)) for one in items[:_MOST_LOW]
    ]
    if len(items) > _MOST_LOW:
        more = len(items) - _MOST_LOW
        lines.append(ngettext("and {count} more", "and {count} more", more).format(count=more))
    rows = (
        (Button(_("Shopping list"), "shopping"), Button(_("All stock"), "stock")),
        (*_snooze(due, (_("Tomorrow"), "1 day")), Button(_("Done"), f"done {due.id}")),
    )
    return first, ["\n".join(lines)], rows


def _low_values(due: DueReminder, one: JsonObject) -> dict[str, str]:
    def shown(which: str) -> str:
        return show_amount(Fraction(one[which]), Dimension(one["dimension"]), due.bar.units)

    return {"name": one["name"], "amount": shown("amount"), "par": shown("par")}


def _peeled(due: DueReminder) -> _Worded:
    count = Fraction(due.details["left"])
    first = _("Peeled: {count} {name} still there, no good after {when}. What happened to them?").format(
        count=show_number(count), name=counted_name(due.name, count), when=show_moment(due.details["lost_at"])
    )
    rows = (*ends(int(due.details["fruit"]), count), _snooze(due, (_("In 2 hours"), "2 hours")))
    return first, [], rows


def _volume(due: DueReminder) -> str:
    return show_ml(due.total_ml, due.bar.units)


def _discard_day(due: DueReminder) -> str:
    return "" if due.discard_on is None else show_full_day(due.discard_on)


def _blocked(due: DueReminder) -> _Worded:
    first = _("{name} has blocked me and gets no messages.").format(name=due.details.get("name", ""))
    lines = [_("Somebody else at {bar} now gets their messages.").format(bar=due.bar.name)]
    return first, lines, ((Button(_("Team"), "team"),),)


def _deletion(due: DueReminder) -> _Worded:
    when = show_moment(due.details["deleted_at"])
    first = _("{bar} will be deleted on {day}, with everything in it.").format(bar=due.bar.name, day=when)
    lines = [_("Its owner can keep it until then. A copy: export. Your own data: export me.")]
    keep = ((Button(_("Keep the bar"), "restore bar"),),) if due.details.get("keeps") else ()
    return first, lines, keep


_WORDS = {
    "deletion": _deletion,
    "blocked": _blocked,
    "rested": _rested,
    "recheck": _recheck,
    "discard": _discard,
    "close": _close,
    "peeled": _peeled,
    "low stock": _low_stock,
    OWN: _own,
}
