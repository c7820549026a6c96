"""Read a time of the clock: '16:00', 'at 9.30', '4 pm', 'half past nine', 'las ocho y media', 'noon'."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from bot.chat.grammar.lexer import Option, Reader

NOON = 12 * 60
_CLOCK = re.compile(r"(\d{1,2})(?:[:.](\d{2}))?", re.ASCII)
_HALF_DAY = re.compile(r"([ap])\.?m\.?", re.IGNORECASE)
_HOUR_SIGNS = frozenset({"h", "hs", "hrs", "o'clock", "oclock", "o’clock"})
_NAMED = {"NOON": NOON, "MIDNIGHT": 0}
_PAST = {"HALF_PAST": 30, "QUARTER_PAST": 15, "QUARTER_TO": -15}
_USUAL_FROM = 7  # '04:30' is on the 24-hour clock, '4:30' hardly is
_AFTER_MIDNIGHT = 5  # 'at 4 at night' is before dawn. Common practice, no source.


@dataclass(frozen=True, slots=True)
class ClockTime:
    """A minute of the day; `sure` is false where it may be of the morning or of the evening: '4', '9:30'."""

    minute: int
    sure: bool


def clock_time(reader: Reader, at: int, led: bool) -> tuple[ClockTime, int] | None:
    """Return the time at a piece, and the piece after it; `led` means that 'at' or the like precedes."""
    named = named_option(reader, at, frozenset(_NAMED))
    if named is not None:
        return ClockTime(_NAMED[named.terminal], sure=True), at + named.length
    before = named_option(reader, at, frozenset(_PAST))  # 'half past nine'
    figures = _figures(reader, at + (before.length if before else 0))
    if figures is None:
        return None
    hour, minute, after = figures
    past = before or named_option(reader, after, frozenset(_PAST))  # 'las ocho y media'
    if past is not None:
        minute = _PAST[past.terminal]
        after += past.length if before is None else 0
    following = reader.pieces[after].text.casefold() if after < len(reader.pieces) else ""
    half = _HALF_DAY.fullmatch(following)
    is_time = reader.pieces[after - 1].terminal == "TIME" or half or following in _HOUR_SIGNS or before
    if not is_time and not (led and _is_led(reader, at)):
        return None
    if half is not None:
        hour = hour % 12 + (12 if half[1] == "p" else 0)
    if not 0 <= hour * 60 + minute < 24 * 60 or minute > 59:
        return None
    before_dawn = reader.pieces[at].text.startswith("0") and hour < _USUAL_FROM
    sure = half is not None or not 0 < hour <= 12 or before_dawn
    return ClockTime(hour * 60 + minute, sure), after + (half is not None or following in _HOUR_SIGNS)


def _figures(reader: Reader, at: int) -> tuple[int, int, int] | None:
    """Return the hour and the minute of a piece, and the piece after it: '9', '9:30', 'nine'."""
    if at >= len(reader.pieces):
        return None
    found = _CLOCK.fullmatch(reader.pieces[at].text)
    if found is not None:
        return int(found[1]), int(found[2] or 0), at + 1
    number = named_option(reader, at, frozenset({"NUMBER"}))
    value = None if number is None else number.value
    is_hour = isinstance(value, Fraction) and value.denominator == 1 and 1 <= value <= 12
    return (int(value), 0, at + 1) if is_hour and isinstance(value, Fraction) else None


def _is_led(reader: Reader, at: int) -> bool:
    """Whether 'at' or 'a las' precedes a piece: 'the 2 boxes' is no time."""
    article = named_option(reader, at - 1, frozenset({"ARTICLE"})) is not None
    return named_option(reader, at - 2 if article else at - 1, frozenset({"AT"})) is not None


def named_option(reader: Reader, at: int, terminals: frozenset[str]) -> Option | None:
    """Return the first reading of a piece as one of these terminals."""
    if not 0 <= at < len(reader.pieces):
        return None
    return next((one for one in reader.options(at) if one.terminal in terminals), None)


def in_part(minute: int, part: str) -> int:
    """Return the minute of an hour on the 12-hour clock in a part of the day: 'at 4 in the afternoon'."""
    hour = minute % NOON
    if part == "evening":
        return hour if hour < _AFTER_MIDNIGHT * 60 else hour + NOON
    return hour if part == "morning" and hour >= 60 else hour + NOON  # 'las 12 de la mañana' is noon
