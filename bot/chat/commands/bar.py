"""The bar's settings: see them all, change one."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal
from fractions import Fraction
from typing import Any

from bot.chat import fruit_settings
from bot.chat.asking import Question, Slot, columns
from bot.chat.asks import never, undo_button
from bot.chat.commands.basics import (
    accept_closing,
    accept_currency,
    accept_jurisdiction,
    accept_units,
    accept_zone,
    jurisdiction_name,
    units_name,
)
from bot.chat.formula_card import show_range
from bot.chat.label_words import stock_words
from bot.chat.language import _, decimal_mark, ngettext, show_number, tongue
from bot.chat.message import Button, Reply, reply
from bot.chat.numbers import AmbiguousNumberError, NotANumberError, read_number, read_range
from bot.chat.setting_values import day_names, read_clock, show_clock_minute
from bot.chat.settings_words import SETTINGS
from bot.chat.talk import Command, Given, Say, Talk
from bot.chat.temperatures import accept_temperature
from bot.chat.tongues import NAMES, language_named
from bot.chat.units import show_temperature
from bot.trade.kinds import plain_name
from bot.trade.measures import HOUSE_MEASURES, to_ml
from bot.trade.measures import Quantity as TradeQuantity
from bot.trade.unit_words import AmbiguousUnitError, UnknownUnitError, resolve_unit
from bot.trade.words import N_
from bot.work import bars, labels
from bot.work.desk import EVERY_DAY, BarView
from bot.work.errors import NotAllowedError
from bot.work.labels import ALL_STOCKS

_OUNCES = {"us": N_("US fluid ounces"), "imperial": N_("imperial fluid ounces"), "": N_("ask each time")}
_HOUSEHOLD = {"us": N_("US"), "imperial": N_("imperial"), "metric": N_("metric"), "": N_("ask each time")}
# What is changed most, one tap away.
_COMMON = (
    "closing",
    "service_days",
    "quiet",
    "close_prompt",
    "units",
    "ounces",
    "loss",
    "labels",
    "zone",
    "language",
)
_YES_NO = {True: N_("on"), False: N_("off")}


def _shown(bar: BarView) -> list[tuple[str, str, str]]:
    """Return (key, name, value) of every setting as now in force."""
    settings = bar.settings
    values = {
        "name": bar.name,
        "language": NAMES.get(bar.language, bar.language),
        "currency": bar.currency,
        "units": units_name(bar.units),
        "zone": bar.zone.replace("_", " "),
        "closing": show_clock_minute(bar.closing_minute),
        "jurisdiction": jurisdiction_name(bar.jurisdiction),
        "ounces": _(_OUNCES[settings.oz_liquid]),
        "household": _(_HOUSEHOLD[settings.household]),
        "service_days": days_words(settings.service_days),
        "quiet": f"{show_clock_minute(settings.quiet_from)} - {show_clock_minute(settings.quiet_to)}",
        "close_prompt": show_clock_minute(settings.close_prompt_at) if settings.close_prompt else _("off"),
        "discard_warn": ngettext(
            "{count} day before", "{count} days before", settings.discard_warn_days
        ).format(count=settings.discard_warn_days),
        "loss": f"{show_number(Fraction(settings.loss_percent))} %",
        "temperature": show_temperature(bar.temperature_c, bar.units),
        "spray": show_range(*bar.spray_ml) + " ml",
        "reasons": ", ".join(_(one) for one in settings.reasons),
        "labels": stock_words(labels.stock_for(bar), bar.units),
        "tools": ", ".join(one[0] for one in settings.tools) or _("the usual ones"),
    }
    values |= fruit_settings.shown(bar)
    for measure in HOUSE_MEASURES:
        if measure in settings.house_ml:
            values[measure] = f"{show_number(Fraction(settings.house_ml[measure]))} ml"
    return [(key, _(SETTINGS[key][0]), value) for key, value in values.items()]


def days_words(mask: int) -> str:
    """Write the service days."""
    if mask == EVERY_DAY:
        return _("every day")
    return " ".join(name for day, name in enumerate(day_names()) if mask >> day & 1)


def _bar(talk: Talk, given: Given) -> Reply:
    if "setting" not in given:
        return _all(talk)
    key = given["setting"]
    changes = _READERS[key](talk, str(given["value"]))
    if not talk.desk.role.manages:
        raise NotAllowedError("manager")
    bar = bars.change(talk.desk, **changes)
    if key == "currency":
        note = [_("Prices and waste logged before keep their numbers: they are not converted.")]
    else:
        note = []
    value = next((value for name, _label, value in _shown(bar) if name == key), str(given["value"]))
    return reply(
        _("{setting}: {value}").format(setting=_(SETTINGS[key][0]).capitalize(), value=value),
        *note,
        buttons=((Button(_("All settings"), "bar"), undo_button(talk)),),
    )


def _all(talk: Talk) -> Reply:
    bar = talk.desk.bar
    shown = _shown(bar)
    lines = "\n".join(f"{label}: {value}" for _key, label, value in shown)
    buttons: tuple[tuple[Button, ...], ...] = ()
    if talk.desk.role.manages:
        choices = [(_(SETTINGS[key][0]), f"bar {SETTINGS[key][0]}") for key in _COMMON]
        buttons = tuple(tuple(Button(label, line) for label, line in row) for row in columns(choices, 2))
    return reply(bar.name, lines, _("To change one: bar currency EUR"), buttons=buttons)


# -- reading values -----------------------------------------------------------------------


def _number(text: str) -> Fraction:
    try:
        return read_number(text.strip().rstrip("%").removesuffix("ml").strip(), decimal_mark())
    except (NotANumberError, AmbiguousNumberError):
        raise Say(reply(_("“{text}” is not a number I can read here.").format(text=text[:40]))) from None


def _read_name(talk: Talk, text: str) -> dict[str, Any]:
    clean = " ".join(text.split())
    if not 0 < len(clean) <= 80:
        raise Say(reply(_("A name of 1 to 80 letters, please.")))
    return {"name": clean}


def _read_one_of(words: dict[str, str], field: str) -> Callable[[Talk, str], dict[str, Any]]:
    def read(talk: Talk, text: str) -> dict[str, Any]:
        plain = text.strip().casefold()
        for key, label in words.items():
            if plain in {key or "ask", _(key or "ask"), _(label).casefold()}:
                return {field: key}
        choices = " / ".join(_(label) for label in words.values())
        raise Say(reply(_("Please answer one of: {choices}").format(choices=choices)))

    return read


def _read_days(talk: Talk, text: str) -> dict[str, Any]:
    plain = text.casefold().replace(",", " ")
    if plain.strip() in {"every day", "all", "daily", _("every day").casefold()}:
        return {"service_days": EVERY_DAY}
    plain = plain_name(plain)
    names = [plain_name(name).rstrip(".") for name in day_names()]
    english = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"]
    mask = 0
    for word in plain.replace(" - ", "-").split():
        ends = [_day_number(part, names, english) for part in word.split("-")]
        if any(end is None for end in ends) or not 1 <= len(ends) <= 2:
            raise Say(reply(_("Write days such as: tue-sat, or mon wed fri.")))
        first, last = ends[0] or 0, ends[-1] or 0
        day = first
        while True:
            mask |= 1 << day
            if day == last:
                break
            day = (day + 1) % 7
    if not mask:
        raise Say(reply(_("Write days such as: tue-sat, or mon wed fri.")))
    return {"service_days": mask}


def _day_number(word: str, names: list[str], english: list[str]) -> int | None:
    for known in (names, english):
        for number, name in enumerate(known):
            if len(word) >= 2 and (word.startswith(name[:3]) or name.startswith(word)):
                return number
    return None


def _read_quiet(talk: Talk, text: str) -> dict[str, Any]:
    parts = text.replace("–", "-").replace(" to ", "-").split("-")
    minutes = [read_clock(part) for part in parts]
    if len(minutes) != 2 or None in minutes:
        raise Say(reply(_("Write two times, such as: 05:00-11:00")))
    return {"quiet_from": minutes[0], "quiet_to": minutes[1]}


def _read_prompt(talk: Talk, text: str) -> dict[str, Any]:
    if text.strip().casefold() in {"off", "no", "none", _("off").casefold()}:
        return {"close_prompt": False}
    minute = read_clock(text)
    if minute is None:
        raise Say(reply(_("Write a time such as 00:30, or off.")))
    # A time before the closing hour belongs to the night before.
    closing = talk.desk.bar.closing_minute
    return {"close_prompt": True, "close_prompt_at": minute + (24 * 60 if minute < closing else 0)}


def _read_warn(talk: Talk, text: str) -> dict[str, Any]:
    number = _number(text.split(maxsplit=1)[0] if text.split() else "")
    if number.denominator != 1 or not 0 <= number <= 60:
        raise Say(reply(_("A number of days from 0 to 60, please.")))
    return {"discard_warn_days": int(number)}


def _read_loss(talk: Talk, text: str) -> dict[str, Any]:
    number = _number(text)
    if not 0 <= number < 50:
        raise Say(reply(_("A loss from 0 to below 50 %, please.")))
    return {"loss_percent": str(number)}


def _read_temperature(talk: Talk, text: str) -> dict[str, Any]:
    found = accept_temperature(talk, text)
    return {"temperature_c": str(found)}


def _read_spray(talk: Talk, text: str) -> dict[str, Any]:
    plain = text.strip().removesuffix("ml").strip()
    try:
        low, high = read_range(plain, decimal_mark())
    except (NotANumberError, AmbiguousNumberError):
        raise Say(reply(_("Write what one spray gives, such as: 0.07-0.10 ml"))) from None
    if not 0 < low <= high <= 2:
        raise Say(reply(_("Between 0 and 2 ml a spray, please.")))
    return {"spray_ml_low": str(low), "spray_ml_high": str(high)}


def _read_reasons(talk: Talk, text: str) -> dict[str, Any]:
    found = tuple(dict.fromkeys(" ".join(part.split())[:40] for part in text.replace("\n", ",").split(",")))
    found = tuple(one for one in found if one)
    if not 1 <= len(found) <= 12:
        raise Say(reply(_("Write 1 to 12 reasons with commas between: mouldy, dried out, other")))
    return {"reasons": found}


def _read_tools(talk: Talk, text: str) -> dict[str, Any]:
    if text.strip().casefold() in {"usual", "default", _("the usual ones").casefold()}:
        return {"tools": ()}
    tools = []
    for line in text.replace(";", "\n").splitlines():
        words = line.split()
        try:
            name, step, up_to = " ".join(words[:-4]), words[-4], words[-2]
            read = read_number(step, decimal_mark()), read_number(up_to, decimal_mark())
        except (IndexError, NotANumberError, AmbiguousNumberError):
            raise Say(
                reply(_("A line for each tool: its name, its marks, its size. Syringe 0.2 ml 10 ml"))
            ) from None
        if not name or not 0 < read[0] <= read[1]:
            raise Say(reply(_("A line for each tool: its name, its marks, its size. Syringe 0.2 ml 10 ml")))
        tools.append((name[:40], str(read[0]), str(read[1])))
    return {"tools": tuple(tools[:12])}


def _read_labels(talk: Talk, text: str) -> dict[str, Any]:
    plain = text.strip().casefold()
    for stock in ALL_STOCKS.values():
        if plain in {stock.name, stock.handle, stock_words(stock, talk.desk.bar.units).casefold()}:
            return {"labels": stock.name}
    handles = ", ".join(stock.handle for stock in labels.offered(talk.desk.bar))
    raise Say(reply(_("Label papers I know: {papers}").format(papers=handles)))


def _read_language(talk: Talk, text: str) -> dict[str, Any]:
    found = language_named(text)
    if not found:
        raise Say(reply(_("I speak: {languages}").format(languages=", ".join(NAMES.values()))))
    return {"language": found}


def _read_measure(measure: str) -> Callable[[Talk, str], dict[str, Any]]:
    def read(talk: Talk, text: str) -> dict[str, Any]:
        number, _space, word = text.strip().partition(" ")
        try:
            unit = resolve_unit(word or "ml", talk.desk.bar.sense(True), tongue().language)
            ml = to_ml(TradeQuantity(_number(number), unit), talk.desk.bar.house)
        except (UnknownUnitError, AmbiguousUnitError):
            raise Say(reply(_("Write its size in ml, such as: {name} 5 ml").format(name=measure))) from None
        if not 0 < ml <= 1000:
            raise Say(reply(_("Above 0 and up to 1000 ml, please.")))
        own = dict(talk.desk.bar.settings.house_ml)
        own[measure] = str(Decimal(ml.numerator) / Decimal(ml.denominator))
        return {"house_ml": own}

    return read


_EMPTY = Given({}, {})
_READERS: dict[str, Callable[[Talk, str], dict[str, Any]]] = {
    "name": _read_name,
    "currency": lambda talk, text: {"currency": accept_currency(talk, _EMPTY, text)},
    "units": lambda talk, text: {"units": accept_units(talk, _EMPTY, text)},
    "zone": lambda talk, text: {"zone": accept_zone(talk, _EMPTY, text)},
    "closing": lambda talk, text: {"closing_minute": accept_closing(talk, _EMPTY, text)},
    "jurisdiction": lambda talk, text: {"jurisdiction": accept_jurisdiction(talk, _EMPTY, text)},
    "ounces": _read_one_of(_OUNCES, "oz_liquid"),
    "household": _read_one_of(_HOUSEHOLD, "household"),
    "service_days": _read_days,
    "quiet": _read_quiet,
    "close_prompt": _read_prompt,
    "discard_warn": _read_warn,
    "loss": _read_loss,
    "temperature": _read_temperature,
    "spray": _read_spray,
    "reasons": _read_reasons,
    "tools": _read_tools,
    "labels": _read_labels,
    "language": _read_language,
    **fruit_settings.READERS,
    **{measure: _read_measure(measure) for measure in HOUSE_MEASURES},
}
_CHOICES: dict[str, tuple[str, ...]] = {
    **fruit_settings.CHOICES,
    "language": tuple(NAMES.values()),
    "units": (N_("metric"), "us", N_("imperial")),
    "ounces": ("us", N_("imperial"), N_("ask")),
    "household": ("us", N_("imperial"), N_("metric"), N_("ask")),
    "closing": ("05:00", "04:00", "03:00", "02:00"),
    "jurisdiction": ("US", "EU", "UK", N_("other")),
    "service_days": (N_("every day"), N_("mon-sat"), N_("tue-sat"), N_("wed-sun")),
    "quiet": ("05:00-11:00", "04:00-12:00", "00:00-00:00"),
    "close_prompt": ("00:30", "01:30", "23:00", N_("off")),
    "discard_warn": ("1", "3", "7"),
    "loss": ("0 %", "2 %", "5 %"),
    "temperature": ("18 °C", "20 °C", "23 °C", "27 °C"),
}


def _ask_setting(talk: Talk, given: Given) -> Question:
    return Question(_("Which setting?"))


def _accept_setting(talk: Talk, given: Given, value: Any) -> str:
    return str(value.id)


def _ask_value(talk: Talk, given: Given) -> Question:
    key = given["setting"]
    now = next((value for name, _label, value in _shown(talk.desk.bar) if name == key), "")
    text = _("What should {setting} be?").format(setting=_(SETTINGS[key][0]))
    if now:
        text += " " + _("Now: {value}").format(value=now)
    choices = columns([(_(one), one) for one in _CHOICES.get(key, ())], 2)
    if key == "labels":
        bar = talk.desk.bar
        choices = columns([(stock_words(one, bar.units), one.handle) for one in labels.offered(bar)], 1)
    return Question(text, choices, hint=_(SETTINGS[key][0]))


def _accept_value(talk: Talk, given: Given, value: str) -> str:
    # Read once here, so that a wrong value is asked again instead of ending the dialogue.
    _READERS[given["setting"]](talk, value)
    return value


COMMANDS = (
    Command(
        "bar",
        N_("see and change the bar's settings"),
        _bar,
        words=("settings", "setting"),
        examples=(N_("bar closing hour 04:00"), N_("bar ounces us"), N_("bar dash 0.8 ml")),
        slots=(
            Slot("setting", _ask_setting, never, _accept_setting),
            Slot("value", _ask_value, lambda talk, given: "setting" in given, _accept_value),
        ),
        writes=True,
        manages_words=True,
        menu=75,
    ),
)
