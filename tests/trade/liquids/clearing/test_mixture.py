from __future__ import annotations

import math
from typing import Any

import pytest

from bot.trade.errors import OutOfRangeError
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.liquids.clearing.miscibility import FACTS, Outcome, facts_about, limonene_percent
from bot.trade.liquids.clearing.mixture import Mixture, mixture_of
from bot.trade.liquids.clearing.substances import SUBSTANCES
from bot.trade.liquids.strength import Component, Portion, mix
from bot.trade.sources import HowKnown

_K = IngredientKind


def test_moles_weigh_what_the_mixture_weighs() -> None:
    mixture = Mixture(7, 3, 11, 2, 5, 60, 88.0)
    weight = sum(n * s.molar_mass_g for n, s in zip(mixture.moles(), SUBSTANCES, strict=True))
    assert weight == pytest.approx(mixture.modelled_g)
    assert mixture.modelled_ml == 88.0
    assert mixture.ethanol_mass_fraction == pytest.approx(mixture.ethanol_g / weight)


def test_components_are_sorted_into_what_the_model_knows_and_what_not() -> None:
    mixture = mixture_of(
        [
            Component(_K.CITRUS_OIL, "lemon oil", 5.0),
            Component(_K.SPIRIT, "neutral spirit", 50.0, 96.0),
            Component(_K.SPIRIT, "vodka", 20.0, 40.0),
            Component(_K.CARRIER_OIL, "MCT oil", 4.0),
            Component(_K.CARRIER_OIL, "olive oil", 3.0),
            Component(_K.SUGAR, "sugar", 2.0),
            Component(_K.WATER, "water", 1.0),
        ]
    )
    both = mix([Portion(50.0, 96.0), Portion(20.0, 40.0)])
    assert (mixture.oil_ml, mixture.carrier_ml, mixture.water_ml) == (5.0, 4.0, 1.0)
    assert (mixture.spirit_ml, mixture.spirit_percent) == (both.volume_ml, both.strength_percent)
    assert mixture.oil_name == "lemon oil"
    assert mixture.outside == ("olive oil", "sugar")
    assert mixture.outside_ml == 5.0


def test_two_oils_have_no_one_name() -> None:
    mixture = mixture_of([Component(_K.CITRUS_OIL, "lemon", 1.0), Component(_K.CITRUS_OIL, "lime", 2.0)])
    assert (mixture.oil_ml, mixture.oil_name) == (3.0, "")


@pytest.mark.parametrize("bad", [-1.0, math.nan, math.inf])
def test_volumes_that_are_none_are_refused(bad: float) -> None:
    with pytest.raises(OutOfRangeError) as caught:
        Mixture(glycol_ml=bad)
    assert caught.value.quantity == "glycol_ml"


def test_every_fact_has_a_source_that_was_read() -> None:
    assert len({fact.key for fact in FACTS}) == len(FACTS)
    for fact in FACTS:
        assert fact.source.how_known in {HowKnown.READ, HowKnown.READ_SECOND_HAND}
        assert fact.source.seen is not None


@pytest.mark.parametrize(
    ("mixture", "keys"),
    [
        (Mixture(oil_ml=1, spirit_ml=3, spirit_percent=95, oil_name="Lemon oil"), {"lemon-alcohol"}),
        (Mixture(oil_ml=1, spirit_ml=2.9, spirit_percent=95, oil_name="lemon"), set()),
        (Mixture(oil_ml=1, spirit_ml=1, spirit_percent=91, oil_name="lemon"), {"lemon-equal-parts"}),
        (
            Mixture(oil_ml=1, spirit_ml=8, spirit_percent=90, oil_name="bitter orange oil"),
            {"bitter-orange", "limonene-gap"},
        ),
        (Mixture(oil_ml=5, glycol_ml=9), {"glycols-alone"}),
        (Mixture(oil_ml=5, glycerol_ml=9), {"glycols-alone"}),
        (Mixture(oil_ml=5, glycol_ml=9, spirit_ml=1, spirit_percent=96), set()),
        (Mixture(oil_ml=5, carrier_ml=9), {"carrier-oil"}),
        (Mixture(carrier_ml=5, spirit_ml=9, spirit_percent=96), {"carrier-spirit"}),
        (Mixture(carrier_ml=5, water_ml=9), {"carrier-water"}),
        (Mixture(oil_ml=5, spirit_ml=1, spirit_percent=100), {"absolute-alcohol"}),
        (Mixture(oil_ml=1, spirit_ml=3, spirit_percent=95, oil_name="lemon", glycol_ml=1), set()),
    ],
)
def test_facts_speak_of_their_own_mixtures_only(mixture: Mixture, keys: set[str]) -> None:
    assert {fact.key for fact in facts_about(mixture)} == keys


def test_facts_are_for_room_temperature() -> None:
    mixture = Mixture(oil_ml=5, glycol_ml=9)
    assert facts_about(mixture, 20.0)
    assert facts_about(mixture, 4.0) == ()


def test_water_beside_the_spirit_counts_against_its_strength() -> None:
    strong = Mixture(oil_ml=1, spirit_ml=12, spirit_percent=95, oil_name="lemon")
    assert "lemon-alcohol" in {fact.key for fact in facts_about(strong)}
    watered = Mixture(oil_ml=1, spirit_ml=12, spirit_percent=95, water_ml=0.6, oil_name="lemon")
    found = facts_about(watered)
    assert "lemon-alcohol" not in {fact.key for fact in found}
    assert [fact.outcome for fact in found if fact.key == "lemon-alcohol-90"] == [Outcome.HAZE]


def test_how_much_limonene_an_oil_holds() -> None:
    orange, bergamot = limonene_percent("Sweet orange oil"), limonene_percent("bergamot")
    assert orange is not None
    assert bergamot is not None
    assert orange[0].low > bergamot[0].high
    assert limonene_percent("yuzu") is None


@pytest.mark.parametrize(
    ("key", "oil", "volumes", "percent", "volumes_count", "strength_counts"),
    [
        ("absolute-alcohol", "lemon oil", 1.0, 99.5, False, True),
        ("limonene-alcohol", "limonene", 5.0, 94.9, True, True),
        ("lemon-alcohol", "lemon oil", 3.0, 94.9, True, True),
        ("lemon-alcohol-90", "lemon oil", 12.0, 90.0, True, True),
        ("lemon-seven", "lemon oil", 7.0, 88.7, True, True),
        ("lime-five", "lime oil", 5.0, 88.7, True, True),
        ("persian-lime", "persian lime oil", 3.0, 95.0, True, True),
        ("bitter-orange", "bitter orange oil", 8.0, 90.0, True, True),
        ("mandarin", "mandarin oil", 10.0, 90.0, True, True),
        ("orange-two", "sweet orange oil", 2.0, 94.9, True, True),
        ("orange-ten", "sweet orange oil", 10.0, 84.8, True, True),
        ("bergamot-half", "bergamot oil", 0.5, 90.0, True, True),
        ("bergamot-spirit", "bergamot oil", 1.0, 91.1, False, True),
    ],
)
def test_a_fact_holds_from_its_printed_volumes_and_strength_on(
    key: str, oil: str, volumes: float, percent: float, volumes_count: bool, strength_counts: bool
) -> None:
    def covers(of: float, at: float, name: str = oil) -> bool:
        mixture = Mixture(oil_ml=10, spirit_ml=10 * of, spirit_percent=at, oil_name=name)
        return key in {fact.key for fact in facts_about(mixture)}

    assert covers(volumes, percent)
    assert covers(volumes * 2, 100.0)
    assert covers(volumes * 0.99, percent) is not volumes_count
    assert covers(volumes, percent - 0.1) is not strength_counts
    if key not in {"absolute-alcohol", "limonene-alcohol"}:
        assert not covers(volumes, percent, "yuzu oil")


def test_lemon_oil_with_its_own_weight_of_weak_spirit_is_turbid() -> None:
    def turbid(volumes: float, percent: float, name: str = "lemon oil") -> bool:
        mixture = Mixture(oil_ml=10, spirit_ml=10 * volumes, spirit_percent=percent, oil_name=name)
        return "lemon-equal-parts" in {fact.key for fact in facts_about(mixture)}

    assert turbid(1.0, 91.0)
    assert turbid(1.02, 91.2)
    assert turbid(0.25, 80.0)
    assert not turbid(1.05, 91.0)
    assert not turbid(1.0, 91.4)
    assert not turbid(0.24, 91.0)
    assert not turbid(1.0, 91.0, "orange oil")


def test_the_measured_gap_closes_at_seventy_three_percent_of_ethanol() -> None:
    def closed(percent: float) -> bool:
        mixture = Mixture(oil_ml=10, spirit_ml=90, spirit_percent=percent)
        assert mixture.ethanol_mass_fraction < 0.73 or percent > 80
        return "limonene-gap" in {fact.key for fact in facts_about(mixture)}

    below, above = 80.0, 100.0
    for _step in range(30):
        middle = (below + above) / 2
        below, above = (below, middle) if closed(middle) else (middle, above)
    share = Mixture(oil_ml=10, spirit_ml=90, spirit_percent=above).ethanol_mass_fraction
    assert share == pytest.approx(0.73, abs=1e-4)


@pytest.mark.parametrize(("celsius", "known"), [(14.9, 0), (15.0, 1), (30.0, 1), (30.1, 0)])
def test_the_facts_are_for_fifteen_to_thirty_degrees(celsius: float, known: int) -> None:
    assert len(facts_about(Mixture(oil_ml=5, glycol_ml=9), celsius)) == known


@pytest.mark.parametrize(
    ("extra", "trace", "keys"),
    [
        ({"spirit_ml": 60.0, "spirit_percent": 95.0, "oil_name": "lemon"}, "glycol_ml", {"lemon-alcohol"}),
        ({"glycol_ml": 60.0}, "water_ml", {"glycols-alone"}),
        ({"carrier_ml": 60.0}, "water_ml", {"carrier-oil"}),
    ],
)
def test_a_trace_of_something_else_does_not_count(extra: dict[str, Any], trace: str, keys: set[str]) -> None:
    for volume, covered in ((0.3, True), (0.4, False)):  # half a per cent of the whole is a trace
        mixture = Mixture(**{"oil_ml": 10, **extra, trace: volume})
        assert (keys <= {fact.key for fact in facts_about(mixture)}) is covered


@pytest.mark.parametrize(
    ("name", "low", "high"),
    [
        ("limonene", 100, 100), ("bergamot oil", 30, 50), ("tangerine oil", 65, 75),
        ("seville orange oil", 93, 95), ("orange oil", 92, 97), ("lemon oil", 56, 78),
        ("grapefruit oil", 90, 90),
    ],
)  # fmt: skip
def test_the_printed_limonene_content(name: str, low: float, high: float) -> None:
    # Sources as in the table: EMA, a handbook of perfumery, Ph. Eur. 6.2, Leung.
    found = limonene_percent(name)
    assert found is not None
    assert (found[0].low, found[0].high) == (low, high)
