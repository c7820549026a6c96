"""Tests of the owner's page: a year of a bar by its own commands, summed up apart in plain arithmetic."""

from __future__ import annotations

import random
from collections import defaultdict
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, timedelta
from decimal import Decimal

import pytest

from bot.work.savings import owner
from bot.work.savings.owner import OwnerPage, Unknown
from tests.house import House, Person, first_lines, text
from tests.work.acting import acting

_FIRST = date(2026, 1, 5)  # a Monday
_ORANGE_SINCE = _FIRST + timedelta(weeks=12)
_GRAPEFRUIT_SINCE = _FIRST + timedelta(weeks=30, days=2)  # a Wednesday: that week is neither before nor since
_CLOSED = 40  # the week of the holiday
_WEEKS = 52
# 100 ml of oil at 40.00 and 300 ml of spirit at 24.00 a litre; the oil costs 50.00 from week 20 on.
_BATCH_WEEKS = {"orange": (11, 18, 25, 40), "grapefruit": (30, 44)}


def _batch_cost(week: int) -> Decimal:
    return (Decimal(40) if week < 20 else Decimal(50)) + Decimal("7.20")


@dataclass
class _Year:
    """The bar, and what was told to it, by week."""

    house: House
    ana: Person
    paid: dict[str, dict[int, Decimal]] = field(
        default_factory=lambda: defaultdict(lambda: defaultdict(Decimal))
    )
    pieces: dict[str, dict[int, int]] = field(default_factory=lambda: defaultdict(lambda: defaultdict(int)))

    def says(self, text: str) -> None:
        replies = self.ana.says(text)
        assert replies[0].first_line.startswith(("Logged", "Bought", "Batch", "Undone")), replies

    def at(self, day: date, hour: int) -> None:
        """Set the clock to an hour of a business day; from 24 on it is after midnight."""
        self.house.clock.set(datetime(day.year, day.month, day.day, tzinfo=UTC) + timedelta(hours=hour))


def _opened(house: House) -> _Year:
    ana = house.open_bar()
    house.clock.set(datetime(2026, 1, 5, 9, tzinfo=UTC))
    for fruit in ("orange", "grapefruit"):
        ana.says(
            f"new formula {fruit} mist\n{fruit} oil 100 ml\nneutral spirit 96 % 300 ml\nreplaces {fruit}"
        )
        ana.says(f"price {fruit} oil 100 ml 40")
        ana.says(f"price {fruit} 0.50 each, 5 garnishes each")
    ana.says("price neutral spirit 1 l 24")
    ana.says("price lemon 0.40 each")
    ana.says("bar outlay 60")
    return _Year(house, ana)


def _play(year: _Year) -> None:
    chance = random.Random(16)
    for week in range(_WEEKS):
        monday = _FIRST + timedelta(weeks=week)
        if week == 20:
            year.at(monday, 9)
            for fruit in ("orange", "grapefruit"):
                year.ana.says(f"price {fruit} oil 100 ml 50")
        for fruit in ("orange", "grapefruit", "lemon"):
            if week != _CLOSED:
                _buy(year, chance, week, fruit)
        for fruit, weeks in _BATCH_WEEKS.items():
            if week in weeks:
                year.at(monday + timedelta(days=1), 15)
                year.says(f"batch {fruit} mist 400 ml")
        for number in range(7):
            if week != _CLOSED:
                _close(year, chance, monday + timedelta(days=number), week)


def _buy(year: _Year, chance: random.Random, week: int, fruit: str) -> None:
    year.at(_FIRST + timedelta(weeks=week), 16)
    sprayed = {"orange": week >= 12, "grapefruit": week >= 30, "lemon": False}[fruit]
    number = chance.randint(20, 30) if sprayed else chance.randint(70, 90)
    paid = Decimal(number) * (Decimal("0.50") if week < 26 else Decimal("0.55"))
    year.says(f"bought {number} {fruit}s {paid:.2f}")
    year.paid[fruit][week] += paid
    if week % 13 == 3:  # a second delivery that was no delivery
        year.says(f"bought 50 {fruit}s 25")
        year.says("undo")


def _close(year: _Year, chance: random.Random, day: date, week: int) -> None:
    year.at(day, 26)  # two o'clock: the night before goes on
    parts = []
    for fruit in ("orange", "grapefruit", "lemon"):
        sprayed = day >= {"orange": _ORANGE_SINCE, "grapefruit": _GRAPEFRUIT_SINCE}.get(fruit, date.max)
        number = chance.randint(0, 2) if sprayed else chance.randint(2, 6)
        year.pieces[fruit][week] += number
        parts += [f"{number} {fruit}s mouldy"] if number else []
    year.says("waste " + ", ".join(parts))


def _expected_sums(year: _Year) -> list[Decimal]:
    """Return the cash so far at the end of each whole week since the first switch, by plain arithmetic.

    Twelve weeks back from a Wednesday lie eleven whole ones.
    """
    saved: dict[int, Decimal] = defaultdict(Decimal)
    for fruit, before, since in (
        ("orange", range(12), range(12, 52)),
        ("grapefruit", range(19, 30), range(31, 52)),
    ):
        usual = sum((year.paid[fruit][week] for week in before), Decimal(0)) / len(before)
        for week in since:
            if week != _CLOSED:
                saved[week] += usual - year.paid[fruit][week]
        for made in _BATCH_WEEKS[fruit]:
            # in the first whole and logged week that ends after it
            counts_in = next(week for week in since if week >= made and week != _CLOSED)
            saved[counts_in] -= _batch_cost(made)
    sums, total = [], Decimal(0)
    for week in sorted(saved):
        total += saved[week]
        sums.append(total)
    return sums


def _page(house: House) -> OwnerPage:
    with acting(house) as context:
        found = owner.page(context)
    assert found is not None
    return found


@pytest.mark.long
@pytest.mark.parametrize(
    "database", ["sqlite"], indirect=True
)  # some hundred nights, and no statement of its own
def test_a_year_of_a_bar_adds_up_to_the_cent(house: House) -> None:
    year = _opened(house)
    _play(year)
    year.at(_FIRST + timedelta(weeks=_WEEKS), 12)
    year.ana.says(f"spraying orange since {_ORANGE_SINCE}")
    year.ana.says(f"spraying grapefruit since {_GRAPEFRUIT_SINCE}")
    page = _page(house)
    assert page.cash is not None
    expected = _expected_sums(year)
    assert [round(Decimal(one), 2) for one in page.cash.sums] == [round(one, 2) for one in expected]
    ahead = expected[-1] - 60
    assert first_lines(year.ana.says("owner")) == [f"Cash: €{ahead:,.2f} ahead after 39 whole weeks"]
    drawn = {row.fruit.name: row.pieces for row in (*page.sprayed, *page.others)}
    first_week = (page.weeks[0].first - _FIRST).days // 7
    for fruit, pieces in drawn.items():
        assert list(pieces[:-1]) == [year.pieces[fruit][week] for week in range(first_week, _WEEKS)]
    assert page.unlogged == {_CLOSED - first_week, _WEEKS - first_week}
    assert page.cash.priced
    assert page.cash.made
    assert {Unknown.PRICES, Unknown.BATCHES, Unknown.OUTLAY}.isdisjoint(page.unknown)
    sides = [(len(one.before.weeks), len(one.after.weeks), one.after.nights) for one in page.effects]
    assert sides == [(12, 39, 39 * 7), (11, 20, 20 * 7)]
    assert [one.fruit.name for one in page.cash.dearer] == ["orange", "grapefruit"]


def _weeks(house: House, orange: tuple[int, ...], lemon: int = 4, first: date = _FIRST) -> Person:
    """Log a night of each day of some weeks: pieces of orange each night, by week, and of lemon."""
    ana = house.open_bar()
    for number in range(7 * len(orange)):
        day = first + timedelta(days=number)
        house.clock.set(datetime(day.year, day.month, day.day, 22, tzinfo=UTC))
        pieces = orange[number // 7]
        ana.says(f"waste {lemon} lemons mouldy" + (f", {pieces} oranges mouldy" if pieces else ""))
    house.clock.turn(days=1)
    return ana


def _more(ana: Person) -> str:
    return " ".join(text(ana.says("week more")).split())


def test_a_switch_is_undone_and_a_day_to_come_is_refused(house: House) -> None:
    ana = _weeks(house, (6, 6, 1, 1))
    ana.says("spraying orange since 2026-01-19")
    assert "83 % less" in _more(ana)
    ana.says("undo")
    assert "less" not in _more(ana)
    assert first_lines(ana.says("spraying orange since 2027-01-04")) == ["Mon 4 Jan 2027 is still to come."]
    assert "less" not in _more(ana)


def test_a_log_kept_less_is_no_saving(house: House) -> None:
    ana = _weeks(house, (6, 6))
    house.clock.set(datetime(2026, 1, 19, 22, tzinfo=UTC))
    for _week in range(4):  # one night a week is logged, as bad as before
        ana.says("waste 6 oranges mouldy")
        house.clock.turn(days=7)
    ana.says("spraying orange since 2026-01-19")
    assert "In whole weeks 14 nights were logged before and 4 since" in _more(ana)


def test_a_night_said_to_be_without_waste_counts(house: House) -> None:
    ana = _weeks(house, (6, 6))
    ana.says("spraying orange since 2026-01-19")
    for _night in range(8):  # the first is the Sunday, which was logged
        house.clock.set(house.clock.now().replace(hour=4, minute=40))
        house.reminders()
        ana.says("nothing tonight")
        house.clock.turn(days=1)
    house.clock.turn(days=7)
    assert "14 nights were logged before and 7 since" in _more(ana)


def test_no_sprayed_fruit_stands_for_what_would_have_happened(house: House) -> None:
    ana = _weeks(house, (6, 6, 1, 1), lemon=3)
    ana.says("spraying lemon since 2026-01-19")
    ana.says("spraying orange since 2026-01-19")
    assert "Not sprayed" not in _more(ana)
    ana.says("spraying lemon never")
    assert "Not sprayed, lemon" in _more(ana)


def test_half_the_drinks_explain_half_the_waste(house: House) -> None:
    ana = house.open_bar()
    for number in range(28):
        day = _FIRST + timedelta(days=number)
        house.clock.set(datetime(day.year, day.month, day.day, 22, tzinfo=UTC))
        half = number >= 14
        ana.says(f"drinks {40 if half else 80}")
        ana.says(f"waste {3 if half else 6} oranges mouldy")
    house.clock.turn(days=1)
    ana.says("spraying orange since 2026-01-19")
    assert "Counted a drink: 1 % more" in _more(ana)  # by the half piece added to each sum
    assert "shows nothing yet" in _more(ana)


def _bought(ana: Person, house: House, days: tuple[int, ...], line: str) -> None:
    for number in days:
        day = _FIRST + timedelta(days=number)
        house.clock.set(datetime(day.year, day.month, day.day, 23, tzinfo=UTC))
        ana.says(line)


def test_a_delivery_without_a_sum_costs_the_price_then(house: House) -> None:
    ana = _weeks(house, (6, 6, 1, 1))
    _bought(ana, house, (0, 7), "price oranges 0.50 each")
    _bought(ana, house, (1, 8), "bought 80 oranges")
    _bought(ana, house, (14, 21), "bought 20 oranges")
    _bought(ana, house, (26,), "price oranges 0.90 each")
    _bought(ana, house, (28,), "spraying orange since 2026-01-19")
    cash = _page(house).cash
    assert cash is not None
    # 80 at 0.50 in each week before; 20 at 0.50, then 20 at the 0.90 in force at that week's end
    assert cash.sums == pytest.approx((30, 52))
    assert cash.a_week == pytest.approx(26)
    assert not cash.made


def test_two_currencies_are_no_one_sum(house: House) -> None:
    ana = _weeks(house, (6, 6, 1, 1))
    _bought(ana, house, (1, 8), "bought 80 oranges 40")
    _bought(ana, house, (15, 22), "bought 20 oranges 10")
    _bought(ana, house, (28,), "spraying orange since 2026-01-19")
    ana.says("bar currency USD")
    page = _page(house)
    assert page.cash is None
    assert Unknown.CURRENCY in page.unknown
    ana.says("undo")
    assert _page(house).cash is not None


def test_more_waste_and_more_cash_are_said_as_a_loss(house: House) -> None:
    ana = _weeks(house, (2, 2, 9, 9))
    _bought(ana, house, (1, 8), "bought 40 oranges 20")
    _bought(ana, house, (15, 22), "bought 90 oranges 45")
    _bought(ana, house, (28,), "spraying orange since 2026-01-19")
    said = text(ana.says("owner"))
    assert said.startswith("Cash: €50.00 behind after 2 whole weeks")
    assert "A week: €25.00 more paid" in said
    assert "less" not in said


# By hand: a mean week of 38.5; squares of 3,626 over it, over seven degrees of freedom.
@pytest.mark.parametrize(
    ("oranges", "said"),
    [
        ((2, 9, 3, 8, 2, 9, 3, 8), "Your counts varied 13.5 times as much as by chance in the last 8 weeks."),
        ((5,) * 8, "Your counts varied no more than by chance in the last 8 weeks."),
        ((5,) * 7, "common practice, no source"),
    ],
)
def test_the_nights_to_log_go_by_the_bars_own_scatter(
    house: House, oranges: tuple[int, ...], said: str
) -> None:
    ana = _weeks(house, oranges)
    assert said in " ".join(text(ana.says("switch orange: 0.50, 5, 300, 20")).split())


def test_zero_before_and_after_claim_nothing(house: House) -> None:
    ana = _weeks(house, (0, 0, 0, 0))
    ana.says("waste 1 orange mouldy")
    ana.says("spraying orange since 2026-01-19")
    assert "no verdict yet" in _more(ana)
    ana.says("owner")
