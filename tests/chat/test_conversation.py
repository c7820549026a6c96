"""The conversation as a whole: what a message is taken for."""

from __future__ import annotations

import pytest

from tests.house import House, first_lines

MIST = (
    "new formula Grapefruit mist\ngrapefruit oil 12 ml\npropylene glycol 22 ml\n"
    "neutral spirit 96 % 62 ml\nkind aroma mist\nreplaces grapefruit"
)


@pytest.mark.parametrize("line", ["scale", "cost", "scale grapefruit mist", "which"])
def test_a_command_that_only_reads_can_ask_too(house: House, line: str) -> None:
    ana = house.open_bar()
    ana.says(MIST)
    (asked,) = ana.says(line)
    assert asked.choosing
