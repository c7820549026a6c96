"""Waste over a period of business days: by fruit, reason and shift, compared with another period."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal
from fractions import Fraction
from typing import TypeVar

from sqlalchemy import ColumnElement, case, func

from bot.trade.days import week_at, week_of
from bot.trade.fruit.balance import FEWEST_DAYS
from bot.trade.money.money import from_minor
from bot.work.context import Context
from bot.work.formulas import ingredients
from bot.work.fruit import balance
from bot.work.fruit.balance import BoughtSum
from bot.work.fruit.waste import grams_each
from bot.work.standing import thrown_out
from storage.tables import Waste

Key = TypeVar("Key")
LONGEST_DAYS = 3660  # per report: a date beyond ten years must be a typing error


@dataclass(frozen=True, slots=True)
class FruitSum:
    """One thing's waste: pieces, grams, mL and cost; `unpriced` lines had no price and cost nothing here.

    `uncounted` has their pieces, grams and mL.
    `share` is waste as a share (0.2 for a fifth) of what was bought in the same days, None when none was
    bought or when the two cannot be converted to one measure.
    """

    ingredient_id: int
    name: str
    count: Fraction
    grams: Fraction
    ml: Fraction
    cost: Decimal
    unpriced: int
    uncounted: tuple[Fraction, Fraction, Fraction]
    share: Fraction | None = None


@dataclass(frozen=True, slots=True)
class PartSum:
    """The waste of one reason, or of one shift: pieces, grams, mL and cost; `unpriced` as in FruitSum."""

    count: Fraction
    grams: Fraction
    ml: Fraction
    cost: Decimal
    unpriced: int = 0


@dataclass(frozen=True, slots=True)
class WasteSummary:
    """A period of days, first to last, with its sums; `before` is the total of the previous period.

    During the period, `before` covers as many days as are logged so far, `days_so_far`; without any it covers
    the whole previous period. `bought` is the money paid for fruit in these days. `comparable` means that
    both hold FEWEST_DAYS days or more since the first waste was logged.
    """

    first: date
    last: date
    days_so_far: int
    fruit: tuple[FruitSum, ...]
    reasons: tuple[tuple[str, PartSum], ...]
    early: PartSum
    late: PartSum
    cost: Decimal
    bought: Decimal
    before: Decimal
    before_first: date
    before_last: date
    anything_before: bool
    comparable: bool


def summary(context: Context, first: date, last: date, before_first: date | None = None) -> WasteSummary:
    """Sum up the waste of the days from first to last, both included.

    A period still running is compared with the same number of days of the previous one. Today counts once
    something is logged for it: a night to come would make every morning look like a saving. `before_first` is
    the start of the previous period, by default as long as this one.
    """
    today = context.today
    length = (last - first).days + 1
    _cost, lines_today = _total(context, today, today)
    so_far = max(0, min(length, (today - first).days + (lines_today > 0)))
    if before_first is None:
        before_first = first - timedelta(days=length)
    before_last = min(before_first + timedelta(days=(so_far or length) - 1), first - timedelta(days=1))
    if so_far == length:
        before_last = first - timedelta(days=1)
    cells = _cells(context, first, last)
    bought = balance.bought_between(context, first, last)
    fruit = _by_fruit(context, cells, bought)
    before, lines_before = _total(context, before_first, before_last)
    return WasteSummary(
        first,
        last,
        so_far,
        fruit,
        _by_reason(cells),
        _part(cell for cell in cells if not cell.late),
        _part(cell for cell in cells if cell.late),
        sum((one.cost for one in fruit), Decimal(0)),
        sum((bought[one.ingredient_id].paid for one in fruit if one.ingredient_id in bought), Decimal(0)),
        before,
        before_first,
        before_last,
        lines_before > 0,
        _comparable(context, (first, first + timedelta(days=so_far - 1)), (before_first, before_last)),
    )


def _comparable(context: Context, *periods: tuple[date, date]) -> bool:
    begun = context.book.session.scalar(context.book.rows(Waste, func.min(Waste.business_day)))
    if begun is None:
        return False
    return all((last - max(first, begun)).days + 1 >= FEWEST_DAYS for first, last in periods)


def this_week(context: Context, weeks_ago: int = 0) -> WasteSummary:
    """Sum up the current ISO week of the bar's business days, or an earlier one."""
    today = context.today
    week = week_of(today - timedelta(days=7 * weeks_ago))
    return summary(context, week.first, week.last)


def numbered_week(context: Context, year: int, number: int) -> WasteSummary:
    """Sum up a week by its ISO 8601 year and number. Raises OutOfRangeError for an invalid week."""
    week = week_at(year, number)
    return summary(context, week.first, week.last)


def month(context: Context, year: int, number: int) -> WasteSummary:
    """Sum up a month of business days, compared with the previous month. Raises ValueError if invalid."""
    first = date(year, number, 1)
    last = _month_after(first) - timedelta(days=1)
    return summary(context, first, last, (first - timedelta(days=1)).replace(day=1))


def this_month(context: Context, months_ago: int = 0) -> WasteSummary:
    """Sum up the current month of the bar's business days, or an earlier one."""
    first = context.today.replace(day=1)
    for _number in range(months_ago):
        first = (first - timedelta(days=1)).replace(day=1)
    return month(context, first.year, first.month)


def _month_after(first: date) -> date:
    return (first + timedelta(days=31)).replace(day=1)


# -- sums -----------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Cell:
    """Sums of one fruit, one reason and one shift, of lines with a price or of those without."""

    ingredient_id: int
    reason: str
    late: bool
    count: Fraction
    grams: Fraction
    ml: Fraction
    cost: Decimal
    unpriced: int


def _money(context: Context, minor: int | None) -> Decimal:
    return from_minor(int(minor or 0), context.bar.currency)


def _cells(context: Context, first: date, last: date) -> list[_Cell]:
    query = (
        context.book.rows(
            Waste,
            Waste.ingredient_id,
            Waste.reason,
            Waste.late,
            func.sum(func.coalesce(Waste.count_milli, 0)).label("pieces"),
            func.sum(func.coalesce(Waste.grams_milli, 0)).label("grams"),
            func.sum(func.coalesce(Waste.volume_milli, 0)).label("ml"),
            func.sum(func.coalesce(Waste.cost_minor, 0)).label("cost"),
            _unpriced_lines().label("unpriced"),
        )
        .where(Waste.business_day.between(first, last))
        .group_by(Waste.ingredient_id, Waste.reason, Waste.late, Waste.cost_minor.is_(None))
    )
    return [
        _Cell(
            row.ingredient_id,
            row.reason,
            bool(row.late),
            Fraction(int(row.pieces), 1000),
            Fraction(int(row.grams), 1000),
            Fraction(int(row.ml), 1000),
            _money(context, row.cost),
            int(row.unpriced or 0),
        )
        for row in context.book.session.execute(query)
    ]


def _unpriced_lines() -> ColumnElement[int]:
    """Count lines without cost; a line that was undone is subtracted again."""
    return func.sum(case((Waste.cost_minor.is_not(None), 0), (thrown_out() < 0, -1), else_=1))


def _part(cells: Iterable[_Cell]) -> PartSum:
    group = list(cells)
    return PartSum(
        sum((cell.count for cell in group), Fraction(0)),
        sum((cell.grams for cell in group), Fraction(0)),
        sum((cell.ml for cell in group), Fraction(0)),
        sum((cell.cost for cell in group), Decimal(0)),
        sum(cell.unpriced for cell in group),
    )


def _grouped(cells: list[_Cell], key: Callable[[_Cell], Key]) -> dict[Key, list[_Cell]]:
    groups: dict[Key, list[_Cell]] = {}
    for cell in cells:
        groups.setdefault(key(cell), []).append(cell)
    return groups


def _by_fruit(context: Context, cells: list[_Cell], bought: dict[int, BoughtSum]) -> tuple[FruitSum, ...]:
    found = []
    for number, group in _grouped(cells, lambda cell: cell.ingredient_id).items():
        one = _part(group)
        if one.count or one.grams or one.ml:
            name = ingredients.get(context, number).name
            share = _share(context, number, one, bought.get(number))
            without = _part(cell for cell in group if cell.unpriced)
            uncounted = without.count, without.grams, without.ml
            amounts = one.count, one.grams, one.ml
            found.append(FruitSum(number, name, *amounts, one.cost, one.unpriced, uncounted, share))
    return tuple(sorted(found, key=lambda one: (-one.cost, one.name)))


def _share(context: Context, number: int, wasted: PartSum, bought: BoughtSum | None) -> Fraction | None:
    if bought is None:
        return None
    each = grams_each(ingredients.get(context, number))
    if each is None:
        if bought.count and not bought.grams and not wasted.grams:
            return wasted.count / bought.count
        if bought.grams and not bought.count and not wasted.count:
            return wasted.grams / bought.grams
        return None
    there = bought.count * each + bought.grams
    return (wasted.count * each + wasted.grams) / there if there > 0 else None


def _by_reason(cells: list[_Cell]) -> tuple[tuple[str, PartSum], ...]:
    found = [(reason, _part(group)) for reason, group in _grouped(cells, lambda cell: cell.reason).items()]
    found = [(reason, one) for reason, one in found if one.count or one.grams or one.ml]
    return tuple(sorted(found, key=lambda one: (-one[1].cost, one[0])))


def _total(context: Context, first: date, last: date) -> tuple[Decimal, int]:
    """Return the cost of some days, and the number of valid lines."""
    lines = case((thrown_out() < 0, -1), else_=1)
    query = context.book.rows(Waste, func.sum(func.coalesce(Waste.cost_minor, 0)), func.sum(lines)).where(
        Waste.business_day.between(first, last)
    )
    row = context.book.session.execute(query).one()
    return _money(context, row[0]), int(row[1] or 0)


# -- for charts -----------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class WeekCosts:
    """The cost of waste by week: the first days of the weeks, and one value per week for each fruit."""

    weeks: tuple[date, ...]
    fruit: dict[str, tuple[Decimal, ...]]


def by_week(context: Context, last: date, weeks: int = 12) -> WeekCosts:
    """Return the cost of waste of this many ISO weeks up to that of `last`, by fruit, the highest first.

    Weeks to come are left out.
    """
    end = week_of(min(last, context.today)).last
    first = end - timedelta(days=7 * weeks - 1)
    mondays = tuple(first + timedelta(days=7 * number) for number in range(weeks))
    query = (
        context.book.rows(
            Waste, Waste.ingredient_id, Waste.business_day, func.sum(func.coalesce(Waste.cost_minor, 0))
        )
        .where(Waste.business_day.between(first, end))
        .group_by(Waste.ingredient_id, Waste.business_day)
    )
    sums: dict[int, list[Decimal]] = {}
    for number, day, minor in context.book.session.execute(query):
        row = sums.setdefault(number, [Decimal(0)] * weeks)
        row[(day - first).days // 7] += _money(context, minor)
    order = sorted((number for number in sums if any(sums[number])), key=lambda number: -sum(sums[number]))
    return WeekCosts(
        mondays, {ingredients.get(context, number).name: tuple(sums[number]) for number in order}
    )
