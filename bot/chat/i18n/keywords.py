"""The words of a language that the grammar and its lexer know: keywords, units, number phrases."""

from __future__ import annotations

import unicodedata
from fractions import Fraction
from functools import cache

from bot.chat.i18n.language import tongue
from bot.chat.i18n.languages import understood
from bot.chat.i18n.numbers import number_words
from bot.trade.formulas.unit_words import UnitWords, unit_table

LONGEST_PHRASE = 4  # words


@cache
def keyword_table(language: str) -> dict[str, tuple[str, ...]]:
    """Return the terminals for each word or phrase; English is understood in every language.

    Phrases have single spaces; words with accents also match without them.
    """
    table: dict[str, tuple[str, ...]] = {}
    for one in understood(language):
        for terminal, listed in one.keywords.items():
            for word in listed.split():
                for form in {word.replace("_", " "), _bare(word).replace("_", " ")}:
                    if terminal not in table.get(form, ()):
                        table[form] = (*table.get(form, ()), terminal)
    return table


def _bare(word: str) -> str:
    return "".join(c for c in unicodedata.normalize("NFKD", word) if not unicodedata.combining(c))


@cache
def keyword_phrases(language: str) -> frozenset[str]:
    """Return the first words of phrases."""
    return frozenset(words.split(" ")[0] for words in keyword_table(language) if " " in words)


def keyword_for(terminal: str) -> str:
    """Return the usual word for a terminal of the grammar in the current language."""
    for one in understood(tongue().language):
        if terminal in one.keywords:
            return one.keywords[terminal].split()[0].replace("_", " ")
    return terminal.lower()


def stands_for(word: str, terminal: str, language: str) -> bool:
    """Whether a word or phrase may stand for a terminal of the grammar."""
    return terminal in keyword_table(language).get(word.strip().casefold(), ())


@cache
def number_phrases(language: str) -> tuple[dict[tuple[str, ...], Fraction], int]:
    """Return the numbers of several words, 'half a', and the word count of the longest."""
    phrases = {
        tuple(words.split()): number for words, number in number_words(language).items() if " " in words
    }
    return phrases, max(map(len, phrases))


@cache
def own_units(language: str) -> UnitWords:
    """Return the unit words that a language adds to the English ones."""
    return unit_table(understood(language)[0].units)
