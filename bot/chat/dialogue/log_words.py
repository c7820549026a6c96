"""Definitions of the log's sentences for the entries of a command."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from bot.chat.dialogue.turn import Turn
from bot.chat.i18n.language import show_number
from bot.chat.i18n.plurals import counted_name
from bot.chat.reply.units import show_amount
from bot.trade.formulas.measures import Dimension
from bot.work.log.chain import State
from bot.work.log.history import LogLine


def _none(line: LogLine, units: str) -> Mapping[str, object]:
    return {}


@dataclass(frozen=True, slots=True)
class LogWords:
    """The sentences for one kind of log entry, with the entry's details as placeholders.

    `what` is the kind that the use case logs, `done` the sentence in the log, `thing` what it is called after
    "Undone:" (empty where the sentence fits). `values` returns placeholders that are not among the details,
    from the entry and the bar's units; `now` returns lines that say what is in force after an undo.
    """

    what: str
    done: str
    thing: str = ""
    values: Callable[[LogLine, str], Mapping[str, object]] = _none
    now: Callable[[Turn, State], list[str]] | None = None


def amount_of(line: LogLine, units: str) -> dict[str, str]:
    """Return the logged amount with its name: '80 limes', '700 ml gin'."""
    if "amount" not in line.details:  # an old entry
        return {"amount": str(line.details.get("name", ""))}
    amount, name = Fraction(line.details["amount"]), str(line.details.get("name", ""))
    dimension = Dimension(line.details.get("of", Dimension.COUNT))
    if dimension is Dimension.COUNT:
        return {"amount": f"{show_number(amount, 2)} {counted_name(name, amount)}"}
    return {"amount": f"{show_amount(amount, dimension, units)} {name}"}
