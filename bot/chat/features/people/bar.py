"""The command bar: show the settings on a few pages, and change each by taps or by one line."""

from __future__ import annotations

from dataclasses import dataclass

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.shared_slots import undo_button
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.slots import DIGIT, Given, Question, Slot, columns
from bot.chat.dialogue.turn import Turn
from bot.chat.features.labels.label_words import stock_words
from bot.chat.features.people import fruit_settings, wordings
from bot.chat.features.people.opening import choices_of_zone, jurisdiction_name, units_name
from bot.chat.features.people.setting_input import READERS
from bot.chat.features.people.setting_pages import HOUSEHOLD, OUNCES, setting_line, shown
from bot.chat.features.people.setting_values import (
    CLOSING_CHOICES,
    clock_text,
    show_clock_minute,
    show_span,
)
from bot.chat.grammar.lexer import Noun
from bot.chat.i18n.language import _
from bot.chat.i18n.languages import languages
from bot.chat.i18n.setting_names import ALL, PAGES, SETTINGS, page_of, settings_changed
from bot.chat.reply.message import Block, Button, Reply, Text, reply
from bot.trade.days import MINUTES_A_DAY
from bot.trade.safety.jurisdiction import Jurisdiction
from bot.trade.words import N_
from bot.work.context import BEFORE_CLOSING, BarView
from bot.work.errors import NotAllowedError
from bot.work.labels import labels
from bot.work.log.chain import State
from bot.work.log.history import LogLine
from bot.work.people import bars


@dataclass(frozen=True, kw_only=True)
class BarArguments(Arguments):
    """A page of settings, a setting by its key, and its new value."""

    page: str = ""
    setting: str = ""
    value: str = ""


def _bar(turn: Turn, arguments: BarArguments) -> Reply:
    page, key = arguments.page, arguments.setting
    if not key and page == wordings.PAGE:
        return wordings.wordings_page(turn)
    if not key:
        return _page(turn, page) if page in PAGES else _overview(turn, in_place=page == ALL)
    changes = READERS[key](turn, arguments.value)
    if not turn.context.role.manages:
        raise NotAllowedError("manager")
    bar = bars.change(turn.context, **changes)
    first = setting_line(key, shown(bar), first=True)
    notes = []
    if key == "currency":
        notes.append(_("Prices and waste logged before keep their numbers: they are not converted."))
    if page in PAGES:
        return _page(turn, page, [first, *notes])
    row = (Button(_("All settings"), "bar"), undo_button(turn))
    return reply(first, *notes, buttons=((Button(_(PAGES[page_of(key)].title), f"bar {page_of(key)}"),), row))


_LOOKED_FOR = ("closing", "close_prompt", "zone", "units", "currency", "jurisdiction", "language")


# -- pages --------------------------------------------------------------------------------


def _overview(turn: Turn, in_place: bool) -> Reply:
    """Show the settings that people look for most, and a button for each page."""
    values = shown(turn.context.bar)
    rows = columns([(_(page.title), f"bar {name}") for name, page in PAGES.items()], 1)
    return reply(
        turn.context.bar.name,
        "\n".join(setting_line(key, values) for key in _LOOKED_FOR),
        _("All of them are on these pages. Or type: bar currency EUR"),
        buttons=tuple(tuple(Button(*one) for one in row) for row in rows),
        edits=in_place and turn.message.tapped is not None,
    )


def _page(turn: Turn, name: str, changed: list[str] | None = None) -> Reply:
    """Show one page of settings; after a change the first lines describe it."""
    values = shown(turn.context.bar)
    page = PAGES[name]
    first, *notes = changed or [_(page.title)]
    blocks: list[Block] = [Text(first, strong=True), *(Text(note) for note in notes)]
    blocks.append(Text("\n".join(setting_line(key, values) for key in page.settings)))
    rows: list[tuple[Button, ...]] = []
    if turn.context.role.manages:
        choices = [one for key in page.settings for one in _change_by(turn.context.bar, name, key)]
        rows = [tuple(Button(label, line) for label, line in row) for row in columns(choices, 2)]
    last = [Button(_("All settings"), f"bar {ALL}")]
    if changed:
        last.append(undo_button(turn))
    return Reply(tuple(blocks), (*rows, tuple(last)), edits=turn.message.tapped is not None)


def _change_by(bar: BarView, page: str, key: str) -> list[tuple[str, str]]:
    """Return the buttons that change a setting: directly for on and off, else by its question."""
    name = SETTINGS[key][0]
    line = f"bar {page} {name}"
    if key == "pictures":
        other = "light" if bar.settings.dark_pictures else "dark"
        return [(setting_line(key, {key: _(other)}), f"{line} {other}")]
    if key != "close_prompt":
        return [(_(name), line)]
    if not bar.settings.close_prompt:
        return [(setting_line(key, {key: _("on")}), f"{line} on")]
    return [(_(name), line), (setting_line(key, {key: _("off")}), f"{line} off")]


# -- asking for a value -------------------------------------------------------------------

_CHOICES: dict[str, tuple[str, ...]] = {
    **fruit_settings.CHOICES,
    "language": tuple(one.name for one in languages().values()),
    "service_days": (N_("every day"), N_("mon-sat"), N_("tue-sat"), N_("wed-sun")),
    "discard_warn": ("1", "3", "7"),
    "loss": ("0 %", "2 %", "5 %"),
    "coldest": ("5 °C", "10 °C", "15 °C", "18 °C"),
    "temperature": ("18 °C", "20 °C", "23 °C", "27 °C"),
    "spray": ("0.07-0.10 ml", "0.10-0.15 ml", "0.13-0.20 ml"),
    "reasons": (N_("usual"),),
    "tools": (N_("usual"),),
    "dash": (N_("usual"), "0.6 ml", "0.8 ml", "1 ml"),
    "drop": (N_("usual"), "0.03 ml", "0.04 ml", "0.05 ml"),
    "barspoon": (N_("usual"), "2.5 ml", "3.5 ml", "5 ml"),
    "splash": ("5 ml", "7.5 ml", "10 ml", "15 ml"),
    "jigger": (N_("usual"), "30 ml", "40 ml", "50 ml"),
}
# Times of day in minutes from midnight, so that each locale's clock can write them.
_TIMES = {"closing": CLOSING_CHOICES[:4], "late": (1200, 1320, 0), "morning": (600, 660, 900)}
_QUIET = ((300, 660), (240, 720))
# The pad of digits also accepts whole numbers of these.
_BY_DIGITS = frozenset(
    {"discard_warn", "loss", "price_rise", "wage", "batch_minutes", "bottle_price", "outlay", "drinks_a_week"}
    | {"open_weeks", "barspoon", "splash", "jigger"}
)


def _accept_noun(turn: Turn, given: Given, value: Noun) -> str:
    return value.id


def _ask_value(turn: Turn, given: Given) -> Question:
    key = given[_SETTING]
    bar = turn.context.bar
    text = _("What should {setting} be?").format(setting=_(SETTINGS[key][0]))
    now = Text(_("Now: {value}").format(value=shown(bar).get(key, _("not set"))))
    choices = columns(_choices(turn, bar, key), 1 if key in {"labels", "units", "ounces"} else 2)
    if key in _BY_DIGITS:
        choices = (*choices, ((_("Another number"), DIGIT),))
    return Question(text, choices, (now,), hint=_(SETTINGS[key][0]))


def _choices(turn: Turn, bar: BarView, key: str) -> list[tuple[str, str]]:
    """Return the values to tap, each with its label."""
    if key in _TIMES:
        times = [(show_clock_minute(minute), clock_text(minute)) for minute in _TIMES[key]]
        return [*times, (_("off"), "off")] if key == "morning" else times
    if key == "close_prompt":
        usual = MINUTES_A_DAY + bar.closing_minute - BEFORE_CLOSING
        earlier = [usual - minutes for minutes in (30, 90)]
        times = [(show_clock_minute(minute), clock_text(minute)) for minute in earlier]
        return [(show_clock_minute(usual), "usual"), *times, (_("off"), "off")]
    if key == "quiet":
        spans = [(show_span(*one), "-".join(clock_text(end) for end in one)) for one in _QUIET]
        return [*spans, (_("none"), "none")]
    if key == "currency":
        likely = bars.likely_in(bar.zone).currency
        return [(code, code) for code in dict.fromkeys((likely, "EUR", "USD", "GBP"))]
    if key == "units":
        return [(units_name(one), one) for one in bars.UNITS]
    if key == "jurisdiction":
        return [(jurisdiction_name(one), one.value) for one in Jurisdiction]
    if key in {"ounces", "household"}:
        words = OUNCES if key == "ounces" else HOUSEHOLD
        return [(_(label), one or "ask") for one, label in words.items()]
    if key == "labels":
        return [(stock_words(one, bar.units), one.handle) for one in labels.offered(bar)]
    if key == "zone":
        return choices_of_zone(turn)
    return [(_(one), one) for one in _CHOICES.get(key, ())]


def _accept_value(turn: Turn, given: Given, value: str) -> str:
    # Validate here, so that a wrong value is asked again instead of ending the dialogue.
    READERS[given[_SETTING]](turn, value)
    return value


def _settings_values(line: LogLine, units: str) -> dict[str, str]:
    keys = settings_changed(line.details.get("before", {}), line.details.get("after", {}))
    return {"settings": ", ".join(_(SETTINGS[key][0]) for key in keys)}


def _in_force(turn: Turn, after: State) -> list[str]:
    """Return the settings in force after the undo or the put-back of a change."""
    now = shown(turn.context.bar)
    keys = settings_changed(after.details["before"], after.details["after"])
    return [setting_line(key, now, first=True) for key in keys]


_SETTING = Slot("setting", _accept_noun)

COMMANDS = (
    Command(
        "bar",
        N_("see and change the bar's settings"),
        _bar,
        words=("settings", "setting", "set", "change setting"),
        examples=(N_("bar closing hour 04:00"), N_("bar ounces us"), N_("bar dash 0.8 ml")),
        slots=(
            Slot("page", _accept_noun),
            _SETTING,
            Slot("value", _accept_value, _ask_value, lambda turn, given: _SETTING in given),
        ),
        writes=True,
        manages_words=True,
        menu=75,
        wishes=(
            Wish("bar", ("{setting} {money}", "{setting} {time}", "{setting} {amount}", "{setting}")),
            Wish("bar", ("{page?}",), shows=True),
            Wish("morning", ("morning message {time}", "morning message {number}", "morning message")),
        ),
    ),
)

LOG_WORDS = (
    LogWords(
        "settings",
        N_("settings: {settings}"),
        N_("settings: {settings}"),
        values=_settings_values,
        now=_in_force,
    ),
)
