"""The owner's figures of the spray: waste before and since, cash and time apart, and what is not known."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from enum import StrEnum
from fractions import Fraction

from bot.trade.days import Week, week_of
from bot.trade.formulas.amounts import ByFactor, ByTotal
from bot.trade.numbers.ranges import Range
from bot.trade.savings.before_after import FEWEST_WEEKS
from bot.trade.savings.cash import weekly_saving
from bot.trade.savings.fresh_versus_spray import Answer
from bot.trade.words import N_
from bot.work.context import Context
from bot.work.formulas import formulas, scaling
from bot.work.formulas.formulas import FormulaView
from bot.work.formulas.ingredients import IngredientView, handbook_key
from bot.work.fruit import balance
from bot.work.fruit.waste import grams_each
from bot.work.money import cost as costing
from bot.work.money import prices
from bot.work.planning import usage
from bot.work.savings import before_after, fresh_versus_spray
from bot.work.savings.before_after import SprayEffect
from bot.work.savings.fresh_versus_spray import Against

_USUAL_BOTTLE_ML = Fraction(50)


class Unknown(StrEnum):
    """Something that the page leaves out. The values are shown to people."""

    PURCHASES = N_("what the fruit cost: log deliveries, before and since")
    PRICES = N_("batches with an ingredient without a price")
    TIME = N_("minutes: set bar garnish minutes and bar batch minutes")
    DRINKS = N_("drinks: not counted before and since, so all is by the night")
    OUTLAY = N_("what was spent once: set bar outlay")


@dataclass(frozen=True, slots=True)
class FruitWeeks:
    """One fruit by week: pieces thrown out; `key` is its name in the handbook, None for another fruit."""

    fruit: IngredientView
    key: str | None
    pieces: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Cash:
    """Money by whole weeks since the spray: the sum saved so far at the end of each, and a week's mean.

    Saved is what the sprayed fruit cost in the mean week before, less what it cost in the week, less the
    batches of the spray. No labour is in it. `range` holds the mean week with 95 % confidence.
    """

    weeks: tuple[Week, ...]
    sums: tuple[float, ...]
    a_week: float
    range: Range[float] | None
    outlay: float


@dataclass(frozen=True, slots=True)
class OwnerPage:
    """The whole page. `weeks` ends with the running week; `switches` are the days on which sprays began,
    and the fruit."""

    effects: tuple[SprayEffect, ...]
    weeks: tuple[Week, ...]
    sprayed: tuple[FruitWeeks, ...]
    others: tuple[FruitWeeks, ...]
    switches: tuple[tuple[date, str], ...]
    running: bool
    cash: Cash | None
    minutes: tuple[tuple[str, Answer], ...]
    unknown: tuple[Unknown, ...]


def page(context: Context) -> OwnerPage | None:
    """Return the owner's page, or None while no whole week lies on both sides of a switch."""
    effects = tuple(one for one in before_after.effects(context, context.today) if one.before.weeks)
    if not any(one.after.weeks for one in effects):
        return None
    first = min(one.before.weeks[0].first for one in effects)
    weeks = _weeks(first, context.today)
    others = {view.id: view for one in effects for view in one.others}
    sprayed = [one.since.fruit for one in effects]
    every = before_after.pieces_by_week(context, weeks)
    compared = [_compared(context, one) for one in effects]
    cash, left_out = _cash(context, effects)
    minutes = tuple(
        (found.fruit.name, found.result.minutes)
        for found in compared
        if found is not None and found.result.minutes.whole.high > 0
    )
    unknown = [*left_out]
    unknown += [] if minutes else [Unknown.TIME]
    unknown += [Unknown.DRINKS] if any(one.after.drinks is None for one in effects) else []
    unknown += [] if cash is None or cash.outlay else [Unknown.OUTLAY]
    return OwnerPage(
        effects,
        weeks,
        _fruit_weeks(context, sprayed, every),
        _fruit_weeks(context, sorted(others.values(), key=lambda one: one.name), every),
        tuple((one.since.day, one.since.fruit.name) for one in effects),
        weeks[-1].last >= context.today,
        cash,
        minutes,
        tuple(unknown),
    )


def _weeks(first: date, last: date) -> tuple[Week, ...]:
    count = (week_of(last).first - week_of(first).first).days // 7 + 1
    return tuple(week_of(first + timedelta(weeks=number)) for number in range(count))


def _fruit_weeks(
    context: Context, fruit: Sequence[IngredientView], every: dict[int, list[float]]
) -> tuple[FruitWeeks, ...]:
    return tuple(
        FruitWeeks(one, handbook_key(one.name, context.bar.language), tuple(every[one.id]))
        for one in fruit
        if one.id in every
    )


# -- cash ----------------------------------------------------------------------------------------


def _cash(context: Context, effects: Sequence[SprayEffect]) -> tuple[Cash | None, list[Unknown]]:
    """Return the cash of all sprayed fruit together, before the first switch and since the last."""
    before = min(effects, key=lambda one: one.since.day).before.weeks
    since = max(effects, key=lambda one: one.since.day).after.weeks
    if min(len(before), len(since)) < FEWEST_WEEKS:
        return None, [Unknown.PURCHASES]
    fruit = [one.since.fruit for one in effects]
    paid_before, paid_since = (_paid(context, fruit, weeks) for weeks in (before, since))
    if not any(paid_before):
        return None, [Unknown.PURCHASES]
    spray, priced = _spray_costs(context, effects, since)
    spent = [paid + batch for paid, batch in zip(paid_since, spray, strict=True)]
    usual = sum(paid_before) / len(paid_before)
    sums = [sum(usual - one for one in spent[: number + 1]) for number in range(len(spent))]
    outlay = fresh_versus_spray.estimate_of(context.bar.settings.outlay)
    a_week, spread = weekly_saving(paid_before, spent)
    cash = Cash(since, tuple(sums), a_week, spread, float(outlay.likely) if outlay else 0.0)
    return cash, [] if priced else [Unknown.PRICES]


def _paid(context: Context, fruit: Sequence[IngredientView], weeks: Sequence[Week]) -> list[float]:
    """Return what was paid for these fruit in each week; at today's price where a delivery had none."""
    in_force = prices.in_force(context, [one.id for one in fruit])
    found = []
    for week in weeks:
        bought = balance.bought_between(context, week.first, week.last)
        total = 0.0
        for one in fruit:
            if one.id not in bought:
                continue
            price, grams = in_force.get(one.id), grams_each(one)
            each = None if price is None else fresh_versus_spray.per_fruit(one, price)
            pieces = bought[one.id].count + (bought[one.id].grams / grams if grams else 0)
            total += float(bought[one.id].paid or pieces * (each or 0))
        found.append(total)
    return found


def _spray_costs(
    context: Context, effects: Sequence[SprayEffect], weeks: Sequence[Week]
) -> tuple[list[float], bool]:
    """Return what the batches of the sprays cost, by week made, and whether every one had its prices.

    A batch made before the first of these weeks counts in it: it was made for the switch.
    """
    spent, priced = [0.0] * len(weeks), True
    made = usage.batches_of(context)
    for effect in effects:
        for view in _sprays(context, effect.since.fruit):
            for batch in made.get(view.id, []):
                day = context.bar.day_of(batch.made_at)
                if day > weeks[-1].last:
                    continue
                answer = scaling.scale_formula(context, view, ByTotal(batch.total_ml))
                cost = costing.cost_of(context, answer).cost
                priced = priced and cost.consumed is not None and not cost.is_partial
                place = max(0, (day - weeks[0].first).days // 7)
                spent[place] += float(cost.consumed or 0)
    return spent, priced


def _sprays(context: Context, fruit: IngredientView) -> list[FormulaView]:
    subjects = before_after.formulas_of(context, fruit)
    return [formulas.get(context, subject[0]) for subject in subjects if subject[0] is not None]


def _compared(context: Context, effect: SprayEffect) -> Against | None:
    """Return fresh against the spray of this fruit, by its formula as made last."""
    for view in _sprays(context, effect.since.fruit):
        ml = costing.last_made_ml(context, view.id)
        target = ByFactor(Fraction(1)) if ml is None else ByTotal(ml)
        loss = Fraction(context.bar.settings.loss_percent) / 100
        answer = scaling.scale_formula(context, view, target, loss_share=loss)
        found = fresh_versus_spray.against_fresh(context, costing.cost_of(context, answer, _USUAL_BOTTLE_ML))
        if isinstance(found, Against):
            return found
    return None
