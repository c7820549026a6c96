"""Definitions of the log's sentences for the entries of a command."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from bot.chat.dialogue.turn import Turn
from bot.chat.i18n.language import ngettext, show_number
from bot.chat.i18n.plurals import counted_name
from bot.chat.reply.units import show_amount
from bot.trade.formulas.measures import Dimension
from bot.work.log import thread
from bot.work.log.chain import State
from bot.work.log.history import LogLine

_BASE = {Dimension.COUNT: "", Dimension.MASS: "g", Dimension.VOLUME: "ml"}


def _none(line: LogLine, units: str) -> Mapping[str, object]:
    return {}


@dataclass(frozen=True, slots=True)
class Retold:
    """An entry as one could type it: the command, and for each line the words of each slot in their order.

    Empty words mark the place of a slot that was not filled. `further` stands before more of the same kind
    where a plain number would replace what was logged.
    """

    command: str
    lines: tuple[Mapping[str, str], ...]
    further: str = ""

    @property
    def rest(self) -> str:
        """The text after the command's word."""
        return ", ".join(" ".join(word for word in line.values() if word) for line in self.lines)


@dataclass(frozen=True, slots=True)
class LogWords:
    """The sentences for one kind of log entry, with the entry's details as placeholders.

    `what` is the kind that the use case logs, `done` the sentence in the log, `thing` what it is called after
    "Undone:" (empty where the sentence fits). `values` returns placeholders that are not among the details,
    from the entry and the bar's units; `now` returns lines that say what is in force after an undo. `retold`
    returns the entry as one could type it, for correcting and repeating it; None if it cannot be typed.
    """

    what: str
    done: str
    thing: str = ""
    values: Callable[[LogLine, str], Mapping[str, object]] = _none
    now: Callable[[Turn, State], list[str]] | None = None
    retold: Callable[[Turn, State], Retold | None] | None = None


def photos_kept(photo: str) -> str:
    """Say that the photos of a message are kept with what it logged."""
    count = len(photo.split())
    said = ngettext("The photo is kept with it.", "All {count} photos are kept with it.", count)
    return said.format(count=show_number(count, 0))


def photos_mark(count: int) -> str:
    """Return the mark of an entry with this many photos."""
    return ngettext("[photo]", "[{count} photos]", count).format(count=show_number(count, 0))


def typed_amount(amount: Fraction, dimension: Dimension = Dimension.COUNT) -> str:
    """Return an amount as one could type it in any language: '6', '1200 g', '5/2'."""
    return f"{amount} {_BASE[dimension]}".strip()


def typed_day(turn: Turn, found: State) -> str:
    """Return the day that an entry is about as one could type it, '' for the day of logging it."""
    day = thread.day_of(turn.context, found)
    return "" if day is None else day.isoformat()


def retold_amount(command: str, item: str) -> Callable[[Turn, State], Retold | None]:
    """Return the `retold` of entries with an amount of one thing; `item` is the slot that names it."""

    def retold(turn: Turn, found: State) -> Retold | None:
        said = found.details
        if "amount" not in said:  # an old entry
            return None
        amount = typed_amount(Fraction(said["amount"]), Dimension(said.get("of", Dimension.COUNT)))
        name = f"#{said['ingredient']}" if "ingredient" in said else str(said["name"])
        return Retold(command, ({"day": typed_day(turn, found), "waste_amount": amount, item: name},))

    return retold


def amount_of(line: LogLine, units: str) -> dict[str, str]:
    """Return the logged amount with its name: '80 limes', '700 ml gin'."""
    if "amount" not in line.details:  # an old entry
        return {"amount": str(line.details.get("name", ""))}
    amount, name = Fraction(line.details["amount"]), str(line.details.get("name", ""))
    dimension = Dimension(line.details.get("of", Dimension.COUNT))
    if dimension is Dimension.COUNT:
        return {"amount": f"{show_number(amount, 2)} {counted_name(name, amount)}"}
    return {"amount": f"{show_amount(amount, dimension, units)} {name}"}
