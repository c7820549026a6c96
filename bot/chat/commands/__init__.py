"""Everything that can be said, one file for each group of things a person does."""

from __future__ import annotations

import unicodedata
from functools import cache

from bot.chat.commands.english import ENGLISH
from bot.chat.commands.spanish import SPANISH
from bot.chat.language import tongue
from bot.chat.talk import Command


@cache
def all_commands() -> dict[str, Command]:
    """Return every command by name."""
    from bot.chat.commands import (  # noqa: PLC0415 - the commands import the chat that lists them
        acid,
        bar,
        basics,
        batch_life,
        batches,
        bottles,
        buying,
        can_make,
        cautions,
        clearing,
        costs,
        densities,
        doses,
        drinks,
        files,
        formula_writing,
        formulas,
        fruit_use,
        grades,
        labels,
        languages,
        log,
        lots,
        making,
        pars,
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
        tasting,
        team,
        trials,
        waste,
        week,
        weighing,
    )

    modules = (
        basics,
        languages,
        team,
        privacy,
        log,
        bar,
        formulas,
        formula_writing,
        cautions,
        trials,
        tasting,
        scaling,
        strength,
        densities,
        clearing,
        doses,
        pumps,
        weighing,
        grades,
        prices,
        costs,
        stock,
        pars,
        can_make,
        drinks,
        plan,
        batches,
        batch_life,
        lots,
        bottles,
        labels,
        photos,
        waste,
        peeling,
        acid,
        buying,
        fruit_use,
        week,
        spraying,
        making,
        files,
        reminders,
    )
    return {command.name: command for module in modules for command in module.COMMANDS}


@cache
def _beginnings(language: str) -> dict[tuple[str, ...], Command]:
    """Return what commands begin with; English words begin them in every language."""
    own = _WORDS.get(language, {})
    found: dict[tuple[str, ...], Command] = {}
    for command in all_commands().values():
        for words in own.get(command.name, ()):
            found[_plain(words)] = command
    for command in all_commands().values():
        for words in (command.name, *command.words, *ENGLISH.get(command.name, ())):
            found.setdefault(_plain(words), command)
    return found


@cache
def _longest_beginning(language: str) -> int:
    return max(len(words) for words in _beginnings(language))


_WORDS = {"es": SPANISH}


def _plain(text: str) -> tuple[str, ...]:
    """Return the words of a text in small letters without accents and marks; a line break is a word."""
    low = text.casefold().replace("’", "'")
    bare = "".join(c for c in unicodedata.normalize("NFKD", low) if not unicodedata.combining(c))
    words = bare.lstrip("¿¡ ").replace("\n", " \n ").split(" ")
    return tuple(word.rstrip("?!") or word for word in words if word)


def words_of(command: Command, language: str) -> tuple[str, ...]:
    """Return what begins a command in a language, its usual word first; English words come after its own."""
    return (
        *_WORDS.get(language, {}).get(command.name, ()),
        command.name,
        *command.words,
        *ENGLISH.get(command.name, ()),
    )


def slash_word(command: Command) -> str:
    """Return what stands after the slash in the language now spoken: small letters a to z and low lines."""
    return "_".join(_plain(words_of(command, tongue().language)[0]))


def command_at_start(text: str, language: str | None = None) -> tuple[Command, str] | None:
    """Return the command whose word a text begins with, and what follows the word.

    The words are those of a language, of the one now spoken if none is said.
    """
    spoken = tongue().language if language is None else language
    words = _plain(text.lstrip()[:80])
    for length in range(min(len(words), _longest_beginning(spoken)), 0, -1):
        command = _beginnings(spoken).get(words[:length])
        if command is not None:
            return command, _after(text.lstrip(), length)
    return None


def in_any_language(text: str) -> tuple[Command, str] | None:
    """Return the command that a text begins with in another language: a menu can be older than the choice."""
    return next((found for one in _WORDS if (found := command_at_start(text, one)) is not None), None)


def _after(text: str, words: int) -> str:
    rest = text
    for _count in range(words):
        parts = rest.split(None, 1)
        # A line break right after the command word is part of what follows.
        rest = parts[1] if len(parts) > 1 else ""
    return rest
