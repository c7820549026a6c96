"""Everything a bar has in its book, as one JSON document and as tables."""

from __future__ import annotations

import hashlib
import json
from bisect import bisect_right
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import datetime
from fractions import Fraction
from typing import Any

from bot.trade.money import from_minor
from bot.work import peeled
from bot.work.desk import Desk
from bot.work.export_tables import tables
from bot.work.peeled import PeeledView
from storage.tables import (
    Bar,
    Batch,
    BatchEvent,
    BatchLine,
    Delivery,
    DrinksCount,
    Formula,
    FormulaLine,
    FormulaSprayer,
    FormulaVersion,
    Imported,
    Ingredient,
    Juicing,
    Member,
    Numbered,
    Price,
    Sprayer,
    SprayerRun,
    StockCount,
    StockPar,
    Waste,
)
from storage.types import exact_text

FORMAT = "peel-ledger"
VERSION = 1
_TELL_EVERY = 500
# What a count remembers as the last that came or went before it.
_AFTER = {"after_delivery": "delivery", "after_batch": "batch", "after_waste": "waste"}


@dataclass(frozen=True, slots=True)
class Export:
    """The files: their names with what is in them, and how many rows of each kind they hold."""

    files: tuple[tuple[str, bytes], ...]
    rows: dict[str, int]


def export(desk: Desk) -> Export:
    """Write the book down: formulas, prices, waste and batches as CSV, and all of it as JSON."""
    found = document(desk)
    text = json.dumps(found, ensure_ascii=False, indent=1).encode("utf-8")
    counts = {name: len(found[name]) for name in ("formulas", "prices", "waste", "batches")}
    return Export((*tables(found).items(), ("peel-ledger.json", text)), counts)


def origin_of(bar: Bar) -> str:
    """Return a name for this bar in this database that no other is likely to have."""
    said = f"{bar.id} {int(bar.created_at.timestamp())} {bar.zone}"
    return hashlib.sha256(said.encode()).hexdigest()[:12]


# -- the document -----------------------------------------------------------------------------


def document(desk: Desk) -> dict[str, Any]:
    """Return all that stands in the book; what was taken back is left out."""
    return _Writer(desk).document()


def _number(value: Fraction | None) -> str | None:
    return None if value is None else exact_text(value)


def _moment(value: datetime | None) -> str | None:
    return None if value is None else value.isoformat().replace("+00:00", "Z")


class _Writer:
    def __init__(self, desk: Desk) -> None:
        self._desk = desk
        self._book = desk.book
        bar = desk.book.session.get(Bar, desk.bar.id)
        assert bar is not None  # noqa: S101 - somebody sits at its desk
        self._bar = bar
        self._origin = origin_of(bar)
        self._ingredients = {row.id: row for row in self._book.all(Ingredient, order=Ingredient.id)}
        self._formulas = {row.id: row for row in self._book.all(Formula, order=Formula.id)}
        self._people = {row.person_id: row.name for row in self._book.all(Member)}
        self._numbers: dict[str, list[int]] = {}
        # A row that came from a file keeps the reference it had there, so that it never comes in twice.
        self._refs = {(row.kind, row.number): row.ref for row in self._book.all(Imported)}

    def document(self) -> dict[str, Any]:
        desk = self._desk
        deliveries, wasted = self._standing(Delivery), self._wasted()
        made = self._book.all(Batch, Batch.state != "undone", order=Batch.id)
        self._numbers = {
            "delivery": [row.id for row in deliveries],
            "waste": [row.id for row in wasted],
            "batch": [row.id for row in made],
        }
        return {
            "format": FORMAT,
            "version": VERSION,
            "exported_at": _moment(desk.now.replace(microsecond=0)),
            "bar": self._bar_facts(),
            "ingredients": [self._ingredient(row) for row in self._ingredients.values()],
            "formulas": [self._formula(row) for row in self._formulas.values()],
            "sprayers": [self._sprayer(row) for row in self._book.all(Sprayer, order=Sprayer.id)],
            "prices": [self._price(row) for row in self._standing(Price)],
            "deliveries": self._each(deliveries, self._delivery),
            "waste": self._each(wasted, self._waste),
            "juicings": [self._juicing(row) for row in self._standing(Juicing)],
            "batches": self._batches(made),
            "drinks": self._each(self._standing(DrinksCount), self._drinks),
            "counts": [self._count(row) for row in self._standing(StockCount)],
            "peeled": [self._peeled(one) for one in peeled.waiting(desk)],
            "pars": [self._par(row) for row in self._book.all(StockPar, order=StockPar.ingredient_id)],
        }

    def _each(self, rows: Sequence[Any], write: Callable[[Any], dict[str, Any]]) -> list[dict[str, Any]]:
        """Write rows of which there can be very many, and tell how far it is."""
        written = []
        for number, row in enumerate(rows, start=1):
            written.append(write(row))
            if number % _TELL_EVERY == 0:
                self._desk.watch(number, len(rows))
        return written

    def _ref(self, kind: str, number: int) -> str:
        return self._refs.get((kind, number)) or f"{self._origin}:{kind}:{number}"

    def _standing(self, table: type[Any]) -> list[Any]:
        """Return rows that were not taken back; rows that only take back are left out too."""
        rows = self._book.all(table, order=table.id)
        corrected = {row.corrects for row in rows if row.corrects is not None}
        return [
            row
            for row in rows
            if row.id not in corrected and not getattr(row, "void", False) and not _reverses(row)
        ]

    def _wasted(self) -> list[Waste]:
        return [row for row in self._standing(Waste) if (row.count_milli or row.grams_milli or 0) > 0]

    def _money(self, minor: int | None) -> str | None:
        return None if minor is None else str(from_minor(minor, self._bar.currency))

    def _name(self, ingredient_id: int | None) -> str | None:
        return None if ingredient_id is None else self._ingredients[ingredient_id].name

    def _said(self, row: Any) -> dict[str, Any]:
        return {"at": _moment(row.at), "by": self._people.get(row.by, "")}

    def _bar_facts(self) -> dict[str, Any]:
        bar = self._bar
        settings = dict(bar.settings)
        since = {
            self._ingredients[int(number)].name: day
            for number, day in settings.pop("spraying_since", {}).items()
            if int(number) in self._ingredients
        }
        sprayer = settings.pop("sprayer", 0)
        chosen = self._book.get(Sprayer, sprayer) if sprayer else None
        settings.pop("more", None)
        costs = {
            self._formulas[int(number)].name: one
            for number, one in settings.pop("formula_costs", {}).items()
            if int(number) in self._formulas
        }
        return {
            "origin": self._origin,
            "name": bar.name,
            "currency": bar.currency,
            "units": bar.units,
            "zone": bar.zone,
            "closing_minute": bar.closing_minute,
            "jurisdiction": bar.jurisdiction,
            "settings": settings,
            "spraying_since": since,
            "sprayer": None if chosen is None else chosen.name,
            "formula_costs": costs,
        }

    def _ingredient(self, row: Ingredient) -> dict[str, Any]:
        return {
            "name": row.name,
            "kind": row.kind,
            "strength_percent": _number(row.strength_percent),
            "density_g_per_ml": _number(row.density_g_per_ml),
            "density_source": row.density_source,
            "grams_each": _number(row.grams_each),
            "food_grade": row.food_grade,
            "details": row.details,
            "archived": row.archived_at is not None,
        }

    def _formula(self, row: Formula) -> dict[str, Any]:
        versions = self._book.all(
            FormulaVersion, FormulaVersion.formula_id == row.id, order=FormulaVersion.number
        )
        lines = self._book.all(
            FormulaLine, FormulaLine.formula_id == row.id, order=(FormulaLine.number, FormulaLine.position)
        )
        return {
            "ref": self._ref("formula", row.id),
            "name": row.name,
            "preparation": row.preparation,
            "archived": row.archived_at is not None,
            "versions": [
                {
                    "number": one.number,
                    "rest_hours": _number(one.rest_hours),
                    "discard_days": one.discard_days,
                    "sprays_low": _number(one.sprays_low),
                    "sprays_high": _number(one.sprays_high),
                    "spray_ml_low": _number(one.spray_ml_low),
                    "spray_ml_high": _number(one.spray_ml_high),
                    "replaces": self._name(one.garnish_id),
                    "note": one.note,
                    "made_at": _moment(one.made_at),
                    "lines": [
                        {
                            "ingredient": self._name(line.ingredient_id),
                            "amount": _number(line.amount),
                            "unit": line.unit,
                        }
                        for line in lines
                        if line.number == one.number
                    ],
                }
                for one in versions
            ],
        }

    def _sprayer(self, row: Sprayer) -> dict[str, Any]:
        runs = self._book.all(SprayerRun, SprayerRun.sprayer_id == row.id, order=SprayerRun.id)
        used = self._book.all(FormulaSprayer, FormulaSprayer.sprayer_id == row.id)
        return {
            "name": row.name,
            "archived": row.archived_at is not None,
            "formulas": [self._formulas[one.formula_id].name for one in used],
            "runs": [
                {
                    "formula": None if one.formula_id is None else self._formulas[one.formula_id].name,
                    "before_g": _number(one.before_g),
                    "after_g": _number(one.after_g),
                    "step_g": _number(one.step_g),
                    "sprays": one.sprays,
                    "density_g_per_ml": _number(one.density_g_per_ml),
                    "priming": one.priming,
                    "at": _moment(one.at),
                }
                for one in runs
                if one.undone_at is None
            ],
        }

    def _price(self, row: Price) -> dict[str, Any]:
        return {
            "ref": self._ref("price", row.id),
            "ingredient": self._name(row.ingredient_id),
            "pack_amount": _number(row.pack_amount),
            "pack_unit": row.pack_unit,
            "price": self._money(row.price_minor),
            "garnishes_low": _number(row.garnishes_low),
            "garnishes_high": _number(row.garnishes_high),
            **self._said(row),
        }

    def _delivery(self, row: Delivery) -> dict[str, Any]:
        return {
            "ref": self._ref("delivery", row.id),
            "ingredient": self._name(row.ingredient_id),
            "dimension": row.dimension,
            "amount": _number(Fraction(row.amount_milli, 1000)),
            "cost": self._money(row.cost_minor),
            "day": row.business_day.isoformat(),
            **self._said(row),
        }

    def _waste(self, row: Waste) -> dict[str, Any]:
        return {
            "ref": self._ref("waste", row.id),
            "day": row.business_day.isoformat(),
            "fruit": self._name(row.ingredient_id),
            "pieces": None if row.count_milli is None else _number(Fraction(row.count_milli, 1000)),
            "grams": None if row.grams_milli is None else _number(Fraction(row.grams_milli, 1000)),
            "reason": row.reason,
            "cost": self._money(row.cost_minor),
            "late": row.late,
            **self._said(row),
        }

    def _juicing(self, row: Juicing) -> dict[str, Any]:
        return {
            "ref": self._ref("juicing", row.id),
            "fruit": self._name(row.ingredient_id),
            "pieces": _number(Fraction(row.count_milli, 1000)),
            "volume_ml": _number(row.volume_ml),
            "day": row.business_day.isoformat(),
            **self._said(row),
        }

    def _batches(self, rows: Sequence[Batch]) -> list[dict[str, Any]]:
        lines: dict[int, list[BatchLine]] = {}
        for line in self._book.all(BatchLine, order=(BatchLine.batch_id, BatchLine.position)):
            lines.setdefault(line.batch_id, []).append(line)
        events: dict[int, list[BatchEvent]] = {}
        for event in self._book.all(BatchEvent, order=BatchEvent.id):
            events.setdefault(event.batch_id, []).append(event)
        return [self._batch(row, lines.get(row.id, []), events.get(row.id, [])) for row in rows]

    def _batch(self, row: Batch, lines: list[BatchLine], events: list[BatchEvent]) -> dict[str, Any]:
        corrected = {one.corrects for one in events if one.corrects is not None}
        return {
            "ref": self._ref("batch", row.id),
            "number": row.id,
            "formula": self._formulas[row.formula_id].name,
            "version": row.version,
            "state": row.state,
            "total_ml": _number(row.total_ml),
            "made_at": _moment(row.made_at),
            "by": self._people.get(row.made_by, ""),
            "rest_until": _moment(row.rest_until),
            "discard_on": row.discard_on.isoformat(),
            "opened_at": _moment(row.opened_at),
            "ended_at": _moment(row.ended_at),
            "lost_ml": _number(row.lost_ml),
            "lost_reason": row.lost_reason,
            "clarity": row.clarity,
            "lines": [
                {
                    "ingredient": self._name(one.ingredient_id),
                    "amount": _number(one.amount),
                    "unit": one.unit,
                    "lot": one.lot,
                }
                for one in lines
            ],
            "events": [
                {"what": one.what, "clarity": one.clarity, "note": one.note, **self._said(one)}
                for one in events
                if one.corrects is None and one.id not in corrected
            ],
            "frozen": row.frozen,
        }

    def _drinks(self, row: DrinksCount) -> dict[str, Any]:
        return {
            "ref": self._ref("drinks", row.id),
            "day": row.business_day.isoformat(),
            "formula": None if row.formula_id is None else self._formulas[row.formula_id].name,
            "garnish": self._name(row.ingredient_id),
            "drinks": row.drinks,
            "ran_out": row.ran_out,
            **self._said(row),
        }

    def _count(self, row: StockCount) -> dict[str, Any]:
        return {
            "ref": self._ref("count", row.id),
            "ingredient": self._name(row.ingredient_id),
            "dimension": row.dimension,
            "amount": _number(Fraction(row.amount_milli, 1000)),
            "day": row.business_day.isoformat(),
            **{name: self._last(kind, getattr(row, f"after_{kind}")) for name, kind in _AFTER.items()},
            **self._said(row),
        }

    def _last(self, kind: str, number: int) -> str | None:
        """Return the reference of the last row of a kind that stands and is numbered no higher."""
        known = self._numbers[kind]
        at = bisect_right(known, number)
        return self._ref(kind, known[at - 1]) if at else None

    def _peeled(self, one: PeeledView) -> dict[str, Any]:
        return {
            "ref": self._ref("peeled", one.id),
            "fruit": one.ingredient.name,
            "pieces": _number(one.left),
            "at": _moment(one.at),
            "lost_at": _moment(one.lost_at),
        }

    def _par(self, row: StockPar) -> dict[str, Any]:
        return {
            "ingredient": self._name(row.ingredient_id),
            "amount": _number(row.amount),
            "unit": row.unit,
        }


def _reverses(row: Numbered) -> bool:
    """Whether a row only takes another back by the opposite sign."""
    return isinstance(row, Delivery) and row.amount_milli < 0
