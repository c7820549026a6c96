"""Read and write numbers: decimal point or comma, groups, fractions, words, ranges.

A number that two locales read differently is never guessed: a mistake by a factor of a thousand is worse than
a question. The work is bounded, so no text can block the bot.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal, localcontext
from fractions import Fraction
from functools import cache
from typing import Final

from babel import Locale
from babel.numbers import format_decimal, get_decimal_symbol

from bot.chat.i18n.languages import ENGLISH, understood
from bot.trade.errors import TradeError

LONGEST_NUMBER: Final = 40  # characters
MOST_DIGITS: Final = 12


@dataclass
class NotANumberError(TradeError):
    """The text is not a number or range in any known form."""

    text: str


@dataclass
class AmbiguousNumberError(TradeError):
    """The text has several meanings; `readings` are the numbers to offer, likeliest first."""

    text: str
    readings: tuple[Fraction, ...]


_HALF: Final = Fraction(1, 2)

# The Unicode characters of vulgar fractions: "½" decomposes to "1⁄2".
_VULGAR_SIGNS: Final = "¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"
_VULGAR: Final = {ord(sign): f" {unicodedata.normalize('NFKC', sign)}" for sign in _VULGAR_SIGNS}
_FRACTION_SIGNS: Final = {ord("⁄"): "/", ord("∕"): "/"}
_SPACES: Final = " \u00a0\u2009\u202f"
_HYPHENS: Final = "-\u2010\u2011\u2012\u2013\u2014"

_FRACTION: Final = re.compile(rf"(?:([0-9]+)[{_SPACES}]+)?([0-9]+) ?/ ?([0-9]+)")
_HYPHENED: Final = re.compile(rf"([0-9]+)[{_HYPHENS}][{_SPACES}]?([0-9]+)/([0-9]+)")
_PLAIN: Final = re.compile(rf"[0-9]*(?:[.,'’{_SPACES}][0-9]+)*")


@cache
def number_words(language: str) -> Mapping[str, Fraction]:
    """Return the number words and phrases of a language and of English, casefolded."""
    return {
        word: number for one in reversed(understood(language)) for word, number in one.number_words.items()
    }


@cache
def _and_a_half(language: str) -> re.Pattern[str]:
    halves = "|".join(half for one in understood(language) for half in one.halves)
    return re.compile(rf"(\w+) (?:{halves})")


@cache
def range_sign(language: str) -> re.Pattern[str]:
    """Return the pattern between the ends of a range: a hyphen or dash, or a word such as 'to'."""
    words = "|".join(word for one in understood(language) for word in one.range_words)
    return re.compile(rf" ?[{_HYPHENS}] ?| (?:{words}) ")


def read_number(text: str, decimal_mark: str = ".", language: str = ENGLISH) -> Fraction:
    """Return the exact number in `text`; never negative.

    `decimal_mark` is the mark of the reader's locale, "." or ",". Accepted forms: 12, 1.5, 36,5, groups of
    thousands by the other mark, a space or an apostrophe, Indian groups (1,00,000), ½, 1½, 1 1/2, and the
    words of a language ("one and a half"). A mark before any other number of digits than three is a decimal
    mark. Before three digits, the other mark groups (1,000 is a thousand where the mark is a point), and a
    point that is the locale's mark is a decimal point (1.000 is one).

    Raises AmbiguousNumberError for a comma before three digits where the comma is the decimal mark (one, or a
    thousand?) and for 1-1/2. Raises NotANumberError for everything else, and for more than 40 characters or
    12 digits.
    """
    if len(text) > LONGEST_NUMBER:
        raise NotANumberError(text)
    plain = text.translate(_VULGAR).translate(_FRACTION_SIGNS).strip(_SPACES).casefold()
    if sum(char.isdigit() for char in plain) > MOST_DIGITS:
        raise NotANumberError(text)
    found = _by_word(plain, language) or _by_fraction(plain) or _by_digits(plain, decimal_mark)
    if found is None:
        raise NotANumberError(text)
    if isinstance(found, _Doubt):
        raise AmbiguousNumberError(text, found.readings)
    return found.value


def read_range(text: str, decimal_mark: str = ".", language: str = ENGLISH) -> tuple[Fraction, Fraction]:
    """Return the low and high end of a range such as 2-3, 2–3 or "2 to 3"; a single number is both.

    Raises the errors of `read_number`, and NotANumberError if the first number is the larger.
    """
    try:
        only = read_number(text, decimal_mark, language)
    except NotANumberError:
        if len(text) > LONGEST_NUMBER:
            raise
    else:
        return only, only
    for found in range_sign(language).finditer(text.casefold()):
        try:
            low = read_number(text[: found.start()], decimal_mark, language)
            high = read_number(text[found.end() :], decimal_mark, language)
        except NotANumberError:
            continue
        if low <= high:
            return low, high
    raise NotANumberError(text)


def show_number(value: Fraction | Decimal | int, locale: str | Locale = "en", places: int = 2) -> str:
    """Write a number in a locale's format with at most `places` decimals, no trailing zeros.

    Halves round to even. `read_number` with the locale's decimal mark reads back the rounded number, up to 12
    digits. Three decimals after a comma therefore get a fourth, 0, where they could pass for thousands.
    """
    scaled = round(Fraction(value) * 10**places)
    while places > 0 and scaled % 10 == 0:
        scaled //= 10
        places -= 1
    signs = _locale(locale) if isinstance(locale, str) else locale
    if places == 3 and 1000 <= abs(scaled) < 1_000_000 and get_decimal_symbol(signs) == ",":
        scaled, places = scaled * 10, 4
    whole_part = signs.decimal_formats[None].pattern.partition(".")[0]
    with localcontext(prec=len(str(scaled)) + places):
        exact = Decimal(scaled).scaleb(-places)
        return format_decimal(exact, f"{whole_part}.{'0' * places}", signs)


@cache
def _locale(name: str) -> Locale:
    return Locale.parse(name)


@dataclass(frozen=True, slots=True)
class _Sure:
    value: Fraction


@dataclass(frozen=True, slots=True)
class _Doubt:
    readings: tuple[Fraction, ...]


def _by_word(plain: str, language: str) -> _Sure | None:
    """Return the number written in words."""
    words = " ".join(plain.split())
    known = number_words(language)
    if words in known:
        return _Sure(known[words])
    if found := _and_a_half(language).fullmatch(words):
        whole = found[1]
        if whole.isascii() and whole.isdigit():
            return _Sure(int(whole) + _HALF)
        if known.get(whole, _HALF) != _HALF:
            return _Sure(known[whole] + _HALF)
    return None


def _by_fraction(plain: str) -> _Sure | _Doubt | None:
    """Return a fraction or a mixed number; 1-1/2 is ambiguous, because a hyphen also means a range."""
    if found := _FRACTION.fullmatch(plain):
        whole, over, under = (int(part or 0) for part in found.groups())
        # "1 3/2" is a typing mistake.
        if under and (found[1] is None or over < under):
            return _Sure(whole + Fraction(over, under))
    if found := _HYPHENED.fullmatch(plain):
        whole, over, under = (int(part) for part in found.groups())
        if whole and 0 < over < under:
            return _Doubt((whole + Fraction(over, under),))
    return None


def _by_digits(plain: str, decimal_mark: str) -> _Sure | _Doubt | None:
    """Return the number in digits with points, commas and other separators."""
    if not plain or not _PLAIN.fullmatch(plain):
        return None
    groups = re.split(r"[^0-9]", plain)
    marks = re.sub(r"[0-9]", "", plain)
    whole = Fraction(int("".join(groups)))
    if not marks:
        return _Sure(whole)
    last = marks[-1]
    decimal = whole / 10 ** len(groups[-1])
    if marks in (".", ","):
        if not _grouped(groups, last):
            return _Sure(decimal)
        if last != decimal_mark:
            return _Sure(whole)
        return _Sure(decimal) if last == "." else _Doubt((decimal, whole))
    if len(set(marks)) == 1:
        return _Sure(whole) if _grouped(groups, last) else None
    # With two kinds of separators, the first groups, and the last, used once, is the decimal mark.
    if last in ".," and len(set(marks[:-1])) == 1 and marks[0] != last and _grouped(groups[:-1], marks[0]):
        return _Sure(decimal)
    return None


def _grouped(groups: list[str], separator: str) -> bool:
    """Whether digits are grouped in thousands, or with commas in lakhs (1,00,000)."""
    first, *rest = groups
    if not rest or not first or first.startswith("0") or len(rest[-1]) != 3:
        return False
    if all(len(group) == 3 for group in rest):
        return len(first) <= 3
    return separator == "," and len(first) <= 2 and all(len(group) == 2 for group in rest[:-1])
