"""Export a bar's book as one JSON document and as tables."""

from __future__ import annotations

import hashlib
import json
from bisect import bisect_right
from collections import defaultdict
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date
from fractions import Fraction
from functools import partial
from typing import Any

from bot.work.batches.batches import standing_events
from bot.work.context import Context
from bot.work.events import events
from bot.work.fruit import peeled
from bot.work.reminders import own
from bot.work.standing import stands
from bot.work.transfer import export_tables, rows, service_rows
from bot.work.transfer.fields import Row, moment, sealed
from bot.work.trials import trials
from bot.work.trials.trials import TrialState
from storage.tables import (
    Bar,
    Batch,
    BatchEvent,
    BatchLine,
    Bottling,
    Delivery,
    DrinksCount,
    Event,
    Formula,
    FormulaLine,
    FormulaSprayer,
    FormulaVersion,
    Imported,
    Ingredient,
    Juicing,
    Member,
    MenuDrink,
    MenuLine,
    OtherName,
    PeeledFruit,
    PeeledUse,
    Price,
    Reminder,
    Sprayer,
    SprayerRun,
    StockCount,
    StockPar,
    Trial,
    TrialVariant,
    Waste,
    Wording,
)
from storage.types import JsonObject

FORMAT = "peel-ledger"
VERSION = 1
_TELL_EVERY = 500
_CAUSES: dict[str, type[Any]] = {"waste": Waste, "juicing": Juicing, "batch": Batch}


@dataclass(frozen=True, slots=True)
class Export:
    """The files by name with their content, the rows of each kind, and the sealed trials by number."""

    files: tuple[tuple[str, bytes], ...]
    rows: dict[str, int]
    sealed: tuple[int, ...]


def export(context: Context) -> Export:
    """Export the book: formulas, prices, waste and batches as CSV, and everything as JSON."""
    found = document(context)
    text = json.dumps(found, ensure_ascii=False, indent=1).encode("utf-8")
    counts = {name: len(found[name]) for name in ("formulas", "prices", "waste", "batches")}
    hidden = tuple(row["number"] for row in found["trials"] if "sealed" in row)
    return Export((*export_tables.tables(found).items(), ("peel-ledger.json", text)), counts, hidden)


def origin_of(bar: Bar) -> str:
    """Return a name for this bar in this database that is practically unique."""
    said = f"{bar.id} {int(bar.created_at.timestamp())} {bar.zone}"
    return hashlib.sha256(said.encode()).hexdigest()[:12]


def document(context: Context) -> dict[str, Any]:
    """Return the content of the book, without undone rows."""
    return _Writer(context).document()


class _Writer:
    """Writes the rows of one bar; as pydantic's context it maps numbers to names."""

    def __init__(self, context: Context) -> None:
        bar = context.book.session.get(Bar, context.bar.id)
        assert bar is not None  # noqa: S101 - somebody sits at its desk
        self.bar = bar
        self._context = context
        self._all = context.book.all
        self.ingredient_names = {row.id: row.name for row in self._all(Ingredient)}
        self.formula_names = {row.id: row.name for row in self._all(Formula)}
        self.drink_names = {row.id: row.name for row in self._all(MenuDrink)}
        self.people = {row.person_id: row.name for row in self._all(Member)}
        self._event_marks: dict[str, int] = {}
        self._origin = origin_of(bar)
        # A row imported from a file keeps its reference, so that it is never imported twice.
        self._refs = {(row.kind, row.number): row.ref for row in self._all(Imported)}
        self._standing: dict[str, list[int]] = {}  # the numbers of the valid rows, by kind
        self._hidden = trials.running_blind(context)

    def ref(self, kind: str, number: int) -> str:
        """Return the reference of a row."""
        return self._refs.get((kind, number)) or f"{self._origin}:{kind}:{number}"

    def last(self, kind: str, number: int) -> str | None:
        """Return the reference of the last valid row of a kind with at most this number."""
        at = bisect_right(self._standing[kind], number)
        return self.ref(kind, self._standing[kind][at - 1]) if at else None

    def document(self) -> dict[str, Any]:
        """Write the document."""
        deliveries, wasted = self._stand(Delivery), self._stand(Waste)
        made = self._all(Batch, Batch.state != "undone", order=Batch.id)
        for kind, found in (("delivery", deliveries), ("waste", wasted), ("batch", made)):
            self._standing[kind] = [getattr(row, "first", row.id) for row in found]
        return {
            "format": FORMAT,
            "version": VERSION,
            "exported_at": moment(self._context.now.replace(microsecond=0)),
            "bar": self._bar().written(self),
            "ingredients": self._each(self._ingredients(), self._all(Ingredient, order=Ingredient.id)),
            "formulas": self._each(self._formula, self._all(Formula, order=Formula.id)),
            "menu": self._each(self._drink, self._all(MenuDrink, order=MenuDrink.id)),
            "sprayers": self._each(self._sprayer, self._all(Sprayer, order=Sprayer.id)),
            "prices": self._rows(rows.PriceRow, self._stand(Price)),
            "deliveries": self._rows(rows.DeliveryRow, deliveries),
            "waste": self._rows(rows.WasteRow, wasted),
            "juicings": self._rows(rows.JuicingRow, self._stand(Juicing)),
            "trials": self._trials(),
            "batches": self._sealed(self._each(self._batches(), made), "trial", "formula"),
            "drinks": self._rows(rows.DrinksRow, self._stand(DrinksCount)),
            "counts": self._rows(rows.CountRow, self._stand(StockCount)),
            "peeled": self._peeled(),
            "pars": self._rows(rows.ParRow, self._all(StockPar, order=StockPar.ingredient_id)),
            "wordings": self._rows(rows.WordingRow, self._all(Wording, order=Wording.id)),
            "events": self._each(self._event, self._all(Event, Event.cancelled_at.is_(None), order=Event.id)),
            "reminders": self._rows(service_rows.ReminderRow, own.kept_rows(self._context)),
        }

    def _stand(self, table: Any) -> Sequence[Any]:
        """Return rows that are not undone, without the rows that undo others."""
        return self._all(table, stands(table), order=table.first)

    def _rows(self, model: type[Row], found: Sequence[Any]) -> list[dict[str, Any]]:
        return self._each(partial(model.of, names=self), found)

    def _each(self, copy: Callable[[Any], Row], found: Sequence[Any]) -> list[dict[str, Any]]:
        """Write rows that may be very many, and report progress."""
        written = []
        for number, one in enumerate(found, start=1):
            written.append(copy(one).written(self))
            if number % _TELL_EVERY == 0:
                self._context.watch(number, len(found))
        return written

    def _sealed(self, written: list[dict[str, Any]], named: str, *shown: str) -> list[dict[str, Any]]:
        """Seal the rows that tell the key of a running blind trial."""
        hidden = {self.ref("trial", number) for number in self._hidden}
        return [
            sealed(row, "ref", "number", named, *shown) if row[named] in hidden else row for row in written
        ]

    def _bar(self) -> Row:
        settings = {name: one for name, one in self.bar.settings.items() if name != "more"}
        since, costs = settings.pop("spraying_since", {}), settings.pop("formula_costs", {})
        sprayer = self._context.book.get(Sprayer, settings.pop("sprayer", 0))
        return rows.BarRow.of(
            self.bar,
            self,
            origin=self._origin,
            settings=settings,
            spraying_since=_renamed(since, self.ingredient_names),
            sprayer=None if sprayer is None else sprayer.name,
            formula_costs=_renamed(costs, self.formula_names),
        )

    def _ingredients(self) -> Callable[[Ingredient], Row]:
        """Return a function that writes an ingredient with its other names."""
        also = defaultdict(list)
        for other in self._all(OtherName, order=OtherName.id):
            also[other.ingredient_id].append(other.name)
        return lambda row: rows.IngredientRow.of(row, self, other_names=also[row.id])

    def _formula(self, row: Formula) -> Row:
        lines = self._all(FormulaLine, FormulaLine.formula_id == row.id, order=FormulaLine.position)
        versions = self._all(FormulaVersion, FormulaVersion.formula_id == row.id, order=FormulaVersion.number)
        written = [
            rows.VersionRow.of(
                one,
                self,
                lines=[
                    rows.FormulaLineRow.of(line, self, strength_percent=None)
                    for line in lines
                    if line.number == one.number
                ],
            )
            for one in versions
        ]
        return rows.FormulaRow.of(row, self, versions=written)

    def _drink(self, row: MenuDrink) -> Row:
        lines = self._all(MenuLine, MenuLine.menu_id == row.id, order=MenuLine.position)
        written = [service_rows.MenuLineRow.of(one, self) for one in lines]
        return service_rows.MenuRow.of(row, self, lines=written)

    def _event(self, row: Event) -> Row:
        plan = row.plan
        self._event_marks[events.mark(row)] = row.id
        said = {
            "guests": plan["guests"],
            "each": Fraction(plan["each"]),
            "formulas": plan["formulas"],
            "drinks": plan["drinks"],
            "back": row.back and self._by_name(row.back),
            "taken": self._by_name(plan.get("taken", {})),
            "noted": date.fromisoformat(plan["noted"]) if "noted" in plan else None,
            "batches": [self.ref("batch", number) for number in plan.get("batches", [])],
            "drawn": {self.ref("batch", int(number)): ml for number, ml in plan.get("drawn", {}).items()},
        }
        return service_rows.EventRow.of(row, self, number=row.id, **said)

    def _by_name(self, amounts: JsonObject) -> JsonObject:
        return {self.formula_names[int(number)]: ml for number, ml in amounts.items()}

    def event_of(self, row: Reminder) -> int:
        """Return the number of the event that a reminder belongs to, 0 for none."""
        return self._event_marks.get(str(row.details.get("about", "")), 0)

    def _sprayer(self, row: Sprayer) -> Row:
        used = self._all(FormulaSprayer, FormulaSprayer.sprayer_id == row.id)
        runs = self._all(SprayerRun, SprayerRun.sprayer_id == row.id, order=SprayerRun.id)
        return rows.SprayerRow.of(
            row,
            self,
            formulas=[one.formula_id for one in used],
            runs=[rows.RunRow.of(one, self) for one in runs if one.undone_at is None],
        )

    def _batches(self) -> Callable[[Batch], Row]:
        """Return a function that writes a batch with its lines, events and bottles."""
        lines, events = defaultdict(list), defaultdict(list)
        for line in self._all(BatchLine, order=(BatchLine.batch_id, BatchLine.position)):
            lines[line.batch_id].append(rows.BatchLineRow.of(line, self))
        for event in standing_events(self._all(BatchEvent, order=BatchEvent.first)):
            events[event.batch_id].append(rows.BatchEventRow.of(event, self))
        filled = defaultdict(list)
        for one in self._stand(Bottling):
            filled[one.batch_id].append(service_rows.BottlingRow.of(one, self))
        of_trial = {row.batch_id: row for row in self._all(TrialVariant, TrialVariant.batch_id.is_not(None))}

        def write(row: Batch) -> Row:
            of = of_trial.get(row.id)
            return rows.BatchRow.of(
                row,
                self,
                number=row.id,
                lines=lines[row.id],
                events=events[row.id],
                bottles=filled[row.id],
                trial=None if of is None else self.ref("trial", of.trial_id),
                variant=0 if of is None else of.number,
            )

        return write

    def _trials(self) -> list[dict[str, Any]]:
        made = self._all(Trial, Trial.state != TrialState.UNDONE, order=Trial.id)
        return self._sealed(self._each(self._trial, made), "ref", "formula", "kind", "blind", "state", "at")

    def _trial(self, row: Trial) -> Row:
        view, known = trials.get(self._context, row.id), trials.variant_rows(self._context, row.id)
        numbers = {one.number for one in known}
        scores = trials.blind_scores(trials.scores_of(self._context, row.id), view.looked)
        found = [one for one in scores if one.variant in numbers]
        tasters = {key: at for at, key in enumerate(dict.fromkeys(map(trials.taster_of, found)), start=1)}
        return service_rows.TrialRow.of(
            row,
            self,
            number=row.id,
            known=view.known or bool(view.seen_by),
            variants=[self._variant(one) for one in known],
            scores=[
                service_rows.ScoreRow.of(
                    one,
                    self,
                    taster=tasters[trials.taster_of(one)],
                    by="" if one.taster else self.people.get(one.person_id, ""),
                )
                for one in found
            ],
        )

    def _variant(self, row: TrialVariant) -> Row:
        lines = [
            service_rows.VariantLineRow.model_construct(
                ingredient_id=int(number), amount=Fraction(amount), unit=unit
            )
            for number, amount, unit in row.lines
        ]
        return service_rows.VariantRow.of(row, self, lines=lines)

    def _peeled(self) -> list[dict[str, Any]]:
        """Write the peeled fruit with its uses, without what was undone as a whole."""
        uses = peeled.uses_of(self._context)
        fruit = [
            row
            for row in self._all(PeeledFruit, order=PeeledFruit.id)
            if sum(one.count_milli for one in uses.get(row.id, ()) if one.what == peeled.UNDONE)
            < row.count_milli
        ]
        return self._each(lambda row: self._one_peeled(row, uses.get(row.id, ())), fruit)

    def _one_peeled(self, row: PeeledFruit, uses: Sequence[PeeledUse]) -> Row:
        written = [service_rows.PeeledUseRow.of(one, self, cause=self._cause(one)) for one in uses]
        return service_rows.PeeledRow.of(row, self, uses=written)

    def _cause(self, use: PeeledUse) -> str | None:
        """Return the reference of the waste, juicing or batch that a use was for."""
        kind = peeled.CAUSES[use.what]
        number = getattr(use, f"{kind}_id") if kind else None
        row = None if number is None else self._context.book.get(_CAUSES[kind], number)
        return None if row is None else self.ref(kind, getattr(row, "first", row.id))


def _renamed(numbered: dict[str, Any], names: dict[int, str]) -> dict[str, Any]:
    """Return the values stored by number under their names."""
    return {names[int(number)]: one for number, one in numbered.items() if int(number) in names}
