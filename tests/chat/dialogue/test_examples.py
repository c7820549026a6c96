"""Tests of examples with a bar's own names in them."""

from __future__ import annotations

import re

import pytest

from bot.chat.dialogue import examples
from bot.chat.dialogue.registry import all_commands
from tests import catalogues
from tests.house import House, text

_STOCK = {
    *examples._INGREDIENTS,
    *(examples._FORMULA, examples._FIRST_FRUIT, examples._FIRST_FRUITS),
    *(examples._SECOND_FRUIT, examples._SECOND_FRUITS),
}


@pytest.mark.parametrize("language", catalogues.LANGUAGES)
def test_the_translation_of_an_example_has_the_same_names(language: str) -> None:
    texts = {one.id: one.string for one in catalogues.catalogue(language) if isinstance(one.id, str)}
    for command in all_commands().values():
        for example in command.examples:
            names = {name for name in _STOCK if re.search(rf"\b{name}\b", example)}
            # 'grapefruit mist' counts as one name, without the 'mist' in it.
            for name in names - {one for one in names for other in names if one != other and one in other}:
                assert str(texts[name]) in str(texts[example]), example


def test_without_own_names_the_usual_ones_stand(house: House) -> None:
    ana = house.open_bar()
    assert "trial grapefruit mist" in text(ana.says("help trial"))
    assert "waste 6 oranges mouldy" in text(ana.says("help waste"))


def test_own_names_stand_in_every_example(house: House) -> None:
    ana = house.open_bar(
        said=["new formula Yuzu cordial: yuzu juice 500 ml, sugar 500 g, kind cordial", "waste 4 yuzus"]
    )
    assert "trial Yuzu cordial 50 ml blind: yuzu juice 14 ml" in text(ana.says("help trial"))
    assert "waste 6 yuzus mouldy" in text(ana.says("help waste"))
    assert "drinks 60 Yuzu cordial" in text(ana.says("drinks"))
    # The hint of the input field is adapted too.
    (asked,) = ana.says("waste")
    assert asked.ask == "6 yuzus mouldy"


def test_a_formula_replaces_its_own_fruit(house: House) -> None:
    mist = "new formula {fruit} mist: {fruit} oil 10 ml, neutral spirit 96 % 60 ml, kind aroma mist"
    ana = house.open_bar(said=[mist.format(fruit="Orange"), "waste 4 limes mouldy"])
    assert "replaces orange" in text(ana.says("cost orange mist more"))
    ana.says(mist.format(fruit="Bergamot"))
    # Its name and ingredients contain no known fruit, so the bar's usual one is used.
    assert "replaces lime" in text(ana.says("cost bergamot mist more"))
