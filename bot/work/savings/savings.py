"""Since when the bar sprays a garnish instead of cutting it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime

from sqlalchemy import func

from bot.work.context import Context
from bot.work.errors import BadValueError
from bot.work.formulas import ingredients
from bot.work.formulas.ingredients import IngredientView
from bot.work.people import bars
from storage.tables import Batch, FormulaVersion


@dataclass(frozen=True, slots=True)
class Since:
    """The day from which a fruit's garnish is sprayed; `said` is False if it comes from opening a batch."""

    fruit: IngredientView
    day: date
    said: bool


def set_since(context: Context, fruit_id: int, day: date | None) -> Since | None:
    """Set the day from which the garnish is sprayed, or never. Raises BadValueError for a future day.

    Raises NotAllowedError for a plain member.
    """
    fruit = ingredients.get(context, fruit_id)
    if day is not None and day > context.today:
        raise BadValueError("day", day.isoformat())
    said = dict(context.bar.settings.spraying_since)
    said[str(fruit_id)] = "" if day is None else day.isoformat()
    bars.change(context, spraying_since=said)
    return None if day is None else Since(fruit, day, True)


def starts(context: Context) -> list[Since]:
    """Return the start of spraying for each garnish: as set, else from the first batch that replaces it."""
    said = context.bar.settings.spraying_since
    found = {int(number): (date.fromisoformat(day), True) for number, day in said.items() if day}
    for number, instant in _first_opened(context):
        if str(number) not in said:
            found[number] = (context.bar.day_of(instant), False)
    views = [Since(ingredients.get(context, number), day, own) for number, (day, own) in found.items()]
    return sorted(views, key=lambda one: (one.day, one.fruit.name))


def ever_sprayed(context: Context) -> set[int]:
    """Return the fruit sprayed at any time, also those that the bar cuts again."""
    said = {int(number) for number, day in context.bar.settings.spraying_since.items() if day}
    return said | {number for number, _at in _first_opened(context)}


def _first_opened(context: Context) -> list[tuple[int, datetime]]:
    """Return for each fruit when the first batch that replaces its garnish was opened, or had rested."""
    query = (
        context.book.rows(
            Batch, FormulaVersion.garnish_id, func.min(func.coalesce(Batch.opened_at, Batch.rest_until))
        )
        .join(
            FormulaVersion,
            (FormulaVersion.bar_id == Batch.bar_id)
            & (FormulaVersion.formula_id == Batch.formula_id)
            & (FormulaVersion.number == Batch.version),
        )
        .where(Batch.state != "undone", FormulaVersion.garnish_id.is_not(None))
        .group_by(FormulaVersion.garnish_id)
    )
    return [(number, at) for number, at in context.book.session.execute(query) if at <= context.now]
