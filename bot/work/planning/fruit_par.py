"""Morning par of fresh fruit, from logged demand and spoilage."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction

from bot.trade.formulas.kinds import IngredientKind
from bot.trade.formulas.measures import Dimension
from bot.trade.numbers.uncertainty import to_decimal
from bot.trade.planning.fruit_par import DemandDay, Par, critical_fractile, fruit_overage, par_by_weekday
from bot.trade.words import N_
from bot.work.context import BarView, Context
from bot.work.events import events
from bot.work.formulas import ingredients
from bot.work.formulas.ingredients import IngredientView
from bot.work.fruit import balance
from bot.work.fruit.balance import CountView
from bot.work.fruit.peeled import UNDONE
from bot.work.money import prices
from bot.work.money.prices import PriceView
from bot.work.spray import drinks
from bot.work.standing import stands
from bot.work.stock import on_hand
from storage.tables import Delivery, PeeledFruit, PeeledUse, Waste


class DemandSource(StrEnum):
    """The source of the demand, in words for the reply."""

    DRINKS = N_("drinks counted with this garnish")
    COUNTS = N_("what was used between counts at close")
    PEELED = N_("fruit logged as peeled")


@dataclass(frozen=True, slots=True)
class FruitPar:
    """The pars of one fruit by weekday (0 for Monday), and their basis.

    `spoiled_share` is the share of the leftovers at close that is eventually thrown out; `assumed` means that
    this was never counted and is assumed to be all of it. `price` is that of one fruit. Without a price or
    any demand `by_weekday` is empty. `event_days` were logged but do not count.
    """

    fruit: IngredientView
    source: DemandSource | None
    by_weekday: dict[int, Par]
    price: Decimal | None
    fractile: Fraction | None
    spoiled_share: Decimal
    assumed: bool
    event_days: tuple[date, ...] = ()


def pars(context: Context) -> list[FruitPar]:
    """Return the pars of every fruit with known demand, by name."""
    found = [fruit_par(context, one) for one in ingredients.all_of(context, IngredientKind.FRUIT)]
    return [one for one in found if one.source is not None]


def fruit_par(context: Context, fruit: IngredientView) -> FruitPar:
    """Return the pars of one fruit: the newsvendor's critical fractile of its demand, by weekday."""
    price = prices.in_force(context, [fruit.id]).get(fruit.id)
    each = _price_each(fruit, price)
    counts = sorted(balance.counts(context, fruit.id, most=1000), key=lambda one: one.place)
    share, assumed = _spoiled(context, fruit, counts)
    source, logged = _demand(context, fruit, price, counts)
    demand, apart = _usual(context, logged)
    if each is None or not each or not demand:
        return FruitPar(fruit, source, {}, each, None, share, assumed, apart)
    overage = fruit_overage(each, share)
    fractile = critical_fractile(each * (missing_times(context.bar) - 1), overage)
    if fractile == 1:  # nothing ever spoils: use the highest demand
        fractile = Fraction(99, 100)
    return FruitPar(fruit, source, par_by_weekday(demand, fractile), each, fractile, share, assumed, apart)


def missing_times(bar: BarView) -> Decimal:
    """Return the cost of a missing fruit bought next door, as a multiple of its price.

    The bar's own number; the usual 3 is common practice, no source.
    """
    return to_decimal(Fraction(bar.settings.missing_times))


def _price_each(fruit: IngredientView, price: PriceView | None) -> Decimal | None:
    if price is None:
        return None
    pieces = on_hand.convert(fruit, price.pack_amount, price.dimension, Dimension.COUNT)
    if not pieces:
        return None
    return price.price * pieces.denominator / pieces.numerator


# -- demand -----------------------------------------------------------------------------------


def _demand(
    context: Context, fruit: IngredientView, price: PriceView | None, counts: Sequence[CountView]
) -> tuple[DemandSource | None, list[DemandDay]]:
    """Return the demand from the source with the most days."""
    found = {
        DemandSource.DRINKS: _by_drinks(context, fruit, price),
        DemandSource.COUNTS: _by_counts(context, fruit, counts),
        DemandSource.PEELED: _by_peeling(context, fruit),
    }
    source = max(found, key=lambda one: len(found[one]))
    return (source, found[source]) if found[source] else (None, [])


def _usual(context: Context, demand: Sequence[DemandDay]) -> tuple[list[DemandDay], tuple[date, ...]]:
    """Return the demand without the days of events, and the days left out."""
    apart = events.days(context)
    left_out = tuple(one.day for one in demand if one.day in apart)
    return [one for one in demand if one.day not in apart], left_out


def _by_drinks(context: Context, fruit: IngredientView, price: PriceView | None) -> list[DemandDay]:
    if price is None or price.garnishes is None:
        return []
    few = price.garnishes[0]
    return [
        DemandDay(one.day, math.ceil(one.drinks / few), one.ran_out)
        for one in drinks.lately(context)
        if one.ingredient_id == fruit.id
    ]


def _by_counts(context: Context, fruit: IngredientView, counts: Sequence[CountView]) -> list[DemandDay]:
    """Return the use on each day with a count at its close and at the previous close."""
    since = context.today - timedelta(weeks=drinks.WEEKS_BACK)
    moves = _moves(context, fruit, since)
    last_of_day: dict[date, CountView] = {one.day: one for one in counts if one.day >= since}
    found = []
    for day, now in last_of_day.items():
        before = last_of_day.get(day - timedelta(days=1))
        if before is None:
            continue
        there, left = _pieces(fruit, before), _pieces(fruit, now)
        came = sum(
            (
                amount
                for number, is_waste, amount in moves
                if (
                    before.after_waste < number <= now.after_waste
                    if is_waste
                    else before.after_delivery < number <= now.after_delivery
                )
            ),
            Fraction(0),
        )
        if there is not None and left is not None:
            used = max(Fraction(0), there + came - left)
            found.append(DemandDay(day, math.ceil(used), sold_out=not left))
    return found


def _moves(context: Context, fruit: IngredientView, since: date) -> list[tuple[int, bool, Fraction]]:
    """Return deliveries (above zero) and waste, in pieces, with the row numbers."""
    moves = []
    bought = context.book.all(Delivery, Delivery.ingredient_id == fruit.id, Delivery.business_day >= since)
    for row in bought:
        pieces = on_hand.convert(
            fruit, Fraction(row.amount_milli, 1000), Dimension(row.dimension), Dimension.COUNT
        )
        moves.append((row.first, False, pieces or Fraction(0)))
    moves += [(number, True, -pieces) for number, _day, pieces in _wasted(context, fruit, since)]
    return moves


def _wasted(context: Context, fruit: IngredientView, since: date) -> list[tuple[int, date, Fraction]]:
    found = []
    for row in context.book.all(Waste, Waste.ingredient_id == fruit.id, Waste.business_day >= since):
        if row.count_milli is not None:
            pieces: Fraction | None = Fraction(row.count_milli, 1000)
        else:
            grams = Fraction(row.grams_milli or 0, 1000)
            pieces = on_hand.convert(fruit, grams, Dimension.MASS, Dimension.COUNT)
        found.append((row.first, row.business_day, pieces or Fraction(0)))
    return found


def _by_peeling(context: Context, fruit: IngredientView) -> list[DemandDay]:
    since = context.today - timedelta(weeks=drinks.WEEKS_BACK)
    rows = context.book.all(
        PeeledFruit, PeeledFruit.ingredient_id == fruit.id, PeeledFruit.business_day >= since
    )
    undone = {
        one.peeled_id for one in context.book.all(PeeledUse, PeeledUse.what == UNDONE, stands(PeeledUse))
    }
    by_day: dict[date, int] = {}
    for row in rows:
        if row.id in undone:
            continue
        by_day[row.business_day] = by_day.get(row.business_day, 0) + row.count_milli
    return [DemandDay(day, math.ceil(milli / 1000)) for day, milli in sorted(by_day.items())]


# -- spoilage ---------------------------------------------------------------------------------


def _pieces(fruit: IngredientView, count: CountView) -> Fraction | None:
    return on_hand.convert(fruit, count.amount, count.dimension, Dimension.COUNT)


def _spoiled(context: Context, fruit: IngredientView, counts: Sequence[CountView]) -> tuple[Decimal, bool]:
    """Return the share of the leftovers at close that is thrown out; all of it if nobody counts."""
    left = [(one.day, _pieces(fruit, one)) for one in counts]
    # Tonight's leftovers have not had time to spoil.
    known = {day: pieces for day, pieces in left if pieces and day < context.today}
    if not known:
        return Decimal(1), True
    wasted = sum(
        (
            pieces
            for _id, day, pieces in _wasted(context, fruit, min(known))
            if day - timedelta(days=1) in known
        ),
        Fraction(0),
    )
    share = min(Fraction(1), max(Fraction(0), wasted / sum(known.values(), Fraction(0))))
    return Decimal(share.numerator) / Decimal(share.denominator), False
