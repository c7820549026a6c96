"""The bar's log for people: who did what, when, and what was undone or corrected."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from bot.work.context import Context
from bot.work.formulas import ingredients
from bot.work.fruit import waste
from bot.work.fruit.waste import WasteView
from bot.work.log import chain
from bot.work.log.chain import State
from bot.work.money import prices
from bot.work.money.prices import PriceView
from bot.work.standing import Details
from storage.tables import Entry, Member

PAGE = 10


@dataclass(frozen=True, slots=True)
class LogLine:
    """One entry. `follows` is the entry before it in its chain, `followed` the one after it: number and kind.

    `kind` is the kind of what it logged: for a put-back that of the entry put back. `wasted` are the lines of
    waste, `price` is that of a price entry; `name` is the ingredient's name if the details have only its
    number.
    """

    number: int
    at: datetime
    by: str
    what: str
    kind: str
    details: Details
    follows: tuple[int, str] | None
    followed: tuple[int, str] | None
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
    followed = {
        row.follows: (row.id, row.what) for row in context.book.all(Entry, Entry.follows.in_(numbers))
    }
    before_ids = [row.follows for row in shown if row.follows is not None]
    follows = {row.id: (row.id, row.what) for row in context.book.all(Entry, Entry.id.in_(before_ids))}
    chains = chain.states(context, sorted({row.chain or row.id for row in shown}))
    lines = tuple(
        _line(
            context,
            row,
            row.details.get("kind", row.what) if row.what == chain.PUT_BACK else row.what,
            row.details,
            names.get(row.by, "?"),
            follows.get(row.follows or 0),
            followed.get(row.id),
            row.id not in followed and chain.may_change(context, chains[row.chain or row.id]),
        )
        for row in shown
    )
    return LogPage(lines, shown[-1].id if len(rows) > most else None)


def said_by(context: Context, found: State) -> LogLine:
    """Return the content of a chain as a log line."""
    return _line(context, found.last, found.what, found.details)


def _line(
    context: Context,
    row: Entry,
    kind: str,
    details: Details,
    by: str = "",
    follows: tuple[int, str] | None = None,
    followed: tuple[int, str] | None = None,
    undoable: bool = False,
) -> LogLine:
    return LogLine(
        row.id,
        row.at,
        by,
        row.what,
        kind,
        details,
        follows,
        followed,
        waste.logged_in(context, details) if kind in {"waste", chain.REASON} else (),
        _ingredient(context, details),
        prices.logged_in(context, details) if kind == "price" else None,
        undoable,
    )


def _ingredient(context: Context, details: Details) -> str:
    if "name" in details or not isinstance(details.get("ingredient"), int):
        return ""
    return ingredients.get(context, details["ingredient"]).name
