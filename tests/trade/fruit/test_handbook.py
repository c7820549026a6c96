"""Tests of the fruit handbook: masses, counts, juice, and the weight of a bar's own yields."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.errors import OutOfRangeError
from bot.trade.fruit.handbook import (
    FRUIT,
    PUBLISHED_WEIGHT_FRUIT,
    Squeezed,
    UnknownFruitError,
    UnknownFruitSizeError,
    YieldBasis,
    expected_juice,
    find_fruit,
    juice_density,
    mass_from_count,
    price_per_fruit,
    published_yield,
)
from bot.trade.fruit.peeled import Keeping, peeled_clock

counts = st.decimals(min_value=0, max_value=10_000, places=2)
fruit_keys = st.sampled_from(sorted(FRUIT))


def test_fruit_weighs_more_than_its_edible_part() -> None:
    orange = find_fruit("orange").size()
    assert orange.edible_g == 131
    assert orange.as_purchased_g.quantize(Decimal("0.01")) == Decimal("179.45")


def test_the_grapefruit_is_weighed_by_the_half_and_answered_whole() -> None:
    assert find_fruit("grapefruit").size("medium").edible_g == 256
    assert mass_from_count("grapefruit", Decimal(2)) == 1024


@given(fruit_keys)
def test_every_fruit_holds_less_juice_than_flesh(key: str) -> None:
    one = published_yield(key)
    for size in FRUIT[key].sizes:
        assert size.edible_g < size.as_purchased_g
    assert one.mean_ml * juice_density(key) < FRUIT[key].size().edible_g
    assert 0 < one.spread_ml < one.mean_ml


def test_a_yield_without_a_published_row_is_marked_as_estimated() -> None:
    assert published_yield("orange").basis is YieldBasis.PUBLISHED
    assert published_yield("orange", "large").basis is YieldBasis.LIKE_FRUIT
    assert published_yield("orange", "medium") == published_yield("orange")
    assert published_yield("mandarin").basis is YieldBasis.LIKE_FRUIT


def test_the_published_lemon_yield_belongs_to_the_larger_lemon() -> None:
    assert published_yield("lemon", "large") == published_yield("lemon")
    assert published_yield("lemon", "medium").mean_ml < published_yield("lemon").mean_ml


def test_larger_fruit_give_juice_in_proportion_to_their_mass() -> None:
    small, large = published_yield("orange", "small"), published_yield("orange", "large")
    ratio = large.mean_ml / small.mean_ml
    assert abs(ratio - Decimal(184) / Decimal(96)) < Decimal("1e-20")


def test_expected_juice_without_measurements_is_the_published_yield() -> None:
    juice = expected_juice("lime", Decimal(10))
    assert juice.basis is YieldBasis.PUBLISHED
    assert juice.own_share == 0
    assert juice.volume_ml == 10 * published_yield("lime").mean_ml
    # 44 g with a standard deviation of 11.031 g
    assert juice.range_ml.high / juice.volume_ml == pytest.approx(Decimal("1.2507"), abs=Decimal("1e-4"))


def test_own_measurements_count_by_the_number_of_fruit() -> None:
    published = published_yield("orange").mean_ml
    # 4 fruit of 70 mL and 8 fruit of 61 mL: twelve measured against twelve published.
    measured = [Squeezed(Decimal(4), Decimal(280)), Squeezed(Decimal(8), Decimal(488))]
    juice = expected_juice("orange", Decimal(1), measured)
    own = Decimal(768) / 12
    assert PUBLISHED_WEIGHT_FRUIT == 12
    assert juice.own_share == Decimal("0.5")
    assert juice.basis is YieldBasis.MIXED
    assert juice.per_fruit_ml == pytest.approx((own + published) / 2, abs=Decimal("1e-20"))


def test_the_spread_is_that_between_measurements() -> None:
    # 5 fruit of 60 mL and 15 of 80 mL: mean 75, weighted variance 75, times 2 for two measurements: 150
    measured = [Squeezed(Decimal(5), Decimal(300)), Squeezed(Decimal(15), Decimal(1200))]
    juice = expected_juice("orange", Decimal(1), measured)
    published = published_yield("orange")
    mean = (20 * Decimal(75) + 12 * published.mean_ml) / 32
    borrowed = published.spread_ml * mean / published.mean_ml
    spread = (20 * Decimal(150).sqrt() + 12 * borrowed) / 32
    assert juice.per_fruit_ml == pytest.approx(mean, abs=Decimal("1e-20"))
    assert juice.range_ml.width / 2 == pytest.approx(spread, abs=Decimal("1e-20"))


def test_many_own_measurements_take_over() -> None:
    measured = [Squeezed(Decimal(40), Decimal(2800)), Squeezed(Decimal(40), Decimal(2880))]
    juice = expected_juice("orange", Decimal(10), measured)
    assert juice.basis is YieldBasis.MEASURED
    assert juice.own_count == 80
    assert abs(juice.per_fruit_ml - 71) < 2
    # two equal measurements mean that this bar's yield varies little
    assert juice.range_ml.width < expected_juice("orange", Decimal(10)).range_ml.width / 2


@given(
    st.lists(
        st.tuples(st.integers(1, 50), st.integers(0, 200)).map(
            lambda pair: Squeezed(Decimal(pair[0]), Decimal(pair[0] * pair[1]))
        ),
        max_size=6,
    ),
    st.integers(0, 500),
)
def test_expected_juice_lies_between_what_it_is_made_of(measured: list[Squeezed], count: int) -> None:
    juice = expected_juice("lemon", Decimal(count), measured)
    yields = [one.volume_ml / one.count for one in measured] + [published_yield("lemon").mean_ml]
    tiny = Decimal("1e-15")
    assert min(yields) - tiny <= juice.per_fruit_ml <= max(yields) + tiny
    assert juice.range_ml.low - tiny <= juice.volume_ml <= juice.range_ml.high + tiny
    assert juice.range_ml.low >= 0


def test_pricing_the_edible_part_alone_would_be_a_quarter_low() -> None:
    right = price_per_fruit("orange", Decimal("2.68"))
    wrong = Decimal("2.68") * find_fruit("orange").size().edible_g / 1000
    assert 1 - Fraction(wrong) / Fraction(right) == pytest.approx(Fraction(27, 100))


def test_unknown_fruit_and_sizes_say_what_is_known() -> None:
    with pytest.raises(UnknownFruitError) as fruit:
        mass_from_count("durian", Decimal(1))
    assert "lime" in fruit.value.known
    with pytest.raises(UnknownFruitSizeError) as size:
        mass_from_count("lime", Decimal(1), "huge")
    assert size.value.known == ("medium",)


@pytest.mark.parametrize(
    "ask",
    [
        lambda: mass_from_count("lime", Decimal(-1)),
        lambda: expected_juice("lime", Decimal(-1)),
        lambda: expected_juice("lime", Decimal(1), [Squeezed(Decimal(0), Decimal(10))]),
        lambda: expected_juice("lime", Decimal(1), [Squeezed(Decimal(1), Decimal(-10))]),
        lambda: price_per_fruit("lime", Decimal(-1)),
        lambda: peeled_clock(hours=Decimal(0)),
        lambda: peeled_clock(hours=Decimal(2), warn_hours=Decimal(3)),
    ],
)
def test_impossible_quantities_are_refused(ask: object) -> None:
    assert callable(ask)
    with pytest.raises(OutOfRangeError):
        ask()


def test_peeled_fruit_lasts_longer_cold_and_wrapped() -> None:
    limits = [peeled_clock(keeping).lost_after_hours for keeping in Keeping]
    assert limits == sorted(limits)
    assert len(set(limits)) == 3
    for keeping in Keeping:
        clock = peeled_clock(keeping)
        assert 0 < clock.remind_after_hours < clock.lost_after_hours


def test_the_bars_own_clock_overrides() -> None:
    clock = peeled_clock(hours=Decimal(36), warn_hours=Decimal(4))
    assert clock.lost_after_hours == 36
    assert clock.remind_after_hours == 32
    assert clock.source is None
    assert peeled_clock().source is not None
