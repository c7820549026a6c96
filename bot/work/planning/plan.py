"""Plan the next batches, the shopping for them, and the morning par of fresh fruit."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal
from fractions import Fraction

from bot.trade.formulas.amounts import ByTotal
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.formulas.measures import Dimension
from bot.trade.planning.plan import BatchPlan, next_batch
from bot.trade.planning.use import WeekdayUse
from bot.trade.stock.on_hand import Pack, ToBuy, list_cost, shopping_list
from bot.work.context import Context
from bot.work.formulas import formulas, scaling
from bot.work.formulas.formulas import FormulaView
from bot.work.formulas.ingredients import IngredientView
from bot.work.formulas.keeping import kept_days
from bot.work.money import prices
from bot.work.money.prices import PriceView
from bot.work.planning import usage
from bot.work.planning.event_stock import EventPlan, EventStock
from bot.work.planning.usage import Evidence, Usage
from bot.work.stock import on_hand as stock
from bot.work.stock import pars

# How long a batch should last if its discard date allows, and how far ahead to shop. Common practice, no
# source.
BATCH_DAYS = 28
SHOP_DAYS = 7


@dataclass(frozen=True, slots=True)
class FormulaPlan:
    """The next batch of one formula.

    `use` is None without evidence; `batch` is None then, and if the stock lasts beyond the horizon. `size_ml`
    is the size to make: the use of four weeks that is reached nine times in ten, or less if it would expire
    before; None if any batch would.
    """

    view: FormulaView
    use: WeekdayUse | None
    evidence: Evidence
    batch: BatchPlan | None
    size_ml: Fraction | None


@dataclass(frozen=True, slots=True)
class ShoppingLine:
    """One item to buy: the shortage in mL, g or pieces, the packs, and the purpose."""

    ingredient: IngredientView
    dimension: Dimension
    need: ToBuy
    packs: tuple[tuple[PriceView, int], ...]
    counted: bool


@dataclass(frozen=True, slots=True)
class Shopping:
    """A shopping list, its cost, and the items that could not be computed.

    `no_price` are on the list without a price, `unclear` are needed in a measure that cannot be converted to
    that of the stock or the pack.
    """

    lines: tuple[ShoppingLine, ...]
    cost: Decimal
    no_price: tuple[str, ...]
    unclear: tuple[str, ...]
    batches: tuple[FormulaPlan, ...]
    events: tuple[EventPlan, ...]
    until: date


def plan_for(
    context: Context, view: FormulaView, known: Usage | None = None, events: EventStock | None = None
) -> FormulaPlan:
    """Plan the next batch of a formula for the usual use, from its rest and its discard date."""
    known = known or Usage(context)
    events = events or EventStock(context, known)
    found = known.of(view)
    if found.use is None:
        return FormulaPlan(view, None, found.evidence, None, None)
    # A batch may still be used on its discard date, so it is gone on the next day.
    plan = next_batch(
        found.use,
        usage.in_stock(context, known.made.get(view.id, []), found.use, events.kept()),
        context.today,
        math.ceil(view.rest_hours / 24),
        kept_days(view) + 1,
    )
    size = None if plan is None else _size(plan, found.use)
    return FormulaPlan(view, found.use, found.evidence, plan, size)


def _size(plan: BatchPlan, use: WeekdayUse) -> Fraction | None:
    days = min(BATCH_DAYS, max(0, (plan.discard_on - plan.ready_on).days))
    wanted = min(plan.largest, use.at_least(max(plan.ready_on, plan.run_out_on), days))
    step = 50 if wanted >= 1000 else 10 if wanted >= 100 else 1
    rounded = int(wanted // step * step)
    return Fraction(rounded) if rounded else None


def plan_all(context: Context) -> list[FormulaPlan]:
    """Plan every formula in the book: the earliest batch first, the unknown last."""
    known = Usage(context)
    events = EventStock(context, known)
    views = (formulas.get(context, one.id) for one in formulas.listed(context))
    found = [plan_for(context, view, known, events) for view in views]
    late = date.max

    def order(one: FormulaPlan) -> tuple[bool, date, str]:
        return one.use is None, late if one.batch is None else one.batch.make_on, one.view.name

    return sorted(found, key=order)


# -- shopping ---------------------------------------------------------------------------------


def shopping(context: Context, days: int = SHOP_DAYS) -> Shopping:
    """List the whole packs to buy: for the batches of the next days, for events, for stock below its par."""
    until = context.today + timedelta(days=days)
    due = [
        one
        for one in plan_all(context)
        if one.batch is not None and one.size_ml is not None and one.batch.make_on <= until
    ]
    basket = _Basket(context)
    for one in due:
        basket.add_batch(one.view, one.size_ml or Fraction(0))
    coming = [one for one in EventStock(context).plans() if one.to_make and one.event.buy_by <= until]
    for event in coming:
        for view, ml in event.amounts:
            basket.add_batch(view, ml)
    for ingredient, least, dimension in pars.listed(context):
        basket.add(ingredient, least, dimension)
    return basket.shopping(due, until, coming)


def shopping_for(context: Context, made: Sequence[tuple[FormulaView, Fraction]], until: date) -> Shopping:
    """List the whole packs to buy for some batches, each with its mL."""
    basket = _Basket(context)
    for view, ml in made:
        basket.add_batch(view, ml)
    return basket.shopping((), until)


class _Basket:
    """Adds up the needs, each ingredient in the measure of its stock, else of its packs."""

    def __init__(self, context: Context) -> None:
        self._context = context
        self._stock = stock.on_hand(context)
        self._measures: dict[str, Dimension] = {}
        self._ingredients: dict[str, IngredientView] = {}
        self._priced: dict[tuple[str, Pack], PriceView] = {}
        self.needed: dict[str, Fraction] = {}
        self.there: dict[str, Fraction] = {}
        self.packs: dict[str, list[Pack]] = {}
        self.unclear: set[str] = set()

    def shopping(self, due: Sequence[FormulaPlan], until: date, events: Sequence[EventPlan] = ()) -> Shopping:
        """Return the packs that cover all needs."""
        found = shopping_list(self.needed, self.there, self.packs)
        lines = tuple(self.line(one) for one in found)
        cost, no_price = list_cost(found)
        return Shopping(lines, cost, no_price, tuple(sorted(self.unclear)), tuple(due), tuple(events), until)

    def add_batch(self, view: FormulaView, ml: Fraction) -> None:
        """Add the ingredients of a batch."""
        answer = scaling.scale_formula(self._context, view, ByTotal(ml))
        for line, scaled in zip(view.lines, answer.scaled.lines, strict=True):
            self.add(line.ingredient, scaled.amount, line.dimension)

    def add(self, ingredient: IngredientView, amount: Fraction, dimension: Dimension) -> None:
        if ingredient.kind is IngredientKind.WATER:
            return  # tap water
        name = ingredient.name
        if name not in self._measures:
            self._meet(ingredient, dimension)
        turned = stock.convert(ingredient, amount, dimension, self._measures[name])
        if turned is None:
            self.unclear.add(name)
        else:
            self.needed[name] = self.needed.get(name, Fraction(0)) + turned

    def _meet(self, ingredient: IngredientView, dimension: Dimension) -> None:
        name = ingredient.name
        known = prices.history(self._context, ingredient.id)
        there = self._stock.get(ingredient.id)
        measure = there.dimension if there is not None else known[-1].dimension if known else dimension
        self._ingredients[name], self._measures[name] = ingredient, measure
        if there is not None:
            self.there[name] = there.amount
        # The last price of each pack size.
        newest = {(one.pack_amount, one.dimension): one for one in known}
        for one in newest.values():
            size = stock.convert(ingredient, one.pack_amount, one.dimension, measure)
            if size is not None and size > 0:
                pack = Pack(size, one.price)
                self._priced[name, pack] = one
                self.packs.setdefault(name, []).append(pack)

    def line(self, need: ToBuy) -> ShoppingLine:
        packs = tuple((self._priced[need.name, pack], count) for pack, count in need.packs)
        return ShoppingLine(
            self._ingredients[need.name], self._measures[need.name], need, packs, need.name in self.there
        )
