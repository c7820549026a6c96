"""Counts and deliveries, the rows behind the stock."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from fractions import Fraction

from sqlalchemy import func

from bot.trade.formulas.measures import Quantity
from bot.trade.money.money import to_minor
from bot.work.context import Context
from bot.work.errors import BadValueError
from bot.work.formulas import ingredients
from bot.work.money import prices
from bot.work.stock import on_hand as stock
from bot.work.stock import pars
from bot.work.stock.on_hand import OnHand
from storage.tables import Batch, Delivery, StockCount, Waste
from storage.types import JsonObject


@dataclass(frozen=True, slots=True)
class Bought:
    """A logged delivery, its cost if given, and the stock now on hand."""

    on_hand: OnHand
    amount: Fraction
    cost: Decimal | None


def _marks(context: Context) -> dict[str, int]:
    """Return the last numbers assigned, which order events within one second."""
    return {
        f"after_{table.__tablename__}": context.book.session.scalar(
            context.book.rows(table, func.max(table.id))
        )
        or 0
        for table in (Delivery, Batch, Waste)
    }


def count(
    context: Context, ingredient_id: int, quantity: Quantity, day: date | None = None
) -> tuple[OnHand, Fraction | None]:
    """Log a count; return the stock on hand and the previous book value, None if there was none.

    A count for an earlier day applies at the end of that day. Raises NotThereError, BadValueError.
    """
    view = ingredients.get(context, ingredient_id)
    amount, dimension = stock.in_base_units(context, quantity)
    before = stock.on_hand(context, [ingredient_id]).get(ingredient_id)
    row = context.book.add(
        StockCount(
            ingredient_id=ingredient_id,
            dimension=dimension,
            amount_milli=round(amount * 1000),
            business_day=day or context.today,
            at=context.moment(day),
            by=context.person_id,
            **_marks(context),
        )
    )
    context.log("count stock", row=row.id, ingredient=ingredient_id, name=view.name)
    pars.watch(context, [ingredient_id])
    now = stock.on_hand(context, [ingredient_id])[ingredient_id]
    said = None if before is None else stock.convert(view, before.book, before.dimension, dimension)
    return now, said


def buy(
    context: Context,
    ingredient_id: int,
    packs: Fraction,
    pack: Quantity,
    price: Decimal | None = None,
    day: date | None = None,
) -> Bought:
    """Log a number of packs bought; a different pack price is the price from now on.

    The price of an earlier day does not replace a price set since.

    Raises NotThereError, BadValueError.
    """
    view = ingredients.get(context, ingredient_id)
    if not 0 < packs <= 100_000:
        raise BadValueError("number of packs", str(float(packs)))
    size, dimension = stock.in_base_units(context, pack, Fraction(1, 1000))
    at = context.moment(day)
    paid = None
    if price is not None:
        before = prices.in_force(context, [ingredient_id]).get(ingredient_id)
        differs = before is None or before.pack_amount != size or before.price != price
        if differs and (before is None or before.at <= at):
            paid = prices.write(context, ingredient_id, pack, price).id
    cost = None if price is None else price * packs.numerator / packs.denominator
    row = context.book.add(
        Delivery(
            ingredient_id=ingredient_id,
            dimension=dimension,
            amount_milli=round(size * packs * 1000),
            cost_minor=None if cost is None else to_minor(cost, context.bar.currency),
            price_id=paid,
            business_day=day or context.today,
            at=at,
            by=context.person_id,
            source=context.source,
            line=context.next_line(),
        )
    )
    context.log("buy stock", row=row.id, ingredient=ingredient_id, name=view.name, price=paid)
    pars.watch(context, [ingredient_id])
    return Bought(stock.on_hand(context, [ingredient_id])[ingredient_id], size * packs, cost)


def take_back_count(context: Context, details: JsonObject) -> None:
    """Undo a count with a void row that points to it."""
    row = context.book.get(StockCount, details["row"])
    if row is None:
        return
    context.correct(row, void=True)
    pars.watch(context, [row.ingredient_id])


def take_back_buying(context: Context, details: JsonObject) -> None:
    """Undo a delivery, and its price."""
    row = context.book.get(Delivery, details["row"])
    if row is None:
        return
    cost = None if row.cost_minor is None else -row.cost_minor
    source = f"undo {context.source}"
    context.correct(
        row, amount_milli=-row.amount_milli, cost_minor=cost, source=source, line=context.next_line()
    )
    if details["price"] is not None:
        prices.take_back(context, {"price": details["price"]})
    pars.watch(context, [row.ingredient_id])
