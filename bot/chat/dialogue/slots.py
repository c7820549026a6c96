"""What a command asks for: its slots, and how each is put as a question."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from bot.chat.dialogue.turn import Given, Turn
from bot.chat.reply.message import Block

ANSWER = "="  # a tap that answers the question: '= 41 mouldy'
BACK, CANCEL, DONE, DIGIT, ERASE, ENTER = "<", "x", "done", "+", "-", "ok"


@dataclass(frozen=True, slots=True)
class Question:
    """What to ask: the sentence, more blocks if needed, choices to tap, and a hint for typing.

    Each choice is a row of (label, answer). `pad` shows a pad of digits instead; a choice whose answer
    is DIGIT alone brings it up.
    """

    text: str
    choices: tuple[tuple[tuple[str, str], ...], ...] = ()
    blocks: tuple[Block, ...] = ()
    hint: str = ""
    pad: bool = False


def _always(turn: Turn, given: Given) -> bool:
    return True


def _as_read(turn: Turn, given: Given, value: Any) -> Any:
    return value


@dataclass(frozen=True)
class Slot:
    """One thing a command needs.

    `ask` words the question; `wanted` says whether it is needed, given what is known;
    `accept` turns what the grammar read into what the command wants, or raises Say.
    `rule` is the grammar rule that reads an answer. A `many` slot takes several
    messages until 'done'.
    """

    name: str
    ask: Callable[[Turn, Given], Question]
    wanted: Callable[[Turn, Given], bool] = _always
    accept: Callable[[Turn, Given, Any], Any] = _as_read
    rule: str = ""
    many: bool = False

    @property
    def reads_by(self) -> str:
        """The grammar's rule for an answer."""
        return self.rule or f"{self.name}_slot"


def columns(choices: list[tuple[str, str]], per_row: int) -> tuple[tuple[tuple[str, str], ...], ...]:
    """Lay choices out in rows."""
    return tuple(tuple(choices[at : at + per_row]) for at in range(0, len(choices), per_row))
