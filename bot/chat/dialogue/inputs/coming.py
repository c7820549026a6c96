"""Days and times to come, by the bar's clock."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date, datetime, timedelta

from bot.chat.dialogue.inputs.day import coming_weekday, day_meant
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.grammar.moments import Moment
from bot.chat.grammar.syntax import Day
from bot.chat.i18n.language import _, show_moment
from bot.chat.reply.message import reply
from bot.trade.days import EVERY_DAY, MINUTES_A_DAY, instant_of, local_time
from bot.work.reminders.own import When, first_due

_EVENING = 20 * 60  # common practice, no source
# A bar says "at 4" in the afternoon; from this hour on it is the morning. Common practice, no source.
_MORNING_FROM = 7 * 60
_MOST_TO_A_31ST = 63  # days, over February
_HALF_A_DAY = MINUTES_A_DAY // 2


def coming_day(turn: Turn, value: Day) -> date:
    """Return a day as typed, today's business day or a later one: a weekday is the next of its name."""
    return day_meant(turn, value, _next_on_calendar, lambda day: day >= turn.context.today)


def _next_on_calendar(value: Day, today: date) -> date:
    if value.date is None:
        return today - timedelta(days=value.days_ago)
    if value.date.startswith("-W-"):
        return coming_weekday(value.date, today)
    if value.date.startswith("---"):
        return _of_number(today, int(value.date[3:]))
    if not value.date.startswith("--"):
        return date.fromisoformat(value.date)
    month, number = map(int, value.date[2:].split("-"))
    days = (date(year, month, number) for year in (today.year, today.year + 1))
    return next(day for day in days if day >= today)


def _of_number(today: date, number: int) -> date:
    """Return the next day of the month with this number."""
    days = (today + timedelta(days=ahead) for ahead in range(_MOST_TO_A_31ST))
    return next(day for day in days if day.day == number)


def when_of(turn: Turn, moment: Moment) -> When:
    """Return the instant that is meant. Raises Say for one that is past.

    An hour that may be of the morning or of the evening ('9', '9:30') is today the next such hour to come, of
    any 12 hours. On another day, and for a repeated time, 7 to 11 are of the morning, 12 is noon, and 1 to 6
    are of the afternoon. Words such as 'pm', 'tonight' or 'de la noche' say it, and so do 13 to 23, 0, and
    '04:30' (see grammar/clock_times). A time before the closing hour belongs to the night of the day before.
    """
    bar, now = turn.context.bar, turn.context.now
    if moment.delay is not None:
        due = now + timedelta(hours=float(moment.delay))
        return When(due.replace(second=0, microsecond=0) + timedelta(minutes=due.second > 0))
    minute = _minute(turn, moment)
    if moment.days:
        days = moment.days
        if minute < bar.closing_minute and moment.part != "morning":
            days = (days << 1 | days >> 6) & EVERY_DAY  # 'every friday at midnight' is on Saturday's date
        return When(first_due(bar, minute, days, now), days)
    if moment.day is None:
        return When(min(first_due(bar, one, EVERY_DAY, now) for one in _either(moment, minute)))
    day = coming_day(turn, moment.day)
    if day == turn.context.today:
        to_come = [
            one
            for one in _in_night(turn, day, moment, _either(moment, minute))
            if one > now and (moment.day.date is None or local_time(one, bar.zone).date() == day)
        ]
        if to_come:
            return When(min(to_come))
    if day <= local_time(now, bar.zone).date() and moment.day.date is None:
        day = local_time(now, bar.zone).date()  # after midnight, 'today' may be the new day
    due = _in_night(turn, day, moment, (minute,))[0]
    if due <= now and (moment.day.date or "").startswith("-W-"):
        due = _in_night(turn, day + timedelta(days=7), moment, (minute,))[0]
    if due <= now:
        raise Say(reply(_("{when} is past.").format(when=show_moment(due))))
    return When(due)


def lacks_hour(turn: Turn, moment: Moment) -> bool:
    """Whether a moment is a day without an hour, on which the usual hour is past."""
    if moment.day is None or moment.minute is not None or moment.days:
        return False
    usual = _in_night(turn, coming_day(turn, moment.day), moment, (_minute(turn, moment),))[0]
    return usual <= turn.context.now


def other_half(turn: Turn, moment: Moment, when: When) -> datetime | None:
    """Return the same hour in the other half of the day, if the moment left it open; None if it did not.

    The small hours are left out: nobody says 'tomorrow at 4' for them.
    """
    if moment.sure or moment.minute is None or when.days:
        return None
    zone = turn.context.bar.zone
    clock = local_time(when.due, zone)
    minute = clock.hour * 60 + clock.minute
    earlier = instant_of(clock.date(), minute - _HALF_A_DAY, zone) if minute >= _HALF_A_DAY else None
    is_to_come = earlier is not None and earlier > turn.context.now
    other = earlier if is_to_come else instant_of(clock.date(), minute + _HALF_A_DAY, zone)
    return None if other is None or 0 < local_time(other, zone).hour * 60 < _MORNING_FROM else other


def _in_night(turn: Turn, day: date, moment: Moment, minutes: Iterable[int]) -> list[datetime]:
    """Return the instants of these minutes in a business day, or in the morning of a day."""
    bar = turn.context.bar
    ends = 0 if moment.part == "morning" else bar.closing_minute
    return [instant_of(day, one + (MINUTES_A_DAY if one < ends else 0), bar.zone) for one in minutes]


def _either(moment: Moment, minute: int) -> tuple[int, ...]:
    """Return the minutes that may be meant today: both halves of the day for an hour that left it open."""
    if moment.sure or moment.minute is None:
        return (minute,)
    return minute % _HALF_A_DAY, minute % _HALF_A_DAY + _HALF_A_DAY


def _minute(turn: Turn, moment: Moment) -> int:
    """Return the minute on another day than today, by the rule of `when_of`."""
    settings = turn.context.bar.settings
    if moment.minute is not None:
        in_afternoon = not moment.sure and moment.minute < _MORNING_FROM
        return moment.minute + (_HALF_A_DAY if in_afternoon else 0)
    if moment.part == "morning":
        return settings.quiet_to
    return _EVENING if moment.part == "evening" else settings.discard_prompt_at
