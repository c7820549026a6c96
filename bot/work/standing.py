"""Undo and restore: rows, which are never edited, and values, which are."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import Any

from sqlalchemy import ColumnElement, and_, func, select
from sqlalchemy.orm import aliased

from bot.work.context import Context
from bot.work.errors import CannotPutBackError, ChangedSinceError
from storage.tables import Correctable, Delivery, PeeledUse, Waste
from storage.types import JsonObject

Details = JsonObject

UNDO, PUT_BACK = "undo", "put back"  # the entries that take a chain back, and bring it again

# Amounts are stored in thousandths; one that rounds to zero would read as a row that undoes.
LEAST = Fraction(1, 1000)

# The columns with the opposite sign in an undoing row. In other tables an undoing row is void.
_SIGNED: dict[type[Any], tuple[str, ...]] = {
    Waste: ("count_milli", "grams_milli", "volume_milli", "cost_minor"),
    Delivery: ("amount_milli", "cost_minor"),
    PeeledUse: ("count_milli",),
}


# -- rows ----------------------------------------------------------------------------------


@cache
def stands(table: type[Any]) -> ColumnElement[bool]:
    """Return the condition that a row is valid: it undoes no other row, and no later row corrects it.

    Each condition is built once: building it takes longer than its query.
    """
    later = aliased(table)
    corrected = select(later.id).where(later.bar_id == table.bar_id, later.corrects == table.id)
    return and_(_says_something(table), ~corrected.correlate(table).exists())


def thrown_out() -> ColumnElement[int]:
    """Return the amount of a line of waste, in thousandths of its own measure."""
    return func.coalesce(Waste.count_milli, Waste.grams_milli, Waste.volume_milli, 0)


def _says_something(table: Any) -> ColumnElement[bool]:
    if table is Waste:
        return thrown_out() > 0
    if table in _SIGNED:
        return getattr(table, _SIGNED[table][0]) > 0  # type: ignore[no-any-return]
    return table.void.is_(False)  # type: ignore[no-any-return]


def takes_back(row: Any) -> bool:
    """Whether a row only undoes another one."""
    if isinstance(row, Waste):
        return row.amount_milli <= 0
    signed = _SIGNED.get(type(row))
    return getattr(row, signed[0]) <= 0 if signed else bool(row.void)


def last_of(context: Context, row: Correctable) -> Any:
    """Return the last correction of a row, or the row itself."""
    table = type(row)
    while True:
        later = context.book.one(table, table.corrects == row.id, order=table.id.desc())
        if later is None:
            return row
        row = later


def reverse(context: Context, row: Any) -> Any:
    """Undo a valid row: add a row that points to it, and return the new row.

    The new row keeps the time and position of the old one. The log says who undid it, and when.
    """
    back = context.book.add(reversing(context, row))
    if context.replaced is not None:
        context.replaced.rows.append(back)
    return back


def reversing(context: Context, row: Any) -> Any:
    """Return the row that undoes another one, not yet added."""
    signed = _SIGNED.get(type(row))
    changed: dict[str, Any] = {} if signed else {"void": True}
    if hasattr(row, "by"):
        changed["by"] = context.person_id
    for name in signed or ():
        value = getattr(row, name)
        changed[name] = None if value is None else -value
    return _correcting(context, row, row, changed)


def restore(context: Context, row: Any) -> Any | None:
    """Add an undone row again; return the new row, or None if the row is valid."""
    last = last_of(context, row)
    return context.book.add(_correcting(context, last, row, {})) if takes_back(last) else None


@dataclass(frozen=True, slots=True)
class Rows:
    """The logged rows of an entry, named in one detail: a number, or a list of numbers.

    `undone` and `restored` do what else an undone row, or its copy when it is restored, brings about.
    """

    table: type[Any]
    detail: str
    undone: Callable[[Context, Any], Any] = lambda context, row: None
    restored: Callable[[Context, Any], Any] = lambda context, row: None

    def of(self, context: Context, details: Details) -> list[Any]:
        """Return the rows as they were logged."""
        named = details[self.detail]
        numbers = named if isinstance(named, list) else [named]
        found = [context.book.get(self.table, number) for number in numbers]
        return [row for row in found if row is not None]

    def take_back(self, context: Context, details: Details) -> Details:
        """Undo each row in its last correction, unless that is undone."""
        for row in self.of(context, details):
            last = last_of(context, row)
            if not takes_back(last):
                reverse(context, last)
                self.undone(context, last)
        return {}

    def put_back(self, context: Context, details: Details) -> Details:
        """Add the undone rows again; return the detail with their new numbers."""
        restored = [restore(context, row) for row in self.of(context, details)]
        again = [row for row in restored if row is not None]
        for row in again:
            self.restored(context, row)
        numbers = [row.id for row in again]
        if isinstance(details[self.detail], list):
            return {self.detail: numbers}
        return {self.detail: numbers[0]} if numbers else {}


def correct(context: Context, row: Any, **changed: Any) -> Any:
    """Add a row that corrects another: a copy with the columns `changed`."""
    return context.book.add(_correcting(context, row, row, changed))


_OWN = frozenset({"bar_id", "id", "corrects", "source", "line"})


def _correcting(context: Context, row: Any, like: Any, changed: dict[str, Any]) -> Any:
    """Return a row that corrects one row and copies another, with the columns `changed`."""
    table = type(row)
    names = {column.key for column in table.__table__.columns} - _OWN
    values = {name: getattr(like, name) for name in names}
    values |= {**changed, "corrects": row.id, "first": row.first}
    if hasattr(row, "line"):
        values |= {"source": context.source, "line": context.next_line()}
    return table(**values)


# -- values --------------------------------------------------------------------------------


def plain(value: Any) -> Any:
    """Return a value as the log stores it: tuples as lists."""
    if isinstance(value, dict):
        return {key: plain(one) for key, one in value.items()}
    return [plain(one) for one in value] if isinstance(value, list | tuple) else value


@dataclass(frozen=True, slots=True)
class Value:
    """A value that an entry changed from `before` to `after`, and how to read and write it.

    `states` are the two values if all entries of a kind have the same ones. An entry without `after` can be
    undone whatever the current value is.
    """

    read: Callable[[Context, Details], Any]
    write: Callable[[Context, Details, Any], None]
    states: tuple[Any, Any] | None = None

    def take_back(self, context: Context, details: Details) -> Details:
        """Write the previous value. Raises ChangedSinceError."""
        self.check(context, details)
        details = self._with_states(details)
        now = plain(self.read(context, details))
        self.write(context, details, details.get("before"))
        return {"after": now}

    def check(self, context: Context, details: Details) -> None:
        """Raise ChangedSinceError if the value differs from the one that the entry set."""
        details = self._with_states(details)
        if "after" in details and details["after"] != plain(self.read(context, details)):
            raise ChangedSinceError

    def put_back(self, context: Context, details: Details) -> Details:
        """Write the undone value again. Raises ChangedSinceError, CannotPutBackError."""
        details = self._with_states(details)
        if plain(self.read(context, details)) != details.get("before"):
            raise ChangedSinceError
        if "after" not in details:
            raise CannotPutBackError("")
        self.write(context, details, details["after"])
        return {}

    def _with_states(self, details: Details) -> Details:
        if self.states is None:
            return details
        return {**details, "before": self.states[0], "after": self.states[1]}


def archived(table: type[Any], detail: str, after: bool) -> Value:
    """Return whether a row is archived, as a value that an entry makes `after`; the detail has its number."""

    def read(context: Context, details: Details) -> bool:
        row = context.book.get(table, details[detail])
        return row is None or row.archived_at is not None

    def write(context: Context, details: Details, away: bool) -> None:
        row = context.book.get(table, details[detail])
        if row is not None:
            row.archived_at = context.now if away else None
            context.book.touched()

    return Value(read, write, states=(not after, after))
