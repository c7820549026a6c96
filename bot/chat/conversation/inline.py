"""Scaled amounts for inline queries in any chat: '@bot grapefruit 8x50'. Only for members of a bar."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from bot.chat.dialogue.filling import accepted
from bot.chat.dialogue.registry import all_commands
from bot.chat.dialogue.slots import Given
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.grammar import parser
from bot.chat.grammar.vocabulary import vocabulary_for
from bot.chat.i18n.language import _, speaking
from bot.chat.i18n.locale_choice import tongue_of
from bot.chat.intent.shorthand import formulas_meant, read_scaling
from bot.chat.reply.message import Grid, Message, Reply
from bot.trade.errors import TradeError
from bot.work.context import Clock
from bot.work.errors import WorkError
from bot.work.people import people
from storage.store import Store

_AS_WRITTEN = "x1"


@dataclass(frozen=True, slots=True)
class Suggestion:
    """One choice: a title, a line below it, and the text for the chat."""

    title: str
    description: str
    said: Reply


def suggestions(store: Store, clock: Clock, message: Message) -> list[Suggestion]:
    """Return the amounts for a typed text; nothing for people without a bar.

    A part of a formula's name is enough. Without a size the formula is returned as written.
    """
    with store.reading() as unit:
        sender = message.sender
        found = people.find(unit, message.channel, sender.outside_id, "", private=True)
        if found.bar is None:
            return []
        # The chat is unknown here, and nothing is asked or logged.
        presence = replace(found, room_id=0, question=None)
        with speaking(tongue_of(presence, clock.now())):
            vocabulary = vocabulary_for(unit, presence.bar, tongue_of(presence).language)
            turn = Turn(unit, message, presence, vocabulary, clock, message.text)
            return list(_scaled(turn, message.text.strip()))


def _scaled(turn: Turn, text: str) -> Iterable[Suggestion]:
    command = all_commands()["scale"]
    read = read_scaling(turn, text)
    if read is None:
        return
    phrase, _words = read
    given = Given.of(phrase)
    for noun in formulas_meant(turn, given.values.get("formula")):
        one = Given({**given.values, "formula": noun}, {**given.words, "formula": noun.name})
        if "target" not in one.values:
            size = parser.read("target_slot", _AS_WRITTEN, turn.vocabulary).slots["target"]
            one.values["target"], one.words["target"] = size.value, size.text
        try:
            said = command.answer(turn, accepted(turn, command, one))
        except (Say, WorkError, TradeError):
            continue
        if isinstance(said, Reply):
            yield Suggestion(said.first_line, _amounts(said), replace(said, buttons=()))


def _amounts(said: Reply) -> str:
    grids = [block for block in said.blocks if isinstance(block, Grid)]
    rows = grids[0].rows if grids else ()
    return ", ".join(_("{name} {amount}").format(name=row[0], amount=row[-1]) for row in rows)
