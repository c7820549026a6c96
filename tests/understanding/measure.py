"""Say held-out lines to the demo bar the way a message goes, and count what comes of each."""

from __future__ import annotations

import time
from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from statistics import median

from sqlalchemy import func, select

from bot.chat.conversation import execution
from bot.chat.conversation.execution import Execution
from bot.chat.dialogue.error_messages import REFUSALS
from bot.chat.dialogue.on_copy import Preparation
from bot.chat.dialogue.registry import command_at_start
from bot.chat.dialogue.turn import Turn
from bot.chat.intent.intent import Intent, Read, Said, Several
from bot.chat.intent.reading.frames import wishes
from bot.chat.intent.reading.reader import NO_WISH, TWO_WISHES, read_free
from bot.chat.intent.recognition import intent_of
from bot.chat.reply.message import Message, Place
from storage.tables import Entry
from tests.house import CHANNEL, Person
from tests.understanding.bars import bar_speaking, turn_of
from tests.understanding.phrasebooks import Phrase, held_out


@dataclass(frozen=True, slots=True)
class Outcome:
    """What came of a line: the wishes shown, the first of them run or offered first.

    `ran` is set if the first was done without a tap, `wrote` if that logged something.
    """

    shown: tuple[frozenset[str], ...]
    ran: bool = False
    wrote: bool = False
    taken: bool = False  # by the grammar
    seconds: float = 0.0
    said: str = ""
    reading: float = 0.0  # seconds of processor time that the reader takes


@dataclass
class Result:
    """The counts of one language."""

    language: str
    lines: list[tuple[Phrase, Outcome]] = field(default_factory=list)

    def of_wishes(self) -> list[tuple[Phrase, Outcome]]:
        """Return the lines with one wish in them."""
        return [one for one in self.lines if one[0].wish not in {NO_WISH, TWO_WISHES}]

    def of(self, wish: str) -> list[tuple[Phrase, Outcome]]:
        """Return the lines with this wish."""
        return [one for one in self.lines if one[0].wish == wish]


class _RolledBackError(Exception):
    """Ends a transaction without keeping anything."""


def measure(language: str, phrases: Sequence[Phrase] | None = None) -> Result:
    """Return what came of the held-out lines of a language."""
    result = Result(language)
    with bar_speaking(language) as robin:
        for number, phrase in enumerate(held_out(language) if phrases is None else phrases):
            result.lines.append((phrase, outcome_of(robin, phrase.text, number)))
    return result


def outcome_of(robin: Person, text: str, number: int = 0) -> Outcome:
    """Return what comes of one line; nothing of it stays."""
    house = robin.house
    place = Place(f"{CHANNEL} robin", private=True)
    message = Message(CHANNEL, robin.sender, place, text, key=f"measured {number}", sent_at=house.clock.now())
    found: list[Outcome] = []
    try:
        with house.store.writing() as unit, turn_of(unit, robin, message) as turn:
            found.append(_outcome(turn))
            raise _RolledBackError
    except _RolledBackError:
        return found[0]


def _outcome(turn: Turn) -> Outcome:
    start = time.perf_counter()
    intent = intent_of(turn)
    before = _entries(turn)
    try:
        done = execution.execute_writing(turn, intent)
    except Preparation:  # long work that would run on a copy of the bar: the command was run
        done = Execution([])
    seconds = time.perf_counter() - start
    wrote = _entries(turn) > before
    said = done.replies[0].first_line if done.replies else ""
    taken = not isinstance(intent, Read)
    if isinstance(intent, Read):
        readings = intent.readings
        runs = (
            readings.sure
            and readings.first is not None
            and (readings.first.runs or readings.first.command is None)
        )
        likeliest = readings.likeliest[:1] if readings.sure else readings.likeliest
        shown = tuple(frozenset({one.wish}) for one in likeliest)
        return Outcome(shown, runs, wrote, taken, seconds, said, _reading_time(turn))
    names = tuple(_wishes_of(intent))
    refused = isinstance(intent, Said) and not _was_run(turn, intent)
    if refused or not names:
        lines = [button.line for one in done.replies or () for row in one.buttons for button in row]
        offered = [found[0].name for line in lines[:3] if (found := command_at_start(line)) is not None]
        return Outcome(tuple(map(_served, offered)), False, wrote, taken, seconds, said)
    return Outcome(names, True, wrote, taken, seconds, said)


def _reading_time(turn: Turn) -> float:
    start = time.process_time()
    read_free(turn, turn.message.text)
    return time.process_time() - start


def _was_run(turn: Turn, intent: Said) -> bool:
    """Whether the grammar takes the words of a command."""
    try:
        execution.read(turn, intent)
    except REFUSALS:
        return False
    return True


def _wishes_of(intent: Intent) -> Iterator[frozenset[str]]:
    if isinstance(intent, Said):
        yield _served(intent.command.name)
    elif isinstance(intent, Several):
        yield from (_served(one.command.name) for one in intent.commands)


def _served(command: str) -> frozenset[str]:
    """Return the wishes that a command serves."""
    return frozenset(
        wish for wish, those in wishes().items() if any(one.name == command for one, _wish in those)
    )


def _entries(turn: Turn) -> int:
    return turn.unit.session.scalar(select(func.count()).select_from(Entry)) or 0


# -- figures --------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class Figures:
    """Shares of lines: right at first, right in three, wrongly run, wrongly written."""

    lines: int
    first: float
    three: float
    wrong_read: float
    wrong_write: float


def figures(lines: Sequence[tuple[Phrase, Outcome]]) -> Figures:
    """Return the figures of lines with one wish each."""
    count = max(1, len(lines))

    def share(right: Sequence[bool]) -> float:
        return sum(right) / count

    return Figures(
        len(lines),
        share([is_first(*one) for one in lines]),
        share([any(phrase.wish in shown for shown in outcome.shown[:3]) for phrase, outcome in lines]),
        share(
            [outcome.ran and not outcome.wrote and not is_first(phrase, outcome) for phrase, outcome in lines]
        ),
        share([outcome.wrote and not is_first(phrase, outcome) for phrase, outcome in lines]),
    )


def is_first(phrase: Phrase, outcome: Outcome) -> bool:
    """Whether the wish of a line was run, or offered before others."""
    return bool(outcome.shown) and phrase.wish in outcome.shown[0]


def both_offered(phrase: Phrase, outcome: Outcome) -> bool:
    """Whether both wishes of a line were shown; its family begins with their names."""
    wanted = phrase.family.partition("-")[2].split("-")[0].split("+")
    return all(any(wish in shown for shown in outcome.shown) for wish in wanted)


def by_wish(result: Result) -> dict[str, Figures]:
    """Return the figures of each wish."""
    groups: dict[str, list[tuple[Phrase, Outcome]]] = defaultdict(list)
    for one in result.of_wishes():
        groups[one[0].wish].append(one)
    return {wish: figures(lines) for wish, lines in sorted(groups.items())}


def confusions(result: Result) -> Counter[tuple[str, str]]:
    """Count the lines whose first reading was another wish."""
    return Counter(
        (phrase.wish, min(outcome.shown[0]) if outcome.shown else "nothing")
        for phrase, outcome in result.lines
        if phrase.wish not in {NO_WISH, TWO_WISHES} and not is_first(phrase, outcome)
    )


def milliseconds(result: Result, taken: bool) -> float:
    """Return the median time of the lines that the grammar takes, or of the others."""
    return 1000 * median([one.seconds for _phrase, one in result.lines if one.taken is taken] or [0.0])


def reader_milliseconds(result: Result) -> float:
    """Return the median processor time of the reader."""
    return 1000 * median([one.reading for _phrase, one in result.lines if not one.taken] or [0.0])
