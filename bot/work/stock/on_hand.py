"""Stock on hand: last count, plus deliveries, less batches and waste."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from fractions import Fraction

from bot.trade.formulas.kinds import IngredientKind
from bot.trade.formulas.measures import BASE_DIMENSIONS, Dimension, Quantity
from bot.trade.stock.on_hand import low_stock
from bot.work.context import Context
from bot.work.errors import BadValueError
from bot.work.formulas import ingredients, scaling
from bot.work.formulas.formulas import FormulaLineView, in_base
from bot.work.formulas.ingredients import IngredientView
from bot.work.fruit.waste import dimension_of, grams_each
from bot.work.standing import stands
from storage.tables import Batch, BatchLine, Delivery, StockCount, StockPar, Waste

_MOST = 10**9  # mL, g or pieces: above this the unit must be a mistake
_UNDONE = "undone"  # the state of an undone batch


@dataclass(frozen=True, slots=True)
class OnHand:
    """The stock by the book, in mL, g or pieces; `book` is below zero if a count is overdue.

    `counted_at` is the last count, None if only deliveries are known. `par` is the minimum that the bar
    wants, in the same measure.
    """

    ingredient: IngredientView
    book: Fraction
    dimension: Dimension
    counted_at: datetime | None
    par: Fraction | None = None

    @property
    def amount(self) -> Fraction:
        """The usable stock, never below zero."""
        return max(self.book, Fraction(0))

    @property
    def low(self) -> bool:
        """Whether the stock is below the bar's par."""
        return self.par is not None and self.amount < self.par


def convert(
    ingredient: IngredientView, amount: Fraction, given: Dimension, wanted: Dimension
) -> Fraction | None:
    """Return an amount of an ingredient in another measure, or None if its density or size is unknown."""
    if given is wanted:
        return amount
    if Dimension.COUNT in {given, wanted}:
        each = grams_each(ingredient)
        if each is None or Dimension.VOLUME in {given, wanted}:
            return None
        return amount * each if given is Dimension.COUNT else amount / each
    one = FormulaLineView(ingredient, Quantity(Fraction(1), "ml"), Fraction(1), Dimension.VOLUME)
    density = scaling.mass_of(one, Fraction(1)).density_g_per_ml
    if density is None:
        return None
    return amount * density if given is Dimension.VOLUME else amount / density


# -- stock ---------------------------------------------------------------------------------


def on_hand(context: Context, wanted: Iterable[int] | None = None) -> dict[int, OnHand]:
    """Return the stock of the ingredients that were ever counted or bought, all of them or some."""
    only = None if wanted is None else set(wanted)
    counts = _last_counts(context, only)
    deliveries = _deliveries(context, only)
    starts = _starts(counts, deliveries)
    if not starts:
        return {}
    known = {number: ingredients.get(context, number) for number in starts}
    measures = {
        **{row.ingredient_id: Dimension(row.dimension) for row in reversed(deliveries)},
        **{number: Dimension(row.dimension) for number, row in counts.items()},
    }
    sums = {
        number: Fraction(counts[number].amount_milli if number in counts else 0, 1000) for number in starts
    }
    for move in (*map(_came, deliveries), *_went(context, starts)):
        number = move.ingredient_id
        turned = convert(known[number], move.amount, move.dimension, measures[number])
        if turned is not None and starts[number].before(move):
            sums[number] += turned
    pars = least_wanted(context, only)
    found = {}
    for number, view in known.items():
        par = pars.get(number)
        least = None if par is None else convert(view, *par, measures[number])
        count = counts.get(number)
        found[number] = OnHand(
            view, sums[number], measures[number], None if count is None else count.at, least
        )
    return found


@dataclass(frozen=True, slots=True)
class _Move:
    """A movement of stock, positive for incoming: its table, its position there, and its time."""

    ingredient_id: int
    table: str
    place: int
    at: datetime
    amount: Fraction
    dimension: Dimension


@dataclass(frozen=True, slots=True)
class _Start:
    """The start of an ingredient's book: its last count, or its first delivery."""

    at: datetime
    marks: Mapping[str, int]

    def before(self, move: _Move) -> bool:
        # Instants have whole seconds; within one second the numbers decide the order.
        since, at = self.at.replace(microsecond=0), move.at.replace(microsecond=0)
        return at > since or (at == since and move.place > self.marks.get(move.table, 0))


def _starts(counts: Mapping[int, StockCount], deliveries: Sequence[Delivery]) -> dict[int, _Start]:
    found: dict[int, _Start] = {}
    for row in deliveries:
        found.setdefault(row.ingredient_id, _Start(row.at, {}))
    for number, count in counts.items():
        marks = {
            Delivery.__tablename__: count.after_delivery,
            Batch.__tablename__: count.after_batch,
            Waste.__tablename__: count.after_waste,
        }
        found[number] = _Start(count.at, marks)
    return found


def _came(row: Delivery) -> _Move:
    amount = Fraction(row.amount_milli, 1000)
    table, dimension = Delivery.__tablename__, Dimension(row.dimension)
    return _Move(row.ingredient_id, table, row.first, row.at, amount, dimension)


def _last_counts(context: Context, only: set[int] | None) -> dict[int, StockCount]:
    where = [stands(StockCount)]
    if only is not None:
        where.append(StockCount.ingredient_id.in_(only))
    rows = context.book.all(StockCount, *where, order=StockCount.first)
    # A count for an earlier day can be logged after one for a later day.
    return {row.ingredient_id: row for row in sorted(rows, key=lambda row: row.at)}


def _deliveries(context: Context, only: set[int] | None) -> list[Delivery]:
    """Return the valid deliveries, oldest first."""
    where = [stands(Delivery)]
    if only is not None:
        where.append(Delivery.ingredient_id.in_(only))
    rows = context.book.all(Delivery, *where, order=Delivery.first)
    return sorted(rows, key=lambda row: row.at)


def _went(context: Context, starts: Mapping[int, _Start]) -> list[_Move]:
    """Return the uses in batches and the waste."""
    first = min(start.at for start in starts.values())
    query = (
        context.book.rows(BatchLine, BatchLine, Batch.made_at)
        .join(Batch, (Batch.bar_id == BatchLine.bar_id) & (Batch.id == BatchLine.batch_id))
        .where(
            BatchLine.ingredient_id.in_(list(starts)),
            Batch.state != _UNDONE,
            Batch.came_from.is_(None),
            Batch.made_at >= first,
        )
    )
    moves = [
        _Move(
            line.ingredient_id,
            Batch.__tablename__,
            line.batch_id,
            made_at,
            -line.amount,
            BASE_DIMENSIONS[line.unit],
        )
        for line, made_at in context.book.session.execute(query)
    ]
    thrown = Waste.ingredient_id.in_(list(starts)), Waste.at >= first, stands(Waste)
    for row in context.book.all(Waste, *thrown):
        amount = Fraction(-row.amount_milli, 1000)
        measure = dimension_of(row)
        moves.append(_Move(row.ingredient_id, Waste.__tablename__, row.first, row.at, amount, measure))
    return moves


def least_wanted(context: Context, only: set[int] | None = None) -> dict[int, tuple[Fraction, Dimension]]:
    """Return the pars of all ingredients or of some, in mL, g or pieces."""
    where = [] if only is None else [StockPar.ingredient_id.in_(only)]
    return {
        row.ingredient_id: in_base(context.bar, Quantity(row.amount, row.unit))
        for row in context.book.all(StockPar, *where)
    }


def listed(context: Context) -> list[OnHand]:
    """Return all stock: items below par first, the scarcest on top, then by name."""
    found = {one.ingredient.name: one for one in on_hand(context).values() if not is_tap(one.ingredient)}
    pars = {name: one.par for name, one in found.items() if one.par is not None}
    low = low_stock({name: one.amount for name, one in found.items()}, pars)
    rest = sorted((name for name in found if name not in low), key=str.casefold)
    return [found[name] for name in (*low, *rest)]


def is_tap(ingredient: IngredientView) -> bool:
    """Whether it is tap water, which nobody counts."""
    return ingredient.kind is IngredientKind.WATER


def in_base_units(
    context: Context, quantity: Quantity, least: Fraction = Fraction(0)
) -> tuple[Fraction, Dimension]:
    """Return an amount of stock in mL, g or pieces.

    Raises BadValueError below `least`, or for so much that the unit must be a mistake.
    """
    amount, dimension = in_base(context.bar, quantity)
    if not least <= amount <= _MOST:
        raise BadValueError("amount", str(float(quantity.number)))
    return amount, dimension
