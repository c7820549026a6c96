"""Fruit of the demo: crates on Mondays, counts on Sundays, peeled fruit that is juiced.

Use is random around the need of each garnish, so that counts show differences.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import timedelta
from fractions import Fraction

from bot.demo import book
from bot.demo.book import MANAGER, MEMBER, OWNER
from bot.demo.stage import Act, Stage
from bot.trade.formulas.measures import Quantity
from bot.work.context import Context
from bot.work.fruit import peeled
from bot.work.people import bars
from bot.work.stock import counts
from bot.work.stock import on_hand as stock

_MONDAY, _FRIDAY, _SUNDAY = 0, 4, 6
_COUNTED_WEEKS = 4  # the bar began to count at close only recently


@dataclass(frozen=True, slots=True)
class _Crate:
    """How a fruit is bought: pieces per crate, crates a week before and since the spray, pieces used a week.

    `left` is the result of the first count.
    """

    fruit: str
    pieces: int
    before: int
    since: int
    used: float
    left: int


_CRATES = (
    _Crate("orange", 40, 4, 1, 18.0, 34),
    _Crate("grapefruit", 24, 3, 0, 3.0, 19),
    _Crate("lemon", 36, 2, 2, 61.0, 31),
    _Crate("lime", 60, 2, 2, 88.0, 44),
)


def money(stage: Stage) -> Iterator[Act]:
    """Set the price of an hour, a bottle and a label, so that fresh and spray can be compared."""

    def does(context: Context) -> None:
        bars.change(
            context,
            wage="10 12",
            batch_minutes="20 30",
            garnish_minutes="1/5 3/10",
            bottle_price="6/5",
            label_price="1/20",
            outlay="60",
        )

    yield Act(stage.at(book.SPRAY_SINCE - 1, "15:05"), OWNER, does)


def crates(stage: Stage) -> Iterator[Act]:
    """Buy fruit in whole crates on Mondays, and recently count it on Sundays."""
    dice = stage.chance("crates")
    counted = stage.last_day - timedelta(weeks=_COUNTED_WEEKS)
    for back in range(7 * book.WEEKS, -1, -1):
        day = stage.last_day - timedelta(days=back)
        if day.weekday() == _MONDAY and day > stage.first_day:
            sprayed = day >= stage.night(book.SPRAY_SINCE)
            for crate in _CRATES:
                count = crate.since if sprayed else crate.before
                # Now and then a crate is skipped, because last week's leftovers suffice.
                if count and (sprayed or dice.random() < 0.85):
                    yield Act(stage.at(day, "11:05"), MANAGER, _buys(stage, crate, count))
        if day.weekday() == _SUNDAY and day > counted:
            first = day - timedelta(weeks=1) <= counted
            for crate in _CRATES:
                share = dice.uniform(0.9, 1.1)
                yield Act(stage.at(day, "25:58"), MEMBER, _counts(stage, crate, share, first))


def _buys(stage: Stage, crate: _Crate, count: int) -> Callable[[Context], object]:
    pack = Quantity(Fraction(crate.pieces), "each")
    return lambda context: counts.buy(context, stage.ingredients[crate.fruit], Fraction(count), pack)


def _counts(stage: Stage, crate: _Crate, share: float, first: bool) -> Callable[[Context], None]:
    def does(context: Context) -> None:
        number = stage.ingredients[crate.fruit]
        left = Fraction(crate.left)
        if not first:
            there = stock.on_hand(context, [number])[number]
            left = Fraction(max(0, int(there.amount) - round(crate.used * share)))
        counts.count(context, number, Quantity(left, "each"))

    return does


def flesh(stage: Stage) -> Iterator[Act]:
    """Since the spray, peel on Fridays and juice the same night; on the last night some is left peeled."""
    dice = stage.chance("flesh")
    for night, day in enumerate(stage.nights):
        if day.weekday() != _FRIDAY or not 0 < night < book.SPRAY_SINCE:
            continue
        count = dice.randrange(5, 9)
        ml = Fraction(count * dice.randrange(66, 82))
        yield Act(stage.at(day, "17:40"), MEMBER, _peels(stage, "orange", count))
        yield Act(stage.at(day, "23:20"), MEMBER, _juices(stage, "orange", count, ml))
    yield Act(stage.at(0, "24:05"), OWNER, _peels(stage, "orange", 4))


def _peels(stage: Stage, fruit: str, count: int) -> Callable[[Context], object]:
    return lambda context: peeled.peel(context, stage.ingredients[fruit], Fraction(count))


def _juices(stage: Stage, fruit: str, count: int, ml: Fraction) -> Callable[[Context], object]:
    return lambda context: peeled.juice(context, stage.ingredients[fruit], Fraction(count), ml)


PARTS = (money, crates, flesh)
