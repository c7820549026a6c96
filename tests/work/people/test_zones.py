"""Tests of finding a time zone by its name or its city."""

from __future__ import annotations

from zoneinfo import ZoneInfo

import pytest

from bot.work.people import bars


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Europe/Lisbon", ["Europe/Lisbon"]),
        (" europe/lisbon ", ["Europe/Lisbon"]),
        ("lisbon", ["Europe/Lisbon"]),
        ("new york", ["America/New_York"]),
        ("utc", ["UTC"]),
        ("nowhere at all", []),
        ("Etc/GMT+3", []),
        ("", []),
    ],
)
def test_a_zone_is_found_by_name_or_city(text: str, found: list[str]) -> None:
    assert bars.find_zones(text) == found


def test_part_of_a_name_finds_all_that_hold_it() -> None:
    found = bars.find_zones("indiana")
    assert "America/Indiana/Knox" in found
    assert found == sorted(found)
    assert all(ZoneInfo(zone) for zone in found)


def test_zones_are_listed_once(monkeypatch: pytest.MonkeyPatch) -> None:
    bars.find_zones("lisbon")
    monkeypatch.setattr(bars, "available_timezones", lambda: pytest.fail("listed again"))
    assert bars.find_zones("lisbon") == ["Europe/Lisbon"]
