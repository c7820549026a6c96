"""Tests of cost consumed, cash outlay, missing prices, and fresh against sprayed."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.errors import OutOfRangeError
from bot.trade.formulas.measures import Dimension
from bot.trade.formulas.recipe import Line
from bot.trade.money.cost import (
    PackPrice,
    Spraying,
    Unpriced,
    Vessel,
    break_even_price_each,
    break_even_sprays,
    cost,
    fresh_per_drink,
    fresh_to_spray,
)
from bot.trade.money.money import as_decimal

VOLUME, MASS, COUNT = Dimension.VOLUME, Dimension.MASS, Dimension.COUNT

LINES = (
    Line("lemon oil", Fraction(12), VOLUME),
    Line("neutral spirit", Fraction(170), VOLUME),
    Line("propylene glycol", Fraction(18), VOLUME),
)
PRICES = {
    "lemon oil": PackPrice(Fraction(10), VOLUME, Decimal("7.90")),
    "neutral spirit": PackPrice(Fraction(1000), VOLUME, Decimal("24.00")),
    "propylene glycol": PackPrice(Fraction(500), VOLUME, Decimal("9.50")),
}
SPRAYING = Spraying((Fraction(2), Fraction(3)), (Fraction(1, 15), Fraction(1, 10)))


def test_consumed_is_a_share_of_the_pack_and_outlay_whole_packs() -> None:
    found = cost(LINES, PRICES)
    assert [line.consumed for line in found.per_line] == [Decimal("9.48"), Decimal("4.08"), Decimal("0.342")]
    assert [line.packs for line in found.per_line] == [2, 1, 1]
    assert found.consumed == found.total == Decimal("13.902")
    assert found.outlay == Decimal("15.80") + Decimal("24.00") + Decimal("9.50")
    assert not found.is_partial
    assert (found.per_ml, found.per_bottle, found.per_spray, found.per_drink) == (None, None, None, None)


def test_shared_out_over_what_is_usable() -> None:
    found = cost(
        LINES,
        PRICES,
        finished_ml=Fraction(200),
        loss_share=Fraction(1, 10),
        labour=Decimal("4.098"),
        bottle=Vessel(Fraction(50), Decimal("1.25")),
        spraying=SPRAYING,
    )
    assert found.usable_ml == 180
    assert found.per_ml == Decimal("0.125")  # (13.902 + 4.098) / 180 + 1.25 / 50
    assert found.per_bottle == Decimal("6.25")
    assert found.total == Decimal("22.5")
    assert found.per_spray == (as_decimal(Fraction(1, 120)), Decimal("0.0125"))
    assert found.per_drink == (as_decimal(Fraction(1, 60)), Decimal("0.0375"))


def test_a_missing_price_is_named_and_never_zero() -> None:
    found = cost(LINES, {"lemon oil": PRICES["lemon oil"]}, finished_ml=Fraction(200))
    assert found.missing == ("neutral spirit", "propylene glycol")
    assert found.is_partial
    assert found.consumed == Decimal("9.48")
    assert found.per_line[1].unpriced is Unpriced.NO_PRICE
    assert (found.per_line[1].consumed, found.per_line[1].packs, found.per_line[1].outlay) == (
        None,
        None,
        None,
    )


def test_without_any_price_there_is_no_cost() -> None:
    found = cost(LINES, {}, finished_ml=Fraction(200), spraying=SPRAYING)
    assert (found.consumed, found.outlay, found.total, found.per_ml, found.per_drink) == (None,) * 5
    assert found.is_partial


def test_a_free_ingredient_costs_nothing_and_is_not_missing() -> None:
    found = cost(LINES[:1], {"lemon oil": PackPrice(Fraction(10), VOLUME, Decimal(0))})
    assert found.consumed == 0
    assert not found.is_partial


def test_density_turns_volume_into_the_mass_that_is_priced() -> None:
    prices = {"lemon oil": PackPrice(Fraction(100), MASS, Decimal("80"))}
    line = Line("lemon oil", Fraction(10), VOLUME)
    found = cost([line], prices, densities_g_per_ml={"lemon oil": Fraction("0.85")})
    assert found.consumed == Decimal("6.8")
    unknown = cost([line], prices)
    assert unknown.missing_density == ("lemon oil",)
    assert unknown.missing == ()
    assert unknown.consumed is None
    assert unknown.is_partial


def test_density_turns_mass_into_the_volume_that_is_priced() -> None:
    prices = {"syrup": PackPrice(Fraction(1000), VOLUME, Decimal("5"))}
    found = cost([Line("syrup", Fraction(650), MASS)], prices, densities_g_per_ml={"syrup": Fraction("1.3")})
    assert found.consumed == Decimal("2.5")


def test_pieces_cannot_be_priced_by_volume() -> None:
    found = cost(
        [Line("lime", Fraction(3), COUNT), Line("lime juice", Fraction(90), VOLUME)],
        {
            "lime": PackPrice(Fraction(1000), VOLUME, Decimal("5")),
            "lime juice": PackPrice(Fraction(1), COUNT, Decimal("0.4")),
        },
        densities_g_per_ml={"lime": Fraction(1), "lime juice": Fraction(1)},
    )
    assert found.other_measure == ("lime", "lime juice")
    assert found.consumed is None


def test_two_lines_of_one_ingredient_share_a_pack() -> None:
    prices = {"sugar": PackPrice(Fraction(1000), MASS, Decimal("2"))}
    found = cost([Line("sugar", Fraction(300), MASS), Line("sugar", Fraction(400), MASS)], prices)
    assert len(found.per_line) == 1
    assert found.per_line[0].packs == 1
    assert found.consumed == Decimal("1.4")
    mixed = cost(
        [Line("sugar", Fraction(300), MASS), Line("sugar", Fraction(100), VOLUME)],
        prices,
        densities_g_per_ml={"sugar": Fraction(2)},
    )
    assert mixed.consumed == 1


def test_out_of_range() -> None:
    with pytest.raises(OutOfRangeError):
        PackPrice(Fraction(0), VOLUME, Decimal(1))
    with pytest.raises(OutOfRangeError):
        PackPrice(Fraction(1), VOLUME, Decimal(-1))
    with pytest.raises(OutOfRangeError):
        PackPrice(Fraction(1), VOLUME, Decimal("NaN"))
    with pytest.raises(OutOfRangeError):
        Vessel(Fraction(0))
    with pytest.raises(OutOfRangeError):
        Spraying((Fraction(3), Fraction(2)), (Fraction(1), Fraction(1)))
    with pytest.raises(OutOfRangeError):
        cost(LINES, PRICES, finished_ml=Fraction(0))
    with pytest.raises(OutOfRangeError):
        cost(LINES, PRICES, finished_ml=Fraction(1), loss_share=Fraction(1))
    with pytest.raises(OutOfRangeError):
        cost(LINES, PRICES, labour=Decimal(-1))
    with pytest.raises(OutOfRangeError):
        cost(
            [Line("oil", Fraction(1), VOLUME)],
            {"oil": PackPrice(Fraction(1), MASS, Decimal(1))},
            densities_g_per_ml={"oil": Fraction(0)},
        )


amounts = st.fractions(min_value=0, max_value=10_000, max_denominator=100)
positive = st.fractions(min_value=Fraction(1, 100), max_value=10_000, max_denominator=100)
coins = st.decimals(min_value=0, max_value=10_000, places=2)
packs = st.builds(PackPrice, positive, st.just(VOLUME), coins)


@given(
    st.lists(st.tuples(st.sampled_from("abcdef"), amounts), max_size=8),
    st.dictionaries(st.sampled_from("abcd"), packs),
)
def test_the_parts_add_up_to_the_total(
    parts: list[tuple[str, Fraction]], prices: dict[str, PackPrice]
) -> None:
    found = cost([Line(name, amount, VOLUME) for name, amount in parts], prices)
    known = [line for line in found.per_line if line.consumed is not None]
    if known:
        assert found.consumed == sum(line.consumed or Decimal(0) for line in known)
        assert found.outlay == sum(line.outlay or Decimal(0) for line in known)
        assert found.consumed is not None
        assert found.outlay is not None
        # Whole packs hold at least the amount used; each cost keeps 12 decimals.
        assert found.consumed <= found.outlay + Decimal("1E-9")
    else:
        assert found.consumed is found.outlay is None
    assert set(found.missing) == {name for name, _ in parts if name not in prices}


@given(amounts, positive, packs, coins)
def test_more_or_dearer_never_costs_less(
    amount: Fraction, more: Fraction, pack: PackPrice, dearer: Decimal
) -> None:
    def consumed(quantity: Fraction, price: Decimal) -> tuple[Decimal, Decimal]:
        found = cost(
            [Line("a", quantity, VOLUME)],
            {"a": PackPrice(pack.pack_amount, VOLUME, price)},
            finished_ml=positive_ml,
        )
        assert found.consumed is not None
        assert found.outlay is not None
        return found.consumed, found.outlay

    positive_ml = Fraction(100)
    base = consumed(amount, pack.price)
    for other in (consumed(amount + more, pack.price), consumed(amount, pack.price + dearer)):
        assert other[0] >= base[0]
        assert other[1] >= base[1]


@given(positive, st.fractions(min_value=0, max_value=Fraction(9, 10), max_denominator=100))
def test_loss_makes_each_drink_dearer(finished_ml: Fraction, lost: Fraction) -> None:
    without = cost(LINES, PRICES, finished_ml=finished_ml, spraying=SPRAYING).per_drink
    with_loss = cost(LINES, PRICES, finished_ml=finished_ml, loss_share=lost, spraying=SPRAYING).per_drink
    assert without is not None
    assert with_loss is not None
    assert without[0] <= without[1]
    assert with_loss[0] >= without[0]
    assert with_loss[1] >= without[1]


def test_fresh_garnish() -> None:
    assert fresh_per_drink(Decimal("0.50"), Fraction(4)) == Decimal("0.125")
    assert fresh_per_drink(Decimal("0.50"), Fraction(4), Fraction(1, 5)) == Decimal("0.15625")
    assert fresh_to_spray(Decimal("0.10"), (Decimal("0.02"), Decimal("0.05"))) == (Fraction(2), Fraction(5))
    assert break_even_sprays(Decimal("0.12"), Decimal("0.015")) == 8


@given(coins, positive, st.fractions(min_value=0, max_value=Fraction(9, 10), max_denominator=10))
def test_at_the_break_even_price_fresh_costs_what_the_spray_does(
    spray: Decimal, garnishes: Fraction, wasted: Fraction
) -> None:
    price = break_even_price_each(spray, garnishes, wasted)
    assert abs(fresh_per_drink(price, garnishes, wasted) - spray) <= Decimal("1E-8")


def test_fresh_garnish_out_of_range() -> None:
    with pytest.raises(OutOfRangeError):
        fresh_per_drink(Decimal(1), Fraction(0))
    with pytest.raises(OutOfRangeError):
        fresh_per_drink(Decimal(-1), Fraction(1))
    with pytest.raises(OutOfRangeError):
        fresh_per_drink(Decimal(1), Fraction(1), Fraction(1))
    with pytest.raises(OutOfRangeError):
        fresh_to_spray(Decimal(1), (Decimal(0), Decimal(1)))
    with pytest.raises(OutOfRangeError):
        fresh_to_spray(Decimal(1), (Decimal(2), Decimal(1)))
    with pytest.raises(OutOfRangeError):
        break_even_sprays(Decimal(1), Decimal(0))
    with pytest.raises(OutOfRangeError):
        break_even_price_each(Decimal(1), Fraction(0))
