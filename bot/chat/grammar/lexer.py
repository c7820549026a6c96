"""Split a message into pieces, each with its possible readings.

A piece of text can be several things: 'oz' a unit or a word, 'lime' a fruit or part of a name. All readings
are kept, the longest and most specific first; the grammar's state picks the one that fits (see parser.py).
"""

from __future__ import annotations

import re
import threading
import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass, field
from fractions import Fraction
from functools import lru_cache
from typing import TYPE_CHECKING

from bot.chat.grammar.day_phrases import are_leads, day_phrase, numeric_day
from bot.chat.i18n.keywords import (
    LONGEST_PHRASE,
    keyword_phrases,
    keyword_table,
    number_phrases,
    own_units,
    stands_for,
)
from bot.chat.i18n.language import read_number, tongue
from bot.chat.i18n.languages import understood
from bot.chat.i18n.numbers import AmbiguousNumberError, NotANumberError, number_words
from bot.trade.formulas.ingredient_names.reading import meanings
from bot.trade.formulas.unit_words import look_up

if TYPE_CHECKING:
    import snowballstemmer

_FRACTIONS = "¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"
_PATTERN = re.compile(
    rf"""
    (?P<NEWLINE>\s*\n\s*)
  | (?P<WEEK>\d{{4}}-[Ww]\d{{1,2}}\b)
  | (?P<DATE>\d{{4}}-\d{{2}}-\d{{2}}\b)
  | (?P<YEARMONTH>\d{{4}}-\d{{2}}\b(?!-))
  | (?P<TIME>\d{{1,2}}:\d{{2}}\b)
  | (?P<HASH>\#\d{{1,9}}(?:\.\d{{1,6}})?)
  | (?P<NUMBER>\d+(?:[.,]\d+)*[eE][+-]?\d+\b
      | \d+[ \u00a0]+\d+[ ]?[/⁄][ ]?\d+ | \d+[ ]?[/⁄][ ]?\d+ | \d+[ ]?[{_FRACTIONS}] | [{_FRACTIONS}]
      | \d+(?:[.,'’\u00a0\u202f\u2009]\d+)*
      | (?<![^\W\d_])\.\d+ | (?<![^\W\d_])(?<![^\W\d_][ ]),\d+)
  | (?P<PERCENT>%)
  | (?P<DEGREES>[°º])
  | (?P<TIMES>[×*] | [xX](?=[ ]*[\d{_FRACTIONS}]) | (?<=\d)[xX]\b | (?<=\d[ ])[xX]\b)
  | (?P<DASH>[-–—])
  | (?P<SIGN>[€£$¥])
  | (?P<COMMA>,) | (?P<SEMICOLON>;) | (?P<COLON>:) | (?P<EQUALS>=) | (?P<PLUS>\+)
  | (?P<WORD>[cC]/[uU]\b | [^\W\d_](?:[\w'’&.-]*\w)?)
  | (?P<SPACE>[^\S\n]+)
  | (?P<OTHER>.)
    """,
    re.VERBOSE,
)
LONGEST_MESSAGE = 4096
# More than the longest formula or night of waste needs. The limit keeps a message from blocking the bot.
MOST_PIECES = 500
_PARTS = frozenset({"2", "3", "4", "8", "16"})  # that amounts are written in
_DAY_PIECES = 8  # 'el jueves de la semana que viene'
_FIGURE_PIECES = 5  # '5-12-2026'
_UNIT_PIECES = 4  # 'cucharas de bar', 'imperial fluid ounces': the longest names of units


@dataclass(frozen=True, slots=True)
class Noun:
    """A thing with a name in the bar. `id` is its number or key; only a formula has a `version`."""

    kind: str  # the grammar's terminal: FORMULA, INGREDIENT, REASON, PERSON
    id: str
    name: str
    version: int | None = None


@dataclass(frozen=True, slots=True)
class Option:
    """One reading at a position: a terminal, its value, and the number of pieces it takes."""

    terminal: str
    value: object
    length: int


@dataclass(frozen=True, slots=True)
class Piece:
    """An indivisible stretch of the message."""

    terminal: str
    text: str
    start: int
    end: int


_BORROWED, _SHORT_STEM = "is", 4  # 'negronis', which a Spanish stemmer leaves as it is


@lru_cache(maxsize=8192)
def stem(word: str, language: str) -> str:
    """Return the part of a word shared by its plural and cases, without accents."""
    plain = word.casefold().replace("’", "'")
    stemmer = _stemmer(language)
    root = understood(language)[0].singular(plain) if stemmer is None else stemmer.stemWord(plain)
    if root.endswith(_BORROWED) and len(root) > _SHORT_STEM:
        root = root[:-1]
    return "".join(c for c in unicodedata.normalize("NFKD", root) if not unicodedata.combining(c))


class _Stemmers(threading.local):
    """Stemmers for each thread: a stemmer stores its current word, so threads cannot share one."""

    def __init__(self) -> None:
        self.known: dict[str, snowballstemmer.stemmer] = {}


_stemmers = _Stemmers()


def _stemmer(language: str) -> snowballstemmer.stemmer | None:
    name = understood(language)[0].stemmer
    if name and name not in _stemmers.known:
        import snowballstemmer  # noqa: PLC0415 - loads the stemmers of all languages

        _stemmers.known[name] = snowballstemmer.stemmer(name)
    return _stemmers.known.get(name)


@lru_cache(maxsize=4096)
def stems_of(phrase: str, language: str) -> tuple[str, ...]:
    """Return the stems of a phrase's pieces. Most phrases are the same in every bar."""
    return tuple(stem(piece.text, language) for piece in cut(phrase))


def _thing(name: str) -> tuple[str, ...]:
    """Return the English stems of the only thing that a name can mean; () where it can mean several."""
    known = meanings(name)
    return stems_of(next(iter(known)), "en") if len(known) == 1 else ()


@dataclass(slots=True)
class Vocabulary:
    """The names of a bar, found by their words in any number and case."""

    language: str
    phrases: dict[str, list[tuple[tuple[str, ...], Noun]]] = field(default_factory=dict)
    nouns: list[Noun] = field(default_factory=list)
    _things: dict[tuple[str, ...], Noun | None] = field(default_factory=dict)  # by English stems

    def add(self, noun: Noun, *also: str) -> None:
        """Add `noun` under its name and its other words."""
        self.nouns.append(noun)
        if noun.kind == "INGREDIENT":
            thing = _thing(noun.name)
            # Two rows for one thing: neither is what a third name means until they are merged.
            self._things[thing] = None if thing in self._things else noun
        for phrase in (noun.name, *also):
            stems = stems_of(phrase, self.language)
            if not stems:
                continue
            known = self.phrases.setdefault(stems[0], [])
            known.append((stems, noun))
            known.sort(key=lambda entry: -len(entry[0]))

    def named(self, text: str, kind: str) -> Noun | None:
        """Return the noun of this kind with the whole name `text`, or None.

        An ingredient is found by its name in any language, unless that may mean something else.
        """
        stems = stems_of(text, self.language)
        for phrase, noun in self.phrases.get(stems[0], []) if stems else []:
            if phrase == stems and noun.kind == kind:
                return noun
        thing = _thing(text) if kind == "INGREDIENT" else ()
        return self._things.get(thing) if thing else None

    def of_kind(self, kind: str) -> Iterable[Noun]:
        """Return all nouns of a kind, in insertion order."""
        return (noun for noun in self.nouns if noun.kind == kind)


def cut(text: str) -> list[Piece]:
    """Split a message into pieces without spaces, up to the longest readable length."""
    pieces: list[Piece] = []
    for found in _PATTERN.finditer(text[:LONGEST_MESSAGE]):
        kind = found.lastgroup or "OTHER"
        if len(pieces) > MOST_PIECES:
            break
        if kind != "SPACE":
            pieces.append(Piece(kind, found.group(), found.start(), found.end()))
    return pieces


class Reader:
    """The options at each position of one message."""

    def __init__(self, text: str, vocabulary: Vocabulary) -> None:
        self.text = text
        self.pieces = cut(text)
        self._vocabulary = vocabulary
        # Commas and other marks count: 'Orange mist, strong' is one name.
        self._stems = [stem(piece.text, vocabulary.language) for piece in self.pieces]
        self._size = len(vocabulary.nouns)
        self._tongue = tongue()
        self._known: dict[int, list[Option]] = {}

    def is_of(self, text: str, vocabulary: Vocabulary) -> bool:
        """Whether this reads the text with these names, in the current language and locale."""
        return (
            self.text == text
            and self._vocabulary is vocabulary
            and self._size == len(vocabulary.nouns)
            and self._tongue == tongue()
        )

    def options(self, at: int) -> list[Option]:
        """Return the readings at position `at`, the longest names first."""
        if at not in self._known:
            self._known[at] = self._options(at)
        return self._known[at]

    def _options(self, at: int) -> list[Option]:
        piece = self.pieces[at]
        if piece.terminal == "NUMBER":
            return [*self._names(at), *self._with_half(at), *self._days(at), *self._figures(at)]
        if piece.terminal == "HASH":
            return [Option("HASH", piece.text[1:], 1)]
        if piece.terminal != "WORD":
            return [Option(piece.terminal, piece.text, 1)]
        numbers = [*self._with_half(at), *self._number_phrases(at)]
        return [
            *self._names(at),
            *numbers,
            *self._days(at),
            *self._keywords(at),
            *self._units(at),
            *_plain_word(piece.text),
        ]

    def _number_phrases(self, at: int) -> list[Option]:
        """Return the readings of 'half a' in half a dozen, and of 'a couple of'."""
        phrases, longest = number_phrases(tongue().language)
        words = tuple(piece.text.casefold() for piece in self.pieces[at : at + longest])
        lengths = range(len(words), 1, -1)
        known = ((phrases.get(words[:length]), length) for length in lengths)
        return [Option("NUMBER", number, length) for number, length in known if number is not None]

    def _words(self, start: int, end: int) -> list[str]:
        return [piece.text.casefold() for piece in self.pieces[max(start, 0) : end]]

    def _with_half(self, at: int) -> list[Option]:
        """Return the reading of 'three and a half'; half an hour after 'a las ocho' belongs to the time."""
        before = self._words(at - 2, at)
        if any(stands_for(word, "AT", tongue().language) for word in before):
            return []
        for half in (one for spoken in understood(tongue().language) for one in spoken.halves):
            words = half.split()
            if self._words(at + 1, at + 1 + len(words)) == words:
                number = _number(f"{self.pieces[at].text} {half}")
                return [Option("NUMBER", number, 1 + len(words))] if isinstance(number, Fraction) else []
        return []

    def _days(self, at: int) -> list[Option]:
        words = [piece.text for piece in self.pieces[at : at + _DAY_PIECES]]
        found = day_phrase(words, tongue().language)
        return self._led_figures(at, words) if found is None else [Option("DAY", *found)]

    def _led_figures(self, at: int, words: list[str]) -> list[Option]:
        """Return the day in figures after 'on' or 'on the'."""
        lead = next((n for n, piece in enumerate(self.pieces[at : at + 3]) if piece.terminal == "NUMBER"), 0)
        if not lead or not are_leads(words[:lead], tongue().language):
            return []
        day = self.options(at + lead)[0]
        return [Option("DAY", day.value, lead + day.length)] if day.terminal == "DAY" else []

    def _figures(self, at: int) -> list[Option]:
        """Return the readings of figures: '12/5' is a day first; '1/2', and '12.5.' at the end, an amount."""
        number = Option("NUMBER", _number(self.pieces[at].text), 1)
        found = numeric_day(self.text, self.pieces[at].start)
        if found is None:
            return [number]
        length = sum(one.start < found[1] for one in self.pieces[at : at + _FIGURE_PIECES])
        if self._is_unit(at + length):
            return [number]
        day = Option("DAY", found[0], length)
        ends_in_point = length == 2 and at + length == len(self.pieces)
        is_amount = ends_in_point or self.pieces[at].text.rpartition("/")[2] in _PARTS
        return [number, day] if is_amount else [day, number]

    def _is_unit(self, at: int) -> bool:
        piece = self.pieces[at] if at < len(self.pieces) else None
        return piece is not None and (piece.terminal in {"TIMES", "PERCENT"} or bool(self._units(at)))

    def _names(self, at: int) -> list[Option]:
        found = []
        for stems, noun in self._vocabulary.phrases.get(self._stems[at], ()):
            if tuple(self._stems[at : at + len(stems)]) == stems and not self._is_cut(at, noun, len(stems)):
                found.append(Option(noun.kind, noun, len(stems)))
        return found

    def _is_cut(self, at: int, noun: Noun, length: int) -> bool:
        """Whether a word is of cut pieces, which are no reason although 'peels' is like 'peeled'."""
        word = self.pieces[at].text
        return noun.kind == "REASON" and length == 1 and stands_for(word, "GARNISHES", tongue().language)

    def _keywords(self, at: int) -> list[Option]:
        language = tongue().language
        table = keyword_table(language)
        word = self.pieces[at].text.casefold()
        longest = LONGEST_PHRASE if word in keyword_phrases(language) else 1
        words = [piece.text.casefold() for piece in self.pieces[at : at + longest]]
        found = []
        for length in range(len(words), 0, -1):
            for terminal in table.get(" ".join(words[:length]), ()):
                said = self.text[self.pieces[at].start : self.pieces[at + length - 1].end]
                found.append(Option(terminal, said, length))
        return found

    def _units(self, at: int) -> list[Option]:
        words: list[str] = []
        for piece in self.pieces[at : at + _UNIT_PIECES]:
            if piece.terminal != "WORD":
                break
            words.append(piece.text)
        found = []
        for length in range(len(words), 0, -1):
            unit = look_up(" ".join(words[:length]), own_units(tongue().language))
            if unit is not None:
                found.append(Option("UNIT", unit, length))
        return found


def _number(text: str) -> object:
    try:
        return read_number(text)
    except (AmbiguousNumberError, NotANumberError) as error:
        return error


def _is_currency(word: str) -> bool:
    return any(word in one.currencies for one in understood(tongue().language))


def _plain_word(word: str) -> list[Option]:
    found = []
    number = number_words(tongue().language).get(word.casefold())
    if number is not None:
        found.append(Option("NUMBER", number, 1))
    if (len(word) == 3 and word.isupper()) or _is_currency(word.casefold()):
        found.append(Option("CODE", word, 1))
    found.append(Option("WORD", word, 1))
    return found
