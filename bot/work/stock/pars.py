"""Minimum stock of a bar, and reports of items below it."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from bot.trade.formulas.measures import Dimension, Quantity
from bot.work.context import Context
from bot.work.formulas import ingredients
from bot.work.formulas.ingredients import IngredientView
from bot.work.reminders import planning
from bot.work.standing import Details, Value
from bot.work.stock import on_hand as stock
from storage.tables import StockPar


def listed(context: Context) -> list[tuple[IngredientView, Fraction, Dimension]]:
    """Return the minimum stock of each ingredient, by name."""
    found = [(ingredients.get(context, number), *par) for number, par in stock.least_wanted(context).items()]
    return sorted(found, key=lambda one: one[0].name.casefold())


def set_par(context: Context, ingredient_id: int, quantity: Quantity | None) -> None:
    """Set the minimum stock, or remove it. Raises NotThereError, BadValueError."""
    view = ingredients.get(context, ingredient_id)
    if quantity is not None:
        stock.in_base_units(context, quantity, Fraction(1, 1000))
    about: Details = {"ingredient": ingredient_id, "name": view.name}
    before = _read_par(context, about)
    _write_par(context, ingredient_id, quantity)
    context.log("par", **about, before=before, after=_read_par(context, about))
    watch(context, [ingredient_id])


def _write_par(context: Context, ingredient_id: int, quantity: Quantity | None) -> None:
    row = context.book.get(StockPar, ingredient_id)
    if quantity is None:
        if row is not None:
            planning.cancel_low_stock(context.book, ingredient_id)
            context.book.session.delete(row)
    elif row is None:
        context.book.add(
            StockPar(ingredient_id=ingredient_id, amount=quantity.number, unit=quantity.unit, told=False)
        )
    else:
        row.amount, row.unit = quantity.number, quantity.unit
    context.book.session.flush()


def _read_par(context: Context, details: Details) -> list[str] | None:
    row = context.book.get(StockPar, details["ingredient"])
    return None if row is None else [str(row.amount), row.unit]


def _set_back(context: Context, details: Details, par: list[str] | None) -> None:
    quantity = None if par is None else Quantity(Fraction(par[0]), par[1])
    _write_par(context, details["ingredient"], quantity)
    watch(context, [details["ingredient"]])


PAR = Value(_read_par, _set_back)


def watch(context: Context, changed: Iterable[int]) -> None:
    """Plan a report for each item that fell below its par, once per fall; drop it when there is enough."""
    rows = context.book.all(StockPar, StockPar.ingredient_id.in_(list(changed)))
    if not rows:
        return
    there = stock.on_hand(context, [row.ingredient_id for row in rows])
    for row in rows:
        one = there.get(row.ingredient_id)
        if one is None or one.par is None:
            continue
        if one.low and not row.told:
            planning.plan_low_stock(
                context.book,
                context.bar,
                row.ingredient_id,
                {
                    "ingredient": row.ingredient_id,
                    "name": one.ingredient.name,
                    "amount": str(one.amount),
                    "par": str(one.par),
                    "dimension": one.dimension.value,
                },
                context.now,
                context.person_id,
            )
        elif not one.low and row.told:
            planning.cancel_low_stock(context.book, row.ingredient_id)
        row.told = one.low
    context.book.session.flush()
