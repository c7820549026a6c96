"""Business days, weeks, wall times and quiet hours on a bar's local clock.

Instants are aware datetimes and are returned in UTC; minutes count from midnight on the wall clock. Where the
clock jumps forward, a wall time that does not exist means the first instant after the gap; where it goes
back, a wall time that occurs twice means the first. Rules of each zone: IANA tz data.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from functools import lru_cache
from typing import Final, NamedTuple
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from bot.trade.errors import OutOfRangeError, TradeError

DEFAULT_CLOSING_MINUTE: Final = 5 * 60
"""05:00, the hour at which the business day ends unless the bar says otherwise."""

MINUTES_A_DAY: Final = 24 * 60
EVERY_DAY: Final = 0b1111111
"""Service on all days; bit 0 is Monday, bit 6 Sunday."""

_ONE_DAY: Final = timedelta(days=1)
_ONE_SECOND: Final = timedelta(seconds=1)


@dataclass
class UnknownZoneError(TradeError):
    """The IANA time zone data has no zone of this name."""

    name: str


@dataclass
class NaiveInstantError(TradeError):
    """The moment has no offset from UTC, so it could be any of several instants."""

    moment: datetime


class Week(NamedTuple):
    """A week of ISO 8601: Monday to Sunday, numbered in the year that holds its Thursday."""

    year: int
    number: int
    first: date
    last: date


@lru_cache(maxsize=64)
def zone_of(name: str) -> ZoneInfo:
    """Return the time zone of an IANA name such as "Europe/London". Raises UnknownZoneError."""
    try:
        return ZoneInfo(name)
    except (ZoneInfoNotFoundError, ValueError, OSError):
        raise UnknownZoneError(name) from None


def local_time(instant: datetime, zone: str) -> datetime:
    """Return an instant as wall time in a zone. Raises UnknownZoneError or NaiveInstantError."""
    return _checked(instant).astimezone(zone_of(zone))


def instant_of(day: date, minute: int, zone: str) -> datetime:
    """Return the instant, in UTC, at which the wall clock of a zone shows `minute` on a local date.

    A minute of 1440 or more falls on a later day. Gap: the first instant after it. Overlap: the first of the
    two. Raises UnknownZoneError, or OutOfRangeError for a minute below zero.
    """
    if minute < 0:
        raise OutOfRangeError("minute of the day", minute, 0, None, "min")
    days, rest = divmod(minute, MINUTES_A_DAY)
    wall = datetime.combine(day + days * _ONE_DAY, time(rest // 60, rest % 60), zone_of(zone))
    instant = wall.astimezone(UTC)
    if instant.astimezone(wall.tzinfo).replace(tzinfo=None) == wall.replace(tzinfo=None):
        return instant
    # The wall time does not exist. fold=0 uses the offset before the gap and lands after it; fold=1 does the
    # opposite. The clock jumps between the two.
    return _jump(wall.replace(fold=1).astimezone(UTC), instant, zone)


def _jump(before: datetime, after: datetime, zone: str) -> datetime:
    """Bisect to the second for the first instant with the same offset as `after`."""
    clock = zone_of(zone)
    offset = after.astimezone(clock).utcoffset()
    while after - before > _ONE_SECOND:
        middle = before + (after - before) // 2
        middle = middle.replace(microsecond=0)
        if middle.astimezone(clock).utcoffset() == offset:
            after = middle
        else:
            before = middle
    return after


def business_day(instant: datetime, zone: str, closing_minute: int = DEFAULT_CLOSING_MINUTE) -> date:
    """Return the business day that an instant belongs to.

    A business day ends at the closing hour of the next morning: with 05:00, 02:30 belongs to the day before
    and 05:00 to the new day. A bar that closes at noon or later ends its business day at midnight.

    Raises UnknownZoneError, NaiveInstantError, or OutOfRangeError for a minute outside the day.
    """
    day = local_time(instant, zone).date() + _ONE_DAY
    # Count by instants rather than wall times, so that days never overlap.
    while instant.astimezone(UTC) < _starts(day, zone, closing_minute):
        day -= _ONE_DAY
    return day


def business_day_span(
    day: date, zone: str, closing_minute: int = DEFAULT_CLOSING_MINUTE
) -> tuple[datetime, datetime]:
    """Return the first instant of a business day and the first after it, in UTC.

    Raises UnknownZoneError, or OutOfRangeError for a minute outside the day.
    """
    return _starts(day, zone, closing_minute), _starts(day + _ONE_DAY, zone, closing_minute)


def _starts(day: date, zone: str, closing_minute: int) -> datetime:
    minute = _minute_of_day("closing hour", closing_minute)
    return instant_of(day, minute if minute < MINUTES_A_DAY // 2 else 0, zone)


def is_service_day(day: date, service_days: int = EVERY_DAY) -> bool:
    """Whether the bar serves on this day of the week; `service_days` has bit 0 for Monday.

    Raises OutOfRangeError for a mask that does not fit seven days.
    """
    return bool(_mask(service_days) >> day.weekday() & 1)


def next_service_day(day: date, service_days: int = EVERY_DAY) -> date | None:
    """Return the first service day on or after `day`, or None if the bar never serves.

    Raises OutOfRangeError for a mask that does not fit seven days.
    """
    week = (day + number * _ONE_DAY for number in range(7))
    return next((later for later in week if is_service_day(later, service_days)), None)


def week_of(day: date) -> Week:
    """Return the ISO 8601 week that a day lies in."""
    year, number, weekday = day.isocalendar()
    first = day - (weekday - 1) * _ONE_DAY
    return Week(year, number, first, first + 6 * _ONE_DAY)


def week_at(year: int, number: int) -> Week:
    """Return a week by its ISO 8601 year and number. Raises OutOfRangeError if the year has no such week."""
    try:
        return week_of(date.fromisocalendar(year, number, 1))
    except ValueError:
        raise OutOfRangeError("week", number, 1, 53, "") from None


def defer_past_quiet(instant: datetime, zone: str, from_minute: int, to_minute: int) -> datetime:
    """Return the instant, or the end of the quiet hours if it falls within them, in UTC.

    Quiet hours run each day from `from_minute` up to `to_minute`, past midnight if the second is smaller;
    there are none if both are equal.

    Raises UnknownZoneError, NaiveInstantError, or OutOfRangeError for a minute outside the day.
    """
    start, end = _minute_of_day("quiet hours", from_minute), _minute_of_day("quiet hours", to_minute)
    today = local_time(instant, zone).date()
    instant = instant.astimezone(UTC)
    if start != end:
        for day in (today - _ONE_DAY, today):
            quiet_till = instant_of(day, end if end > start else end + MINUTES_A_DAY, zone)
            if instant_of(day, start, zone) <= instant < quiet_till:
                return quiet_till
    return instant


def _checked(instant: datetime) -> datetime:
    if instant.utcoffset() is None:
        raise NaiveInstantError(instant)
    return instant


def _minute_of_day(quantity: str, minute: int) -> int:
    if not 0 <= minute < MINUTES_A_DAY:
        raise OutOfRangeError(quantity, minute, 0, MINUTES_A_DAY - 1, "min")
    return minute


def _mask(service_days: int) -> int:
    if not 0 <= service_days <= EVERY_DAY:
        raise OutOfRangeError("service days", service_days, 0, EVERY_DAY, "")
    return service_days
