"""Commands about the end of the night: who closes, and what is left to do at the end of a shift."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command
from bot.chat.dialogue.inputs.coming import coming_day
from bot.chat.dialogue.inputs.shared_slots import undo_button
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.slots import Given, Slot
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.reminders.reminder_words import closer_words
from bot.chat.grammar.moments import Moment, split_moment
from bot.chat.i18n.keywords import stands_for
from bot.chat.i18n.language import _, show_day, tongue
from bot.chat.reply.message import Button, Reply, reply
from bot.trade.words import N_
from bot.work.fruit import waste
from bot.work.log.history import LogLine
from bot.work.people import team
from bot.work.reminders import own

_NAME_WORDS = 3  # a longer name is a sentence


@dataclass(frozen=True, kw_only=True)
class ClosesArguments(Arguments):
    """The name of who closes; None for the person who says it."""

    name: str | None = None


def _accept_closer(turn: Turn, given: Given, value: str) -> str | None:
    """Return a name without 'tonight', None if nothing else is said; refuse another day and a sentence."""
    moment, name = split_moment(value, turn.vocabulary)
    tonight = moment.day is None or coming_day(turn, moment.day) == turn.context.today
    only_day = moment == Moment(day=moment.day, part=moment.part)
    if not tonight or not only_day or len(name.split()) > _NAME_WORDS:
        raise Say(reply(_("I note who closes tonight, such as: {example}").format(example=_("closes Ben"))))
    if not name or stands_for(name, "ME", tongue().language):
        return None
    known = (one.name for one in team.team(turn.context))
    return next((one for one in known if one.casefold() == name.casefold()), name)


def _closes(turn: Turn, arguments: ClosesArguments) -> Reply:
    return _noted(turn, arguments.name or turn.context.name)


def _i_close(turn: Turn, arguments: Arguments) -> Reply:
    return _noted(turn, turn.context.name)


def _noted(turn: Turn, name: str) -> Reply:
    own.closes(turn.context, name.strip()[:40])
    return reply(
        _("{name} closes tonight.").format(name=name.strip()[:40]),
        _("I ask at closing what was thrown out."),
        buttons=((Button(_("Today"), "today"), undo_button(turn)),),
        edits=turn.message.tapped is not None,
    )


def _who_closes(turn: Turn, arguments: Arguments) -> Reply:
    said, taps = closer_words(*own.closer(turn.context))
    return reply(
        said or _("I don’t ask about waste tonight."), buttons=((*taps, Button(_("Today"), "today")),)
    )


def _end_of_shift(turn: Turn, arguments: Arguments) -> Reply:
    """Show what is left to do at the end of a shift: the waste, who closes, and a note for the next."""
    day = turn.context.today
    first = _("Closing {bar}, {day}: what was thrown out?").format(
        bar=turn.context.bar.name, day=show_day(day)
    )
    asked = [
        Button(_("Log waste"), f"waste {day.isoformat()}"),
        Button(_("Nothing tonight"), "nothing tonight"),
    ]
    if waste.is_logged(turn.context, day):
        first, asked = _("Waste of tonight is in the log."), [Button(_("Log more waste"), "waste")]
    closer, taps = closer_words(*own.closer(turn.context))
    last = (*taps, Button(_("Leave a note"), "note"), Button(_("Today"), "today"))
    return reply(first, *([closer] if closer else []), buttons=(tuple(asked), last))


COMMANDS = (
    Command(
        "closes",
        N_("say who closes tonight"),
        _closes,
        examples=(N_("closes Ben"),),
        slots=(Slot("name", _accept_closer),),
        writes=True,
    ),
    Command(
        "i close",
        N_("say that you close tonight"),
        _i_close,
        words=(
            "i'm closing",
            "i am closing",
            "im closing",
            "i'll close",
            "i will close",
            "closing tonight",
            "today i close",
            "tonight i close",
            "today i'm closing",
            "tonight i'm closing",
        ),
        writes=True,
    ),
    Command(
        "who closes",
        N_("who closes tonight"),
        _who_closes,
        words=("who's closing", "whos closing", "who is closing", "who will close", "who's on close"),
    ),
    Command(
        "end of shift",
        N_("what is left to do at the end of a shift"),
        _end_of_shift,
        words=(
            *("end shift", "shift over", "shift is over", "close", "closing", "close up", "closing up"),
            *("we're closing", "we are closing", "were closing", "handover", "hand over"),
            *("done for tonight", "done for the night", "i'm done", "im done", "i am done"),
            *(
                "i'm done for tonight",
                "goodnight",
                "good night",
                "that's it for tonight",
                "end of the night",
                "end of night",
            ),
        ),
    ),
)


def _closes_values(line: LogLine, units: str) -> dict[str, str]:
    return {"day": show_day(date.fromisoformat(line.details["day"]))}


LOG_WORDS = (
    LogWords("closes", N_("{name} closes on {day}"), N_("{name} closes on {day}"), values=_closes_values),
)
