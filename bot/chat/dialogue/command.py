"""The definition of a command: its words, its slots and its function."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from bot.chat.dialogue.arguments import Lines, arguments_for, arguments_type
from bot.chat.dialogue.slots import AnySlot, Given
from bot.chat.dialogue.turn import Turn
from bot.chat.grammar import parser
from bot.chat.grammar.parser import Phrase
from bot.chat.reply.message import Reply

# The second argument is the command's own Arguments class, named by the annotation.
Runs = Callable[[Turn, Any], "Reply | list[Reply]"]


@dataclass(frozen=True)
class Wish:
    """Something people want from a command, by its name in the phrasebooks, and the lines that ask for it.

    A frame is such a line after the command's word. `{kind}` takes a piece of that kind from the line
    (see intent/reading/pieces.py); with `?` it may stay empty. Words in capitals are keywords of the grammar.
    A part in brackets is repeated for each thing named, separated by `between`. `shows` marks lines of a
    writing command that only show something.
    """

    name: str
    frames: tuple[str, ...] = ("",)
    between: str = ", "
    shows: bool = False


@dataclass(frozen=True)
class Command:
    """One command of the bot.

    `name` is the word after the slash; `words` are other beginnings. The grammar's rule `<name>_cmd` reads
    the rest. `slots` are asked in order while `wanted` of each is true; `run` then does the work. `lines`
    describes the lines of a message that logs several things. `writes` opens a transaction that can change
    things; `quick` marks a read that takes a few milliseconds. `manages` excludes plain members,
    `manages_words` only if there are words after the command's; `anyone` needs no bar. `menu` is the place in
    the command menu, 0 for none. `in_every_language` accepts the words of each language whatever the current
    one is. `wishes` are the things that people want from it, as phrasebooks beside it say them.
    """

    name: str
    summary: str
    run: Runs
    words: tuple[str, ...] = ()
    examples: tuple[str, ...] = ()
    slots: tuple[AnySlot, ...] = ()
    lines: Lines | None = None
    writes: bool = False
    quick: bool = False
    manages: bool = False
    manages_words: bool = False
    anyone: bool = False
    menu: int = 0
    private_only: bool = False
    in_every_language: bool = False
    wishes: tuple[Wish, ...] = ()

    def answer(self, turn: Turn, given: Given) -> Reply | list[Reply]:
        """Run the command with the filled slots."""
        return self.run(turn, arguments_for(turn, arguments_type(self.run), self.lines, given))

    def phrase(self, turn: Turn, rest: str) -> Phrase | None:
        """Parse the text after the command's word; return None if the grammar does not take it."""
        return parser.try_read(self.rule, rest.strip(), turn.vocabulary)

    @property
    def rule(self) -> str:
        """The grammar's rule for the text after the command word."""
        return f"{self.name.replace(' ', '_')}_cmd"
