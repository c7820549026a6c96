"""Tests of messages that say several things: each part has its own button, and none is lost."""

from __future__ import annotations

import pytest

from tests.chat.features.liquids.mixes import SYRUP, bar_with
from tests.house import House, Person, first_lines, text


@pytest.fixture
def ana(house: House) -> Person:
    """The owner of a bar with a syrup, a batch of it, and the usual fruit."""
    return bar_with(house, SYRUP, "batch house syrup to 500 ml", "price oranges 0.60 each", "count limes 50")


def _buttons(ana: Person, line: str) -> list[str]:
    (answer,) = ana.says(line)
    return [button.line for row in answer.buttons for button in row]


@pytest.mark.parametrize(
    ("line", "parts"),
    [
        (
            "drinks 110. waste 5 limes. remind me tomorrow at 5pm to buy ice",
            ["drinks 110", "waste 5 limes", "remind tomorrow at 5pm to buy ice"],
        ),
        (
            "waste 5 limes and remind me at 10pm to clean the well",
            ["waste 5 limes", "remind at 10pm to clean the well"],
        ),
        (
            "note: buy straws; also remind me in 1 hour to check ice",
            ["note buy straws", "remind in 1 hour to check ice"],
        ),
        ("bottled 1 4 x 50 ml and opened one", ["bottled 1 4 x 50 ml", "open 1"]),
        ("opened 1 & waste 2 limes", ["open 1", "waste 2 limes"]),
        ("waste 3 limes, opened batch 1, 120 drinks", ["waste 3 limes", "open 1", "drinks 120"]),
        ("waste 2 limes and 95 drinks", ["waste 2 limes", "drinks 95"]),
        ("threw away 3 limes, sold 4 spritz", ["waste 3 limes", "drinks 4 spritz"]),
        (
            "waste 3 limes mouldy and note the fridge is warm",
            ["waste 3 limes mouldy", "note the fridge is warm"],
        ),
        (
            "binned 4 oranges mouldy\nsold 120 drinks\nopened house syrup",
            ["waste 4 oranges mouldy", "drinks 120", "open house syrup"],
        ),
        (
            "threw out 3 limes and 2 lemons, and spilled 100 ml house syrup",
            ["waste 3 limes and 2 lemons", "spilt 100 ml house syrup"],
        ),
    ],
)
def test_each_part_has_a_button_that_holds_all_of_it(ana: Person, line: str, parts: list[str]) -> None:
    assert _buttons(ana, line) == parts


@pytest.mark.parametrize(
    ("line", "parts"),
    [
        (
            "tiramos 3 naranjas con moho. Servimos 90 cócteles. Recuérdame mañana a las 18:00 pedir hielo",
            ["waste 3 naranjas con moho", "drinks 90", "remind mañana a las 18:00 pedir hielo"],
        ),
        ("nota: pedir hielo; también tiramos 2 limas", ["note pedir hielo", "waste 2 limas"]),
        (
            "nota falta hielo; merma 3 naranjas con moho; cócteles 90",
            ["note falta hielo", "waste 3 naranjas con moho", "drinks 90"],
        ),
        (
            "compramos 10 kg de naranjas y tiramos 2 limas secas",
            ["bought 10 kg de naranjas", "waste 2 limas secas"],
        ),
        (
            "tiramos 2 naranjas, abrimos el lote 1 y el 1 quedó turbio",
            ["waste 2 naranjas", "open 1", "check 1 turbio"],
        ),
    ],
)
def test_the_parts_of_a_spanish_message(ana: Person, line: str, parts: list[str]) -> None:
    ana.says("language es")
    assert _buttons(ana, line) == parts


def test_more_parts_than_buttons_are_named(ana: Person) -> None:
    (answer,) = ana.says("waste 1 lime; drinks 90; opened 1; waste 2 oranges; drinks 40 orange")
    assert len(answer.buttons) == 4
    assert "I left out “drinks 40 orange”: say it by itself." in text([answer])


@pytest.mark.parametrize(
    "line",
    [
        "waste 3 limes mouldy, 2 oranges, dried out",
        "note: fridge is warm, and the ice is low",
        "remind me tomorrow to open batch 1 and check batch 1",
        "new paloma: 60 ml tequila, 20 ml lime juice",
    ],
)
def test_one_thing_is_not_divided(ana: Person, line: str) -> None:
    assert "things. Tap each one" not in text(ana.says(line))


def test_a_part_does_what_its_button_says(ana: Person) -> None:
    ana.says("waste 2 limes and 95 drinks")
    assert first_lines(ana.taps("waste 2 limes")) == ["Logged: 2 limes."]
