"""Read when something is to happen, before or after free words: 'tomorrow 16:00 order limes'.

The words are free, so no grammar holds them. The pieces of the lexer that name a time are taken from the
start of a text, else from its end.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from bot.chat.grammar.clock_times import clock_time, in_part, named_option
from bot.chat.grammar.day_phrases import NEXT_WEEK, next_week, plural_weekday
from bot.chat.grammar.lexer import Option, Reader, Vocabulary
from bot.chat.grammar.syntax import DAYS_AGO, Day
from bot.chat.i18n.language import tongue

_LEADS = frozenset({"ON", "AT", "FOR", "COMMA", "NEXT", "ARTICLE", "IN", "THIS", "OF"})
_AFTER = frozenset({"COLON", "COMMA", "TO", "OF", "DASH", "THAT"})
_PARTS = frozenset({"MORNING", "AFTERNOON", "EVENING"})
_SPANS = {"MINUTES": Fraction(1, 60), "HOURS": Fraction(1), "DAYS": Fraction(24), "WEEKS": Fraction(168)}
_DAYS = frozenset({"DATE", "DAY", "NUMBER", *DAYS_AGO} - {"YESTERDAY"})  # a half is a number, and no day
_EVERY_DAY = 0b1111111
_MOST_LEADS = 3
_LONGEST_WEEK = 5  # 'la semana que viene'


@dataclass(frozen=True, slots=True)
class Moment:
    """A time as typed: a day, the minute of the day, a part of the day, a delay in hours, or weekdays.

    `days` are the weekdays on which it is repeated, bit 0 for Monday. `sure` is false where the minute may be
    of the morning or of the evening: 'at 4', '9:30'.
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


_NO_TIME = Moment(minute=0)


def split_moment(text: str, vocabulary: Vocabulary) -> tuple[Moment, str]:
    """Return the time that a text begins or ends with, and the rest of its words."""
    moment, rest = _split(text, vocabulary)
    if moment.minute is None or moment.sure or not moment.part:
        return moment, rest
    return replace(moment, minute=in_part(moment.minute, moment.part), sure=True), rest


def split_day(text: str, vocabulary: Vocabulary) -> tuple[Day | None, str]:
    """Return the day that a text begins or ends with, and the rest; a time stays in the words."""
    reader = Reader(text, vocabulary)
    moment, at = _moment(reader, 0, _NO_TIME)
    if moment.day is not None:
        return moment.day, text[_start(reader, _after(reader, at)) :].strip()
    found, rest = split_moment(text, vocabulary)
    return found.day, rest if found == Moment(day=found.day, part=found.part) else text


def _split(text: str, vocabulary: Vocabulary) -> tuple[Moment, str]:
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
    while at < len(reader.pieces) and named_option(reader, at, _AFTER) is not None:
        at += 1
    return at


def _moment(reader: Reader, at: int, known: Moment) -> tuple[Moment, int]:
    """Return the time from this piece on, added to what is known, and the piece after it."""
    while at < len(reader.pieces):
        taken = None
        for lead in range(_MOST_LEADS):
            if lead and named_option(reader, at + lead - 1, _LEADS) is None:
                break
            taken = _piece(reader, at + lead, lead > 0, known)
            if taken is not None:
                break
        if taken is None:
            return known, at
        known, at = taken
    return known, at


def _piece(reader: Reader, at: int, led: bool, known: Moment) -> tuple[Moment, int] | None:
    """Return one part of a time that is not known yet; `led` means that a word such as 'at' precedes it."""
    if known.delay is not None:
        return None
    every = named_option(reader, at, frozenset({"EVERY"}))
    if not known.days and known.day is None:
        if every is not None:
            return _repeated(reader, at + every.length, known)
        mondays = _weekdays(reader, at, False)
        if mondays is not None:
            return replace(known, days=mondays[0]), mondays[1]
    day = named_option(reader, at, _DAYS)
    if (
        day is not None
        and day.terminal != "NUMBER"
        and known.day is None
        and not known.days
        and not str(day.value).startswith("-P")
    ):
        tonight = named_option(reader, at, frozenset({"TONIGHT"})) is not None and not known.part
        half = "evening" if tonight else known.part
        return replace(known, day=_day(reader, at, day), part=half), at + day.length
    if known.day is None and not known.days and (later := _later_day(reader, at)) is not None:
        return replace(known, day=later[0]), later[1]
    part = named_option(reader, at, _PARTS)
    if part is not None and not known.part and (led or known != Moment()):
        return replace(known, part=part.terminal.lower()), at + part.length
    return (
        _delay(reader, at, led, known)
        or _time(reader, at, led, known)
        or _fraction_as_day(reader, at, led, known)
    )


def _repeated(reader: Reader, at: int, known: Moment) -> tuple[Moment, int] | None:
    weekdays = _weekdays(reader, at, True)
    if weekdays is not None:
        return replace(known, days=weekdays[0]), weekdays[1]
    day = named_option(reader, at, frozenset({"DAYS", "EVENING", "MORNING"}))
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
        named_option(reader, at, frozenset({"AND", "COMMA"})) is not None
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
    day = named_option(reader, at, frozenset({"DAY"})) if every else None
    weekday = "" if day is None else str(day.value)
    if day is None or not weekday.startswith("-W-") or len(weekday) > len("-W-1"):
        return None
    return 1 << int(weekday[3]) - 1, at + day.length


def _fraction_as_day(reader: Reader, at: int, led: bool, known: Moment) -> tuple[Moment, int] | None:
    """Return '3/4' as a day at the beginning, after 'on', or before a time; '1/2 case' is an amount."""
    day = named_option(reader, at, frozenset({"DAY"}))
    if day is None or known.day is not None or known.days:
        return None
    after = at + day.length
    if named_option(reader, after, frozenset({"PACKS", "OF"})) is not None:
        return None
    if not (led or at == 0 or named_option(reader, after, frozenset({"AT", "TIME"})) is not None):
        return None
    return replace(known, day=_day(reader, at, day)), after


def _later_day(reader: Reader, at: int) -> tuple[Day, int] | None:
    """Return 'next week' as its Monday, and 'the 5th' or 'el día 5' as the next day of that number."""
    words = [piece.text for piece in reader.pieces[at : at + _LONGEST_WEEK]]
    length = next_week(words, tongue().language)
    if length:
        return Day(f"-W-1{NEXT_WEEK}", words=" ".join(words[:length])), at + length
    named = named_option(reader, at, frozenset({"DAYS"}))
    number = reader.pieces[at + (named is not None)].text if at + 1 < len(reader.pieces) else ""
    if not number.isdecimal() or not 1 <= int(number) <= 31:
        return None
    if named is None and named_option(reader, at + 1, frozenset({"NTH"})) is None:
        return None
    return Day(f"---{int(number):02}", words=f"{words[0]} {words[1]}"), at + 2


def _day(reader: Reader, at: int, option: Option) -> Day:
    said = reader.text[reader.pieces[at].start : reader.pieces[at + option.length - 1].end]
    if option.terminal in {"DATE", "DAY"}:
        return Day(str(option.value), words=said)
    return Day(None, DAYS_AGO[option.terminal], words=said)


def _delay(reader: Reader, at: int, led: bool, known: Moment) -> tuple[Moment, int] | None:
    number = named_option(reader, at, frozenset({"NUMBER"}))
    span = None if number is None else named_option(reader, at + number.length, frozenset(_SPANS))
    if (
        number is None
        or span is None
        or not led
        or not known.is_empty
        or not isinstance(number.value, Fraction)
    ):
        return None
    within = (named_option(reader, at - length, frozenset({"IN"})) for length in (1, 2))  # 'in', 'dentro de'
    if not any(one is not None and one.length == length for length, one in enumerate(within, 1)):
        return None
    return Moment(delay=number.value * _SPANS[span.terminal]), at + number.length + span.length


def _time(reader: Reader, at: int, led: bool, known: Moment) -> tuple[Moment, int] | None:
    found = None if known.minute is not None else clock_time(reader, at, led)
    return None if found is None else (replace(known, minute=found[0].minute, sure=found[0].sure), found[1])
