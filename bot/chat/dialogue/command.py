"""What a command is: its words, its slots and the function that answers it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from bot.chat.dialogue.arguments import Lines, arguments_for, arguments_type
from bot.chat.dialogue.slots import AnySlot, Given
from bot.chat.dialogue.turn import Turn
from bot.chat.reply.message import Reply

# The second argument is an Arguments class of the command's own, which its annotation names.
Runs = Callable[[Turn, Any], "Reply | list[Reply]"]


@dataclass(frozen=True)
class Command:
    """One thing that can be said.

    `name` is the word after the slash; `words` other ways to begin. The grammar's rule
    `<name>_cmd` reads what follows. `slots` are asked for in order while `wanted` of
    them is true; `run` then does the work. `lines` says how each line of a message is filled that
    logs several things. `writes` opens a transaction that can change
    things; `quick` says that one which only reads does so in a few milliseconds. `manages`
    keeps plain members out, `manages_words` only where more than its word is said; `anyone`
    needs no bar. `menu` is the place in the command menu, 0 for none.
    `in_every_language` says that its words of each language begin it whatever is spoken.
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

    def answer(self, turn: Turn, given: Given) -> Reply | list[Reply]:
        """Run the command with the slots that are filled."""
        return self.run(turn, arguments_for(turn, arguments_type(self.run), self.lines, given))

    @property
    def rule(self) -> str:
        """The grammar's rule for what follows the command word."""
        return f"{self.name.replace(' ', '_')}_cmd"
