"""Which language a person is answered in, and whose signs their numbers, money and days take."""

from __future__ import annotations

import unicodedata
from datetime import datetime
from functools import lru_cache
from typing import Final

from babel import Locale
from babel.core import get_global
from babel.localedata import exists

from bot.chat.i18n.language import Tongue
from bot.trade.days import local_time
from bot.work.context import BarView
from bot.work.people.people import Presence

SPOKEN: Final = ("en", "es")
NAMES: Final = {"en": "English", "es": "Español"}
"""Each language by its own name."""

_PLACES: Final = {"US": "US", "UK": "GB", "EU": "IE", "other": "AU"}


def tongue_of(presence: Presence, now: datetime | None = None) -> Tongue:
    """Return the language and locale for a person where they stand, and the year it is there.

    The person's own choice comes first, then the phone's language, then the bar's; a language that is
    not spoken here is passed over.
    """
    bar = presence.bar
    short = spoken(presence.language) or spoken(bar.language if bar else None) or "en"
    if bar is None:
        # Not yet known where: the 24-hour clock is read everywhere.
        return Tongue(short, "es_ES" if short == "es" else "en_GB", "UTC", "USD")
    return bar_tongue(bar, short, now)


def bar_tongue(bar: BarView, language: str, now: datetime | None = None) -> Tongue:
    """Return a language as it is spoken in a bar: its locale, clock, money and year."""
    year = 0 if now is None else local_time(now, bar.zone).year
    return Tongue(language, locale_of(bar, language), bar.zone, bar.currency, year)


def spoken(tag: str | None) -> str:
    """Return the language of a tag such as es-MX if it is spoken here, else ''."""
    short = (tag or "").replace("-", "_").split("_")[0].casefold()
    return short if short in SPOKEN else ""


def language_named(text: str) -> str:
    """Return the language that is named in any spoken language ('spanish', 'inglés', 'es'), else ''."""
    plain = _plain(text)
    for short in SPOKEN:
        names = {short, *(Locale.parse(short).get_display_name(other) for other in SPOKEN)}
        if plain in {_plain(name or "") for name in names}:
            return short
    return ""


def _plain(text: str) -> str:
    bare = "".join(c for c in unicodedata.normalize("NFKD", text) if not unicodedata.combining(c))
    return bare.strip().casefold()


def locale_of(bar: BarView, language: str) -> str:
    """Return the locale whose signs a bar's numbers, money and days are written with."""
    if bar.settings.locale:
        return bar.settings.locale
    if language == "es":
        return _spanish_at(bar.zone, bar.jurisdiction)
    return "en_" + _PLACES.get(bar.jurisdiction, "AU")


@lru_cache(maxsize=64)
def _spanish_at(zone: str, jurisdiction: str) -> str:
    """Return the Spanish of the land that a time zone lies in; of the United States or Spain elsewhere."""
    if jurisdiction == "US":
        return "es_US"
    land = get_global("zone_territories").get(zone, "")
    return f"es_{land}" if land and exists(f"es_{land}") else "es_ES"
