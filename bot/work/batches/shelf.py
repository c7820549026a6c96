"""Dates that a batch inherits from its ingredients: oils age from opening, and juice has its own date."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta
from fractions import Fraction

from bot.trade.batches.shelf import (
    IngredientDate,
    OilBottle,
    ShelfPlan,
    ShelfQuestion,
    oil_discard_on,
    shelf_plan,
)
from bot.trade.days import local_time
from bot.trade.formulas.kinds import PREPARATION_DEFAULTS, IngredientKind, Preparation
from bot.trade.formulas.measures import Dimension
from bot.trade.safety.jurisdiction import Jurisdiction
from bot.work.context import Context
from bot.work.errors import BadValueError
from bot.work.formulas import ingredients
from bot.work.formulas.formulas import FormulaView
from bot.work.formulas.ingredients import IngredientView
from bot.work.formulas.keeping import made_of
from bot.work.formulas.mixture import mix_of, poured
from bot.work.standing import Details, Value
from storage.tables import Ingredient

_FIELDS = ("opened_on", "best_before", "kept_cold")
_FURTHEST = timedelta(days=3650)


@dataclass(frozen=True, slots=True)
class OpenedItem:
    """A bottle of an ingredient as logged: the days it was opened and is best before, and its last day."""

    ingredient: IngredientView
    opened_on: date | None
    best_before: date | None
    kept_cold: bool
    use_until: date | None


def _day(text: str | None) -> date | None:
    return None if text is None else date.fromisoformat(text)


def _item(row: Ingredient) -> OpenedItem:
    opened, best = _day(row.details.get("opened_on")), _day(row.details.get("best_before"))
    cold = bool(row.details.get("kept_cold", False))
    view = IngredientView.of(row)
    until = oil_discard_on(OilBottle(row.name, opened, best, cold)) if is_oil(view) else best
    return OpenedItem(view, opened, best, cold, until)


def is_oil(one: IngredientView) -> bool:
    """Whether an ingredient is an oil, aromatic or carrier: it ages from the day it is opened."""
    return poured(one, Fraction(1), Dimension.VOLUME).is_oil or one.kind is IngredientKind.CARRIER_OIL


def opened(context: Context, ingredient_id: int) -> OpenedItem:
    """Return the log of the bottle now in use. Raises NotThereError."""
    return _item(ingredients.row_of(context, ingredient_id))


def note_opened(
    context: Context,
    ingredient_id: int,
    opened_on: date | None = None,
    best_before: date | None = None,
    kept_cold: bool | None = None,
) -> OpenedItem:
    """Log that a new bottle of an ingredient was opened, by default today, with the data on its label.

    A new bottle clears the best-before date of the one before; cold storage stays as it was unless given.
    Raises NotThereError, or BadValueError for a future or distant day.
    """
    row = ingredients.row_of(context, ingredient_id)
    day = opened_on or context.today
    if not context.today - _FURTHEST <= day <= context.today:
        raise BadValueError("day of opening", day.isoformat())
    if best_before is not None and abs(best_before - context.today) > _FURTHEST:
        raise BadValueError("best-before day", best_before.isoformat())
    before = {name: row.details.get(name) for name in _FIELDS}
    cold = bool(before["kept_cold"]) if kept_cold is None else kept_cold
    row.details = {
        **row.details,
        "opened_on": day.isoformat(),
        "best_before": None if best_before is None else best_before.isoformat(),
        "kept_cold": cold,
    }
    after = {name: row.details.get(name) for name in _FIELDS}
    context.log("opened", ingredient=ingredient_id, name=row.name, before=before, after=after)
    context.book.touched()
    return _item(row)


def _read_opened(context: Context, details: Details) -> Details:
    return {name: ingredients.row_of(context, details["ingredient"]).details.get(name) for name in _FIELDS}


def _write_opened(context: Context, details: Details, noted: Details) -> None:
    row = ingredients.row_of(context, details["ingredient"])
    row.details = {**row.details, **noted}
    context.book.touched()


OPENED = Value(_read_opened, _write_opened)


def plan_for(context: Context, view: FormulaView) -> ShelfPlan:
    """Return the dates of a batch of this formula made now, including those from its ingredients."""
    items = _items(context, (line.ingredient.id for line in view.lines))
    return shelf_plan(
        ShelfQuestion(
            preparation=view.preparation,
            made_at=local_time(context.now, context.bar.zone),
            jurisdiction=Jurisdiction(context.bar.jurisdiction),
            made_on=context.today,
            rest_hours=float(view.rest_hours),
            discard_days=view.discard_days,
            oils=tuple(
                OilBottle(one.ingredient.name, one.opened_on, one.best_before, one.kept_cold)
                for one in items
                if is_oil(one.ingredient)
            ),
            ingredient_dates=tuple(
                IngredientDate(one.ingredient.name, one.best_before)
                for one in items
                if one.best_before is not None and not is_oil(one.ingredient)
            ),
            made=made_of(mix_of(view)),
        )
    )


def _items(context: Context, ids: Iterable[int]) -> list[OpenedItem]:
    rows = context.book.all(Ingredient, Ingredient.id.in_(list(ids)), order=Ingredient.id)
    return [_item(row) for row in rows if row.details]


def opened_until(preparation: Preparation, opened_on: date) -> date:
    """Return the last day of a batch counted from opening its bottle: the kind's usual time."""
    return opened_on + timedelta(days=PREPARATION_DEFAULTS[preparation].opened_days)
