"""Days in figures: 12/5 by the bar's country, and asked where both readings are possible."""

from __future__ import annotations

import pytest

from bot.chat.grammar.day_phrases import numeric_day
from tests.house import House, first_lines, text

_BOTH = {"12/5": ["Tue, 12 May", "Fri 5 Dec 2025"], "11/5": ["Mon, 11 May", "Thu, 5 Nov"]}


@pytest.mark.parametrize(
    ("said", "read"),
    [
        ("13/5", "--05-13"),
        ("5/13", "--05-13"),
        ("5/5", "--05-05"),
        ("12/5", "--05-12 or --12-05"),
        ("12.5.", "--05-12 or --12-05"),
        ("5.12.2026", "2026-12-05 or 2026-05-12"),
        ("13/5/26", "2026-05-13"),
        ("13-5-2026", "2026-05-13"),
    ],
)
def test_a_day_in_figures_has_one_or_two_readings(said: str, read: str) -> None:
    assert numeric_day(f"on {said}", 3) == (read, 3 + len(said))


@pytest.mark.parametrize(
    "said", ["13/14", "32/1", "0/5", "12.5", "12-5", "1/2/3/4", "12/5x", "12.50.1", "12/345"]
)
def test_other_figures_are_no_day(said: str) -> None:
    assert numeric_day(said, 0) is None


@pytest.mark.parametrize("said", ["5/11", "5.11.", "05/11/2026", "5-11-2026", "on 5/11", "on the 5/11"])
def test_the_day_stands_first_in_europe(house: House, said: str) -> None:
    ana = house.open_bar()
    assert first_lines(ana.says(f"waste 3 limes {said}")) == ["Logged for Thu, 5 Nov: 3 limes."]
    assert first_lines(ana.says(f"waste {said}: 2 limes")) == ["Logged for Thu, 5 Nov: 2 limes."]


def test_the_month_stands_first_in_the_us(house: House) -> None:
    ana = house.open_bar(city="Boston")
    assert first_lines(ana.says("waste 3 limes 11/5")) == ["Logged for Thu, Nov 5: 3 limes."]
    assert first_lines(ana.says("waste 3 limes 13/11")) == ["Logged for Fri, Nov 13: 3 limes."]


@pytest.mark.parametrize("said", _BOTH)
def test_a_day_to_come_is_asked_where_a_past_one_is_logged(house: House, said: str) -> None:
    ana = house.open_bar()
    (reply,) = ana.says(f"waste 3 limes on {said}")
    assert reply.first_line == f"Which day is {said}?"
    labels = [button.label for row in reply.buttons for button in row]
    assert labels == _BOTH[said]
    first, _, day = labels[0].partition(", ")
    assert first_lines(ana.taps(labels[0])) == [f"Logged for {first}, {day}: 3 limes."]


def test_both_days_are_asked_where_a_country_writes_both(house: House) -> None:
    ana = house.open_bar(city="Toronto")
    assert first_lines(ana.says("waste 3 limes 5/11")) == ["Which day is 5/11?"]
    assert first_lines(ana.says("waste 3 limes 13/11")) != ["Which day is 13/11?"]


def test_a_coming_day_is_the_next_of_its_date(house: House) -> None:
    ana = house.open_bar()
    assert "5 Dec" in text(ana.says("remind me 5/12 order limes"))
    assert "8 Jan" in text(ana.says("remind me 8/1 order limes"))


@pytest.mark.parametrize("said", ["1/2 lime", "limes 1/2", "limes 1/2, 3 lemons"])
def test_a_half_stays_a_half(house: House, said: str) -> None:
    assert "half a lime" in text(house.open_bar().says(f"waste {said}"))


def test_a_day_that_is_not_there_is_refused(house: House) -> None:
    assert first_lines(house.open_bar().says("waste 3 limes 31/4")) == ["“31/4” is no day of the calendar."]
