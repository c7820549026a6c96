"""Use between two counts: bought + before - waste - on hand, and the unexplained part."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime
from decimal import Decimal
from fractions import Fraction
from typing import Any

from sqlalchemy import func

from bot.trade.formulas.measures import Dimension
from bot.trade.fruit.balance import FruitUse, fruit_use
from bot.trade.money.money import from_minor
from bot.trade.numbers.uncertainty import to_decimal
from bot.work.context import Context
from bot.work.formulas.ingredients import IngredientView, get
from bot.work.fruit.waste import grams_each
from bot.work.standing import stands
from storage.tables import Batch as BatchRow
from storage.tables import BatchLine, Delivery, Juicing, PeeledFruit, PeeledUse, StockCount, Waste


@dataclass(frozen=True, slots=True)
class CountView:
    """One count; `place` is its position in the order of counts."""

    place: int
    amount: Fraction
    dimension: Dimension
    day: date
    at: datetime
    # Only rows with higher numbers than these changed the stock after it.
    after_delivery: int
    after_batch: int
    after_waste: int


@dataclass(frozen=True, slots=True)
class Used:
    """The use of one ingredient between two counts, all in one measure.

    `use` follows bought + before - waste - on hand; `left_out` means that some rows were in another measure
    and could not be converted.
    """

    ingredient: IngredientView
    dimension: Dimension
    before: CountView
    now: CountView
    bought: Fraction
    wasted: Fraction
    use: FruitUse
    left_out: bool


# -- counts ---------------------------------------------------------------------------------


def _count_view(row: StockCount) -> CountView:
    return CountView(
        row.first,
        Fraction(row.amount_milli, 1000),
        Dimension(row.dimension),
        row.business_day,
        row.at,
        row.after_delivery,
        row.after_batch,
        row.after_waste,
    )


def counts(context: Context, ingredient_id: int, most: int = 2) -> list[CountView]:
    """Return the last valid counts of an ingredient, the newest first."""
    where = StockCount.ingredient_id == ingredient_id, stands(StockCount)
    rows = context.book.all(StockCount, *where, order=StockCount.first.desc())
    return sorted(map(_count_view, rows), key=lambda view: view.at, reverse=True)[:most]


def counted_fruit(context: Context) -> list[int]:
    """Return the numbers of the ingredients with at least two counts."""
    query = (
        context.book.rows(StockCount, StockCount.ingredient_id)
        .where(stands(StockCount))
        .group_by(StockCount.ingredient_id)
        .having(func.count() > 1)
        .order_by(StockCount.ingredient_id)
    )
    return list(context.book.session.scalars(query))


# -- use ------------------------------------------------------------------------------------


def used(context: Context, ingredient_id: int) -> Used | None:
    """Return the use of an ingredient between its last two counts; None without two counts to compare."""
    last = counts(context, ingredient_id)
    if len(last) < 2:
        return None
    now, before = last
    ingredient = get(context, ingredient_id)
    tally = _Tally(now.dimension, grams_each(ingredient))
    on_hand, there = tally.turned(now.amount, now.dimension), tally.turned(before.amount, before.dimension)
    bought = _delivered(context, ingredient_id, before, now, tally)
    wasted = _wasted(context, ingredient_id, before, now, tally)
    accounted = _accounted(context, ingredient_id, before, now) if tally.counts else None
    use = fruit_use(
        _decimal(bought),
        _decimal(there),
        _decimal(wasted),
        _decimal(on_hand),
        None if accounted is None else _decimal(accounted),
    )
    return Used(ingredient, now.dimension, before, now, bought, wasted, use, tally.left_out)


def _decimal(amount: Fraction) -> Decimal:
    """Return an amount as a Decimal; a negative sum left by undoing counts as zero."""
    return to_decimal(max(amount, Fraction(0)))


@dataclass
class _Tally:
    """Adds up amounts in one measure, converting between pieces and grams by the mass of one piece."""

    wanted: Dimension
    grams_each: Fraction | None
    left_out: bool = False

    @property
    def counts(self) -> bool:
        return self.wanted is Dimension.COUNT

    def turned(self, amount: Fraction, dimension: Dimension) -> Fraction:
        if dimension is self.wanted or not amount:
            return amount
        if self.grams_each is not None and {dimension, self.wanted} == {Dimension.COUNT, Dimension.MASS}:
            return amount / self.grams_each if self.counts else amount * self.grams_each
        self.left_out = True
        return Fraction(0)


def _delivered(
    context: Context, ingredient_id: int, since: CountView, until: CountView, tally: _Tally
) -> Fraction:
    query = (
        context.book.rows(Delivery, Delivery.dimension, func.sum(Delivery.amount_milli))
        .where(
            Delivery.ingredient_id == ingredient_id,
            Delivery.first > since.after_delivery,
            Delivery.first <= until.after_delivery,
        )
        .group_by(Delivery.dimension)
    )
    return sum(
        (
            tally.turned(Fraction(int(milli), 1000), Dimension(dimension))
            for dimension, milli in context.book.session.execute(query)
        ),
        Fraction(0),
    )


def _wasted(
    context: Context, ingredient_id: int, since: CountView, until: CountView, tally: _Tally
) -> Fraction:
    query = context.book.rows(
        Waste,
        func.coalesce(func.sum(Waste.count_milli), 0),
        func.coalesce(func.sum(Waste.grams_milli), 0),
    ).where(
        Waste.ingredient_id == ingredient_id,
        Waste.business_day >= since.day,
        Waste.first > since.after_waste,
        Waste.first <= until.after_waste,
    )
    pieces, grams = context.book.session.execute(query).one()
    return tally.turned(Fraction(int(pieces), 1000), Dimension.COUNT) + tally.turned(
        Fraction(int(grams), 1000), Dimension.MASS
    )


def _accounted(context: Context, ingredient_id: int, since: CountView, until: CountView) -> Fraction | None:
    """Return the pieces explained by the log: peeled and not binned, juiced whole, used in batches.

    None if nothing of the kind was logged, because then the unexplained part is unknown.
    """
    peeled = _sum(context, PeeledFruit, PeeledFruit.ingredient_id == ingredient_id, since, until)
    juiced = _sum(context, Juicing, Juicing.ingredient_id == ingredient_id, since, until, voids=True)
    # Peeled fruit that was binned is in the waste; fruit juiced after peeling counts once.
    later = context.book.rows(PeeledUse, func.coalesce(func.sum(PeeledUse.count_milli), 0)).where(
        PeeledUse.peeled_id.in_(
            context.book.rows(PeeledFruit, PeeledFruit.id).where(PeeledFruit.ingredient_id == ingredient_id)
        ),
        PeeledUse.what.in_(("binned", "juiced", "undone")),
        PeeledUse.at > since.at,
        PeeledUse.at <= until.at,
    )
    again = Fraction(int(context.book.session.scalar(later) or 0), 1000)
    batched = _in_batches(context, ingredient_id, since, until)
    if not (peeled or juiced or batched):
        return None
    return peeled + juiced + batched - again


def _sum(
    context: Context, table: Any, of: Any, since: CountView, until: CountView, voids: bool = False
) -> Fraction:
    query = context.book.rows(table, func.coalesce(func.sum(table.count_milli), 0)).where(
        of, table.at > since.at, table.at <= until.at
    )
    total = int(context.book.session.scalar(query) or 0)
    if voids:
        total -= 2 * int(context.book.session.scalar(query.where(table.void.is_(True))) or 0)
    return Fraction(total, 1000)


def _in_batches(context: Context, ingredient_id: int, since: CountView, until: CountView) -> Fraction:
    query = (
        context.book.rows(BatchLine, BatchLine.amount)
        .join(BatchRow, (BatchRow.bar_id == BatchLine.bar_id) & (BatchRow.id == BatchLine.batch_id))
        .where(
            BatchLine.ingredient_id == ingredient_id,
            BatchLine.unit == "each",
            BatchRow.state != "undone",
            BatchRow.id > since.after_batch,
            BatchRow.id <= until.after_batch,
        )
    )
    return sum(context.book.session.scalars(query), Fraction(0))


@dataclass(frozen=True, slots=True)
class BoughtSum:
    """Deliveries of one ingredient in a period: pieces, grams and money paid."""

    count: Fraction
    grams: Fraction
    paid: Decimal


def bought_between(context: Context, first: date, last: date) -> dict[int, BoughtSum]:
    """Return the deliveries from first to last day, both included, by ingredient."""
    query = (
        context.book.rows(
            Delivery,
            Delivery.ingredient_id,
            Delivery.dimension,
            func.sum(Delivery.amount_milli),
            func.sum(func.coalesce(Delivery.cost_minor, 0)),
        )
        .where(Delivery.business_day.between(first, last))
        .group_by(Delivery.ingredient_id, Delivery.dimension)
    )
    found: dict[int, BoughtSum] = {}
    for number, dimension, milli, minor in context.book.session.execute(query):
        so_far = found.get(number, BoughtSum(Fraction(0), Fraction(0), Decimal(0)))
        amount = Fraction(int(milli), 1000)
        found[number] = BoughtSum(
            so_far.count + (amount if dimension == Dimension.COUNT else 0),
            so_far.grams + (amount if dimension == Dimension.MASS else 0),
            so_far.paid + from_minor(int(minor), context.bar.currency),
        )
    return found
