"""Cash of the sprayed fruit by whole weeks: paid for fruit and spray, before the switch and since."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from bot.trade.days import Week, business_day_span
from bot.trade.numbers.ranges import Range
from bot.trade.savings.before_after import FEWEST_NIGHTS, FEWEST_WEEKS
from bot.trade.savings.cash import weekly_saving
from bot.work.batches import bottles
from bot.work.context import Context
from bot.work.formulas import formulas
from bot.work.formulas.formulas import FormulaView
from bot.work.formulas.ingredients import IngredientView
from bot.work.fruit import balance
from bot.work.fruit.balance import BoughtSum
from bot.work.fruit.waste import grams_each
from bot.work.money import prices
from bot.work.planning import usage
from bot.work.savings import before_after, fresh_versus_spray
from bot.work.savings.before_after import SprayEffect
from storage.tables import Entry

_NOTICED = 0.05  # a change of a fruit's price by less is not worth a sentence


@dataclass(frozen=True, slots=True)
class PriceChange:
    """The mean price paid for one piece of a sprayed fruit, in the weeks before and since."""

    fruit: IngredientView
    before: float
    since: float


@dataclass(frozen=True, slots=True)
class Cash:
    """Money by whole weeks since the first switch: the sum saved so far at the end of each.

    Saved is what a sprayed fruit cost in its mean week before, less what it cost in the week, less the
    batches of its spray. No labour is in it. `a_week` is the mean of the weeks in which all these fruit were
    sprayed, against those in which none was; None below FEWEST_NIGHTS logged or FEWEST_WEEKS of either.
    `range` holds it with 95 % confidence. `others` is how much less was paid a week for the fruit never
    sprayed, in the same weeks; None if none was bought. `priced` is False if a batch had an ingredient
    without a price, and `made` if a fruit has no batch of its spray in the log: then the sums lack it.
    """

    weeks: tuple[Week, ...]
    sums: tuple[float, ...]
    a_week: float | None
    range: Range[float] | None
    others: float | None
    outlay: float
    dearer: tuple[PriceChange, ...]
    priced: bool
    made: bool


def cash(context: Context, effects: Sequence[SprayEffect]) -> Cash | None:
    """Return the cash of the sprayed fruit together; None without deliveries of them before."""
    bought = _Bought(context)
    parts = [_part(context, bought, one) for one in effects if one.before.weeks and one.after.weeks]
    parts = [one for one in parts if any(one.before)]
    if not parts:
        return None
    weeks = sorted({week for one in parts for week in one.saved})
    saved = [sum(one.saved.get(week, 0.0) for one in parts) for week in weeks]
    sums = tuple(sum(saved[: number + 1]) for number in range(len(saved)))
    first = min(parts, key=lambda one: one.effect.since.day).effect.before
    last = max(parts, key=lambda one: one.effect.since.day).effect.after
    before, since = first.weeks, last.weeks
    fruit = [one.effect.since.fruit for one in parts]
    a_week, spread, others = None, None, None
    if all(len(one.weeks) >= FEWEST_WEEKS and one.nights >= FEWEST_NIGHTS for one in (first, last)):
        batches = [_spray_costs(context, one.effect, since)[0] for one in parts]
        spent = [sum(costs) for costs in zip(bought.paid(fruit, since), *batches, strict=True)]
        a_week, spread = weekly_saving(bought.paid(fruit, before), spent)
        beside = list({view.id: view for one in parts for view in one.effect.others}.values())
        paid = bought.paid(beside, before), bought.paid(beside, since)
        others = weekly_saving(*paid)[0] if any(paid[0]) else None
    outlay = fresh_versus_spray.estimate_of(context.bar.settings.outlay)
    return Cash(
        tuple(weeks),
        sums,
        a_week,
        spread,
        others,
        float(outlay.likely) if outlay else 0.0,
        tuple(change for one in parts if (change := bought.change(one.effect)) is not None),
        all(one.priced for one in parts),
        all(one.made for one in parts),
    )


def currency_changed(context: Context, since: date) -> bool:
    """Return whether the bar came to its currency only after this day: sums would mix two of them."""
    rows = context.book.all(Entry, Entry.what == "settings", Entry.chain.is_(None))
    days = [
        context.bar.day_of(row.at)
        for row in rows
        if row.details.get("after", {}).get("currency") == context.bar.currency
        and row.details["before"].get("currency") != context.bar.currency
    ]
    return max(days, default=since) > since


@dataclass(frozen=True, slots=True)
class _Part:
    """One fruit: paid in each week before, and saved in each week since."""

    effect: SprayEffect
    before: list[float]
    saved: dict[Week, float]
    priced: bool
    made: bool


def _part(context: Context, bought: _Bought, effect: SprayEffect) -> _Part:
    fruit, weeks = [effect.since.fruit], effect.after.weeks
    before = bought.paid(fruit, effect.before.weeks)
    spray, priced, made = _spray_costs(context, effect, weeks)
    usual = sum(before) / len(before) if before else 0.0
    paid = zip(weeks, bought.paid(fruit, weeks), spray, strict=True)
    return _Part(effect, before, {week: usual - one - batch for week, one, batch in paid}, priced, made)


class _Bought:
    """The deliveries by week, each read once."""

    def __init__(self, context: Context) -> None:
        self._context = context
        self._weeks: dict[Week, dict[int, BoughtSum]] = {}
        self._courses: dict[int, prices.Course] = {}

    def paid(self, fruit: Sequence[IngredientView], weeks: Sequence[Week]) -> list[float]:
        """Return what was paid for these fruit in each week."""
        return [sum(self._paid(one, week) for one in fruit) for week in weeks]

    def change(self, effect: SprayEffect) -> PriceChange | None:
        """Return how the price of a piece changed from the weeks before to those since; None if hardly."""
        fruit = effect.since.fruit
        each = []
        for weeks in (effect.before.weeks, effect.after.weeks):
            pieces = sum(self._pieces(fruit, week) for week in weeks)
            each.append(sum(self.paid([fruit], weeks)) / pieces if pieces else 0.0)
        noticed = all(each) and abs(each[1] / each[0] - 1) >= _NOTICED
        return PriceChange(fruit, each[0], each[1]) if noticed else None

    def _of(self, fruit: IngredientView, week: Week) -> BoughtSum | None:
        if week not in self._weeks:
            self._weeks[week] = balance.bought_between(self._context, week.first, week.last)
        return self._weeks[week].get(fruit.id)

    def _pieces(self, fruit: IngredientView, week: Week) -> float:
        found, grams = self._of(fruit, week), grams_each(fruit)
        return 0.0 if found is None else float(found.count + (found.grams / grams if grams else 0))

    def _paid(self, fruit: IngredientView, week: Week) -> float:
        """Return what a week's deliveries cost; at the price in force in it where they had none."""
        found = self._of(fruit, week)
        if found is None or found.paid:
            return float(found.paid) if found else 0.0
        if fruit.id not in self._courses:
            self._courses[fruit.id] = prices.course(self._context, fruit.id)
        bar = self._context.bar
        _begin, end = business_day_span(week.last, bar.zone, bar.closing_minute)
        price = self._courses[fruit.id].at(end)
        each = None if price is None else fresh_versus_spray.per_fruit(fruit, price)
        return self._pieces(fruit, week) * float(each or 0)


def _spray_costs(
    context: Context, effect: SprayEffect, weeks: Sequence[Week]
) -> tuple[list[float], bool, bool]:
    """Return what the batches of a spray cost at their prices then, by week; whether each had its prices; and
    whether there are any. What moved to another bar costs there.

    A batch made before or between these weeks counts in the next: it was made for the drinks of that one. If
    the fruit was sprayed before them, only the last batch before them was still there.
    """
    spent, costs, there = [0.0] * len(weeks), [], {}
    made = usage.batches_of(context)
    for batch in (one for view in sprays(context, effect.since.fruit) for one in made.get(view.id, [])):
        day = context.bar.day_of(batch.made_at)
        place = next((at for at, week in enumerate(weeks) if day <= week.last), None)
        if place is None:
            continue
        costs.append(bottles.cost_of(batch, bottles.here_ml(context, batch)))
        if day < weeks[0].first and effect.after.weeks[0] != weeks[0]:
            there[batch.formula_id] = float(costs[-1] or 0)
        else:
            spent[place] += float(costs[-1] or 0)
    spent[0] += sum(there.values())
    return spent, None not in costs, bool(costs)


def sprays(context: Context, fruit: IngredientView) -> list[FormulaView]:
    """Return the formulas that replace this garnish, or replaced it in an earlier version."""
    subjects = before_after.formulas_of(context, fruit)
    return [formulas.get(context, subject[0]) for subject in subjects if subject[0] is not None]
