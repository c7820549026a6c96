"""Wall times at clock changes against published dates and IANA data; weeks against ISO 8601."""

from __future__ import annotations

from datetime import date
from functools import partial

from bot.trade.days import business_day_span, instant_of, local_time, week_of
from tests.outside.check import Check, Mark

UK = "UK government (nidirect.gov.uk): last Sundays of March and October, at 01:00 GMT"
UNITED_STATES = "second Sunday of March and first of November at 02:00, several public pages"
LORD_HOWE = (
    "timeanddate.com, clock changes of Lord Howe Island: first Sundays of October and April, by 30 min"
)


def _utc(zone: str, day: date, minute: int) -> str:
    return instant_of(day, minute, zone).strftime("%Y-%m-%d %H:%M UTC")


def _shown(zone: str, day: date, minute: int) -> str:
    return local_time(instant_of(day, minute, zone), zone).strftime("%H:%M %z")


def _hours(zone: str, day: date) -> float:
    start, end = business_day_span(day, zone)
    return (end - start).total_seconds() / 3600


def _gap(zone: str, day: date, minute: int, utc: str, shown: str, source: str) -> list[Check]:
    """The first instant after a wall time that does not exist, and the wall time then."""
    what = f"{minute // 60:02}:{minute % 60:02} on {day} in {zone}, which is left out"
    return [
        Check("days", f"{what}: instant", source, Mark.READ, utc, partial(_utc, zone, day, minute)),
        Check("days", f"{what}: shown", source, Mark.READ, shown, partial(_shown, zone, day, minute)),
    ]


def _overlap(zone: str, day: date, minute: int, utc: str, source: str) -> Check:
    """The first of two instants with the same wall time."""
    what = f"first {minute // 60:02}:{minute % 60:02} on {day} in {zone}, which comes twice"
    return Check("days", what, source, Mark.READ, utc, partial(_utc, zone, day, minute))


def _length(zone: str, day: date, hours: float, source: str) -> Check:
    what = f"business day of {day} in {zone}, 05:00 to 05:00"
    return Check("days", what, source, Mark.READ, hours, partial(_hours, zone, day), "h")


def _week(day: date, written: str, source: str) -> Check:
    def got() -> str:
        week = week_of(day)
        return f"{week.year}-W{week.number:02}, {week.first} to {week.last}"

    return Check("days", f"week of {day}", source, Mark.READ, written, got)


CHECKS = [
    *_gap("Europe/London", date(2027, 3, 28), 90, "2027-03-28 01:00 UTC", "02:00 +0100", UK),
    _overlap("Europe/London", date(2026, 10, 25), 90, "2026-10-25 00:30 UTC", UK),
    _length("Europe/London", date(2027, 3, 27), 23, UK),
    _length("Europe/London", date(2026, 10, 24), 25, UK),
    *_gap("America/New_York", date(2027, 3, 14), 150, "2027-03-14 07:00 UTC", "03:00 -0400", UNITED_STATES),
    _overlap("America/New_York", date(2026, 11, 1), 90, "2026-11-01 05:30 UTC", UNITED_STATES),
    _length("America/New_York", date(2027, 3, 13), 23, UNITED_STATES),
    _length("America/New_York", date(2026, 10, 31), 25, UNITED_STATES),
    *_gap("Australia/Lord_Howe", date(2026, 10, 4), 135, "2026-10-03 15:30 UTC", "02:30 +1100", LORD_HOWE),
    _overlap("Australia/Lord_Howe", date(2027, 4, 4), 105, "2027-04-03 14:45 UTC", LORD_HOWE),
    _length("Australia/Lord_Howe", date(2026, 10, 3), 23.5, LORD_HOWE),
    _length("Australia/Lord_Howe", date(2027, 4, 3), 24.5, LORD_HOWE),
    _week(
        date(1997, 1, 1),
        "1997-W01, 1996-12-30 to 1997-01-05",
        "ISO 8601, example in a public summary of the date and time notation",
    ),
    _week(
        date(2006, 12, 31),
        "2006-W52, 2006-12-25 to 2006-12-31",
        "ISO 8601, example in an encyclopaedia's article on the week date",
    ),
    _week(
        date(2012, 12, 31),
        "2013-W01, 2012-12-31 to 2013-01-06",
        "ISO 8601 rule for week numbers (docslib.org copy)",
    ),
    _week(
        date(2019, 12, 30),
        "2020-W01, 2019-12-30 to 2020-01-05",
        "ISO 8601, example in an encyclopaedia's article on the week notation",
    ),
    _week(
        date(2016, 1, 3),
        "2015-W53, 2015-12-28 to 2016-01-03",
        "ISO 8601 rule for week numbers (docslib.org copy): 2015 has 53 weeks",
    ),
]
