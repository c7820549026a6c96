"""Parse days: '24 Nov', 'November 24th', 'on Tuesday', 'el martes', '3 days ago', '13/5', '5.12.2026'."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping, Sequence
from fractions import Fraction
from functools import cache, lru_cache
from typing import Literal

from babel import Locale
from babel.dates import get_day_names, get_month_names

from bot.chat.i18n.keywords import stands_for
from bot.chat.i18n.languages import understood
from bot.chat.i18n.numbers import number_words

EITHER_DAY = " or "
"""Between the two dates that a day in figures may be."""
_LEADS = ("ON", "ARTICLE")
NEXT, NEXT_WEEK, WEEK_AFTER = " next", " next week", " week after"
"""After a weekday that is to come: the next one, that of the next calendar week, a week after the next."""
_AGO_WORDS = 3
_SPANS = {  # in days
    "HOURS": Fraction(1, 24),
    "DAYS": Fraction(1),
    "WEEKS": Fraction(7),
    "MONTHS": Fraction(30),
}
_MOST_LEADS = 2  # 'on the 24th', 'en el'
_ORDINALS = frozenset({"st", "nd", "rd", "th"})
# A year, or the last point of '12.5.', tells a day from a number. The dash needs a year: 3-4 is a range.
_NUMERIC = re.compile(
    r"(\d{1,2})(?:/(\d{1,2})(?:/(\d{4}|\d\d))?|\.(\d{1,2})\.(\d{4}|\d\d)?|-(\d{1,2})-(\d{4}))(?![\w/-]|\.\d)",
    re.ASCII,
)
_MONTHS = 12
_WIDTHS: tuple[Literal["wide", "abbreviated"], ...] = ("wide", "abbreviated")


def day_phrase(words: Sequence[str], language: str) -> tuple[str, int] | None:
    """Return the day at the start of some words, and the number of its words; None if there is none.

    The day has the ISO 8601 form without a year: '--11-24', '-W-2' for a Tuesday, and '-P3D' for a time ago.
    A Tuesday to come has what follows it: '-W-2 next', '-W-2 next week', '-W-2 week after'.
    """
    plain = [_plain(word) for word in words]
    back = _ago(plain, language)
    if back is not None:
        return back
    for lead in range(min(_MOST_LEADS, len(plain) - 1), -1, -1):
        if are_leads(plain[:lead], language):
            found = _day(plain[lead:], language)
            if found is not None:
                return found[0], found[1] + lead
    return None


def are_leads(words: Sequence[str], language: str) -> bool:
    """Whether all the words may stand before a day: 'on the'."""
    return all(any(stands_for(word, one, language) for one in _LEADS) for word in words)


def _day(words: Sequence[str], language: str) -> tuple[str, int] | None:
    months = _names(language)[1]
    weekday = _weekday(words, language)
    if weekday is not None:
        return weekday
    if words[0] in months and len(words) > 1 and _is_day(words[1]):
        ordinal = len(words) > 2 and words[2] in _ORDINALS
        return f"--{months[words[0]]:02}-{int(words[1]):02}", 2 + ordinal
    if not _is_day(words[0]):
        return None
    at = 1
    if at < len(words) and words[at] in _ORDINALS:
        at += 1
    if at < len(words) and stands_for(words[at], "OF", language):
        at += 1
    if at < len(words) and words[at] in months:
        return f"--{months[words[at]]:02}-{int(words[0]):02}", at + 1
    return None


def _weekday(words: Sequence[str], language: str) -> tuple[str, int] | None:
    """Parse 'tuesday', 'next tuesday', 'tuesday next week', 'el martes que viene', 'tuesday 24 november'."""
    days = _names(language)[0]
    before, at = _next(words, language)
    at += _leads(words[at:], language) if at else 0
    if at >= len(words) or words[at] not in days:
        return None
    day, at = f"-W-{days[words[at]] + 1}", at + 1
    comma = at < len(words) and words[at] == ","
    led = at + comma + _leads(words[at + comma :], language)
    dated = _day(words[led:], language) if led < len(words) and not before else None
    if dated is not None and dated[0].startswith("--"):
        return dated[0], led + dated[1]
    after, length = _next(words[at:], language)
    if not after and at < len(words) and stands_for(words[at], "WEEKS", language):
        return day + WEEK_AFTER, at + 1  # 'thursday week'
    return day + (after or before), at + length


def _next(words: Sequence[str], language: str) -> tuple[str, int]:
    """Parse 'next', 'of next week', 'de la semana que viene'; return ('', 0) if there is none."""
    at = int(bool(words) and stands_for(words[0], "OF", language))
    at += _leads(words[at:], language)
    week = at < len(words) and stands_for(words[at], "WEEKS", language)
    at += week
    length = next((n for n in (2, 1) if stands_for(" ".join(words[at : at + n]), "NEXT", language)), 0)
    if not length:
        return "", 0
    at += length
    if not week and at < len(words) and stands_for(words[at], "WEEKS", language):
        week, at = True, at + 1
    return NEXT_WEEK if week else NEXT, at


def next_week(words: Sequence[str], language: str) -> int:
    """Return how many of the first words are 'next week' or 'la semana que viene', 0 if they are not."""
    which, length = _next([_plain(word) for word in words], language)
    return length if which == NEXT_WEEK else 0


def _leads(words: Sequence[str], language: str) -> int:
    """Return how many of the first words may stand before a day."""
    most = min(_MOST_LEADS, len(words))
    return next((n for n in range(most, 0, -1) if are_leads(words[:n], language)), 0)


def _ago(words: Sequence[str], language: str) -> tuple[str, int] | None:
    """Parse '3 days ago' or 'hace dos semanas'."""
    if len(words) < _AGO_WORDS:
        return None
    first, second, third = words[:_AGO_WORDS]
    if stands_for(third, "AGO", language):
        count, unit = first, second
    elif stands_for(first, "AGO", language):
        count, unit = second, third
    else:
        return None
    number = Fraction(count) if count.isdecimal() else number_words(language).get(count)
    days = next((days for one, days in _SPANS.items() if stands_for(unit, one, language)), None)
    return None if number is None or days is None else (f"-P{int(number * days)}D", _AGO_WORDS)


def numeric_day(text: str, start: int) -> tuple[str, int] | None:
    """Return the day in figures at a place of a text, as ISO 8601, and where it ends; None if there is none.

    '12/5' has two readings, '--05-12 or --12-05': the one with the day first stands first.
    """
    found = _NUMERIC.match(text, start)
    if found is None:
        return None
    one, *rest = (int(part) for part in found.groups() if part is not None)
    other, year = rest[0], f"{2000 + rest[1] % 2000}-" if len(rest) > 1 else "--"
    both = [
        f"{year}{month:02}-{day:02}"
        for day, month in dict.fromkeys(((one, other), (other, one)))
        if 1 <= month <= _MONTHS and 1 <= day <= 31
    ]
    return (EITHER_DAY.join(both), found.end()) if both else None


def _is_day(word: str) -> bool:
    return word.isdecimal() and 1 <= int(word) <= 31


def month_names(language: str) -> Mapping[str, int]:
    """Return the months by their full and short names without accents; January is 1."""
    return _names(language)[1]


def plural_weekday(word: str, language: str) -> int | None:
    """Return the weekday that a plural names, Monday is 0: 'mondays', but not 'tues' or 'lunes'."""
    plain = _plain(word)
    if not plain.endswith("s") or plain in _names(language)[0]:
        return None
    return _weekdays(language).get(plain.removesuffix("s"))


@cache
def _weekdays(language: str) -> Mapping[str, int]:
    locales = [Locale.parse(one.locale, sep="_") for one in understood(language)]
    names = (get_day_names("wide", locale=locale).items() for locale in locales)
    return {_plain(name): day for one in names for day, name in one}


@cache
def _names(language: str) -> tuple[Mapping[str, int], Mapping[str, int]]:
    """Return the names of days (Monday is 0) and of months (January is 1), full and abbreviated."""
    days: dict[str, int] = {}
    months: dict[str, int] = {}
    for one in reversed(understood(language)):
        locale = Locale.parse(one.locale, sep="_")
        for width in _WIDTHS:
            days |= {_plain(name): day for day, name in get_day_names(width, locale=locale).items()}
            months |= {_plain(name): month for month, name in get_month_names(width, locale=locale).items()}
    return days, months


@lru_cache(maxsize=1024)
def _plain(word: str) -> str:
    low = word.casefold().rstrip(".")
    return "".join(c for c in unicodedata.normalize("NFKD", low) if not unicodedata.combining(c))
