"""Tests of what an hour without 'am' or 'pm' means, by the clock of the bar."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest

from storage.store import Store
from tests.house import Hands, House, text


@pytest.mark.parametrize(
    ("now", "said", "when"),
    [
        ("25 19:30", "at 9", "Wed, 25 Nov 21:00"),
        ("25 19:30", "at 9:30", "Wed, 25 Nov 21:30"),
        ("25 19:30", "today at 8", "Wed, 25 Nov 20:00"),
        ("25 10:00", "at 11:00", "Wed, 25 Nov 11:00"),
        ("25 10:00", "tonight at 2", "Thu, 26 Nov 02:00"),
        ("26 01:30", "at 2", "Thu, 26 Nov 02:00"),
        ("25 19:30", "tomorrow at 9", "Thu, 26 Nov 09:00"),
        ("25 19:30", "tomorrow at 6", "Thu, 26 Nov 18:00"),
        ("25 19:30", "tomorrow at 12", "Thu, 26 Nov 12:00"),
        ("25 19:30", "tomorrow night at 9", "Thu, 26 Nov 21:00"),
        ("25 19:30", "tomorrow morning at 4", "Thu, 26 Nov 04:00"),
        ("25 19:30", "every monday at 10", "every Mon 10:00"),
        ("25 19:30", "wednesday at 4", "Wed, 2 Dec 16:00"),
        ("25 19:30", "every friday at midnight", "every Sat 00:00"),
        ("25 19:30", "on the 5th", "Sat, 5 Dec 16:00"),
    ],
)
def test_an_hour_without_its_half_of_the_day(store: Store, now: str, said: str, when: str) -> None:
    house = House(store, Hands(datetime(2026, 11, 25, 9, tzinfo=UTC)))
    ana = house.open_bar()
    house.clock.set(datetime.strptime(f"2026-11-{now} +0000", "%Y-%m-%d %H:%M %z"))
    assert f"I will remind you {when}: lock up" in " ".join(
        text(ana.says(f"remind me {said} to lock up")).split()
    )
