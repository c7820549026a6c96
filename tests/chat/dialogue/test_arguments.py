"""Tests of typed arguments: each slot has a field of its type, and each field a slot."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import MISSING, fields
from typing import Any, get_args, get_type_hints

import pytest

from bot.chat.dialogue.arguments import Arguments, arguments_type
from bot.chat.dialogue.command import Command
from bot.chat.dialogue.registry import all_commands
from bot.chat.dialogue.slots import AnySlot, always
from bot.chat.grammar import parser
from bot.chat.grammar.lexer import Vocabulary
from bot.chat.grammar.parser import PhraseError

_COMMANDS = all_commands()
_OF_ALL = {"words", "guided"}


def _fields(kind: type[Arguments]) -> dict[str, Any]:
    return {name: hint for name, hint in get_type_hints(kind).items() if name not in _OF_ALL}


def _required(kind: type[Arguments]) -> set[str]:
    return {one.name for one in fields(kind) if one.default is MISSING and one.default_factory is MISSING}


def _groups(command: Command) -> Iterator[tuple[type[Arguments], tuple[AnySlot, ...]]]:
    """Return each type of arguments with the slots that fill it."""
    kind = arguments_type(command.run)
    if command.lines is None:
        yield kind, command.slots
        return
    assert get_args(get_type_hints(kind)["lines"]) == (command.lines.arguments, ...)
    of_lines = {slot.name for slot in command.lines.slots}
    yield kind, tuple(slot for slot in command.slots if slot.name not in of_lines)
    yield command.lines.arguments, command.lines.slots


@pytest.mark.parametrize("name", sorted(_COMMANDS))
def test_each_slot_has_a_field_of_its_type_and_each_field_a_slot(name: str) -> None:
    for kind, slots in _groups(_COMMANDS[name]):
        assert issubclass(kind, Arguments)
        hints = _fields(kind)
        if _COMMANDS[name].lines is not None:
            hints.pop("lines", None)
        assert hints.keys() == {slot.name for slot in slots}, kind
        for slot in slots:
            accepted = get_type_hints(slot.accept)["return"]
            assert hints[slot.name] in {accepted, accepted | None}, (kind, slot.name)


@pytest.mark.parametrize("name", sorted(_COMMANDS))
def test_a_field_without_a_default_is_always_filled(name: str) -> None:
    command = _COMMANDS[name]
    for kind, slots in _groups(command):
        for slot in slots:
            if slot.name in _required(kind) and not (slot.ask is not None and slot.wanted is always):
                # Slots without a fixed question: the grammar must refuse a line without them.
                with pytest.raises(PhraseError):
                    parser.read(command.rule, "", Vocabulary("en"))
