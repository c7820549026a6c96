"""Tests of acid adjustment between juices, and of the rule of thumb."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.errors import OutOfRangeError
from bot.trade.fruit import acidity as rule
from bot.trade.fruit.acidity import (
    AcidRecipe,
    CitricForm,
    acid_to_add,
    acidity,
    outcome,
    rule_of_thumb,
    usual_citric_share,
)
from bot.trade.fruit.acidity_table import Juice

shares = st.decimals(min_value=0, max_value=1, places=3)
strengths = st.decimals(min_value=1, max_value=80, places=2)
volumes = st.decimals(min_value=1, max_value=20_000, places=1)
TINY = Decimal("1e-18")


@given(volumes, strengths, strengths, shares, st.sampled_from(CitricForm))
def test_the_acid_added_lands_on_the_target(
    volume: Decimal, start: Decimal, goal: Decimal, share: Decimal, form: CitricForm
) -> None:
    source, target = acidity(Juice.ORANGE, start), acidity(Juice.LIME, goal)
    added = acid_to_add(volume, source, target, share, form)
    recipe = AcidRecipe(added.citric_g * 1000 / volume, added.malic_g * 1000 / volume, form)
    ends = outcome(volume, source, target, recipe).ends_at_g_per_l
    assert abs(ends.low - max(start, goal)) < TINY
    assert added.already_there == (start >= goal)


@given(volumes, shares)
def test_the_likely_amount_lies_in_its_range(volume: Decimal, share: Decimal) -> None:
    for source in (Juice.ORANGE, Juice.GRAPEFRUIT, Juice.MANDARIN):
        for target in (Juice.LIME, Juice.LEMON):
            added = acid_to_add(volume, acidity(source), acidity(target), share)
            assert added.citric_range_g.low <= added.citric_g <= added.citric_range_g.high
            assert added.malic_range_g.low <= added.malic_g <= added.malic_range_g.high


def test_the_split_is_by_mass() -> None:
    added = acid_to_add(Decimal(1000), acidity(Juice.ORANGE), acidity(Juice.LIME), Decimal("0.75"))
    assert added.citric_g == pytest.approx(3 * added.malic_g, abs=TINY)


def test_citric_acid_with_water_weighs_more() -> None:
    source, target = acidity(Juice.ORANGE), acidity(Juice.LEMON)
    dry = acid_to_add(Decimal(1000), source, target, Decimal(1))
    wet = acid_to_add(Decimal(1000), source, target, Decimal(1), CitricForm.MONOHYDRATE)
    assert wet.citric_g / dry.citric_g == pytest.approx(Decimal("1.0938"), abs=Decimal("1e-4"))
    assert dry.malic_g == 0


def test_a_sourer_juice_needs_nothing() -> None:
    added = acid_to_add(Decimal(500), acidity(Juice.LEMON), acidity(Juice.LIME), Decimal("0.6"))
    assert added.already_there
    assert added.citric_g == 0
    # yet the mildest lemon found is milder than the likely lime
    assert added.citric_range_g.high > 0


def test_the_rule_of_thumb_overshoots_the_measured_lime() -> None:
    recipe = rule_of_thumb(Juice.ORANGE, Juice.LIME)
    assert recipe is not None
    ends = outcome(Decimal(250), acidity(Juice.ORANGE), acidity(Juice.LIME), recipe)
    assert ends.citric_g == 8
    assert ends.malic_g == 5
    # Orange 7.12 to 20.72 and lime 39.0 to 75 in print, 51.1 added: from both ends.
    assert ends.overshoot.low == pytest.approx(Decimal("-0.224"), abs=Decimal("0.001"))
    assert ends.overshoot.high == pytest.approx(Decimal("0.842"), abs=Decimal("0.001"))
    assert rule_of_thumb(Juice.LIME, Juice.LEMON) is None


def test_an_own_recipe_that_falls_short_says_so() -> None:
    weak = AcidRecipe(Decimal(10), Decimal(5))
    assert outcome(Decimal(100), acidity(Juice.ORANGE), acidity(Juice.LIME), weak).overshoot.high < 0


def test_own_titration_overrides_the_literature() -> None:
    own = acidity(Juice.ORANGE, Decimal(11))
    assert own.likely_g_per_l == 11
    assert own.range_g_per_l.is_exact
    assert own.sources == ()
    assert acidity(Juice.ORANGE).sources != ()


def test_figures_that_do_not_count_are_still_shown() -> None:
    beside = [reading for reading in rule.readings(Juice.LIME) if not reading.counts]
    assert len(beside) == 2
    # One with a source widens the range, a rule of thumb does not.
    assert acidity(Juice.LIME).range_g_per_l.high == 75
    assert acidity(Juice.LIME).likely_g_per_l == Decimal("45.86")


def test_ready_to_drink_juice_says_nothing_of_the_likely_fresh_one() -> None:
    orange = acidity(Juice.ORANGE)
    assert orange.likely_g_per_l == pytest.approx(Decimal("14.91"), abs=Decimal("0.01"))
    assert (orange.range_g_per_l.low, round(orange.range_g_per_l.high, 1)) == (
        Decimal("7.12"),
        Decimal("20.7"),
    )


def test_the_usual_split_depends_on_the_target() -> None:
    assert usual_citric_share(Juice.LIME) == Decimal(32) / Decimal(52)
    assert usual_citric_share(Juice.LEMON) == 1


def test_a_juice_without_readings_must_be_measured(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(rule, "READINGS", ())
    with pytest.raises(rule.UnknownAcidityError) as error:
        acidity(Juice.LIME)
    assert error.value.juice == "lime"
    assert acidity(Juice.LIME, Decimal(46)).likely_g_per_l == 46


def test_impossible_quantities_are_refused() -> None:
    orange, lime = acidity(Juice.ORANGE), acidity(Juice.LIME)
    with pytest.raises(OutOfRangeError):
        acid_to_add(Decimal(0), orange, lime, Decimal("0.5"))
    with pytest.raises(OutOfRangeError):
        acid_to_add(Decimal(100), orange, lime, Decimal("1.1"))
    with pytest.raises(OutOfRangeError):
        outcome(Decimal(100), orange, lime, AcidRecipe(Decimal(-1), Decimal(0)))
    with pytest.raises(OutOfRangeError):
        outcome(Decimal(-5), orange, lime, AcidRecipe(Decimal(1), Decimal(0)))
    with pytest.raises(OutOfRangeError):
        acidity(Juice.LIME, Decimal(500))
