"""The first five minutes over HTTP: from /start to amounts for the oil in hand in five messages and taps."""

from __future__ import annotations

import pytest

from tests.channels.telegram.conftest import Telephone

_PLACES = {
    "eu": (
        ("en", "The Copper Gull, Lisbon", "Looks right"),
        "new formula Mist: grapefruit oil 12 ml, propylene glycol 22 ml, neutral spirit 96 % 62 ml",
        ("scale with 10 ml grapefruit oil", "10 ml"),
    ),
    "us": (
        ("en", "The Salt Stair, Boston", "Looks right"),
        "new formula Mist: grapefruit oil 1 oz, propylene glycol 2 oz, neutral spirit 95 % 5 1/2 oz",
        ("scale with 1/2 oz grapefruit oil", "3 tsp"),
    ),
    "mx": (
        ("es", "La Gaviota, CDMX", "Está bien"),
        "nueva fórmula Bruma: aceite de toronja 12 ml, propilenglicol 22 ml, alcohol neutro 96 % 62 ml",
        ("escala con 10 ml aceite de toronja", "10 ml"),
    ),
}


@pytest.mark.parametrize("place", _PLACES)
async def test_from_start_to_amounts_in_five_messages(telephone: Telephone, place: str) -> None:
    (language, name, right), recipe, (asked, oil) = _PLACES[place]
    person = telephone.server.person("Ana", language)
    await person.says("/start")
    await person.says(name)
    await person.taps(right)
    await person.says(recipe)
    assert oil in (await person.says(asked)).text
