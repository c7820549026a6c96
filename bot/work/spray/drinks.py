"""Drinks served on a business day: in all, with one formula, or with one fresh garnish."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from bot.work.context import Context
from bot.work.errors import BadValueError
from bot.work.formulas import formulas, ingredients
from bot.work.standing import Details, Rows, stands
from storage.tables import DrinksCount

MOST_DRINKS = 20_000
WEEKS_BACK = 26  # older data says little about the present. Common practice, no source.
_OLDEST_DAYS = 400


@dataclass(frozen=True, slots=True)
class DrinksDay:
    """The drinks of one business day: in all, or with a formula or a garnish. `ran_out`: stock ran out."""

    day: date
    drinks: int
    formula_id: int | None = None
    ingredient_id: int | None = None
    ran_out: bool = False

    @property
    def subject(self) -> tuple[int | None, int | None]:
        """The subject of the count: a formula's number, an ingredient's number, or neither for all drinks."""
        return self.formula_id, self.ingredient_id


@dataclass(frozen=True, slots=True)
class Logged:
    """The logged count, and the previous one for the same subject, None if there was none."""

    day: DrinksDay
    before: int | None


@dataclass(frozen=True, slots=True)
class WeekdayMean:
    """The mean drinks of a weekday (0 for Monday), and the number of days behind it."""

    weekday: int
    mean: float
    days: int


def log(
    context: Context,
    drinks: int,
    day: date | None = None,
    formula_id: int | None = None,
    ingredient_id: int | None = None,
    ran_out: bool = False,
) -> Logged:
    """Log the drinks of a day; the last entry for a day and subject counts.

    Raises NotThereError, or BadValueError for an implausible number or a future day.
    """
    (logged,) = log_all(
        context, [DrinksDay(day or context.today, drinks, formula_id, ingredient_id, ran_out)]
    )
    return logged


def log_all(context: Context, counted: Sequence[DrinksDay]) -> list[Logged]:
    """Log several counts at once, under one log line. Raises as `log` does."""
    this_day = context.today
    for one in counted:
        if not 0 <= one.drinks <= MOST_DRINKS:
            raise BadValueError("number of drinks", str(one.drinks))
        if one.day > this_day or one.day < this_day - timedelta(days=_OLDEST_DAYS):
            raise BadValueError("day", one.day.isoformat())
        if one.formula_id is not None:
            formulas.get(context, one.formula_id)
        if one.ingredient_id is not None:
            ingredients.get(context, one.ingredient_id)
    known = days(context, min(one.day for one in counted), max(one.day for one in counted))
    before = {(one.day, *one.subject): one.drinks for one in known}
    rows = [
        DrinksCount(
            business_day=one.day,
            formula_id=one.formula_id,
            ingredient_id=one.ingredient_id,
            drinks=one.drinks,
            ran_out=one.ran_out,
            at=context.now,
            by=context.person_id,
        )
        for one in counted
    ]
    for row in rows:
        context.place(row)
    context.book.add_all(rows)
    context.log("drinks", rows=[row.id for row in rows], count=counted[0].drinks)
    return [Logged(one, before.get((one.day, *one.subject))) for one in counted]


ROWS = Rows(DrinksCount, "rows")  # without a count the one before is valid again


def logged_in(context: Context, details: Details) -> list[DrinksDay]:
    """Return the counts of a log entry."""
    return [_view(row) for row in ROWS.of(context, details)]


def _view(row: DrinksCount) -> DrinksDay:
    return DrinksDay(row.business_day, row.drinks, row.formula_id, row.ingredient_id, row.ran_out)


def days(context: Context, first: date, last: date) -> list[DrinksDay]:
    """Return the valid counts of the days from first to last, both included, by day."""
    where = DrinksCount.business_day.between(first, last), stands(DrinksCount)
    found: dict[tuple[date, int | None, int | None], DrinksDay] = {}
    for row in context.book.all(DrinksCount, *where, order=DrinksCount.first):
        found[row.business_day, row.formula_id, row.ingredient_id] = _view(row)
    return sorted(found.values(), key=lambda one: one.day)


def lately(context: Context) -> list[DrinksDay]:
    """Return the valid counts of the last weeks."""
    last = context.today
    return days(context, last - timedelta(weeks=WEEKS_BACK), last)


def by_weekday(found: Sequence[DrinksDay]) -> list[WeekdayMean]:
    """Return the mean of each weekday that was logged, Monday first."""
    sums: dict[int, list[int]] = {}
    for one in found:
        sums.setdefault(one.day.weekday(), []).append(one.drinks)
    return [WeekdayMean(number, sum(one) / len(one), len(one)) for number, one in sorted(sums.items())]
