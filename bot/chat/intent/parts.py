"""Divide a message that says several things: each part is read by itself."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from bot.chat.dialogue.command import Command
from bot.chat.dialogue.registry import command_at_start
from bot.chat.dialogue.turn import Turn
from bot.chat.grammar.syntax import Unknown
from bot.chat.i18n.language import tongue
from bot.chat.i18n.languages import understood
from bot.chat.i18n.numbers import number_words
from bot.chat.intent.guessing import LOGGING, as_waste
from bot.chat.intent.reading.ranker import ranker_for
from bot.chat.intent.reading.reader import (
    LONGEST,
    NO_WISH,
    TWO_WISHES,
    Reading,
    Readings,
    read_free,
    reading_of,
)
from bot.chat.intent.reading.tokens import tokens_of
from bot.chat.intent.whole import knows_all

MOST_PARTS = 4
# These take lines of their own, even if the lines begin like commands.
WITH_LINES = frozenset({"new", "change", "trial", "trial add", "event", "change event"})
_WORDED = frozenset({"note", "remind"})  # a comma, or 'and', belongs to their words
_MOST_BREAKS = 12
_MAYBE_TWO = 0.3  # of two wishes, from this probability on, a likely part is enough
_LIKELY, _SURELY = 0.35, 0.5
_NUMBER = re.compile(r"\d")
_COLON = re.compile(r"^([^\W\d]+): ?")
_SENTENCE_END = " .!\n"


@dataclass(frozen=True, slots=True)
class _Part:
    """A part of a text with the break before it, and its reading if it has one."""

    text: str
    mark: str
    reading: Reading | None = None

    @property
    def command(self) -> Command | None:
        """The command of its reading."""
        return None if self.reading is None else self.reading.command


def parts_of(turn: Turn, text: str) -> Readings | None:
    """Return the readings of the parts of a text; None if it says one thing."""
    if len(text) > LONGEST or text.rstrip().endswith("?"):
        return None
    spoken = _spoken(text)
    if as_waste(turn, text) is not None or (spoken is not None and spoken[0].name in WITH_LINES):
        return None
    if spoken is not None and spoken[0].name not in _WORDED and knows_all(turn, *spoken):
        return None
    ranker = ranker_for(tongue().language)
    odds = {one.name: one.probability for one in ranker.rank(tokens_of(text, turn.vocabulary))}
    least = _LIKELY if odds.get(TWO_WISHES, 0.0) >= _MAYBE_TWO else _SURELY
    parts = _divided(turn, text, least)
    if len(parts) < 2 or all(one.reading is None for one in parts) or _is_one(turn, text, parts):
        return None
    if least == _SURELY and not all(_says_enough(turn, one) for one in parts):
        return None  # 'batch 18, neutral spirit lot 7', 'spilled it on the bar, what to do'
    shown = parts[:MOST_PARTS]
    read = tuple(one.reading for one in shown if one.reading is not None)
    left_out = [one.text for one in (*shown, *parts[MOST_PARTS:]) if one not in shown or one.reading is None]
    return Readings(read, odds, parts=True, left_out=tuple(left_out))


def _is_one(turn: Turn, text: str, parts: list[_Part]) -> bool:
    """Whether a text is surely one wish with all its numbers: no other part begins with a command."""
    if any(_spoken(one.text) is not None for one in parts[1:]):
        return False
    whole = read_free(turn, text)
    return whole.sure and whole.first is not None and whole.first.complete


def _says_enough(turn: Turn, part: _Part) -> bool:
    """Whether a part is a line by itself: it begins with a command's word, and says of what or how much."""
    if part.command is None or part.reading is None or not part.reading.rest:
        return False
    counts = _NUMBER.search(part.reading.rest) is not None
    if _spoken(part.text) is None and as_waste(turn, part.text) is None:
        return not part.mark and counts and part.reading.complete and part.command.name in LOGGING
    return counts or part.command.name in _WORDED or knows_all(turn, part.command, part.reading.rest)


def _divided(turn: Turn, text: str, least: float) -> list[_Part]:
    first, *others = _segments(text) or [_Part(text, "")]
    if not others:
        return []
    begun = _read(turn, first.text, least, None)
    parts = [replace(first, reading=begun)]
    for one in others:
        current = parts[-1]
        reading = _other(turn, current, one, text, least)
        if reading is None:
            longer = f"{current.text}{one.mark}{one.text}"
            parts[-1] = replace(current, text=longer)
        else:
            parts.append(replace(one, text=_led(one.text), reading=reading))
    if len(parts) < 2:
        return []
    before = (None, *parts)
    return [_reread(turn, one, least, before[number]) for number, one in enumerate(parts)]


def _reread(turn: Turn, part: _Part, least: float, before: _Part | None) -> _Part:
    """Read a part again with all that was added to it."""
    text = part.text.strip(_SENTENCE_END + ",;")
    return _Part(text, part.mark, _read(turn, text, least, before))


def _segments(text: str) -> list[_Part]:
    """Return what stands between the marks of a text, and words such as 'and' and 'also'."""
    words = understood(tongue().language)[0].concepts.get("also", "and").split()
    joined = "|".join(map(re.escape, [*words, "&", r"+"]))
    breaks = rf"\s*(?:\n|[,;.!](?=\s|$)|\s(?:{joined})(?=\s))\s*"
    found: list[_Part] = []
    start, mark = 0, ""
    for one in re.finditer(breaks, text):
        if len(found) == _MOST_BREAKS:
            break
        if text[start : one.start()].strip():
            found.append(_Part(text[start : one.start()], mark))
            mark = ""
        start, mark = one.end(), mark + one.group()
    return [*found, _Part(text[start:], mark)] if text[start:].strip() else found


def _other(turn: Turn, current: _Part, segment: _Part, text: str, least: float) -> Reading | None:
    """Return the reading of a segment that begins another thing than the part before it."""
    said = _led(segment.text)
    spoken = _spoken(said)
    worded = current.command is not None and current.command.name in _WORDED
    if worded and (spoken is None or not _ends_words(segment.mark, said)):
        return None
    if current.command is not None and not worded and _takes_on(turn, current, segment):
        return None
    found = _read(turn, said, least, current)
    if found is None or found.command is None or _only_names_batch(found):
        return None
    if spoken is not None:
        return found
    begins = _spoken(current.text) is not None or least < _SURELY
    return found if begins and _is_another(current, found, said) else None


def _only_names_batch(found: Reading) -> bool:
    """Whether a segment only says which batch is meant: 'opened the new syrup, batch 41'."""
    return found.command is not None and found.command.name == "batch" and found.rest.strip("# ").isdecimal()


def _ends_words(mark: str, said: str) -> bool:
    """Whether free words end before a segment: it is on a line of its own, or a sentence with a number."""
    return "\n" in mark or (bool(set(mark) & set(";.")) and _NUMBER.search(said) is not None)


def _is_another(current: _Part, found: Reading, said: str) -> bool:
    """Whether a segment without a command's word is another thing; counted fruit is of the one before."""
    if current.command is None or found.command is current.command:
        return False
    counted = said[:1].isdigit() and found.command is not None and found.command.name in LOGGING
    return found.complete and not counted


def _takes_on(turn: Turn, current: _Part, segment: _Part) -> bool:
    """Whether the command of a part takes a segment as well, with no unknown name in it."""
    spoken = _spoken(current.text)
    if spoken is None:
        return False
    phrase = spoken[0].phrase(turn, f"{spoken[1]}{segment.mark}{segment.text}")
    if phrase is None:
        return False
    unknown = [one.value.text for one in phrase.filled if isinstance(one.value, Unknown)]
    return not any(one in segment.text for one in unknown)


def _spoken(text: str) -> tuple[Command, str] | None:
    """Return the command whose word begins a text, also before a colon: 'note: buy straws'."""
    return command_at_start(_COLON.sub(r"\1 ", text.lstrip("/ ")))


def _led(text: str) -> str:
    """Return a segment without 'and', 'also' and 'then' before it."""
    words = understood(tongue().language)[0].concepts.get("also", "and").split()
    while (first := text.split(None, 1)) and len(first) == 2 and first[0].casefold() in words:
        text = first[1]
    return text


def _read(turn: Turn, text: str, least: float, before: _Part | None) -> Reading | None:
    spoken = _spoken(text)
    if spoken is not None:
        command, rest = spoken
        rest = _meant_by_one(turn, command, rest, before)
        if rest and command.phrase(turn, rest) is not None:
            return Reading(command.name, 1.0, command, rest, complete=True)
    waste = as_waste(turn, text)
    if waste is not None:
        return Reading("waste", 1.0, *waste)
    ranked = ranker_for(tongue().language).rank(tokens_of(text, turn.vocabulary))[0]
    if len(text.split()) < 2 or ranked.name in {NO_WISH, TWO_WISHES} or ranked.probability < least:
        return None
    found = reading_of(turn, ranked.name, text)
    return None if found is None else replace(found, probability=ranked.probability, reads_text=False)


def _meant_by_one(turn: Turn, command: Command, rest: str, before: _Part | None) -> str:
    """Return the batch of the part before for 'one': 'bottled 37 4 x 50 ml and opened one'."""
    if before is None or before.reading is None or before.command is None or not rest.isalpha():
        return rest
    if number_words(tongue().language).get(rest.casefold()) != 1:
        return rest
    named = before.command.phrase(turn, before.reading.rest)
    batch = None if named is None else named.slots.get("batch")
    return rest if batch is None else batch.text
