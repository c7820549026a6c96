"""Commands that answer reminders: later, or done."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime, time, timedelta

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.shared_slots import NUMBER_SLOT, undo_button
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.slots import Slot, plain
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.grammar.syntax import Duration
from bot.chat.i18n.language import _, show_day, show_moment
from bot.chat.reply.message import Button, Reply, Text, reply
from bot.trade.words import N_
from bot.work.fruit import waste
from bot.work.log.history import LogLine
from bot.work.reminders import nights, planning


@dataclass(frozen=True, kw_only=True)
class LaterArguments(Arguments):
    """A reminder, and a delay or the time of day until which it waits."""

    number: int
    duration: Duration | None = None
    moment: time | None = None


@dataclass(frozen=True, kw_only=True)
class DoneArguments(Arguments):
    """A reminder."""

    number: int


def _later(turn: Turn, arguments: LaterArguments) -> Reply:
    moment, duration = arguments.moment, arguments.duration
    if moment is not None:
        until = planning.snooze_until(turn.context, arguments.number, moment.hour * 60 + moment.minute)
        return _again(turn, until)
    if duration is None or not 0 < duration.hours <= 24 * 60:
        raise Say(Reply((Text(_("Later by up to 60 days, such as: 2 hours"), strong=True),)))
    until = planning.snooze(turn.context, arguments.number, timedelta(hours=float(duration.hours)))
    return _again(turn, until)


def _again(turn: Turn, until: datetime) -> Reply:
    said = _("I will remind you again {when}.").format(when=show_moment(until))
    return Reply((Text(said, strong=True),), edits=turn.message.tapped is not None)


def _done(turn: Turn, arguments: DoneArguments) -> Reply:
    return _marked(turn, arguments.number)


def _nothing(turn: Turn, arguments: Arguments) -> Reply:
    asked = nights.asked_tonight(turn.context)
    if asked is not None:
        return _marked(turn, asked)
    if waste.is_logged(turn.context, turn.context.today):
        text = _("Waste of tonight is in the log: undo that first.")
        raise Say(reply(text, buttons=((Button(_("Log"), "log"), Button(_("Today"), "today")),)))
    return _without_waste(turn) if nights.unasked(turn.context) else reply(_("That was already done."))


def _without_waste(turn: Turn) -> Reply:
    said, edits = _("Noted: no waste tonight."), turn.message.tapped is not None
    return Reply((Text(said, strong=True),), ((undo_button(turn),),), edits=edits)


def _marked(turn: Turn, number: int) -> Reply:
    kind = nights.done(turn.context, number)
    if kind == planning.CLOSE:
        return _without_waste(turn)
    said = _("Thanks, {name}: done.").format(name=turn.context.name)
    if kind is None:
        said = _("That was already done.")
    return Reply((Text(said, strong=True),), edits=turn.message.tapped is not None)


def _night_values(line: LogLine, units: str) -> dict[str, str]:
    return {"day": show_day(date.fromisoformat(line.details["day"]))}


COMMANDS = (
    Command(
        "later",
        N_("be reminded again later"),
        _later,
        slots=(NUMBER_SLOT, Slot("duration", plain(Duration)), Slot("moment", plain(time))),
        writes=True,
    ),
    Command("done", N_("mark a reminder done"), _done, slots=(NUMBER_SLOT,), writes=True),
    Command(
        "nothing tonight",
        N_("say at close that nothing was thrown out"),
        _nothing,
        words=(
            *("nothing thrown out", "nothing wasted", "no waste"),
            *("nothing thrown out tonight", "nothing wasted tonight", "no waste tonight"),
        ),
        writes=True,
        wishes=(Wish("nothing"),),
    ),
)

LOG_WORDS = (LogWords("no waste", N_("no waste on {day}"), N_("no waste on {day}"), values=_night_values),)
