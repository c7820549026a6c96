"""Tests that dates are in the bar's zone: a morning in Auckland is the day before in UTC."""

from __future__ import annotations

import re

import pytest

from tests.house import House, text

_LINES = (
    "team",
    "log",
    "week more",
    "month",
    "price neutral spirit 1 l 24",
    "price neutral spirit history",
    "density grapefruit oil 0.86",
    "drinks 40",
    "drinks",
    "count oranges 12",
    "stock",
    "bought 10 oranges 5",
    "peeled 3 oranges",
    "batch grapefruit mist to 200 ml",
    "batch 1",
    "check 1 clear",
    "lot 1 neutral spirit A1",
    "lot A1",
    "spraying orange since today",
    "bottle grapefruit oil on today",
    "bar drinks a week 300",
    "plan grapefruit mist",
    "pump",
    "cost grapefruit mist more",
    "trial grapefruit mist",
    "export me",
)
_MIST = "new formula Grapefruit mist\ngrapefruit oil 12 ml\nneutral spirit 96 % 62 ml\nkind aroma mist"


@pytest.mark.parametrize("line", _LINES)
def test_no_date_of_yesterday_is_shown_in_the_morning(house: House, line: str) -> None:
    ana = house.open_bar(city="Auckland", said=[_MIST, "waste 6 oranges mouldy"])
    if line in {"batch 1", "check 1 clear", "lot 1 neutral spirit A1", "lot A1"}:
        ana.says("batch grapefruit mist to 200 ml")
    shown = text(ana.says(line))
    # 25 Nov 18:00 UTC is Thursday the 26th, 07:00, in Auckland.
    assert not re.search(r"\b25 Nov|2026-11-25", shown), shown
