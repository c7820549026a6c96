"""Drinks served on a business day: in all, with one formula, or with one fresh garnish."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta

from bot.work.context import Context
from bot.work.errors import BadValueError, NotThereError
from bot.work.formulas import formulas, ingredients
from bot.work.standing import Details, Rows, stands
from storage.tables import DrinksCount, MenuDrink
from storage.types import JsonObject

MOST_DRINKS = 20_000
WEEKS_BACK = 26  # older data says little about the present. Common practice, no source.
_OLDEST_DAYS = 400
_TIMES, _FEWEST, _MOST_UNSEEN = 5, 100, 2000  # a count beyond these is asked about


Subject = tuple[int | None, int | None, int | None]  # numbers of formula, ingredient, drink of the list


@dataclass(frozen=True, slots=True)
class DrinksDay:
    """The drinks of one business day: in all, of one on the list, or with a formula or a garnish.

    `ran_out`: stock ran out. `added`: the drinks are more than those counted before.
    """

    day: date
    drinks: int
    formula_id: int | None = None
    ingredient_id: int | None = None
    ran_out: bool = False
    menu_id: int | None = None
    added: bool = False

    @property
    def subject(self) -> Subject:
        """The numbers of the counted formula, ingredient and drink of the list; none for all drinks."""
        return self.formula_id, self.ingredient_id, self.menu_id

    @property
    def is_whole(self) -> bool:
        """Whether it counts all drinks of the day."""
        return self.subject == (None, None, None)


@dataclass(frozen=True, slots=True)
class Logged:
    """The logged count with what it was added to, and the previous one, None if there was none."""

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


def totals(context: Context, counted: Sequence[DrinksDay]) -> list[Logged]:
    """Return several counts as they would be logged, each added one with the count before it."""
    known = days(context, min(one.day for one in counted), max(one.day for one in counted))
    before = {(one.day, *one.subject): one for one in known}
    found = []
    for one in counted:
        was = before.get((one.day, *one.subject))
        now = one
        if one.added and was is not None:
            now = replace(one, drinks=one.drinks + was.drinks, ran_out=one.ran_out or was.ran_out)
        found.append(Logged(now, None if was is None else was.drinks))
    return found


def log_all(context: Context, counted: Sequence[DrinksDay]) -> list[Logged]:
    """Log several counts at once, under one log line. Raises as `log` does."""
    this_day = context.today
    logged = totals(context, counted)
    for one in (each.day for each in logged):
        if not 0 <= one.drinks <= MOST_DRINKS:
            raise BadValueError("number of drinks", str(one.drinks))
        if one.day > this_day or one.day < this_day - timedelta(days=_OLDEST_DAYS):
            raise BadValueError("day", one.day.isoformat())
        if one.formula_id is not None:
            formulas.get(context, one.formula_id)
        if one.ingredient_id is not None:
            ingredients.get(context, one.ingredient_id)
        if one.menu_id is not None and context.book.get(MenuDrink, one.menu_id) is None:
            raise NotThereError("drink", str(one.menu_id))
    rows = [
        DrinksCount(
            business_day=one.day,
            formula_id=one.formula_id,
            ingredient_id=one.ingredient_id,
            menu_id=one.menu_id,
            drinks=one.drinks,
            ran_out=one.ran_out,
            at=context.now,
            by=context.person_id,
        )
        for one in (each.day for each in logged)
    ]
    for row in rows:
        context.place(row)
    context.book.add_all(rows)
    details: JsonObject = {"rows": [row.id for row in rows], "count": _sum(counted)}
    if any(one.added for one in counted):
        details["added"] = [one.drinks if one.added else 0 for one in counted]
    context.log("drinks", **details)
    return logged


def _sum(counted: Sequence[DrinksDay]) -> int:
    """Return the drinks of several counts: those in all where they were said, which hold the others."""
    whole = [one.drinks for one in counted if one.is_whole]
    return sum(whole or [one.drinks for one in counted])


def is_believable(context: Context, one: DrinksDay) -> bool:
    """Whether a count is at most five times the highest of its subject, or 2000 drinks without history.

    Common practice, no source.
    """
    known = [other.drinks for other in lately(context) if other.subject == one.subject]
    return one.drinks <= (max(_FEWEST, _TIMES * max(known)) if known else _MOST_UNSEEN)


ROWS = Rows(DrinksCount, "rows")  # without a count the one before is valid again


def logged_in(context: Context, details: Details) -> list[DrinksDay]:
    """Return the counts of a log entry, an added one by what was added."""
    rows = ROWS.of(context, details)
    added = details.get("added", [0] * len(rows))
    return [
        replace(_view(row), drinks=more or row.drinks, added=bool(more))
        for row, more in zip(rows, added, strict=False)
    ]


def _view(row: DrinksCount) -> DrinksDay:
    return DrinksDay(
        row.business_day, row.drinks, row.formula_id, row.ingredient_id, row.ran_out, row.menu_id
    )


def days(context: Context, first: date, last: date) -> list[DrinksDay]:
    """Return the valid counts of the days from first to last, both included, by day."""
    where = DrinksCount.business_day.between(first, last), stands(DrinksCount)
    found: dict[tuple[object, ...], DrinksDay] = {}
    for row in context.book.all(DrinksCount, *where, order=DrinksCount.first):
        view = _view(row)
        found[view.day, *view.subject] = view
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
