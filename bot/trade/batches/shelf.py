"""Compute the rest, re-check and discard dates of a batch; the earliest discard rule wins and is named."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from enum import StrEnum

from bot.trade.batches.keeping import (
    FOOD_CODE_SOURCE,
    NOTHING_KNOWN,
    SHORT_DAYS,
    STRONG_KINDS,
    Made,
    UsualTime,
    usual_time,
)
from bot.trade.errors import OutOfRangeError, TradeError
from bot.trade.formulas.ingredient_names.reading import read_name
from bot.trade.formulas.kinds import PREPARATION_DEFAULTS, IngredientKind, Preparation
from bot.trade.formulas.perishables import COVERED_PLANTS, SPARED
from bot.trade.safety.jurisdiction import Jurisdiction
from bot.trade.sources import PRACTICE, HowKnown, Source
from bot.trade.words import N_

_SEEN = date(2026, 11, 25)

# Citrus oils last 1 to 2 years from opening when cold, half as long otherwise: a rule of thumb; we use the
# low end.
OIL_DAYS_COLD = 365
OIL_DAYS_WARM = 182
OIL_SOURCE = Source(
    N_("rule of thumb from an essential-oil handbook's author: 1 to 2 years cold, half of that otherwise"),
    HowKnown.READ_SECOND_HAND,
    _SEEN,
)

OWN_TIME = Source(N_("a time this bar set itself"), HowKnown.PRACTICE)


class ShelfRule(StrEnum):
    """The rules that can set a discard date; for two on the same day, the one listed first is named."""

    FOOD_CODE = "food code"
    INGREDIENT = "ingredient"
    OIL = "oil"
    OPENED = "opened"
    FORMULA = "formula"
    SHORTENED = "shortened"
    KIND = "kind"


RULE_TEXTS: dict[ShelfRule, str] = {
    ShelfRule.FOOD_CODE: N_("seven days at 5 °C, the day of making counted as day one"),
    ShelfRule.INGREDIENT: N_("the earliest date among what went into it"),
    ShelfRule.OIL: N_("the age of the oldest oil in it"),
    ShelfRule.OPENED: N_("time since the bottle was opened"),
    ShelfRule.FORMULA: N_("this formula's own time"),
    ShelfRule.SHORTENED: N_("weak or fresh, so shorter than its kind"),
    ShelfRule.KIND: N_("the usual time for its kind"),
}


class NaiveTimeError(TradeError):
    """A time has no time zone."""


@dataclass(frozen=True, slots=True)
class OilBottle:
    """An oil bottle used in a batch; unknown dates are None."""

    name: str
    opened_on: date | None = None
    best_before: date | None = None
    kept_cold: bool = False


@dataclass(frozen=True, slots=True)
class IngredientDate:
    """A perishable ingredient and its last day."""

    name: str
    discard_on: date


@dataclass(frozen=True, slots=True)
class ShelfQuestion:
    """The facts about a batch that decide its dates.

    `made_at` is an aware time; `made_on` the day it counts for (its date if None). Times in hours or whole
    days; None takes the kind's default. `opened_on` is the day a bottle of the batch was first opened.
    `made` is what went in.
    """

    preparation: Preparation
    made_at: datetime
    jurisdiction: Jurisdiction
    made_on: date | None = None
    rest_hours: float | None = None
    discard_days: int | None = None
    recheck_days: int | None = None
    opened_on: date | None = None
    opened_days: int | None = None
    oils: tuple[OilBottle, ...] = ()
    ingredient_dates: tuple[IngredientDate, ...] = ()
    made: Made = NOTHING_KNOWN

    def __post_init__(self) -> None:
        if self.made_at.utcoffset() is None:
            raise NaiveTimeError
        if self.rest_hours is not None and not 0 <= self.rest_hours <= 24 * 3650:
            raise OutOfRangeError("rest", self.rest_hours, 0, 24 * 3650, "h")
        for name, days in (
            ("discard", self.discard_days),
            ("recheck", self.recheck_days),
            ("opened", self.opened_days),
        ):
            if days is not None and not 0 <= days <= 3650:
                raise OutOfRangeError(name, days, 0, 3650, "days")

    @property
    def making_day(self) -> date:
        """The day on which the batch counts as made."""
        return self.made_on or self.made_at.date()

    @property
    def usual(self) -> UsualTime:
        """The usual time of what was made."""
        return usual_time(self.preparation, self.made)


@dataclass(frozen=True, slots=True)
class Candidate:
    """A discard date and the rule that gives it.

    The batch may be used on that day and must be thrown out by the end of it. `subject` names the oil or
    ingredient, if one decides; `certain` is False where the rule may not cover the batch and an inspector has
    to decide.
    """

    rule: ShelfRule
    discard_on: date
    source: Source
    subject: str = ""
    certain: bool = True


@dataclass(frozen=True, slots=True)
class ShelfPlan:
    """Rest-until, re-check and discard dates of a batch, with every rule that applied, earliest first.

    `rest_until` is in the zone of the time of making. `recheck_on` is None when nothing is due before the
    discard date. `longer_than_usual` is set when the formula's own time passes the usual one, `keep_cold`
    when the batch belongs in the refrigerator.
    """

    rest_until: datetime
    recheck_on: date | None
    discard_on: date
    candidates: tuple[Candidate, ...]
    ask_inspector: bool
    longer_than_usual: bool
    past_when_made: bool
    keep_cold: bool = False

    @property
    def winner(self) -> Candidate:
        """The rule that set the discard date."""
        return self.candidates[0]


class FoodCodeCover(StrEnum):
    """Whether the Food Code's date marking applies to a batch, as far as names can tell."""

    COVERED = "covered"
    NOT_NAMED = "not named"
    NOT_CONCERNED = "not concerned"


_COVERED_WORDS = re.compile(
    rf"\b(?:{COVERED_PLANTS}|milk|cream|half[- ]and[- ]half|yogh?urt|eggs?|garlic (?:in )?oil)\b"
)
_JUICES = frozenset({Preparation.JUICE, Preparation.ACID_ADJUSTED_JUICE})


def food_code_cover(
    preparation: Preparation, contents: tuple[tuple[str, IngredientKind], ...]
) -> FoodCodeCover:
    """Return whether Food Code 3-501.17 applies to a batch, by the names and kinds of its contents.

    Covered by name: cut melon, cut tomato, cut leafy greens, sprouts, garlic in oil, plant food that was
    heated, milk and egg (the code's definition, read second-hand). Cut citrus and its juice are not named; an
    inspector decides whether their acidity exempts them. An inspector also decides on mixes in strong spirit
    that contain something covered.
    """
    names = [SPARED.sub(" ", read_name(name)) for name, _ in contents]
    covered = any(_COVERED_WORDS.search(name) for name in names)
    if preparation in STRONG_KINDS:
        return FoodCodeCover.NOT_NAMED if covered else FoodCodeCover.NOT_CONCERNED
    if covered:
        return FoodCodeCover.COVERED
    fresh = any(kind in {IngredientKind.JUICE, IngredientKind.FRUIT} for _, kind in contents)
    return FoodCodeCover.NOT_NAMED if fresh or preparation in _JUICES else FoodCodeCover.NOT_CONCERNED


def oil_discard_on(oil: OilBottle) -> date | None:
    """Return the last day of an oil: its best-before date, or a year (cold) or half a year after opening.

    The earlier of the two; None when neither date is known. Source: OIL_SOURCE.
    """
    dates = [oil.best_before] if oil.best_before else []
    if oil.opened_on:
        dates.append(oil.opened_on + timedelta(days=OIL_DAYS_COLD if oil.kept_cold else OIL_DAYS_WARM))
    return min(dates, default=None)


def shelf_plan(question: ShelfQuestion) -> ShelfPlan:
    """Return a batch's dates; the earliest discard rule wins.

    The formula's own time replaces the kind's usual one; every other rule can only move the date forward.
    Rest is counted in elapsed hours, so a clock change does not shorten it. Kind times are common practice,
    no source; the Food Code applies where the bar follows US rules, and elsewhere `ask_inspector` is set for
    the batches it would cover.
    """
    defaults = PREPARATION_DEFAULTS[question.preparation]
    candidates = sorted(
        _candidates(question), key=lambda c: (c.discard_on, list(ShelfRule).index(c.rule))
    )  # fmt: skip
    discard_on = candidates[0].discard_on
    rest_hours = defaults.rest_hours if question.rest_hours is None else question.rest_hours
    rest_until = question.made_at.astimezone(UTC) + timedelta(hours=rest_hours)
    recheck_days = defaults.recheck_days if question.recheck_days is None else question.recheck_days
    recheck_on = None if recheck_days is None else question.making_day + timedelta(days=recheck_days)
    cover = food_code_cover(question.preparation, question.made.contents)
    us = question.jurisdiction is Jurisdiction.US
    usual = question.usual
    return ShelfPlan(
        rest_until=rest_until.astimezone(question.made_at.tzinfo),
        recheck_on=recheck_on if recheck_on is not None and recheck_on < discard_on else None,
        discard_on=discard_on,
        candidates=tuple(candidates),
        ask_inspector=usual.shortened
        or cover is FoodCodeCover.NOT_NAMED
        or (cover is FoodCodeCover.COVERED and not us),
        longer_than_usual=question.discard_days not in {None, defaults.discard_days}
        and (question.discard_days or 0) > usual.days,
        past_when_made=discard_on < question.making_day,
        keep_cold=usual.shortened or defaults.keep_cold,
    )


def _candidates(question: ShelfQuestion) -> Iterator[Candidate]:
    defaults = PREPARATION_DEFAULTS[question.preparation]
    made = question.making_day
    # A formula saved with the usual time of its kind has no time of its own to name.
    if question.discard_days is None or question.discard_days == defaults.discard_days:
        usual = question.usual
        rule = ShelfRule.SHORTENED if usual.shortened else ShelfRule.KIND
        yield Candidate(rule, made + timedelta(days=usual.days), usual.source)
    else:
        yield Candidate(ShelfRule.FORMULA, made + timedelta(days=question.discard_days), OWN_TIME)
    if question.opened_on is not None:
        days = defaults.opened_days if question.opened_days is None else question.opened_days
        source = PRACTICE if question.opened_days is None else OWN_TIME
        yield Candidate(ShelfRule.OPENED, question.opened_on + timedelta(days=days), source)
    for oil in question.oils:
        day = oil_discard_on(oil)
        if day is not None:
            yield Candidate(ShelfRule.OIL, day, OIL_SOURCE, subject=oil.name)
    us = question.jurisdiction is Jurisdiction.US
    for dated in question.ingredient_dates:
        source = FOOD_CODE_SOURCE if us else PRACTICE
        yield Candidate(ShelfRule.INGREDIENT, dated.discard_on, source, subject=dated.name)
    if us:
        cover = food_code_cover(question.preparation, question.made.contents)
        named = cover is FoodCodeCover.COVERED
        # Fresh juice that the code does not name still gets its seven days as an outer limit.
        if named or question.preparation in _JUICES:
            last = made + timedelta(days=SHORT_DAYS)
            yield Candidate(ShelfRule.FOOD_CODE, last, FOOD_CODE_SOURCE, certain=named)
