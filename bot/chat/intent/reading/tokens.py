"""Turn a line into tokens for the ranker: what the bar has names for becomes its kind."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator

from bot.chat.grammar.lexer import Noun, Option, Reader, Vocabulary
from bot.trade.formulas.kinds import IngredientKind, guess_kind

# Readings whose kind replaces the text, whatever the words.
_KINDS = {
    "NUMBER": "<number>",
    "UNIT": "<unit>",
    "FORMULA": "<formula>",
    "PERSON": "<person>",
    "DATE": "<day>",
    "WEEK": "<week>",
    "YEARMONTH": "<month>",
    "TIME": "<time>",
    "HASH": "<number>",
    "SIGN": "<money>",
}
_FRUIT_SIGNS = {"🍊": "orange", "🍋": "lemon", "🍈": "lime", "🥭": "mango", "🍍": "pineapple"}
_IN_A_ROW = re.compile(rf"([{''.join(_FRUIT_SIGNS)}])\1*")
_EIGHTY_SIXED = re.compile(r"\b86['’]?e?d\b")
_REPEATED = re.compile(r"(\w)\1{2,}")


def tokens_of(text: str, vocabulary: Vocabulary) -> list[str]:
    """Return the words of a line without case and accents, names and numbers replaced by their kinds."""
    return list(_tokens(Reader(plain_text(text), vocabulary)))


def plain_text(text: str) -> str:
    """Return the text with words for pictures of fruit, on one line."""
    text = _IN_A_ROW.sub(lambda row: f" {len(row[0])} {_FRUIT_SIGNS[row[1]]} ", text)
    return _EIGHTY_SIXED.sub("binned", text).replace("\n", " ")


def _tokens(reader: Reader) -> Iterator[str]:
    at = 0
    while at < len(reader.pieces):
        piece = reader.pieces[at]
        option = _telling(reader.options(at))
        if option is None:
            plain = fold(piece.text)
            yield "<fruit>" if piece.terminal == "WORD" and is_fruit(plain) else plain
            at += 1
            continue
        yield from _named(option, reader, at)
        at += option.length


def _telling(options: list[Option]) -> Option | None:
    """Return the reading that says what kind of thing this is, or None for a plain word."""
    nouns = [one for one in options if isinstance(one.value, Noun) and one.terminal in _NOUNS]
    if nouns:
        return max(nouns, key=lambda one: one.length)
    return next((one for one in options if one.terminal in _KINDS), None)


_NOUNS = frozenset({"FORMULA", "INGREDIENT", "REASON", "PERSON"})


def _named(option: Option, reader: Reader, at: int) -> Iterator[str]:
    if option.terminal == "INGREDIENT" and isinstance(option.value, Noun):
        yield "<fruit>" if guess_kind(option.value.name) is IngredientKind.FRUIT else "<ingredient>"
    elif option.terminal == "REASON":
        # The words of a reason tell more than that it is one.
        yield "<reason>"
        yield from (fold(piece.text) for piece in reader.pieces[at : at + option.length])
    elif option.terminal == "NUMBER" and reader.pieces[at].terminal == "NUMBER":
        yield "<number>"
    else:
        yield _KINDS[option.terminal]


def fold(word: str) -> str:
    """Return a word in small letters, without accents, and no letter more than twice in a row."""
    low = word.casefold().replace("’", "'")
    bare = "".join(c for c in unicodedata.normalize("NFKD", low) if not unicodedata.combining(c))
    return _REPEATED.sub(r"\1\1", bare)


def is_fruit(word: str) -> bool:
    """Whether a word in small letters names a fruit, whatever the bar's book holds."""
    return len(word) > 2 and guess_kind(word) is IngredientKind.FRUIT
