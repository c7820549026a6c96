"""Typed arguments of a command, made from its filled slots."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, fields
from functools import cache
from typing import Any, TypeVar, get_type_hints

from bot.chat.dialogue.examples import example_of
from bot.chat.dialogue.slots import AnySlot, Given
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.grammar.syntax import Line
from bot.chat.i18n.language import _
from bot.chat.reply.message import reply

A = TypeVar("A", bound="Arguments")


@dataclass(frozen=True, kw_only=True)
class Arguments:
    """The arguments of a command. A subclass has a field for each slot, with the slot's name.

    A field without a default is always filled when the command runs. A command that logs several things has a
    field `lines` with the arguments of each. `words` holds the typed words of each slot; `guided` means that
    the bot asked questions.
    """

    words: Mapping[str, str] = field(default_factory=dict)
    guided: bool = False

    def words_for(self, *slots: AnySlot) -> str:
        """Return the typed words of some slots, '' for empty ones."""
        return " ".join(self.words[slot.name] for slot in slots if slot.name in self.words)


@dataclass(frozen=True)
class Lines:
    """The slots of each line in a message that logs several things.

    `arguments` is the type of a line's arguments. `needed` lists the required slots (one of each group) and a
    word for each. An incomplete line is answered with the example, and the whole message changes nothing.
    """

    arguments: type[Arguments]
    slots: tuple[AnySlot, ...]
    needed: tuple[tuple[tuple[AnySlot, ...], str], ...]
    example: str


@cache
def arguments_type(run: Callable[..., Any]) -> type[Arguments]:
    """Return the type of the arguments in the signature of a command's function."""
    hints = get_type_hints(run)
    hints.pop("return", None)
    found: type[Arguments] = list(hints.values())[1]
    return found


def arguments_for(turn: Turn, kind: type[A], lines_of: Lines | None, given: Given) -> A:
    """Return a command's arguments from the filled slots. Raises Say for an incomplete line."""
    if lines_of is None:
        return _built(kind, given)
    lines = tuple(_built(lines_of.arguments, one) for one in _each_line(turn, given, lines_of))
    return _built(kind, given, lines=lines)


def _built(kind: type[A], given: Given, **more: object) -> A:
    names = {one.name for one in fields(kind)}
    filled = {name: value for name, value in given.values.items() if name in names}
    return kind(**{**filled, **more}, words=given.words, guided=given.guided)


def _each_line(turn: Turn, given: Given, how: Lines) -> list[Given]:
    """Return the slots of each line, with accepted values."""
    if not given.lines:
        return [given]
    return [_line(turn, one, how) for one in given.lines]


def _line(turn: Turn, line: Line, how: Lines) -> Given:
    filled = {one.slot: one for one in line.filled}
    one = Given({}, {name: each.text for name, each in filled.items()})
    for slot in how.slots:
        if slot.name in filled:
            one.values[slot.name] = slot.accept(turn, one, filled[slot.name].value)
    for slots, what in how.needed:
        if not any(slot in one for slot in slots):
            said = " ".join(each.text for each in line.filled)
            missing = _("In “{line}” I miss {what}. Nothing of the message was logged.")
            example = _("Such as: {example}").format(example=example_of(turn, _(how.example)))
            raise Say(reply(missing.format(line=said, what=_(what)), example))
    return one
