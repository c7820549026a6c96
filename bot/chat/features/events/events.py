"""Commands for events: plan one, change or cancel it, list them."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from datetime import date, timedelta
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.examples import example_of
from bot.chat.dialogue.inputs.coming import coming_day
from bot.chat.dialogue.inputs.shared_slots import NUMBER_SLOT, undo_button
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.slots import Given, Question, Slot, columns
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.events.event_words import (
    event_reply,
    listed_reply,
    only_one,
    reminders_of,
    short_name,
    which_event,
)
from bot.chat.features.spray.drinks import accept_subject
from bot.chat.grammar.lexer import Noun
from bot.chat.grammar.syntax import Day, Named
from bot.chat.i18n.language import _, ngettext, show_day, show_number
from bot.chat.reply.message import Button, Reply, reply
from bot.trade.words import N_
from bot.work.errors import NotThereError
from bot.work.events import events
from bot.work.events.events import EventView
from bot.work.events.needs import Asked
from bot.work.formulas import formulas
from bot.work.log.history import LogLine
from bot.work.menu import menu

# -- slots ------------------------------------------------------------------------------------------

_EXAMPLE = N_("event 300 guests 5 Dec, 2 drinks each, grapefruit mist")


def _accept_guests(turn: Turn, given: Given, value: Fraction) -> int:
    if value.denominator != 1 or not 0 < value <= events.MOST_GUESTS:
        raise Say(reply(_("How many guests? A whole number, please.")))
    return int(value)


def _ask_guests(turn: Turn, given: Given) -> Question:
    choices = columns([(str(one), str(one)) for one in (50, 100, 150, 200, 300, 500)], 3)
    return Question(_("How many guests?"), choices, hint="300")


def _accept_day(turn: Turn, given: Given, value: Day) -> date:
    day = coming_day(turn, value)
    if day < turn.context.today:
        raise Say(reply(_("{when} is past.").format(when=show_day(day))))
    return day


def _ask_day(turn: Turn, given: Given) -> Question:
    return Question(_("On which day?"), hint=_("5 Dec"))


def _accept_each(turn: Turn, given: Given, value: Fraction) -> Fraction:
    if not 0 < value <= events.MOST_EACH:
        raise Say(reply(_("How many drinks for each guest? From 1 to 20, please.")))
    return value


def _ask_each(turn: Turn, given: Given) -> Question:
    return Question(
        _("How many drinks for each guest?"), columns([(str(one), str(one)) for one in (1, 2, 3)], 3)
    )


def _accept_subjects(turn: Turn, given: Given, value: Named | tuple[Named, ...]) -> tuple[Noun, ...]:
    nouns = [accept_subject(turn, given, one) for one in (value if isinstance(value, tuple) else (value,))]
    if any(noun.kind == "INGREDIENT" for noun in nouns):
        raise Say(reply(_("Name preparations or drinks of your list, such as: orange mist")))
    return tuple(dict.fromkeys(nouns))


def _ask_subjects(turn: Turn, given: Given) -> Question:
    known = [one.name for one in menu.listed(turn.context)] + [
        one.name for one in formulas.listed(turn.context)
    ]
    return Question(
        _("Which drinks or preparations?"),
        columns([(name, name) for name in known[:8]], 2),
        hint=_("orange mist and grapefruit mist"),
    )


def _only_coming(turn: Turn) -> tuple[str, object] | None:
    return only_one(events.coming(turn.context))


def _ask_coming(turn: Turn, given: Given) -> Question:
    known = events.coming(turn.context)
    if not known:
        raise Say(reply(_("No events are planned."), buttons=((Button(_("Plan an event"), "event"),),)))
    return which_event(known)


def _accept_event(turn: Turn, given: Given, value: Fraction) -> int:
    """Return the event of this number, or the only coming one with so many guests."""
    known = events.listed(turn.context)
    if not any(one.id == value for one in known):
        same = [one.id for one in events.coming(turn.context) if one.asked.guests == value]
        if len(same) == 1:
            return same[0]
    return events.get(turn.context, int(value)).id


def _accept_known(turn: Turn, given: Given, value: Fraction) -> int:
    """Return the event as `_accept_event` does; a number alone may have been meant as guests."""
    try:
        return _accept_event(turn, given, value)
    except NotThereError:
        text = _("There is no event {number}. For a new one: {example}")
        example = _("event {number} guests").format(number=value)
        raise Say(reply(text.format(number=value, example=example))) from None


def _accept_event_on(turn: Turn, given: Given, value: Day) -> int:
    """Return the only event on a day."""
    day = _accept_day(turn, given, value)
    found = [one for one in events.coming(turn.context) if one.asked.day == day]
    if len(found) != 1:
        text = _("Which event?") if found else _("No event is planned on {day}.").format(day=show_day(day))
        rows = ((Button(short_name(one), f"cancel event {one.id}"),) for one in found)
        raise Say(reply(text, buttons=(*rows, (Button(_("Events"), "events"),))))
    return found[0].id


_NUMBER = Slot("number", _accept_event, _ask_coming, only=_only_coming)
_ON_DAY = Slot("day", _accept_event_on)
_NUMBER_UNLESS_DAY = replace(_NUMBER, wanted=lambda turn, given: _ON_DAY not in given)
_CHANGED = Slot("changed", _accept_known)
_GUESTS = Slot("guests", _accept_guests, _ask_guests, rule="guests_answer_slot")
_GUESTS_NOW = Slot("guests_answer", _accept_guests)
_DAY = Slot("day", _accept_day, _ask_day)
_EACH = Slot("each", _accept_each, _ask_each, rule="each_answer_slot")
_SUBJECTS = Slot("event_subjects", _accept_subjects, _ask_subjects)


def _unless_changed(slot: Slot[object]) -> Slot[object]:
    return replace(slot, wanted=lambda turn, given: _CHANGED not in given)


# -- planning ----------------------------------------------------------------------------------------


@dataclass(frozen=True, kw_only=True)
class _AskedArguments(Arguments):
    """The day, guests, drinks for each, and the drinks or preparations."""

    guests: int | None = None
    day: date | None = None
    each: Fraction | None = None
    event_subjects: tuple[Noun, ...] | None = None


@dataclass(frozen=True, kw_only=True)
class EventArguments(_AskedArguments):
    """A new event; or a known one and its new guests."""

    changed: int | None = None
    guests_answer: int | None = None


@dataclass(frozen=True, kw_only=True)
class ChangeEventArguments(_AskedArguments):
    """An event, and what becomes of it."""

    number: int


@dataclass(frozen=True, kw_only=True)
class EventsArguments(Arguments):
    """An event; None for all."""

    number: int | None = None


@dataclass(frozen=True, kw_only=True)
class CancelEventArguments(Arguments):
    """An event, by its number or its day."""

    number: int | None = None
    day: int | None = None


def _event(turn: Turn, arguments: EventArguments) -> Reply:
    if arguments.changed is not None:
        found = events.get(turn.context, arguments.changed)
        if arguments.guests_answer is None:
            return event_reply(turn, found)
        return _changed(turn, found, replace(found.asked, guests=arguments.guests_answer))
    asked = _asked(arguments, Asked(turn.context.today, 1, Fraction(1), (), ()))
    found = events.plan_event(turn.context, asked)
    events.remind(turn.context, found.id, reminders_of(turn, found))
    return event_reply(turn, found, undo_button(turn))


def _asked(arguments: _AskedArguments, before: Asked) -> Asked:
    """Return what is asked now, the rest as before."""
    nouns = arguments.event_subjects
    return Asked(
        arguments.day or before.day,
        arguments.guests or before.guests,
        arguments.each or before.each,
        before.formulas if nouns is None else tuple(int(one.id) for one in nouns if one.kind == "FORMULA"),
        before.drinks if nouns is None else tuple(int(one.id) for one in nouns if one.kind == "DRINK"),
    )


def _changed(turn: Turn, before: EventView, asked: Asked) -> Reply:
    if asked == before.asked:
        return _what_changes(before)
    found = events.change(turn.context, before.id, asked)
    events.remind(turn.context, found.id, reminders_of(turn, found))
    return event_reply(turn, found, undo_button(turn))


def _what_changes(found: EventView) -> Reply:
    """Offer likely changes on buttons, and examples to type."""
    line, asked = f"change event {found.id}", found.asked
    near = (float(f"{asked.guests * times:.2g}") for times in (0.9, 1.1))
    guests = [int(one) for one in near if 1 <= one <= events.MOST_GUESTS and one != asked.guests]
    days = [asked.day + timedelta(days=one) for one in (-1, 1)]
    each = [one for one in (asked.each - 1, asked.each + 1) if 0 < one <= events.MOST_EACH]
    return reply(
        _("What changes? {name}").format(name=short_name(found)),
        _("Such as: {example}").format(
            example=_("change event {number} 280 guests, 6 Dec, 3 drinks each").format(number=found.id)
        ),
        buttons=(
            tuple(Button(_("{count} guests").format(count=one), f"{line} {one} guests") for one in guests),
            tuple(Button(show_day(one), f"{line} {one.isoformat()}") for one in days),
            tuple(
                Button(
                    ngettext("{count} drink each", "{count} drinks each", math.ceil(one)).format(
                        count=show_number(one, 1)
                    ),
                    f"{line} {float(one):g} drinks each",
                )
                for one in each
            ),
            (Button(_("Cancel the event"), f"cancel event {found.id}"),),
        ),
    )


def _change(turn: Turn, arguments: ChangeEventArguments) -> Reply:
    before = events.get(turn.context, arguments.number)
    return _changed(turn, before, _asked(arguments, before.asked))


def _cancel(turn: Turn, arguments: CancelEventArguments) -> Reply:
    number = arguments.number or arguments.day
    assert number is not None  # noqa: S101 - it was asked for
    found = events.cancel(turn.context, number)
    return reply(
        _("Cancelled: {name}").format(name=short_name(found)),
        _("Its reminders are stopped."),
        buttons=((Button(_("Events"), "events"), undo_button(turn)),),
    )


def _events(turn: Turn, arguments: EventsArguments) -> Reply:
    if arguments.number is not None:
        return event_reply(turn, events.get(turn.context, arguments.number))
    known = events.listed(turn.context)
    if not known:
        return reply(
            _("No events are planned."),
            _("Such as: {example}").format(example=example_of(turn, _(_EXAMPLE))),
            buttons=((Button(_("Plan an event"), "event"),),),
        )
    return listed_reply(turn, known)


def _packing_list(turn: Turn, arguments: EventsArguments) -> Reply:
    coming = events.coming(turn.context)
    if arguments.number is None and len(coming) == 1:
        return event_reply(turn, coming[0])
    return _events(turn, arguments)


def _values(line: LogLine, units: str) -> dict[str, str]:
    """Return the day of an event, and its guests after a change."""
    after = line.details.get("after") if line.what == "change event" else None
    said = after if isinstance(after, dict) and "guests" in after else line.details
    day = said.get("day")
    guests = said.get("guests")
    return {
        "day": show_day(date.fromisoformat(day)) if day else "",
        "guests": "" if guests is None else show_number(guests, 0),
    }


COMMANDS = (
    Command(
        "event",
        N_("plan an event: amounts, days, shopping, packing list"),
        _event,
        words=("plan event", "plan an event", "new event", "party", "wedding", "catering"),
        examples=(_EXAMPLE,),
        slots=(
            _CHANGED,
            *(_unless_changed(one) for one in (_GUESTS, _DAY, _EACH, _SUBJECTS)),
            _GUESTS_NOW,
        ),
        writes=True,
        menu=59,
        wishes=(Wish("event"),),
    ),
    Command(
        "change event",
        N_("change the guests, the day or the drinks of an event"),
        _change,
        words=("move event", "move the event", "change the event"),
        examples=(N_("change event 1 280 guests"), N_("move event 1 to 6 Dec")),
        slots=(_NUMBER, *(replace(one, ask=None) for one in (_GUESTS, _DAY, _EACH, _SUBJECTS))),
        writes=True,
        wishes=(Wish("change event"),),
    ),
    Command(
        "cancel event",
        N_("cancel an event and its reminders"),
        _cancel,
        words=("cancel the event", "call off event", "call off the event"),
        examples=(N_("cancel event 1"),),
        slots=(_ON_DAY, _NUMBER_UNLESS_DAY),
        writes=True,
        wishes=(Wish("cancel event"),),
    ),
    Command(
        "events",
        N_("the events planned"),
        _events,
        words=("all events", "show event"),
        slots=(NUMBER_SLOT,),
        wishes=(Wish("events"),),
    ),
    Command(
        "packing list",
        N_("what to take to an event"),
        _packing_list,
        words=("what to pack",),
        slots=(NUMBER_SLOT,),
        wishes=(Wish("packing list"),),
    ),
)

LOG_WORDS = (
    LogWords("event", N_("planned an event, {guests} guests on {day}"), N_("event on {day}"), values=_values),
    LogWords(
        "change event",
        N_("changed event {event}: {guests} guests on {day}"),
        N_("change of event {event}"),
        values=_values,
    ),
    LogWords(
        "cancel event",
        N_("cancelled the event on {day}, {guests} guests"),
        N_("cancelling of the event on {day}"),
        values=_values,
    ),
)
