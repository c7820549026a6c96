"""Parse a phrase with the grammar: a state machine picks the fitting reading of each piece."""

from __future__ import annotations

import threading
from collections import deque
from dataclasses import dataclass
from functools import cache
from threading import Lock
from typing import Any

from lark import Lark, Tree
from lark.exceptions import UnexpectedInput, VisitError

from bot.chat.grammar import tables
from bot.chat.grammar.lexer import LONGEST_MESSAGE, MOST_PIECES, Option, Piece, Reader, Vocabulary
from bot.chat.grammar.recipe_text import SharesError, tidied
from bot.chat.grammar.syntax import BareBottles, Bottles, EachOf, Filled, Line
from bot.chat.grammar.transformer import Meaning
from bot.chat.grammar.values import Spoken
from bot.chat.i18n.numbers import AmbiguousNumberError, NotANumberError
from bot.trade.formulas.measures import registry

_END = "$END"
_MOST_RECENT = 6


class PhraseError(Exception):
    """A phrase could not be parsed.

    `understood` is the part before the error, `problem` the part that did not fit (empty at the end of the
    message), `expected` the terminals that would have fitted.
    """

    def __init__(self, understood: str, problem: str, expected: frozenset[str]) -> None:
        super().__init__(problem)
        self.understood = understood
        self.problem = problem
        self.expected = expected


class TooLongError(PhraseError):
    """A phrase exceeds the length limit."""


# What `read` raises.
UNREADABLE = (PhraseError, AmbiguousNumberError, NotANumberError, SharesError)


@dataclass(frozen=True, slots=True)
class Phrase:
    """The result of parsing a phrase: slots by name, or several lines of slots."""

    slots: dict[str, Filled]
    lines: tuple[Line, ...] = ()

    @property
    def filled(self) -> list[Filled]:
        """All filled slots, also those of the lines."""
        return [*self.slots.values(), *(one for line in self.lines for one in line.filled)]


# Without the lock, two threads that both miss the cache would each load the tables.
_building = Lock()


def _lark() -> Lark:
    with _building:
        return _built()


@cache
def _built() -> Lark:
    return tables.load()


def warm_up() -> None:
    """Load the grammar's tables and the units now instead of at the first message."""
    _lark()
    registry()


def is_warm() -> bool:
    """Whether the tables are loaded; until then the first parse may take a second."""
    return _built.cache_info().currsize > 0


def can_read(rule: str) -> bool:
    """Whether the grammar has this start rule."""
    return rule in _lark().options.start


class _Recent(threading.local):
    """The last texts of each thread: one message is read by several rules, and its options stay the same."""

    def __init__(self) -> None:
        self._readers: deque[Reader] = deque(maxlen=_MOST_RECENT)

    def reader(self, text: str, vocabulary: Vocabulary) -> Reader:
        """Return the reader of a text, known or new."""
        for one in self._readers:
            if one.is_of(text, vocabulary):
                return one
        self._readers.append(Reader(text, vocabulary))
        return self._readers[-1]


_recent = _Recent()


def read(rule: str, text: str, vocabulary: Vocabulary) -> Phrase:
    """Parse `text` by the grammar's rule of this name.

    Raises PhraseError, or AmbiguousNumberError for a number such as 1,000 that is ambiguous in the locale, or
    SharesError for a recipe in percent that is not whole.
    """
    text = tidied(rule, text[: LONGEST_MESSAGE + 1], vocabulary)
    reader = _recent.reader(text, vocabulary)
    if len(reader.pieces) > MOST_PIECES or len(text) > LONGEST_MESSAGE:
        raise TooLongError("", text, frozenset())
    tree = _parse(rule, reader)
    try:
        found = Meaning(text).transform(tree)
    except VisitError as error:  # the transformer's methods raise our own errors; lark wraps them
        raise error.orig_exc from error
    return _sort(found, text)


def try_read(rule: str, text: str, vocabulary: Vocabulary) -> Phrase | None:
    """Parse `text` as `read` does; return None if that fails."""
    try:
        return read(rule, text, vocabulary)
    except UNREADABLE:
        return None


def _parse(rule: str, reader: Reader) -> Tree[Any]:
    parser = _lark().parse_interactive(start=rule)
    at = 0
    # A trailing line break has no meaning.
    end = len(reader.pieces)
    while end and reader.pieces[end - 1].terminal == "NEWLINE":
        end -= 1
    while at < end:
        parser, taken = _step(parser, reader, at, end)
        at += taken
    try:
        tree: Tree[Any] = parser.feed_eof()  # type: ignore[no-untyped-call]
    except UnexpectedInput:
        raise _failure(parser, reader, end, end) from None
    return tree


def _step(parser: Any, reader: Reader, at: int, end: int) -> tuple[Any, int]:
    """Feed the first reading that the state accepts; return the parser and the number of pieces taken."""
    wanted = parser.choices()
    options = [one for one in _all_options(reader, at) if one.terminal in wanted and at + one.length <= end]
    is_day_or_amount = {"DAY", "NUMBER"} <= {one.terminal for one in options}
    for option in options:
        token = _token(option, reader.pieces[at], reader.pieces[at + option.length - 1])
        # The table of an LALR parser may accept a token that a later reduction refuses, and a refused token
        # changes the stack. Try on a copy while another reading is left.
        trial = parser if len(options) == 1 else parser.copy(deepcopy_values=False)
        before = parser.copy(deepcopy_values=False) if len(options) == 1 else parser
        try:
            trial.feed_token(token)
        except UnexpectedInput:
            parser = before
            continue
        if (
            is_day_or_amount
            and option is not options[-1]
            and not _goes_on(trial, reader, at + option.length, end)
        ):
            continue
        return trial, option.length
    raise _failure(parser, reader, at, end)


def _goes_on(parser: Any, reader: Reader, at: int, end: int) -> bool:
    """Whether the state accepts the next piece, or the end and its full stop."""
    is_over = [piece.text for piece in reader.pieces[at : min(end, at + 2)]] in ([], ["."])
    following = {_END} if is_over else {one.terminal for one in _all_options(reader, at)}
    return not following.isdisjoint(parser.accepts())


def _all_options(reader: Reader, at: int) -> list[Option]:
    piece = reader.pieces[at]
    options = reader.options(at)
    if piece.terminal != "NEWLINE":
        options = [*options, Option("ANY", piece.text, 1)]
    return options


def _token(option: Option, first: Piece, last: Piece) -> Spoken:
    token = Spoken(option.terminal, "x", start_pos=first.start, end_pos=last.end)
    token.line = token.end_line = 1
    token.column = first.start + 1
    token.end_column = last.end + 1
    token.meaning = option.value
    if isinstance(option.value, AmbiguousNumberError | NotANumberError):
        raise option.value
    return token


def _failure(parser: Any, reader: Reader, at: int, end: int) -> PhraseError:
    start = reader.pieces[at].start if at < end else len(reader.text)
    try:
        expected = frozenset(parser.accepts())
    except Exception:
        expected = frozenset()
    return PhraseError(reader.text[:start].rstrip(), reader.text[start:].strip(), expected - {_END})


# A message has one day and one amount to make: of two, neither is taken.
_ONCE = ("day", "target")


def _sort(found: object, text: str) -> Phrase:
    slots: dict[str, Filled] = {}
    lines: list[Line] = []
    for one in found if isinstance(found, list) else [found]:
        if isinstance(one, Filled):
            slots[one.slot] = _once(slots.get(one.slot), one, text)
        elif isinstance(one, Line):
            _add_line(lines, one)
    if len(lines) == 1:
        # A single line belongs to the command itself; several lines are separate.
        slots.update({filled.slot: filled for filled in lines[0].filled})
        lines = []
    return Phrase(slots, tuple(lines))


def _once(before: Filled | None, one: Filled, text: str) -> Filled:
    """Return a slot's value: of two days or amounts only '12 bottles' and '50 ml each' go together."""
    if isinstance(one.value, EachOf) and before is not None and isinstance(before.value, BareBottles):
        # In the words that a button says again, the size follows the number.
        return Filled(one.slot, Bottles(before.value.count, one.value.size), f"{before.text} {one.text}")
    if isinstance(one.value, EachOf) or (
        one.slot in _ONCE and before is not None and one.value != before.value
    ):
        at = max(text.rfind(one.text), 0)
        raise PhraseError(text[:at].rstrip(), text[at:].strip(), frozenset())
    return one


def _add_line(lines: list[Line], line: Line) -> None:
    """Add a line; a reason alone, as in '6 oranges, mouldy', belongs to the previous line."""
    only_reason = [filled.slot for filled in line.filled] == ["reason"]
    if lines and only_reason and all(filled.slot != "reason" for filled in lines[-1].filled):
        lines[-1] = Line((*lines[-1].filled, *line.filled))
    else:
        lines.append(line)
