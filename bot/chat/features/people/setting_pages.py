"""Word a bar's current settings, and arrange them on pages."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from bot.chat.features.labels.label_words import stock_words
from bot.chat.features.people import fruit_settings
from bot.chat.features.people.opening import jurisdiction_name, units_name
from bot.chat.features.people.setting_values import day_names, show_clock_minute, show_span
from bot.chat.i18n.language import _, ngettext, show_number
from bot.chat.i18n.languages import languages
from bot.chat.i18n.setting_names import SETTINGS
from bot.chat.reply.units import show_range, show_temperature
from bot.trade.formulas.measures import DEFAULT_HOUSE_MEASURES, HOUSE_MEASURES
from bot.trade.words import N_
from bot.work.context import EVERY_DAY, BarView
from bot.work.labels import labels

OUNCES = {"us": N_("US fluid ounces"), "imperial": N_("imperial fluid ounces"), "": N_("ask each time")}
HOUSEHOLD = {"us": N_("US"), "imperial": N_("imperial"), "metric": N_("metric"), "": N_("ask each time")}


def shown(bar: BarView) -> dict[str, str]:
    """Return the current value of every setting by its key."""
    settings = bar.settings
    values = {
        "name": bar.name,
        "language": languages()[bar.language].name,
        "currency": bar.currency,
        "units": units_name(bar.units),
        "zone": bar.zone.replace("_", " "),
        "closing": show_clock_minute(bar.closing_minute),
        "jurisdiction": jurisdiction_name(bar.jurisdiction),
        "ounces": _(OUNCES[settings.oz_liquid]),
        "household": _(HOUSEHOLD[settings.household]),
        "service_days": days_words(settings.service_days),
        "quiet": show_span(settings.quiet_from, settings.quiet_to),
        "close_prompt": show_clock_minute(bar.close_prompt_at) if settings.close_prompt else _("off"),
        "morning": _("off") if settings.morning_at is None else show_clock_minute(settings.morning_at),
        "discard_warn": ngettext(
            "{count} day before", "{count} days before", settings.discard_warn_days
        ).format(count=settings.discard_warn_days),
        "loss": f"{show_number(Fraction(settings.loss_percent))} %",
        "temperature": show_temperature(bar.temperature_c, bar.units),
        "coldest": show_temperature(bar.coldest_c, bar.units),
        "spray": show_range(*bar.spray_ml) + " ml",
        "reasons": ", ".join(_(one) for one in settings.reasons),
        "labels": stock_words(labels.stock_for(bar), bar.units),
        "tools": ", ".join(one[0] for one in settings.tools) or _("the usual ones"),
    }
    return values | fruit_settings.shown(bar) | _house_measures(bar)


def setting_line(key: str, values: Mapping[str, str], first: bool = False) -> str:
    """Write a setting and its value; the `first` line of an answer begins with a capital."""
    name = _(SETTINGS[key][0])
    return _("{setting}: {value}").format(
        setting=name.capitalize() if first else name, value=values.get(key, _("not set"))
    )


def _house_measures(bar: BarView) -> dict[str, str]:
    """Return the sizes of the bar's measures; unset ones have the usual size."""
    values: dict[str, str] = {}
    for measure in HOUSE_MEASURES:
        if measure in bar.settings.house_ml:
            values[measure] = f"{show_number(Fraction(bar.settings.house_ml[measure]))} ml"
        elif measure in DEFAULT_HOUSE_MEASURES:
            usual = show_number(Fraction(DEFAULT_HOUSE_MEASURES[measure].ml))
            values[measure] = _("{size} ml, the usual").format(size=usual)
    return values


def days_words(mask: int) -> str:
    """Write the service days."""
    if mask == EVERY_DAY:
        return _("every day")
    return " ".join(name for day, name in enumerate(day_names()) if mask >> day & 1)
