"""Log what is thrown out: item, amount, reason, business day and cost."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from decimal import Decimal
from fractions import Fraction

from sqlalchemy import bindparam, func

from bot.trade.days import local_time
from bot.trade.formulas.measures import Dimension
from bot.trade.fruit.handbook import find_fruit
from bot.trade.money.money import from_minor, to_minor
from bot.work import standing
from bot.work.context import DEFAULT_REASONS, BarView, Context
from bot.work.errors import BadValueError
from bot.work.formulas.ingredients import IngredientView, get, handbook_key
from bot.work.fruit import peeled
from bot.work.money import prices
from bot.work.money.prices import PriceView
from bot.work.standing import LEAST, Details, Rows, Value
from storage.tables import Waste
from storage.types import JsonObject
from storage.unit import of_bar

NO_REASON = ""
PEELED = DEFAULT_REASONS[2]
_DAY_COST = of_bar(Waste, func.coalesce(func.sum(Waste.cost_minor), 0)).where(
    Waste.business_day == bindparam("day")
)
_MOST = 100_000  # pieces or grams per line: above this the unit must be a mistake


@dataclass(frozen=True, slots=True)
class WasteLine:
    """A number of pieces (COUNT), grams (MASS) or mL (VOLUME) of something, and the reason."""

    ingredient_id: int
    amount: Fraction
    dimension: Dimension
    reason: str = NO_REASON


@dataclass(frozen=True, slots=True)
class WasteView:
    """One logged line; `cost` is None if no price applies."""

    id: int
    ingredient: IngredientView
    amount: Fraction
    dimension: Dimension
    reason: str
    day: date
    cost: Decimal | None


@dataclass(frozen=True, slots=True)
class WasteLogged:
    """The waste logged by one message, with the number for undoing it."""

    lines: tuple[WasteView, ...]
    entry: int
    day: date
    day_cost: Decimal
    already: bool = False


def log(
    context: Context, lines: Sequence[WasteLine], photo: str | None = None, day: date | None = None
) -> WasteLogged:
    """Log fruit thrown out, each line at the price in force on its day, with the channel's id of a photo.

    Raises BadValueError for an amount that is not above zero or is implausible, or for a day to come.
    """
    at, day = context.moment(day), day or context.today
    wanted = list(dict.fromkeys(line.ingredient_id for line in lines))
    known = {number: get(context, number) for number in wanted}
    if context.replaced is None:
        in_force = prices.in_force(context, wanted, None if at == context.now else at)
        rows = [
            _row(context, line, at, day, known[line.ingredient_id], in_force.get(line.ingredient_id))
            for line in lines
        ]
    else:
        lines, rows = _instead(context, lines, at, day, known)
    numbers = context.book.write(Waste, rows)
    for number, line in zip(numbers, lines, strict=True):
        _take_off_peeled(context, number, line)
    details: JsonObject = {} if photo is None else {"photo": photo}
    entry = context.log("waste", rows=numbers, **details)
    views = tuple(
        WasteView(
            number,
            known[line.ingredient_id],
            Fraction(_milli(line), 1000),
            line.dimension,
            line.reason,
            row["business_day"],
            _money(context, row["cost_minor"]),
        )
        for number, line, row in zip(numbers, lines, rows, strict=True)
    )
    return WasteLogged(views, entry, day, day_cost(context, day))


def _row(
    context: Context,
    line: WasteLine,
    at: datetime,
    day: date,
    ingredient: IngredientView,
    price: PriceView | None,
) -> JsonObject:
    if not LEAST <= line.amount <= _MOST:
        raise BadValueError("amount", str(float(line.amount)))
    cost = _cost(ingredient, line, price)
    milli = _milli(line)
    return {
        "ingredient_id": line.ingredient_id,
        "count_milli": milli if line.dimension is Dimension.COUNT else None,
        "grams_milli": milli if line.dimension is Dimension.MASS else None,
        "volume_milli": milli if line.dimension is Dimension.VOLUME else None,
        "reason": line.reason,
        "business_day": day,
        "cost_minor": None if cost is None else to_minor(cost, context.bar.currency),
        "price_id": price.id if price is not None and cost is not None else None,
        "at": at,
        "by": context.person_id,
        "source": context.source,
        "line": context.next_line(),
        "late": at == context.now and is_late(context.bar, at),  # the time of an earlier day is unknown
    }


def _instead(
    context: Context, lines: Sequence[WasteLine], at: datetime, day: date, known: dict[int, IngredientView]
) -> tuple[list[WasteLine], list[Details]]:
    """Return the lines of an edited message with their rows, which replace the undone ones.

    A line without a reason keeps the previous one, and the same fruit keeps its price.
    """
    assert context.replaced is not None  # noqa: S101 - asked by the caller
    replaced = [context.replaced.pop(Waste, line.ingredient_id) for line in lines]
    then = prices.in_force(context, list(known), at=context.now)
    kept, rows = [], []
    for line, before in zip(lines, replaced, strict=True):
        if before is not None and not line.reason:
            line = replace(line, reason=before.reason)  # noqa: PLW2901
        price = then.get(line.ingredient_id)
        if before is not None and before.ingredient_id == line.ingredient_id:
            price = prices.logged_in(context, {"price": before.price_id or 0})
        row = _row(context, line, at, day, known[line.ingredient_id], price)
        row |= {"first": None, "corrects": None}
        if before is not None:
            # A day that the edit does not say stays as it was.
            kept_columns = ("first", "late", "business_day") if day == context.today else ("first",)
            row |= {name: getattr(before, name) for name in kept_columns}
            row["corrects"] = before.id
        kept.append(line)
        rows.append(row)
    return kept, rows


def _milli(line: WasteLine) -> int:
    return round(line.amount * 1000)


def _money(context: Context, minor: int | None) -> Decimal | None:
    return None if minor is None else from_minor(minor, context.bar.currency)


def is_late(bar: BarView, at: datetime) -> bool:
    """Whether an instant lies in the bar's late shift: from the set time of its business day to closing."""
    day = bar.day_of(at)
    clock = local_time(at, bar.zone)
    minute = (clock.date() - day).days * 24 * 60 + clock.hour * 60 + clock.minute
    return minute >= bar.settings.late_from


def _take_off_peeled(context: Context, number: int, line: WasteLine) -> None:
    """Remove fruit that was thrown out from the peeled fruit."""
    if line.reason == PEELED and line.dimension is Dimension.COUNT and line.amount > 0:
        count = Fraction(_milli(line), 1000)
        peeled.settle(context, line.ingredient_id, count, peeled.BINNED, waste_id=number)


def _cost(ingredient: IngredientView, line: WasteLine, price: PriceView | None) -> Fraction | None:
    """Return the cost of the line, or None if the price is in another measure that cannot be converted."""
    if price is None:
        return None
    if price.dimension is line.dimension:
        return line.amount * price.per_base
    each = grams_each(ingredient)
    if each is None:
        return None
    if line.dimension is Dimension.MASS and price.dimension is Dimension.COUNT:
        return line.amount / each * price.per_base
    if line.dimension is Dimension.COUNT and price.dimension is Dimension.MASS:
        return line.amount * each * price.per_base
    return None


def grams_each(ingredient: IngredientView) -> Fraction | None:
    """Return the mass of one piece as purchased, g: the bar's own, else USDA SR28's, else None."""
    if ingredient.grams_each is not None:
        return ingredient.grams_each
    key = handbook_key(ingredient.name)
    return None if key is None else Fraction(find_fruit(key).size(None).as_purchased_g)


def dimension_of(row: Waste) -> Dimension:
    """Return the measure of a line of waste."""
    if row.count_milli is not None:
        return Dimension.COUNT
    return Dimension.MASS if row.grams_milli is not None else Dimension.VOLUME


def view_of(context: Context, row: Waste) -> WasteView:
    """Return one line of waste."""
    return WasteView(
        row.id,
        get(context, row.ingredient_id),
        Fraction(row.amount_milli, 1000),
        dimension_of(row),
        row.reason,
        row.business_day,
        _money(context, row.cost_minor),
    )


def logged_in(context: Context, details: Details) -> tuple[WasteView, ...]:
    """Return the lines of a log entry as they were logged."""
    return tuple(view_of(context, row) for row in ROWS.of(context, details))


def is_logged(context: Context, day: date) -> bool:
    """Whether waste of a business day is logged and not undone."""
    return context.book.one(Waste, standing.stands(Waste), Waste.business_day == day) is not None


def without_price(context: Context, ingredient_id: int) -> Fraction:
    """Return how many pieces of a thing were thrown out that have no cost in the log."""
    rows = context.book.all(
        Waste,
        standing.stands(Waste),
        Waste.ingredient_id == ingredient_id,
        Waste.cost_minor.is_(None),
        Waste.count_milli.is_not(None),
    )
    return sum((Fraction(row.amount_milli, 1000) for row in rows), Fraction(0))


def day_cost(context: Context, day: date) -> Decimal:
    """Return the cost of a business day's waste so far, for the priced lines."""
    return from_minor(int(context.book.value(_DAY_COST, day=day) or 0), context.bar.currency)


def change_reason(context: Context, row: Waste, reason: str) -> Waste:
    """Replace a valid line by one with another reason; return the new row."""
    back = standing.reverse(context, row)
    ROWS.undone(context, row)
    again: Waste = standing.correct(context, back, **_said(row) | {"reason": reason})
    ROWS.restored(context, again)
    return again


def _said(row: Waste) -> Details:
    """Return the columns of a line that the undoing row changes."""
    return {
        name: getattr(row, name)
        for name in ("count_milli", "grams_milli", "volume_milli", "cost_minor", "by")
    }


def _restored(context: Context, row: Waste) -> None:
    if row.count_milli is not None:
        count = Fraction(row.count_milli, 1000)
        _take_off_peeled(context, row.id, WasteLine(row.ingredient_id, count, Dimension.COUNT, row.reason))


ROWS = Rows(Waste, "rows", lambda context, row: peeled.take_back_waste(context, row.id), _restored)


def _read_reason(context: Context, details: Details) -> str | None:
    last = standing.last_of(context, ROWS.of(context, details)[0])
    return None if standing.takes_back(last) else str(last.reason)


def _write_reason(context: Context, details: Details, reason: str) -> None:
    change_reason(context, standing.last_of(context, ROWS.of(context, details)[0]), reason)


# The reason of an imported line, which has its own entry.
REASON = Value(_read_reason, _write_reason)


def most_used(context: Context, days: int = 28) -> list[int]:
    """Return the numbers of the fruit logged in the last weeks, most frequent first, then most recent."""
    since = context.today - timedelta(days=days)
    query = (
        context.book.rows(Waste, Waste.ingredient_id, func.count().label("times"))
        .where(Waste.business_day >= since)
        .group_by(Waste.ingredient_id)
        .order_by(func.count().desc(), func.max(Waste.id).desc())
    )
    return [ingredient_id for ingredient_id, _times in context.book.session.execute(query)]
