"""The bar's log for people: who did what, when, and what was undone or corrected."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from bot.work.context import Context
from bot.work.formulas import ingredients
from bot.work.fruit import waste
from bot.work.fruit.waste import WasteView
from bot.work.log.undo import can_be_undone
from bot.work.money import prices
from bot.work.money.prices import PriceView
from storage.tables import Entry, Member
from storage.types import JsonObject

PAGE = 10


@dataclass(frozen=True, slots=True)
class LogLine:
    """One entry. `undone_by` is the entry that undid it, `corrects` the one it replaces.

    `wasted` are the lines of a waste entry, `price` is that of a price entry; `name` is the ingredient's name
    if the details have only its number.
    """

    number: int
    at: datetime
    by: str
    what: str
    details: JsonObject
    undo_of: int | None
    undone_by: int | None
    corrects: int | None
    wasted: tuple[WasteView, ...]
    name: str
    price: PriceView | None
    undoable: bool


@dataclass(frozen=True, slots=True)
class LogPage:
    """Some entries, the newest first; `older` is the start of the next page, None at the end."""

    lines: tuple[LogLine, ...]
    older: int | None


def page(context: Context, before: int | None = None, most: int = PAGE) -> LogPage:
    """Return the entries before a number, or the newest ones."""
    where = [] if before is None else [Entry.id < before]
    query = context.book.select(Entry).where(*where).order_by(Entry.id.desc()).limit(most + 1)
    rows = list(context.book.session.scalars(query))
    shown = rows[:most]
    names = {
        row.person_id: row.name
        for row in context.book.session.execute(context.book.rows(Member, Member.person_id, Member.name))
    }
    numbers = [row.id for row in shown]
    undone = {row.undo_of: row.id for row in context.book.all(Entry, Entry.undo_of.in_(numbers))}
    lines = tuple(
        LogLine(
            row.id,
            row.at,
            names.get(row.by, "?"),
            row.what,
            row.details,
            row.undo_of,
            undone.get(row.id),
            row.corrects,
            waste.logged_in(context, row.details) if row.what in {"waste", "waste reason"} else (),
            _ingredient(context, row.details),
            prices.logged_in(context, row.details) if row.what == "price" else None,
            can_be_undone(context, row) and row.id not in undone,
        )
        for row in shown
    )
    return LogPage(lines, shown[-1].id if len(rows) > most else None)


def line(context: Context, number: int) -> LogLine:
    """Return an existing entry."""
    return page(context, number + 1, 1).lines[0]


def _ingredient(context: Context, details: JsonObject) -> str:
    if "name" in details or not isinstance(details.get("ingredient"), int):
        return ""
    return ingredients.get(context, details["ingredient"]).name
