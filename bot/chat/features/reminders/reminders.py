"""Answers to reminders: later, or done."""

from __future__ import annotations

from datetime import datetime, time, timedelta
from fractions import Fraction
from typing import Any

from bot.chat.dialogue.command import Command
from bot.chat.dialogue.turn import Given, Say, Turn
from bot.chat.grammar.syntax import Duration
from bot.chat.i18n.language import _, show_moment
from bot.chat.reply.message import Reply, Text, reply
from bot.trade.words import N_
from bot.work.reminders import planning


def _later(turn: Turn, given: Given) -> Reply:
    number: Any
    duration: Any
    number, duration = given.rest
    if isinstance(duration, time):
        until = planning.snooze_until(turn.context, int(number), duration.hour * 60 + duration.minute)
        return _again(turn, until)
    if (
        not isinstance(number, Fraction)
        or not isinstance(duration, Duration)
        or not 0 < duration.hours <= 24 * 60
    ):
        raise Say(Reply((Text(_("Later by up to 60 days, such as: 2 hours"), strong=True),)))
    until = planning.snooze(
        turn.context,
        int(number),
        timedelta(hours=float(duration.hours)),
    )
    return _again(turn, until)


def _again(turn: Turn, until: datetime) -> Reply:
    said = _("I will remind you again {when}.").format(when=show_moment(until))
    return Reply((Text(said, strong=True),), edits=turn.message.tapped is not None)


def _done(turn: Turn, given: Given) -> Reply:
    number: Any = given.rest[0]
    return _marked(turn, int(number))


def _nothing(turn: Turn, given: Given) -> Reply:
    asked = planning.last_close(turn.context)
    if asked is None:
        raise Say(
            reply(_("I have not asked about any night yet."), _("Fruit thrown out: waste 6 limes mouldy"))
        )
    return _marked(turn, asked)


def _marked(turn: Turn, number: int) -> Reply:
    fresh = planning.done(turn.context, number)
    said = _("Done, by {name}.").format(name=turn.context.name) if fresh else _("That was done already.")
    return Reply((Text(said, strong=True),), edits=turn.message.tapped is not None)


COMMANDS = (
    Command("later", N_("be reminded again later"), _later, writes=True),
    Command("done", N_("mark a reminder done"), _done, writes=True),
    Command(
        "nothing tonight",
        N_("say at close that nothing was thrown out"),
        _nothing,
        words=("nothing thrown out", "nothing wasted", "no waste"),
        writes=True,
    ),
)
