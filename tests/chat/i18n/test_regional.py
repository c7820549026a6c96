"""Tests of words that differ between the countries of one language, and of ounces."""

from __future__ import annotations

from fractions import Fraction

import pytest

from bot.chat.i18n.language import Tongue, _, read_number, regional, speaking
from bot.chat.reply.units import show_ml, show_ounces
from bot.trade.formulas.unit_words import UnitSense, resolve_unit
from tests.house import House, text


@pytest.mark.parametrize(
    ("language", "locale", "said", "heard"),
    [
        ("en", "en_US", "mouldy", "moldy"),
        ("en", "en_GB", "mouldy", "mouldy"),
        ("en", "en_US", "Colours and vapour", "Colours and vapor"),
        ("es", "es_MX", "Zumo de pomelo: el coste del pomelo", "Jugo de toronja: el costo de la toronja"),
        ("es", "es_AR", "zumo de pomelo, costes", "jugo de pomelo, costos"),
        ("es", "es_ES", "zumo de pomelo, coste", "zumo de pomelo, coste"),
    ],
)
def test_words_follow_the_country(language: str, locale: str, said: str, heard: str) -> None:
    with speaking(Tongue(language, locale)):
        assert regional(said) == heard


def test_reasons_of_a_us_bar_are_spelt_as_there_and_read_both_ways(house: House) -> None:
    ana = house.open_bar(city="New York")
    assert "moldy" in text(ana.says("waste 6 limes mouldy"))
    assert "moldy" in text(ana.says("waste 2 lemons moldy"))
    assert "mouldy" not in text(ana.says("week"))


def test_a_mexican_bar_hears_its_own_words_and_reads_the_others(house: House) -> None:
    ana = house.open_bar(city="Mexico City")
    ana.says("language Spanish")
    assert "costo" in text(ana.says("ayuda costo"))
    assert text(ana.says("ácido 280 ml jugo de naranja a lima")) == text(
        ana.says("ácido 280 ml zumo de naranja a lima")
    )
    with speaking(Tongue("es", "es_MX")):
        assert _("grapefruit") == "toronja"


@pytest.mark.parametrize(
    ("ounces", "shown"),
    [
        ("3/4", "3/4"),
        ("3/2", "1\u00a01/2"),
        ("1/8", "1/8"),
        ("17/8", "2.12"),
        ("11/4", "2\u00a03/4"),
        ("16", "16"),
        ("33.81", "33.81"),
        ("0.292", "0.292"),
    ],
)
def test_ounces_are_fractions_where_a_bartender_would_write_one(ounces: str, shown: str) -> None:
    assert show_ounces(Fraction(ounces)) == shown
    assert abs(read_number(shown) - Fraction(ounces)) < Fraction(1, 100)


def test_an_ounce_has_one_word_in_a_bar_that_measures_in_it() -> None:
    assert show_ml(Fraction("44.36"), "us") == "1\u00a01/2 oz"
    assert resolve_unit("US oz", UnitSense()) == "us_fluid_ounce"
    assert resolve_unit("imperial oz", UnitSense()) == "imperial_fluid_ounce"
