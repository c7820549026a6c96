"""Tests of amounts in grams at the bar's temperature, the range of an oil's standard, and own densities."""

from __future__ import annotations

import re

import pytest

from tests.chat.features.liquids.mixes import MIST, bar_with, said, tapped
from tests.house import House

pytestmark = pytest.mark.parametrize("database", ["sqlite"], indirect=True)


def _grams(answer: str, name: str) -> float:
    found = re.search(rf"^{name} \| ([\d.,]+) g$", answer, re.MULTILINE)
    assert found is not None, answer
    return float(found[1].replace(",", ""))


def test_grams_follow_the_temperature(house: House) -> None:
    ana = bar_with(house, MIST)
    cool = said(ana, "scale grapefruit mist to 400 ml in grams")
    warm = said(ana, "scale grapefruit mist to 400 ml in grams at 27 C")
    assert "In place of ml measured at 20 °C." in cool
    assert "In place of ml measured at 27 °C." in warm
    for name in ("grapefruit oil", "propylene glycol", "neutral spirit", "Total"):
        assert _grams(warm, name) < _grams(cool, name)
    # 258.3 ml of 96 % vol at 20 °C weigh 807.42 g a litre by OIML R 22.
    assert _grams(cool, "neutral spirit") == pytest.approx(258.4 * 0.80742, rel=1e-3)
    ana.says("bar temperature 27 C")
    assert said(ana, "scale grapefruit mist to 400 ml in grams") == warm


def test_an_oils_range_is_shown_only_where_a_scale_would_show_it(house: House) -> None:
    ana = bar_with(house, MIST)
    assert "the range its standard allows" in said(ana, "scale grapefruit mist to 400 ml in grams")
    assert "the range its standard allows" not in said(ana, "scale grapefruit mist x1 in grams")


def test_densities_have_their_sources_one_tap_away(house: House) -> None:
    ana = bar_with(house, MIST)
    ana.says("scale grapefruit mist to 400 ml in grams at 27 C")
    answer = tapped(ana, "Densities")
    assert answer.startswith("Grapefruit mist: g/ml at 27 °C")
    assert "neutral spirit: OIML R 22" in answer
    assert "grapefruit oil: Food Chemicals Codex, Grapefruit Oil" in answer
    assert "(read" in answer


def test_the_bars_own_density_is_used_and_can_be_taken_back(house: House) -> None:
    ana = bar_with(house, MIST)
    before = said(ana, "scale grapefruit mist to 400 ml in grams")
    assert said(ana, "density grapefruit oil 0.85").startswith("grapefruit oil: 0.85 g/ml")
    after = said(ana, "scale grapefruit mist to 400 ml in grams")
    assert _grams(after, "grapefruit oil") == pytest.approx(50 * 0.85, abs=0.06)
    assert "This bar's own: weighed here, 25 Nov 2026." in said(ana, "density grapefruit oil")
    ana.says("undo")
    assert said(ana, "scale grapefruit mist to 400 ml in grams") == before


def test_a_density_outside_the_handbook_is_taken_but_doubted(house: House) -> None:
    ana = bar_with(house, MIST)
    answer = said(ana, "density grapefruit oil 0.95: scale at the pass")
    assert "Source: scale at the pass." in answer
    assert "is it the right bottle" in answer
    assert said(ana, "density grapefruit oil 9").startswith("A density from 0.5 to 3 g/ml")


def test_a_plain_member_does_not_set_a_density(house: House) -> None:
    bar_with(house, MIST)
    caio = house.joins("Caio")
    assert said(caio, "density grapefruit oil 0.85").startswith("Only a manager can do that.")


def test_temperatures_are_understood_and_kept_within_what_a_bar_can_be(house: House) -> None:
    ana = bar_with(house)
    assert said(ana, "bar temperature 80 F").startswith("Temperature: 26.7 °C")
    assert said(ana, "bar temperature 27").startswith("Temperature: 27 °C")
    assert said(ana, "bar temperature 60 C").startswith("A temperature from 0 °C to 40 °C, please.")
    assert said(ana, "bar temperature warm").startswith("Write a temperature such as 27 °C or 80 °F.")
    ana.says("bar units us")
    assert said(ana, "bar temperature 80").startswith("Temperature: 80 °F")
