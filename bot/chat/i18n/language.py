"""The current language and locale, and the writing of numbers, money and days in it.

Texts pass through `_` (or `ngettext`), placeholders through str.format, so that the catalogues hold whole
sentences.
"""

from __future__ import annotations

import gettext
import re
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass
from datetime import date, datetime
from decimal import Decimal
from fractions import Fraction
from functools import cache, lru_cache
from importlib import resources
from zoneinfo import ZoneInfo

from babel import Locale
from babel.core import get_global
from babel.dates import format_date, format_time
from babel.localedata import exists
from babel.numbers import NumberPattern, format_currency, get_decimal_symbol, parse_pattern

from bot.chat import i18n
from bot.chat.i18n import numbers
from bot.chat.i18n.languages import ENGLISH, languages, understood
from bot.trade.money.money import minor_digits


@dataclass(frozen=True, slots=True)
class Tongue:
    """A language with the locale for numbers, money and days.

    `year` is the current one, 0 if unknown: days of other years are written with their year. `units` are the
    bar's own ("us"), whose ounces need no country.
    """

    language: str = ENGLISH
    locale: str = "en_US"
    zone: str = "UTC"
    currency: str = "USD"
    year: int = 0
    units: str = ""


_FEW_UNITS = 10  # below this much money, an estimate shows coins

_tongue: ContextVar[Tongue] = ContextVar("tongue", default=Tongue())  # noqa: B039 - frozen


@contextmanager
def speaking(tongue: Tongue) -> Iterator[None]:
    """Use this language and locale within the block."""
    token = _tongue.set(tongue)
    try:
        yield
    finally:
        _tongue.reset(token)


def tongue() -> Tongue:
    """Return the current language and locale."""
    return _tongue.get()


@cache
def _catalogue(language: str) -> gettext.NullTranslations:
    if language not in languages():
        return gettext.NullTranslations()
    file = resources.files(f"{i18n.__name__}.{language}") / "messages.mo"
    if not file.is_file():
        return gettext.NullTranslations()
    with file.open("rb") as texts:
        return gettext.GNUTranslations(texts)


def _(text: str) -> str:
    """Return `text` in the current language, as it is spoken in the current country."""
    return regional(_catalogue(_tongue.get().language).gettext(text)) if text else text


def regional(text: str) -> str:
    """Return a text of the current language with the words of the current locale's country."""
    current = _tongue.get()
    return _in_country(text, current.language, current.locale.rpartition("_")[2])


@lru_cache(maxsize=4096)
def _in_country(text: str, language: str, country: str) -> str:
    words = languages()[language].regional.get(country) if language in languages() else None
    if not words:
        return text
    return _any_of(language, country).sub(lambda found: _alike(found.group(), words), text)


@cache
def _any_of(language: str, country: str) -> re.Pattern[str]:
    longest_first = sorted(languages()[language].regional[country], key=len, reverse=True)
    return re.compile(rf"\b(?:{'|'.join(longest_first)})\b", re.IGNORECASE)


def _alike(found: str, words: Mapping[str, str]) -> str:
    """Return the word to put in place of the found one, with a capital letter where that has one."""
    said = words[found.lower()]
    return said[0].upper() + said[1:] if found[0].isupper() else said


def translated(context: str, text: str, language: str) -> str:
    """Return the translation of a text with a context, or the text itself if there is none."""
    return _catalogue(language).pgettext(context, text)


def other_words(text: str) -> tuple[str, ...]:
    """Return the other ways to say a text in the current language."""
    return understood(_tongue.get().language)[0].other_words.get(text, ())


def ngettext(one: str, many: str, number: int) -> str:
    """Return the plural form of the text for `number`."""
    return regional(_catalogue(_tongue.get().language).ngettext(one, many, number))


@cache
def _locale(name: str) -> Locale:
    return Locale.parse(name)


def decimal_mark() -> str:
    """Return the decimal mark of the current locale: a point or a comma."""
    return get_decimal_symbol(_locale(_tongue.get().locale))


def is_month_first() -> bool | None:
    """Whether 12/5 is a day in December here; None if the country is unknown, or writes both."""
    current = tongue()
    land = get_global("zone_territories").get(current.zone, "")
    here = _is_month_first(current.locale)
    there = _is_month_first(f"en_{land}") if exists(f"en_{land}") else False
    return here if here == there and (land or not here) else None


@cache
def _is_month_first(locale: str) -> bool | None:
    first = _locale(locale).date_formats["short"].pattern[0]
    return None if first == "y" else first == "M"


def read_number(text: str) -> Fraction:
    """Return the number in a text, by the current language and locale; see numbers.read_number."""
    return numbers.read_number(text, decimal_mark(), _tongue.get().language)


def read_range(text: str) -> tuple[Fraction, Fraction]:
    """Return the ends of a range, by the current language and locale; see numbers.read_range."""
    return numbers.read_range(text, decimal_mark(), _tongue.get().language)


def _as_decimal(value: Fraction | Decimal | int) -> Decimal:
    if isinstance(value, Fraction):
        return Decimal(value.numerator) / Decimal(value.denominator)
    return Decimal(value)


def show_number(value: Fraction | Decimal | int, places: int = 2) -> str:
    """Write a number with at most `places` decimals, half to even, so that it reads back the same."""
    return _shown(Fraction(value), _tongue.get().locale, places)


@lru_cache(maxsize=4096)
def _shown(value: Fraction, locale: str, places: int) -> str:
    return numbers.show_number(value, locale, places)


def show_sensibly(value: Fraction | Decimal | int, figures: int = 3) -> str:
    """Write a number with about `figures` significant figures, as read off a tool."""
    number = abs(_as_decimal(value))
    whole = len(str(int(number))) if number >= 1 else 0
    places = max(0, figures - whole) if number else 0
    if 0 < number < 1:
        places = figures - 1 - number.adjusted()
    return show_number(value, places)


def show_money(amount: Decimal | Fraction, currency: str | None = None, extra_places: int = 0) -> str:
    """Write an amount of money, with `extra_places` more decimals than its coins for cost per drink."""
    code = currency or _tongue.get().currency
    pattern = _money_pattern(_tongue.get().locale, minor_digits(code) + extra_places)
    locale = _locale(_tongue.get().locale)
    text: str = format_currency(_as_decimal(amount), code, pattern, locale=locale, currency_digits=False)
    return text


def show_estimates(*amounts: float) -> tuple[str, ...]:
    """Write estimated money: coins below 10; above, two digits are known and no coins are shown."""
    if max(map(abs, amounts)) < _FEW_UNITS:
        return tuple(show_money(Decimal(repr(round(amount, 4)))) for amount in amounts)
    whole = -minor_digits(_tongue.get().currency)
    units = [Decimal(round(amount)) for amount in amounts]
    known = [round(one, 1 - one.adjusted()) if one else one for one in units]
    return tuple(show_money(one, extra_places=whole) for one in known)


@cache
def _money_pattern(locale: str, digits: int) -> NumberPattern:
    """Return the locale's pattern with the decimals that ISO 4217 gives the currency."""
    pattern = _locale(locale).currency_formats["standard"].pattern
    places = "." + "0" * digits if digits else ""
    pattern = pattern.replace("#,##,##0.00", "#,##,##0" + places).replace("#,##0.00", "#,##0" + places)
    return parse_pattern(pattern)


def show_day(day: date) -> str:
    """Write a short day with its weekday, such as 'Wed 25 Nov', in the locale's order.

    A day of another year includes the year.
    """
    skeleton = "MMMEd" if _tongue.get().year in {0, day.year} else "yMMMEd"
    locale = _tongue.get().locale
    return format_date(day, _day_pattern(locale, skeleton), locale=_locale(locale))


def show_full_day(day: date) -> str:
    """Write a day with its year."""
    return format_date(day, "medium", locale=_locale(_tongue.get().locale))


@cache
def _day_pattern(locale: str, skeleton: str) -> str:
    pattern: str = _locale(locale).datetime_skeletons[skeleton].pattern
    return pattern


def local(instant: datetime) -> datetime:
    """Return the instant in the bar's time zone."""
    return instant.astimezone(ZoneInfo(_tongue.get().zone))


def show_time(instant: datetime) -> str:
    """Write the time of day in the bar's time zone, on the locale's 12- or 24-hour clock."""
    return format_time(local(instant), "short", locale=_locale(_tongue.get().locale)).replace("\u202f", " ")


def show_moment(instant: datetime) -> str:
    """Write day and time in the bar's time zone."""
    return f"{show_day(local(instant).date())} {show_time(instant)}"
