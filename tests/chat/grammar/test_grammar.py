"""Tests of the grammar: readings, errors, bounded work, and reading back shown text."""

from __future__ import annotations

from contextlib import suppress
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from lark.parsers.lalr_parser_state import ParserState

from bot.chat.grammar import parser
from bot.chat.grammar.lexer import LONGEST_MESSAGE, MOST_PIECES, Noun, Vocabulary, cut
from bot.chat.grammar.parser import PhraseError, TooLongError
from bot.chat.grammar.recipe_text import tidied
from bot.chat.grammar.syntax import Amount, Bottles
from bot.chat.i18n.keywords import keyword_table
from bot.chat.i18n.language import Tongue, speaking
from bot.chat.i18n.numbers import AmbiguousNumberError, NotANumberError
from bot.chat.reply.units import UNIT_LABELS, show_quantity
from bot.trade.formulas.measures import Quantity
from tests.examples import examples

_RULES = sorted(parser._lark().options.start)
_NAMES = (
    ("FORMULA", "Grapefruit mist"),
    ("FORMULA", "Lime tincture"),
    ("INGREDIENT", "lime oil"),
    ("INGREDIENT", "lime"),
    ("INGREDIENT", "neutral spirit"),
    ("INGREDIENT", "100 % agave"),
    ("REASON", "mouldy"),
    ("REASON", "dried out"),
    ("PREPARATION", "aroma mist"),
    ("SETTING", "closing hour"),
)


def _vocabulary() -> Vocabulary:
    vocabulary = Vocabulary("en")
    for number, (kind, name) in enumerate(_NAMES, start=1):
        vocabulary.add(Noun(kind, str(number), name))
    return vocabulary


_VOCABULARY = _vocabulary()
_FRAGMENTS = st.one_of(
    st.sampled_from(sorted(keyword_table("en"))),
    st.sampled_from([name for _kind, name in _NAMES]),
    st.sampled_from(["ml", "oz", "fl oz", "g", "kg", "dash", "dozen", "each", "cup", "imperial fl oz"]),
    st.sampled_from(["8", "1/2", "½", "1½", "1 1/2", "36,5", "1,000", "1.000", "2-3", "1'000", "1/0", "00"]),
    st.sampled_from(
        [",", ";", ":", "=", "%", "x", "×", "-", "–", "#3", "#3.2", "€", "$", "\n", "+", "/", "2026-W30"]
    ),
    st.sampled_from(["12:30", "2026-11-25", "EUR", "🍊", "\u200d", "\u202e", "ﬀ", "İ", "9" * 12, "e9", "_"]),
    st.text(max_size=6),
)
_PHRASES = st.lists(_FRAGMENTS, max_size=14).flatmap(
    lambda parts: st.sampled_from([" ".join(parts), "".join(parts), "\n".join(parts)])
)


@examples(100)
@given(rule=st.sampled_from(_RULES), text=st.one_of(_PHRASES, st.text(max_size=80)))
@example(rule="batch_cmd", text="1/2")
@example(rule="batch_cmd", text="#999999999.999999")
@example(rule="price_cmd", text="lime 1/0 ml 3")
@example(rule="later_cmd", text="1 99:99")
@example(rule="week_cmd", text="2026-W99")
def test_it_raises_nothing_but_its_own_errors(rule: str, text: str) -> None:
    try:
        phrase = parser.read(rule, text, _VOCABULARY)
    except parser.UNREADABLE:
        return
    for filled in phrase.slots.values():
        assert filled.text in tidied(rule, text, _VOCABULARY)


@examples(75)
@given(rule=st.sampled_from(_RULES), text=_PHRASES)
def test_what_was_not_understood_is_the_end_of_what_was_said(rule: str, text: str) -> None:
    caught: PhraseError | None = None
    try:
        parser.read(rule, text, _VOCABULARY)
    except PhraseError as error:
        caught = error
    except parser.UNREADABLE:
        return
    if caught is not None:
        read = tidied(rule, text, _VOCABULARY)  # ingredient lines are rewritten first
        assert read.startswith(caught.understood)
        assert read.strip().endswith(caught.problem)


_NASTY = {
    "letters": "a " * 2048,
    "fractions": "½" * 4096,
    "digits": "1" * 4096,
    "points": "1." * 2048,
    "commas": "1," * 2048,
    "groups": "1,000" * 819,
    "apostrophes": "a'" * 2048,
    "hyphens": "a-" * 2048,
    "breaks": "\n" * 4096,
    "spaces": " " * 4096,
    "oranges": "🍊" * 4096,
    "one word": "x" * 4096,
    "waste": "6 limes mouldy, " * 256,
    "lines": "lime oil 10 ml\n" * 273,
    "stock": "with 10 ml lime oil and " * 170,
    "ounces": "imperial fluid ounces " * 186,
    "names": "lime " * 819,
    "numbers": "1 " * 2048,
    "hashes": "#1 " * 1365,
}


@pytest.mark.parametrize("rule", _RULES)
def test_the_work_for_the_longest_message_is_bounded(rule: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """The limit on tried tokens; the measured worst case is about 30 ms."""
    tried = 0
    feed = ParserState.feed_token

    def counted(self: Any, token: Any, is_end: bool = False) -> Any:
        nonlocal tried
        tried += 1
        return feed(self, token, is_end)

    monkeypatch.setattr(ParserState, "feed_token", counted)
    for name, text in _NASTY.items():
        for cut_to in (LONGEST_MESSAGE, 600):
            tried = 0
            with suppress(PhraseError, AmbiguousNumberError, NotANumberError):
                parser.read(rule, text[:cut_to], _VOCABULARY)
            # Each piece has few readings; one failure collects the expected terminals.
            assert tried <= 5 * MOST_PIECES + 200, (name, cut_to, tried)


def test_a_message_is_never_cut_into_more_pieces_than_are_read() -> None:
    for text in _NASTY.values():
        assert len(cut(text)) <= MOST_PIECES + 1


@pytest.mark.parametrize(
    "text",
    [
        "12 bottles of grapefruit mist 50 ml",
        "400 ml grapefruit mist to 500 ml",
        "grapefruit mist x2 to 50 ml",
        "grapefruit mist, 50 ml each",
        "400 ml grapefruit mist, 50 ml each",
    ],
)
def test_of_two_amounts_to_make_neither_is_taken(text: str) -> None:
    with pytest.raises(PhraseError):
        parser.read("batch_cmd", text, _VOCABULARY)


@pytest.mark.parametrize(
    ("language", "rule", "text"),
    [
        ("en", "batch_cmd", "12 bottles of grapefruit mist, 50 ml each"),
        ("en", "batch_cmd", "12 bottles of 50 ml each of grapefruit mist"),
        ("en", "batch_cmd", "grapefruit mist 12 x 50 ml each"),
        ("en", "batch_cmd", "grapefruit mist, 12 bottles at 50 ml each"),
        ("es", "batch_cmd", "12 botellas de grapefruit mist, 50 ml cada una"),
        ("es", "batch_cmd", "12 botellas de grapefruit mist 50 ml c/u"),
        ("es", "batch_cmd", "grapefruit mist, 12 botellas de 50 ml cada uno"),
        ("en", "bottled_cmd", "1 12 bottles of 50 ml each"),
        ("en", "bottled_cmd", "1 12 bottles, 50 ml each"),
        ("es", "bottled_cmd", "1 12 x 50 ml c/u"),
        ("es", "bottled_cmd", "1 12 botellas de 50 ml cada una"),
    ],
)
def test_the_size_of_each_bottle_may_say_that_it_is_each(language: str, rule: str, text: str) -> None:
    with speaking(Tongue(language)):
        values = [one.value for one in parser.read(rule, text, _VOCABULARY).filled]
    assert Bottles(Fraction(12), Amount(Fraction(50), "ml")) in values


@pytest.mark.parametrize(("language", "text"), [("en", "of 39"), ("es", "del 39")])
def test_labels_of_a_number_are_of_a_batch(language: str, text: str) -> None:
    with speaking(Tongue(language)):
        assert parser.read("label_cmd", text, _VOCABULARY).slots["batch"].value == 39


def test_what_is_too_long_is_refused_and_not_read_in_part() -> None:
    line = "6 limes mouldy\n"
    assert len(parser.read("waste_cmd", line * 80, _VOCABULARY).lines) == 80
    with pytest.raises(TooLongError):
        parser.read("waste_cmd", line * 200, _VOCABULARY)
    with pytest.raises(TooLongError):
        parser.read("waste_cmd", line + " " * LONGEST_MESSAGE + line, _VOCABULARY)


_LOCALES = st.sampled_from(["en_IE", "en_US", "en_GB", "en_AU", "es_ES", "fr_FR", "de_CH", "en_IN"])
_MEASURES = st.sampled_from(sorted(set(UNIT_LABELS) - {"each"}))


@examples(100)
@given(
    thousandths=st.integers(1, 10**9),
    unit=_MEASURES,
    locale=_LOCALES,
    units=st.sampled_from(["", "us", "imperial"]),
)
@example(thousandths=1625, unit="us_fluid_ounce", locale="en_IE", units="")
@example(thousandths=1_234_250, unit="us_fluid_ounce", locale="en_IE", units="")
def test_a_quantity_that_is_shown_is_read_back_the_same(
    thousandths: int, unit: str, locale: str, units: str
) -> None:
    quantity = Quantity(Fraction(thousandths, 1000), unit)
    with speaking(Tongue("en", locale, "UTC", "EUR")):
        shown = show_quantity(quantity, units)
        read = parser.read("amount_slot", shown, _VOCABULARY).slots["amount"].value
    assert isinstance(read, Amount)
    assert read.number == quantity.number, shown
    if isinstance(read.unit, str):
        assert read.unit == unit, shown
    else:
        # 'fl oz' in a bar with fluid ounces: its settings name the country.
        assert units == unit.partition("_")[0], shown


@settings(deadline=None)
@given(thousandths=st.integers(1, 10**9), locale=_LOCALES)
def test_a_count_that_is_shown_is_read_back_the_same(thousandths: int, locale: str) -> None:
    number = Fraction(thousandths, 1000)
    with speaking(Tongue("en", locale, "UTC", "EUR")):
        shown = show_quantity(Quantity(number, "each"))
        read = parser.read("number_slot", shown, _VOCABULARY).slots["number"].value
    assert read == round(number * 100) / Fraction(100)
