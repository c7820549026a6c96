"""The shared slot for the day of an entry, and the parsing of days."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from contextlib import suppress
from dataclasses import replace
from datetime import date, timedelta
from fractions import Fraction

from bot.chat.dialogue.inputs.settling import INSTEAD
from bot.chat.dialogue.slots import Given, Slot
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.grammar.day_phrases import EITHER_DAY, NEXT_WEEK, WEEK_AFTER
from bot.chat.grammar.syntax import Day, DaySpan
from bot.chat.i18n.language import _, is_month_first, show_day, show_full_day, show_number
from bot.chat.reply.message import Button, Reply, Text, reply
from bot.trade.days import business_day_span

_MOST_DAYS_AGO = 400
_LEAP_YEARS = 8  # at most so many years lie between two of them
_AFTER_CLOSING = timedelta(
    hours=3
)  # while the night before is still being cleared up. Common practice, no source.


def read_day(turn: Turn, value: Day, fits: Callable[[date], bool] = lambda day: True) -> date:
    """Return a day as typed, by the bar's business days; without a year the nearest of that date.

    Of the two readings of 12/5, the one by the locale is taken if it `fits`; else both are offered.
    """
    return day_meant(turn, value, _on_calendar, fits)


def day_meant(
    turn: Turn, value: Day, on_calendar: Callable[[Day, date], date], fits: Callable[[date], bool]
) -> date:
    """Return a day as typed, by a rule for the year; see read_day."""
    days = []
    for one in (value.date or "").split(EITHER_DAY):
        with suppress(ValueError, OverflowError):  # 31/4, or a year with five digits
            days.append(on_calendar(replace(value, date=one or None), turn.context.today))
    if not days:
        raise _no_day(value.words)
    if len(days) == 1:
        return days[0]
    month_first = is_month_first()
    if month_first is not None and fits(days[month_first]):
        return days[month_first]
    if (value.date or "").startswith("--"):
        days = [day if fits(day) else day.replace(year=day.year - 1) for day in days]
    rows = ((Button(show_day(day), turn.line_with(value.words, day.isoformat())),) for day in days)
    figures = next(word for word in value.words.split() if word[0].isdecimal())  # without 'on'
    raise Say(reply(_("Which day is {day}?").format(day=figures), buttons=tuple(rows)))


def _on_calendar(value: Day, today: date) -> date:
    if value.date is None:
        return today - timedelta(days=value.days_ago)
    if value.date.startswith("-P"):
        return today - timedelta(days=int(value.date[2:-1]))
    if value.date.startswith("-W-"):
        coming = coming_weekday(value.date, today)
        return coming if value.date[4:] else _last_weekday(today, int(value.date[3]), value.before)
    if not value.date.startswith("--"):
        return date.fromisoformat(value.date)
    near = _dates(value.date, range(today.year - 1, today.year + 2))
    return min(near, key=lambda one: abs(one - today))


def coming_weekday(said: str, today: date) -> date:
    """Return the weekday to come: '-W-2' may be today, '-W-2 next' and '-W-2 next week' are not."""
    weekday, which = int(said[3]), said[4:]
    ahead = (weekday - today.isoweekday()) % 7
    if which == NEXT_WEEK:
        ahead = 7 - today.isoweekday() + weekday
    elif which:
        ahead = 7 + ahead if which == WEEK_AFTER else ahead or 7
    return today + timedelta(days=ahead)


def _dates(said: str, years: Iterable[int]) -> list[date]:
    """Return a date without a year in those of the years that have it: not all have 29 February."""
    month, day = map(int, said[2:].split("-"))
    found = []
    for year in years:
        with suppress(ValueError):
            found.append(date(year, month, day))
    return found


def _no_day(words: str) -> Say:
    return Say(reply(_("“{day}” is no day of the calendar.").format(day=words)))


def _last_weekday(today: date, weekday: int, before: bool) -> date:
    ago = (today.isoweekday() - weekday) % 7
    return today - timedelta(days=7 if before and not ago else ago)


def read_span(turn: Turn, value: DaySpan) -> tuple[date, date]:
    """Return the first and the last of some days. A first day without a year is the last one of its date."""
    today = turn.context.today
    if isinstance(value.first, Fraction):
        if value.last is None:
            return today - timedelta(days=max(round(value.first), 1) - 1), today
        assert isinstance(value.last, Day)  # noqa: S101 - one of them is a day
        last = day_meant(turn, value.last, _last_on_calendar, lambda day: day <= today)
        return _of_number(last, value.first, later=False), last
    first = day_meant(turn, value.first, _last_on_calendar, lambda day: day <= today)
    if value.last is None:
        return first, today
    if isinstance(value.last, Fraction):
        return first, _of_number(first, value.last, later=True)
    if value.last is value.first:
        return first, first
    last = day_meant(turn, value.last, lambda day, _today: _first_from(day, first, today), lambda day: True)
    return first, last


def _last_on_calendar(value: Day, today: date) -> date:
    if not (value.date or "").startswith("--"):
        return _on_calendar(value, today)
    days = _dates(value.date or "", range(today.year - _LEAP_YEARS, today.year + 1))
    return max(day for day in days if day <= today)


def _first_from(value: Day, first: date, today: date) -> date:
    """Return the first day from another one on, of a date without a year or of a weekday."""
    said = value.date or ""
    if said.startswith("-W-"):
        return first + timedelta(days=(int(said[3]) - first.isoweekday()) % 7)
    if not said.startswith("--"):
        return _on_calendar(value, today)
    return min(day for day in _dates(said, range(first.year, first.year + _LEAP_YEARS + 1)) if day >= first)


def _of_number(day: date, number: Fraction, later: bool) -> date:
    """Return the day of this number in the month of another day, or in the one next to it."""
    month = day.replace(day=1)
    if later and number < day.day:
        month = (month + timedelta(days=31)).replace(day=1)
    elif not later and number > day.day:
        month = (month - timedelta(days=1)).replace(day=1)
    try:
        return month.replace(day=int(number))
    except ValueError:
        raise _no_day(show_number(number)) from None


def accept_past_day(turn: Turn, given: Given, value: Day) -> date:
    """Parse a past or current business day; refuse future ones."""
    day = read_day(turn, value, lambda day: day <= turn.context.today)
    if day > turn.context.today:
        raise Say(reply(_("{day} is still to come.").format(day=show_day(day))))
    return day


def _accept_night(turn: Turn, given: Given, value: Day) -> date:
    day = accept_past_day(turn, given, value)
    if day < turn.context.today - timedelta(days=_MOST_DAYS_AGO):
        told = _("{day} is too long ago: I log up to {count} days back.")
        raise Say(reply(told.format(day=show_full_day(day), count=_MOST_DAYS_AGO)))
    return day


DAY_SLOT = Slot("day", _accept_night)
"""The business day of a log entry. It precedes the slots with questions."""


def day_words(turn: Turn, day: date | None) -> str:
    """Return an earlier day in words, '' for the current one."""
    return "" if day is None or day == turn.context.today else show_day(day)


def of_day(turn: Turn, first: str, day: date | None) -> str:
    """Put an earlier day before the first line of an answer."""
    words = day_words(turn, day)
    return _("{day}. {what}").format(day=words, what=first) if words else first


def noting_night(
    turn: Turn, answer: Reply, day: date | None, line: str, entries: Sequence[int | None] = ()
) -> Reply:
    """Say to which night entries count that were made soon after closing, and offer the night before.

    `line` logs the same again; `entries` are those it took, by default the last. A day that was said needs
    no note.
    """
    context, bar = turn.context, turn.context.bar
    begins, _ends = business_day_span(context.today, bar.zone, bar.closing_minute)
    if not line or day is not None or context.replaced is not None or context.now - begins >= _AFTER_CLOSING:
        return answer
    before = context.today - timedelta(days=1)
    note = Text(_("Counted for {day}: it is after closing.").format(day=show_day(context.today)))
    label = _("It was {day}").format(day=show_day(before))
    numbers = ",".join(map(str, entries or (context.entry,)))
    other = Button(label, f"{INSTEAD} {numbers} {line} {before.isoformat()}")
    return replace(answer, blocks=(*answer.blocks, note), buttons=(*answer.buttons, (other,)))


def with_day(line: str, day: date | None) -> str:
    """Return a button's line for the same day."""
    return line if day is None else f"{line} {day.isoformat()}"
