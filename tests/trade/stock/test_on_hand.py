"""Tests of whole packs, low stock, and producible formulas."""

from __future__ import annotations

import itertools
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.errors import OutOfRangeError
from bot.trade.formulas.measures import Dimension
from bot.trade.formulas.recipe import Line, Recipe
from bot.trade.stock.on_hand import Pack, list_cost, low_stock, shopping_list, what_can_be_made
from tests.work_done import at_most_calls

F = Fraction


def test_packs_are_bought_whole_and_stock_is_used_first() -> None:
    (line,) = shopping_list({"oil": F(130)}, {"oil": F(12)}, {"oil": [Pack(F(50), Decimal("9.50"))]})
    assert line.short == 118
    assert line.packs == ((Pack(F(50), Decimal("9.50")), 3),)
    assert line.cost == Decimal("28.50")
    assert line.left_over == 32


def test_nothing_is_bought_of_what_is_there() -> None:
    assert shopping_list({"oil": F(10)}, {"oil": F(10)}, {}) == ()


def test_an_unknown_pack_or_price_is_said_not_guessed() -> None:
    lines = shopping_list(
        {"oil": F(10), "spirit": F(700), "glycol": F(5)},
        {},
        {"spirit": [Pack(F(700))], "glycol": [Pack(F(1000), Decimal(20))]},
    )
    assert lines[0].packs == ()
    assert lines[0].cost is None
    assert lines[1].packs == ((Pack(F(700)), 1),)
    assert list_cost(lines) == (Decimal(20), ("oil", "spirit"))


def test_a_pack_without_a_price_is_not_taken_for_free() -> None:
    priced = Pack(F(500), Decimal(12))
    (line,) = shopping_list({"oil": F(100)}, {}, {"oil": [Pack(F(100)), priced]})
    assert line.packs == ((priced, 1),)
    assert line.cost == 12


def test_part_of_a_piece_short_is_a_whole_pack() -> None:
    (line,) = shopping_list({"oil": F(1, 2)}, {"oil": F(1, 4)}, {"oil": [Pack(F(1), Decimal(2))]})
    assert line.short == F(1, 4)
    assert line.packs[0][1] == 1


def test_a_small_pack_tops_up_when_that_is_cheaper() -> None:
    large, small = Pack(F(1000), Decimal(20)), Pack(F(100), Decimal(3))
    (line,) = shopping_list({"oil": F(1100)}, {}, {"oil": [small, large]})
    assert line.packs == ((large, 1), (small, 1))
    (line,) = shopping_list({"oil": F(1800)}, {}, {"oil": [small, large]})
    assert line.packs == ((large, 2),)


@given(
    st.integers(1, 60),
    st.lists(st.tuples(st.integers(1, 20), st.integers(1, 30)), min_size=1, max_size=3, unique=True),
)
def test_no_mixture_of_packs_is_cheaper(short: int, offers: list[tuple[int, int]]) -> None:
    packs = [Pack(F(size), Decimal(price)) for size, price in offers]
    (line,) = shopping_list({"oil": F(short)}, {}, {"oil": packs})
    counts = itertools.product(*(range(-(-short // size) + 1) for size, _ in offers))
    cheapest = min(
        sum(price * count for (_, price), count in zip(offers, chosen, strict=True))
        for chosen in counts
        if sum(size * count for (size, _), count in zip(offers, chosen, strict=True)) >= short
    )
    assert line.cost == cheapest
    assert line.left_over == sum(pack.size * count for pack, count in line.packs) - short >= 0


def test_many_equal_offers_do_not_take_forever() -> None:
    packs = [Pack(F(size), Decimal(size)) for size in (7, 11, 13, 17, 19, 23)]
    with at_most_calls(5_000_000):
        (line,) = shopping_list({"oil": F(100_001)}, {}, {"oil": packs})
    assert line.packs != ()
    assert line.left_over < 23


def test_low_stock_names_the_scarcest_first() -> None:
    least = {"oil": F(50), "spirit": F(700), "labels": F(20), "nothing": F(0)}
    assert low_stock({"oil": F(10), "spirit": F(100), "labels": F(20)}, least) == ("spirit", "oil")
    assert low_stock({}, {"oil": F(1)}) == ("oil",)


def _line(name: str, amount: int) -> Line:
    return Line(name, F(amount), Dimension.VOLUME)


def test_what_can_be_made_and_what_stops_it() -> None:
    recipes = {
        "orange mist": Recipe((_line("orange oil", 10), _line("spirit", 60), _line("glycol", 30))),
        "lime mist": Recipe((_line("lime oil", 10), _line("spirit", 90))),
        "syrup": Recipe((_line("sugar", 500), _line("water", 500))),
    }
    made = what_can_be_made(recipes, {"orange oil": F(25), "spirit": F(600), "lime oil": F(0)})
    assert [one.name for one in made] == ["orange mist", "lime mist", "syrup"]
    mist, lime, syrup = made
    assert mist.factor == F(5, 2)
    assert mist.finished_ml == 250
    assert mist.limiting == "orange oil"
    assert mist.not_counted == ("glycol",)
    assert lime.factor == 0
    assert lime.limiting == "lime oil"
    assert syrup.limiting is None
    assert syrup.not_counted == ("sugar", "water")


def test_impossible_amounts_are_refused() -> None:
    with pytest.raises(OutOfRangeError):
        Pack(F(0))
    with pytest.raises(OutOfRangeError):
        Pack(F(1), Decimal(-1))
    with pytest.raises(OutOfRangeError):
        shopping_list({"oil": F(-1)}, {}, {})
    with pytest.raises(OutOfRangeError):
        shopping_list({"oil": F(1)}, {"oil": F(-1)}, {})
