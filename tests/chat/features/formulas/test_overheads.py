"""Tests of one formula's minutes, bottle and label beside the bar's, and of the weekly picture."""

from __future__ import annotations

import json
import re
from fractions import Fraction

import pytest

from tests.house import House, Person, first_lines, lines, text
from tests.work.transfer.files import Sends, exported

_SET_UP = """bar wage 12
bar batch minutes 15
bar bottle price 1.20
bar drinks a week 300
price grapefruits 0.90 each, 8 garnishes each
price grapefruit oil 10 ml 7.90
price propylene glycol 500 ml 11.50
price neutral spirit 1 l 24"""


@pytest.fixture
def ana(house: House) -> Person:
    """The owner of a bar with two sprayed formulas, priced."""
    mists = [
        f"new formula {name}\ngrapefruit oil 12 ml\npropylene glycol 22 ml\n"
        "neutral spirit 96 % 62 ml\nreplaces grapefruit\nkind aroma mist"
        for name in ("Grapefruit mist", "Other mist")
    ]
    return house.open_bar(said=[*mists, _SET_UP])


def _spray_a_week(ana: Person, name: str) -> Fraction:
    said = text(ana.says(f"cost {name} to 8 x 50 ml more"))
    found = re.search(r"a week +€[\d.,]+ +€([\d.]+)", said)
    assert found is not None, said
    return Fraction(found[1])


def test_its_own_minutes_and_bottle_count_for_it_and_for_no_other(ana: Person) -> None:
    before = _spray_a_week(ana, "grapefruit mist")
    assert before == _spray_a_week(ana, "other mist")
    ana.says("making grapefruit mist 60 min, bottle 2.20")
    # 8 bottles at 1.00 more, over a batch that lasts 300 drinks a week of two and a half sprays of a twelfth
    # of a millilitre (62.5 mL of the 402 mL a week). The minutes are counted apart.
    more = 8 * Fraction(625, 10) / 402
    assert abs(_spray_a_week(ana, "grapefruit mist") - before - more) < Fraction(3, 100)
    assert _spray_a_week(ana, "other mist") == before
    ana.says("making grapefruit mist none")
    assert _spray_a_week(ana, "grapefruit mist") == before


def test_what_holds_is_shown_with_where_it_is_from(ana: Person) -> None:
    ana.says("making grapefruit mist 30-40 min")
    shown = "\n".join(lines(ana.says("making grapefruit mist")[0]))
    assert re.search(r"a batch \* +30 to 40 min", shown)
    assert re.search(r"a bottle +€1.20", shown)
    assert re.search(r"a label +not set", shown)
    ana.says("undo")
    assert re.search(r"a batch +15 min", text(ana.says("making grapefruit mist")))


def test_only_a_manager_sets_it(house: House, ana: Person) -> None:
    ben = house.joins("Ben")
    assert "manager" in text(ben.says("making grapefruit mist 60 min"))
    assert "a batch *" not in text(ben.says("making grapefruit mist"))


def test_more_than_a_day_of_work_is_not_believed(ana: Person) -> None:
    assert "from 0 to 1440" in text(ana.says("making grapefruit mist 2000 min"))


def test_it_goes_with_the_formula_into_another_bar(house: House, ana: Person) -> None:
    ana.says("making other mist 60 min, label 0.10")
    content = exported(ana)["peel-ledger.json"]
    assert json.loads(content)["bar"]["formula_costs"] == {
        "Other mist": {"batch_minutes": "60", "label_price": "1/10"}
    }
    eve = house.open_bar("Eve", "The Grey Gull")
    Sends(house, eve).and_takes_in("bar.json", content)
    assert re.search(r"a batch \* +60 min", text(eve.says("making other mist")))
    assert "a batch *" not in text(eve.says("making grapefruit mist"))


@pytest.mark.parametrize("costs", [{"batch_minutes": "long"}, {"bottle_price": "-1"}, {"label_price": 3}])
def test_what_is_no_number_there_stops_the_import(
    house: House, ana: Person, costs: dict[str, object]
) -> None:
    found = json.loads(exported(ana)["peel-ledger.json"])
    found["bar"]["formula_costs"] = {"Other mist": costs}
    eve = house.open_bar("Eve", "The Grey Gull")
    said = Sends(house, eve)("bar.json", json.dumps(found).encode())
    assert said.first_line == "I can't import bar.json."


def test_the_picture_comes_with_the_week_where_the_bar_wants_it(ana: Person) -> None:
    ana.says("waste 6 grapefruits mouldy")
    (said,) = ana.says("week")
    assert said.first_line == "Waste: €5.40"
    assert [one.name for one in said.files] == ["waste-2026-W48.png"]
    assert said.files[0].draw is not None
    assert said.files[0].draw().startswith(b"\x89PNG")
    assert ana.says("month")[0].files
    assert first_lines(ana.says("bar week picture off")) == ["Week picture: when asked for"]
    assert not ana.says("week")[0].files
    ana.says("bar week picture on")
    assert ana.says("week")[0].files
