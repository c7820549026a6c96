"""Undo an import: reverse its log entries with opposite rows, and archive the names that it added.

A name used since stays, as does a batch with bottles moved to another bar; both are named. Afterwards the
same file, or a corrected one, can be imported.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from itertools import groupby
from typing import Any

from sqlalchemy import ColumnElement, and_, false, func, or_

from bot.trade.formulas.ingredient_names.reading import plain_name
from bot.work import standing
from bot.work.batches import batch_undo, moving
from bot.work.batches.batches import BatchState
from bot.work.context import Context
from bot.work.errors import NotThereError
from bot.work.events import events
from bot.work.fruit import peeled
from bot.work.menu import menu
from bot.work.people import settings_undo
from bot.work.reminders import own
from bot.work.stock import pars
from bot.work.trials.trials import TrialState
from storage.tables import (
    Batch,
    BatchLine,
    Delivery,
    DrinksCount,
    Entry,
    Formula,
    FormulaLine,
    FormulaSprayer,
    FormulaVersion,
    Imported,
    Ingredient,
    Juicing,
    PeeledFruit,
    Price,
    Sprayer,
    SprayerRun,
    StockCount,
    StockPar,
    Trial,
    TrialVariant,
    Waste,
    Wording,
)

_AT_ONCE = 500
# The table of each kind of logged row.
_LOGGED: dict[str, Any] = {
    "price": Price,
    "delivery": Delivery,
    "waste": Waste,
    "juicing": Juicing,
    "drinks": DrinksCount,
    "count": StockCount,
}
_ITEMS: tuple[Any, ...] = (Price, Delivery, Waste, Juicing, DrinksCount, StockCount, PeeledFruit, StockPar)
_KIND = {table: kind for kind, table in _LOGGED.items()}
_USES_PEELED = {Waste: peeled.take_back_waste, Juicing: peeled.take_back_juicing}
_MOST_NAMED = 60

Spans = list[list[int]]


def spans(numbers: Iterable[int]) -> Spans:
    """Convert numbers to [first, last] for each consecutive run: an import's rows are mostly one run."""
    ordered = sorted(set(numbers))
    runs = groupby(enumerate(ordered), key=lambda one: one[1] - one[0])
    return [[found[0], found[-1]] for found in ([number for _at, number in run] for _key, run in runs)]


def within(column: Any, numbers: Spans) -> ColumnElement[bool]:
    """Return the condition that a column is in one of the spans."""
    return or_(false(), *(column.between(first, last) for first, last in numbers))


@dataclass
class _Brought:
    """The rows of one import, or several: spans of numbers by kind."""

    numbers: dict[str, Spans] = field(default_factory=dict)

    def add(self, brought: dict[str, Spans]) -> None:
        for kind, found in brought.items():
            self.numbers.setdefault(kind, []).extend(found)

    def of(self, kind: str) -> Spans:
        return self.numbers.get(kind, [])

    def keep(self, kind: str, numbers: Iterable[int]) -> None:
        """Leave out some numbers: their rows stay."""
        self.numbers[kind] = spans(set(self.ids(kind)) - set(numbers))

    def ids(self, kind: str) -> list[int]:
        return [number for first, last in self.of(kind) for number in range(first, last + 1)]


def take_back(context: Context, details: dict[str, Any]) -> dict[str, Any]:
    """Undo an import; return what stays: the names used since as `kept`, batches in other bars as `moved`.

    Raises NotThereError for an import without a record of its rows.
    """
    if "brought" not in details:
        raise NotThereError("log entry", "")
    brought = _Brought(dict(details["brought"]))
    moved = moving.elsewhere(context, brought.ids("batch"))
    brought.keep("batch", moved)
    gone = _all_gone(context, brought)
    touched = _values(context, details)
    kept = _formulas(context, brought, gone, details.get("latest", {}))
    kept += _ingredients(context, brought, gone)
    kept += _sprayers(context, brought, details.get("runs", {}))
    done, rows = 0, sum(len(brought.ids(kind)) for kind in _LOGGED)
    for kind in _LOGGED:
        for first, last in _pieces(brought.of(kind)):
            touched |= _reverse(context, kind, first, last)
            done += last - first + 1
            context.watch(done, rows)
    touched |= _batches(context, brought)
    for trial in context.book.all(Trial, within(Trial.id, brought.of("trial"))):
        trial.state = TrialState.UNDONE
    for number in brought.ids("peeled"):
        peeled.drop_imported(context, number)
    for wording in context.book.all(Wording, within(Wording.id, brought.of("wording"))):
        context.book.session.delete(wording)
    menu.put_away(context, brought.ids("drink"))
    for number in brought.ids("event"):
        events.PLANNED.write(context, {"event": number}, True)
    own.drop(context, brought.ids("reminder"))
    _forget(context, brought)
    context.book.touched()
    pars.watch(context, touched)
    for changed in reversed(details.get("settings", [])):
        if isinstance(changed, dict):
            settings_undo.take_back_unchanged(context, changed)
    stays: dict[str, Any] = {"kept": ", ".join(kept[:_MOST_NAMED])} if kept else {}
    return stays | ({"moved": sorted(moved.items())} if moved else {})


def _all_gone(context: Context, brought: _Brought) -> _Brought:
    """Return the rows of this import and of earlier undone ones: none of them counts as a use."""
    gone = _Brought()
    gone.add(brought.numbers)
    imports = {row.id: row for row in context.book.all(Entry, Entry.what == "import")}
    for undone in context.book.all(Entry, Entry.chain.in_(list(imports))):
        gone.add(imports[undone.chain or 0].details.get("brought", {}))
    return gone


# -- names ----------------------------------------------------------------------------------


def _formulas(context: Context, brought: _Brought, gone: _Brought, latest: dict[str, int]) -> list[str]:
    """Archive formulas under other names, which frees theirs; those used since stay."""
    numbers = brought.ids("formula")
    if not numbers:
        return []
    book = context.book
    used: set[int] = set()
    for table, where in (
        (Batch, and_(Batch.state != BatchState.UNDONE, ~within(Batch.id, gone.of("batch")))),
        (Trial, and_(Trial.state != TrialState.UNDONE, ~within(Trial.id, gone.of("trial")))),
        (DrinksCount, and_(DrinksCount.corrects.is_(None), ~within(DrinksCount.id, gone.of("drinks")))),
    ):
        query = book.rows(table, table.formula_id, where=[where, table.formula_id.in_(numbers)])
        used |= set(book.session.scalars(query))
    kept = []
    for number in numbers:
        row = book.get(Formula, number)
        if row is None:
            continue
        if number in used or row.latest > latest.get(str(number), row.latest):
            kept.append(row.name)
            continue
        row.name, row.match_key = _freed(context, Formula, row)
        row.archived_at = context.now
        brought.numbers.setdefault("put away", []).append([number, number])
    return kept


def _freed(context: Context, table: Any, row: Any) -> tuple[str, str]:
    """Return a name for an archived thing, so that a file can use its name again."""
    name = f"{row.name[:60]} (#{row.id})"
    while context.book.one(table, table.match_key == plain_name(name)) is not None:
        name = f"{name[:70]} ’"
    return name, plain_name(name)


def _ingredients(context: Context, brought: _Brought, gone: _Brought) -> list[str]:
    """Archive the ingredients that nothing else uses."""
    numbers = brought.ids("ingredient")
    if not numbers:
        return []
    used = _items_used(context, numbers, brought, gone)
    kept = []
    for row in context.book.all(Ingredient, within(Ingredient.id, brought.of("ingredient"))):
        if row.id in used:
            kept.append(row.name)
        else:
            row.archived_at = context.now
    return kept


def _items_used(context: Context, numbers: Sequence[int], brought: _Brought, gone: _Brought) -> set[int]:
    book = context.book
    used: set[int] = set()
    for table in _ITEMS:
        where: list[ColumnElement[bool]] = [table.ingredient_id.in_(numbers)]
        if table in _KIND:  # rows that correct others concern the same thing
            where += [table.corrects.is_(None), ~within(table.id, gone.of(_KIND[table]))]
        if table is PeeledFruit:
            where.append(~within(PeeledFruit.id, gone.of("peeled")))
        used |= set(book.session.scalars(book.rows(table, table.ingredient_id, where=where).distinct()))
    lines = book.rows(BatchLine, BatchLine.ingredient_id).where(
        ~within(BatchLine.batch_id, gone.of("batch")), BatchLine.ingredient_id.in_(numbers)
    )
    used |= set(book.session.scalars(lines))
    standing = ~within(FormulaLine.formula_id, brought.of("put away"))
    others = [one for one in _gone_formulas(context, gone) if one not in brought.ids("formula")]
    standing = and_(standing, FormulaLine.formula_id.not_in(others))
    query = book.rows(FormulaLine, FormulaLine.ingredient_id, where=[standing])
    used |= set(book.session.scalars(query))
    versions = book.rows(FormulaVersion, FormulaVersion.garnish_id).where(
        ~within(FormulaVersion.formula_id, brought.of("put away")), FormulaVersion.formula_id.not_in(others)
    )
    used |= set(book.session.scalars(versions))
    for variant in book.all(TrialVariant, ~within(TrialVariant.trial_id, gone.of("trial"))):
        used |= {int(line[0]) for line in variant.lines}
    return used


def _gone_formulas(context: Context, gone: _Brought) -> list[int]:
    rows = context.book.all(Formula, within(Formula.id, gone.of("formula")), Formula.archived_at.is_not(None))
    return [row.id for row in rows]


def _sprayers(context: Context, brought: _Brought, runs: dict[str, int]) -> list[str]:
    kept = []
    for number in brought.ids("sprayer"):
        row = context.book.get(Sprayer, number)
        if row is None:
            continue
        weighed = context.book.session.scalar(
            context.book.rows(SprayerRun, func.count()).where(
                SprayerRun.sprayer_id == number, SprayerRun.undone_at.is_(None)
            )
        )
        if (weighed or 0) > runs.get(str(number), 0):
            kept.append(row.name)
            continue
        row.name, row.match_key = _freed(context, Sprayer, row)
        row.archived_at = context.now
        for used in context.book.all(FormulaSprayer, FormulaSprayer.sprayer_id == number):
            context.book.session.delete(used)
    return kept


# -- what was logged ------------------------------------------------------------------------


def _pieces(numbers: Spans) -> Iterator[tuple[int, int]]:
    """Split spans into chunks."""
    for first, last in numbers:
        for start in range(first, last + 1, _AT_ONCE):
            yield start, min(last, start + _AT_ONCE - 1)


def _reverse(context: Context, kind: str, first: int, last: int) -> set[int]:
    """Add the opposite of each valid row; return the ingredients concerned."""
    table = _LOGGED[kind]
    brought = context.book.rows(table, table.first, where=[table.id.between(first, last)])
    rows = context.book.all(table, table.first.in_(brought), standing.stands(table), order=table.id)
    context.book.add_all([standing.reversing(context, row) for row in rows])
    if table in _USES_PEELED:
        for row in rows:
            _USES_PEELED[table](context, row.id)
    return {row.ingredient_id for row in rows if row.ingredient_id is not None}


def _batches(context: Context, brought: _Brought) -> set[int]:
    numbers = brought.ids("batch")
    for number in numbers:
        row = context.book.get(Batch, number)
        if row is not None and row.state != BatchState.UNDONE:
            batch_undo.take_back_making(context, {"batch": number})
    lines = context.book.rows(BatchLine, BatchLine.ingredient_id, where=[BatchLine.batch_id.in_(numbers)])
    return set(context.book.session.scalars(lines)) if numbers else set()


def _values(context: Context, details: dict[str, Any]) -> set[int]:
    """Undo pars and strengths, unless changed since."""
    items: set[int] = set()
    for number, amount, unit in details.get("pars", []):
        par = context.book.get(StockPar, number)
        if par is not None and (par.amount, par.unit) == (Fraction(amount), unit):
            context.book.session.delete(par)
            items.add(number)
    for number, strength in details.get("strengths", []):
        row = context.book.get(Ingredient, number)
        if row is not None and row.strength_percent == Fraction(strength):
            row.strength_percent = None
    context.book.session.flush()
    return items


def _forget(context: Context, brought: _Brought) -> None:
    """Forget the import of these rows, so that they can be imported again."""
    for kind, numbers in brought.numbers.items():
        for row in context.book.all(Imported, Imported.kind == kind, within(Imported.number, numbers)):
            context.book.session.delete(row)
    context.book.session.flush()
