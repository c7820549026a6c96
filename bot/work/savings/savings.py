"""Since when the bar sprays a garnish instead of cutting it, and the effect on waste."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime, timedelta
from decimal import Decimal
from fractions import Fraction

from sqlalchemy import func

from bot.trade.days import business_day, is_service_day
from bot.trade.fruit.balance import Comparison, NoDaysError, by_day, compare
from bot.trade.numbers.uncertainty import to_decimal
from bot.work.context import Context
from bot.work.errors import BadValueError
from bot.work.formulas import ingredients
from bot.work.formulas.ingredients import IngredientView
from bot.work.fruit.waste import grams_each
from bot.work.people import bars
from storage.tables import Batch, FormulaVersion, Waste

# How far to look back before the first spray: twelve weeks cover one season, not two.
WEEKS_BEFORE = 12


@dataclass(frozen=True, slots=True)
class Since:
    """The day from which a fruit's garnish is sprayed; `said` is False if it comes from opening a batch."""

    fruit: IngredientView
    day: date
    said: bool


@dataclass(frozen=True, slots=True)
class SprayEffect:
    """Pieces of one fruit thrown out per night, in a period compared with the time before the spray.

    `period` covers the period, `whole` all nights since the start; either is None without nights to compare.
    """

    since: Since
    period: Comparison | None
    whole: Comparison | None


def set_since(context: Context, fruit_id: int, day: date | None) -> Since | None:
    """Set the day from which the garnish is sprayed, or never. Raises BadValueError for a future day.

    Raises NotAllowedError for a plain member.
    """
    fruit = ingredients.get(context, fruit_id)
    if day is not None and day > business_day(context.now, context.bar.zone, context.bar.closing_minute):
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
            found[number] = (business_day(instant, context.bar.zone, context.bar.closing_minute), False)
    views = [Since(ingredients.get(context, number), day, own) for number, (day, own) in found.items()]
    return sorted(views, key=lambda one: (one.day, one.fruit.name))


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


def effects(context: Context, first: date, last: date) -> list[SprayEffect]:
    """Return the effect of spraying on the waste of each garnish, in the days from first to last."""
    today = business_day(context.now, context.bar.zone, context.bar.closing_minute)
    last = min(last, today)
    known = [one for one in starts(context) if one.day <= last]
    if not known:
        return []
    begun = context.book.session.scalar(context.book.rows(Waste, func.min(Waste.business_day)))
    if begun is None:
        return []
    return [effect for one in known if (effect := _effect(context, one, first, last, begun)) is not None]


def _effect(context: Context, since: Since, first: date, last: date, begun: date) -> SprayEffect | None:
    before_first = max(begun, since.day - timedelta(weeks=WEEKS_BEFORE))
    if before_first >= since.day:
        return None  # the log began with the spray: nothing to compare with
    entries = _pieces_by_day(context, since.fruit, before_first, last)
    closed = _closed_days(context, before_first, last)
    last = _last_logged(entries, last, context)
    try:
        earlier = by_day(entries, before_first, since.day - timedelta(days=1), closed)
    except NoDaysError:
        return None

    def against(start: date) -> Comparison | None:
        try:
            return compare(by_day(entries, start, last, closed), earlier) if start <= last else None
        except NoDaysError:
            return None

    found = SprayEffect(since, against(max(first, since.day)), against(since.day))
    return None if found.period is None and found.whole is None else found


def _last_logged(entries: list[tuple[date, Decimal]], last: date, context: Context) -> date:
    """Leave out the running night until something is logged for it."""
    today = business_day(context.now, context.bar.zone, context.bar.closing_minute)
    if last < today:
        return last
    logged = context.book.one(Waste, Waste.business_day == today)
    return last if logged is not None else today - timedelta(days=1)


def _pieces_by_day(
    context: Context, fruit: IngredientView, first: date, last: date
) -> list[tuple[date, Decimal]]:
    query = (
        context.book.rows(
            Waste,
            Waste.business_day,
            func.sum(func.coalesce(Waste.count_milli, 0)),
            func.sum(func.coalesce(Waste.grams_milli, 0)),
        )
        .where(Waste.ingredient_id == fruit.id, Waste.business_day.between(first, last))
        .group_by(Waste.business_day)
    )
    each = grams_each(fruit)
    return [
        (day, to_decimal(Fraction(int(pieces), 1000) + (Fraction(int(grams), 1000) / each if each else 0)))
        for day, pieces, grams in context.book.session.execute(query)
    ]


def _closed_days(context: Context, first: date, last: date) -> frozenset[date]:
    days = (first + timedelta(days=number) for number in range((last - first).days + 1))
    return frozenset(day for day in days if not is_service_day(day, context.bar.settings.service_days))
