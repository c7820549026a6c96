"""Commands for events: plan one, list them, note what came back."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.coming import coming_day
from bot.chat.dialogue.inputs.shared_slots import NUMBER_SLOT, accept_formula, quantity_in_ml, undo_button
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.slots import Given, Question, Slot, columns
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.events.event_words import event_reply, reminder_texts, result_lines
from bot.chat.features.spray.drinks import accept_subject
from bot.chat.grammar.lexer import Noun
from bot.chat.grammar.syntax import Amount, Day, Named
from bot.chat.i18n.language import _, show_day
from bot.chat.reply.message import Button, Reply, reply
from bot.trade.words import N_
from bot.work.events import events
from bot.work.events.events import Asked
from bot.work.formulas import formulas
from bot.work.log.history import LogLine
from bot.work.menu import menu

_MOST_SHOWN = 8


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


@dataclass(frozen=True, kw_only=True)
class EventArguments(Arguments):
    """The day, guests, drinks for each, and the drinks or preparations."""

    guests: int
    day: date
    each: Fraction
    event_subjects: tuple[Noun, ...]


@dataclass(frozen=True, kw_only=True)
class EventsArguments(Arguments):
    """An event; None for all."""

    number: int | None = None


@dataclass(frozen=True, kw_only=True)
class BackArguments(Arguments):
    """An event, and the mL of each formula that came back."""

    number: int
    back: dict[int, Fraction]


def _event(turn: Turn, arguments: EventArguments) -> Reply:
    nouns = arguments.event_subjects
    asked = Asked(
        arguments.day,
        arguments.guests,
        arguments.each,
        tuple(int(one.id) for one in nouns if one.kind == "FORMULA"),
        tuple(int(one.id) for one in nouns if one.kind == "DRINK"),
    )
    found = events.plan_event(turn.context, asked)
    events.remind(turn.context, found.id, reminder_texts(found))
    return event_reply(turn, found, undo_button(turn))


def _events(turn: Turn, arguments: EventsArguments) -> Reply:
    if arguments.number is not None:
        return event_reply(turn, events.get(turn.context, arguments.number))
    known = events.listed(turn.context)
    if not known:
        return reply(
            _("No events are planned."),
            _("Such as: {example}").format(example=_("event 300 guests 5 Dec, 2 drinks each, orange mist")),
            buttons=((Button(_("Plan an event"), "event"),),),
        )
    rows = tuple(
        (
            Button(
                _("{day}: {count} guests").format(day=show_day(one.asked.day), count=one.asked.guests),
                f"events {one.id}",
            ),
        )
        for one in known[:_MOST_SHOWN]
    )
    return reply(_("Events"), buttons=(*rows, (Button(_("Plan an event"), "event"),)))


def _ask_number(turn: Turn, given: Given) -> Question:
    known = events.listed(turn.context)
    if not known:
        raise Say(reply(_("No events are planned."), buttons=((Button(_("Plan an event"), "event"),),)))
    choices = [(show_day(one.asked.day), str(one.id)) for one in known[:_MOST_SHOWN]]
    return Question(_("Which event?"), columns(choices, 2), hint="1")


def _accept_back(turn: Turn, given: Given, value: tuple[Amount | Named, ...]) -> dict[int, Fraction]:
    found: dict[int, Fraction] = {}
    for amount, named in zip(value[::2], value[1::2], strict=True):
        if not isinstance(amount, Amount) or isinstance(named, Amount):
            raise Say(reply(_("Such as: {example}").format(example="120 ml orange mist")))
        found[accept_formula(turn, given, named).id] = quantity_in_ml(turn, amount)
    return found


def _ask_back(turn: Turn, given: Given) -> Question:
    parts = events.get(turn.context, given[_NUMBER]).parts
    text = _("What came back?")
    hint = ", ".join(f"120 ml {one.formula.name}" for one in parts[:2])
    return Question(text, hint=hint)


def _back(turn: Turn, arguments: BackArguments) -> Reply:
    found = events.note_back(turn.context, arguments.number, arguments.back)
    first = _("Noted for {day}: what came back.").format(day=show_day(found.asked.day))
    row = (Button(_("Show the event"), f"events {found.id}"), undo_button(turn))
    return reply(first, *result_lines(turn, found), buttons=(row,))


def _values(line: LogLine, units: str) -> dict[str, str]:
    day = line.details.get("day")
    return {"day": show_day(date.fromisoformat(day)) if day else ""}


_NUMBER = Slot("number", NUMBER_SLOT.accept, _ask_number)

COMMANDS = (
    Command(
        "event",
        N_("plan an event: amounts, days, shopping, packing list"),
        _event,
        words=("plan event", "plan an event", "new event", "party", "wedding", "catering"),
        examples=(N_("event 300 guests 5 Dec, 2 drinks each, orange mist and grapefruit mist"),),
        slots=(
            Slot("guests", _accept_guests, _ask_guests, rule="guests_answer_slot"),
            Slot("day", _accept_day, _ask_day),
            Slot("each", _accept_each, _ask_each, rule="each_answer_slot"),
            Slot("event_subjects", _accept_subjects, _ask_subjects),
        ),
        writes=True,
        menu=59,
        wishes=(Wish("event"),),
    ),
    Command(
        "events",
        N_("the events planned"),
        _events,
        words=("all events", "show event", "packing list"),
        slots=(NUMBER_SLOT,),
    ),
    Command(
        "came back",
        N_("note what came back from an event"),
        _back,
        words=("back from event", "brought back"),
        examples=(N_("came back 1 120 ml orange mist"),),
        slots=(_NUMBER, Slot("back", _accept_back, _ask_back)),
        writes=True,
    ),
)

LOG_WORDS = (
    LogWords("event", N_("planned an event, {guests} guests on {day}"), N_("event on {day}"), values=_values),
    LogWords(
        "event back", N_("noted what came back from event {event}"), N_("what came back from event {event}")
    ),
)
