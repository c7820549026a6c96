"""The shared slot for the day of an entry, and the parsing of days."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from contextlib import suppress
from dataclasses import replace
from datetime import date, timedelta

from bot.chat.dialogue.inputs.settling import INSTEAD
from bot.chat.dialogue.slots import Given, Slot
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.grammar.day_phrases import EITHER_DAY
from bot.chat.grammar.syntax import Day
from bot.chat.i18n.language import _, is_month_first, show_day, show_full_day
from bot.chat.reply.message import Button, Reply, Text, reply
from bot.trade.days import business_day_span

_MOST_DAYS_AGO = 400
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
        raise Say(reply(_("“{day}” is no day of the calendar.").format(day=value.words)))
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
        return _last_weekday(today, int(value.date[3:]), value.before)
    if not value.date.startswith("--"):
        return date.fromisoformat(value.date)
    month, day = map(int, value.date[2:].split("-"))
    near = []
    for year in (today.year - 1, today.year, today.year + 1):
        try:
            near.append(date(year, month, day))
        except ValueError:
            continue  # 29 February
    return min(near, key=lambda one: abs(one - today))


def _last_weekday(today: date, weekday: int, before: bool) -> date:
    ago = (today.isoweekday() - weekday) % 7
    return today - timedelta(days=7 if before and not ago else ago)


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
