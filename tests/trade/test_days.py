"""Tests of business days, wall times across clock changes, weeks and quiet hours."""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, date, datetime, timedelta, timezone
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.days import (
    EVERY_DAY,
    NaiveInstantError,
    UnknownZoneError,
    Week,
    business_day,
    business_day_span,
    defer_past_quiet,
    instant_of,
    is_service_day,
    local_time,
    next_service_day,
    week_at,
    week_of,
    zone_of,
)
from bot.trade.errors import OutOfRangeError

LONDON, NEW_YORK, LORD_HOWE = "Europe/London", "America/New_York", "Australia/Lord_Howe"
# Half-hour shift, shift at midnight, a skipped day (2011), a quarter-hour offset, no shifts.
ZONES = [
    LONDON,
    NEW_YORK,
    LORD_HOWE,
    "America/Santiago",
    "America/Havana",
    "Africa/Cairo",
    "Pacific/Apia",
    "Asia/Kathmandu",
    "UTC",
]

# From 2005 to 2037, by the microsecond.
instants = st.integers(1_104_537_600_000_000, 2_145_830_400_000_000).map(
    lambda microseconds: datetime(1970, 1, 1, tzinfo=UTC) + timedelta(microseconds=microseconds)
)
dates = st.dates(date(2005, 1, 2), date(2037, 12, 30))
minutes = st.integers(0, 1439)
zones = st.sampled_from(ZONES)


def at(text: str) -> datetime:
    return datetime.fromisoformat(text)


@pytest.mark.parametrize(
    ("instant", "day"),
    [
        ("2026-06-14T02:30+01:00", date(2026, 6, 13)),
        ("2026-06-14T04:59:59+01:00", date(2026, 6, 13)),
        ("2026-06-14T05:00+01:00", date(2026, 6, 14)),
        ("2026-06-14T23:59+01:00", date(2026, 6, 14)),
        ("2026-06-14T23:30+00:00", date(2026, 6, 14)),
        ("2026-06-15T03:59+00:00", date(2026, 6, 14)),
        ("2026-06-15T04:00+00:00", date(2026, 6, 15)),
        ("2027-01-01T01:00+00:00", date(2026, 12, 31)),
    ],
)
def test_the_business_day_ends_at_the_closing_hour(instant: str, day: date) -> None:
    assert business_day(at(instant), LONDON) == day


def test_another_closing_hour() -> None:
    assert business_day(at("2026-06-14T02:30+01:00"), LONDON, 0) == date(2026, 6, 14)
    assert business_day(at("2026-06-14T02:30+01:00"), LONDON, 180) == date(2026, 6, 13)
    # A bar that closes in the evening ends its day at midnight.
    for closing in (720, 1080, 1410):
        assert business_day(at("2026-06-14T23:45+01:00"), LONDON, closing) == date(2026, 6, 14)
        assert business_day(at("2026-06-15T00:15+01:00"), LONDON, closing) == date(2026, 6, 15)


def test_the_night_the_clock_goes_back_is_one_business_day() -> None:
    # Closing at 01:30, which occurs twice: the day ends at the first, and the second is after it.
    assert business_day(at("2026-10-25T01:29:59+01:00"), LONDON, 90) == date(2026, 10, 24)
    assert business_day(at("2026-10-25T01:30:00+01:00"), LONDON, 90) == date(2026, 10, 25)
    assert business_day(at("2026-10-25T01:10:00+00:00"), LONDON, 90) == date(2026, 10, 25)
    start, end = business_day_span(date(2026, 10, 24), LONDON)
    assert end - start == timedelta(hours=25)
    start, end = business_day_span(date(2027, 3, 27), LONDON)
    assert end - start == timedelta(hours=23)


def test_a_date_that_a_zone_left_out() -> None:
    # Samoa went from 29 to 31 December 2011.
    start, end = business_day_span(date(2011, 12, 30), "Pacific/Apia")
    assert local_time(start, "Pacific/Apia").isoformat() == "2011-12-31T00:00:00+14:00"
    assert end - start == timedelta(hours=5)
    assert business_day(start, "Pacific/Apia") == date(2011, 12, 30)
    assert business_day(start - timedelta(seconds=1), "Pacific/Apia") == date(2011, 12, 29)


@given(instants, zones, minutes)
def test_every_instant_lies_within_its_business_day(instant: datetime, zone: str, closing: int) -> None:
    day = business_day(instant, zone, closing)
    start, end = business_day_span(day, zone, closing)
    assert start <= instant < end


@given(dates, zones, minutes)
def test_business_days_follow_without_gap_or_overlap(day: date, zone: str, closing: int) -> None:
    start, end = business_day_span(day, zone, closing)
    assert business_day_span(day + timedelta(days=1), zone, closing)[0] == end
    assert start <= end
    if start < end:
        assert business_day(start, zone, closing) == day
        assert business_day(end - timedelta(microseconds=1), zone, closing) == day


@given(instants, st.sampled_from(["UTC", "Asia/Kathmandu"]), minutes)
def test_the_offset_in_which_an_instant_is_given_does_not_matter(
    instant: datetime, zone: str, closing: int
) -> None:
    elsewhere = instant.astimezone(timezone(timedelta(hours=-9, minutes=-30)))
    assert business_day(elsewhere, zone, closing) == business_day(instant, zone, closing)
    assert business_day(instant.astimezone(ZoneInfo(LONDON)), zone, closing) == business_day(
        instant, zone, closing
    )


@pytest.mark.parametrize(
    ("zone", "day", "minute", "instant"),
    [
        (LONDON, date(2026, 6, 14), 16 * 60, "2026-06-14T15:00+00:00"),
        (LONDON, date(2027, 3, 28), 60, "2027-03-28T01:00+00:00"),
        (LONDON, date(2027, 3, 28), 119, "2027-03-28T01:00+00:00"),
        (LONDON, date(2027, 3, 28), 120, "2027-03-28T01:00+00:00"),
        (LONDON, date(2027, 3, 28), 59, "2027-03-28T00:59+00:00"),
        (LONDON, date(2026, 10, 25), 60, "2026-10-25T00:00+00:00"),
        (LONDON, date(2026, 10, 25), 119, "2026-10-25T00:59+00:00"),
        (LONDON, date(2026, 10, 25), 120, "2026-10-25T02:00+00:00"),
        (NEW_YORK, date(2027, 3, 14), 150, "2027-03-14T07:00+00:00"),
        (NEW_YORK, date(2026, 11, 1), 90, "2026-11-01T05:30+00:00"),
        (LORD_HOWE, date(2026, 10, 4), 135, "2026-10-03T15:30+00:00"),
        (LORD_HOWE, date(2027, 4, 4), 105, "2027-04-03T14:45+00:00"),
        (LONDON, date(2026, 6, 14), 26 * 60, "2026-06-15T01:00+00:00"),
        ("UTC", date(2028, 2, 28), 24 * 60, "2028-02-29T00:00+00:00"),
    ],
)
def test_wall_times(zone: str, day: date, minute: int, instant: str) -> None:
    found = instant_of(day, minute, zone)
    assert found == at(instant)
    assert found.tzinfo is UTC


@given(dates, minutes, zones)
def test_a_wall_time_is_shown_or_the_first_shown_after_a_gap(day: date, minute: int, zone: str) -> None:
    instant = instant_of(day, minute, zone)
    wanted = datetime.combine(day, datetime.min.time()) + timedelta(minutes=minute)
    shown = local_time(instant, zone).replace(tzinfo=None)
    assert shown >= wanted
    just_before = local_time(instant - timedelta(seconds=1), zone).replace(tzinfo=None)
    if shown > wanted:
        assert just_before < wanted
        assert (
            local_time(instant - timedelta(seconds=1), zone).utcoffset()
            != local_time(instant, zone).utcoffset()
        )
    else:
        assert local_time(instant, zone).fold == 0


@given(dates, minutes, minutes, zones)
def test_later_on_the_clock_is_never_earlier(day: date, one: int, two: int, zone: str) -> None:
    first, second = sorted((one, two))
    assert instant_of(day, first, zone) <= instant_of(day, second, zone)


def test_service_days() -> None:
    monday = date(2026, 6, 15)
    thursday_to_saturday = 0b0111000
    served = [is_service_day(monday + timedelta(days=number), thursday_to_saturday) for number in range(7)]
    assert served == [False, False, False, True, True, True, False]
    assert next_service_day(monday, thursday_to_saturday) == date(2026, 6, 18)
    assert next_service_day(date(2026, 6, 20), thursday_to_saturday) == date(2026, 6, 20)
    assert next_service_day(date(2026, 6, 21), thursday_to_saturday) == date(2026, 6, 25)
    assert next_service_day(monday, 0) is None
    assert is_service_day(monday)
    for mask in (-1, 128):
        with pytest.raises(OutOfRangeError):
            is_service_day(monday, mask)


@given(dates, st.integers(1, EVERY_DAY))
def test_the_next_service_day_is_within_a_week(day: date, mask: int) -> None:
    found = next_service_day(day, mask)
    assert found is not None
    assert day <= found < day + timedelta(days=7)
    assert is_service_day(found, mask)
    assert not any(is_service_day(day + timedelta(days=n), mask) for n in range((found - day).days))


@given(st.dates(date(1, 1, 1), date(9999, 12, 26)))
def test_a_week_holds_its_days(day: date) -> None:
    week = week_of(day)
    assert week.first <= day <= week.last
    assert (week.first.weekday(), week.last.weekday()) == (0, 6)
    assert (week.first + timedelta(days=3)).year == week.year
    assert week_at(week.year, week.number) == week


def test_weeks_by_number() -> None:
    assert week_at(2026, 53) == Week(2026, 53, date(2026, 12, 28), date(2027, 1, 3))
    for year, number in [(2027, 53), (2026, 0), (2026, 54)]:
        with pytest.raises(OutOfRangeError):
            week_at(year, number)


QUIET = (23 * 60, 9 * 60)


@pytest.mark.parametrize(
    ("instant", "deferred"),
    [
        ("2026-06-14T22:59+01:00", "2026-06-14T22:59+01:00"),
        ("2026-06-14T23:00+01:00", "2026-06-15T09:00+01:00"),
        ("2026-06-15T00:00+01:00", "2026-06-15T09:00+01:00"),
        ("2026-06-15T08:59+01:00", "2026-06-15T09:00+01:00"),
        ("2026-06-15T09:00+01:00", "2026-06-15T09:00+01:00"),
        ("2026-10-25T01:30+01:00", "2026-10-25T09:00+00:00"),
        ("2027-03-27T23:30+00:00", "2027-03-28T09:00+01:00"),
    ],
)
def test_quiet_hours_over_midnight(instant: str, deferred: str) -> None:
    assert defer_past_quiet(at(instant), LONDON, *QUIET) == at(deferred)


def test_quiet_hours_within_a_day_and_none() -> None:
    assert defer_past_quiet(at("2026-06-14T14:00+01:00"), LONDON, 780, 960) == at("2026-06-14T16:00+01:00")
    assert defer_past_quiet(at("2026-06-14T12:00+01:00"), LONDON, 780, 960) == at("2026-06-14T12:00+01:00")
    assert defer_past_quiet(at("2026-06-14T12:00+01:00"), LONDON, 720, 720) == at("2026-06-14T12:00+01:00")


def test_quiet_hours_that_end_in_the_repeated_hour_end_once() -> None:
    # Quiet until 01:30: over at the first 01:30, and not quiet again at the second 01:10.
    assert defer_past_quiet(at("2026-10-25T01:10+01:00"), LONDON, 0, 90) == at("2026-10-25T01:30+01:00")
    assert defer_past_quiet(at("2026-10-25T01:10+00:00"), LONDON, 0, 90) == at("2026-10-25T01:10+00:00")


@given(instants, zones, minutes, minutes)
def test_deferring_goes_forward_and_is_done_once(instant: datetime, zone: str, start: int, end: int) -> None:
    deferred = defer_past_quiet(instant, zone, start, end)
    assert instant <= deferred <= instant + timedelta(hours=50)
    assert deferred.tzinfo is UTC
    assert defer_past_quiet(deferred, zone, start, end) == deferred


@pytest.mark.parametrize(
    "name", ["", "Mars/Olympus", "../etc/passwd", "Europe", "/etc/localtime", "x" * 5000, "a\0b"]
)
def test_unknown_zones(name: str) -> None:
    with pytest.raises(UnknownZoneError) as caught:
        zone_of(name)
    assert caught.value.name == name


def test_an_instant_needs_an_offset() -> None:
    naive = datetime(2026, 6, 14, 12)  # noqa: DTZ001 - the point of the test
    calls: list[Callable[[], object]] = [
        lambda: business_day(naive, LONDON),
        lambda: defer_past_quiet(naive, LONDON, 0, 60),
        lambda: local_time(naive, LONDON),
    ]
    for call in calls:
        with pytest.raises(NaiveInstantError):
            call()


@pytest.mark.parametrize("minute", [-1, 1440])
def test_a_minute_of_the_day_is_within_the_day(minute: int) -> None:
    with pytest.raises(OutOfRangeError):
        business_day(at("2026-06-14T12:00+01:00"), LONDON, minute)
    with pytest.raises(OutOfRangeError):
        defer_past_quiet(at("2026-06-14T12:00+01:00"), LONDON, minute, 60)
    with pytest.raises(OutOfRangeError):
        defer_past_quiet(at("2026-06-14T12:00+01:00"), LONDON, 60, minute)
    with pytest.raises(OutOfRangeError):
        instant_of(date(2026, 6, 14), -1, LONDON)
