"""Tests that every button below a chemistry answer works, for managers and for members."""

from __future__ import annotations

import pytest

from tests.buttons import problems
from tests.chat.features.liquids.mixes import CLEAR_MIX, MIST, SYRUP, bar_with
from tests.house import House

pytestmark = pytest.mark.parametrize("database", ["sqlite"], indirect=True)

LINES = (
    "strength 500 ml 96 to 70",
    "strength 500 ml 70 from 96 at 27 C",
    "strength 300 ml 40 to 60",
    "strength grapefruit mist",
    "strength neutral spirit",
    "strength neutral spirit 95",
    "strength batch 1",
    "strength",
    "scale grapefruit mist to 8 x 50 ml",
    "scale grapefruit mist to 8 x 50 ml, 5 % loss in grams at 27 C",
    "scale grapefruit mist to 400 ml with 75.5 % spirit instead",
    "swap grapefruit mist",
    "swap grapefruit mist with 70 %",
    "clear grapefruit mist",
    "clear grapefruit mist more",
    "clear grapefruit mist with 75.5 %",
    "clear clear mist",
    "clear house syrup",
    "dose grapefruit mist in 60 ml, 3 drinks",
    "dose grapefruit mist 2 sprays in 90 ml, 60 kg, without alcohol",
    "dose clear mist",
    "density grapefruit mist",
    "density grapefruit oil",
    "density grapefruit oil 0.85",
    "pump",
    "pump blue",
    "weigh",
    "weigh blue 150.55 148.80 20 sprays",
    "use blue for grapefruit mist",
    "grade",
    "grade grapefruit oil",
    "grade grapefruit oil no",
    "grade grapefruit oil yes",
    "allergens grapefruit mist",
    "opened grapefruit oil 10 days ago",
    "bottle",
    "formula grapefruit mist",
    "batch 1",
    "open 1",
    "cautions grapefruit mist",
)


@pytest.mark.parametrize("who", ["owner", "member"])
@pytest.mark.long
def test_no_button_is_dead(house: House, who: str) -> None:
    person = bar_with(house, MIST, CLEAR_MIX, SYRUP)
    person.says("batch grapefruit mist to 400 ml")
    person.says("weigh blue 152.31 150.55 20 sprays with grapefruit mist")
    if who == "member":
        person = house.joins("Caio")
    wrong = [
        one for line in LINES for reply in person.says(line) for one in problems(house, person, None, reply)
    ]
    assert wrong == []
