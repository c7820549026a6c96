from __future__ import annotations

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from bot.trade.errors import OutOfRangeError
from bot.trade.numbers.ranges import Range
from bot.trade.safety.jurisdiction import Jurisdiction
from bot.trade.safety.limits import LIMITS, Limit, LimitUnit, Part, find_limit, limits_for
from bot.trade.spray.dose import LimitState, Mix, Serving, dose, judge, largest_spray_ml, serving, state_of

EU = find_limit("eu-e1520-beverages")
US = find_limit("us-184.1666-alcoholic")
ADI = find_limit("adi-propylene-glycol")
MIX = Mix(0.12, 0.28, 0.55, 0.882)

_glycol_share = st.floats(0.01, 0.6)
_ml = st.floats(0.02, 0.5)
_drink = st.floats(30, 400)
_sprays = st.integers(1, 6)


def _mix(glycol_share: float) -> Mix:
    return Mix(0.05, glycol_share, 0.3, 0.9)


@given(_glycol_share, _sprays, _ml, _drink, st.integers(1, 8), st.integers(2, 5))
def test_dose_is_linear_in_sprays(
    share: float, sprays: int, ml: float, drink: float, drinks: int, times: int
) -> None:
    mix = _mix(share)
    once = dose(mix, serving(float(sprays), ml, drink, drinks))
    more = dose(mix, serving(float(sprays * times), ml, drink, drinks))
    for part in Part:
        assert more[part].mg_per_drink.high == pytest.approx(times * once[part].mg_per_drink.high)
        assert more[part].ml_per_evening.high == pytest.approx(times * once[part].ml_per_evening.high)


@given(_glycol_share, _sprays, _ml, _drink)
def test_mass_is_kept(share: float, sprays: int, ml: float, drink: float) -> None:
    served = serving(float(sprays), ml, drink, density_g_per_ml=1.04)
    mix = _mix(share)
    part = dose(mix, served)[Part.GLYCOL]
    spray = served.spray_ml.high
    assert part.mg_per_litre.high * (drink + spray) / 1000 == pytest.approx(part.mg_per_drink.high)
    kilograms = (drink * 1.04 + spray * mix.density_g_per_ml) / 1000
    assert part.mg_per_kg.high * kilograms == pytest.approx(part.mg_per_drink.high)


@given(_glycol_share, st.floats(0.5, 20), _drink)
def test_the_same_mix_beside_counts_as_if_it_were_sprayed(share: float, ml: float, drink: float) -> None:
    mix = _mix(share)
    beside, sprayed = serving(1.0, ml, drink, others=[(mix, ml)]), serving(2.0, ml, drink)
    ours, whole = dose(mix, beside)[Part.GLYCOL], dose(mix, sprayed)[Part.GLYCOL]
    assert ours.mg_per_evening.high == pytest.approx(whole.mg_per_evening.high)
    assert ours.mg_per_litre.high == pytest.approx(whole.mg_per_litre.high)
    assert ours.mg_per_kg.high == pytest.approx(whole.mg_per_kg.high)
    most, alone = largest_spray_ml(mix, beside, EU), largest_spray_ml(mix, sprayed, EU)
    assert (most is None) == (alone is None)
    if most is not None and alone is not None:
        assert most == pytest.approx(max(0.0, alone - ml), abs=1e-6)


@given(_glycol_share, _ml, _drink)
def test_a_larger_drink_thins_and_more_spray_thickens(share: float, ml: float, drink: float) -> None:
    def strength(sprays: float, volume: float) -> float:
        return dose(_mix(share), serving(sprays, ml, volume))[Part.GLYCOL].mg_per_litre.high

    assert strength(2.0, drink) > strength(2.0, drink * 1.1)
    assert strength(3.0, drink) > strength(2.0, drink)


def test_ranges_run_from_the_least_to_the_most() -> None:
    served = Serving(Range(2.0, 3.0), Range(0.07, 0.1), Range(75.0, 90.0), 3)
    glycol = dose(MIX, served)[Part.GLYCOL]
    assert glycol.ml_per_drink.low == pytest.approx(0.14 * 0.28)
    assert glycol.ml_per_drink.high == pytest.approx(0.3 * 0.28)
    assert glycol.mg_per_evening.high == pytest.approx(3 * 0.3 * 0.28 * 1036.1)
    assert glycol.mg_per_litre.low == pytest.approx(0.14 * 0.28 * 1036.1 / 0.09014)
    assert glycol.mg_per_litre.high == pytest.approx(0.3 * 0.28 * 1036.1 / 0.0753)


def test_ethanol_is_weighed_as_pure_ethanol() -> None:
    assert MIX.mg_per_ml(Part.ETHANOL) == pytest.approx(0.55 * 789.24, rel=1e-4)


def _after(mix: Mix, served: Serving, limit: Limit, body_weight_kg: float = 70.0) -> LimitState:
    return judge(mix, served, [limit], body_weight_kg)[0].state


@pytest.mark.parametrize("limit", LIMITS, ids=lambda limit: limit.id)
@given(_glycol_share, _sprays, _ml, _drink, st.integers(1, 40))
def test_the_largest_spray_is_at_the_limit_and_no_more(
    limit: Limit, share: float, sprays: int, ml: float, drink: float, drinks: int
) -> None:
    mix, served = _mix(share), serving(float(sprays), ml, drink, drinks)
    mend = judge(mix, served, [limit])[0].mend
    assume(mend.largest_spray_ml is not None)
    assert mend.largest_spray_ml is not None
    at = judge(mix, serving(1.0, mend.largest_spray_ml, drink, drinks), [limit])[0]
    assert at.amount.high == pytest.approx(limit.value)
    assert at.state is LimitState.NEAR
    above = serving(1.0, mend.largest_spray_ml * 1.001, drink, drinks)
    assert _after(mix, above, limit) is LimitState.OVER


@pytest.mark.parametrize("limit", LIMITS, ids=lambda limit: limit.id)
@given(_glycol_share, _sprays, _ml, _drink, st.integers(1, 40))
def test_each_mend_alone_brings_it_within(
    limit: Limit, share: float, sprays: int, ml: float, drink: float, drinks: int
) -> None:
    mix, served = _mix(share), serving(float(sprays), ml, drink, drinks)
    verdict = judge(mix, served, [limit])[0]
    mend = verdict.mend
    if mend.most_sprays is not None:
        assert _after(mix, serving(float(mend.most_sprays), ml, drink, drinks), limit) is not LimitState.OVER
        beyond = serving(float(mend.most_sprays + 1), ml, drink, drinks)
        assert _after(mix, beyond, limit) is LimitState.OVER
    if mend.smallest_drink_ml:
        longer = serving(float(sprays), ml, mend.smallest_drink_ml, drinks)
        assert _after(mix, longer, limit) is not LimitState.OVER
        assert (mend.smallest_drink_ml > drink) == (verdict.state is LimitState.OVER)
    if mend.largest_share is not None and mend.largest_share <= 0.6:
        thinner = _mix(mend.largest_share)
        assert _after(thinner, served, limit) is not LimitState.OVER
    if mend.most_drinks:
        assert _after(mix, serving(float(sprays), ml, drink, mend.most_drinks), limit) is not LimitState.OVER
        fuller = serving(float(sprays), ml, drink, mend.most_drinks + 1)
        assert _after(mix, fuller, limit) is LimitState.OVER


def test_a_mix_that_cannot_pass_a_limit_has_no_largest_spray() -> None:
    thin = Mix(0.1, 0.0009, 0.6, 0.85)
    assert largest_spray_ml(thin, serving(2.0, 0.1, 75.0), EU) is None
    none = Mix(0.1, 0.0, 0.6, 0.85)
    verdict = judge(none, serving(2.0, 0.1, 75.0), [EU, ADI])
    assert [v.state for v in verdict] == [LimitState.UNDER, LimitState.UNDER]
    assert verdict[1].mend.largest_spray_ml is None
    assert verdict[1].mend.most_drinks is None


def test_no_spray_carries_nothing_and_needs_no_mend() -> None:
    verdict = judge(MIX, serving(0.0, 0.1, 75.0), [EU])[0]
    assert verdict.amount == Range(0.0, 0.0)
    assert verdict.mend.largest_share is None
    assert verdict.mend.smallest_drink_ml is None


def test_the_state_turns_on_how_much_is_sprayed() -> None:
    verdict = judge(Mix(0.1, 0.3, 0.5, 0.88), serving(Range(2.0, 3.0), Range(1 / 15, 0.1), 75.0), [EU])[0]
    assert (verdict.state_low, verdict.state) == (LimitState.UNDER, LimitState.OVER)


@pytest.mark.parametrize(
    ("amount", "state"),
    [(79.9, LimitState.UNDER), (80.0, LimitState.NEAR), (100.0, LimitState.NEAR), (100.1, LimitState.OVER)],
)
def test_near_begins_at_four_fifths(amount: float, state: LimitState) -> None:
    assert state_of(amount, 100.0) is state


def test_the_american_limit_is_fifty_times_looser() -> None:
    mix, served = Mix(0.1, 0.5, 0.3, 0.9), serving(3.0, 0.14, 60.0)
    places = (Jurisdiction.EU, Jurisdiction.US)
    states = [judge(mix, served, limits_for(place))[0].state for place in places]
    assert states == [LimitState.OVER, LimitState.UNDER]
    assert US.value / EU.value == 50
    assert US.unit is LimitUnit.MG_PER_KG


def test_daily_intake_goes_by_body_weight() -> None:
    served = serving(3.0, 0.5, 75.0, drinks=5)
    heavy, light = (judge(MIX, served, [ADI], kg)[0].amount.high for kg in (100.0, 50.0))
    assert light == pytest.approx(2 * heavy)


@pytest.mark.parametrize("shares", [(-0.1, 0.2, 0.5), (0.1, 1.2, 0.0), (0.5, 0.5, 0.1), (math.nan, 0.2, 0.2)])
def test_refuses_shares_that_cannot_be(shares: tuple[float, float, float]) -> None:
    with pytest.raises(OutOfRangeError):
        Mix(*shares, 0.88)


def test_refuses_servings_and_weights_that_cannot_be() -> None:
    impossible = ((-1.0, 0.1, 75.0, 1), (2.0, -0.1, 75.0, 1), (2.0, 0.1, 0.0, 1), (2.0, 0.1, 75.0, 0))
    for sprays, ml, drink, drinks in impossible:
        with pytest.raises(OutOfRangeError):
            serving(sprays, ml, drink, drinks)
    with pytest.raises(OutOfRangeError):
        serving(2.0, 0.1, 75.0, density_g_per_ml=0.0)
    with pytest.raises(OutOfRangeError):
        Mix(0.1, 0.2, 0.3, 0.0)
    with pytest.raises(OutOfRangeError):
        judge(MIX, serving(2.0, 0.1, 75.0), [ADI], body_weight_kg=0.0)
