"""Compare fresh garnish with spray: ingredients, bottles, loss and wasted fruit; apart from it, time."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction

from sqlalchemy import func

from bot.trade.formulas.measures import Dimension
from bot.trade.numbers.uncertainty import Estimate, to_decimal
from bot.trade.savings.fresh_versus_spray import Fresh, FreshAgainstSpray, House, Spray, compare
from bot.trade.words import N_
from bot.work.context import BarSettings, Context
from bot.work.formulas import overheads
from bot.work.formulas.formulas import FormulaView
from bot.work.formulas.ingredients import IngredientView
from bot.work.formulas.keeping import kept_days
from bot.work.fruit import balance, peeled
from bot.work.fruit.waste import grams_each
from bot.work.money import prices
from bot.work.money.cost import CostAnswer
from bot.work.money.prices import PriceView
from bot.work.planning import usage
from bot.work.savings import savings
from storage.tables import Waste

WEEKS_LOOKED_AT = 12
_MOST_WASTED = Fraction(95, 100)  # a higher share of the purchases is impossible: a delivery is missing


class Uncounted(StrEnum):
    """A value that the bar has not set, and that counts as zero."""

    BATCH_MINUTES = N_("batch minutes")
    GARNISH_MINUTES = N_("garnish minutes")
    BOTTLE = N_("bottle price")
    LABEL = N_("label price")
    WASTE = N_("fruit wasted")


@dataclass(frozen=True, slots=True)
class WastedShare:
    """The share of the purchased fruit (0 to 1) thrown out in these days, as logged.

    `kept` is the share whose flesh was juiced or used after peeling.
    """

    share: Fraction
    kept: Fraction
    first: date
    last: date


class DrinksBasis(StrEnum):
    """The source of the number of drinks per week, in words for the reply."""

    SAID = N_("as you said")
    COUNTED = N_("by the drinks counted")
    BOTTLES = N_("by the bottles used up")


@dataclass(frozen=True, slots=True)
class WeeklyDrinks:
    """Drinks per week with this garnish, and the source of the number."""

    number: Estimate
    basis: DrinksBasis


@dataclass(frozen=True, slots=True)
class Against:
    """The comparison and its basis; `uncounted` counts as zero, `outlay` is spent once."""

    fruit: IngredientView
    result: FreshAgainstSpray
    wasted: WastedShare | None
    drinks: WeeklyDrinks
    outlay: Decimal
    uncounted: tuple[Uncounted, ...]


@dataclass(frozen=True, slots=True)
class NotComparable:
    """The one missing input that prevents a comparison."""

    missing: str  # 'garnish', 'price', 'prices of ingredients', 'sprays' or 'drinks'
    fruit: IngredientView | None


def estimate_of(text: str) -> Estimate | None:
    """Return the number or range stored as text in a setting, or None if it is not set."""
    parts = text.split()
    return Estimate.between(Fraction(parts[0]), Fraction(parts[-1])) if parts else None


def against_fresh(context: Context, found: CostAnswer) -> Against | NotComparable:
    """Compare a costed batch of a sprayed formula with the fresh garnish that it replaces.

    Raises OutOfRangeError for impossible inputs.
    """
    view, cost = found.answer.formula, found.cost
    fruit = view.garnish
    if fruit is None:
        return NotComparable("garnish", None)
    if view.sprays is None or found.bottle_ml is None or not found.answer.finished_ml:
        return NotComparable("sprays", fruit)
    price = prices.in_force(context, [fruit.id]).get(fruit.id)
    each = None if price is None else per_fruit(fruit, price)
    if price is None or each is None or price.garnishes is None:
        return NotComparable("price", fruit)
    if cost.consumed is None or cost.is_partial or not cost.consumed:
        return NotComparable("prices of ingredients", fruit)
    weekly = weekly_drinks(context, view)
    if weekly is None:
        return NotComparable("drinks", fruit)
    wasted = wasted_share(context, fruit)
    settings = context.bar.settings
    making, bottle, label = (
        _or_nothing(overheads.said(settings, view.id, name)) for name in overheads.FIELDS
    )
    fresh = Fresh(
        Estimate.exactly(each),
        Estimate.between(*price.garnishes),
        Estimate.exactly(Fraction(0) if wasted is None else wasted.share),
        _or_nothing(settings.garnish_minutes),
        Estimate.exactly(Fraction(0) if wasted is None else wasted.kept),
    )
    spray = Spray(
        Estimate.exactly(cost.consumed),
        making,
        bottle,
        label,
        Estimate.exactly(found.answer.loss_share),
        Estimate.between(*view.spray_ml),
        Estimate.between(*view.sprays),
        to_decimal(found.answer.finished_ml),
        to_decimal(found.bottle_ml),
        _shelf_weeks(view),
    )
    outlay = estimate_of(settings.outlay)
    spent = Decimal(0) if outlay is None else to_decimal(outlay.likely)
    weeks = to_decimal(Fraction(settings.open_weeks or "52"))
    house = House(weekly.number, weeks, spent)
    result = compare(fresh, spray, house)
    return Against(fruit, result, wasted, weekly, spent, _uncounted(settings, view, wasted))


def per_fruit(fruit: IngredientView, price: PriceView) -> Fraction | None:
    """Return the price of one piece, also for fruit bought by the kilogram."""
    if price.dimension is Dimension.COUNT:
        return price.per_base
    each = grams_each(fruit)
    return price.per_base * each if price.dimension is Dimension.MASS and each is not None else None


def _or_nothing(text: str) -> Estimate:
    return estimate_of(text) or Estimate.exactly(0)


def _shelf_weeks(view: FormulaView) -> Decimal | None:
    days = Fraction(kept_days(view)) - view.rest_hours / 24
    return to_decimal(days / 7) if days > 0 else None


def _uncounted(settings: BarSettings, view: FormulaView, wasted: WastedShare | None) -> tuple[Uncounted, ...]:
    left_out = []
    making, bottle, label = (overheads.said(settings, view.id, name) for name in overheads.FIELDS)
    if not making:
        left_out.append(Uncounted.BATCH_MINUTES)
    if making and not settings.garnish_minutes:
        left_out.append(Uncounted.GARNISH_MINUTES)
    if not bottle:
        left_out.append(Uncounted.BOTTLE)
    if not label:
        left_out.append(Uncounted.LABEL)
    if wasted is None:
        left_out.append(Uncounted.WASTE)
    return tuple(left_out)


# -- read from the log -----------------------------------------------------------------------


def weekly_drinks(context: Context, view: FormulaView) -> WeeklyDrinks | None:
    """Return the drinks per week with this garnish: as set by the bar, else from its bottles, or None."""
    said = estimate_of(context.bar.settings.drinks_a_week)
    if said is not None:
        return WeeklyDrinks(said, DrinksBasis.SAID)
    if view.sprays is None:
        return None
    known = usage.Usage(context).of(view)
    if known.use is None:
        return None
    # The log gives the amount sprayed; sprays and their size are ranges of their own, so this uses the middle
    # of both and does not count their ends twice.
    per_drink = (view.sprays[0] + view.sprays[1]) * (view.spray_ml[0] + view.spray_ml[1]) / 4
    open_days = sum(one > 0 for one in known.use.means)
    low, likely, high = (
        Fraction(str(ml)) / per_drink
        for ml in (known.use.a_day.low * open_days, known.use.a_week, known.use.a_day.high * open_days)
    )
    basis = DrinksBasis.COUNTED if known.evidence.nights else DrinksBasis.BOTTLES
    return WeeklyDrinks(Estimate.between(low, high, likely), basis)


def wasted_share(context: Context, fruit: IngredientView) -> WastedShare | None:
    """Return the share of the fruit bought that was thrown out while its garnish was still cut.

    The twelve weeks before the spray began; without a logged purchase in them, or if the garnish is still
    cut, the last twelve weeks. None where no delivery was logged.
    """
    today = context.today
    started = next((one.day for one in savings.starts(context) if one.fruit.id == fruit.id), None)
    ends = [*([started - timedelta(days=1)] if started is not None else []), today]
    for last in ends:
        first = last - timedelta(weeks=WEEKS_LOOKED_AT) + timedelta(days=1)
        share = _share(context, fruit, first, last)
        if share is not None:
            return WastedShare(*share, first, last)
    return None


def _share(
    context: Context, fruit: IngredientView, first: date, last: date
) -> tuple[Fraction, Fraction] | None:
    """Return the shares of the purchased fruit that were wasted and kept after peeling."""
    bought = balance.bought_between(context, first, last).get(fruit.id)
    if bought is None:
        return None
    query = context.book.rows(
        Waste,
        func.coalesce(func.sum(Waste.count_milli), 0),
        func.coalesce(func.sum(Waste.grams_milli), 0),
    ).where(Waste.ingredient_id == fruit.id, Waste.business_day.between(first, last))
    pieces, grams = (Fraction(int(one), 1000) for one in context.book.session.execute(query).one())
    each = grams_each(fruit)
    if each is None and (bought.grams or grams):
        return None
    there = bought.count + (bought.grams / each if each else 0)
    if there <= 0:
        return None
    kept = peeled.settled(context, fruit.id, first, last, peeled.JUICED, peeled.BATCH)
    wasted = pieces + (grams / each if each else 0)
    return _part(wasted, there), _part(kept, there)


def _part(pieces: Fraction, there: Fraction) -> Fraction:
    return min(max(pieces / there, Fraction(0)), _MOST_WASTED)


# -- price increases --------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class Rise:
    """An ingredient more expensive than when the formula was last made: by the share, 0.15 for 15 %."""

    name: str
    share: Fraction


@dataclass(frozen=True, slots=True)
class Rises:
    """Price increases since a batch, the largest first."""

    batch: int
    made_on: date
    rises: tuple[Rise, ...]


def rises(context: Context, view: FormulaView) -> Rises | None:
    """Return the increases of a formula of at least the bar's threshold since its last batch, or None."""
    made = [one for one in usage.batches_of(context).get(view.id, []) if one.came_from is None]
    if not made:
        return None
    last = made[-1]
    wanted: Sequence[int] = [line.ingredient.id for line in view.lines]
    now, then = prices.in_force(context, wanted), prices.in_force(context, wanted, at=last.made_at)
    least = Fraction(context.bar.settings.price_rise_percent) / 100
    found = []
    for line in view.lines:
        new, old = now.get(line.ingredient.id), then.get(line.ingredient.id)
        if new is None or old is None or new.dimension is not old.dimension or not old.typed_per_base:
            continue
        share = new.typed_per_base / old.typed_per_base - 1
        if share > 0 and share >= least:
            found.append(Rise(line.ingredient.name, share))
    if not found:
        return None
    day = context.bar.day_of(last.made_at)
    return Rises(last.id, day, tuple(sorted(found, key=lambda one: -one.share)))
