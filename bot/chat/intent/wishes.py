"""The wishes of all commands by name."""

from __future__ import annotations

from functools import cache

from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.registry import all_commands


@cache
def wishes() -> dict[str, tuple[tuple[Command, Wish], ...]]:
    """Return the commands that a wish may mean; a command without wishes of its own is one by its name."""
    found: dict[str, list[tuple[Command, Wish]]] = {}
    for command in all_commands().values():
        for wish in command.wishes or (Wish(command.name),):
            found.setdefault(wish.name, []).append((command, wish))
    return {name: tuple(those) for name, those in found.items()}


def wishes_of(command: Command) -> frozenset[str]:
    """Return the names of the wishes that a command serves."""
    return frozenset(wish.name for wish in command.wishes or (Wish(command.name),))
