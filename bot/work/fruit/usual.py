"""Judge whether an amount of fruit is believable, from what the bar logged before."""

from __future__ import annotations

from datetime import timedelta
from fractions import Fraction
from typing import Any

from sqlalchemy import func

from bot.trade.formulas.measures import Dimension
from bot.work.context import Context
from bot.work.formulas import ingredients
from bot.work.fruit.waste import grams_each
from storage.tables import Delivery, Juicing, PeeledFruit, StockCount, Waste

# What is beyond belief is our own choice: common practice, no source.
_DAYS = 84
_TIMES = 50  # so often the usual of a night is beyond belief
_MOST_UNSEEN = 500  # pieces, where nothing was logged of it yet
_FEWEST = 50  # pieces: a bad delivery thrown out whole is no mistake
_GRAMS_EACH = Fraction(100)  # of a fruit whose size nobody gave
_TABLES: dict[str, tuple[type[Waste | PeeledFruit | Juicing | Delivery | StockCount], Any]] = {
    "waste": (Waste, Waste.count_milli),
    "peeled": (PeeledFruit, PeeledFruit.count_milli),
    "juiced": (Juicing, Juicing.count_milli),
    "bought": (Delivery, Delivery.amount_milli),
    "count": (StockCount, StockCount.amount_milli),
}


def is_believable(
    context: Context, done: str, ingredient_id: int, amount: Fraction, dimension: Dimension
) -> bool:
    """Whether an amount is at most fifty times what is usual in a night, or 500 pieces without history.

    `done` is what was done with it: 'waste', 'peeled', 'juiced', 'bought' or 'count'.
    """
    if dimension is Dimension.VOLUME:
        return True
    pieces = amount
    if dimension is Dimension.MASS:
        pieces = amount / (grams_each(ingredients.get(context, ingredient_id)) or _GRAMS_EACH)
    if pieces <= _FEWEST:
        return True
    usual = _usual(context, done, ingredient_id)
    return pieces <= (_MOST_UNSEEN if usual is None else max(Fraction(_FEWEST), usual * _TIMES))


def _usual(context: Context, done: str, ingredient_id: int) -> Fraction | None:
    """Return the pieces of a usual night: the mean of the nights on which any were logged."""
    table, column = _TABLES[done]
    since = context.now.date() - timedelta(days=_DAYS)
    where = [table.ingredient_id == ingredient_id, table.business_day >= since, column.is_not(None)]
    if issubclass(table, Delivery | StockCount):
        where.append(table.dimension == Dimension.COUNT.value)
    query = context.book.rows(table, func.sum(column), func.count(table.business_day.distinct()), where=where)
    total, nights = context.book.session.execute(query).one()
    return Fraction(int(total), 1000 * nights) if nights and total and total > 0 else None
