"""Finding what a row of a sent file refers to: what came in before, ingredients and formulas by name."""

from __future__ import annotations

import re
from collections.abc import Sized
from dataclasses import dataclass, field
from datetime import date, datetime
from typing import Any

from sqlalchemy import select
from sqlalchemy.orm import aliased

from bot.trade.days import business_day, instant_of
from bot.trade.formulas.ingredient_names.reading import plain_name
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.money.money import to_minor
from bot.trade.numbers.uncertainty import to_decimal
from bot.work.context import Context
from bot.work.formulas import ingredients
from bot.work.money import prices
from bot.work.money.prices import Course, PriceView
from bot.work.transfer import export_rows
from bot.work.transfer.import_rows import Row, Sheet, UnreadableFileError
from storage.tables import (
    Bar,
    Batch,
    Delivery,
    DrinksCount,
    Formula,
    Imported,
    Ingredient,
    Juicing,
    PeeledFruit,
    Price,
    Sprayer,
    StockCount,
    Waste,
)

_REFERENCED: dict[str, Any] = {
    "formula": Formula,
    "price": Price,
    "delivery": Delivery,
    "waste": Waste,
    "juicing": Juicing,
    "batch": Batch,
    "drinks": DrinksCount,
    "count": StockCount,
    "peeled": PeeledFruit,
}
_TOGETHER = 1_000  # more would only take memory
_NUMBER = re.compile(r"[0-9]{1,18}")
# Names are looked through at every message: more than any bar uses would slow down all the others.
MOST_NAMES = 2_000
_LATE_EVENING = 22 * 60  # when waste of which only the day is known is taken to have been logged


@dataclass
class Taken:
    """How many rows of each kind were new, how many were here already; `older` prices were left out.

    `settings`: the bar had nothing in its book, so its settings came in too. `renumbered` are the batches
    whose number was not free: the one in the file, and the one they have now.
    """

    new: dict[str, int] = field(default_factory=dict)
    already: dict[str, int] = field(default_factory=dict)
    older: int = 0
    settings: bool = False
    renumbered: list[tuple[int, int]] = field(default_factory=list)
    brought: dict[str, list[int]] = field(default_factory=dict)  # numbers by kind, to take them back by
    latest: dict[str, int] = field(default_factory=dict)  # a formula's newest version
    runs: dict[str, int] = field(default_factory=dict)  # how often a sprayer was weighed
    pars: list[tuple[int, str, str]] = field(default_factory=list)
    strengths: list[tuple[int, str]] = field(default_factory=list)
    settings_entries: list[int] = field(default_factory=list)

    def note(self, kind: str, *numbers: int) -> None:
        """Note what was written into the book."""
        self.brought.setdefault(kind, []).extend(numbers)


class Intake:
    """What taking in a sheet needs: the book, and what came in before.

    What is wrong goes to the sheet's problems; the caller then keeps nothing.
    """

    def __init__(self, context: Context, sheet: Sheet, upload: int) -> None:
        self._context = context
        self._book = context.book
        self._sheet = sheet
        self._upload = upload
        self._through = 0
        self._taken = Taken()
        bar = context.book.session.get(Bar, context.bar.id)
        assert bar is not None  # noqa: S101 - somebody sits at its desk
        self._own_origin = export_rows.origin_of(bar)
        known = self._book.all(Ingredient)
        self._ingredients = {row.match_key: row.id for row in known}
        self._put_away = {row.id for row in known if row.archived_at is not None}
        self._formulas = {row.match_key: row.id for row in self._book.all(Formula)}
        self._imported = {(row.kind, row.ref): row.number for row in self._book.all(Imported)}
        self._sprayers = {row.match_key: row.id for row in self._book.all(Sprayer)}
        self._empty = self._is_empty()
        self._in_force: dict[int, PriceView] = {}
        self._courses: dict[int, Course] = {}
        self._waiting: list[tuple[str, str, Any]] = []
        self._before = 0  # how many problems there were before the row being taken in

    def _is_empty(self) -> bool:
        """Whether no formula, price or waste stands in the book: what was taken back does not."""
        later = aliased(Waste)
        corrected = select(later.id).where(later.bar_id == Waste.bar_id, later.corrects == Waste.id).exists()
        return (
            self._book.one(Formula, Formula.archived_at.is_(None)) is None
            and not prices.in_force(self._context)
            and self._book.one(Waste, Waste.corrects.is_(None), ~corrected) is None
        )

    def _known(self, kind: str, row: Row) -> int | None:
        """Return the number of the row that this one came in as before, or None."""
        return self._by_ref(kind, row.text("ref", needed=False))

    def _by_ref(self, kind: str, ref: str) -> int | None:
        if (kind, ref) in self._imported:
            return self._imported[kind, ref]
        origin, _sign, number = ref.partition(f":{kind}:")
        if origin == self._own_origin and _NUMBER.fullmatch(number):
            own = self._book.get(_REFERENCED[kind], int(number))
            return None if own is None else int(number)
        return None

    def _keep(self, kind: str, row: Row, line: Any) -> None:
        """Write a row down together with others of its kind: one by one takes ten times as long."""
        self._waiting.append((kind, row.text("ref", needed=False), line))
        if len(self._waiting) >= _TOGETHER:
            self._write_kept()

    def _write_kept(self) -> None:
        self._book.add_all([line for _kind, _ref, line in self._waiting])
        for kind, _ref, line in self._waiting:
            self._taken.note(kind, line.id)
        self._book.add_all(
            [Imported(kind=kind, ref=ref, number=line.id) for kind, ref, line in self._waiting if ref]
        )
        self._imported.update({(kind, ref): line.id for kind, ref, line in self._waiting if ref})
        self._waiting = []

    def _note(self, kind: str, row: Row, number: int) -> None:
        ref = row.text("ref", needed=False)
        self._taken.note(kind, number)
        if ref:
            self._book.add(Imported(kind=kind, ref=ref, number=number))
            self._imported[kind, ref] = number

    def _good(self, row: Row) -> bool:
        """Whether nothing is wrong with the row being taken in."""
        return len(row.problems) == self._before

    def _item(self, row: Row, name: str, needed: bool = True) -> int | None:
        """Return the ingredient that a field names; a new name is written down."""
        text = row.text(name, needed)
        key = plain_name(text)
        if not text:
            return None
        if not key:
            row.wrong(name, "unknown")
            return None
        if key not in self._ingredients:
            self._room_for_one_more(self._ingredients)
            kind = IngredientKind.FRUIT if name in {"fruit", "replaces", "garnish"} else None
            self._ingredients[key] = ingredients.add(self._context, text, kind).id
            self._taken.note("ingredient", self._ingredients[key])
        number = self._ingredients[key]
        if number in self._put_away:
            self._bring_back(number)
        return number

    def _bring_back(self, number: int) -> None:
        """Take an ingredient that was put away back into use, as part of what this file brings."""
        found = self._book.get(Ingredient, number)
        assert found is not None  # noqa: S101 - it was among the bar's own
        found.archived_at = None
        self._put_away.discard(number)
        self._taken.note("ingredient", number)

    @staticmethod
    def _room_for_one_more(names: Sized) -> None:
        """Raise UnreadableFileError when a bar would have more names of a kind than it can use."""
        if len(names) >= MOST_NAMES:
            raise UnreadableFileError("names")

    def _formula_named(self, row: Row, name: str, needed: bool = True) -> int | None:
        text = row.text(name, needed)
        if not text:
            return None
        found = self._formulas.get(plain_name(text))
        if found is None:
            row.wrong(name, "unknown")
        return found

    def _money(self, row: Row, name: str, needed: bool) -> int | None:
        amount = row.number(name, needed)
        return None if amount is None else to_minor(to_decimal(amount), self._context.bar.currency)

    def _logged(self, row: Row, minute: int = _LATE_EVENING) -> tuple[date, datetime] | None:
        """Return the business day and the moment of a row; of the two one is enough."""
        day, at = row.day("day", needed=False), row.moment("at", needed=False)
        bar = self._context.bar
        if day is None and at is None:
            if not row.says("day", "at"):
                row.wrong("day", "missing")
            return None
        if at is None and day is not None:
            at = instant_of(day, minute, bar.zone)
        assert at is not None  # noqa: S101 - one of the two was there
        return day or business_day(at, bar.zone, bar.closing_minute), at
