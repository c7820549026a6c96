"""The registry of all commands and log sentences, found in the packages of the features."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator
from functools import cache
from importlib import import_module
from pkgutil import walk_packages
from types import ModuleType

from bot.chat.dialogue.command import Command
from bot.chat.dialogue.log_words import LogWords
from bot.chat.i18n.language import regional, tongue, translated
from bot.chat.i18n.languages import languages

COMMAND_WORDS = "words that begin a command"
"""The catalogue context of command words: the message is the command's name, the text its words."""


@cache
def all_commands() -> dict[str, Command]:
    """Return every command by name."""
    return {
        command.name: command for module in _feature_modules() for command in getattr(module, "COMMANDS", ())
    }


@cache
def all_log_words() -> dict[str, LogWords]:
    """Return the sentences for log entries by kind."""
    return {words.what: words for module in _feature_modules() for words in getattr(module, "LOG_WORDS", ())}


def _feature_modules() -> Iterator[ModuleType]:
    """Import every module of the features; their `COMMANDS` and `LOG_WORDS` are registered."""
    package = import_module("bot.chat.features")
    for found in walk_packages(package.__path__, f"{package.__name__}."):
        yield import_module(found.name)


@cache
def _beginnings(language: str) -> dict[tuple[str, ...], Command]:
    """Return the first words of commands; English words start them in every language."""
    commands = all_commands().values()
    own = {_plain(words): one for one in commands for words in _own_words(one, language)}
    english = {_plain(words): one for one in commands for words in (one.name, *one.words)}
    foreign = {
        _plain(words): one
        for one in commands
        if one.in_every_language
        for other in languages()
        for words in _own_words(one, other)
    }
    return english | foreign | own


@cache
def _longest_beginning(language: str) -> int:
    return max(len(words) for words in _beginnings(language))


def _own_words(command: Command, language: str) -> tuple[str, ...]:
    said = translated(COMMAND_WORDS, command.name, language)
    return () if said == command.name else tuple(said.split(", "))


def _plain(text: str) -> tuple[str, ...]:
    """Return the words of a text in lower case without accents and marks; a line break is a word."""
    low = text.casefold().replace("’", "'")
    bare = "".join(c for c in unicodedata.normalize("NFKD", low) if not unicodedata.combining(c))
    words = bare.lstrip("¿¡ ").replace("\n", " \n ").split(" ")
    return tuple(word.rstrip("?!") or word for word in words if word)


def words_of(command: Command, language: str) -> tuple[str, ...]:
    """Return a command's first words in a language, the usual one first; English words come last."""
    as_spoken = command.name.replace("_", " ")
    return tuple(dict.fromkeys((*_own_words(command, language), as_spoken, command.name, *command.words)))


def slash_word(command: Command) -> str:
    """Return the slash command in the current language: lower-case letters a to z and underscores."""
    return "_".join(_plain(regional(words_of(command, tongue().language)[0])))


def command_at_start(text: str, language: str | None = None) -> tuple[Command, str] | None:
    """Return the command whose word starts a text, and the text after it.

    The words are those of the given language, by default the current one.
    """
    spoken = tongue().language if language is None else language
    words = _plain(text.lstrip()[:80])
    for length in range(min(len(words), _longest_beginning(spoken)), 0, -1):
        command = _beginnings(spoken).get(words[:length])
        if command is not None:
            return command, _after(text.lstrip(), length)
    return None


def in_any_language(text: str) -> tuple[Command, str] | None:
    """Return the command whose word in another language starts a text: a menu may show an old language."""
    return next((found for one in languages() if (found := command_at_start(text, one)) is not None), None)


def _after(text: str, words: int) -> str:
    rest = text
    for _count in range(words):
        parts = rest.split(None, 1)
        # A line break right after the command word belongs to the arguments.
        rest = parts[1] if len(parts) > 1 else ""
    return rest
