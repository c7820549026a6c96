"""Read a free line: rank the wishes that it may mean, and fill their lines with the pieces it names."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from itertools import islice, pairwise

from bot.chat.dialogue.command import Command
from bot.chat.dialogue.inputs.day import read_day
from bot.chat.dialogue.inputs.names import bar_words, is_known
from bot.chat.dialogue.registry import words_of
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.grammar.lexer import Noun
from bot.chat.grammar.parser import Phrase
from bot.chat.grammar.recipe_text import with_own_bottle
from bot.chat.grammar.syntax import Filled, names_unknown
from bot.chat.i18n.keywords import keyword_for, stands_for
from bot.chat.i18n.language import tongue
from bot.chat.intent.reading.frames import fill, wishes, wishes_of
from bot.chat.intent.reading.pieces import Typed, month_named, pieces_of
from bot.chat.intent.reading.ranker import Ranked, ranker_for
from bot.chat.intent.reading.shown import meant_by_it
from bot.chat.intent.reading.tokens import tokens_of
from bot.work.batches import batches
from bot.work.errors import NotThereError
from bot.work.people import other_bars, wordings

LONGEST = 600  # characters: what follows does not decide what a line means
NO_WISH, TWO_WISHES = "none", "two"
_MOST = 3
_DIGITS = re.compile(r"\d+")
_COLON = re.compile(r":(?!\d\d\b)")  # not that of a time
_WORD = re.compile(r"\S+\s+")
_OWN = re.compile(r"[^\W\d]['’\w]*[,:]?\s+")
_LONGEST_END = 160  # characters: a longer text would be read too often
_MOST_OWN_WORDS = 5  # before what a command reads
_MAY_BE_NEW = frozenset({"fruit", "item", "counted_drink"})  # the command asks what an unknown name means
_AGREED = 0.5  # a phrase without its command's word is sure from this probability on
_POSSIBLE = 0.05  # a phrase without its command's word is offered from this probability on


@dataclass(frozen=True, slots=True)
class Reading:
    """A wish that a line may mean, with its probability, and the line to type for it.

    `command` is None for a wish that no command serves yet.
    """

    wish: str
    probability: float
    command: Command | None = None
    rest: str = ""
    shows: bool = False
    complete: bool = True  # no number of the line is left out
    reads_text: bool = False  # its line comes from the typed pieces of the text

    @property
    def runs(self) -> bool:
        """Whether the line only shows something."""
        return self.command is not None and (self.shows or not self.command.writes)

    @property
    def line(self) -> str:
        """The line that a button sends."""
        return "" if self.command is None else f"{self.command.name} {self.rest}".rstrip()

    @property
    def label(self) -> str:
        """The line as the person would type it."""
        if self.command is None:
            return ""
        return f"{words_of(self.command, tongue().language)[0]} {self.rest}".rstrip()


@dataclass(frozen=True, slots=True)
class Readings:
    """The wishes of a line, the likeliest first, and the probability of every wish by name.

    `sure` means that the first is likely enough to be done, if it only shows something. `shape` is the line
    with kinds in place of nouns and numbers.
    """

    likeliest: tuple[Reading, ...]
    odds: Mapping[str, float] = field(default_factory=dict)
    sure: bool = False
    confirmed: bool = False  # this bar has confirmed the wording
    parts: bool = False  # the line says several things, and each is here
    left_out: tuple[str, ...] = ()  # the parts of it that were not read
    shape: str = ""

    @property
    def first(self) -> Reading | None:
        """The likeliest reading."""
        return self.likeliest[0] if self.likeliest else None

    @property
    def is_to_confirm(self) -> bool:
        """Whether the line surely means one thing, which writes."""
        first = self.first
        clear = self.sure and not self.confirmed
        return clear and first is not None and first.command is not None and not first.runs

    @property
    def no_wish(self) -> float:
        """The probability that the line is talk."""
        return self.odds.get(NO_WISH, 0.0)

    def preferring(self, whole: list[tuple[Command, str]]) -> Readings:
        """Return the readings behind those whose phrase the whole line is."""
        own = [Reading(command.name, self.of(command), command, rest) for command, rest in whole]
        own = [one for one in own if one.wish == "scale" or one.probability >= _POSSIBLE]
        if not own or self.confirmed:
            return self
        own.sort(key=lambda one: -one.probability)
        others = [one for one in self.likeliest if all(one.command is not mine.command for mine in own)]
        others = [one for one in others if not one.rest.isdecimal()]  # it leaves out the other words
        first = self.first
        agrees = first is not None and first.command is own[0].command
        sure = agrees and (self.sure or own[0].probability >= _AGREED)
        return replace(self, likeliest=(*own, *others)[:_MOST], sure=sure)

    def of(self, command: Command) -> float:
        """Return the probability that a command is meant."""
        return sum(self.odds.get(name, 0.0) for name in wishes_of(command))


def read_free(turn: Turn, text: str) -> Readings:
    """Rank the wishes of a line and fill their lines."""
    text = text[:LONGEST]
    ranker = ranker_for(tongue().language)
    tokens = tokens_of(text, turn.vocabulary)
    shape = " ".join(tokens)
    ranked = ranker.rank(tokens)
    odds = {one.name: one.probability for one in ranked}
    wished = [one for one in ranked if one.name not in {NO_WISH, TWO_WISHES}]
    pieces = _pieces(turn, text)
    known = wordings.wish_of(turn.context, tongue().language, shape)
    confirmed = None if known is None else _reading(turn, Ranked(known, 1.0), text, pieces)
    if confirmed is not None and confirmed.command is not None and confirmed.complete:
        return Readings((confirmed,), {confirmed.wish: 1.0}, sure=True, confirmed=True, shape=shape)
    found: list[Reading] = []
    for one in wished:
        reading = _reading(turn, one, text, pieces)
        if reading is not None and all(reading.line != other.line or not reading.line for other in found):
            found.append(reading)
        if len(found) == _MOST:
            break
    sure = bool(found) and ranked[0].name == found[0].wish and found[0].probability >= ranker.sure
    return Readings(tuple(found), odds, sure, shape=shape)


def _reading(turn: Turn, ranked: Ranked, text: str, pieces: list[Typed]) -> Reading | None:
    known = wishes().get(ranked.name)
    if known is None:
        return Reading(ranked.name, ranked.probability)
    filled = [(command, wish, one) for command, wish in known for one in fill(wish, pieces)]
    for command, wish, one in sorted(filled, key=lambda those: -those[2].used):
        if _is_read(turn, command, one.words, text):
            spare = [] if command.writes else [piece for piece in pieces if piece.counts]
            complete = _has_numbers(one.words, text, pieces, spare)
            complete = complete and not (command.writes and _leaves_out_a_day(one.words, pieces))
            rest = one.words if complete else _end_read(turn, command, text) or one.words
            complete = complete or rest != one.words
            return Reading(
                ranked.name, ranked.probability, command, rest, wish.shows, complete, reads_text=True
            )
    return None


def _end_read(turn: Turn, command: Command, text: str) -> str:
    """Return what a command reads after a few words of the speaker's own: 'we got' 2 cases oranges.

    What a command that writes reads after a colon is offered, whatever the words: 'new on the list: paloma'.
    """
    if len(text) > _LONGEST_END or command.name == "new":
        return ""  # any words are the name of a new formula
    after = "".join(_COLON.split(text, maxsplit=1)[1:]).strip(" .!?")
    written = command.phrase(turn, after) if after and command.writes else None
    if written is not None and _has_batch(turn, written, text):
        return after
    for found in islice(_WORD.finditer(text), _MOST_OWN_WORDS):
        if pieces_of(found.group(), turn.vocabulary) or not _OWN.fullmatch(found.group()):
            return ""
        rest = text[found.end() :].rstrip(" .!?")
        phrase = command.phrase(turn, rest)
        if phrase is not None and all(map(_is_named, phrase.filled)) and _has_batch(turn, phrase, text):
            return rest
    return ""


def _is_named(said: Filled) -> bool:
    """Whether a filled slot holds what the bar knows, and no words that could be anything."""
    return is_known(said) and not (isinstance(said.value, str) and " " in said.value)


def _has_numbers(words: str, text: str, pieces: list[Typed], spare: list[Typed]) -> bool:
    """Whether a line has all the numbers of the text but the spare ones, in figures or in words."""
    left = _DIGITS.findall(words) + [one for piece in spare for one in _DIGITS.findall(piece.number)]
    for number in (_DIGITS.findall(text), [one for piece in pieces for one in _DIGITS.findall(piece.number)]):
        if Counter(number) - Counter(left):
            return False
    return all(one.kind != "unclear" for one in pieces)


def _leaves_out_a_day(words: str, pieces: list[Typed]) -> bool:
    """Whether a text names several days, and a line not all of them."""
    days = {one.text for one in pieces if one.kind == "day"}
    return len(days) > 1 and not all(day in words for day in days)


def _is_read(turn: Turn, command: Command, words: str, text: str) -> bool:
    phrase = command.phrase(turn, words)
    if phrase is None:
        return False
    unknown = [one.value for one in phrase.filled if one.slot not in _MAY_BE_NEW]
    return not any(map(names_unknown, unknown)) and _has_batch(turn, phrase, text)


def _has_batch(turn: Turn, phrase: Phrase, text: str) -> bool:
    """Whether the batch that a phrase names exists, or is called one: 24 alone may be any number."""
    named = phrase.slots.get("batch")
    if named is not None and isinstance(named.value, Noun):
        return bool(batches.open_of(turn.context, int(named.value.id)))
    try:
        return named is None or bool(batches.row_of(turn.context, int(str(named.value))))
    except NotThereError:
        called = re.search(rf"(\w+)\s*#?{named.value}\b", text) if named is not None else None
        return called is not None and stands_for(called[1], "BATCH", tongue().language)


def shape_of(turn: Turn, text: str) -> str:
    """Return a line with kinds in place of its nouns and numbers."""
    return " ".join(tokens_of(text[:LONGEST], turn.vocabulary))


def reading_of(turn: Turn, wish: str, text: str) -> Reading | None:
    """Return the line of one wish, filled with the pieces of a text."""
    return _reading(turn, Ranked(wish, 1.0), text, _pieces(turn, text[:LONGEST]))


def _pieces(turn: Turn, text: str) -> list[Typed]:
    found = pieces_of(with_own_bottle(text), turn.vocabulary)
    line = Typed("line", text, len(text))
    return [
        *found,
        *meant_by_it(turn, text, found),
        *_spans(turn, found, text),
        *_other_bar(turn, text),
        line,
    ]


def _other_bar(turn: Turn, text: str) -> Iterator[Typed]:
    """Yield the other bar of the person that a text names: a word of it after 'to', or its whole name."""
    if turn.presence.bar is None:
        return
    language, words = tongue().language, bar_words(text)
    after_to = {word for to, word in pairwise(words) if stands_for(to, "TO", language)}
    named = [
        one.name
        for one in other_bars.listed(turn.context)
        if after_to.intersection(own := bar_words(one.name)) or set(words).issuperset(own)
    ]
    if len(named) == 1:
        yield Typed("bar", f"{keyword_for('TO')} {named[0]}", len(text))


def _spans(turn: Turn, found: list[Typed], text: str) -> Iterator[Typed]:
    """Yield the days and months of a line in the form of a report."""
    if turn.presence.bar is None:
        return
    try:
        days = sorted(read_day(turn, one.day) for one in found if one.day is not None)
    except Say:
        return
    today = turn.context.today
    if days:
        yield Typed("span", f"{days[0].isoformat()} {days[-1].isoformat()}", 0)
        yield Typed("since", f"{days[0].isoformat()} {max(today, days[0]).isoformat()}", 0)
    elif (month := month_named(text, today)) is not None:
        yield Typed("month", month, 0)
    elif not any(one.kind.endswith(("week", "month", "number")) for one in found):
        words = re.findall(r"\w+", text)
        if any(stands_for(word, "MONTHS", tongue().language) for word in words):
            yield Typed("this_month", "", 0)  # 'waste for the month'
