"""The kinds of intent that a message may have: a command, an answer, an edit, a free line."""

from __future__ import annotations

from dataclasses import dataclass

from bot.chat.dialogue.command import Command
from bot.chat.intent.reading.reader import Readings
from bot.work.log.edits import Earlier

REST = "rest of "  # before a line: show what its answer had no room for


@dataclass(frozen=True, kw_only=True)
class Intent:
    """A reading of a message. `line` is the message as typed, command word first."""

    line: str = ""

    @property
    def writes(self) -> bool:
        """Whether the intent needs a transaction that can write."""
        return False

    @property
    def quick(self) -> bool:
        """Whether the answer is quick."""
        return False


@dataclass(frozen=True)
class NotUnderstood(Intent):
    """A text with an unknown slash command, or from a person without a bar."""


@dataclass(frozen=True)
class Ignored(Intent):
    """A message without a reply, such as an edit of a message that logged nothing."""


@dataclass(frozen=True)
class OutOfDate(Intent):
    """A tap on a stale button, or on a question to another person, named by `asked`."""

    asked: str = ""

    quick = True


@dataclass(frozen=True)
class Said(Intent):
    """A command and the text after its word; `aside` if a question stays in progress.

    `confirms`: the wish and the shape of a free line whose reading a tap confirms. `rest_only` asks for what
    the folded answer had no room for.
    """

    command: Command
    rest: str = ""
    aside: bool = False
    confirms: tuple[str, str] | None = None
    rest_only: bool = False

    @property
    def writes(self) -> bool:
        """Whether the command can change things."""
        return self.command.writes

    @property
    def quick(self) -> bool:
        """Whether the command is quick."""
        return self.command.quick


@dataclass(frozen=True)
class Read(Intent):
    """A free line, which the grammar does not take, and the wishes that it may mean."""

    readings: Readings
    aside: bool = False  # the question in progress stays

    @property
    def writes(self) -> bool:
        """Whether the reading is confirmed and can change things."""
        first = self.readings.first
        return self.readings.confirmed and first is not None and not first.runs


@dataclass(frozen=True)
class Several(Intent):
    """Several commands, one on each line of a message."""

    commands: tuple[Said, ...]

    @property
    def writes(self) -> bool:
        """Whether any of the commands can change things."""
        return any(one.writes for one in self.commands)


@dataclass(frozen=True)
class Answer(Intent):
    """An answer to the question in progress."""

    text: str
    tapped: bool = False
    writes = True


@dataclass(frozen=True)
class Amendment(Intent):
    """An edit of an earlier answer in the dialogue in progress."""

    was: str
    text: str
    writes = True


@dataclass(frozen=True)
class Correction(Intent):
    """An edit of a message that logged something: the intent of the new words, and the logged entries."""

    earlier: Earlier
    instead: Intent
    writes = True
