"""Definitions of the log's sentences for the entries of a command."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from bot.chat.dialogue.turn import Turn
from bot.work.log.history import LogLine
from bot.work.log.undo import TakenBack


def _none(line: LogLine, units: str) -> Mapping[str, object]:
    return {}


@dataclass(frozen=True, slots=True)
class LogWords:
    """The sentences for one kind of log entry, with the entry's details as placeholders.

    `what` is the kind that the use case logs, `done` the sentence in the log, `undone` the sentence after an
    undo (empty if there is none). `values` returns the placeholders that are not details of the entry, from
    the entry and the bar's units. `lines` returns more lines after an undo, in place of `done`.
    """

    what: str
    done: str
    undone: str = ""
    values: Callable[[LogLine, str], Mapping[str, object]] = _none
    lines: Callable[[Turn, TakenBack], list[str]] | None = None
