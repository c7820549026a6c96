"""Tests of the data of former members: the copy that they get, and the rows deleted when forgotten."""

from __future__ import annotations

import json
from typing import Any

import pytest
from sqlalchemy import select

from bot.chat.reply.message import Reply
from storage.tables import Member, Person
from tests.house import House, first_lines, text


def _file(reply: Reply) -> dict[str, Any]:
    (file,) = reply.files
    held: dict[str, Any] = json.loads(file.content)
    return held


@pytest.mark.parametrize("how", ["leave yes", "removed"])
def test_who_left_gets_their_rows_without_the_bars_content(house: House, how: str) -> None:
    ana = house.open_bar()
    ben = house.joins("Ben", manager=True)
    ben.says("new formula Secret mist\ngrapefruit oil 12 ml\nneutral spirit 96 % 62 ml\nkind aroma mist")
    ben.says("waste 3 limes mouldy")
    if how == "removed":
        ana.says("team remove Ben")
    else:
        ben.says(how)
    held = _file(ben.says("export me")[0])
    assert held["name"] == "Ben"
    (left,) = held["bars_left"]
    assert left["bar"] == "The Copper Gull"
    assert len(left["waste"]) == 1
    assert set(left["waste"][0]) == {"id", "at", "by", "business_day"}
    assert "Secret" not in json.dumps(held)
    assert "Ana" not in json.dumps(held)


def test_who_left_can_be_forgotten_from_outside(house: House) -> None:
    ana = house.open_bar()
    ben = house.joins("Ben")
    ben.says("waste 3 limes mouldy")
    ben.says("leave yes")
    assert "Ben" in text(ana.says("log"))
    ben.says("forget me")
    assert first_lines(ben.taps("Yes, forget me")) == ["Your name is gone from The Copper Gull."]
    assert "Ben" not in text(ana.says("log"))
    with house.store.reading() as unit:
        names = [*unit.session.scalars(select(Member.name)), *unit.session.scalars(select(Person.name))]
    assert "Ben" not in names
    # Their stored data is gone; there is nothing left to get or to forget.
    assert first_lines(ben.says("week")) == ["You are not in a bar yet."]


def test_in_another_bar_the_old_one_can_forget_alone(house: House) -> None:
    ana = house.open_bar()
    ben = house.joins("Ben")
    ben.says("waste 3 limes mouldy")
    ben.says("leave yes")
    house.open_bar("Ben", "The Blue Heron")
    held = _file(ben.says("export me")[0])
    assert held["bar"] == "The Blue Heron"
    (left,) = held["bars_left"]
    assert left["bar"] == "The Copper Gull"
    ben.taps("Forget me where I left")
    ben.taps("Yes, forget me")
    assert "Ben" not in text(ana.says("log"))
    assert first_lines(ben.says("start"))[0].startswith("You are at The Blue Heron, Ben")
    assert "bars_left" not in _file(ben.says("export me")[0])
