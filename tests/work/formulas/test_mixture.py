"""Tests of mixtures: the same whether weighed or poured, without unknown ingredients."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.formulas.kinds import IngredientKind
from bot.trade.formulas.measures import Dimension
from bot.trade.liquids.ethanol import spirit_density_g_per_ml
from bot.work.formulas.mixture import Mix, Poured

_volumes = st.integers(1, 5000).map(lambda tenths: Fraction(tenths, 10))
_strengths = st.integers(1, 1000).map(lambda tenths: Fraction(tenths, 10))


def _spirit(amount: Fraction, percent: Fraction | None, dimension: Dimension = Dimension.VOLUME) -> Poured:
    return Poured("neutral spirit", IngredientKind.SPIRIT, amount, dimension, percent)


def _water(ml: Fraction) -> Poured:
    return Poured("water", IngredientKind.WATER, ml, Dimension.VOLUME)


@given(_volumes, _strengths, _volumes)
def test_a_weighed_spirit_is_the_same_spirit(ml: Fraction, percent: Fraction, water: Fraction) -> None:
    grams = Fraction(float(ml) * spirit_density_g_per_ml(float(percent)))
    poured = Mix((_spirit(ml, percent), _water(water))).strength
    weighed = Mix((_spirit(grams, percent, Dimension.MASS), _water(water))).strength
    assert poured is not None
    assert weighed is not None
    assert weighed.strength_percent == pytest.approx(poured.strength_percent, rel=1e-9)
    assert weighed.volume_ml == pytest.approx(poured.volume_ml, rel=1e-9)


@given(_volumes, _strengths, _volumes)
def test_no_ethanol_is_made_or_lost(ml: Fraction, percent: Fraction, water: Fraction) -> None:
    found = Mix((_spirit(ml, percent), _water(water))).strength
    assert found is not None
    assert found.ethanol_ml == pytest.approx(float(ml * percent) / 100, rel=1e-6)


@given(_volumes, _volumes)
def test_ethanol_and_water_take_less_room_together(ml: Fraction, water: Fraction) -> None:
    found = Mix((_spirit(ml, Fraction(100)), _water(water))).strength
    assert found is not None
    assert found.volume_ml <= float(ml + water)
    assert found.contraction_ml == pytest.approx(float(ml + water) - found.volume_ml, abs=1e-9)


def test_the_bars_own_density_turns_its_grams_into_volume() -> None:
    own = Poured("house oil", IngredientKind.CITRUS_OIL, Fraction(85), Dimension.MASS, None, Fraction(17, 20))
    assert own.volume_ml == pytest.approx(100)
    assert Poured("x", IngredientKind.OTHER, Fraction(5), Dimension.MASS).volume_ml is None
    assert Poured("egg", IngredientKind.OTHER, Fraction(1), Dimension.COUNT).volume_ml is None


def test_what_has_no_volume_is_named_and_what_has_no_strength_stops_the_reckoning() -> None:
    pods = Poured("cardamom pods", IngredientKind.OTHER, Fraction(24), Dimension.MASS)
    known = Mix((_spirit(Fraction(100), Fraction(40)), pods))
    assert known.left_out == ("cardamom pods",)
    assert known.strength is not None
    unknown = Mix((_spirit(Fraction(100), None), pods))
    assert unknown.without_strength == ("neutral spirit",)
    assert unknown.strength is None


@pytest.mark.parametrize(
    ("name", "kind", "oil"),
    [
        ("grapefruit oil", IngredientKind.CITRUS_OIL, True),
        ("peppermint oil", IngredientKind.OTHER, True),
        ("honey", IngredientKind.OTHER, False),
        ("sunflower oil", IngredientKind.CARRIER_OIL, True),
        ("water", IngredientKind.WATER, False),
    ],
)
def test_oils_of_every_kind_are_seen(name: str, kind: IngredientKind, oil: bool) -> None:
    assert Mix((Poured(name, kind, Fraction(1), Dimension.VOLUME),)).has_oil is oil
