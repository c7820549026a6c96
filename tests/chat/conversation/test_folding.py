"""Tests of long replies: they are folded, and nothing of them is lost."""

from __future__ import annotations

from pathlib import Path

from bot.chat.conversation.folding import LONGEST, height
from bot.chat.reply.message import Caution
from tests.demo_bar import demo_bar
from tests.house import text
from tests.replies import MOST, USUAL, of_demo


def test_a_long_answer_shows_its_rest_by_a_tap(tmp_path: Path) -> None:
    with demo_bar(tmp_path) as robin:
        (first,) = robin.says("dose grapefruit mist in 90 ml")
        assert sum(map(height, first.blocks)) <= USUAL + 2
        assert any(isinstance(block, Caution) for block in first.blocks)
        (rest,) = robin.taps("More")
        assert rest.first_line == first.first_line
        assert "Propylene glycol (E 1520)" in text([rest])
        assert "mg in" not in text([rest])
        assert not any(button.label == "More" for row in rest.buttons for button in row)


def test_a_long_line_keeps_its_way_to_the_rest(tmp_path: Path) -> None:
    with demo_bar(tmp_path) as robin:
        robin.says("dose grapefruit mist 2.5 to 3.5 sprays in 90 ml, 3 drinks, 70 kg")
        assert "Propylene glycol (E 1520)" in text(robin.taps("More"))


def test_no_reply_of_the_demo_bar_is_longer_than_a_screen_and_a_half() -> None:
    found = of_demo()
    assert [one for one in found if one.lines > MOST] == []
    assert sum(one.lines <= LONGEST for one in found) >= 0.95 * len(found)
    assert sum(one.lines <= USUAL for one in found) > len(found) / 2
