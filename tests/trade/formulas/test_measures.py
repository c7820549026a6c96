"""Tests of units, their exact sizes, and the words for them."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pint
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from bot.trade.errors import OutOfRangeError
from bot.trade.formulas import measures
from bot.trade.formulas.measures import (
    HOUSE_MEASURES,
    UNITS,
    Dimension,
    HouseMeasureNotSetError,
    HouseMeasures,
    Quantity,
    UnknownUnitError,
    WrongDimensionError,
)

VOLUMES = [unit for unit in UNITS if measures.dimension(unit) is Dimension.VOLUME]
MASSES = [unit for unit in UNITS if measures.dimension(unit) is Dimension.MASS]
numbers = st.fractions(min_value=0, max_value=10**6, max_denominator=1000)


def test_us_fluid_ounce_is_exact() -> None:
    assert measures.to_ml(Quantity(Fraction(1), "us_fluid_ounce")) == Fraction("29.5735295625")


@pytest.mark.parametrize(
    ("many", "small", "one"),
    [
        (3, "us_teaspoon", "us_tablespoon"),
        (6, "us_teaspoon", "us_fluid_ounce"),
        (2, "us_tablespoon", "us_fluid_ounce"),
        (8, "us_fluid_ounce", "us_cup"),
        (2, "us_cup", "us_pint"),
        (2, "us_pint", "us_quart"),
        (4, "us_quart", "us_gallon"),
        (20, "imperial_fluid_ounce", "imperial_pint"),
        (10, "imperial_fluid_ounce", "imperial_cup"),
        (2, "imperial_pint", "imperial_quart"),
        (8, "imperial_pint", "imperial_gallon"),
        (100, "cl", "l"),
        (10, "dl", "l"),
        (3, "metric_teaspoon", "metric_tablespoon"),
    ],
)
def test_measures_make_up_larger_ones(many: int, small: str, one: str) -> None:
    assert measures.to_ml(Quantity(Fraction(many), small)) == measures.to_ml(Quantity(Fraction(1), one))


def test_masses_and_counts() -> None:
    assert measures.to_g(Quantity(Fraction(16), "ounce")) == measures.to_g(Quantity(Fraction(1), "pound"))
    assert measures.to_g(Quantity(Fraction(1000), "mg")) == 1
    assert measures.to_g(Quantity(Fraction(3, 2), "kg")) == 1500
    assert measures.to_count(Quantity(Fraction(5, 2), "dozen")) == 30


@given(numbers, st.sampled_from(VOLUMES))
def test_volume_there_and_back_is_exact(number: Fraction, unit: str) -> None:
    ml = measures.to_ml(Quantity(number, unit))
    assert measures.from_ml(ml, unit) == Quantity(number, unit)


@given(numbers, st.sampled_from(MASSES))
def test_mass_there_and_back_is_exact(number: Fraction, unit: str) -> None:
    assert measures.from_g(measures.to_g(Quantity(number, unit)), unit) == Quantity(number, unit)


@given(st.text(max_size=8))
def test_any_other_text_is_an_unknown_unit(word: str) -> None:
    assume(word not in {*UNITS, *HOUSE_MEASURES})
    with pytest.raises(UnknownUnitError):
        measures.dimension(word)


@pytest.mark.parametrize("accident", ["pinch", "cs", "pc", "mil", "T", "M", "c", "megaml", "kilog", "oz"])
def test_prefix_accidents_of_a_general_registry_are_undefined(accident: str) -> None:
    with pytest.raises(pint.UndefinedUnitError):
        measures.registry().Quantity(Decimal(1), accident)


def test_one_registry_is_shared() -> None:
    assert measures.registry() is measures.registry()


def test_wrong_dimension_carries_what_was_found() -> None:
    with pytest.raises(WrongDimensionError) as caught:
        measures.to_ml(Quantity(Fraction(1), "kg"))
    assert (caught.value.unit, caught.value.found, caught.value.wanted) == (
        "kg",
        Dimension.MASS,
        Dimension.VOLUME,
    )
    with pytest.raises(WrongDimensionError):
        measures.to_g(Quantity(Fraction(1), "dash"))
    with pytest.raises(WrongDimensionError):
        measures.to_count(Quantity(Fraction(1), "ml"))
    with pytest.raises(WrongDimensionError):
        measures.from_ml(Fraction(1), "each")


def test_unknown_unit_suggests_near_words() -> None:
    with pytest.raises(UnknownUnitError) as caught:
        measures.dimension("jiger")
    assert caught.value.nearest[0] == "jigger"


def test_house_measures_take_the_bars_own_size() -> None:
    house = HouseMeasures({"jigger": Decimal(50), "bottle": Decimal(700)})
    assert measures.to_ml(Quantity(Fraction(2), "jigger"), house) == 100
    assert measures.to_ml(Quantity(Fraction(1, 2), "bottle"), house) == 350
    assert not house.is_default("jigger")
    assert house.is_default("dash")
    assert measures.to_ml(Quantity(Fraction(5), "dash"), house) == 4
    assert measures.dimension("dash") is Dimension.VOLUME
    assert measures.from_ml(Fraction(100), "jigger", house) == Quantity(Fraction(2), "jigger")


@pytest.mark.parametrize("name", ["splash", "part", "bottle"])
def test_measures_without_a_common_size_are_asked(name: str) -> None:
    with pytest.raises(HouseMeasureNotSetError) as caught:
        measures.to_ml(Quantity(Fraction(1), name), HouseMeasures())
    assert caught.value.name == name


def test_a_house_measure_needs_the_bars_settings() -> None:
    with pytest.raises(HouseMeasureNotSetError):
        measures.to_ml(Quantity(Fraction(1), "dash"))


@pytest.mark.parametrize("size", [Decimal(0), Decimal(-1), Decimal("NaN"), Decimal("Infinity")])
def test_house_measures_must_hold_something(size: Decimal) -> None:
    with pytest.raises(OutOfRangeError):
        HouseMeasures({"dash": size})


def test_only_house_measures_can_be_set() -> None:
    with pytest.raises(UnknownUnitError):
        HouseMeasures({"ml": Decimal(2)})


def test_every_default_names_where_it_comes_from() -> None:
    for name, default in measures.DEFAULT_HOUSE_MEASURES.items():
        assert name in HOUSE_MEASURES
        assert default.source.title
        assert default.ml > 0


@pytest.mark.parametrize(
    ("name", "ml"),
    [
        ("dash", Fraction(4, 5)),
        ("drop", Fraction(1, 20)),
        ("barspoon", 5),
        ("jigger", Fraction("44.36029434375")),
    ],
)
def test_the_sizes_assumed_where_a_bar_has_set_none(name: str, ml: Fraction) -> None:
    # Common practice: five dashes are 4 mL, twenty drops 1 mL; a jigger is 1.5 US fluid ounces.
    assert measures.to_ml(Quantity(Fraction(1), name), HouseMeasures()) == ml
