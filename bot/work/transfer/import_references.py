"""Resolve the references of an imported row: earlier imports, and ingredients and formulas by name."""

from __future__ import annotations

import re
from collections.abc import Sized
from dataclasses import dataclass, field
from typing import Any

from bot.trade.formulas.ingredient_names.reading import plain_name
from bot.trade.formulas.kinds import IngredientKind
from bot.work.context import BarView, Context
from bot.work.formulas import ingredients
from bot.work.money import prices
from bot.work.money.prices import Course, PriceView
from bot.work.standing import stands
from bot.work.transfer.export import origin_of
from bot.work.transfer.fields import Referenced
from bot.work.transfer.import_rows import Sheet
from bot.work.transfer.problems import UnreadableFileError
from bot.work.transfer.rows import SECTIONS, BarRow
from storage.tables import Bar, Formula, Imported, Ingredient, MenuDrink, OtherName, Sprayer, Waste

_REFERENCED: dict[str, Any] = {model.KIND: model.TABLE for model in SECTIONS.values() if model.KIND}
_TOGETHER = 1_000  # more would only use memory
_NUMBER = re.compile(r"[0-9]{1,18}")
# Every message searches the names: more than any bar uses would slow down everybody.
MOST_NAMES = 2_000


@dataclass
class Taken:
    """How many rows of each kind were new, and how many existed already; `older` prices were left out.

    `settings`: the book was empty, so the settings were imported too: the bar before and after.
    `renumbered` are the batches whose number was taken: the number in the file, and the new one; and
    `renumbered_trials` the trials.
    """

    new: dict[str, int] = field(default_factory=dict)
    already: dict[str, int] = field(default_factory=dict)
    older: int = 0
    settings: tuple[BarView, BarView] | None = None
    renumbered: list[tuple[int, int]] = field(default_factory=list)
    renumbered_trials: list[tuple[int, int]] = field(default_factory=list)
    brought: dict[str, list[int]] = field(default_factory=dict)  # numbers by kind, for undoing the import
    latest: dict[str, int] = field(default_factory=dict)  # a formula's newest version
    runs: dict[str, int] = field(default_factory=dict)  # the number of a sprayer's weighings
    pars: list[tuple[int, str, str]] = field(default_factory=list)
    strengths: list[tuple[int, str]] = field(default_factory=list)
    settings_changed: list[dict[str, Any]] = field(default_factory=list)  # before and after

    def note(self, kind: str, *numbers: int) -> None:
        """Record the rows added to the book."""
        self.brought.setdefault(kind, []).extend(numbers)


class Intake:
    """The state of an import: the book and earlier imports. It is pydantic's context.

    Errors go to the sheet's problems; the caller then keeps nothing.
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
        # An archived name may be another name of something now, as after a merging.
        active = {row.match_key for row in known if row.archived_at is None}
        others = {row.match_key: row.ingredient_id for row in self._book.all(OtherName)}
        self.ingredients |= {key: number for key, number in others.items() if key not in active}
        self._put_away = {row.id for row in known if row.archived_at is not None}
        self.formulas = {row.match_key: row.id for row in self._book.all(Formula)}
        self.drinks = {row.match_key: row.id for row in self._book.all(MenuDrink)}
        self._imported = {(row.kind, row.ref): row.number for row in self._book.all(Imported)}
        self._sprayers = {row.match_key: row.id for row in self._book.all(Sprayer)}
        self._empty = self._is_empty()
        self._in_force: dict[int, PriceView] = {}
        self._courses: dict[int, Course] = {}
        self._waiting: list[tuple[Referenced, Any]] = []
        self._new_refs: list[Imported] = []
        self._event_marks: dict[int, str] = {}  # of the reminders of each event, by its number in the file
        self._bar: BarRow | None = None  # the file's data about its bar, if imported too
        self._line = 0  # of the current row in the file
        self._source = f"import {upload}"

    @property
    def bar(self) -> BarView:
        """The bar in its current state: the file's settings may have been imported."""
        return self._context.bar

    def _is_empty(self) -> bool:
        """Whether the book has no formula, price or waste, apart from undone ones."""
        return (
            self._book.one(Formula, Formula.archived_at.is_(None)) is None
            and not prices.in_force(self._context)
            and self._book.one(Waste, stands(Waste)) is None
        )

    def by_ref(self, kind: str, ref: str) -> int | None:
        """Return the number of the row that a reference was imported as before, or None."""
        if (kind, ref) in self._imported:
            return self._imported[kind, ref]
        origin, _sign, number = ref.partition(f":{kind}:")
        if origin == self._own_origin and _NUMBER.fullmatch(number):
            own = self._book.get(_REFERENCED[kind], int(number))
            return None if own is None else int(number)
        return None

    def _keep(self, row: Referenced, line: Any) -> None:
        """Add a row in a batch with others of its kind: one by one takes ten times as long."""
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
        """Record an added row and the reference that identifies it."""
        self._taken.note(row.KIND, number)
        if row.ref and (row.KIND, row.ref) not in self._imported:
            self._new_refs.append(Imported(kind=row.KIND, ref=row.ref, number=number))
            self._imported[row.KIND, row.ref] = number

    def item(self, name: str, kind: IngredientKind | None) -> int:
        """Return the ingredient of a name, adding a new one with this kind."""
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
        """Restore an archived ingredient, as part of this import."""
        found = self._book.get(Ingredient, number)
        assert found is not None  # noqa: S101 - it was among the bar's own
        found.archived_at = None
        self._put_away.discard(number)
        self._taken.note("ingredient", number)

    @staticmethod
    def _room_for_one_more(names: Sized) -> None:
        """Raise UnreadableFileError if a bar would have more names of a kind than it can use."""
        if len(names) >= MOST_NAMES:
            raise UnreadableFileError("names")
