"""Write planned reminders: their subject, time and repetition."""

from __future__ import annotations

import re
from collections.abc import Sequence

from babel import Locale
from babel.dates import get_day_names

from bot.chat.features.people.setting_values import day_names
from bot.chat.grammar.lexer import stem
from bot.chat.i18n.keywords import stands_for
from bot.chat.i18n.language import _, local, ngettext, show_day, show_moment, show_time, tongue
from bot.chat.reply.message import Button
from bot.trade.days import EVERY_DAY
from bot.trade.words import N_
from bot.work.log.history import LogLine
from bot.work.reminders import own, planning
from bot.work.reminders.own import Planned, When

_SUBJECTS = {
    "rested": N_("batch {batch}, {name}: has it rested?"),
    "recheck": N_("batch {batch}, {name}: check it again"),
    "discard": N_("batch {batch}, {name}: its last days"),
    "close": N_("what was thrown out tonight"),
    "peeled": N_("peeled fruit, before it is lost"),
    "low stock": N_("runs low: {name}"),
    planning.DELETION: N_("the bar will be deleted"),
    planning.BLOCKED: N_("{name} can't be reached"),
    own.MORNING: N_("what is due today"),
}


def subject_words(one: Planned) -> str:
    """Write what a reminder is about, or the words of the person who wrote it."""
    return one.text or _(_SUBJECTS[one.kind]).format(batch=one.batch, name=one.name)


def logged_subject(line: LogLine, units: str) -> dict[str, str]:
    """Write what the reminder of a log entry is about."""
    said = line.details
    if said["text"]:
        return {"text": said["text"]}
    subject = _SUBJECTS[said["kind_of"]]
    return {"text": _(subject).format(batch=said.get("batch", ""), name="").strip(" :")}


def when_words(when: When | Planned) -> str:
    """Write the time of a reminder: 'Mon, 30 Nov 16:00', 'every Mon 15:00'."""
    if not when.days:
        return show_moment(when.due)
    if when.days == EVERY_DAY:
        return _("every day {time}").format(time=show_time(when.due))
    days = " ".join(name for day, name in enumerate(day_names()) if when.days >> day & 1)
    return _("every {days} {time}").format(days=days, time=show_time(when.due))


def closer_words(asks: bool, name: str) -> tuple[str, list[Button]]:
    """Write who closes tonight, with a tap where nobody does yet; '' where waste is not asked about."""
    if not asks:
        return "", []
    if name:
        return _("{name} closes tonight.").format(name=name), []
    return _("Nobody has said who closes tonight."), [Button(_("I close"), "i close")]


def about_words(known: Sequence[Planned], about: str) -> list[Planned]:
    """Return the reminders or notes that the words fit best: 'limes', 'del lunes'; [] if none."""
    language = tongue().language
    said = {stem(word, language) for word in _WORD.findall(about) if not _is_little(word, language)}
    shared = [len(said & _stems(one, language)) for one in known]
    most = max(shared, default=0)
    return [one for one, count in zip(known, shared, strict=True) if most and count == most]


_WORD = re.compile(r"\w+")
_LITTLE = ("ARTICLE", "OF", "FOR", "TO", "AT", "ON", "THIS", "LAST", "EVERY", "ABOUT")


def _is_little(word: str, language: str) -> bool:
    return any(stands_for(word, one, language) for one in _LITTLE)


def _stems(one: Planned, language: str) -> set[str]:
    """Return the stems of a reminder's words and of the weekday on which it is due."""
    weekday = get_day_names("wide", locale=Locale.parse(tongue().locale, sep="_"))[local(one.due).weekday()]
    return {stem(word, language) for word in _WORD.findall(f"{planned_line(one)} {weekday}")}


def planned_line(one: Planned) -> str:
    """Write a reminder or a note in one line."""
    if one.kind == own.NOTE:
        return _("note for {day}: {text}").format(day=show_day(one.due.date()), text=one.text)
    if one.undelivered:
        late = _("not delivered since {when}: {what}")
        return late.format(when=show_moment(one.due), what=subject_words(one))
    return f"{when_words(one)}: {subject_words(one)}"


def short(text: str) -> str:
    """Return the beginning of a text, for a button."""
    return text if len(text) <= _BUTTON else text[: _BUTTON - 1].rstrip() + "…"


_BUTTON = 28


def count_words(count: int) -> str:
    """Write a number of reminders."""
    return ngettext("{count} reminder planned", "{count} reminders planned", count).format(count=count)
