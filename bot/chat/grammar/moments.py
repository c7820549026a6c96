"""Read when something is to happen, before or after free words: 'tomorrow 16:00 order limes'.

The words are free, so no grammar holds them. The pieces of the lexer that name a time are taken from the
start of a text, else from its end.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from fractions import Fraction

from bot.chat.grammar.day_phrases import plural_weekday
from bot.chat.grammar.lexer import Option, Reader, Vocabulary
from bot.chat.grammar.syntax import DAYS_AGO, Day
from bot.chat.i18n.language import tongue

_LEADS = frozenset({"ON", "AT", "FOR", "COMMA", "NEXT", "ARTICLE", "IN"})
_AFTER = frozenset({"COLON", "COMMA", "TO", "OF", "DASH", "THAT"})
_PARTS = frozenset({"MORNING", "AFTERNOON", "EVENING"})
_SPANS = {"MINUTES": Fraction(1, 60), "HOURS": Fraction(1), "DAYS": Fraction(24), "WEEKS": Fraction(168)}
_CLOCK = re.compile(r"(\d{1,2})(?::(\d{2}))?", re.ASCII)
_HALF_DAY = re.compile(r"([ap])\.?m\.?", re.IGNORECASE)
_EVERY_DAY = 0b1111111
_MOST_LEADS = 3
_NOON = 12 * 60


@dataclass(frozen=True, slots=True)
class Moment:
    """A time as typed: a day, the minute of the day, a part of the day, a delay in hours, or weekdays.

    `days` are the weekdays on which it is repeated, bit 0 for Monday. `sure` is false where the minute may be
    of the morning or of the evening: 'at 4'.
    """

    day: Day | None = None
    minute: int | None = None
    part: str = ""
    delay: Fraction | None = None
    days: int = 0
    sure: bool = True

    @property
    def is_empty(self) -> bool:
        """Whether it says nothing."""
        return self == Moment()


def split_moment(text: str, vocabulary: Vocabulary) -> tuple[Moment, str]:
    """Return the time that a text begins or ends with, and the rest of its words."""
    reader = Reader(text, vocabulary)
    moment, at = _moment(reader, 0, Moment())
    rest_from = _after(reader, at)
    for start in range(rest_from + 1, len(reader.pieces)):
        more, end = _moment(reader, start, moment)
        if end == len(reader.pieces) and more != moment:
            return more, text[_start(reader, rest_from) : reader.pieces[start - 1].end]
    return moment, text[_start(reader, rest_from) :].strip()


def _start(reader: Reader, at: int) -> int:
    return reader.pieces[at].start if at < len(reader.pieces) else len(reader.text)


def _after(reader: Reader, at: int) -> int:
    """Skip the sign or the little word between the time and the words."""
    while at < len(reader.pieces) and _named(reader, at, _AFTER) is not None:
        at += 1
    return at


def _moment(reader: Reader, at: int, known: Moment) -> tuple[Moment, int]:
    """Return the time from this piece on, added to what is known, and the piece after it."""
    while at < len(reader.pieces):
        taken = None
        for lead in range(_MOST_LEADS):
            if lead and _named(reader, at + lead - 1, _LEADS) is None:
                break
            taken = _piece(reader, at + lead, lead > 0, known)
            if taken is not None:
                break
        if taken is None:
            return known, at
        known, at = taken
    return known, at


def _named(reader: Reader, at: int, terminals: frozenset[str]) -> Option | None:
    if at >= len(reader.pieces):
        return None
    return next((one for one in reader.options(at) if one.terminal in terminals), None)


def _piece(reader: Reader, at: int, led: bool, known: Moment) -> tuple[Moment, int] | None:
    """Return one part of a time that is not known yet; `led` means that a word such as 'at' precedes it."""
    if known.delay is not None:
        return None
    every = _named(reader, at, frozenset({"EVERY"}))
    if not known.days and known.day is None:
        if every is not None:
            return _repeated(reader, at + every.length, known)
        mondays = _weekdays(reader, at, False)
        if mondays is not None:
            return replace(known, days=mondays[0]), mondays[1]
    day = _named(reader, at, frozenset({"DATE", "DAY", "TODAY", "TOMORROW", "NUMBER"}))  # a half is no day
    if (
        day is not None
        and day.terminal != "NUMBER"
        and known.day is None
        and not known.days
        and not str(day.value).startswith("-P")
    ):
        return replace(known, day=_day(reader, at, day)), at + day.length
    part = _named(reader, at, _PARTS)
    if part is not None and not known.part and (led or known != Moment()):
        return _in_part(known, part.terminal), at + part.length
    number = _named(reader, at, frozenset({"NUMBER", "TIME"}))
    if number is None:
        return None
    return (
        _delay(reader, at, number, led, known)
        or _time(reader, at, led, known)
        or _fraction_as_day(reader, at, led, known)
    )


def _in_part(known: Moment, part: str) -> Moment:
    """Add a part of the day; after a minute it says in which half of the day: 'at 4 in the evening'."""
    if known.minute is None:
        return replace(known, part=part.lower())
    later = part != "MORNING" and not known.sure and known.minute < _NOON
    return replace(known, part=part.lower(), minute=known.minute + (_NOON if later else 0), sure=True)


def _repeated(reader: Reader, at: int, known: Moment) -> tuple[Moment, int] | None:
    weekdays = _weekdays(reader, at, True)
    if weekdays is not None:
        return replace(known, days=weekdays[0]), weekdays[1]
    day = _named(reader, at, frozenset({"DAYS", "EVENING", "MORNING"}))
    if day is None:
        return None
    part = "" if day.terminal == "DAYS" else day.terminal.lower()
    return replace(known, days=_EVERY_DAY, part=part), at + day.length


def _weekdays(reader: Reader, at: int, every: bool) -> tuple[int, int] | None:
    """Return the bits of 'mondays and fridays', after 'every' also of 'monday', and the piece after."""
    found = _weekday(reader, at, every)
    if found is None:
        return None
    days, at = found
    while (
        _named(reader, at, frozenset({"AND", "COMMA"})) is not None
        and (found := _weekday(reader, at + 1, every)) is not None
    ):
        days, at = days | found[0], found[1]
    return days, at


def _weekday(reader: Reader, at: int, every: bool) -> tuple[int, int] | None:
    if at >= len(reader.pieces):
        return None
    plural = plural_weekday(reader.pieces[at].text, tongue().language)
    if plural is not None:
        return 1 << plural, at + 1
    day = _named(reader, at, frozenset({"DAY"})) if every else None
    if day is None or not str(day.value).startswith("-W-"):
        return None
    return 1 << int(str(day.value)[3:]) - 1, at + day.length


def _fraction_as_day(reader: Reader, at: int, led: bool, known: Moment) -> tuple[Moment, int] | None:
    """Return '3/4' as a day at the beginning, after 'on', or before a time; '1/2 case' is an amount."""
    day = _named(reader, at, frozenset({"DAY"}))
    if day is None or known.day is not None or known.days:
        return None
    after = at + day.length
    if _named(reader, after, frozenset({"PACKS", "OF"})) is not None:
        return None
    if not (led or at == 0 or _named(reader, after, frozenset({"AT", "TIME"})) is not None):
        return None
    return replace(known, day=_day(reader, at, day)), after


def _day(reader: Reader, at: int, option: Option) -> Day:
    said = reader.text[reader.pieces[at].start : reader.pieces[at + option.length - 1].end]
    if option.terminal in {"DATE", "DAY"}:
        return Day(str(option.value), words=said)
    return Day(None, DAYS_AGO[option.terminal], words=said)


def _delay(reader: Reader, at: int, number: Option, led: bool, known: Moment) -> tuple[Moment, int] | None:
    span = _named(reader, at + number.length, frozenset(_SPANS))
    if span is None or not led or not known.is_empty or not isinstance(number.value, Fraction):
        return None
    if _named(reader, at - 1, frozenset({"IN"})) is None:
        return None
    return Moment(delay=number.value * _SPANS[span.terminal]), at + number.length + span.length


def _time(reader: Reader, at: int, led: bool, known: Moment) -> tuple[Moment, int] | None:
    found = _CLOCK.fullmatch(reader.pieces[at].text)
    if found is None or known.minute is not None:
        return None
    hour, minute, length = int(found[1]), int(found[2] or 0), 1
    following = reader.pieces[at + 1].text if at + 1 < len(reader.pieces) else ""
    half = _HALF_DAY.fullmatch(following)
    if half is not None:
        length = 2
        hour = hour % 12 + (12 if half[1].casefold() == "p" else 0)
    elif found[2] is None and following.casefold() == "h":
        length = 2
    elif found[2] is None and not (led and _named(reader, at - 1, frozenset({"AT", "ARTICLE"})) is not None):
        return None
    if hour > 23 or minute > 59:
        return None
    sure = half is not None or found[2] is not None or length == 2
    return replace(known, minute=hour * 60 + minute, sure=sure), at + length
