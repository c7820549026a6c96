"""The owner's figures of the spray: waste before and since, cash and time apart, and what is not known."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from enum import StrEnum

from bot.trade.days import Week, week_of
from bot.trade.savings.fresh_versus_spray import Answer
from bot.trade.words import N_
from bot.work.context import Context
from bot.work.formulas import overheads
from bot.work.formulas.ingredients import IngredientView, handbook_key
from bot.work.money import cost as costing
from bot.work.savings import before_after, fresh_versus_spray
from bot.work.savings import cash as cashed
from bot.work.savings.before_after import SprayEffect
from bot.work.savings.cash import Cash
from bot.work.savings.fresh_versus_spray import Against


class Unknown(StrEnum):
    """Something that the page leaves out. The values are shown to people."""

    CURRENCY = N_("cash: the currency changed in these weeks")
    PURCHASES = N_("what the fruit cost: log deliveries, before and since")
    BATCHES = N_("the spray: log its batches")
    PRICES = N_("batches with an ingredient without a price")
    BOTTLES = N_("sprayer bottles and labels")
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
class OwnerPage:
    """The whole page. `weeks` ends with the running week; `switches` are the days on which sprays began,
    and the fruit; `unlogged` are the places of the weeks in which no night was logged."""

    effects: tuple[SprayEffect, ...]
    weeks: tuple[Week, ...]
    sprayed: tuple[FruitWeeks, ...]
    others: tuple[FruitWeeks, ...]
    switches: tuple[tuple[date, str], ...]
    running: bool
    unlogged: frozenset[int]
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
    mixed = cashed.currency_changed(context, first)
    cash = None if mixed else cashed.cash(context, effects)
    minutes = tuple((found.fruit.name, found.result.minutes) for found in compared if found is not None)
    return OwnerPage(
        effects,
        weeks,
        _fruit_weeks(context, sprayed, every),
        _fruit_weeks(context, sorted(others.values(), key=lambda one: one.name), every),
        tuple((one.since.day, one.since.fruit.name) for one in effects),
        weeks[-1].last >= context.today,
        before_after.unlogged(context, weeks),
        cash,
        minutes,
        _unknown(effects, cash, minutes, mixed),
    )


def _unknown(
    effects: Sequence[SprayEffect],
    cash: Cash | None,
    minutes: Sequence[tuple[str, Answer]],
    mixed_currencies: bool,
) -> tuple[Unknown, ...]:
    left_out = {
        Unknown.CURRENCY: mixed_currencies,
        Unknown.PURCHASES: cash is None and not mixed_currencies,
        Unknown.BATCHES: cash is not None and not cash.made,
        Unknown.PRICES: cash is not None and not cash.priced,
        Unknown.BOTTLES: cash is not None,
        Unknown.TIME: not minutes,
        Unknown.DRINKS: any(one.after.drinks is None for one in effects),
        Unknown.OUTLAY: cash is not None and not cash.outlay,
    }
    return tuple(one for one, is_left_out in left_out.items() if is_left_out)


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


# -- time ----------------------------------------------------------------------------------------


def _compared(context: Context, effect: SprayEffect) -> Against | None:
    """Return fresh against the spray of this fruit, by its formula as made last; None without both times."""
    settings = context.bar.settings
    for view in cashed.sprays(context, effect.since.fruit):
        if not settings.garnish_minutes or not overheads.said(settings, view.id, "batch_minutes"):
            continue
        costed = costing.as_last_made(context, view)
        found = fresh_versus_spray.against_fresh(context, costed)
        if isinstance(found, Against):
            return found
    return None
