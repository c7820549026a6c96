"""How each row of a bar's book is written in its exported document."""

from __future__ import annotations

import hashlib
from bisect import bisect_right
from collections.abc import Mapping, Sequence
from datetime import datetime
from fractions import Fraction
from typing import Any

from bot.trade.money.money import from_minor
from bot.work.context import Context
from bot.work.fruit.peeled import PeeledView
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
    Price,
    Sprayer,
    SprayerRun,
    StockCount,
    StockPar,
    Waste,
)
from storage.types import exact_text

# What a count remembers as the last that came or went before it.
_AFTER = {"after_delivery": "delivery", "after_batch": "batch", "after_waste": "waste"}


def origin_of(bar: Bar) -> str:
    """Return a name for this bar in this database that no other is likely to have."""
    said = f"{bar.id} {int(bar.created_at.timestamp())} {bar.zone}"
    return hashlib.sha256(said.encode()).hexdigest()[:12]


def _number(value: Fraction | None) -> str | None:
    return None if value is None else exact_text(value)


def moment(value: datetime | None) -> str | None:
    """Write an instant as the document has it."""
    return None if value is None else value.isoformat().replace("+00:00", "Z")


class RowWriter:
    """Writes rows of one bar: what is numbered there by name, each under a reference of its own."""

    def __init__(self, context: Context) -> None:
        self._book = context.book
        bar = context.book.session.get(Bar, context.bar.id)
        assert bar is not None  # noqa: S101 - somebody sits at its desk
        self._bar = bar
        self._origin = origin_of(bar)
        self._ingredients = {row.id: row for row in self._book.all(Ingredient, order=Ingredient.id)}
        self._formulas = {row.id: row for row in self._book.all(Formula, order=Formula.id)}
        self._people = {row.person_id: row.name for row in self._book.all(Member)}
        # A row that came from a file keeps the reference it had there, so that it never comes in twice.
        self._refs = {(row.kind, row.number): row.ref for row in self._book.all(Imported)}

    @property
    def ingredients(self) -> Sequence[Ingredient]:
        """All ingredients, in their order."""
        return list(self._ingredients.values())

    @property
    def formulas(self) -> Sequence[Formula]:
        """All formulas, in their order."""
        return list(self._formulas.values())

    def _ref(self, kind: str, number: int) -> str:
        return self._refs.get((kind, number)) or f"{self._origin}:{kind}:{number}"

    def _money(self, minor: int | None) -> str | None:
        return None if minor is None else str(from_minor(minor, self._bar.currency))

    def _name(self, ingredient_id: int | None) -> str | None:
        return None if ingredient_id is None else self._ingredients[ingredient_id].name

    def _said(self, row: Any) -> dict[str, Any]:
        return {"at": moment(row.at), "by": self._people.get(row.by, "")}

    def bar_facts(self) -> dict[str, Any]:
        """Write the bar itself and its settings, what is numbered there by name."""
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

    def ingredient(self, row: Ingredient) -> dict[str, Any]:
        """Write an ingredient."""
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

    def formula(self, row: Formula) -> dict[str, Any]:
        """Write a formula with all its versions."""
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
                    "made_at": moment(one.made_at),
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

    def sprayer(self, row: Sprayer) -> dict[str, Any]:
        """Write a sprayer with its weighings."""
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
                    "at": moment(one.at),
                }
                for one in runs
                if one.undone_at is None
            ],
        }

    def price(self, row: Price) -> dict[str, Any]:
        """Write a price."""
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

    def delivery(self, row: Delivery) -> dict[str, Any]:
        """Write what was bought in."""
        return {
            "ref": self._ref("delivery", row.id),
            "ingredient": self._name(row.ingredient_id),
            "dimension": row.dimension,
            "amount": _number(Fraction(row.amount_milli, 1000)),
            "cost": self._money(row.cost_minor),
            "day": row.business_day.isoformat(),
            **self._said(row),
        }

    def waste(self, row: Waste) -> dict[str, Any]:
        """Write fruit thrown out."""
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

    def juicing(self, row: Juicing) -> dict[str, Any]:
        """Write fruit juiced."""
        return {
            "ref": self._ref("juicing", row.id),
            "fruit": self._name(row.ingredient_id),
            "pieces": _number(Fraction(row.count_milli, 1000)),
            "volume_ml": _number(row.volume_ml),
            "day": row.business_day.isoformat(),
            **self._said(row),
        }

    def batch(self, row: Batch, lines: Sequence[BatchLine], events: Sequence[BatchEvent]) -> dict[str, Any]:
        """Write a batch with its lines and what happened to it."""
        corrected = {one.corrects for one in events if one.corrects is not None}
        return {
            "ref": self._ref("batch", row.id),
            "number": row.id,
            "formula": self._formulas[row.formula_id].name,
            "version": row.version,
            "state": row.state,
            "total_ml": _number(row.total_ml),
            "made_at": moment(row.made_at),
            "by": self._people.get(row.made_by, ""),
            "rest_until": moment(row.rest_until),
            "discard_on": row.discard_on.isoformat(),
            "opened_at": moment(row.opened_at),
            "ended_at": moment(row.ended_at),
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

    def drinks(self, row: DrinksCount) -> dict[str, Any]:
        """Write a count of drinks."""
        return {
            "ref": self._ref("drinks", row.id),
            "day": row.business_day.isoformat(),
            "formula": None if row.formula_id is None else self._formulas[row.formula_id].name,
            "garnish": self._name(row.ingredient_id),
            "drinks": row.drinks,
            "ran_out": row.ran_out,
            **self._said(row),
        }

    def count(self, row: StockCount, standing: Mapping[str, Sequence[int]]) -> dict[str, Any]:
        """Write a count of stock; `standing` are the numbers of the rows that stand, by kind."""
        return {
            "ref": self._ref("count", row.id),
            "ingredient": self._name(row.ingredient_id),
            "dimension": row.dimension,
            "amount": _number(Fraction(row.amount_milli, 1000)),
            "day": row.business_day.isoformat(),
            **{
                name: self._last(kind, standing[kind], getattr(row, f"after_{kind}"))
                for name, kind in _AFTER.items()
            },
            **self._said(row),
        }

    def _last(self, kind: str, standing: Sequence[int], number: int) -> str | None:
        """Return the reference of the last row of a kind that stands and is numbered no higher."""
        at = bisect_right(standing, number)
        return self._ref(kind, standing[at - 1]) if at else None

    def peeled(self, one: PeeledView) -> dict[str, Any]:
        """Write peeled fruit that lies there."""
        return {
            "ref": self._ref("peeled", one.id),
            "fruit": one.ingredient.name,
            "pieces": _number(one.left),
            "at": moment(one.at),
            "lost_at": moment(one.lost_at),
        }

    def par(self, row: StockPar) -> dict[str, Any]:
        """Write the least that is wanted of something."""
        return {
            "ingredient": self._name(row.ingredient_id),
            "amount": _number(row.amount),
            "unit": row.unit,
        }
