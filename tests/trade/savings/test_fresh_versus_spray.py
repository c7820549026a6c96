"""Tests of fresh against spray: ranges contain every case, and costs are equal at break-even."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from itertools import repeat
from typing import TypeVar

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.errors import OutOfRangeError
from bot.trade.numbers.uncertainty import Estimate
from bot.trade.savings.fresh_versus_spray import (
    INPUT_NAMES,
    Answer,
    Fresh,
    FreshAgainstSpray,
    House,
    Spray,
    compare,
)
from tests.examples import examples

exactly = Estimate.exactly
TINY = Decimal("1e-15")


def _exact_bar() -> tuple[Fresh, Spray, House]:
    fresh = Fresh(exactly(Decimal("0.48")), exactly(5), exactly(Decimal("0.2")), exactly(0))
    spray = Spray(
        ingredients_cost=exactly(Decimal("12.80")),
        batch_minutes=exactly(0),
        bottle_cost=exactly(0),
        label_cost=exactly(0),
        loss_share=exactly(0),
        ml_per_spray=exactly(Decimal("0.1")),
        sprays_per_drink=exactly(2),
        batch_ml=Decimal(64),
        bottle_ml=Decimal(64),
    )
    return fresh, spray, House(exactly(100), outlay=Decimal(40))


def _ask(
    fresh: Fresh | None = None, spray: Spray | None = None, house: House | None = None
) -> FreshAgainstSpray:
    usual = _exact_bar()
    return compare(fresh or usual[0], spray or usual[1], house or usual[2], count=100)


def test_the_plain_case_by_hand() -> None:
    result = _ask()
    # 0.48 / (5 * 0.8) fresh; 12.80 / (64 / 0.2) spray
    assert result.fresh.per_drink.likely == Decimal("0.12")
    assert result.spray.per_drink.likely == Decimal("0.04")
    assert result.times_cheaper.likely == 3
    assert result.fresh.per_week.likely == 12
    assert result.spray.per_week.likely == 4
    assert result.saving.per_week.likely == 8
    assert result.saving.per_year.likely == 416
    assert result.payback_weeks.likely == 5
    assert result.break_evens.drinks_until_paid == 500
    assert result.spray_cheaper_share == 1
    assert result.swings == ()
    assert result.matter_most == ()


def test_exact_inputs_give_exact_answers() -> None:
    result = _ask()
    for answer in _all_answers(result):
        assert answer.whole.is_exact
        assert answer.usual.width == pytest.approx(0)


def test_bottle_label_and_loss_cost_money_and_work_costs_time() -> None:
    fresh, spray, house = _exact_bar()
    full = replace(
        spray,
        batch_minutes=exactly(30),
        bottle_cost=exactly(Decimal("1.20")),
        label_cost=exactly(Decimal("0.10")),
        loss_share=exactly(Decimal("0.1")),
        bottle_ml=Decimal(32),
    )
    result = compare(replace(fresh, peel_minutes=exactly(Decimal("0.5"))), full, house, count=100)
    # 12.80 + 2 bottles at 1.30, over 64 * 0.9 / 0.2 drinks
    assert result.spray.per_drink.likely == pytest.approx(Decimal("15.40") / 288, abs=TINY)
    assert result.fresh.per_drink.likely == Decimal("0.12")
    # 100 garnishes at half a minute, less half an hour for every 288 drinks
    assert result.minutes.likely == pytest.approx(50 - Decimal(3000) / 288, abs=TINY)


def test_flesh_that_is_juiced_is_credited_to_the_fresh_fruit() -> None:
    fresh, _, _ = _exact_bar()
    result = _ask(fresh=replace(fresh, kept_share=exactly(Decimal("0.25"))))
    assert result.fresh.per_drink.likely == Decimal("0.09")
    assert result.break_evens.fruit_price == pytest.approx(Decimal("0.04") / Decimal("0.75") * 4, abs=TINY)


def test_a_batch_that_goes_off_before_it_is_poured_costs_more_a_drink() -> None:
    _, spray, _ = _exact_bar()
    result = _ask(spray=replace(spray, shelf_weeks=Decimal(2)))
    # 320 drinks in the batch, 200 served in its two weeks
    assert result.spray.per_drink.likely == Decimal("12.8") / 200
    assert result.break_evens.drinks_per_week == pytest.approx(
        Decimal("12.8") / 2 / Decimal("0.12"), abs=TINY
    )


def test_the_best_week_can_lie_inside_the_range_of_drinks() -> None:
    fresh, spray, _ = _exact_bar()
    cheap = replace(fresh, fruit_price=exactly(Decimal("0.12")))
    house = House(Estimate.between(100, 1000))
    result = compare(cheap, replace(spray, shelf_weeks=Decimal(1)), house, count=100)
    # the 320 drinks of a batch, served exactly in its one week: 320 * 0.03 - 12.80
    assert result.saving.per_week.whole.high == Decimal("-3.2")
    assert result.saving.per_week.whole.low == -10


def test_spray_that_never_pays_says_so() -> None:
    fresh, _, _ = _exact_bar()
    result = _ask(fresh=replace(fresh, fruit_price=exactly(Decimal("0.10"))))
    assert result.saving.per_week.likely < 0
    assert result.payback_weeks.likely is None
    assert result.payback_weeks.soonest is None
    assert result.break_evens.drinks_until_paid is None
    assert result.spray_cheaper_share == 0


def test_free_fruit_is_cheaper_than_any_spray() -> None:
    fresh, spray, _ = _exact_bar()
    free_fruit = replace(fresh, fruit_price=exactly(0))
    off = _ask(fresh=free_fruit, spray=replace(spray, shelf_weeks=Decimal(1)))
    assert off.break_evens.sprays_per_drink is None
    assert off.break_evens.drinks_per_week is None


def test_what_goes_off_can_cost_more_than_the_fresh_garnish_however_little_is_sprayed() -> None:
    _, spray, _ = _exact_bar()
    # 12.80 in two weeks is 6.40 a week; the fresh garnish of 100 drinks costs 12, that of 50 costs 6
    keeps_two = replace(spray, shelf_weeks=Decimal(2))
    assert _ask(spray=keeps_two).break_evens.sprays_per_drink == 6
    slow = House(exactly(50), outlay=Decimal(40))
    assert _ask(spray=keeps_two, house=slow).break_evens.sprays_per_drink is None


def test_a_saving_of_cents_still_pays_back() -> None:
    assert _ask(house=House(exactly(10), outlay=Decimal(40))).payback_weeks.likely == 50


def test_level_costs_save_nothing() -> None:
    fresh, _, _ = _exact_bar()
    result = _ask(fresh=replace(fresh, fruit_price=exactly(Decimal("0.16"))))
    assert result.times_cheaper.likely == 1
    assert result.payback_weeks.likely is None
    assert result.break_evens.drinks_until_paid is None


def test_no_outlay_is_paid_back_at_once() -> None:
    assert _ask(house=House(exactly(100))).payback_weeks.latest == 0


money = st.integers(1, 200).map(lambda cents: Fraction(cents, 100))
shares = st.integers(0, 60).map(lambda percent: Fraction(percent, 100))


@st.composite
def _estimates(draw: st.DrawFn, values: st.SearchStrategy[Fraction]) -> Estimate:
    low, likely, high = sorted([draw(values), draw(values), draw(values)])
    return Estimate(low, likely, high)


@st.composite
def _bars(draw: st.DrawFn) -> tuple[Fresh, Spray, House]:
    counts = st.integers(1, 8).map(Fraction)
    fresh = Fresh(
        draw(_estimates(money)),
        draw(_estimates(counts)),
        draw(_estimates(shares)),
        draw(_estimates(money)),
        draw(_estimates(shares)),
    )
    spray = Spray(
        ingredients_cost=draw(_estimates(money)),
        batch_minutes=draw(_estimates(money)),
        bottle_cost=draw(_estimates(money)),
        label_cost=draw(_estimates(money)),
        loss_share=draw(_estimates(shares)),
        ml_per_spray=draw(_estimates(money)),
        sprays_per_drink=draw(_estimates(counts)),
        batch_ml=Decimal(draw(st.integers(50, 2000))),
        bottle_ml=Decimal(draw(st.integers(10, 100))),
        shelf_weeks=draw(st.none() | st.integers(1, 60).map(Decimal)),
    )
    drinks = st.integers(1, 500).map(Fraction)
    house = House(draw(_estimates(drinks)), outlay=Decimal(draw(st.integers(0, 500))))
    return fresh, spray, house


Side = TypeVar("Side", Fresh, Spray, House)


def _at(side: Side, places: Iterator[Fraction]) -> Side:
    """Return the side with each estimate fixed in turn, 0 for its low and 1 for its high end."""
    fixed = {}
    for name in INPUT_NAMES:
        estimate = getattr(side, name, None)
        if isinstance(estimate, Estimate):
            fixed[name] = exactly(estimate.low + next(places) * (estimate.high - estimate.low))
    return replace(side, **fixed)  # type: ignore[arg-type]


def _all_answers(result: FreshAgainstSpray) -> list[Answer]:
    sides = (result.fresh, result.spray, result.saving)
    return [answer for costs in sides for answer in (costs.per_drink, costs.per_week, costs.per_year)] + [
        result.times_cheaper,
        result.minutes,
    ]


@examples(15)
@given(_bars(), st.lists(st.integers(0, 4).map(lambda n: Fraction(n, 4)), min_size=13, max_size=13))
def test_the_whole_range_holds_every_bar_inside_it(
    bar: tuple[Fresh, Spray, House], places: list[Fraction]
) -> None:
    fresh, spray, house = bar
    steps = iter(places)
    outer = _all_answers(compare(fresh, spray, house, count=100))
    inner = _all_answers(compare(_at(fresh, steps), _at(spray, steps), _at(house, steps), count=100))
    for wide, narrow in zip(outer, inner, strict=True):
        slack = TINY * max(Decimal(1), abs(narrow.likely))
        assert wide.whole.low - slack <= narrow.likely <= wide.whole.high + slack


@examples(10)
@given(_bars())
def test_likely_and_usual_lie_in_the_whole(bar: tuple[Fresh, Spray, House]) -> None:
    result = compare(*bar, count=100)
    for answer in _all_answers(result):
        assert answer.whole.low <= answer.likely <= answer.whole.high
        slack = 1e-9 * max(1.0, abs(float(answer.whole.high)), abs(float(answer.whole.low)))
        assert float(answer.whole.low) - slack <= answer.usual.low
        assert answer.usual.high <= float(answer.whole.high) + slack


@examples(15)
@given(_bars())
def test_at_a_break_even_both_cost_the_same(bar: tuple[Fresh, Spray, House]) -> None:
    low = repeat(Fraction(0))
    fresh, spray, house = _at(bar[0], low), _at(bar[1], low), _at(bar[2], low)
    level = compare(fresh, spray, house, count=100).break_evens
    cases = [(replace(fresh, fruit_price=exactly(level.fruit_price)), spray, house)]
    if level.sprays_per_drink is not None:
        cases.append((fresh, replace(spray, sprays_per_drink=exactly(level.sprays_per_drink)), house))
    if level.drinks_per_week is not None:
        cases.append((fresh, spray, replace(house, drinks_per_week=exactly(level.drinks_per_week))))
    for case in cases:
        result = compare(*case, count=100)
        assert result.times_cheaper.likely == pytest.approx(Decimal(1), abs=Decimal("1e-20"))


def test_the_widest_swing_comes_first() -> None:
    fresh, spray, house = _exact_bar()
    wide = replace(fresh, fruit_price=Estimate.between(Decimal("0.2"), Decimal("0.9"), Decimal("0.48")))
    some = replace(
        spray,
        sprays_per_drink=Estimate.between(2, 3, 2),
        loss_share=Estimate.between(Decimal(0), Decimal("0.1"), Decimal(0)),
    )
    result = compare(wide, some, house, count=100)
    assert result.matter_most == ("fruit_price", "sprays_per_drink")
    assert set(result.matter_most) <= set(INPUT_NAMES)
    price = result.swings[0]
    assert price.at_low == Decimal("0.05") * 100 - 4
    assert price.width == pytest.approx(Decimal("17.5"), abs=TINY)
    assert [swing.name for swing in result.swings] == ["fruit_price", "sprays_per_drink", "loss_share"]
    # one more spray: 4 cents become 6
    assert result.swings[1].width == 2


def test_the_same_seed_gives_the_same_ranges() -> None:
    fresh, spray, house = _exact_bar()
    wide = replace(fresh, fruit_price=Estimate.between(Decimal("0.2"), Decimal("0.9")))
    first, again = (compare(wide, spray, house, seed=7) for _ in range(2))
    other = compare(wide, spray, house, seed=8)
    assert first == again
    assert first.saving.per_week.usual != other.saving.per_week.usual
    assert first.saving.per_week.whole == other.saving.per_week.whole


FRESH, SPRAY, HOUSE = _exact_bar()


@pytest.mark.parametrize(
    ("fresh", "spray", "house"),
    [
        (replace(FRESH, fruit_price=exactly(-1)), SPRAY, HOUSE),
        (replace(FRESH, garnishes_per_fruit=exactly(0)), SPRAY, HOUSE),
        (replace(FRESH, waste_share=exactly(1)), SPRAY, HOUSE),
        (FRESH, replace(SPRAY, loss_share=exactly(1)), HOUSE),
        (FRESH, replace(SPRAY, ml_per_spray=exactly(0)), HOUSE),
        (FRESH, replace(SPRAY, batch_ml=Decimal(0)), HOUSE),
        (FRESH, replace(SPRAY, shelf_weeks=Decimal(0)), HOUSE),
        (FRESH, replace(SPRAY, ingredients_cost=exactly(0)), HOUSE),
        (FRESH, SPRAY, replace(HOUSE, drinks_per_week=exactly(0))),
        (FRESH, SPRAY, replace(HOUSE, outlay=Decimal(-1))),
    ],
)
def test_impossible_inputs_are_refused(fresh: Fresh, spray: Spray, house: House) -> None:
    with pytest.raises(OutOfRangeError):
        compare(fresh, spray, house)
