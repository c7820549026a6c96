from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.errors import OutOfRangeError
from bot.trade.liquids import ethanol

_FRACTIONS = st.floats(min_value=0, max_value=1)
_STRENGTHS = st.floats(min_value=0, max_value=100)
_TEMPERATURES = st.floats(min_value=-20, max_value=40)


@given(_FRACTIONS, _FRACTIONS, _TEMPERATURES)
def test_the_more_ethanol_the_lighter(one: float, other: float, celsius: float) -> None:
    low, high = sorted((one, other))
    if high - low > 1e-9:
        assert ethanol.density_kg_per_m3(low, celsius) > ethanol.density_kg_per_m3(high, celsius)


@given(_FRACTIONS, _FRACTIONS)
def test_the_more_ethanol_the_stronger(one: float, other: float) -> None:
    low, high = sorted((one, other))
    if high - low > 1e-9:
        assert ethanol.strength_percent(low) < ethanol.strength_percent(high)


@given(_STRENGTHS)
def test_strength_to_mass_fraction_and_back(percent: float) -> None:
    assert ethanol.strength_percent(ethanol.mass_fraction(percent)) == pytest.approx(percent, abs=1e-9)


@given(_FRACTIONS)
def test_mass_fraction_to_strength_and_back(fraction: float) -> None:
    percent = min(100.0, ethanol.strength_percent(fraction))
    assert ethanol.mass_fraction(percent) == pytest.approx(fraction, abs=1e-11)


@given(_STRENGTHS, _TEMPERATURES)
def test_percent_at_another_temperature_and_back(percent: float, celsius: float) -> None:
    fraction = ethanol.mass_fraction_from_percent_at(percent, celsius)
    assert ethanol.percent_by_volume_at(fraction, celsius) == pytest.approx(percent, abs=1e-9)


@given(_FRACTIONS, _TEMPERATURES)
def test_density_to_mass_fraction_and_back(fraction: float, celsius: float) -> None:
    density = ethanol.density_kg_per_m3(fraction, celsius)
    back = ethanol.mass_fraction_from_density(density, celsius)
    assert ethanol.density_kg_per_m3(back, celsius) == pytest.approx(density, abs=2e-7)


@given(st.floats(min_value=30, max_value=100), _TEMPERATURES, _TEMPERATURES)
def test_spirits_shrink_when_cooled(percent: float, one: float, other: float) -> None:
    cold, warm = sorted((one, other))
    if warm - cold > 1e-6:
        assert ethanol.spirit_density_g_per_ml(percent, cold) > ethanol.spirit_density_g_per_ml(percent, warm)


def test_the_ends_are_exact() -> None:
    assert ethanol.mass_fraction(0.0) == 0.0
    assert ethanol.mass_fraction(100.0) == 1.0
    assert ethanol.strength_percent(1.0) == 100.0
    assert ethanol.water_density_g_per_ml() == 0.9982012300
    assert ethanol.ethanol_density_g_per_ml() == pytest.approx(0.789239, abs=1e-6)


@pytest.mark.parametrize("bad", [-0.001, 1.001, math.nan, math.inf, -math.inf])
def test_mass_fractions_outside_are_refused(bad: float) -> None:
    for rule in (ethanol.density_kg_per_m3, ethanol.strength_percent):
        with pytest.raises(OutOfRangeError) as caught:
            rule(bad)
        assert (caught.value.low, caught.value.high) == (0.0, 1.0)


@pytest.mark.parametrize("bad", [-0.001, 100.001, math.nan, math.inf])
def test_strengths_outside_are_refused(bad: float) -> None:
    with pytest.raises(OutOfRangeError) as caught:
        ethanol.mass_fraction(bad)
    assert caught.value.unit == "% vol"


@pytest.mark.parametrize("bad", [-20.01, 40.01, math.nan])
def test_temperatures_outside_are_refused(bad: float) -> None:
    with pytest.raises(OutOfRangeError) as caught:
        ethanol.density_kg_per_m3(0.5, bad)
    assert (caught.value.low, caught.value.high, caught.value.unit) == (-20.0, 40.0, "°C")


@pytest.mark.parametrize("bad", [700.0, 1100.0, math.nan])
def test_densities_that_no_mixture_has_are_refused(bad: float) -> None:
    with pytest.raises(OutOfRangeError) as caught:
        ethanol.mass_fraction_from_density(bad)
    assert caught.value.quantity == "density"
