"""Parse and show the values of settings."""

from __future__ import annotations

import re
from datetime import UTC, datetime, time

from babel import Locale
from babel.dates import format_time, get_day_names

from bot.chat.i18n.language import _, tongue

Changes = dict[str, object]  # settings by name, with new values
CLOSING_CHOICES = (5 * 60, 4 * 60, 3 * 60, 2 * 60, 60, 6 * 60)
_CLOCK = re.compile(r"^(\d{1,2})(?:[:.h](\d{2}))?\s*([ap])?\.?\s?m?\.?$", re.IGNORECASE)


def says_off(text: str) -> bool:
    """Whether a value means off."""
    return text.strip().casefold() in {"off", "no", "none", _("off").casefold(), _("none").casefold()}


def says_on(text: str) -> bool:
    """Whether a value means on."""
    return text.strip().casefold() in {"on", "yes", _("on").casefold(), _("yes").casefold()}


def says_usual(text: str) -> bool:
    """Whether a value asks for the default."""
    usual = {"usual", "default", "the usual ones", _("usual").casefold(), _("the usual ones").casefold()}
    return text.strip().casefold() in usual


def read_clock(text: str) -> int | None:
    """Parse '05:00', '5', '5 am' or '11.30 pm' as minutes from midnight; None for any other text."""
    found = _CLOCK.match(text.strip())
    if found is None:
        return None
    hour, minute = int(found[1]), int(found[2] or 0)
    half = (found[3] or "").casefold()
    if half:
        if not 1 <= hour <= 12:
            return None
        hour = hour % 12 + (12 if half == "p" else 0)
    if hour > 23 or minute > 59:
        return None
    return hour * 60 + minute


def show_clock_minute(minute: int) -> str:
    """Write minutes from midnight as a time of day in the locale's format."""
    moment = datetime.combine(datetime(2000, 1, 1, tzinfo=UTC), time(minute // 60 % 24, minute % 60))
    return format_time(moment, "short", locale=Locale.parse(tongue().locale)).replace("\u202f", " ")


def clock_text(minute: int) -> str:
    """Write minutes from midnight in the form of every time parser: '05:00'."""
    return f"{minute // 60 % 24:02}:{minute % 60:02}"


def show_span(begin: int, end: int) -> str:
    """Write the hours between two times in minutes from midnight; 'none' if they are equal."""
    if begin == end:
        return _("none")
    return f"{show_clock_minute(begin)} - {show_clock_minute(end)}"


def day_names(locale: str = "") -> list[str]:
    """Return the short names of the days in the given or current locale, Monday first."""
    names = get_day_names("abbreviated", locale=Locale.parse(locale or tongue().locale))
    return [names[day] for day in range(7)]
