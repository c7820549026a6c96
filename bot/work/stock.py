"""What is on hand: counted, bought since, less what batches took and what was thrown out."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal
from fractions import Fraction
from typing import Any

from sqlalchemy import func, select
from sqlalchemy.orm import aliased

from bot.trade.days import business_day
from bot.trade.kinds import IngredientKind
from bot.trade.measures import Dimension, Quantity
from bot.trade.money import to_minor
from bot.trade.stock import Makeable, low_stock, what_can_be_made
from bot.work import formulas, ingredients, prices, reminders, scaling
from bot.work.desk import Desk
from bot.work.errors import BadValueError
from bot.work.formulas import FormulaLineView, in_base
from bot.work.ingredients import IngredientView
from bot.work.waste import grams_each
from storage.tables import Batch, BatchLine, Delivery, StockCount, StockPar, Waste

BASE_UNITS = {Dimension.VOLUME: "ml", Dimension.MASS: "g", Dimension.COUNT: "each"}
_DIMENSIONS = {unit: kind for kind, unit in BASE_UNITS.items()}
_MOST = 10**9  # mL, g or pieces: beyond it the unit was surely mistaken
_UNDONE = "undone"  # the state of a batch that never was


@dataclass(frozen=True, slots=True)
class OnHand:
    """What the book says is there, in mL, g or pieces; `book` is below zero where a count is overdue.

    `counted_at` is the last count, None where only what was bought is known. `par` is the least that the
    bar wants, in the same measure.
    """

    ingredient: IngredientView
    book: Fraction
    dimension: Dimension
    counted_at: datetime | None
    par: Fraction | None = None

    @property
    def amount(self) -> Fraction:
        """What there is to use: never below nothing."""
        return max(self.book, Fraction(0))

    @property
    def low(self) -> bool:
        """Whether there is less than the bar's par."""
        return self.par is not None and self.amount < self.par


@dataclass(frozen=True, slots=True)
class Bought:
    """What was bought, what it cost if that was said, and what is on hand now."""

    on_hand: OnHand
    amount: Fraction
    cost: Decimal | None


@dataclass(frozen=True, slots=True)
class CanMake:
    """How much of a formula the stock allows; `finished_ml` after contraction, None if not known."""

    formula_id: int
    name: str
    version: int
    factor: Fraction
    finished_ml: Fraction | None
    limiting: str | None
    not_counted: tuple[str, ...]


def convert(
    ingredient: IngredientView, amount: Fraction, given: Dimension, wanted: Dimension
) -> Fraction | None:
    """Return an amount of an ingredient in another measure, or None where its density or size is unknown."""
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


# -- what there is --------------------------------------------------------------------------


def on_hand(desk: Desk, wanted: Iterable[int] | None = None) -> dict[int, OnHand]:
    """Return what is on hand of the ingredients that were ever counted or bought, all of them or some."""
    only = None if wanted is None else set(wanted)
    counts = _last_counts(desk, only)
    deliveries = _deliveries(desk, only)
    starts = _starts(counts, deliveries)
    if not starts:
        return {}
    known = {number: ingredients.get(desk, number) for number in starts}
    measures = {
        **{row.ingredient_id: Dimension(row.dimension) for row in reversed(deliveries)},
        **{number: Dimension(row.dimension) for number, row in counts.items()},
    }
    sums = {
        number: Fraction(counts[number].amount_milli if number in counts else 0, 1000) for number in starts
    }
    for move in (*map(_came, deliveries), *_went(desk, starts)):
        number = move.ingredient_id
        turned = convert(known[number], move.amount, move.dimension, measures[number])
        if turned is not None and starts[number].before(move):
            sums[number] += turned
    pars = _pars(desk, only)
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
    """Something that came (above zero) or went: by which table and number, and when."""

    ingredient_id: int
    table: str
    id: int
    at: datetime
    amount: Fraction
    dimension: Dimension


@dataclass(frozen=True, slots=True)
class _Start:
    """Where the book of an ingredient begins: its last count, or the first that was bought of it."""

    at: datetime
    marks: Mapping[str, int]

    def before(self, move: _Move) -> bool:
        # Instants are kept to the second; within one the numbers tell.
        return move.id > self.marks.get(move.table, 0) and move.at >= self.at.replace(microsecond=0)


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
    return _Move(row.ingredient_id, Delivery.__tablename__, row.id, row.at, amount, Dimension(row.dimension))


def _last_counts(desk: Desk, only: set[int] | None) -> dict[int, StockCount]:
    voided = aliased(StockCount)
    taken_back = (
        select(voided.id)
        .where(voided.bar_id == StockCount.bar_id, voided.corrects == StockCount.id)
        .correlate(StockCount)
        .exists()
    )
    where = [StockCount.void.is_(False), ~taken_back]
    if only is not None:
        where.append(StockCount.ingredient_id.in_(only))
    rows = desk.book.all(StockCount, *where, order=StockCount.id)
    return {row.ingredient_id: row for row in rows}


def _deliveries(desk: Desk, only: set[int] | None) -> list[Delivery]:
    """Return what was bought and not taken back, oldest first."""
    where = [] if only is None else [Delivery.ingredient_id.in_(only)]
    rows = desk.book.all(Delivery, *where, order=Delivery.id)
    corrected = {row.corrects for row in rows if row.corrects is not None}
    return [row for row in rows if row.corrects is None and row.id not in corrected]


def _went(desk: Desk, starts: Mapping[int, _Start]) -> list[_Move]:
    """Return what went into batches or into the bin."""
    first = min(start.at for start in starts.values())
    query = (
        desk.book.rows(BatchLine, BatchLine, Batch.made_at)
        .join(Batch, (Batch.bar_id == BatchLine.bar_id) & (Batch.id == BatchLine.batch_id))
        .where(BatchLine.ingredient_id.in_(list(starts)), Batch.state != _UNDONE, Batch.made_at >= first)
    )
    moves = [
        _Move(
            line.ingredient_id,
            Batch.__tablename__,
            line.batch_id,
            made_at,
            -line.amount,
            _DIMENSIONS[line.unit],
        )
        for line, made_at in desk.book.session.execute(query)
    ]
    thrown = desk.book.all(Waste, Waste.ingredient_id.in_(list(starts)), Waste.at >= first)
    corrected = {row.corrects for row in thrown if row.corrects is not None}
    by_number = {row.id: row for row in thrown}
    for row in thrown:
        # A line that got its reason later was thrown out when it was first logged.
        first_said = row if row.corrects is None else by_number.get(row.corrects)
        milli = row.count_milli if row.count_milli is not None else row.grams_milli or 0
        if milli < 0 or row.id in corrected or first_said is None:
            continue  # taken back, or taking back
        measure = Dimension.COUNT if row.count_milli is not None else Dimension.MASS
        moves.append(
            _Move(
                row.ingredient_id,
                Waste.__tablename__,
                first_said.id,
                first_said.at,
                Fraction(-milli, 1000),
                measure,
            )
        )
    return moves


def _pars(desk: Desk, only: set[int] | None) -> dict[int, tuple[Fraction, Dimension]]:
    where = [] if only is None else [StockPar.ingredient_id.in_(only)]
    return {
        row.ingredient_id: in_base(desk.bar, Quantity(row.amount, row.unit))
        for row in desk.book.all(StockPar, *where)
    }


def listed(desk: Desk) -> list[OnHand]:
    """Return everything on hand: what is below its par first, the scarcest before all, then by name."""
    found = {one.ingredient.name: one for one in on_hand(desk).values() if not _is_tap(one.ingredient)}
    pars = {name: one.par for name, one in found.items() if one.par is not None}
    low = low_stock({name: one.amount for name, one in found.items()}, pars)
    rest = sorted((name for name in found if name not in low), key=str.casefold)
    return [found[name] for name in (*low, *rest)]


def _is_tap(ingredient: IngredientView) -> bool:
    return ingredient.kind is IngredientKind.WATER


# -- counting and buying --------------------------------------------------------------------


def _base(desk: Desk, quantity: Quantity, least: Fraction = Fraction(0)) -> tuple[Fraction, Dimension]:
    amount, dimension = in_base(desk.bar, quantity)
    if not least <= amount <= _MOST:
        raise BadValueError("amount", str(float(quantity.number)))
    return amount, dimension


def _marks(desk: Desk) -> dict[str, int]:
    """Return the last numbers given out, so that no two things of one second need to be put in order."""
    return {
        f"after_{table.__tablename__}": desk.book.session.scalar(desk.book.rows(table, func.max(table.id)))
        or 0
        for table in (Delivery, Batch, Waste)
    }


def count(desk: Desk, ingredient_id: int, quantity: Quantity) -> tuple[OnHand, Fraction | None]:
    """Note what was counted; return what is on hand and what the book had said before, None if nothing.

    Raises NotThereError, BadValueError.
    """
    view = ingredients.get(desk, ingredient_id)
    amount, dimension = _base(desk, quantity)
    before = on_hand(desk, [ingredient_id]).get(ingredient_id)
    row = desk.book.add(
        StockCount(
            ingredient_id=ingredient_id,
            dimension=dimension,
            amount_milli=round(amount * 1000),
            business_day=business_day(desk.now, desk.bar.zone, desk.bar.closing_minute),
            at=desk.now,
            by=desk.person_id,
            **_marks(desk),
        )
    )
    desk.log("count stock", row=row.id, ingredient=ingredient_id, name=view.name)
    watch(desk, [ingredient_id])
    now = on_hand(desk, [ingredient_id])[ingredient_id]
    said = None if before is None else convert(view, before.book, before.dimension, dimension)
    return now, said


def buy(
    desk: Desk, ingredient_id: int, packs: Fraction, pack: Quantity, price: Decimal | None = None
) -> Bought:
    """Note so many packs bought; a price for one is the price from now on, where it is another.

    Raises NotThereError, BadValueError.
    """
    view = ingredients.get(desk, ingredient_id)
    if not 0 < packs <= 100_000:
        raise BadValueError("number of packs", str(float(packs)))
    size, dimension = _base(desk, pack, Fraction(1, 1000))
    paid = None
    if price is not None:
        before = prices.in_force(desk, [ingredient_id]).get(ingredient_id)
        if before is None or before.pack_amount != size or before.price != price:
            paid = prices.write(desk, ingredient_id, pack, price).id
    cost = None if price is None else price * packs.numerator / packs.denominator
    row = desk.book.add(
        Delivery(
            ingredient_id=ingredient_id,
            dimension=dimension,
            amount_milli=round(size * packs * 1000),
            cost_minor=None if cost is None else to_minor(cost, desk.bar.currency),
            price_id=paid,
            business_day=business_day(desk.now, desk.bar.zone, desk.bar.closing_minute),
            at=desk.now,
            by=desk.person_id,
            source=desk.source,
            line=desk.next_line(),
        )
    )
    desk.log("buy stock", row=row.id, ingredient=ingredient_id, name=view.name, price=paid)
    watch(desk, [ingredient_id])
    return Bought(on_hand(desk, [ingredient_id])[ingredient_id], size * packs, cost)


def take_back_count(desk: Desk, details: dict[str, Any]) -> None:
    """Undo a count: a void row that points to it."""
    row = desk.book.get(StockCount, details["row"])
    if row is None:
        return
    desk.book.add(
        StockCount(
            ingredient_id=row.ingredient_id,
            dimension=row.dimension,
            amount_milli=row.amount_milli,
            business_day=row.business_day,
            at=desk.now,
            by=desk.person_id,
            corrects=row.id,
            void=True,
        )
    )
    watch(desk, [row.ingredient_id])


def take_back_buying(desk: Desk, details: dict[str, Any]) -> None:
    """Undo a purchase, and the price that it brought."""
    row = desk.book.get(Delivery, details["row"])
    if row is None:
        return
    desk.book.add(
        Delivery(
            ingredient_id=row.ingredient_id,
            dimension=row.dimension,
            amount_milli=-row.amount_milli,
            cost_minor=None if row.cost_minor is None else -row.cost_minor,
            price_id=row.price_id,
            business_day=row.business_day,
            at=desk.now,
            by=desk.person_id,
            corrects=row.id,
            source=f"undo {desk.source}",
            line=desk.next_line(),
        )
    )
    if details["price"] is not None:
        prices.take_back(desk, {"price": details["price"]})
    watch(desk, [row.ingredient_id])


# -- pars -----------------------------------------------------------------------------------


def pars(desk: Desk) -> list[tuple[IngredientView, Fraction, Dimension]]:
    """Return the least that the bar wants of each ingredient, by name."""
    found = [(ingredients.get(desk, number), *par) for number, par in _pars(desk, None).items()]
    return sorted(found, key=lambda one: one[0].name.casefold())


def set_par(desk: Desk, ingredient_id: int, quantity: Quantity | None) -> None:
    """Set the least wanted on hand, or none at all. Raises NotThereError, BadValueError."""
    view = ingredients.get(desk, ingredient_id)
    if quantity is not None:
        _base(desk, quantity, Fraction(1, 1000))
    row = desk.book.get(StockPar, ingredient_id)
    before = None if row is None else [str(row.amount), row.unit]
    _write_par(desk, ingredient_id, quantity)
    desk.log("par", ingredient=ingredient_id, name=view.name, before=before)
    watch(desk, [ingredient_id])


def _write_par(desk: Desk, ingredient_id: int, quantity: Quantity | None) -> None:
    row = desk.book.get(StockPar, ingredient_id)
    if quantity is None:
        if row is not None:
            reminders.cancel_low_stock(desk.book, ingredient_id)
            desk.book.session.delete(row)
    elif row is None:
        desk.book.add(
            StockPar(ingredient_id=ingredient_id, amount=quantity.number, unit=quantity.unit, told=False)
        )
    else:
        row.amount, row.unit = quantity.number, quantity.unit
    desk.book.session.flush()


def take_back_par(desk: Desk, details: dict[str, Any]) -> None:
    """Undo a par: the one before holds again, or none."""
    before = details["before"]
    _write_par(
        desk, details["ingredient"], None if before is None else Quantity(Fraction(before[0]), before[1])
    )
    watch(desk, [details["ingredient"]])


def watch(desk: Desk, changed: Iterable[int]) -> None:
    """Plan a reminder for what fell below its par, once for each fall; drop it when there is enough."""
    rows = desk.book.all(StockPar, StockPar.ingredient_id.in_(list(changed)))
    if not rows:
        return
    there = on_hand(desk, [row.ingredient_id for row in rows])
    for row in rows:
        one = there.get(row.ingredient_id)
        if one is None or one.par is None:
            continue
        if one.low and not row.told:
            reminders.plan_low_stock(
                desk.book,
                desk.bar,
                row.ingredient_id,
                {
                    "ingredient": row.ingredient_id,
                    "name": one.ingredient.name,
                    "amount": str(one.amount),
                    "par": str(one.par),
                    "dimension": one.dimension.value,
                },
                desk.now,
                desk.person_id,
            )
        elif not one.low and row.told:
            reminders.cancel_low_stock(desk.book, row.ingredient_id)
        row.told = one.low
    desk.book.session.flush()


# -- what can be made -------------------------------------------------------------------------


def can_make(desk: Desk) -> list[CanMake]:
    """Return how much of each formula in the book the stock allows, the most times first."""
    there = on_hand(desk)
    found = []
    for name in formulas.listed(desk):
        view = formulas.get(desk, name.id)
        (one,) = what_can_be_made({view.name: scaling.recipe_of(view)}, amounts_for(view.lines, there))
        found.append(_can_make(view, one))
    return sorted(found, key=lambda one: (-one.factor, one.name))


def _can_make(view: formulas.FormulaView, one: Makeable) -> CanMake:
    tap = {line.ingredient.name for line in view.lines if _is_tap(line.ingredient)}
    share = scaling.finished_share(view) if scaling.recipe_of(view).yield_ml is None else Fraction(1)
    finished = None if one.finished_ml is None else one.finished_ml * share
    not_counted = tuple(name for name in one.not_counted if name not in tap)
    return CanMake(view.id, view.name, view.version, one.factor, finished, one.limiting, not_counted)


def amounts_for(lines: Sequence[FormulaLineView], there: Mapping[int, OnHand]) -> dict[str, Fraction]:
    """Return the stock of a formula's ingredients by name, in the formula's own measures; the tap apart."""
    found = {}
    for line in lines:
        one = there.get(line.ingredient.id)
        if one is None or _is_tap(line.ingredient):
            continue
        turned = convert(line.ingredient, one.amount, one.dimension, line.dimension)
        if turned is not None:
            found[line.ingredient.name] = turned
    return found
