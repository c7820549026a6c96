"""Fruit thrown out before and since the spray, beside fruit that was not sprayed, in whole weeks.

A night counts if waste was logged in it, or "nothing": a night without a line was perhaps only forgotten,
and a log that is kept less must not look like less waste.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from fractions import Fraction

from sqlalchemy import case, func

from bot.trade.days import Week, is_service_day, week_of
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.savings.before_after import Effect, Period, dispersion, effect
from bot.work.context import Context
from bot.work.formulas import ingredients
from bot.work.formulas.ingredients import IngredientView
from bot.work.fruit import peeled
from bot.work.fruit.waste import grams_each
from bot.work.reminders import nights
from bot.work.savings import savings
from bot.work.savings.savings import Since
from bot.work.spray import drinks
from bot.work.spray.drinks import Subject
from bot.work.standing import thrown_out
from storage.tables import FormulaVersion, Waste

WEEKS_BEFORE = 12  # how far to look back before the spray: twelve weeks cover one season, not two
WEEKS_OF_SCATTER = 8  # fewer say too little about the scatter of a bar's own counts; common practice

Days = Mapping[date, float]


@dataclass(frozen=True, slots=True)
class Side:
    """The whole weeks before the spray, or since: nights logged in them, and pieces of both kinds of fruit.

    `drinks` is None unless the drinks were counted before and since. `kept` are the pieces whose flesh was
    juiced or went into a batch after peeling: they are not in `pieces`.
    """

    weeks: tuple[Week, ...]
    nights: int
    pieces: float
    others: float
    kept: float
    drinks: float | None

    def a_night(self, pieces: float) -> float:
        """Return pieces as a mean per night."""
        return pieces / self.nights if self.nights else 0.0


@dataclass(frozen=True, slots=True)
class SprayEffect:
    """What became of one sprayed fruit; `others` are the fruit beside it that were never sprayed."""

    since: Since
    others: tuple[IngredientView, ...]
    before: Side
    after: Side
    effect: Effect


@dataclass(frozen=True, slots=True)
class _Logged:
    """What the log has by day: pieces by ingredient, drinks by subject, and the nights with any line."""

    first: date
    pieces: Mapping[int, Days]
    drinks: Mapping[Subject, Days]
    logged: frozenset[date]
    service_days: int

    def weeks(self, first: date, last: date) -> tuple[Week, ...]:
        """Return the weeks with all service days from first to last, and with a night logged in them."""
        found = []
        week = week_of(first)
        while week.first <= last:
            service = [day for day in _days(week) if is_service_day(day, self.service_days)]
            if service and first <= service[0] and service[-1] <= last and self.nights(week):
                found.append(week)
            week = week_of(week.last + timedelta(days=1))
        return tuple(found)

    def nights(self, week: Week) -> list[date]:
        """Return the nights of a week that were logged."""
        return [day for day in _days(week) if day in self.logged]

    def served(self, subjects: Sequence[Subject], weeks: Sequence[Week]) -> list[float]:
        """Return the drinks of each week's logged nights; one without a count is taken as the week's mean.

        Empty where drinks were counted on fewer than half of those nights.
        """
        found = []
        for week in weeks:
            nights, days = self.nights(week), _days(week)
            counted: dict[date, float] = {}
            for subject in subjects:
                for day, number in self.drinks.get(subject, {}).items():
                    if day in days:
                        counted[day] = counted.get(day, 0.0) + number
            if 2 * len(counted) < len(nights) or not sum(counted.values()):
                return []
            found.append(sum(counted.values()) / len(counted) * len(nights))
        return found


def _days(week: Week) -> list[date]:
    return [week.first + timedelta(days=number) for number in range(7)]


def effects(context: Context, last: date) -> list[SprayEffect]:
    """Return what became of each sprayed fruit in the whole weeks up to `last`, without the running one."""
    last = min(last, context.today - timedelta(days=1))
    known = [one for one in savings.starts(context) if one.day <= last]
    begun = _begun(context)
    if not known or begun is None:
        return []
    logged = _read(context, max(begun, known[0].day - timedelta(weeks=WEEKS_BEFORE)), last)
    sprayed = savings.ever_sprayed(context)
    return [_effect(context, logged, one, last, sprayed) for one in known if logged.first < one.day]


def own_scatter(context: Context, fruit_id: int) -> tuple[float, int] | None:
    """Return the scatter of the weekly counts of a fruit not yet sprayed, against Poisson's, and the weeks.

    None with fewer than WEEKS_OF_SCATTER whole weeks, or if none of it was thrown out in them.
    """
    last, begun = context.today - timedelta(days=1), _begun(context)
    if begun is None or fruit_id in savings.ever_sprayed(context):
        return None
    logged = _read(context, max(begun, last - timedelta(weeks=2 * WEEKS_BEFORE)), last)
    weeks = logged.weeks(logged.first, last)
    pieces = _by_week(logged, [fruit_id], weeks)
    if len(weeks) < WEEKS_OF_SCATTER or not any(pieces):
        return None
    nights = tuple(float(len(logged.nights(week))) for week in weeks)
    return dispersion([Period(tuple(pieces), nights)])[0], len(weeks)


def _begun(context: Context) -> date | None:
    begun: date | None = context.book.session.scalar(context.book.rows(Waste, func.min(Waste.business_day)))
    return begun


def _read(context: Context, first: date, last: date) -> _Logged:
    return _Logged(
        first,
        _pieces(context, first, last),
        _drinks(context, first, last),
        _nights(context, first, last),
        context.bar.settings.service_days,
    )


def _effect(context: Context, logged: _Logged, since: Since, last: date, sprayed: set[int]) -> SprayEffect:
    start = max(logged.first, since.day - timedelta(weeks=WEEKS_BEFORE))
    before, after = logged.weeks(start, since.day - timedelta(days=1)), logged.weeks(since.day, last)
    others = [
        view
        for number in logged.pieces
        if number not in sprayed and any(_by_week(logged, [number], before))
        if (view := ingredients.get(context, number)).kind is IngredientKind.FRUIT
    ]
    numbers = [one.id for one in others]
    own = _exposures(
        logged, [(None, since.fruit.id, None), *formulas_of(context, since.fruit)], before, after
    )
    everyone = _exposures(logged, [(None, None, None)], before, after)
    nights = [[float(len(logged.nights(week))) for week in weeks] for weeks in (before, after)]

    def periods(of: Sequence[int], exposures: Sequence[Sequence[float]]) -> tuple[Period, Period]:
        pieces = (_by_week(logged, of, weeks) for weeks in (before, after))
        made = [Period(tuple(one), tuple(each)) for one, each in zip(pieces, exposures, strict=True)]
        return made[0], made[1]

    treated = periods([since.fruit.id], own or everyone or nights)
    beside = periods(numbers, everyone or nights) if others else None
    found = effect(*treated, (round(sum(nights[0])), round(sum(nights[1]))), beside)
    counted = own or everyone
    sides = [
        Side(
            weeks,
            round(sum(nights[place])),
            sum(treated[place].pieces),
            sum(beside[place].pieces) if beside else 0.0,
            _kept(context, since.fruit, weeks),
            sum(counted[place]) if counted else None,
        )
        for place, weeks in enumerate((before, after))
    ]
    return SprayEffect(since, tuple(sorted(others, key=lambda one: one.name)), sides[0], sides[1], found)


def _exposures(
    logged: _Logged,
    subjects: Sequence[Subject],
    before: Sequence[Week],
    after: Sequence[Week],
) -> list[list[float]] | None:
    """Return the drinks of each week on both sides, or None unless they were counted on both."""
    found = [logged.served(subjects, weeks) for weeks in (before, after)]
    return found if all(found) else None


def _by_week(logged: _Logged, numbers: Sequence[int], weeks: Sequence[Week]) -> list[float]:
    """Return the pieces of these fruit in each week."""
    return [
        max(0.0, sum(_in_week(logged.pieces.get(number, {}), week) for number in numbers)) for week in weeks
    ]


def _in_week(days: Days, week: Week) -> float:
    return sum(n for day, n in days.items() if week.first <= day <= week.last)


def pieces_by_week(context: Context, weeks: Sequence[Week]) -> dict[int, list[float]]:
    """Return the pieces thrown out in each of these weeks, by ingredient."""
    found = _pieces(context, weeks[0].first, weeks[-1].last)
    return {number: [_in_week(days, week) for week in weeks] for number, days in found.items()}


def unlogged(context: Context, weeks: Sequence[Week]) -> frozenset[int]:
    """Return the places of the weeks in which no night was logged."""
    nights = _nights(context, weeks[0].first, weeks[-1].last)
    return frozenset(place for place, week in enumerate(weeks) if not nights.intersection(_days(week)))


# -- read from the log ---------------------------------------------------------------------------


def _pieces(context: Context, first: date, last: date) -> dict[int, dict[date, float]]:
    """Return the pieces thrown out by ingredient and day; grams count where the mass of a piece is known."""
    query = (
        context.book.rows(
            Waste,
            Waste.ingredient_id,
            Waste.business_day,
            func.sum(func.coalesce(Waste.count_milli, 0)),
            func.sum(func.coalesce(Waste.grams_milli, 0)),
        )
        .where(Waste.business_day.between(week_of(first).first, week_of(last).last))
        .group_by(Waste.ingredient_id, Waste.business_day)
    )
    found: dict[int, dict[date, float]] = {}
    masses: dict[int, Fraction | None] = {}
    for number, day, count, grams in context.book.session.execute(query):
        if number not in masses:
            masses[number] = grams_each(ingredients.get(context, number))
        each = masses[number]
        of = found.setdefault(number, {})
        of[day] = int(count) / 1000 + (int(grams) / 1000 / float(each) if each else 0.0)
    return found


def _nights(context: Context, first: date, last: date) -> frozenset[date]:
    """Return the nights in which waste was logged and not undone, or that there was none."""
    lines = func.sum(case((thrown_out() < 0, -1), else_=1))
    days = week_of(first).first, week_of(last).last
    query = (
        context.book.rows(Waste, Waste.business_day)
        .where(Waste.business_day.between(*days))
        .group_by(Waste.business_day)
        .having(lines > 0)
    )
    return frozenset(context.book.session.scalars(query)) | nights.without_waste(context, *days)


def _drinks(context: Context, first: date, last: date) -> dict[Subject, dict[date, float]]:
    found: dict[Subject, dict[date, float]] = {}
    for one in drinks.days(context, week_of(first).first, week_of(last).last):
        found.setdefault(one.subject, {})[one.day] = float(one.drinks)
    return found


def formulas_of(context: Context, fruit: IngredientView) -> list[Subject]:
    """Return the formulas that replace this garnish, as subjects of a count of drinks."""
    query = (
        context.book.rows(FormulaVersion, FormulaVersion.formula_id)
        .where(FormulaVersion.garnish_id == fruit.id)
        .distinct()
    )
    return [(number, None, None) for number in context.book.session.scalars(query)]


def _kept(context: Context, fruit: IngredientView, weeks: Sequence[Week]) -> float:
    """Return the peeled pieces of these weeks whose flesh was juiced or went into a batch."""
    if not weeks:
        return 0.0
    days = weeks[0].first, weeks[-1].last
    return float(peeled.settled(context, fruit.id, *days, peeled.JUICED, peeled.BATCH))
