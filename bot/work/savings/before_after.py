"""Fruit thrown out before and since the spray, beside fruit that was not sprayed, in whole weeks."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from fractions import Fraction

from sqlalchemy import func

from bot.trade.days import Week, is_service_day, week_of
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.savings.before_after import Effect, Period, effect
from bot.work.context import Context
from bot.work.formulas import ingredients
from bot.work.formulas.ingredients import IngredientView
from bot.work.fruit import peeled
from bot.work.fruit.waste import grams_each
from bot.work.savings import savings
from bot.work.savings.savings import Since
from bot.work.spray import drinks
from bot.work.spray.drinks import Subject
from storage.tables import FormulaVersion, Waste

WEEKS_BEFORE = 12  # how far to look back before the spray: twelve weeks cover one season, not two

Days = Mapping[date, float]


@dataclass(frozen=True, slots=True)
class Side:
    """The whole weeks before the spray, or since: their nights, and the pieces of both kinds of fruit.

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
    """What the log has by day: pieces by ingredient, drinks by subject, peeled flesh put to use."""

    first: date
    pieces: Mapping[int, Days]
    drinks: Mapping[Subject, Days]
    service_days: int

    def weeks(self, first: date, last: date) -> tuple[Week, ...]:
        """Return the weeks with all their nights from first to last, and with some waste logged in them."""
        found = []
        days = {day for of in self.pieces.values() for day in of}
        week = week_of(first)
        while week.first <= last:
            nights = self.nights(week)
            if nights and first <= nights[0] and nights[-1] <= last:
                found += [week] if any(week.first <= day <= week.last for day in days) else []
            week = week_of(week.last + timedelta(days=1))
        return tuple(found)

    def nights(self, week: Week) -> list[date]:
        """Return the service days of a week."""
        days = (week.first + timedelta(days=number) for number in range(7))
        return [day for day in days if is_service_day(day, self.service_days)]

    def served(self, subjects: Sequence[Subject], weeks: Sequence[Week]) -> list[float]:
        """Return the drinks of each week; a night without a count is taken as the week's mean.

        Empty where less than half the nights of a week were counted.
        """
        found = []
        for week in weeks:
            nights = self.nights(week)
            counted: dict[date, float] = {}
            for subject in subjects:
                for day, number in self.drinks.get(subject, {}).items():
                    if day in nights:
                        counted[day] = counted.get(day, 0.0) + number
            if 2 * len(counted) < len(nights) or not sum(counted.values()):
                return []
            found.append(sum(counted.values()) / len(counted) * len(nights))
        return found


def effects(context: Context, last: date) -> list[SprayEffect]:
    """Return what became of each sprayed fruit in the whole weeks up to `last`, without the running one."""
    last = min(last, context.today - timedelta(days=1))
    known = [one for one in savings.starts(context) if one.day <= last]
    begun = context.book.session.scalar(context.book.rows(Waste, func.min(Waste.business_day)))
    if not known or begun is None:
        return []
    first = max(begun, known[0].day - timedelta(weeks=WEEKS_BEFORE))
    logged = _Logged(
        first, _pieces(context, first, last), _drinks(context, first, last), context.bar.settings.service_days
    )
    sprayed = {one.fruit.id for one in savings.starts(context)}
    return [_effect(context, logged, one, last, sprayed) for one in known if first < one.day]


def _effect(context: Context, logged: _Logged, since: Since, last: date, sprayed: set[int]) -> SprayEffect:
    start = max(logged.first, since.day - timedelta(weeks=WEEKS_BEFORE))
    before, after = (
        logged.weeks(start, since.day - timedelta(days=1)),
        logged.weeks(since.day, last),
    )
    others = [
        view
        for number in logged.pieces
        if number not in sprayed and _by_week(logged, [number], before, any_week=True)
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


def _by_week(
    logged: _Logged, numbers: Sequence[int], weeks: Sequence[Week], any_week: bool = False
) -> list[float]:
    """Return the pieces of these fruit in each week; nothing with `any_week` if there were none at all."""
    found = [
        max(
            0.0,
            sum(
                n
                for number in numbers
                for day, n in logged.pieces.get(number, {}).items()
                if week.first <= day <= week.last
            ),
        )
        for week in weeks
    ]
    return [] if any_week and not any(found) else found


def pieces_by_week(context: Context, weeks: Sequence[Week]) -> dict[int, list[float]]:
    """Return the pieces thrown out in each of these weeks, by ingredient."""
    found = _pieces(context, weeks[0].first, weeks[-1].last)
    return {
        number: [sum(n for day, n in days.items() if week.first <= day <= week.last) for week in weeks]
        for number, days in found.items()
    }


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
