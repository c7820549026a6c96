"""Commands for own reminders: write them, list what is planned, change and stop."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import datetime

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.coming import lacks_hour, other_half, when_of
from bot.chat.dialogue.inputs.shared_slots import NUMBER_SLOT, undo_button
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.slots import Given, Question, Slot, columns, plain, said
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.reminders.reminder_words import (
    about_words,
    count_words,
    logged_subject,
    planned_line,
    short,
    subject_words,
    when_words,
)
from bot.chat.grammar.moments import split_moment
from bot.chat.i18n.language import _, show_moment
from bot.chat.reply.message import Button, Reply, Text, reply
from bot.trade.days import local_time
from bot.trade.words import N_
from bot.work.people import team
from bot.work.reminders import own
from bot.work.reminders.own import Planned, When

_MOST_SHOWN = 8
_EARLY_EVENING = 18  # o'clock: until then a reminder may be wanted at it


@dataclass(frozen=True, slots=True)
class Wanted:
    """A reminder as said: its words, its time, and the person it is for if not oneself.

    `other` is the same hour in the other half of the day, where the words left open which one is meant.
    """

    text: str
    when: When | None
    person: int | None = None
    other: datetime | None = None


def _accept_reminder(turn: Turn, given: Given, value: str) -> Wanted:
    person, text = _person_named(turn, value)
    moment, rest = split_moment(text, turn.vocabulary)
    if not rest:
        raise Say(reply(_("What should I remind you of?"), _such_as()))
    if moment.is_empty or lacks_hour(turn, moment):
        return Wanted(rest, None, person)
    when = when_of(turn, moment)
    return Wanted(rest, when, person, other_half(turn, moment, when))


def _person_named(turn: Turn, text: str) -> tuple[int | None, str]:
    """Return the member whose name begins a text, and the rest of it."""
    for one in team.team(turn.context):
        if text.casefold().startswith(f"{one.name.casefold()} "):
            return one.person_id, text[len(one.name) :].strip()
    return None, text


def _such_as() -> str:
    return _("Such as: {example}").format(example=_("remind me tomorrow 16:00 order limes"))


def _ask_reminder(turn: Turn, given: Given) -> Question:
    return Question(_("What should I remind you of?"), hint=_("order limes"))


def _ask_when(turn: Turn, given: Given) -> Question:
    at_six = local_time(turn.context.now, turn.context.bar.zone).hour < _EARLY_EVENING
    return Question(
        _("When?"),
        columns(
            [
                (_("In an hour"), _("in 1 hour")),
                (_("Today 18:00"), _("today 18:00")) if at_six else (_("In 3 hours"), _("in 3 hours")),
                (_("Tomorrow 16:00"), _("tomorrow 16:00")),
                (_("Every Monday 15:00"), _("every Monday 15:00")),
            ],
            2,
        ),
        hint=_("tomorrow 16:00"),
    )


def _accept_when(turn: Turn, given: Given, value: str) -> When:
    moment, rest = split_moment(f"{value}:00" if value.isdecimal() else value, turn.vocabulary)
    if rest or moment.is_empty:
        raise Say(reply(_("I can't read a time in “{text}”.").format(text=value[:40]), _such_as()))
    return when_of(turn, moment)


def _wants_when(turn: Turn, given: Given) -> bool:
    return _REMINDER in given and given[_REMINDER].when is None


_REMINDER = Slot("reminder", _accept_reminder, _ask_reminder)
_WHEN = Slot("when", _accept_when, _ask_when, _wants_when)


@dataclass(frozen=True, kw_only=True)
class RemindArguments(Arguments):
    """What to remind of, when, and whether the whole team is reminded."""

    reminder: Wanted
    when: When | None = None
    team: bool = False


@dataclass(frozen=True, kw_only=True)
class NumberArguments(Arguments):
    """A reminder; None for all of them."""

    number: int | None = None


@dataclass(frozen=True, kw_only=True)
class RemindersArguments(NumberArguments):
    """A reminder by number, or those that some words are about."""

    about: str | None = None


@dataclass(frozen=True, kw_only=True)
class ChangeArguments(Arguments):
    """A reminder and its new time."""

    number: int
    when: When


def _remind(turn: Turn, arguments: RemindArguments) -> Reply:
    wanted = arguments.reminder
    when = wanted.when or arguments.when
    assert when is not None  # noqa: S101 - it was asked for
    person = None if arguments.team else wanted.person or turn.context.person_id
    number = own.remind(turn.context, wanted.text, when, person)
    planned = own.get(turn.context, number)
    who = _("I will remind you {when}: {what}")
    if arguments.team:
        who = _("I will remind the team {when}: {what}")
    elif person != turn.context.person_id:
        who = _("I will remind {name} {when}: {what}")
    first = who.format(name=planned.person, when=when_words(when), what=wanted.text)
    rows: list[tuple[Button, ...]] = [
        (Button(_("Other time"), f"change reminder {number}"), undo_button(turn))
    ]
    if wanted.other is not None:
        rows.insert(0, (_other_half_button(turn, number, wanted.other),))
    return reply(first, buttons=tuple(rows))


def _other_half_button(turn: Turn, number: int, other: datetime) -> Button:
    bar = turn.context.bar
    day, clock = bar.day_of(other), local_time(other, bar.zone)
    return Button(show_moment(other), f"change reminder {number} {day.isoformat()} {clock:%H:%M}")


def _reminders(turn: Turn, arguments: RemindersArguments) -> Reply:
    if arguments.number is not None:
        return _card(turn, own.get(turn.context, arguments.number))
    known = own.listed(turn.context)
    meant = about_words(known, arguments.about or "")
    if len(meant) == 1:
        return _card(turn, meant[0])
    known = meant or known
    if not known:
        return reply(_("No reminders are planned."), _such_as(), buttons=((Button(_("Add one"), "remind"),),))
    shown = known[:_MOST_SHOWN]
    lines = [planned_line(one) for one in shown]
    if len(known) > len(shown):
        lines.append(_("and {count} more").format(count=len(known) - len(shown)))
    buttons = [Button(short(subject_words(one)), f"reminders {one.id}") for one in shown]
    rows = [tuple(buttons[at : at + 2]) for at in range(0, len(buttons), 2)]
    return Reply(
        (
            Text(count_words(len(known)), strong=True),
            Text("\n".join(lines)),
            Text(_("Tap one to change or stop it.")),
        ),
        (*rows, (Button(_("Add one"), "remind"),)),
        edits=turn.message.tapped is not None,
    )


_SET_BY = {"close": "bar close reminder", own.MORNING: "bar morning message"}


def _card(turn: Turn, one: Planned) -> Reply:
    to = _("For {name}.").format(name=one.person) if one.person else _("For the team.")
    every = Button(_("All reminders"), "reminders")
    if one.kind in _SET_BY:
        row: tuple[Button, ...] = (Button(_("Change it"), _SET_BY[one.kind]), every)
    elif one.kind == own.NOTE:
        row = (Button(_("Done"), f"tick {one.id}"), Button(_("Stop it"), f"stop reminder {one.id}"), every)
    else:
        row = (
            Button(_("Other time"), f"change reminder {one.id}"),
            Button(_("Stop it"), f"stop reminder {one.id}"),
            every,
        )
    return Reply(
        (Text(planned_line(one), strong=True), Text(to)), (row,), edits=turn.message.tapped is not None
    )


def _change(turn: Turn, arguments: ChangeArguments) -> Reply:
    changed = own.change(turn.context, arguments.number, arguments.when)
    first = _("Moved to {when}: {what}").format(when=when_words(changed), what=subject_words(changed))
    return _changed(turn, first)


def _stop(turn: Turn, arguments: NumberArguments) -> Reply:
    stopped = own.stop(turn.context, arguments.number or 0)
    return _changed(turn, _("Stopped: {what}").format(what=subject_words(stopped)))


def _changed(turn: Turn, first: str) -> Reply:
    row = (Button(_("All reminders"), "reminders"), undo_button(turn))
    return Reply((Text(first, strong=True),), (row,), edits=turn.message.tapped is not None)


def _ask_number(turn: Turn, given: Given) -> Question:
    known = own.listed(turn.context)
    if not known:
        add = Button(_("Add one"), "remind")
        raise Say(reply(_("No reminders are planned."), _such_as(), buttons=((add,),)))
    choices = [(short(subject_words(one)), str(one.id)) for one in known[:_MOST_SHOWN]]
    return Question(_("Which reminder?"), columns(choices, 1), hint=_("its number"))


_ASKED_NUMBER = replace(NUMBER_SLOT, ask=_ask_number)


COMMANDS = (
    Command(
        "remind",
        N_("remind yourself or the team of something"),
        _remind,
        words=(
            *("remind me to", "remind me", "remind us to", "can you remind me to", "can you remind me"),
            *("please remind me to", "set a reminder to", "set a reminder", "set reminder", "new reminder"),
            *("reminder", "reminder:", "reminder to"),
            *("don't let me forget to", "dont let me forget to"),
        ),
        examples=(
            N_("remind me tomorrow 16:00 order limes"),
            N_("remind the team every Monday 15:00 count fruit"),
        ),
        slots=(_REMINDER, Slot("team", said), _WHEN),
        writes=True,
        menu=62,
        wishes=(Wish("remind"),),
    ),
    Command(
        "reminders",
        N_("what I will remind you of"),
        _reminders,
        words=(
            *("my reminders", "all reminders", "list reminders", "show reminders", "snooze"),
            *(
                "list my reminders",
                "show my reminders",
                "what reminders do i have",
                "which reminders do i have",
            ),
            *("what reminders are there", "do i have reminders", "any reminders"),
        ),
        slots=(NUMBER_SLOT, Slot("about", plain(str))),
        menu=63,
    ),
    Command(
        "change reminder",
        N_("move a reminder to another time"),
        _change,
        words=("move reminder",),
        slots=(_ASKED_NUMBER, Slot("when", _accept_when, _ask_when)),
        writes=True,
    ),
    Command(
        "stop reminder",
        N_("stop a reminder"),
        _stop,
        words=("cancel reminder", "delete reminder", "remove reminder"),
        slots=(_ASKED_NUMBER,),
        writes=True,
    ),
)

LOG_WORDS = (
    LogWords("remind", N_("planned a reminder: {text}"), N_("reminder: {text}")),
    LogWords(
        "change reminder", N_("moved a reminder: {text}"), N_("moved reminder: {text}"), values=logged_subject
    ),
    LogWords(
        "stop reminder",
        N_("stopped a reminder: {text}"),
        N_("stopped reminder: {text}"),
        values=logged_subject,
    ),
)
