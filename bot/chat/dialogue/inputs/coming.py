"""Days and times to come, by the bar's clock."""

from __future__ import annotations

from datetime import date, timedelta

from bot.chat.dialogue.inputs.day import day_meant
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.grammar.moments import Moment
from bot.chat.grammar.syntax import Day
from bot.chat.i18n.language import _, show_moment
from bot.chat.reply.message import reply
from bot.trade.days import EVERY_DAY, MINUTES_A_DAY, instant_of
from bot.work.reminders.own import When, first_due

_EVENING = 20 * 60  # common practice, no source
# A bar says "at 4" in the afternoon; from this hour on it may be the morning. Common practice, no source.
_LIKELY_MORNING = 11


def coming_day(turn: Turn, value: Day) -> date:
    """Return a day as typed, today's business day or a later one: a weekday is the next of its name."""
    return day_meant(turn, value, _next_on_calendar, lambda day: day >= turn.context.today)


def _next_on_calendar(value: Day, today: date) -> date:
    if value.date is None:
        return today - timedelta(days=value.days_ago)
    if value.date.startswith("-W-"):
        return today + timedelta(days=(int(value.date[3:]) - today.isoweekday()) % 7)
    if not value.date.startswith("--"):
        return date.fromisoformat(value.date)
    month, number = map(int, value.date[2:].split("-"))
    days = (date(year, month, number) for year in (today.year, today.year + 1))
    return next(day for day in days if day >= today)


def when_of(turn: Turn, moment: Moment) -> When:
    """Return the instant that is meant. Raises Say for one that is past."""
    bar, now = turn.context.bar, turn.context.now
    if moment.delay is not None:
        due = now + timedelta(hours=float(moment.delay))
        return When(due.replace(second=0, microsecond=0) + timedelta(minutes=due.second > 0))
    minute = _minute(turn, moment)
    if moment.days:
        return When(first_due(bar, minute, moment.days, now), moment.days)
    if moment.day is None:
        return When(first_due(bar, minute, EVERY_DAY, now))
    # A time before the closing hour belongs to the night of the day before.
    after_midnight = minute < bar.closing_minute
    day = coming_day(turn, moment.day)
    due = instant_of(day, minute + (MINUTES_A_DAY if after_midnight else 0), bar.zone)
    if due <= now and (moment.day.date or "").startswith("-W-"):
        due = instant_of(day + timedelta(days=7), minute, bar.zone)
    if due <= now:
        raise Say(reply(_("{when} is past.").format(when=show_moment(due))))
    return When(due)


def _minute(turn: Turn, moment: Moment) -> int:
    settings = turn.context.bar.settings
    if moment.minute is not None:
        later = not moment.sure and 0 < moment.minute < _LIKELY_MORNING * 60
        return moment.minute + (MINUTES_A_DAY // 2 if later else 0)
    if moment.part == "morning":
        return settings.quiet_to
    return _EVENING if moment.part == "evening" else settings.discard_prompt_at
