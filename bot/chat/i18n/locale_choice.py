"""Choose the language of a person, and the locale of their numbers, money and days."""

from __future__ import annotations

import unicodedata
from datetime import datetime
from functools import lru_cache

from babel import Locale
from babel.core import get_global
from babel.localedata import exists

from bot.chat.i18n.language import Tongue
from bot.chat.i18n.languages import ENGLISH, languages
from bot.trade.days import local_time
from bot.work.context import BarView
from bot.work.people.people import Presence


def tongue_of(presence: Presence, now: datetime | None = None) -> Tongue:
    """Return the language and locale of a person in their current place, and the year there.

    The person's own choice comes first, then the phone's language, then the bar's. Languages that the bot
    does not have are skipped.
    """
    bar = presence.bar
    short = spoken(presence.language) or spoken(bar.language if bar else None) or ENGLISH
    if bar is None:
        return Tongue(short, languages()[short].locale, "UTC", "USD")
    return bar_tongue(bar, short, now)


def bar_tongue(bar: BarView, language: str, now: datetime | None = None) -> Tongue:
    """Return a language as used in a bar: its locale, clock, money and year."""
    year = 0 if now is None else local_time(now, bar.zone).year
    return Tongue(language, locale_of(bar, language), bar.zone, bar.currency, year, bar.units)


def spoken(tag: str | None) -> str:
    """Return the bot's language for a tag such as es-MX, or ''."""
    short = (tag or "").replace("-", "_").split("_")[0].casefold()
    return short if short in languages() else ""


def language_named(text: str) -> str:
    """Return the language named in any of the bot's languages ('spanish', 'inglés', 'es'), or ''."""
    plain = _plain(text)
    for short, one in languages().items():
        names = {short, one.name, *(Locale.parse(short).get_display_name(other) for other in languages())}
        if plain in {_plain(name or "") for name in names}:
            return short
    return ""


def _plain(text: str) -> str:
    bare = "".join(c for c in unicodedata.normalize("NFKD", text) if not unicodedata.combining(c))
    return bare.strip().casefold()


def locale_of(bar: BarView, language: str) -> str:
    """Return the locale of a bar's numbers, money and days."""
    if bar.settings.locale:
        return bar.settings.locale
    return _locale_at(language, bar.zone, bar.jurisdiction)


@lru_cache(maxsize=64)
def _locale_at(language: str, zone: str, jurisdiction: str) -> str:
    """Return a language's locale for a jurisdiction, else for a time zone's country, else the default."""
    one = languages()[language]
    if jurisdiction in one.locales:
        return one.locales[jurisdiction]
    land = get_global("zone_territories").get(zone, "")
    return f"{language}_{land}" if land and exists(f"{language}_{land}") else one.locale


def zones_offered(tag: str | None) -> tuple[str, ...]:
    """Return the likely time zones of a phone with this language, whether or not the bot has it."""
    plain = (tag or ENGLISH).replace("_", "-").casefold()
    known = {name: zones for one in languages().values() for name, zones in one.zones.items()}
    land = get_global("likely_subtags").get(plain.split("-")[0], "").rpartition("_")[2]
    usual = known.get(plain) or known.get(plain.split("-")[0]) or get_global("territory_zones").get(land)
    return tuple(usual or known[ENGLISH])[:5]
