"""Tests of dose by conversation: amounts, limits of the jurisdiction, mends, sources; never a clearance."""

from __future__ import annotations

import re

import pytest
from hypothesis import HealthCheck, given
from hypothesis import strategies as st

from tests.chat.features.liquids.mixes import MIST, SYRUP, bar_with, labels, said, tapped
from tests.examples import examples
from tests.house import House

pytestmark = pytest.mark.parametrize("database", ["sqlite"], indirect=True)

TINCTURE = "new formula Lime tincture\nlime oil 5 ml\nneutral spirit 96 % 95 ml\nkind tincture"


def test_a_dose_has_ml_mg_and_concentrations_and_stands_to_each_limit(house: House) -> None:
    ana = bar_with(house, MIST)
    answer = said(ana, "dose grapefruit mist in 90 ml, 3 drinks")
    assert answer.startswith("Grapefruit mist in 90 ml, 3 drinks: under the limits")
    assert "glycol | 32-71 | 95-210" in answer
    assert "ml a drink: oil 0.017-0.038, glycol 0.031-0.069, ethanol 0.083-0.19" in answer
    assert "mg/kg in the drink: oil 160-350, glycol 350-790, ethanol 720-1,600" in answer
    assert (
        "Propylene glycol (E 1520) in a beverage, from all sources: 1 g/L. Here 351-789 mg/L: under."
        in answer
    )
    assert "25 mg per kg of body weight. Here 1.4-3.1 mg/kg at 70 kg: under." in answer
    assert "Caution: Never flame a garnish" in answer


def test_a_short_drink_goes_over_and_is_told_what_brings_it_under(house: House) -> None:
    ana = bar_with(house, MIST)
    answer = said(ana, "dose grapefruit mist 3 sprays in 60 ml")
    assert ": may pass a limit" in answer.splitlines()[0]
    mend = next(line for line in answer.splitlines() if line.startswith("Most that stays within it"))
    assert mend == (
        "Most that stays within it: 0.254 ml a drink (2 sprays); or a drink of 71 ml or at most 19.3 % "
        "glycol in the mix."
    )
    # The suggested changes do bring it under the limit.
    assert "under the limits" in said(ana, "dose grapefruit mist 2 sprays in 60 ml")
    assert "over" not in said(ana, "dose grapefruit mist 3 sprays in 71 ml").splitlines()[0]


def test_near_begins_at_eighty_percent(house: House) -> None:
    ana = bar_with(house, MIST)
    first = said(ana, "dose grapefruit mist 3 sprays in 85 ml").splitlines()[0]
    assert first.endswith("may come near a limit")


def test_every_limit_has_its_source_and_date_one_tap_away(house: House) -> None:
    ana = bar_with(house, MIST)
    ana.says("dose grapefruit mist in 90 ml")
    answer = tapped(ana, "Sources")
    assert answer.startswith("Grapefruit mist: the limits and their sources")
    for words in (
        "Regulation (EC) No 1333/2008, Annex III",
        "(read in a text that quotes it), seen 25 Nov 2026.",
        "EFSA Journal 2018;16(4):5235",
        "A limit on what is in the drink, not a toxic dose",
        "cream liqueurs are excepted",
        "JECFA",
        "Under a limit is no clearance.",
    ):
        assert words in answer, words


@pytest.mark.parametrize(
    ("rules", "line", "limit"),
    [
        ("EU", "dose grapefruit mist in 90 ml", "(E 1520) in a beverage, from all sources: 1 g/L"),
        ("UK", "dose grapefruit mist in 90 ml", "(E 1520) in a beverage, from all sources: 1 g/L"),
        ("US", "dose grapefruit mist in 90 ml", "in an alcoholic beverage, as served: 5 %"),
        ("US", "dose grapefruit mist in 90 ml without alcohol", "in a drink without alcohol, as served: 2 %"),
        ("other", "dose grapefruit mist in 90 ml", "No composition limit is on file for this bar's rules"),
    ],
)
def test_the_limits_are_those_of_the_bars_rules(house: House, rules: str, line: str, limit: str) -> None:
    ana = bar_with(house, MIST, rules=rules)
    answer = said(ana, line)
    assert limit in answer
    others = {"1 g/L", "as served: 5 %", "as served: 2 %"} - {limit[-5:], limit[-14:]}
    assert not [one for one in others if one in answer]


def test_a_lighter_guest_comes_nearer_to_the_daily_intake(house: House) -> None:
    ana = bar_with(house, MIST)
    assert "at 50 kg" in said(ana, "dose grapefruit mist in 90 ml, 3 drinks, 50 kg")
    pounds = said(ana, "dose grapefruit mist in 90 ml, 3 drinks, 154 lb")
    assert "Here 1.4-3.1 mg/kg at 70 kg" in pounds
    assert said(ana, "dose grapefruit mist in 90 ml, 900 kg").startswith("A body weight from 10 to 300 kg")


def test_what_is_measured_in_is_asked_for_where_nothing_is_sprayed(house: House) -> None:
    ana = bar_with(house, TINCTURE)
    one_line = said(ana, "dose lime tincture with 5 ml in 120 ml, 2 drinks")
    assert one_line.startswith("Lime tincture in 120 ml, 2 drinks: no limit on file")
    ana.says("dose lime tincture in 120 ml")
    ana.taps("5 ml")
    assert tapped(ana, "2") == one_line


def test_the_guide_asks_for_drink_and_drinks(house: House) -> None:
    ana = bar_with(house, MIST)
    ana.says("dose grapefruit mist")
    ana.taps("90 ml")
    guided, typed = tapped(ana, "3"), said(ana, "dose grapefruit mist in 90 ml, 3 drinks")
    assert guided.splitlines()[0] == typed.splitlines()[0]
    assert set(guided.splitlines()) == set(typed.splitlines())


def test_a_bar_in_ounces_is_asked_in_ounces(house: House) -> None:
    ana = bar_with(house, MIST, rules="US")
    ana.says("bar units us")
    ana.says("bar ounces us")
    assert "3 oz" in labels(ana.says("dose grapefruit mist"))
    assert said(ana, "dose grapefruit mist in 3 oz").startswith("Grapefruit mist in 3 oz, 1 drink")


def test_nothing_to_dose_is_said_plainly(house: House) -> None:
    ana = bar_with(house, SYRUP)
    answer = said(ana, "dose house syrup with 20 ml in 90 ml")
    assert answer.startswith("House syrup holds no oil, no glycol and no alcohol")


_MORE = {"sprays": st.integers(1, 9), "drink": st.integers(20, 400), "drinks": st.integers(1, 12)}


@examples(8, HealthCheck.function_scoped_fixture)
@given(**_MORE)
def test_no_answer_ever_clears_a_drink(house: House, sprays: int, drink: int, drinks: int) -> None:
    ana = house.person("Ana")
    if ana.says("bar")[0].first_line != "The Copper Gull":
        bar_with(house, MIST)
    line = f"dose grapefruit mist {sprays} sprays in {drink} ml, {drinks} drinks"
    for one in (line, f"{line}, sources"):
        words = said(ana, one)
        assert not re.search(r"\b(?:un)?safe(?:ly|ty)?\b|\blegal\b|\bharmless\b", words, re.IGNORECASE), words


@examples(6, HealthCheck.function_scoped_fixture)
@given(st.integers(1, 8))
def test_the_mass_in_a_drink_is_linear_in_sprays(house: House, sprays: int) -> None:
    ana = house.person("Ana")
    if ana.says("bar")[0].first_line != "The Copper Gull":
        bar_with(house, MIST)
        ana.says("bar spray size 0.1-0.1 ml")
    answer = said(ana, f"dose grapefruit mist {sprays} sprays in 90 ml")
    found = re.search(r"^glycol \| (\d+)$", answer, re.MULTILINE)
    assert found is not None, answer
    # 22 of 96 ml are glycol at 1.0361 g/ml: 23.74 mg in each 0.1 ml, shown with two figures.
    assert float(found[1]) == pytest.approx(23.74 * sprays, rel=0.03)
