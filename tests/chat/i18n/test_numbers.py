"""Tests of reading and writing numbers: every form, every ambiguity, and bounded work."""

from __future__ import annotations

import contextlib
from decimal import Decimal
from fractions import Fraction
from functools import cache

import pytest
from babel.localedata import locale_identifiers
from babel.numbers import get_decimal_symbol, get_group_symbol
from hypothesis import example, given
from hypothesis import strategies as st

from bot.chat.i18n.languages import languages
from bot.chat.i18n.numbers import (
    AmbiguousNumberError,
    NotANumberError,
    number_words,
    read_number,
    read_range,
    show_number,
)
from tests.work_done import at_most_calls

MARKS = [".", ","]
COMMON_LOCALES = ["en_US", "en_GB", "en_IN", "en_ZA", "es_ES", "es_MX", "de_DE", "de_CH", "fr_FR", "sv_SE"]


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("12", "12"),
        (" 12 ", "12"),
        ("0", "0"),
        ("007", "7"),
        ("1.5", "1.5"),
        ("36,5", "36.5"),
        (".5", "0.5"),
        (",25", "0.25"),
        ("1.000,5", "1000.5"),
        ("1,000.5", "1000.5"),
        ("1,000.500", "1000.5"),
        ("1.234.567,25", "1234567.25"),
        ("1,000,000", "1000000"),
        ("1.000.000", "1000000"),
        ("1 000", "1000"),
        ("1\u00a0000", "1000"),
        ("1\u2009000,5", "1000.5"),
        ("1\u202f234\u202f567", "1234567"),
        ("1'000.5", "1000.5"),
        ("1’000", "1000"),
        ("1,00,000", "100000"),
        ("12,34,567.5", "1234567.5"),
        ("1000,500", "1000.5"),
        ("1000.500", "1000.5"),
        ("0,125", "0.125"),
        ("0.125", "0.125"),
        ("1,0000", "1"),
        ("123456789012", "123456789012"),
        ("½", "1/2"),
        ("⅔", "2/3"),
        ("⅐", "1/7"),
        ("1½", "3/2"),
        ("1 ½", "3/2"),
        ("12⅞", "103/8"),
        ("1/2", "1/2"),
        ("1⁄2", "1/2"),
        ("3 / 4", "3/4"),
        ("3/2", "3/2"),
        ("1 1/2", "3/2"),
        ("1  1/2", "3/2"),
        ("two", "2"),
        ("Twelve", "12"),
        ("a", "1"),
        ("an", "1"),
        ("half", "1/2"),
        ("half a", "1/2"),
        ("a half", "1/2"),
        ("one and a half", "3/2"),
        ("2 and a half", "5/2"),
    ],
)
@pytest.mark.parametrize("mark", MARKS)
def test_forms_that_read_the_same_everywhere(text: str, value: str, mark: str) -> None:
    assert read_number(text, mark) == Fraction(value)


@pytest.mark.parametrize(
    ("text", "language", "value"),
    [
        ("thirteen", "en", 13),
        ("twenty", "en", 20),
        ("Forty-two", "en", 42),
        ("ninety nine", "en", 99),
        ("a hundred", "en", 100),
        ("two hundred and fifty", "en", 250),
        ("nine hundred ninety-nine", "en", 999),
        ("dieciséis", "es", 16),
        ("veintidos", "es", 22),
        ("treinta y uno", "es", 31),
        ("cien", "es", 100),
        ("ciento cinco", "es", 105),
        ("quinientas setenta y siete", "es", 577),
        ("novecientos noventa y nueve", "es", 999),
    ],
)
def test_numbers_below_a_thousand_are_read_in_words(text: str, language: str, value: int) -> None:
    assert read_number(text, ".", language) == value


@pytest.mark.parametrize(
    ("text", "mark", "value"),
    [
        ("1,000", ".", "1000"),
        ("1,125", ".", "1125"),
        ("12,345", ".", "12345"),
        ("1.000", ".", "1"),
        ("1.125", ".", "1.125"),
        ("1.000", ",", "1000"),
        ("12.345", ",", "12345"),
        ("999.999", ",", "999999"),
    ],
)
def test_a_mark_before_three_digits_follows_the_locale(text: str, mark: str, value: str) -> None:
    assert read_number(text, mark) == Fraction(value)


@pytest.mark.parametrize(
    ("text", "readings"),
    [
        ("1,000", ("1", "1000")),
        ("1,125", ("1.125", "1125")),
        ("36,500", ("36.5", "36500")),
    ],
)
def test_a_decimal_comma_before_three_digits_is_asked(text: str, readings: tuple[str, str]) -> None:
    with pytest.raises(AmbiguousNumberError) as caught:
        read_number(text, ",")
    assert caught.value.text == text
    assert caught.value.readings == tuple(map(Fraction, readings))


@pytest.mark.parametrize(("text", "reading"), [("1-1/2", "3/2"), ("1-½", "3/2"), ("2–3/4", "11/4")])
def test_a_hyphen_before_a_fraction_is_not_taken_for_a_range(text: str, reading: str) -> None:
    for read in (read_number, read_range):
        with pytest.raises(AmbiguousNumberError) as caught:
            read(text)
        assert caught.value.readings == (Fraction(reading),)


@pytest.mark.parametrize(
    "text",
    [
        "",
        " ",
        "x",
        "-3",
        "+3",
        "5.",
        "1..5",
        "1,5,5",
        "1.5.5",
        "1 2",
        "1 00",
        "0,000,000",
        "1.000,000.5",
        "1e9",
        "9**9**8",
        "nan",
        "inf",
        "Infinity",
        "0x10",
        "1_000",
        "1/0",
        "1/2/3",
        "1 3/2",
        "1.5 1/2",
        "½½",
        "1.5½",
        "²",
        "1²",
        "１２",
        "١٢",
        "Ⅻ",
        "dozen",
        "half and a half",
        "umpteen",
        "1234567890123",
        "1/123456789012",
        "1" + " " * 40,
        "#1",
    ],
)
@pytest.mark.parametrize("mark", MARKS)
def test_all_else_is_no_number(text: str, mark: str) -> None:
    with pytest.raises(NotANumberError) as caught:
        read_number(text, mark)
    assert caught.value.text == text


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("2-3", "2", "3"),
        ("2–3", "2", "3"),
        ("2 — 3", "2", "3"),
        ("2 to 3", "2", "3"),
        ("2 or 3", "2", "3"),
        ("two TO three", "2", "3"),
        ("1,5-2,5", "1.5", "2.5"),
        ("1 1/2 - 2", "1.5", "2"),
        ("½-¾", "0.5", "0.75"),
        ("0-1/2", "0", "0.5"),
        ("1-3/2", "1", "1.5"),
        ("2", "2", "2"),
        ("one and a half to two", "1.5", "2"),
        ("half to one", "0.5", "1"),
        ("3-3", "3", "3"),
    ],
)
@pytest.mark.parametrize("mark", MARKS)
def test_ranges(text: str, low: str, high: str, mark: str) -> None:
    assert read_range(text, mark) == (Fraction(low), Fraction(high))


@pytest.mark.parametrize(
    "text", ["3-2", "2-", "-3", "2-3-4", "2 to", "to", "a to b", "1" * 30 + "-" + "1" * 30]
)
def test_all_else_is_no_range(text: str) -> None:
    with pytest.raises(NotANumberError):
        read_range(text)


def test_a_doubt_in_a_range_is_asked() -> None:
    assert read_range("1,000-2,000", ".") == (Fraction(1000), Fraction(2000))
    with pytest.raises(AmbiguousNumberError):
        read_range("1,000-2,000", ",")


@given(st.one_of(st.text(max_size=4096), st.text("0123456789.,-/½ '", max_size=60)), st.sampled_from(MARKS))
@example("1" * 4096, ".")
@example("1 " * 2048, ",")
@example("½" * 4096, ".")
@example("-" * 4096, ".")
@example("a " * 2048, ".")
@example("9" * 39, ".")
@example("½-" * 20, ".")
def test_any_text_is_read_or_refused_quickly(text: str, mark: str) -> None:
    read_range("1 to 2")  # the first time builds the patterns
    for read in (read_number, read_range):
        with at_most_calls(10_000), contextlib.suppress(NotANumberError, AmbiguousNumberError):
            read(text, mark)


@given(st.text("0123456789.,/½ '", max_size=45), st.sampled_from(MARKS))
def test_a_number_is_never_negative_nor_above_twelve_digits(text: str, mark: str) -> None:
    with contextlib.suppress(NotANumberError, AmbiguousNumberError):
        assert 0 <= read_number(text, mark) < 10**12


decimals = st.tuples(st.integers(0, 10**12 - 1), st.integers(0, 6))


@given(decimals, st.sampled_from(COMMON_LOCALES))
@example((1125, 3), "es_ES")
@example((1_000_000_000, 0), "de_CH")
@example((12345678, 3), "de_DE")
@example((999999, 3), "sv_SE")
def test_what_is_shown_reads_back_as_the_same_number(parts: tuple[int, int], locale: str) -> None:
    digits, places = parts
    value = Fraction(digits, 10**places)
    assert read_number(show_number(value, locale, places), get_decimal_symbol(locale)) == value


@given(decimals, decimals, st.sampled_from(COMMON_LOCALES))
def test_a_shown_range_reads_back(one: tuple[int, int], two: tuple[int, int], locale: str) -> None:
    low, high = sorted(Fraction(digits % 10**6, 10**places) for digits, places in (one, two))
    text = f"{show_number(low, locale, 6)} – {show_number(high, locale, 6)}"
    assert read_range(text, get_decimal_symbol(locale)) == (low, high)


@cache
def _locales() -> list[str]:
    """Return every CLDR locale with our digits and with marks that we read."""
    return [
        name
        for name in locale_identifiers()
        if get_decimal_symbol(name) in MARKS
        and get_group_symbol(name) in ".,'’ \u00a0\u202f"
        and not name.startswith("tok")  # groups single digits
    ]


@pytest.mark.parametrize("value", ["1", "1234", "1.125", "999.875", "1234.125", "0.125", "123456789.25"])
def test_reads_back_in_every_locale(value: str) -> None:
    assert len(_locales()) > 900
    for locale in _locales():
        shown = show_number(Fraction(value), locale, 3)
        assert read_number(shown, get_decimal_symbol(locale)) == Fraction(value), locale


@pytest.mark.parametrize(
    ("value", "locale", "places", "shown"),
    [
        (Fraction(73, 2), "en_US", 2, "36.5"),
        (Fraction(73, 2), "es_ES", 2, "36,5"),
        (Fraction(1, 3), "en_US", 2, "0.33"),
        (Fraction(1, 8), "en_US", 2, "0.12"),
        (Fraction(3, 8), "en_US", 2, "0.38"),
        (1000, "en_US", 2, "1,000"),
        (1000, "fr_FR", 2, "1\u202f000"),
        (100000, "en_IN", 0, "1,00,000"),
        (Decimal("1E+3"), "de_DE", 2, "1.000"),
        (Decimal("12.50"), "en_US", 2, "12.5"),
        (Fraction(5, 2), "en_US", 0, "2"),
        (Fraction(-1, 3), "en_US", 2, "-0.33"),
        (Fraction(-1, 1000), "en_US", 2, "0"),
        (Fraction(9, 8), "es_ES", 3, "1,1250"),
        (Fraction(1, 8), "es_ES", 3, "0,125"),
        (10**30, "en_US", 2, "1" + ",000" * 10),
    ],
)
def test_shown(value: Fraction | Decimal | int, locale: str, places: int, shown: str) -> None:
    assert show_number(value, locale, places) == shown


@pytest.mark.parametrize("language", languages())
def test_words_are_casefolded_and_positive(language: str) -> None:
    for word, value in number_words(language).items():
        assert word == word.casefold()
        assert value > 0
        assert read_number(word.upper(), language=language) == value


@pytest.mark.parametrize(
    ("text", "value"),
    [
        *(("dos", "2"), ("once", "11"), ("una", "1"), ("media", "1/2"), ("uno y medio", "3/2")),
        *(("two", "2"), ("one and a half", "3/2"), ("2 y media", "5/2"), ("un par de", "2")),
    ],
)
def test_spanish_and_english_words_are_numbers_in_spanish(text: str, value: str) -> None:
    assert read_number(text, language="es") == Fraction(value)


def test_a_word_of_another_language_is_no_number_in_english() -> None:
    for text in ("dos", "once", "un par de", "uno y medio"):
        with pytest.raises(NotANumberError):
            read_number(text)


@pytest.mark.parametrize("text", ["2 a 3", "dos a tres", "2 o 3", "2 to 3", "two or tres"])
def test_spanish_ranges(text: str) -> None:
    assert read_range(text, language="es") == (Fraction(2), Fraction(3))
