"""Tests of ingredient lines as people paste and type them."""

from __future__ import annotations

from fractions import Fraction

import pytest

from bot.chat.grammar.lexer import Vocabulary
from bot.chat.grammar.recipe_text import (
    SharesError,
    has_list,
    in_shares,
    is_list,
    left_out,
    tidied,
    with_own_bottle,
)
from bot.chat.i18n.language import Tongue, speaking


def _tidied(text: str, language: str = "en", rule: str = "lines_slot") -> str:
    with speaking(Tongue(language, f"{language}_ES" if language == "es" else "en_GB")):
        return tidied(rule, text, Vocabulary(language))


@pytest.mark.parametrize(
    ("typed", "read"),
    [
        ("- 5 ml lemon oil\n• 5 ml lime oil\n* 1 ml salt", "5 ml lemon oil\n5 ml lime oil\n1 ml salt"),
        ("1. 5 ml lemon oil", "5 ml lemon oil"),
        ("Mandarin oil - 10 ml, lime oil: 5 ml", "Mandarin oil 10 ml, lime oil 5 ml"),
        ("10 ml lemon oil (one bottle)", "10 ml lemon oil"),
        ("lime oil (cold pressed) 10 ml", "lime oil 10 ml"),
        ("spirit (96%) 200 ml", "spirit 96% 200 ml"),
        ("one bottle of lemon oil (10 ml)", "10 ml"),
        ("a 10 ml bottle of lemon oil", "10 ml lemon oil"),
        ("1 bottle yuzu oil 10 ml", "yuzu oil 10 ml"),
        ("water, distilled 40 ml", "distilled water 40 ml"),
        ("approx 10 ml lime oil", "10 ml lime oil"),
        ("- 1/2 oz water", "1/2 oz water"),
        ("kind mist", "kind aroma mist"),
        ("2% lime oil, 70% spirit 96%, 28% water", "2 ml lime oil, 70 ml spirit 96%, 28 ml water"),
        ("lime oil 2,5%, spirit 97,5%", "2,5 ml lime oil, 97,5 ml spirit"),
    ],
)
def test_a_pasted_line_is_written_as_the_grammar_reads_it(typed: str, read: str) -> None:
    assert read in _tidied(typed)


@pytest.mark.parametrize(
    ("typed", "read"),
    [
        ("10 ml aceite de lima (una botella)", "10 ml aceite de lima"),
        ("una botella de aceite de lima de 10 ml", "aceite de lima 10 ml"),
        ("agua, destilada 40 ml", "agua destilada 40 ml"),
        ("aprox. 10 ml aceite de lima", "10 ml aceite de lima"),
    ],
)
def test_a_pasted_line_in_spanish_is_too(typed: str, read: str) -> None:
    assert _tidied(typed, "es") == read


@pytest.mark.parametrize(
    "typed",
    [
        *("water, salt 5 g", "sprays 2-3", "rest 24 h", "kind: tincture", "spirit 96% 200 ml"),
        *("lime oil 2,5 ml", "remove water, rest 24 h", "10 ml lime oil (2 bottles)", "-5 ml lime oil"),
    ],
)
def test_other_lines_stay_as_they_are(typed: str) -> None:
    assert _tidied(typed) == typed


def test_shares_that_are_not_whole_are_refused() -> None:
    with pytest.raises(SharesError) as refused:
        _tidied("2% lime oil, 70% spirit 96%, 20% water")
    assert refused.value.total == Fraction(92)
    with pytest.raises(SharesError) as solid:
        _tidied("20% salt, 80% water")
    assert solid.value.solid == "salt"


def test_only_what_follows_the_name_is_rewritten() -> None:
    assert _tidied("Mist (new): - 5 ml oil", rule="new_cmd") == "Mist (new): 5 ml oil"
    assert _tidied("Mist (new)", rule="new_cmd") == "Mist (new)"
    assert _tidied("mist (new): - 5 ml oil", rule="price_cmd") == "mist (new): - 5 ml oil"


def test_what_is_left_out_is_named() -> None:
    with speaking(Tongue("en", "en_GB")):
        assert left_out("approx 10 ml lime oil (one bottle), spirit (96%) 5 ml") == ["(one bottle)", "approx"]
        assert in_shares("2% lime oil, 98% spirit 96%")
        assert not in_shares("10 ml lime oil, 90 ml spirit 96%")


def test_a_list_is_known_by_its_amounts() -> None:
    with speaking(Tongue("en", "en_GB")):
        assert all(map(is_list, ("water 28%", "approx 10 ml oil", "bla\nbla", "• 5 ml oil", "oil 10 ml")))
        assert not any(map(is_list, ("", "which oil is best", "batches")))
        assert has_list("Mist: 10 ml lime oil, 5 ml water", 2)
        assert not has_list("received: 50 lemons, 20 limes", 2)


@pytest.mark.parametrize(
    ("typed", "read"),
    [
        ("grapefruit mist to one bottle of oil 15 ml", "grapefruit mist with 15 ml oil"),
        ("I have a bottle of lime oil (10 ml)", "I have 10 ml lime oil"),
        ("2 bottles of lime oil 10 ml", "2 bottles of lime oil 10 ml"),
        ("mist to 12 bottles of 50 ml", "mist to 12 bottles of 50 ml"),
    ],
)
def test_one_bottle_of_a_size_is_that_much(typed: str, read: str) -> None:
    with speaking(Tongue("en", "en_GB")):
        assert with_own_bottle(typed) == read
