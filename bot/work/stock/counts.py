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
from bot.work.standing import LEAST, Details, Rows
from bot.work.stock import on_hand as stock
from bot.work.stock import pars
from bot.work.stock.on_hand import OnHand
from storage.tables import Batch, Delivery, StockCount, Waste
from storage.types import exact_text


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
    row = context.add(
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
    about: Details = {
        "ingredient": ingredient_id,
        "name": view.name,
        "amount": exact_text(amount),
        "of": dimension,
    }
    context.log("count stock", row=row.id, **about)
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
    if size * packs < LEAST:
        raise BadValueError("amount", str(float(size * packs)))
    cost = None if price is None else price * packs.numerator / packs.denominator
    row = context.add(
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
    about: Details = {"ingredient": ingredient_id, "name": view.name, "amount": exact_text(size * packs)}
    context.log("buy stock", row=row.id, **about, of=dimension, price=paid)
    pars.watch(context, [ingredient_id])
    return Bought(stock.on_hand(context, [ingredient_id])[ingredient_id], size * packs, cost)


def was_paid(context: Context, details: Details) -> bool:
    """Whether a logged delivery has a price."""
    row = context.book.get(Delivery, details["row"])
    return row is None or row.cost_minor is not None


def _watch(context: Context, row: Delivery | StockCount) -> None:
    pars.watch(context, [row.ingredient_id])


COUNTS = Rows(StockCount, "row", _watch, _watch)
_DELIVERIES = Rows(Delivery, "row", _watch, _watch)


def take_back_buying(context: Context, details: Details) -> Details:
    """Undo a delivery, and its price."""
    if details["price"] is not None:
        prices.ROWS.take_back(context, details)
    return _DELIVERIES.take_back(context, details)


def put_back_buying(context: Context, details: Details) -> Details:
    """Restore an undone delivery, and its price."""
    again = {} if details["price"] is None else prices.ROWS.put_back(context, details)
    return again | _DELIVERIES.put_back(context, details)
