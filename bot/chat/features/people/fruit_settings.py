"""Settings of fruit and money: parse and show them."""

from __future__ import annotations

import re
from collections.abc import Callable
from fractions import Fraction

from bot.chat.dialogue.inputs.money import ends_of, money_range, without_currency
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.people.setting_values import (
    Changes,
    read_clock,
    says_off,
    says_on,
    says_usual,
    show_clock_minute,
)
from bot.chat.i18n.language import _, read_range, show_number
from bot.chat.i18n.numbers import AmbiguousNumberError, NotANumberError
from bot.chat.reply.message import reply
from bot.chat.reply.units import show_range
from bot.trade.fruit.peeled import Keeping, peeled_clock
from bot.trade.words import N_
from bot.work.context import BarView

Reader = Callable[[Turn, str], Changes]

# Setting and field: its unit ('money', or the unit's word), the minimum and the maximum.
_NUMBERS: dict[str, tuple[str, int, int]] = {
    "wage": ("money", 0, 10_000),
    "batch_minutes": (N_("min"), 0, 1440),
    "garnish_minutes": (N_("min"), 0, 60),
    "bottle_price": ("money", 0, 10_000),
    "label_price": ("money", 0, 10_000),
    "outlay": ("money", 0, 1_000_000),
    "drinks_a_week": ("", 1, 100_000),
    "open_weeks": (N_("a year"), 1, 53),
}
_KEEPING = {
    # The key itself is also typed, and has its own word in each language.
    N_("counter"): N_("on the counter"),
    N_("uncovered"): N_("cold, uncovered"),
    N_("wrapped"): N_("cold, wrapped tight"),
}


def shown(bar: BarView) -> dict[str, str]:
    """Return the settings of fruit and money, in words; unset ones are left out."""
    settings = bar.settings
    values = {
        "late": _("from {time}").format(time=show_clock_minute(settings.late_from)),
        "peeled": _peeled_words(bar),
        "price_rise": f"{show_number(Fraction(settings.price_rise_percent))} %",
        "missing": _("{times} times its price").format(
            times=show_number(Fraction(settings.missing_times), 1)
        ),
        "tax": _tax_words(settings.tax, settings.tax_percent),
        "pictures": _("dark") if settings.dark_pictures else _("light"),
        "week_picture": _("with the week") if settings.week_picture else _("when asked for"),
    }
    for key, (unit, _least, _most) in _NUMBERS.items():
        ends = ends_of(getattr(settings, key))
        if ends is not None:
            values[key] = money_range(ends) if unit == "money" else f"{show_range(*ends)} {_(unit)}".strip()
    return values


def _peeled_words(bar: BarView) -> str:
    said = bar.settings.peeled_hours
    keeping = said or Keeping.UNCOVERED.name.casefold()
    if keeping in _KEEPING:
        hours = peeled_clock(Keeping[keeping.upper()]).lost_after_hours
        return _("{how}: {hours} h").format(how=_(_KEEPING[keeping]), hours=show_number(hours))
    return _("{hours} h").format(hours=show_number(Fraction(said)))


def _tax_words(tax: str, percent: str) -> str:
    share = show_number(Fraction(percent))
    if tax == "added":
        return _("{percent} % added to prices").format(percent=share)
    if tax == "taken out":
        return _("{percent} % taken out of prices").format(percent=share)
    return _("prices as typed")


# -- parsing --------------------------------------------------------------------------------


def _number_reader(key: str) -> Reader:
    _unit, least, most = _NUMBERS[key]

    def read(turn: Turn, text: str) -> Changes:
        if _is_unset(text) and key != "open_weeks":
            return {key: ""}
        words = without_currency(text, turn.context.bar.currency).split()
        while words and words[-1].isalpha() and words[-1].casefold() != "to":
            words.pop()
        try:
            low, high = read_range(" ".join(words))
        except (NotANumberError, AmbiguousNumberError):
            raise Say(reply(_("Write a number, or two for a range: 10 or 10-12. Or: off."))) from None
        if not least <= low <= high <= most:
            raise Say(
                reply(
                    _("A number from {least} to {most}, please.").format(least=least, most=show_number(most))
                )
            )
        return {key: str(low) if low == high else f"{low} {high}"}

    return read


def _read_late(turn: Turn, text: str) -> Changes:
    minute = read_clock(text)
    if minute is None:
        raise Say(reply(_("Write a time such as 22:00. Anything later counts for the late shift.")))
    closing = turn.context.bar.closing_minute
    return {"late_from": minute + (24 * 60 if minute < closing else 0)}


def _read_peeled(turn: Turn, text: str) -> Changes:
    plain = text.strip().casefold()
    for key, label in _KEEPING.items():
        if plain in {key, label, _(label)} or plain.split(",")[-1].strip() == key or plain == _(key):
            return {"peeled_hours": "" if key == Keeping.UNCOVERED.name.casefold() else key}
    if says_usual(text) or plain == "cold":
        return {"peeled_hours": ""}
    hours = _single(re.sub(r"\s*(?:hours?|horas?|h)$", "", plain))
    if hours is None or not 1 <= hours <= 240 or hours.denominator != 1:
        raise Say(reply(_("Write hours such as 24, or: counter, uncovered, wrapped.")))
    return {"peeled_hours": str(hours)}


def _is_unset(text: str) -> bool:
    return says_off(text) or says_usual(text) or text.strip() == "0"


def _single(text: str) -> Fraction | None:
    """Return a text as one number, None for any other text and for a range."""
    try:
        low, high = read_range(text.strip())
    except (NotANumberError, AmbiguousNumberError):
        return None
    return low if low == high else None


def _percent(text: str, most: int) -> Fraction:
    share = _single(text.strip().rstrip("%"))
    if share is None or not 0 <= share <= most:
        raise Say(reply(_("A share such as 10 %, please.")))
    return share


def _read_rise(turn: Turn, text: str) -> Changes:
    return {"price_rise_percent": str(_percent(text, 1000))}


def _read_missing(turn: Turn, text: str) -> Changes:
    times = _single(re.sub(r"\s*(?:x|×|times|veces)(?:\s.*)?$", "", text.strip().casefold()))
    if times is None or not 1 < times <= 50:
        raise Say(reply(_("How many times its price does a missing fruit cost you? Such as 3.")))
    return {"missing_times": str(times)}


def _read_tax(turn: Turn, text: str) -> Changes:
    plain = " ".join(text.casefold().replace("%", " % ").split())
    if _is_unset(text) or plain in {"as typed", "prices as typed", _("prices as typed")}:
        return {"tax": "", "tax_percent": "0"}
    for words, how in (
        ((_("taken out"), "taken out", "take out", "included", "out", "in prices"), "taken out"),
        ((_("added"), "added", "add", "on top", "excluded", "not included"), "added"),
    ):
        for word in words:
            if word in plain and not (word == "included" and "not included" in plain):
                number = plain.replace(word, " ").replace("of prices", " ").replace("to prices", " ")
                return {"tax": how, "tax_percent": str(_percent(number, 100))}
    raise Say(
        reply(
            _("Which one? 23 % taken out (you get that tax back), or 10 % added (prices lack it)."),
            _("Or: off, to count prices as typed."),
        )
    )


def _read_pictures(turn: Turn, text: str) -> Changes:
    plain = text.strip().casefold()
    if plain not in {"dark", "light", _("dark").casefold(), _("light").casefold()}:
        raise Say(reply(_("Light or dark?")))
    return {"dark_pictures": plain in {"dark", _("dark").casefold()}}


def _read_week_picture(turn: Turn, text: str) -> Changes:
    plain = text.strip().casefold()
    if says_on(text) or plain in {"with the week", "with week", "always", _("with the week")}:
        return {"week_picture": True}
    if _is_unset(text) or plain in {"when asked for", "when asked", _("when asked for")}:
        return {"week_picture": False}
    raise Say(reply(_("With the week, or when asked for?")))


READERS: dict[str, Reader] = {
    "late": _read_late,
    "peeled": _read_peeled,
    "price_rise": _read_rise,
    "missing": _read_missing,
    "tax": _read_tax,
    "pictures": _read_pictures,
    "week_picture": _read_week_picture,
    **{key: _number_reader(key) for key in _NUMBERS},
}
CHOICES: dict[str, tuple[str, ...]] = {
    "peeled": (N_("counter"), N_("uncovered"), N_("wrapped")),
    "price_rise": ("5 %", "10 %", "20 %"),
    "missing": ("2", "3", "5"),
    "tax": (N_("off"), N_("10 % taken out"), N_("20 % taken out"), N_("8 % added")),
    "pictures": (N_("light"), N_("dark")),
    "week_picture": (N_("with the week"), N_("when asked for")),
    "wage": ("10-12", "15", "20", N_("off")),
    "batch_minutes": ("10", "15-20", "30"),
    "garnish_minutes": ("0.2-0.3", "0.5", N_("off")),
    "open_weeks": ("52", "50", "48"),
    # No default: there is no usual price of these.
    **dict.fromkeys(("bottle_price", "label_price", "outlay", "drinks_a_week"), (N_("off"),)),
}
