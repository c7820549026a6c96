"""Parse the values of a bar's settings."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal
from fractions import Fraction

from bot.chat.dialogue.inputs.names import short_name
from bot.chat.dialogue.inputs.temperature import accept_temperature
from bot.chat.dialogue.slots import Given
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.labels.label_words import stock_words
from bot.chat.features.people import fruit_settings
from bot.chat.features.people.language import read_language
from bot.chat.features.people.opening import (
    accept_closing,
    accept_currency,
    accept_jurisdiction,
    accept_units,
    accept_zone,
)
from bot.chat.features.people.setting_pages import HOUSEHOLD, OUNCES
from bot.chat.features.people.setting_values import (
    Changes,
    day_names,
    read_clock,
    says_off,
    says_on,
    says_usual,
)
from bot.chat.i18n.keywords import own_units
from bot.chat.i18n.language import _, read_number, read_range, tongue
from bot.chat.i18n.languages import ENGLISH
from bot.chat.i18n.numbers import AmbiguousNumberError, NotANumberError, range_sign
from bot.chat.reply.message import reply
from bot.trade.formulas.ingredient_names.reading import plain_name
from bot.trade.formulas.measures import HOUSE_MEASURES, to_ml
from bot.trade.formulas.measures import Quantity as TradeQuantity
from bot.trade.formulas.unit_words import AmbiguousUnitError, UnknownUnitError, resolve_unit
from bot.work.context import DEFAULT_REASONS, EVERY_DAY
from bot.work.labels import labels
from bot.work.labels.labels import ALL_STOCKS


def _number(text: str) -> Fraction:
    try:
        return read_number(text.strip().rstrip("%").removesuffix("ml").strip())
    except (NotANumberError, AmbiguousNumberError):
        raise Say(reply(_("“{text}” is not a number I can read here.").format(text=text[:40]))) from None


def _read_name(turn: Turn, text: str) -> Changes:
    return {"name": short_name(text)}


def _read_one_of(words: dict[str, str], field: str) -> Callable[[Turn, str], Changes]:
    def read(turn: Turn, text: str) -> Changes:
        plain = text.strip().casefold()
        for key, label in words.items():
            if plain in {key or "ask", _(key or "ask"), _(label).casefold()}:
                return {field: key}
        choices = " / ".join(_(label) for label in words.values())
        raise Say(reply(_("Please answer one of: {choices}").format(choices=choices)))

    return read


def _read_days(turn: Turn, text: str) -> Changes:
    plain = text.casefold().replace(",", " ")
    if plain.strip() in {"every day", "all", "daily", _("every day").casefold()}:
        return {"service_days": EVERY_DAY}
    plain = plain_name(plain)
    names, english = (
        [plain_name(name).rstrip(".") for name in day_names(locale)] for locale in (tongue().locale, ENGLISH)
    )
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


def _read_quiet(turn: Turn, text: str) -> Changes:
    if says_off(text):
        return {"quiet_from": 0, "quiet_to": 0}
    parts = range_sign(tongue().language).split(text)
    minutes = [read_clock(part) for part in parts]
    if len(minutes) != 2 or None in minutes:
        raise Say(reply(_("Write two times, such as: 05:00-11:00")))
    return {"quiet_from": minutes[0], "quiet_to": minutes[1]}


def _read_prompt(turn: Turn, text: str) -> Changes:
    if says_off(text):
        return {"close_prompt": False}
    if says_on(text):
        return {"close_prompt": True}  # at the time set before
    if says_usual(text):
        return {"close_prompt": True, "close_prompt_at": None}
    minute = read_clock(text)
    if minute is None:
        raise Say(reply(_("Write a time such as 00:30, or off.")))
    # A time before the closing hour belongs to the night before.
    closing = turn.context.bar.closing_minute
    return {"close_prompt": True, "close_prompt_at": minute + (24 * 60 if minute < closing else 0)}


def _read_morning(turn: Turn, text: str) -> Changes:
    if says_off(text):
        return {"morning_at": None}
    usual = says_on(text) or says_usual(text)
    minute = turn.context.bar.settings.quiet_to if usual else read_clock(text)
    if minute is None:
        raise Say(reply(_("Write a time such as 11:00, or off.")))
    return {"morning_at": minute}


def _read_warn(turn: Turn, text: str) -> Changes:
    number = _number(text.split(maxsplit=1)[0] if text.split() else "")
    if number.denominator != 1 or not 0 <= number <= 60:
        raise Say(reply(_("A number of days from 0 to 60, please.")))
    return {"discard_warn_days": int(number)}


def _read_loss(turn: Turn, text: str) -> Changes:
    number = _number(text)
    if not 0 <= number < 50:
        raise Say(reply(_("A loss from 0 to below 50 %, please.")))
    return {"loss_percent": str(number)}


def _read_temperature(turn: Turn, text: str) -> Changes:
    found = accept_temperature(turn, text)
    return {"temperature_c": str(found)}


def _read_coldest(turn: Turn, text: str) -> Changes:
    return {"coldest_c": str(accept_temperature(turn, text))}


def _read_spray(turn: Turn, text: str) -> Changes:
    plain = text.strip().removesuffix("ml").strip()
    try:
        low, high = read_range(plain)
    except (NotANumberError, AmbiguousNumberError):
        raise Say(reply(_("Write what one spray gives, such as: 0.07-0.10 ml"))) from None
    if not 0 < low <= high <= 2:
        raise Say(reply(_("Between 0 and 2 ml a spray, please.")))
    return {"spray_ml_low": str(low), "spray_ml_high": str(high)}


def _read_reasons(turn: Turn, text: str) -> Changes:
    if says_usual(text):
        return {"reasons": DEFAULT_REASONS}
    found = tuple(dict.fromkeys(" ".join(part.split())[:40] for part in text.replace("\n", ",").split(",")))
    found = tuple(one for one in found if one)
    if not 1 <= len(found) <= 12:
        raise Say(reply(_("Write 1 to 12 reasons with commas between: mouldy, dried out, other")))
    return {"reasons": found}


def _read_tools(turn: Turn, text: str) -> Changes:
    if says_usual(text):
        return {"tools": ()}
    tools = []
    for line in text.replace(";", "\n").splitlines():
        words = line.split()
        try:
            name, step, up_to = " ".join(words[:-4]), words[-4], words[-2]
            read = read_number(step), read_number(up_to)
        except (IndexError, NotANumberError, AmbiguousNumberError):
            raise Say(
                reply(_("A line for each tool: its name, its marks, its size. Syringe 0.2 ml 10 ml"))
            ) from None
        if not name or not 0 < read[0] <= read[1]:
            raise Say(reply(_("A line for each tool: its name, its marks, its size. Syringe 0.2 ml 10 ml")))
        tools.append((name[:40], str(read[0]), str(read[1])))
    return {"tools": tuple(tools[:12])}


def _read_labels(turn: Turn, text: str) -> Changes:
    plain = text.strip().casefold()
    for stock in ALL_STOCKS.values():
        if plain in {stock.name, stock.handle, stock_words(stock, turn.context.bar.units).casefold()}:
            return {"labels": stock.name}
    handles = ", ".join(stock.handle for stock in labels.offered(turn.context.bar))
    raise Say(reply(_("Label papers I know: {papers}").format(papers=handles)))


def _read_language(turn: Turn, text: str) -> Changes:
    return {"language": read_language(text)}


def _read_measure(measure: str) -> Callable[[Turn, str], Changes]:
    def read(turn: Turn, text: str) -> Changes:
        own = dict(turn.context.bar.settings.house_ml)
        if says_usual(text):
            own.pop(measure, None)
            return {"house_ml": own}
        number, _space, word = text.strip().partition(" ")
        try:
            unit = resolve_unit(word or "ml", turn.context.bar.sense(True), own_units(tongue().language))
            ml = to_ml(TradeQuantity(_number(number), unit), turn.context.bar.house)
        except (UnknownUnitError, AmbiguousUnitError):
            raise Say(reply(_("Write its size in ml, such as: {name} 5 ml").format(name=measure))) from None
        if not 0 < ml <= 1000:
            raise Say(reply(_("Above 0 and up to 1000 ml, please.")))
        own[measure] = str(Decimal(ml.numerator) / Decimal(ml.denominator))
        return {"house_ml": own}

    return read


_EMPTY = Given({}, {})
READERS: dict[str, Callable[[Turn, str], Changes]] = {
    "name": _read_name,
    "currency": lambda turn, text: {"currency": accept_currency(turn, _EMPTY, text)},
    "units": lambda turn, text: {"units": accept_units(turn, _EMPTY, text)},
    "zone": lambda turn, text: {"zone": accept_zone(turn, _EMPTY, text)},
    "closing": lambda turn, text: {"closing_minute": accept_closing(turn, _EMPTY, text)},
    "jurisdiction": lambda turn, text: {"jurisdiction": accept_jurisdiction(turn, _EMPTY, text)},
    "ounces": _read_one_of(OUNCES, "oz_liquid"),
    "household": _read_one_of(HOUSEHOLD, "household"),
    "service_days": _read_days,
    "quiet": _read_quiet,
    "close_prompt": _read_prompt,
    "morning": _read_morning,
    "discard_warn": _read_warn,
    "loss": _read_loss,
    "temperature": _read_temperature,
    "coldest": _read_coldest,
    "spray": _read_spray,
    "reasons": _read_reasons,
    "tools": _read_tools,
    "labels": _read_labels,
    "language": _read_language,
    **fruit_settings.READERS,
    **{measure: _read_measure(measure) for measure in HOUSE_MEASURES},
}
