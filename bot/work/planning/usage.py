"""Daily use of a formula, from the stated drinks a week, drinks counted and bottles used up."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from decimal import Decimal
from fractions import Fraction
from functools import cached_property

from bot.trade.days import is_service_day
from bot.trade.numbers.uncertainty import to_decimal
from bot.trade.planning.plan import Stock
from bot.trade.planning.use import EVERY_DAY_ALIKE, NoUseError, UsedUp, WeekdayUse, estimate_use
from bot.work.batches import bottles
from bot.work.batches.batches import BatchState
from bot.work.context import Context
from bot.work.events import events
from bot.work.formulas import formulas
from bot.work.formulas.formulas import FormulaView
from bot.work.menu import menu
from bot.work.spray import drinks
from bot.work.spray.drinks import DrinksDay
from storage.tables import Batch, Bottling

ByDay = Callable[[date], float]
# A bottle emptied sooner was probably tried out, spilt or shared out. Common practice, no source.
SHORTEST_USE = timedelta(hours=4)
# The fewest bottles used up without counted drinks from which to estimate use. Common practice, no source.
FEWEST_BOTTLES = 3
# Use of more than this many times the stated figure is shown as a doubt and left out. Common practice, no
# source.
TIMES_SAID = 5


@dataclass(frozen=True, slots=True)
class Said:
    """The stated drinks a week, and the number of formulas that share them."""

    drinks: tuple[Fraction, Fraction]
    shared_by: int


@dataclass(frozen=True, slots=True)
class Doubt:
    """A batch used up, or a night counted, at many times the stated figure."""

    times: float
    batch: int | None = None
    night: DrinksDay | None = None


@dataclass(frozen=True, slots=True)
class Evidence:
    """The evidence for the use of one formula.

    `nights` are the counted nights with their use in mL. `bottles` were used up without counted drinks, in
    the nights that they lasted. `too_quick` are batches emptied within hours, `doubts` are far beyond the
    stated figure, `event_nights` were counted on the day of an event and `for_events` are batches made for
    one: none of these counts.
    """

    said: Said | None
    nights: tuple[tuple[date, Decimal], ...]
    bottles: UsedUp | None
    too_quick: tuple[int, ...]
    doubts: tuple[Doubt, ...]
    event_nights: tuple[date, ...] = ()
    for_events: tuple[int, ...] = ()

    @property
    def enough_bottles(self) -> UsedUp | None:
        """The bottles used up, or None with too few of them for an estimate."""
        return self.bottles if self.bottles is not None and self.bottles.bottles >= FEWEST_BOTTLES else None


@dataclass(frozen=True, slots=True)
class Known:
    """The use of one formula, None without evidence, and the evidence."""

    use: WeekdayUse | None
    evidence: Evidence


def _day(context: Context, at: datetime) -> date:
    return context.bar.day_of(at)


def batches_of(context: Context) -> dict[int, list[Batch]]:
    """Return the batches that count for planning by formula, oldest first: all but trials and undone ones."""
    rows = context.book.all(Batch, Batch.state != BatchState.UNDONE, order=Batch.id)
    found: dict[int, list[Batch]] = {}
    for row in rows:
        if not row.frozen.get("trial"):
            found.setdefault(row.formula_id, []).append(row)
    return found


class Usage:
    """The use of a bar's formulas according to its log."""

    def __init__(self, context: Context) -> None:
        self._context = context
        self.made = batches_of(context)
        self._tied = events.made_for(context)
        counted, apart = drinks.lately(context), events.days(context)
        self._counted = [one for one in counted if one.day not in apart]
        self._apart = [one for one in counted if one.day in apart]
        in_all = {one.day: one.drinks for one in self._counted if one.is_whole}
        self._weights = _Weights(in_all, context)
        self._in_drinks = menu.uses(context)

    def of(self, view: FormulaView) -> Known:
        """Return the use of a formula from the stated figure, the drinks counted and the bottles used up.

        A night with its drinks counted uses the middle of sprays and spray size. A used-up bottle is spread
        over its nights by all drinks counted, and only the counted nights become evidence.
        """
        per_drink = _ml_per_drink(view)
        said = self._said(view) if per_drink is not None else None
        a_night = self._said_ml(said, per_drink) if said is not None and per_drink is not None else None
        log = _Log(a_night, said)
        self._add_bottles(log, view)
        for night, ml in self._nights(view, per_drink).items():
            log.add_night(night, ml)
        evidence = replace(
            log.evidence(), event_nights=self._event_nights(view), for_events=self._for_events(view)
        )
        try:
            use = estimate_use(
                evidence.nights,
                said=a_night,
                used_up=evidence.enough_bottles,
                usual=self._weights.usual,
                one=float(per_drink or 0),
            )
        except NoUseError:
            return Known(None, evidence)
        return Known(use, evidence)

    def _event_nights(self, view: FormulaView) -> tuple[date, ...]:
        by_drink = self._in_drinks.get(view.id, {})
        nights = {
            one.day
            for one in self._apart
            if one.is_whole or one.formula_id == view.id or one.menu_id in by_drink
        }
        return tuple(sorted(nights))

    def _for_events(self, view: FormulaView) -> tuple[int, ...]:
        return tuple(row.id for row in self.made.get(view.id, []) if row.id in self._tied)

    def _nights(self, view: FormulaView, per_drink: Decimal | None) -> dict[DrinksDay, Decimal]:
        """Return the use on each counted night, by the drinks with this formula or by those of the list."""
        by_drink = self._in_drinks.get(view.id, {})
        by_day: dict[date, list[tuple[DrinksDay, Decimal]]] = {}
        for one in self._counted:
            if one.formula_id == view.id and per_drink is not None:
                by_day[one.day] = [(one, per_drink * one.drinks)]
            elif one.menu_id in by_drink and one.menu_id is not None:
                known = by_day.setdefault(one.day, [])
                if all(night.menu_id is not None for night, _ml in known):
                    known.append((one, to_decimal(by_drink[one.menu_id] * one.drinks)))
        return {
            known[0][0]: sum((ml for _night, ml in known), Decimal(0)) for known in by_day.values() if known
        }

    def _add_bottles(self, log: _Log, view: FormulaView) -> None:
        first_day = self._context.today - timedelta(weeks=drinks.WEEKS_BACK)
        by_drink = self._in_drinks.get(view.id, {})
        own = {one.day for one in self._counted if one.formula_id == view.id or one.menu_id in by_drink}
        usual = [row for row in self.made.get(view.id, []) if row.id not in self._tied]
        for span in _spans(self._context, usual):
            if span.last >= first_day:
                log.add_bottle(span, self._weights, own)

    def _said(self, view: FormulaView) -> Said | None:
        parts = self._context.bar.settings.drinks_a_week.split()
        if not parts:
            return None
        sharing = self._sprayed | {view.id}
        return Said((Fraction(parts[0]), Fraction(parts[-1])), len(sharing))

    @cached_property
    def _sprayed(self) -> frozenset[int]:
        """The sprayed formulas that were ever made."""
        known = (formulas.get(self._context, one.id) for one in formulas.listed(self._context))
        return frozenset(one.id for one in known if one.sprays is not None and one.id in self.made)

    def _said_ml(self, said: Said, per_drink: Decimal) -> float:
        middle = sum(said.drinks, Fraction(0)) / 2 / said.shared_by
        return float(middle) * float(per_drink) / sum(share > 0 for share in self._weights.usual)


def _ml_per_drink(view: FormulaView) -> Decimal | None:
    if view.sprays is None:
        return None
    middle = sum(view.sprays, Fraction(0)) / 2 * sum(view.spray_ml, Fraction(0)) / 2
    return Decimal(middle.numerator) / Decimal(middle.denominator)


@dataclass(frozen=True, slots=True)
class _Span:
    """A bottle from the day it was opened to the day it was empty, and what was used of it."""

    batch: int
    first: date
    last: date
    ml: Fraction
    lasted: timedelta

    @property
    def days(self) -> list[date]:
        return [self.first + timedelta(days=number) for number in range((self.last - self.first).days + 1)]


class _Log:
    """Collects the evidence for one formula; `a_night` is the stated use in mL, if any."""

    def __init__(self, a_night: float | None, said: Said | None) -> None:
        self._a_night, self._said = a_night, said
        self._nights: dict[date, Decimal] = {}
        self._quick: list[int] = []
        self._doubts: list[Doubt] = []
        self._bottles = 0
        self._ml = Fraction(0)
        self._days: set[date] = set()

    def add_bottle(self, span: _Span, weights: _Weights, own: set[date]) -> None:
        """Add a bottle used up; `own` are the days whose drinks with this formula were counted."""
        if span.lasted < SHORTEST_USE:
            self._quick.append(span.batch)
            return
        days = [day for day in span.days if weights.of(day)] or span.days
        times = self._times(float(span.ml) / len(days))
        if times > TIMES_SAID:
            self._doubts.append(Doubt(times, batch=span.batch))
            return
        counted = [day for day in span.days if day in weights.counted]
        if counted:
            spread = weights.spread(span.ml, span.days)
            for day in counted:
                self._nights[day] = self._nights.get(day, Decimal(0)) + spread[day]
        elif not own & set(span.days):
            self._bottles += 1
            self._ml += span.ml
            self._days |= set(days)

    def add_night(self, night: DrinksDay, ml: Decimal) -> None:
        """Add the use on a counted night; it replaces the share of a bottle on that night."""
        times = self._times(float(ml))
        if times > TIMES_SAID:
            self._doubts.append(Doubt(times, night=night))
        else:
            self._nights[night.day] = ml

    def _times(self, ml: float) -> float:
        return 0.0 if self._a_night is None else ml / self._a_night

    def evidence(self) -> Evidence:
        """Return the collected evidence."""
        bottles = UsedUp(self._bottles, float(self._ml), len(self._days)) if self._bottles else None
        nights = tuple(sorted(self._nights.items()))
        return Evidence(self._said, nights, bottles, tuple(self._quick), tuple(self._doubts))


def _spans(context: Context, made: Sequence[Batch]) -> list[_Span]:
    spans = []
    bottled = bottles.rows_of(context, [row.id for row in made])
    for row in made:
        known = [one for one in bottled.get(row.id, ()) if one.what == bottles.OPENED]
        if known:
            spans += _of_bottles(context, row, bottled[row.id])
            continue
        if row.ended_at is None or row.state not in {BatchState.USED_UP, BatchState.DISCARDED}:
            continue
        begun = row.opened_at or (row.rest_until if row.state == BatchState.USED_UP else None)
        if begun is None:
            continue  # thrown out unopened: nothing of it was used
        begun = min(begun, row.ended_at)
        gone = bottles.gone_ml(bottled.get(row.id, ()), bottles.LOST, bottles.MOVED, bottles.AT_EVENT)
        first, last = _day(context, begun), _day(context, row.ended_at)
        ml = row.total_ml - (row.lost_ml or 0) - gone
        if ml > 0:  # else all of it went elsewhere
            spans.append(_Span(row.id, first, last, ml, row.ended_at - begun))
    starts = {span.first for span in spans}
    # Where the next bottle was opened on the day the one before was empty, that day is the next one's.
    return [
        replace(span, last=span.last - timedelta(days=1))
        if span.last in starts and span.last > span.first
        else span
        for span in spans
    ]


def _of_bottles(context: Context, row: Batch, rows: Sequence[Bottling]) -> list[_Span]:
    """Return the use of a bottled batch, bottle by bottle."""
    ended = row.ended_at if row.state == BatchState.USED_UP else None
    return [
        _Span(row.id, _day(context, one.opened_at), _day(context, one.emptied_at), one.ml, one.lasted)
        for one in bottles.emptied(rows, ended)
    ]


class _Weights:
    """The relative volume of each day; `usual` is the same by weekday, 0 if closed."""

    def __init__(self, counted: Mapping[date, int], context: Context) -> None:
        self.counted = counted
        self._open = context.bar.settings.service_days
        open_days = [float(bool(self._open >> number & 1)) for number in range(7)]
        self.usual: Sequence[float] = open_days if any(open_days) else EVERY_DAY_ALIKE
        if any(counted.values()):
            days = [(day, Decimal(number)) for day, number in counted.items()]
            self.usual = estimate_use(days, usual=self.usual).means

    def of(self, day: date) -> Decimal:
        if day in self.counted:
            return Decimal(self.counted[day])
        if not is_service_day(day, self._open):
            return Decimal(0)
        return Decimal(str(self.usual[day.weekday()]))

    def spread(self, ml: Fraction, days: Sequence[date]) -> dict[date, Decimal]:
        weights = {day: self.of(day) for day in days}
        whole = sum(weights.values(), Decimal(0))
        if not whole:  # used on days the bar was closed: evenly then
            weights, whole = dict.fromkeys(days, Decimal(1)), Decimal(len(days))
        amount = Decimal(ml.numerator) / Decimal(ml.denominator)
        return {day: amount * weight / whole for day, weight in weights.items()}


@dataclass(frozen=True, slots=True)
class Held:
    """What is left of a batch, in mL, unopened and open, and the day it is ready, None for now."""

    batch: Batch
    closed_ml: Fraction
    open_ml: Fraction
    ready_on: date | None


def held(context: Context, made: Sequence[Batch], use: WeekdayUse | None) -> list[Held]:
    """Return what is left of a formula's batches, assuming usual use of an open one.

    Of a batch made for an event that is over, what came back is left.
    """
    bottled = bottles.rows_of(context, [row.id for row in made])
    tied = events.made_for(context)
    found = []
    for row in made:
        if not BatchState(row.state).open:
            continue
        there = bottles.left_of(row.total_ml, bottled.get(row.id, ()))
        closed, in_use = there.closed_ml, there.open_ml
        if row.opened_at is not None and row.state == BatchState.IN_USE:
            if not in_use:  # never bottled, or used from what is left in bulk
                closed, in_use = closed - there.bulk_ml, there.bulk_ml
            in_use = max(in_use - _used_since(context, row.opened_at, use), Fraction(0))
        back = tied[row.id].back.get(row.formula_id) if row.id in tied else None
        if back is not None and back.taken_ml:
            later = there.event_ml  # what other events used since
            closed = max((closed + later) * back.ml / back.taken_ml - later, Fraction(0))
            in_use *= back.ml / back.taken_ml
        ready = None
        if row.state == BatchState.RESTING and row.rest_until > context.now:
            ready = _day(context, row.rest_until)
        found.append(Held(row, closed, in_use, ready))
    return found


def _used_since(context: Context, at: datetime, use: WeekdayUse | None) -> Fraction:
    opened = _day(context, at)
    days = max(0, (context.today - opened).days)
    return Fraction(0) if use is None else Fraction(use.likely(opened, days))


def in_stock(
    context: Context, made: Sequence[Batch], use: WeekdayUse, kept: Mapping[int, Fraction]
) -> list[Stock]:
    """Return what is left for the usual use, in mL; events take `kept` of the batches.

    A batch may be used up to and including its discard date.
    """
    return [
        Stock(
            to_decimal(max(Fraction(0), one.closed_ml + one.open_ml - kept.get(one.batch.id, 0))),
            one.batch.discard_on + timedelta(days=1),
            one.ready_on,
        )
        for one in held(context, made, use)
    ]
