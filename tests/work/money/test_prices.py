"""Tests of prices: what is refused, which is in force when, and the bar's tax."""

from __future__ import annotations

from datetime import timedelta
from decimal import Decimal
from fractions import Fraction

import pytest

from bot.trade.formulas.measures import Quantity
from bot.work.context import Context
from bot.work.errors import BadValueError
from bot.work.formulas import ingredients
from bot.work.money import prices
from bot.work.people import bars
from bot.work.stock import counts
from tests.house import House
from tests.work.acting import acting

_EACH = Quantity(Fraction(1), "each")


def _lime(context: Context) -> int:
    view = ingredients.by_name(context, "lime")
    assert view is not None
    return view.id


def _bar(house: House) -> None:
    house.open_bar(said=["price limes 0.20 each"])


def _price(house: House, **settings: str) -> float:
    with acting(house) as context:
        if settings:
            bars.change(context, **settings)
        return float(prices.in_force(context, [_lime(context)])[_lime(context)].per_base)


@pytest.mark.parametrize(
    ("pack", "price"), [("0", "1"), ("-1", "1"), ("1", "-0.01"), ("1", "10000000000.01")]
)
def test_a_price_that_cannot_be_is_refused(house: House, pack: str, price: str) -> None:
    _bar(house)
    with acting(house) as context, pytest.raises(BadValueError):
        prices.set_price(context, _lime(context), Quantity(Fraction(pack), "each"), Decimal(price))
    assert _price(house) == pytest.approx(0.20)


@pytest.mark.parametrize("price", ["0", "10000000000.00"])
def test_a_gift_and_a_fortune_are_prices(house: House, price: str) -> None:
    _bar(house)
    with acting(house) as context:
        assert prices.set_price(context, _lime(context), _EACH, Decimal(price)).price == Decimal(price)


def test_tax_is_added_or_taken_out_as_the_bar_says(house: House) -> None:
    _bar(house)
    assert _price(house, tax="added", tax_percent="25") == pytest.approx(0.25)
    assert _price(house, tax="taken out") == pytest.approx(0.16)
    assert _price(house, tax="") == pytest.approx(0.20)


def test_garnishes_of_a_fruit_stay_with_its_next_price(house: House) -> None:
    _bar(house)
    with acting(house) as context:
        five = (Fraction(4), Fraction(6))
        prices.set_price(context, _lime(context), _EACH, Decimal("0.30"), five)
        assert prices.set_price(context, _lime(context), _EACH, Decimal("0.40")).garnishes == five


def test_the_last_price_up_to_an_instant_is_the_one_in_force(house: House) -> None:
    _bar(house)
    first = house.clock.now()
    house.clock.turn(hours=2)
    house.person("Ana").says("price limes 0.50 each")
    second = house.clock.now()
    with acting(house) as context:
        course = prices.course(context, _lime(context))
        for instant, price in ((first, "0.20"), (second - timedelta(seconds=1), "0.20"), (second, "0.50")):
            found = course.at(instant)
            assert found is not None
            assert found.price == Decimal(price)
            assert prices.in_force(context, [_lime(context)], instant)[_lime(context)].price == Decimal(price)
        assert course.at(first - timedelta(seconds=1)) is None
        assert prices.in_force(context, at=first - timedelta(seconds=1)) == {}
    house.person("Ana").says("undo")
    assert _price(house) == pytest.approx(0.20)


# -- deliveries ---------------------------------------------------------------------------


@pytest.mark.parametrize("packs", [Fraction(0), Fraction(-1), Fraction(100_001)])
def test_a_number_of_packs_that_cannot_be_is_refused(house: House, packs: Fraction) -> None:
    _bar(house)
    with acting(house) as context:
        with pytest.raises(BadValueError):
            counts.buy(context, _lime(context), packs, _EACH)
        counts.buy(context, _lime(context), Fraction(100_000), _EACH)


def test_only_another_pack_price_of_today_becomes_the_price(house: House) -> None:
    _bar(house)
    house.clock.turn(days=1)
    with acting(house) as context:
        yesterday = context.today - timedelta(days=2)
        bought = counts.buy(context, _lime(context), Fraction(40), _EACH, Decimal("0.30"), yesterday)
        assert (float(bought.amount), bought.cost) == (40, Decimal("12.00"))
        assert len(prices.history(context, _lime(context))) == 1
        counts.buy(context, _lime(context), Fraction(10), _EACH, Decimal("0.20"))
        assert len(prices.history(context, _lime(context))) == 1
        counts.buy(context, _lime(context), Fraction(10), _EACH, Decimal("0.30"))
        assert [one.price for one in prices.history(context, _lime(context))] == [
            Decimal("0.20"),
            Decimal("0.30"),
        ]
        assert counts.buy(context, _lime(context), Fraction(10), _EACH).cost is None
