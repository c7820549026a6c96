"""Daily use of a formula, from bottles used up and drinks counted."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from decimal import Decimal
from fractions import Fraction

from bot.trade.days import business_day, is_service_day
from bot.trade.planning.plan import Stock, WeekdayUse, use_by_weekday
from bot.work.batches.batches import BatchState
from bot.work.context import Context
from bot.work.formulas.formulas import FormulaView
from bot.work.spray import drinks
from bot.work.spray.drinks import DrinksDay
from storage.tables import Batch


@dataclass(frozen=True, slots=True)
class Poured:
    """Daily use of one formula in mL, with its basis.

    `counted_days` is the number of days with counted drinks, `bottles` the number used up in the period.
    """

    days: tuple[tuple[date, Decimal], ...]
    counted_days: int
    bottles: int


def _day(context: Context, at: datetime) -> date:
    return business_day(at, context.bar.zone, context.bar.closing_minute)


def batches_of(context: Context) -> dict[int, list[Batch]]:
    """Return the batches for planning by formula, oldest first: all but trials and undone ones."""
    rows = context.book.all(Batch, Batch.state != BatchState.UNDONE, order=Batch.id)
    found: dict[int, list[Batch]] = {}
    for row in rows:
        if not row.frozen.get("trial"):
            found.setdefault(row.formula_id, []).append(row)
    return found


def poured(
    context: Context, view: FormulaView, made: Sequence[Batch], counted: Sequence[DrinksDay]
) -> Poured:
    """Return the daily use of a formula over the last weeks, as far as the log shows.

    A day with counted drinks uses the middle of sprays and spray size. A used-up bottle is spread over its
    days: by all drinks counted, by weekday without counts, evenly without either. Closed days count as no
    use.
    """
    per_drink = _ml_per_drink(view)
    own = (
        {}
        if per_drink is None
        else {one.day: Decimal(one.drinks) * per_drink for one in counted if one.formula_id == view.id}
    )
    weights = _Weights({one.day: one.drinks for one in counted if one.subject == (None, None)}, context)
    first_day = drinks.today(context) - timedelta(weeks=drinks.WEEKS_BACK)
    spread: dict[date, Decimal] = {}
    spans = [span for span in _spans(context, made) if span.last >= first_day]
    for span in spans:
        for day, amount in weights.spread(span.ml, span.first, span.last).items():
            spread[day] = spread.get(day, Decimal(0)) + amount
    days = {**{day: ml for day, ml in spread.items() if day >= first_day}, **own}
    return Poured(tuple(sorted(days.items())), len(own), len(spans))


def _ml_per_drink(view: FormulaView) -> Decimal | None:
    if view.sprays is None:
        return None
    middle = sum(view.sprays, Fraction(0)) / 2 * sum(view.spray_ml, Fraction(0)) / 2
    return Decimal(middle.numerator) / Decimal(middle.denominator)


@dataclass(frozen=True, slots=True)
class _Span:
    """A bottle from the day it was opened to the day it was empty, and the use from it."""

    first: date
    last: date
    ml: Fraction


def _spans(context: Context, made: Sequence[Batch]) -> list[_Span]:
    spans = []
    for row in made:
        if row.ended_at is None or row.state not in {BatchState.USED_UP, BatchState.DISCARDED}:
            continue
        begun = row.opened_at or (row.rest_until if row.state == BatchState.USED_UP else None)
        if begun is None:
            continue  # thrown out unopened: not used
        first, last = _day(context, min(begun, row.ended_at)), _day(context, row.ended_at)
        spans.append(_Span(first, last, row.total_ml - (row.lost_ml or 0)))
    starts = {span.first for span in spans}
    # If the next bottle was opened on the day the previous one was empty, that day belongs to the next one.
    return [
        _Span(span.first, span.last - timedelta(days=1), span.ml)
        if span.last in starts and span.last > span.first
        else span
        for span in spans
    ]


class _Weights:
    """The relative volume of each day."""

    def __init__(self, counted: Mapping[date, int], context: Context) -> None:
        self._counted = counted
        self._open = context.bar.settings.service_days
        self._means: dict[int, float] = {}
        if any(counted.values()):
            use = use_by_weekday([(day, Decimal(number)) for day, number in counted.items()])
            self._means = dict(enumerate(use.means))

    def of(self, day: date) -> Decimal:
        if day in self._counted and self._means:
            return Decimal(self._counted[day])
        if not is_service_day(day, self._open):
            return Decimal(0)
        return Decimal(str(self._means.get(day.weekday(), 1.0)))

    def spread(self, ml: Fraction, first: date, last: date) -> dict[date, Decimal]:
        days = [first + timedelta(days=number) for number in range((last - first).days + 1)]
        weights = {day: self.of(day) for day in days}
        whole = sum(weights.values(), Decimal(0))
        if not whole:  # used on days the bar was closed: evenly then
            weights, whole = dict.fromkeys(days, Decimal(1)), Decimal(len(days))
        amount = Decimal(ml.numerator) / Decimal(ml.denominator)
        return {day: amount * weight / whole for day, weight in weights.items()}


def in_stock(context: Context, made: Sequence[Batch], use: WeekdayUse) -> list[Stock]:
    """Return what is left of a formula's batches, in mL, assuming usual use of an open one.

    A batch may be used up to and including its discard date.
    """
    today = drinks.today(context)
    found = []
    for row in made:
        if not BatchState(row.state).open:
            continue
        left = Decimal(row.total_ml.numerator) / Decimal(row.total_ml.denominator)
        if row.opened_at is not None and row.state == BatchState.IN_USE:
            opened = _day(context, row.opened_at)
            left -= Decimal(str(use.likely(opened, max(0, (today - opened).days))))
        ready = None
        if row.state == BatchState.RESTING and row.rest_until > context.now:
            ready = _day(context, row.rest_until)
        found.append(Stock(max(left, Decimal(0)), row.discard_on + timedelta(days=1), ready))
    return found
