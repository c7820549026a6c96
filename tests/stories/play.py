"""Play a story file against a house."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

from bot.chat.conversation.inline import Suggestion
from bot.chat.reply.message import Reply
from tests.house import House, Person, lines
from tests.prepared import prepared

FOLDER = Path(__file__).parent
_INDENT = "  "
_CODE = re.compile(r"\b\d+-\d+-[A-Z2-9]{10}\b")
_CODE_SIGN = "‹code›"
_WHO = r"(?P<who>[A-Z]\w*)(?: in (?P<room>[A-Z]\w*))?"
_SAYS = re.compile(
    rf"{_WHO}(?P<how>| answers| sends a photo| edits| edits the one before| types inline): ?(?P<text>.*)",
    re.DOTALL,
)
_SENDS = re.compile(rf"{_WHO} sends (?P<file>[\w-]+\.\w+)")
_TAPS = re.compile(rf"{_WHO} taps \[(?P<label>.+)\]")
_TURN = re.compile(r"(-?\d+(?:\.\d+)?) (min|h|days?)\b")
_SPANS = {"min": "minutes", "h": "hours", "day": "days", "days": "days"}

Watch = Callable[[House, Person, str | None, Reply], list[str]]


class StoryError(Exception):
    """A line of a story file is not a step."""


@dataclass
class Step:
    """One step: its own lines, the answer written below it, and blank or remark lines before it."""

    lead: list[str]
    source: list[str]
    expected: list[str] = field(default_factory=list)

    @property
    def text(self) -> str:
        """The step without line continuations."""
        return "\n".join(line.removesuffix("\\") for line in self.source)


def read(path: Path) -> tuple[list[Step], list[str]]:
    """Return the steps of a file, and any lines after the last one."""
    steps: list[Step] = []
    lead: list[str] = []
    goes_on = False
    for line in path.read_text("utf-8").splitlines():
        if goes_on:
            steps[-1].source.append(line)
        elif line.startswith(_INDENT) and steps and not lead:
            steps[-1].expected.append(line[len(_INDENT) :])
            continue
        elif not line.strip() or line.startswith("#"):
            lead.append(line)
            continue
        else:
            steps.append(Step(lead, [line]))
            lead = []
        goes_on = line.endswith("\\")
    return steps, lead


def write(path: Path, steps: Iterable[Step], rest: list[str]) -> None:
    """Write a story to a file."""
    out: list[str] = []
    for step in steps:
        out += [*step.lead, *step.source, *(_INDENT + line for line in step.expected)]
    path.write_text("\n".join([*out, *rest]).rstrip("\n") + "\n", "utf-8")


class Player:
    """Plays steps and remembers what a story can refer to later."""

    def __init__(self, house: House, watch: Watch | None = None) -> None:
        self.house = house
        house.confirms_new = False
        self.problems: list[str] = []
        self._watch = watch
        self._code = ""
        self._files: dict[str, bytes] = {}  # received from the bot, and may be sent to it

    def play(self, step: Step) -> list[str]:
        """Run one step; return the bot's answer in the format of a story."""
        text = step.text
        if text.startswith("@"):
            return self._direction(text)
        sent = _SENDS.fullmatch(text)
        if sent is not None:
            person = self.house.person(sent["who"])
            return self._written(person.sends(sent["file"], self._files[sent["file"]], sent["room"]))
        taps = _TAPS.fullmatch(text)
        says = _SAYS.fullmatch(text)
        found = taps or says
        if found is None:
            raise StoryError(f"no step: {text}")
        person = self.house.person(found["who"])
        room = found["room"]
        if taps is not None:
            label = taps["label"]
            edited = any(shown.reply for shown in self.house.room(room, person).shown)
            replies = person.taps(label, room)
            edited = edited and bool(replies) and replies[0].edits
        else:
            replies, edited = self._say(person, found), False
        if taps is None and found["how"] == " types inline":
            return _suggested(person.types_inline(found["text"]))
        for one in replies:
            self._look(person, room, one)
        return self._written(replies, edited)

    def _say(self, person: Person, found: re.Match[str]) -> list[Reply]:
        said = found["text"].replace(_CODE_SIGN, self._code)
        how = found["how"].strip()
        if how.startswith("edits"):
            return person.edits(said, 2 if how.endswith("before") else 1, found["room"])
        if how == "types inline":
            return []
        photo = "photo-1" if how == "sends a photo" else None
        return person.says(said, found["room"], photo=photo, answering=how == "answers")

    def _written(self, replies: list[Reply], edited: bool = False) -> list[str]:
        if not replies:
            return ["(nothing)"]
        out: list[str] = ["(edited)"] if edited else []
        for number, one in enumerate(replies):
            self._files |= {file.name: file.content for file in one.files}
            if number:
                out.append("--")
            out += ["(toast)", *lines(one)] if one.toast else lines(one)
        return [self._masked(line) or "." for line in out]

    def _masked(self, line: str) -> str:
        found = _CODE.search(line)
        if found is not None:
            self._code = found.group()
        return _CODE.sub(_CODE_SIGN, line)

    # -- directions --------------------------------------------------------------------

    def _direction(self, text: str) -> list[str]:
        word, _space, rest = text.partition(" ")
        if word == "@after":
            self._after(rest.strip())
        elif word == "@clock":
            self._clock(rest.strip())
        elif word == "@restart":
            self.house.restart()
        elif word == "@speaks":
            name, _space, language = rest.partition(" ")
            self.house.person(name, language.strip())
        elif word == "@reminders":
            return self._reminders()
        elif word == "@nights":
            return self._nights(rest)
        else:
            raise StoryError(f"no direction: {text}")
        return []

    def _after(self, name: str) -> None:
        watch, self._watch = self._watch, None
        steps, _rest = read(FOLDER / f"{name}.story")
        prepared(self.house, ("story", name), lambda: [self.play(step) for step in steps])
        self._watch = watch

    def _clock(self, text: str) -> None:
        clock = self.house.clock
        if text.startswith("+"):
            spans = _TURN.findall(text)
            if not spans:
                raise StoryError(f"no time: {text}")
            clock.set(clock.now() + sum((_span(*one) for one in spans), timedelta(0)))
            return
        day, time, zone = text.split(" ")
        clock.set(datetime.fromisoformat(f"{day} {time}").replace(tzinfo=ZoneInfo(zone)))

    def _nights(self, text: str) -> list[str]:
        """Play a line for each night: 'Ana 23:30 Europe/Lisbon', then '2026-10-05 waste 4 limes' and so on.

        Only the first line of each answer is told, so that a month can be read.
        """
        head, *nights = text.split("\n")
        name, time, zone = head.split(" ")
        out: list[str] = []
        for night in nights:
            day, _space, said = night.strip().partition(" ")
            self._clock(f"{day} {time} {zone}")
            person = self.house.person(name)
            for one in person.says(said):
                out.append(f"{day} {one.first_line}")
                self._look(person, None, one)
        return out

    def _reminders(self) -> list[str]:
        out: list[str] = []
        for number, one in enumerate(self.house.reminders()):
            if number:
                out.append("--")
            out.append(f"(to {one.room})")
            out += lines(one.reply)
            self._look_at_reminder(one.room, one.reply)
        return out or ["(nothing)"]

    def _look_at_reminder(self, room: str, reply: Reply) -> None:
        name = room.removeprefix("private ")
        private = name != room
        for person in self.house.persons.values():
            if not private or person.sender.outside_id == name:
                self._look(person, None if private else room, reply)
                return

    def _look(self, person: Person, room: str | None, reply: Reply) -> None:
        if self._watch is not None:
            self.problems += self._watch(self.house, person, room, reply)


def _suggested(found: list[Suggestion]) -> list[str]:
    """Return the inline suggestions, and the text of the first one."""
    if not found:
        return ["(nothing)"]
    titles = [f"({one.title}: {one.description})" for one in found]
    return [*titles, *lines(found[0].said)]


def _span(number: str, unit: str) -> timedelta:
    return timedelta(**{_SPANS[unit]: float(number)})
