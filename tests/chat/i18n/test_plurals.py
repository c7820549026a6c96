"""Tests of plurals and singulars of English nouns. Source of the forms: common dictionaries, from memory."""

from __future__ import annotations

from fractions import Fraction

import pytest

from bot.chat.i18n.plurals import counted_name, pieces, singular

_FORMS = [
    ("mango", "mangoes"),
    ("tomato", "tomatoes"),
    ("cherry", "cherries"),
    ("cranberry", "cranberries"),
    ("leaf", "leaves"),
    ("bay leaf", "bay leaves"),
    ("lime", "limes"),
    ("Lime", "Limes"),
    ("bunch", "bunches"),
    ("bunch of mint", "bunches of mint"),
    ("slice of lime", "slices of lime"),
    ("grapefruit (pink)", "grapefruits (pink)"),
    ("orange juice", "orange juices"),
    ("kumquat", "kumquats"),
    ("blood orange", "blood oranges"),
    ("tangelo", "tangelos"),
    ("pomelo", "pomelos"),
    ("yuzu", "yuzus"),
    ("kiwi", "kiwis"),
    ("peach", "peaches"),
    ("radish", "radishes"),
    ("lychee", "lychees"),
    ("quince", "quinces"),
    ("passion fruit", "passion fruits"),
    ("citrus", "citruses"),
    ("box", "boxes"),
    ("glass", "glasses"),
    ("cassis", "cassis"),
    ("buddha's hand", "buddha's hands"),
]


@pytest.mark.parametrize(("one", "many"), _FORMS)
def test_english_plurals_both_ways(one: str, many: str) -> None:
    assert counted_name(one, Fraction(1)) == one
    assert counted_name(one, Fraction(6)) == many
    assert counted_name(one, Fraction(3, 10)) == one
    assert counted_name(one, Fraction(3, 2)) == counted_name(one, Fraction(0)) == many
    assert singular(many) == one
    assert singular(one) == one


def test_a_name_that_is_a_plural_stays() -> None:
    assert counted_name("Grapes", Fraction(6)) == "Grapes"
    assert singular("mangos") == "mango"


def test_half_of_one_is_said_in_words() -> None:
    assert pieces("lemon", Fraction(1, 2)) == "half a lemon"
    assert pieces("orange", Fraction(1, 2)) == "half an orange"
    assert pieces("lemon", Fraction(12)) == "12 lemons"
    assert pieces("lemon", Fraction(1, 4)) == "0.25 lemon"


def test_a_name_with_the_letters_of_another_language_has_its_endings() -> None:
    assert singular("limóns") == "limón"
    assert counted_name("limón", Fraction(4)) == "limones"
    assert counted_name("jalapeño", Fraction(4)) == "jalapeños"
