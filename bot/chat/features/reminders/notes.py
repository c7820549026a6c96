"""Commands for notes: leave one, show the open ones, and tick one."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import UTC, date, datetime

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.coming import coming_day
from bot.chat.dialogue.inputs.shared_slots import NUMBER_SLOT, undo_button
from bot.chat.dialogue.log_words import LogWords, Retold
from bot.chat.dialogue.slots import Given, Question, Slot, columns, plain
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.reminders.reminder_words import about_words, planned_line, short
from bot.chat.features.reminders.today import today_reply
from bot.chat.grammar.moments import split_day
from bot.chat.i18n.language import _, ngettext, show_day
from bot.chat.reply.message import Button, Reply, reply
from bot.trade.words import N_
from bot.work.log.chain import State
from bot.work.reminders import own

_MOST_SHOWN = 8


@dataclass(frozen=True, kw_only=True)
class NoteArguments(Arguments):
    """The words of a note with its day."""

    reminder: tuple[str, date]


@dataclass(frozen=True, kw_only=True)
class NotesArguments(Arguments):
    """Words of the notes to show; None for all open ones."""

    about: str | None = None


@dataclass(frozen=True, kw_only=True)
class TickArguments(Arguments):
    """A note."""

    number: int


def _accept_note(turn: Turn, given: Given, value: str) -> tuple[str, date]:
    day, text = split_day(value, turn.vocabulary)
    if not text:
        raise Say(reply(_("What should the note say?"), _("for tomorrow: sprayer two drips")))
    return text, turn.context.today if day is None else coming_day(turn, day)


def _ask_note(turn: Turn, given: Given) -> Question:
    return Question(_("What should the note say?"), hint=_("for tomorrow: sprayer two drips"))


def _note(turn: Turn, arguments: NoteArguments) -> Reply:
    text, day = arguments.reminder
    own.note(turn.context, text, day)
    first = _("Noted for {day}: {text}").format(day=show_day(day), text=text)
    return reply(
        first,
        _("It shows under today until somebody ticks it."),
        buttons=((Button(_("Today"), "today"), undo_button(turn)),),
    )


def _notes(turn: Turn, arguments: NotesArguments) -> Reply:
    known = [one for one in own.listed(turn.context) if one.kind == own.NOTE]
    leave = Button(_("Leave a note"), "note")
    if not known:
        return reply(_("No notes are open."), buttons=((leave,),))
    shown = about_words(known, arguments.about or "") or known
    first = ngettext("{count} note is open", "{count} notes are open", len(known)).format(count=len(known))
    if arguments.about:
        first = _("Is it done? Then tick it off.")
    lines = [planned_line(one) for one in shown[:_MOST_SHOWN]]
    if len(shown) > _MOST_SHOWN:
        lines.append(_("and {count} more").format(count=len(shown) - _MOST_SHOWN))
    taps = ((Button(f"✓ {short(one.text)}", f"tick {one.id}"),) for one in shown[:_MOST_SHOWN])
    return reply(first, "\n".join(lines), buttons=(*taps, (leave,)))


def _tick(turn: Turn, arguments: TickArguments) -> Reply:
    ticked = own.tick(turn.context, arguments.number)
    first = _("Done: {what}").format(what=ticked.text)
    return today_reply(turn.context, first, undo_button(turn), edits=turn.message.tapped is not None)


def _ask_note_done(turn: Turn, given: Given) -> Question:
    open_notes = own.notes(turn.context, turn.context.today)
    if not open_notes:
        raise Say(reply(_("No notes are open."), buttons=((Button(_("Leave a note"), "note"),),)))
    choices = [(short(one.text), str(one.id)) for one in open_notes[:_MOST_SHOWN]]
    return Question(_("Which note is done?"), columns(choices, 1), hint=_("its number"))


def _retold(turn: Turn, found: State) -> Retold:
    day = turn.context.bar.day_of(datetime.fromtimestamp(found.details["after"][1], UTC))
    return Retold("note", ({"day": f"{day.isoformat()}:", "reminder": str(found.details["text"])},))


COMMANDS = (
    Command(
        "note",
        N_("leave a note that today shows"),
        _note,
        words=("add a note", "leave a note", "note for", "note:", "note to self", "note to self:"),
        examples=(N_("note for tomorrow: sprayer two drips"),),
        slots=(Slot("reminder", _accept_note, _ask_note),),
        writes=True,
        wishes=(Wish("note", ("{line}",)),),
    ),
    Command(
        "notes",
        N_("the open notes"),
        _notes,
        words=(
            *("open notes", "all notes", "show notes", "show the notes", "my notes", "list notes"),
            *("notes for tonight", "notes for today"),
        ),
        slots=(Slot("about", plain(str)),),
    ),
    Command(
        "tick",
        N_("mark a note as done"),
        _tick,
        slots=(replace(NUMBER_SLOT, ask=_ask_note_done),),
        writes=True,
    ),
)

LOG_WORDS = (
    LogWords("note", N_("left a note: {text}"), N_("note: {text}"), retold=_retold),
    LogWords("tick", N_("ticked a note: {text}"), N_("ticked note: {text}")),
)
