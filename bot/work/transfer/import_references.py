"""Finding what a row of a sent file refers to: what came in before, ingredients and formulas by name."""

from __future__ import annotations

import re
from collections.abc import Sized
from dataclasses import dataclass, field
from typing import Any

from sqlalchemy import select
from sqlalchemy.orm import aliased

from bot.trade.formulas.ingredient_names.reading import plain_name
from bot.trade.formulas.kinds import IngredientKind
from bot.work.context import BarView, Context
from bot.work.formulas import ingredients
from bot.work.money import prices
from bot.work.money.prices import Course, PriceView
from bot.work.transfer.export import origin_of
from bot.work.transfer.import_rows import Sheet, UnreadableFileError
from bot.work.transfer.rows import SECTIONS, BarRow, Referenced
from storage.tables import Bar, Formula, Imported, Ingredient, Sprayer, Waste

_REFERENCED: dict[str, Any] = {model.KIND: model.TABLE for model in SECTIONS.values() if model.KIND}
_TOGETHER = 1_000  # more would only take memory
_NUMBER = re.compile(r"[0-9]{1,18}")
# Names are looked through at every message: more than any bar uses would slow down all the others.
MOST_NAMES = 2_000


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
    """What taking in a sheet needs: the book, and what came in before. It is pydantic's context.

    What is wrong goes to the sheet's problems; the caller then keeps nothing.
    """

    def __init__(self, context: Context, sheet: Sheet, upload: int) -> None:
        self._context = context
        self.now, self.person_id = context.now, context.person_id
        self._book = context.book
        self._sheet = sheet
        self._through = 0
        self._taken = Taken()
        bar = context.book.session.get(Bar, context.bar.id)
        assert bar is not None  # noqa: S101 - somebody sits at its desk
        self._own_origin = origin_of(bar)
        known = self._book.all(Ingredient)
        self.ingredients = {row.match_key: row.id for row in known}
        self._put_away = {row.id for row in known if row.archived_at is not None}
        self.formulas = {row.match_key: row.id for row in self._book.all(Formula)}
        self._imported = {(row.kind, row.ref): row.number for row in self._book.all(Imported)}
        self._sprayers = {row.match_key: row.id for row in self._book.all(Sprayer)}
        self._empty = self._is_empty()
        self._in_force: dict[int, PriceView] = {}
        self._courses: dict[int, Course] = {}
        self._waiting: list[tuple[Referenced, Any]] = []
        self._new_refs: list[Imported] = []
        self._bar: BarRow | None = None  # what the file says of its bar, where that comes in too
        self._line = 0  # of the file, where the row being taken in stands
        self._source = f"import {upload}"

    @property
    def bar(self) -> BarView:
        """The bar as it is by now: the file's settings may have come in."""
        return self._context.bar

    def _is_empty(self) -> bool:
        """Whether no formula, price or waste stands in the book: what was taken back does not."""
        later = aliased(Waste)
        corrected = select(later.id).where(later.bar_id == Waste.bar_id, later.corrects == Waste.id).exists()
        return (
            self._book.one(Formula, Formula.archived_at.is_(None)) is None
            and not prices.in_force(self._context)
            and self._book.one(Waste, Waste.corrects.is_(None), ~corrected) is None
        )

    def by_ref(self, kind: str, ref: str) -> int | None:
        """Return the number of the row that one of a file came in as before, or None."""
        if (kind, ref) in self._imported:
            return self._imported[kind, ref]
        origin, _sign, number = ref.partition(f":{kind}:")
        if origin == self._own_origin and _NUMBER.fullmatch(number):
            own = self._book.get(_REFERENCED[kind], int(number))
            return None if own is None else int(number)
        return None

    def _keep(self, row: Referenced, line: Any) -> None:
        """Write a row down together with others of its kind: one by one takes ten times as long."""
        self._waiting.append((row, line))
        if len(self._waiting) >= _TOGETHER:
            self._write_kept()

    def _write_kept(self) -> None:
        self._book.add_all([line for _row, line in self._waiting])
        for row, line in self._waiting:
            self._note(row, line.id)
        self._book.add_all(self._new_refs)
        self._waiting, self._new_refs = [], []

    def _note(self, row: Referenced, number: int) -> None:
        """Note what was written, and under which reference it is known again."""
        self._taken.note(row.KIND, number)
        if row.ref and (row.KIND, row.ref) not in self._imported:
            self._new_refs.append(Imported(kind=row.KIND, ref=row.ref, number=number))
            self._imported[row.KIND, row.ref] = number

    def item(self, name: str, kind: IngredientKind | None) -> int:
        """Return the ingredient of a name; a new one is written down as of this kind."""
        key = plain_name(name)
        if key not in self.ingredients:
            self._room_for_one_more(self.ingredients)
            self.ingredients[key] = ingredients.add(self._context, name, kind).id
            self._taken.note("ingredient", self.ingredients[key])
        number = self.ingredients[key]
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
