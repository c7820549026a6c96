"""Everything that can be said, one file for each group of things a person does."""

from __future__ import annotations

from functools import cache

from bot.chat.talk import Command


@cache
def all_commands() -> dict[str, Command]:
    """Return every command by name."""
    from bot.chat.commands import (  # noqa: PLC0415 - the commands import the chat that lists them
        bar,
        basics,
        batches,
        bottles,
        buying,
        clearing,
        costs,
        densities,
        doses,
        drinks,
        files,
        formulas,
        grades,
        labels,
        log,
        peeling,
        photos,
        plan,
        prices,
        privacy,
        pumps,
        reminders,
        scaling,
        spraying,
        stock,
        strength,
        team,
        trials,
        waste,
        week,
    )

    modules = (
        basics,
        team,
        privacy,
        log,
        bar,
        formulas,
        trials,
        scaling,
        strength,
        densities,
        clearing,
        doses,
        pumps,
        grades,
        prices,
        costs,
        stock,
        drinks,
        plan,
        batches,
        bottles,
        labels,
        photos,
        waste,
        peeling,
        buying,
        week,
        spraying,
        files,
        reminders,
    )
    return {command.name: command for module in modules for command in module.COMMANDS}


@cache
def _beginnings() -> tuple[tuple[tuple[str, ...], Command], ...]:
    found = []
    for command in all_commands().values():
        for words in (command.name, *command.words):
            found.append((tuple(words.split()), command))
    return tuple(sorted(found, key=lambda one: -len(one[0])))


def command_at_start(text: str) -> tuple[Command, str] | None:
    """Return the command whose word a text begins with, and what follows the word."""
    head = text.lstrip()[:80]
    words = [word.casefold() for word in head.replace("\n", " \n ").split(" ") if word]
    for begin, command in _beginnings():
        if tuple(words[: len(begin)]) == begin:
            return command, _after(text.lstrip(), len(begin))
    return None


def _after(text: str, words: int) -> str:
    rest = text
    for _count in range(words):
        parts = rest.split(None, 1)
        # A line break right after the command word is part of what follows.
        rest = parts[1] if len(parts) > 1 else ""
    return rest
