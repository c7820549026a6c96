"""The slots of a command, and the question for each."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any, Generic, TypeVar, cast

from bot.chat.dialogue.turn import Turn
from bot.chat.grammar.parser import Phrase
from bot.chat.grammar.syntax import Line
from bot.chat.reply.message import Block

T = TypeVar("T")
T_co = TypeVar("T_co", covariant=True)
ANSWER = "="  # the prefix of a tapped answer: '= 41 mouldy'
BACK, CANCEL, DONE, DIGIT, ERASE, ENTER = "<", "x", "done", "+", "-", "ok"


@dataclass(frozen=True, slots=True)
class Question:
    """A question: the sentence, more blocks if needed, choices to tap, and a hint for typing.

    Each choice is a row of (label, answer). `pad` shows a pad of digits instead; a choice with the answer
    DIGIT opens it.
    """

    text: str
    choices: tuple[tuple[tuple[str, str], ...], ...] = ()
    blocks: tuple[Block, ...] = ()
    hint: str = ""
    pad: bool = False


class Given:
    """The filled slots of a command during parsing, with accepted values.

    A slot is the key: `given[FORMULA]`, `given.get(LOSS)`, `GRAMS in given`. `guided` means that questions
    lead the person, `words` holds the typed words of each slot, and `lines` the lines of a message that logs
    several things.
    """

    def __init__(
        self,
        values: Mapping[str, object],
        words: Mapping[str, str],
        guided: bool = False,
        lines: tuple[Line, ...] = (),
    ) -> None:
        self.values = dict(values)
        self.words = dict(words)
        self.guided = guided
        self.lines = lines

    def __getitem__(self, slot: Slot[T]) -> T:
        return cast("T", self.values[slot.name])

    def __contains__(self, slot: AnySlot) -> bool:
        """Whether the slot has words, even if its value is not accepted yet."""
        return slot.name in self.values or slot.name in self.words

    def get(self, slot: Slot[T]) -> T | None:
        """Return the slot's value, or None if it is empty."""
        return cast("T | None", self.values.get(slot.name))

    @classmethod
    def of(cls, phrase: Phrase) -> Given:
        """Return the slots that a phrase filled."""
        values = {name: filled.value for name, filled in phrase.slots.items()}
        return cls(values, {name: filled.text for name, filled in phrase.slots.items()}, False, phrase.lines)


def always(turn: Turn, given: Given) -> bool:
    """The `wanted` of a slot that is always required."""
    return True


@dataclass(frozen=True)
class Slot(Generic[T_co]):
    """One input of a command, and the typed key to it.

    `ask` words the question, None for a slot without one; `wanted` says whether it is required, by the known
    slots; `accept` converts the parsed value for the command, or raises Say. `rule` is the grammar rule that
    parses an answer. A `many` slot takes several messages until 'done', or until `full`. `only` returns the
    words and value of the one thing that can be meant, which is then not asked, or None.
    """

    name: str
    accept: Callable[[Turn, Given, Any], T_co]
    ask: Callable[[Turn, Given], Question] | None = None
    wanted: Callable[[Turn, Given], bool] = always
    rule: str = ""
    many: bool = False
    full: Callable[[Turn, Given], bool] = lambda turn, given: False
    only: Callable[[Turn], tuple[str, object] | None] | None = None

    @property
    def reads_by(self) -> str:
        """The grammar's rule for an answer."""
        return self.rule or f"{self.name}_slot"

    def is_asked(self, turn: Turn, given: Given) -> bool:
        """Whether the slot must be asked for while it is empty."""
        return self.ask is not None and self.wanted(turn, given)

    def question(self, turn: Turn, given: Given) -> Question:
        """Return the question for the slot."""
        if self.ask is None:
            raise ValueError(f"{self.name} is never asked for")
        return self.ask(turn, given)


AnySlot = Slot[Any]


def plain(kind: type[T]) -> Callable[[Turn, Given, object], T]:
    """Return an `accept` that returns the parsed value unchanged and checks its type."""

    def accept(turn: Turn, given: Given, value: object) -> T:
        if not isinstance(value, kind):
            raise TypeError(f"the grammar read {value!r}, which is no {kind.__name__}")
        return value

    accept.__annotations__["return"] = kind
    return accept


def said(turn: Turn, given: Given, value: object) -> bool:
    """Accept an optional keyword: 'in grams'."""
    return True


def columns(choices: list[tuple[str, str]], per_row: int) -> tuple[tuple[tuple[str, str], ...], ...]:
    """Arrange choices in rows."""
    return tuple(tuple(choices[at : at + per_row]) for at in range(0, len(choices), per_row))
