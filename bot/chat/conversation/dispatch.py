"""Running what is meant: who may, what is missing, and what every answer gets at its end."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.dialogue import questions
from bot.chat.dialogue.command import Command
from bot.chat.dialogue.registry import all_commands, command_at_start
from bot.chat.dialogue.strangers import private_only, stranger
from bot.chat.dialogue.turn import Given, Say, Turn
from bot.chat.grammar import parser
from bot.chat.grammar.parser import PhraseError
from bot.chat.i18n.language import _
from bot.chat.i18n.numbers import AmbiguousNumberError, NotANumberError
from bot.chat.intent.fallbacks import not_understood, worded_refusal
from bot.chat.intent.intent import Plan
from bot.chat.reply.message import Reply, Text, reply
from bot.chat.reply.units import show_ml, unit_name
from bot.trade.errors import TradeError
from bot.work.errors import WorkError

# What a person can mend: answered in words, and nothing that was begun stays.
REFUSALS = (Say, WorkError, TradeError, PhraseError, AmbiguousNumberError, NotANumberError)


class MustWriteError(Exception):
    """A command that only reads has to ask something, and a question is written down."""


def _would_ask(turn: Turn, command: Command, given: Given) -> bool:
    return any(slot.name not in given and slot.wanted(turn, given) for slot in command.slots)


def run(turn: Turn, plan: Plan, reading_only: bool = False) -> list[Reply]:
    """Return the replies to what is meant; `reading_only` where nothing may be written.

    Raises MustWriteError where a question would have to be written down, and one of REFUSALS.
    """
    replies = _noting_assumptions(turn, _done(turn, plan, reading_only))
    return [_without_forbidden(turn, one) for one in replies]


def _done(turn: Turn, plan: Plan, reading_only: bool) -> list[Reply]:
    if plan.stale:
        return [reply(_("This button is out of date."), _("Ask again and use the new buttons."))]
    if plan.answer is not None:
        return as_list(_resume(turn, plan))
    if plan.several:
        return _one_by_one(turn, plan)
    command = plan.command
    if command is None:
        return as_list(not_understood(turn))
    refused = barred(turn, command)
    if refused is not None:
        return [refused]
    phrase = parser.read(command.rule, plan.rest.strip(), turn.vocabulary)
    given = Given.of(phrase.slots, phrase.lines, phrase.rest)
    if reading_only and _would_ask(turn, command, given):
        raise MustWriteError
    return as_list(questions.start(turn, command, given))


def _one_by_one(turn: Turn, plan: Plan) -> list[Reply]:
    """Answer a message whose every line is a command of its own: all of them, or none."""
    replies: list[Reply] = []
    for number, (command, rest, line) in enumerate(plan.several, 1):
        turn.line = line
        try:
            replies += as_list(_whole(turn, command, rest))
        except REFUSALS as error:
            raise Say(_refused_line(number, line, worded_refusal(error, turn)[0])) from error
    return replies


def _resume(turn: Turn, plan: Plan) -> Reply | list[Reply]:
    question = turn.presence.question
    if question is None or plan.answer is None:
        return reply(_("This button is out of date."), _("Ask again and use the new buttons."))
    command = all_commands()[question.state["command"]]
    refused = barred(turn, command)
    if refused is not None:
        return refused
    return questions.resume(turn, command, plan.answer, plan.tapped)


def _whole(turn: Turn, command: Command, rest: str) -> Reply | list[Reply]:
    """Run one of several commands, which has to say all that it needs."""
    refused = barred(turn, command)
    if refused is not None:
        raise Say(refused)
    phrase = parser.read(command.rule, rest.strip(), turn.vocabulary)
    given = Given.of(phrase.slots, phrase.lines, phrase.rest)
    if not phrase.lines and _would_ask(turn, command, questions.accepted(turn, command, given)):
        raise Say(reply(_("Something is missing there. In several lines, each has to be complete.")))
    return questions.start(turn, command, given)


def _refused_line(number: int, line: str, why: Reply) -> Reply:
    """Say which line stopped the message. Its buttons would do that line alone, so they are left out."""
    first = _("Line {number}, “{line}”, stops here, and nothing of the message was logged.")
    said = first.format(number=number, line=line[:60])
    blocks = tuple(replace(one, strong=False) if isinstance(one, Text) else one for one in why.blocks)
    return Reply((Text(said, strong=True), *blocks))


def barred(turn: Turn, command: Command) -> Reply | None:
    """Return why this person may not do this here; None if they may."""
    if command.private_only and not turn.message.place.private:
        return private_only(turn)
    if command.anyone:
        return None
    if turn.presence.bar is None:
        return stranger(turn)
    if command.manages and not turn.context.role.manages:
        return reply(_("Only a manager can do that. Ask one to do it, or to make you a manager."))
    return None


def _noting_assumptions(turn: Turn, replies: list[Reply]) -> list[Reply]:
    """Say what a house measure was taken to hold, where the bar has not set it."""
    if not turn.assumed or not replies or replies[-1].choosing:
        return replies
    notes = [
        Text(
            _("A {name} is taken as {size}, common practice. Yours: bar {name} {size}").format(
                name=unit_name(name), size=show_ml(turn.context.bar.house.ml(name))
            )
        )
        for name in sorted(turn.assumed)
    ]
    last = replies[-1]
    return [*replies[:-1], replace(last, blocks=(*last.blocks, *notes))]


def _without_forbidden(turn: Turn, answer: Reply) -> Reply:
    """Leave out the buttons that would only be refused: those of a manager, shown to a plain member."""
    if turn.presence.role is None or turn.presence.role.manages:
        return answer
    rows = (tuple(one for one in row if not _takes_a_manager(one.line)) for row in answer.buttons)
    return replace(answer, buttons=tuple(row for row in rows if row))


def _takes_a_manager(line: str) -> bool:
    found = command_at_start(line)
    if found is None:
        return False
    command, rest = found
    return command.manages or (command.manages_words and bool(rest.strip()))


def as_list(answer: Reply | list[Reply]) -> list[Reply]:
    """Return one answer or several as a list."""
    return answer if isinstance(answer, list) else [answer]
