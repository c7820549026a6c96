"""How the log words the entries of a command."""

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

    `what` is the kind that the use case logs, `done` the sentence in the log, `undone` the one after an
    undo (empty where there is none). `values` returns placeholders that are not among the details, from
    the entry and the bar's units; `lines` returns further lines after an undo, in place of `done`.
    """

    what: str
    done: str
    undone: str = ""
    values: Callable[[LogLine, str], Mapping[str, object]] = _none
    lines: Callable[[Turn, TakenBack], list[str]] | None = None
