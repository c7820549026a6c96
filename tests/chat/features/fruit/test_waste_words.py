"""Tests of the words that a line of waste is typed with."""

from __future__ import annotations

import pytest

from tests.chat.features.liquids.mixes import SYRUP, bar_with
from tests.house import House, Person, text


@pytest.fixture
def ana(house: House) -> Person:
    """The owner of a bar with a bottled syrup, and the usual fruit."""
    return bar_with(
        house,
        SYRUP,
        "batch house syrup to 500 ml",
        "bottled house syrup 2 x 50 ml",
        "price oranges 0.60 each",
        "count limes 50",
        "count lemons 50",
    )


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("waste 2 more limes", "Logged: 2 limes."),
        ("lemons x4 mouldy", "Logged: 4 lemons, mouldy."),
        ("waste three and a half limes", "Logged: 3.5 limes."),
        ("3 limes gone bad", "Logged: 3 limes, mouldy."),
        ("waste 2 limes over-ripe", "Logged: 2 limes, mouldy."),
        ("5 limes r mouldy", "Logged: 5 limes, mouldy."),
        ("2 limes , 1 lemon ,3 orange dried out", "Logged 3 lines"),
        ("waste house syrup 200 ml", "Batch 1, House syrup: 200 ml lost"),
        ("spilled half the house syrup", "Batch 1, House syrup: 249.2 ml lost"),
        ("spilt one bottle of 1", "Batch 1, House syrup: 50 ml lost"),
        ("2 limes mouldy plus a bottle of house syrup", "Batch 1, House syrup: 50 ml lost"),
    ],
)
def test_what_is_logged_at_once(ana: Person, line: str, said: str) -> None:
    assert text(ana.says(line)).startswith(said)


@pytest.mark.parametrize(
    ("line", "asked"),
    [
        ("threw away 30 orange peels", "orange peels is new here."),
        ("threw away a tray of orange peels", "orange peels is new here."),
        ("waste a handful of mint", "mint is new here. A fruit?"),
        ("waste a tray of oranges", "How much is in each tray of oranges?"),
        ("waste 2 bottles of tonic", "tonic is new here."),
        ("waste 1 bottle lime juice", "lime juice is new here."),
        ("spilled 50 ml gin", "gin is new here."),
        ("lemons 4 mouldy, 2 limes dried out and 50 ml of lime juice", "lime juice is new here."),
        ("bottled lime cordial 2 x 50 ml", "I know no batch of “lime cordial”."),
        ("waste 3 limes mangled", "Nothing is logged until you tap."),
        ("waste 2 limes; 9 bottles of house syrup", "Nothing of the message was logged."),
        ("wast 4 limse", "Read as: waste 4 lime"),
        ("lims 4 mouldy", "Read as: waste lime 4 mouldy"),
    ],
)
def test_what_is_asked(ana: Person, line: str, asked: str) -> None:
    ana.house.confirms_new = False
    assert asked in text(ana.says(line))


def test_what_was_in_an_open_bottle_is_logged_by_volume(ana: Person) -> None:
    ana.says("opened house syrup")
    ana.says("opened house syrup")
    ana.says("waste 1 bottle house syrup")
    assert "50 ml lost" in text(ana.taps("spilt 1 50 ml"))


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("merma 3 limas muy maduras", "con moho"),
        ("merma 2 limas pasadas", "con moho"),
        ("merma una bandeja de naranjas", "¿Cuánto trae cada bandeja de"),
    ],
)
def test_the_words_in_spanish(ana: Person, line: str, said: str) -> None:
    ana.says("language es")
    assert said in text(ana.says(line))
