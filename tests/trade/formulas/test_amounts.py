"""Tests that scaling keeps the ratio, meets its target and adds up, with whole bottles and drinks."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.errors import OutOfRangeError
from bot.trade.formulas.amounts import (
    ByBottles,
    ByDrinks,
    ByFactor,
    ByIngredient,
    ByStock,
    ByTotal,
    IngredientDimensionError,
    Line,
    NoVolumeError,
    Recipe,
    Target,
    UnknownIngredientError,
    amounts_by_name,
    drinks_in,
    fill_plan,
    finished_ml,
    ideal_total_ml,
    scale,
)
from bot.trade.formulas.measures import Dimension

VOLUME, MASS, COUNT = Dimension.VOLUME, Dimension.MASS, Dimension.COUNT

positive = st.fractions(min_value=Fraction(1, 1000), max_value=10_000, max_denominator=1000)
shares = st.fractions(min_value=0, max_value=Fraction(9, 10), max_denominator=100)
names = st.sampled_from(["oil", "glycol", "spirit", "water", "sugar", "limes"])
# One measure for each name, so that lines of one name can be added up.
MEASURED = {"oil": VOLUME, "glycol": VOLUME, "spirit": VOLUME, "water": VOLUME, "sugar": MASS, "limes": COUNT}
lines = st.builds(lambda name, amount: Line(name, amount, MEASURED[name]), names, positive)
recipes = st.builds(
    lambda some: Recipe((Line("spirit", Fraction(7), VOLUME), *some)), st.lists(lines, max_size=6)
)

MIST = Recipe(
    (
        Line("lemon oil", Fraction(6), VOLUME),
        Line("propylene glycol", Fraction(9), VOLUME),
        Line("neutral spirit", Fraction(85), VOLUME),
    )
)
SYRUP = Recipe(
    (
        Line("sugar", Fraction(1000), MASS),
        Line("water", Fraction(1000), VOLUME),
        Line("limes", Fraction(4), COUNT),
    ),
    yield_ml=Fraction(1620),
)


def test_by_factor() -> None:
    scaled = scale(MIST, ByFactor(Fraction(5, 2)))
    assert [line.amount for line in scaled.lines] == [15, Fraction(45, 2), Fraction(425, 2)]
    assert scaled.total_ml == scaled.finished_ml == 250
    assert scaled.limiting is None


def test_by_total_meets_the_finished_volume_after_contraction() -> None:
    share = Fraction(97, 100)
    scaled = scale(MIST, ByTotal(Fraction(485)), share)
    assert scaled.factor == 5
    assert scaled.total_ml == 500
    assert scaled.finished_ml == 485


def test_a_known_yield_stands_above_the_sum_of_volumes() -> None:
    scaled = scale(SYRUP, ByTotal(Fraction(810)), Fraction(9, 10))
    assert scaled.factor == Fraction(1, 2)
    assert scaled.finished_ml == 810
    assert scaled.total_ml == 500
    assert [line.amount for line in scaled.lines] == [500, 500, 2]
    assert [line.dimension for line in scaled.lines] == [MASS, VOLUME, COUNT]


def test_by_bottles_makes_up_for_the_loss() -> None:
    scaled = scale(MIST, ByBottles(8, Fraction(50), Fraction(1, 5)))
    assert scaled.finished_ml == 500


def test_by_drinks_is_enough_at_the_high_end() -> None:
    scaled = scale(MIST, ByDrinks(600, Fraction(3), Fraction(1, 10), Fraction(1, 10)))
    assert scaled.finished_ml == 200
    kept = 200 * Fraction(9, 10)
    assert drinks_in(kept, (Fraction(2), Fraction(3)), (Fraction(1, 15), Fraction(1, 10)))[0] == 600


def test_by_ingredient_uses_it_all() -> None:
    scaled = scale(MIST, ByIngredient("lemon oil", Fraction(12)))
    assert scaled.factor == 2
    assert scale(SYRUP, ByIngredient("limes", Fraction(6), COUNT)).factor == Fraction(3, 2)


def test_an_ingredient_in_two_lines_is_one_ingredient() -> None:
    recipe = Recipe((Line("juice", Fraction(10), VOLUME), Line("juice", Fraction(30), VOLUME)))
    assert scale(recipe, ByIngredient("juice", Fraction(80))).factor == 2
    assert scale(recipe, ByStock({"juice": Fraction(20)})).factor == Fraction(1, 2)


def test_by_stock_finds_what_limits() -> None:
    scaled = scale(MIST, ByStock({"lemon oil": Fraction(30), "propylene glycol": Fraction(18)}))
    assert scaled.factor == 2
    assert scaled.limiting == "propylene glycol"
    assert scaled.not_counted == ("neutral spirit",)


def test_an_empty_stock_makes_nothing() -> None:
    scaled = scale(MIST, ByStock({"lemon oil": Fraction(0), "whatever": Fraction(5)}))
    assert scaled.factor == 0
    assert scaled.limiting == "lemon oil"
    assert scaled.total_ml == 0


@pytest.mark.parametrize(
    "target",
    [
        ByFactor(Fraction(0)),
        ByFactor(Fraction(-1)),
        ByTotal(Fraction(0)),
        ByBottles(0, Fraction(50)),
        ByBottles(2, Fraction(0)),
        ByBottles(2, Fraction(50), Fraction(1)),
        ByBottles(2, Fraction(50), Fraction(-1, 10)),
        ByIngredient("lemon oil", Fraction(0)),
        ByDrinks(0, Fraction(3), Fraction(1, 10)),
        ByDrinks(10, Fraction(0), Fraction(1, 10)),
        ByDrinks(10, Fraction(3), Fraction(0)),
        ByStock({"lemon oil": Fraction(-1)}),
    ],
)
def test_targets_out_of_range(target: Target) -> None:
    with pytest.raises(OutOfRangeError):
        scale(MIST, target)


def test_a_recipe_cannot_be_out_of_range() -> None:
    with pytest.raises(OutOfRangeError):
        Line("oil", Fraction(-1), VOLUME)
    with pytest.raises(OutOfRangeError):
        Recipe((), yield_ml=Fraction(0))
    with pytest.raises(OutOfRangeError):
        scale(MIST, ByTotal(Fraction(1)), Fraction(0))


def test_unknown_ingredients_are_named() -> None:
    with pytest.raises(UnknownIngredientError) as caught:
        scale(MIST, ByIngredient("lime oil", Fraction(1)))
    assert caught.value.name == "lime oil"
    assert caught.value.known == ("lemon oil", "propylene glycol", "neutral spirit")
    with pytest.raises(UnknownIngredientError):
        scale(MIST, ByStock({"lime oil": Fraction(1)}))
    with pytest.raises(UnknownIngredientError):
        scale(MIST, ByStock({}))


def test_measures_must_match() -> None:
    with pytest.raises(IngredientDimensionError) as caught:
        scale(SYRUP, ByIngredient("sugar", Fraction(1), VOLUME))
    assert (caught.value.name, caught.value.given, caught.value.wanted) == ("sugar", VOLUME, MASS)
    with pytest.raises(IngredientDimensionError):
        amounts_by_name([Line("salt", Fraction(1), MASS), Line("salt", Fraction(1), VOLUME)])


def test_a_volume_target_needs_a_volume() -> None:
    dry = Recipe((Line("sugar", Fraction(1), MASS),))
    assert finished_ml(dry) is None
    assert scale(dry, ByFactor(Fraction(2))).finished_ml is None
    with pytest.raises(NoVolumeError):
        scale(dry, ByTotal(Fraction(100)))


@given(recipes, positive, positive)
def test_scaling_twice_is_scaling_by_the_product(recipe: Recipe, first: Fraction, second: Fraction) -> None:
    once = scale(recipe, ByFactor(first))
    twice = scale(Recipe(once.lines), ByFactor(second))
    at_once = scale(recipe, ByFactor(first * second))
    assert twice.lines == at_once.lines
    assert twice.total_ml == at_once.total_ml


@given(recipes, positive)
def test_every_ratio_is_kept(recipe: Recipe, factor: Fraction) -> None:
    scaled = scale(recipe, ByFactor(factor))
    for before, after in zip(recipe.lines, scaled.lines, strict=True):
        assert after.amount * recipe.lines[0].amount == before.amount * scaled.lines[0].amount
        assert (after.name, after.dimension) == (before.name, before.dimension)


@given(recipes, positive, st.fractions(min_value=Fraction(1, 2), max_value=1))
def test_totals_add_up_and_meet_the_target(recipe: Recipe, wanted_ml: Fraction, share: Fraction) -> None:
    scaled = scale(recipe, ByTotal(wanted_ml), share)
    assert scaled.total_ml == ideal_total_ml(scaled.lines)
    assert scaled.total_ml * share == scaled.finished_ml == wanted_ml


@given(recipes, st.integers(1, 50), positive, shares)
def test_bottles_are_filled_after_the_loss(
    recipe: Recipe, count: int, size_ml: Fraction, lost: Fraction
) -> None:
    scaled = scale(recipe, ByBottles(count, size_ml, lost))
    assert scaled.finished_ml is not None
    assert fill_plan(scaled.finished_ml * (1 - lost), [size_ml]) == (((size_ml, count),), Fraction(0))


@given(recipes, st.dictionaries(names, positive, min_size=1))
def test_the_stock_is_enough_and_all_of_what_limits_is_used(
    recipe: Recipe, on_hand: dict[str, Fraction]
) -> None:
    on_hand["spirit"] = Fraction(50)
    scaled = scale(recipe, ByStock(on_hand))
    used = amounts_by_name(scaled.lines)
    assert scaled.limiting is not None
    assert used[scaled.limiting].amount == on_hand[scaled.limiting]
    for name, line in used.items():
        assert (name in scaled.not_counted) == (name not in on_hand)
        assert name not in on_hand or line.amount <= on_hand[name]


def test_fill_plan_takes_the_largest_first() -> None:
    plan = fill_plan(Fraction(1310), [Fraction(50), Fraction(500), Fraction(100), Fraction(100)])
    assert plan.full == ((Fraction(500), 2), (Fraction(100), 3))
    assert plan.left_over_ml == 10


@given(st.fractions(min_value=0, max_value=10_000), st.lists(positive, max_size=4))
def test_a_fill_plan_adds_up_and_leaves_less_than_the_smallest(
    total: Fraction, sizes: list[Fraction]
) -> None:
    full, left_over_ml = fill_plan(total, sizes)
    assert sum(size * count for size, count in full) + left_over_ml == total
    assert left_over_ml >= 0
    assert not sizes or left_over_ml < min(sizes)
    assert all(count > 0 for _, count in full)


def test_fill_plan_refuses_what_cannot_be() -> None:
    with pytest.raises(OutOfRangeError):
        fill_plan(Fraction(-1), [Fraction(50)])
    with pytest.raises(OutOfRangeError):
        fill_plan(Fraction(1), [Fraction(0)])


@given(positive, positive, positive, positive, positive)
def test_drinks_are_whole_and_in_order(
    volume: Fraction, sprays: Fraction, more: Fraction, ml: Fraction, wider: Fraction
) -> None:
    low, high = drinks_in(volume, (sprays, sprays + more), (ml, ml + wider))
    assert 0 <= low <= high
    assert low * (sprays + more) * (ml + wider) <= volume < (low + 1) * (sprays + more) * (ml + wider)
    assert high * sprays * ml <= volume < (high + 1) * sprays * ml


@pytest.mark.parametrize(
    ("volume", "sprays", "ml"),
    [(-1, (2, 3), (1, 1)), (1, (0, 3), (1, 1)), (1, (3, 2), (1, 1)), (1, (2, 3), (1, 0))],
)
def test_drinks_need_ranges_above_zero(volume: int, sprays: tuple[int, int], ml: tuple[int, int]) -> None:
    with pytest.raises(OutOfRangeError):
        drinks_in(
            Fraction(volume),
            (Fraction(sprays[0]), Fraction(sprays[1])),
            (Fraction(ml[0]), Fraction(ml[1])),
        )
