"""What was thrown out in a stretch of business days, by fruit and by reason, against the stretch before."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal
from fractions import Fraction
from typing import Any

from sqlalchemy import case, func

from bot.trade.days import business_day, week_at, week_of
from bot.trade.money import from_minor
from bot.work import ingredients
from bot.work.desk import Desk
from storage.tables import Waste


@dataclass(frozen=True, slots=True)
class FruitSum:
    """One fruit's waste: pieces, grams and cost; `unpriced` lines had no price and cost nothing here."""

    ingredient_id: int
    name: str
    count: Fraction
    grams: Fraction
    cost: Decimal
    unpriced: int


@dataclass(frozen=True, slots=True)
class ReasonSum:
    """One reason's waste; `unpriced` as in FruitSum."""

    reason: str
    count: Fraction
    grams: Fraction
    cost: Decimal
    unpriced: int


@dataclass(frozen=True, slots=True)
class WasteSummary:
    """A stretch of days, first to last, with its sums; `before` is the total of the stretch before it.

    While the stretch runs, `before` is that of as many days as have been logged in it, `days_so_far`;
    with none of them yet it is the whole stretch's.
    """

    first: date
    last: date
    days_so_far: int
    fruit: tuple[FruitSum, ...]
    reasons: tuple[ReasonSum, ...]
    cost: Decimal
    before: Decimal
    before_first: date
    before_last: date
    anything_before: bool


def summary(desk: Desk, first: date, last: date) -> WasteSummary:
    """Sum up the waste of the days from first to last, both included.

    While the stretch still runs it is set against the same number of days of the one before. Today
    counts once something of it is logged: a night to come would make every morning look like a saving.
    """
    today = business_day(desk.now, desk.bar.zone, desk.bar.closing_minute)
    length = (last - first).days + 1
    _cost, lines_today = _total(desk, today, today)
    so_far = max(0, min(length, (today - first).days + (lines_today > 0)))
    before_first = first - timedelta(days=length)
    before_last = before_first + timedelta(days=(so_far or length) - 1)
    fruit = _by_fruit(desk, first, last)
    before, lines_before = _total(desk, before_first, before_last)
    return WasteSummary(
        first,
        last,
        so_far,
        fruit,
        _by_reason(desk, first, last),
        sum((one.cost for one in fruit), Decimal(0)),
        before,
        before_first,
        before_last,
        lines_before > 0,
    )


def this_week(desk: Desk, weeks_ago: int = 0) -> WasteSummary:
    """Sum up the ISO week that the bar's business day lies in, or an earlier one."""
    today = business_day(desk.now, desk.bar.zone, desk.bar.closing_minute)
    week = week_of(today - timedelta(days=7 * weeks_ago))
    return summary(desk, week.first, week.last)


def numbered_week(desk: Desk, year: int, number: int) -> WasteSummary:
    """Sum up a week by its ISO 8601 year and number. Raises OutOfRangeError where there is none such."""
    week = week_at(year, number)
    return summary(desk, week.first, week.last)


def _money(desk: Desk, minor: int | None) -> Decimal:
    return from_minor(int(minor or 0), desk.bar.currency)


def _by_fruit(desk: Desk, first: date, last: date) -> tuple[FruitSum, ...]:
    sign = func.sum(func.coalesce(Waste.count_milli, 0) + func.coalesce(Waste.grams_milli, 0))
    query = (
        desk.book.rows(
            Waste,
            Waste.ingredient_id,
            func.sum(func.coalesce(Waste.count_milli, 0)).label("pieces"),
            func.sum(func.coalesce(Waste.grams_milli, 0)).label("grams"),
            func.sum(func.coalesce(Waste.cost_minor, 0)).label("cost"),
            _unpriced_lines().label("unpriced"),
        )
        .where(Waste.business_day.between(first, last))
        .group_by(Waste.ingredient_id)
        .having(sign != 0)
    )
    found = [
        FruitSum(
            row.ingredient_id,
            ingredients.get(desk, row.ingredient_id).name,
            Fraction(int(row.pieces), 1000),
            Fraction(int(row.grams), 1000),
            _money(desk, row.cost),
            int(row.unpriced or 0),
        )
        for row in desk.book.session.execute(query)
    ]
    return tuple(sorted(found, key=lambda one: (-one.cost, one.name)))


def _unpriced_lines() -> Any:
    """Count lines without cost; a line that was taken back takes its own off again."""
    amount = func.coalesce(Waste.count_milli, Waste.grams_milli, 0)
    return func.sum(case((Waste.cost_minor.is_not(None), 0), (amount < 0, -1), else_=1))


def _by_reason(desk: Desk, first: date, last: date) -> tuple[ReasonSum, ...]:
    sign = func.sum(func.coalesce(Waste.count_milli, 0) + func.coalesce(Waste.grams_milli, 0))
    query = (
        desk.book.rows(
            Waste,
            Waste.reason,
            func.sum(func.coalesce(Waste.count_milli, 0)).label("pieces"),
            func.sum(func.coalesce(Waste.grams_milli, 0)).label("grams"),
            func.sum(func.coalesce(Waste.cost_minor, 0)).label("cost"),
            _unpriced_lines().label("unpriced"),
        )
        .where(Waste.business_day.between(first, last))
        .group_by(Waste.reason)
        .having(sign != 0)
    )
    found = [
        ReasonSum(
            row.reason,
            Fraction(int(row.pieces), 1000),
            Fraction(int(row.grams), 1000),
            _money(desk, row.cost),
            int(row.unpriced or 0),
        )
        for row in desk.book.session.execute(query)
    ]
    return tuple(sorted(found, key=lambda one: (-one.cost, one.reason)))


def _total(desk: Desk, first: date, last: date) -> tuple[Decimal, int]:
    query = desk.book.rows(Waste, func.sum(func.coalesce(Waste.cost_minor, 0)), func.count()).where(
        Waste.business_day.between(first, last)
    )
    row = desk.book.session.execute(query).one()
    return _money(desk, row[0]), int(row[1])
