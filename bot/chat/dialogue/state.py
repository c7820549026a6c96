"""The typed state of a dialogue in progress, and its row in the database."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime
from typing import Any

from bot.chat.grammar.encoding import NotEncodedError, decode, encode
from bot.work.people import people
from bot.work.people.people import PendingQuestion, Presence
from storage.types import JsonObject
from storage.unit import Unit

PHOTO = "photo"  # the slot for a message's photo, in commands that keep one
KEPT_BY_BACK = frozenset({PHOTO, "day"})  # given once for all questions


@dataclass
class DialogueState:
    """The state of a dialogue: the words of each filled slot, and their parsed values.

    `values` lacks the slots whose words must be parsed again: those in rows of an older version, and words
    changed by an edit or Back. `order` lists the slots in the order of filling, `answered` means that a
    question was answered, `typed` holds the digits of an open pad, `finished` names the complete lists.
    `noted` means that something else was logged since the last answer, which 'undo' then means.
    """

    command: str
    asking: str = ""
    words: dict[str, str] = field(default_factory=dict)
    values: dict[str, object] = field(default_factory=dict)
    order: list[str] = field(default_factory=list)
    answered: bool = False
    typed: str | None = None
    finished: set[str] = field(default_factory=set)
    noted: bool = False

    def copy(self) -> DialogueState:
        """Return an independent copy of the state."""
        return replace(
            self,
            words=dict(self.words),
            values=dict(self.values),
            order=list(self.order),
            finished=set(self.finished),
        )

    def fill(self, slot: str, words: str, value: object) -> None:
        """Fill a slot with an answer."""
        self.words[slot], self.values[slot] = words, value
        if slot not in self.order:
            self.order.append(slot)

    def add_line(self, slot: str, words: str, value: object) -> None:
        """Add an answer to a slot that takes several messages."""
        known = self.values.get(slot, ())
        if not self.words.get(slot):
            self.fill(slot, words, value)
        elif isinstance(known, tuple) and isinstance(value, tuple):
            self.fill(slot, f"{self.words[slot]}\n{words}", known + value)
        else:
            self.reword(slot, f"{self.words[slot]}\n{words}")

    def reword(self, slot: str, words: str) -> None:
        """Replace the words of a slot; they are parsed on demand."""
        self.words[slot] = words
        self.values.pop(slot, None)

    def empty(self, slot: str) -> None:
        """Empty a slot."""
        self.words.pop(slot, None)
        self.values.pop(slot, None)
        if slot in self.order:
            self.order.remove(slot)

    def slot_answered_with(self, words: str) -> str | None:
        """Return the slot with these words, or with a line of them; the last one of several."""
        return next((slot for slot in reversed(self.order) if words in self.words[slot].split("\n")), None)


@dataclass(frozen=True, slots=True)
class Pending:
    """The row of a person in a chat: a dialogue in progress, if any, and the lines behind buttons.

    `nonce` is its number; an older number marks a stale button.
    """

    nonce: int
    dialogue: DialogueState | None = None
    lines: tuple[str, ...] = ()


def pending_of(row: PendingQuestion | None) -> Pending | None:
    """Return the contents of a row."""
    if row is None:
        return None
    state = row.state
    dialogue = _from_json(state) if "command" in state else None
    return Pending(row.nonce, dialogue, tuple(state.get("lines", ())))


def keep(
    unit: Unit, presence: Presence, now: datetime, dialogue: DialogueState | None, lines: tuple[str, ...] = ()
) -> int:
    """Store a dialogue and the lines behind its buttons; return the row's new number."""
    if presence.room_id is None or presence.person_id is None:
        raise ValueError("meet the person before asking")
    state = {} if dialogue is None else _to_json(dialogue)
    if lines:
        state["lines"] = list(lines)
    return people.keep_question(unit, presence.room_id, presence.person_id, state, now)


def drop(unit: Unit, presence: Presence) -> None:
    """Delete the row of a person in a chat."""
    if presence.room_id is not None and presence.person_id is not None:
        people.drop_question(unit, presence.room_id, presence.person_id)


def is_still_asked(unit: Unit, presence: Presence) -> bool:
    """Whether the given question is still the one in progress: no answer counts twice."""
    if presence.question is None or presence.room_id is None or presence.person_id is None:
        return False
    return people.asked_now(unit, presence.room_id, presence.person_id) == presence.question.nonce


def _to_json(state: DialogueState) -> JsonObject:
    stored: JsonObject = {
        "command": state.command,
        "asking": state.asking,
        "slots": state.words,
        "values": {slot: encode(value) for slot, value in state.values.items()},
        "order": state.order,
    }
    if state.answered:
        stored["answered"] = True
    if state.typed is not None:
        stored["typed"] = state.typed
    if state.finished:
        stored["finished"] = sorted(state.finished)
    if state.noted:
        stored["noted"] = True
    return stored


def _from_json(stored: Mapping[str, Any]) -> DialogueState:
    return DialogueState(
        stored["command"],
        stored.get("asking", ""),
        dict(stored["slots"]),
        _values(stored.get("values", {})),
        list(stored["order"]),
        stored.get("answered", False),
        stored.get("typed"),
        set(stored.get("finished", ())),
        stored.get("noted", False),
    )


def _values(stored: Mapping[str, Any]) -> dict[str, object]:
    """Return the values that this version can restore; the words of the others are parsed again."""
    values = {}
    for slot, value in stored.items():
        try:
            values[slot] = decode(value)
        except NotEncodedError:
            continue
    return values


def kept_line(text: str, pending: Pending | None) -> str:
    """Return the line that a shortened button stands for, '' if that question is over."""
    _sign, nonce, index = [*text.split(" ", 2), "", ""][:3]
    if pending is None or nonce != str(pending.nonce) or not index.isdecimal():
        return ""
    return pending.lines[int(index)] if int(index) < len(pending.lines) else ""
