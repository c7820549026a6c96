from __future__ import annotations

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from bot.trade.errors import OutOfRangeError
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.liquids import ethanol, strength
from bot.trade.liquids.infusion import infused_percent
from bot.trade.liquids.spirit_substitution import swap_spirit
from bot.trade.liquids.strength import Component, Portion, StrengthOrderError

_VOLUMES = st.floats(min_value=0.01, max_value=1e5)
_STRENGTHS = st.floats(min_value=0, max_value=100)
_TEMPERATURES = st.floats(min_value=-10, max_value=40)
_PORTIONS = st.lists(st.builds(Portion, _VOLUMES, _STRENGTHS, _TEMPERATURES), min_size=1, max_size=5)


@given(_PORTIONS)
def test_mixing_keeps_mass_and_ethanol(portions: list[Portion]) -> None:
    mixed = strength.mix(portions)
    assert mixed.mass_g == pytest.approx(sum(p.mass_g for p in portions))
    whole = Portion(mixed.volume_ml, mixed.strength_percent)
    assert whole.mass_g == pytest.approx(mixed.mass_g, rel=1e-9)
    assert whole.ethanol_g == pytest.approx(
        sum(p.ethanol_g for p in portions), rel=1e-9, abs=1e-11 * mixed.mass_g
    )


@given(_PORTIONS)
def test_the_mixture_lies_between_its_portions(portions: list[Portion]) -> None:
    mixed = strength.mix(portions)
    strengths = [p.strength_percent for p in portions]
    assert min(strengths) - 1e-9 <= mixed.strength_percent <= max(strengths) + 1e-9


@given(_VOLUMES, _VOLUMES)
def test_ethanol_and_water_shrink_when_mixed(spirit_ml: float, water_ml: float) -> None:
    mixed = strength.mix([Portion(spirit_ml, 100.0), Portion(water_ml, 0.0)])
    assert mixed.contraction_ml > 0
    assert mixed.contraction_ml < 0.0356 * (spirit_ml + water_ml)


def test_the_greatest_contraction_is_near_52_of_ethanol() -> None:
    shrunk = {
        e: strength.mix([Portion(e, 100.0), Portion(100.0 - e, 0.0)]).contraction_ml for e in range(101)
    }
    assert max(shrunk, key=lambda e: shrunk[e]) in {51, 52, 53}
    assert shrunk[52] == pytest.approx(3.546, abs=0.002)


def test_nothing_mixed_is_nothing() -> None:
    assert strength.mix([]).volume_ml == 0.0
    assert strength.mix([Portion(0.0, 40.0)]).strength_percent == 0.0


@given(_VOLUMES, _STRENGTHS, _TEMPERATURES)
def test_volume_at_a_temperature_and_back(volume: float, percent: float, celsius: float) -> None:
    at_20 = strength.volume_at_20(volume, percent, celsius)
    assert strength.volume_at(at_20, percent, celsius) == pytest.approx(volume)


def test_warm_spirit_measures_more_than_it_is() -> None:
    assert strength.volume_at_20(1000.0, 96.0, 28.0) < 1000.0 < strength.volume_at_20(1000.0, 96.0, 5.0)


@given(st.floats(min_value=0, max_value=200))
def test_proof_and_back(proof: float) -> None:
    percent = strength.percent_from_us_proof(proof)
    assert percent == pytest.approx(proof / 2, abs=0.1)
    assert strength.us_proof(min(100.0, percent)) == pytest.approx(proof, abs=1e-7)


@given(_STRENGTHS)
def test_a_hydrometer_at_its_own_temperature_reads_true(percent: float) -> None:
    assert strength.true_strength(percent, 20.0) == pytest.approx(percent, abs=1e-6)


def test_a_hydrometer_reads_high_in_warm_spirit() -> None:
    assert strength.true_strength(70.0, 28.0) < 68.0
    with pytest.raises(OutOfRangeError):
        strength.true_strength(100.0, 5.0)  # heavier than its reading: would have to be above 100 %


@given(_VOLUMES, st.floats(min_value=1, max_value=100), st.floats(min_value=1, max_value=100), _TEMPERATURES)
def test_diluting_agrees_with_mixing(volume: float, one: float, other: float, celsius: float) -> None:
    low, high = sorted((one, other))
    made = strength.dilute(volume, high, low, celsius)
    mixed = strength.mix([Portion(volume, high, celsius), Portion(made.water_ml, 0.0, celsius)])
    assert mixed.strength_percent == pytest.approx(low, abs=1e-7)
    assert mixed.volume_ml == pytest.approx(made.final_ml, rel=1e-8)
    assert mixed.contraction_ml == pytest.approx(made.contraction_ml, abs=1e-6 * max(1.0, made.final_ml))
    assert made.water_g >= 0


def test_one_litre_of_96_to_40_takes_more_water_than_the_naive_sum() -> None:
    made = strength.dilute(1000.0, 96.0, 40.0)
    assert made.water_ml == pytest.approx(1470.5, abs=0.1)
    assert made.final_ml == pytest.approx(2400.0, abs=1e-6)


def test_a_warm_measured_litre_holds_less_ethanol() -> None:
    warm, cool = strength.dilute(1000.0, 96.0, 40.0, 30.0), strength.dilute(1000.0, 96.0, 40.0)
    assert warm.water_g < cool.water_g
    assert warm.final_ml < cool.final_ml
    assert warm.final_ml_at_temperature > warm.final_ml


@given(_VOLUMES, st.floats(min_value=1, max_value=100), st.floats(min_value=1, max_value=100), _TEMPERATURES)
def test_making_up_ends_at_the_total(total: float, one: float, other: float, celsius: float) -> None:
    low, high = sorted((one, other))
    assert strength.make_up(total, high, low, celsius).final_ml == pytest.approx(total, rel=1e-8)


def test_dilution_does_not_go_up_nor_to_nothing() -> None:
    for start, end in ((40.0, 50.0), (40.0, 0.0)):
        with pytest.raises(StrengthOrderError) as caught:
            strength.dilute(100.0, start, end)
        assert (caught.value.from_percent, caught.value.to_percent) == (start, end)
    assert strength.dilute(100.0, 40.0, 40.0).water_g == 0.0


@given(_VOLUMES, st.lists(_STRENGTHS, min_size=3, max_size=3, unique=True))
def test_bringing_up_reaches_the_strength(volume: float, strengths: list[float]) -> None:
    low, middle, high = sorted(strengths)
    assume(high - middle > 0.01)
    assert strength.strengthen(volume, low, high, middle).result.strength_percent == pytest.approx(
        middle, abs=1e-6
    )


def test_bringing_up_needs_a_stronger_spirit() -> None:
    with pytest.raises(StrengthOrderError):
        strength.strengthen(100.0, 40.0, 50.0, 50.0)
    with pytest.raises(StrengthOrderError):
        strength.strengthen(100.0, 40.0, 96.0, 30.0)


@pytest.mark.parametrize("bad", [-1.0, math.nan, math.inf])
def test_volumes_that_are_none_are_refused(bad: float) -> None:
    with pytest.raises(OutOfRangeError):
        strength.dilute(bad, 96.0, 40.0)
    with pytest.raises(OutOfRangeError):
        strength.formula_strength([Component(IngredientKind.WATER, "water", bad)])


_MIST = (
    Component(IngredientKind.CITRUS_OIL, "lemon oil", 8.0),
    Component(IngredientKind.PROPYLENE_GLYCOL, "glycol", 12.0),
    Component(IngredientKind.SPIRIT, "neutral spirit", 80.0, 96.0),
)


def test_a_formula_without_water_does_not_contract() -> None:
    found = strength.formula_strength(_MIST)
    assert found.volume_ml == pytest.approx(100.0)
    assert found.strength_percent == pytest.approx(76.8)
    assert found.contraction_ml == pytest.approx(0.0, abs=1e-9)
    assert found.ideal == ("lemon oil", "glycol")
    assert found.taken_as_spirit == ()


def test_a_formula_with_water_contracts_and_says_what_it_took_for_spirit() -> None:
    found = strength.formula_strength(
        [
            *_MIST,
            Component(IngredientKind.WATER, "water", 40.0),
            Component(IngredientKind.OTHER, "orange liqueur", 10.0, 40.0),
        ]
    )
    assert found.contraction_ml > 1.0
    assert found.volume_ml == pytest.approx(150.0 - found.contraction_ml)
    assert found.ethanol_ml == pytest.approx(76.8 + 4.0)
    assert found.taken_as_spirit == ("orange liqueur",)


def test_an_empty_formula_has_no_strength() -> None:
    assert strength.formula_strength([]).strength_percent == 0.0


@given(_VOLUMES, st.floats(min_value=1, max_value=100), st.floats(min_value=1, max_value=100))
def test_a_swap_keeps_the_ethanol_and_its_water_the_mixture(volume: float, old: float, new: float) -> None:
    swap = swap_spirit(volume, old, new)
    before, after = Portion(volume, old), Portion(swap.to_ml, new)
    assert after.ethanol_g == pytest.approx(before.ethanol_g, rel=1e-8)
    water_g = swap.water_ml * ethanol.water_density_g_per_ml()
    assert after.mass_g + water_g == pytest.approx(before.mass_g, rel=1e-8)
    assert (swap.water_ml > 0) == (new > old) or math.isclose(new, old, rel_tol=1e-6)


def test_water_is_no_spirit_to_swap_to() -> None:
    with pytest.raises(StrengthOrderError):
        swap_spirit(100.0, 40.0, 0.0)


@given(st.floats(10, 5000), st.floats(20, 96), st.floats(0, 1000), st.floats(0, 1))
def test_what_came_out_of_an_infusion_narrows_its_strength_and_no_more(
    spirit_ml: float, percent: float, water_ml: float, came_out: float
) -> None:
    spirit = [Component(IngredientKind.SPIRIT, "spirit", spirit_ml, percent)]
    most = strength.mix([Portion(spirit_ml, percent), Portion(water_ml, 0.0)])
    unknown = infused_percent(spirit, water_ml)
    found = infused_percent(spirit, water_ml, came_out * most.volume_ml)
    assert unknown.low == pytest.approx(found.low) == pytest.approx(most.strength_percent)
    assert found.high <= unknown.high + 1e-9 == pytest.approx(percent)
    with pytest.raises(OutOfRangeError):
        infused_percent(spirit, water_ml, 1.03 * most.volume_ml)
