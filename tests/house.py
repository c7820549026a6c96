"""The test setup: a real database, a clock set by hand, and people who type and tap.

house.open_bar("Ana")
replies = house.person("Ana").says("waste 6 oranges mouldy")
house.person("Ana").taps("Undo")
house.clock.turn(hours=24)
house.reminders()
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from datetime import UTC, datetime, timedelta

from bot.channels.rendering import html_parts, plain_lines
from bot.chat.conversation.conversation import Conversation
from bot.chat.conversation.inline import Suggestion, suggestions
from bot.chat.features.reminders.due import worded_reminder
from bot.chat.reply.message import Document, Message, Place, Reply, Sender
from bot.work.log.edits import EDITED
from bot.work.reminders import delivery
from bot.work.reminders.delivery import DueReminder, Outcome, Sent
from storage.store import Store
from tests.prepared import prepared

CHANNEL = "house"
BOT_NAME = "peel_ledger_bot"
# The width of a 380-pixel phone: characters of Telegram's own text and of fixed width.
PHONE_TEXT, PHONE_GRID = 46, 32


# The buttons that say that what a line names is new, in both languages.
_NEW_THINGS = ("Yes, new", "Sí, nuevos", "New ingredient:", "Ingrediente nuevo:")


class Hands:
    """A clock that advances only on request."""

    def __init__(self, now: datetime) -> None:
        self._now = now

    def now(self) -> datetime:
        """Return the current instant, in UTC."""
        return self._now

    def turn(self, **spans: float) -> datetime:
        """Advance the clock (or go back, by negative spans): hours=2, days=1, minutes=30."""
        self._now += timedelta(**spans)
        return self._now

    def set(self, now: datetime) -> None:
        """Set the clock to an aware instant."""
        self._now = now.astimezone(UTC)


@dataclass
class Shown:
    """A message of the bot in its current form in a chat."""

    id: str
    reply: Reply


@dataclass
class Room:
    """A chat: one person's private one, or a group with the bot's privacy mode on."""

    place: Place
    shown: list[Shown] = field(default_factory=list)
    typed: list[tuple[str, str, datetime]] = field(default_factory=list)  # key, text and when

    def button(self, label: str) -> tuple[str, str]:
        """Return the message and the line of the newest button with this label."""
        for one in reversed(self.shown):
            for row in one.reply.buttons:
                for button in row:
                    if button.label == label:
                        return one.id, button.line
        last = [button.label for row in self.shown[-1].reply.buttons for button in row] if self.shown else []
        raise AssertionError(f"no button “{label}” in {self.place.outside_id}; the last message has {last}")

    def lines_behind(self) -> tuple[str, ...]:
        """Return the lines behind the buttons of the newest message."""
        rows = self.shown[-1].reply.buttons if self.shown else ()
        return tuple(button.line for row in rows for button in row)


@dataclass(frozen=True)
class Reminded:
    """A sent reminder, and its chat."""

    room: str
    reply: Reply
    due: DueReminder


class Person:
    """A person with a phone."""

    def __init__(self, house: House, name: str, language: str | None = "en") -> None:
        self.house = house
        self.sender = Sender(outside_id=name.casefold(), name=name, language=language)

    @property
    def name(self) -> str:
        """The name shown to others."""
        return self.sender.name

    def says(
        self, text: str, room: str | None = None, photo: str | None = None, answering: bool = False
    ) -> list[Reply]:
        """Type a message; return the replies. In a group only a command or an answer reaches the bot."""
        here = self.house.room(room, self)
        if not here.place.private and not answering and not text.startswith("/"):
            return []
        replies = self._send(here, text, photo=photo, answers=here.lines_behind() if answering else ())
        asked = self._asked_new(replies) if self.house.confirms_new else None
        return replies if asked is None else self.taps(asked, room)

    def _asked_new(self, replies: list[Reply]) -> str | None:
        """Return the label of the button that confirms new ingredients, where these are asked for."""
        labels = [button.label for one in replies for row in one.buttons for button in row]
        return next((one for one in labels if one.startswith(_NEW_THINGS)), None)

    def answers(self, text: str, room: str) -> list[Reply]:
        """Reply to the bot's last message in a group."""
        return self.says(text, room, answering=True)

    def edits(self, text: str, number: int = 1, room: str | None = None) -> list[Reply]:
        """Edit the last message typed here, or an earlier one by a number above 1."""
        here = self.house.room(room, self)
        key, was, sent_at = here.typed[-number]
        here.typed[-number] = (key, text, sent_at)
        message = Message(
            CHANNEL,
            self.sender,
            here.place,
            text,
            key=f"{key}{EDITED}{self.house.next_key(here)}",
            sent_at=sent_at,
            corrects=key,
            was=was,
        )
        replies = self.house.conversation.answer(message)
        here.shown += [Shown(f"{message.key}.{at}", one) for at, one in enumerate(replies)]
        return replies

    def sends(self, name: str, content: bytes, room: str | None = None) -> list[Reply]:
        """Send a file."""
        return self._send(self.house.room(room, self), "", document=Document(name, content))

    def types_inline(self, text: str) -> list[Suggestion]:
        """Type an inline query in any chat; return the suggestions."""
        place = Place(self.sender.outside_id, private=True)
        now = self.house.clock.now()
        message = Message(CHANNEL, self.sender, place, text, key="inline", sent_at=now)
        return suggestions(self.house.store, self.house.clock, message)

    def taps(self, label: str, room: str | None = None) -> list[Reply]:
        """Tap the newest button with this label in the chat."""
        here = self.house.room(room, self)
        message_id, line = here.button(label)
        return self._send(here, line, tapped=message_id)

    def taps_line(self, line: str, room: str | None = None) -> list[Reply]:
        """Send the line of any button, as a phone with old messages can."""
        return self._send(self.house.room(room, self), line, tapped="0")

    def _send(
        self,
        here: Room,
        text: str,
        tapped: str | None = None,
        photo: str | None = None,
        document: Document | None = None,
        answers: tuple[str, ...] = (),
    ) -> list[Reply]:
        house = self.house
        key = house.next_key(here)
        message = Message(
            CHANNEL,
            self.sender,
            here.place,
            text,
            key=key,
            sent_at=house.clock.now(),
            tapped=tapped,
            photo=photo,
            document=document,
            answers=answers,
        )
        replies = house.conversation.answer(message)
        if tapped is None:
            here.typed.append((key, text, message.sent_at))
        for number, one in enumerate(one for one in replies if not one.toast):
            edited = next((shown for shown in here.shown if shown.id == tapped), None)
            if number == 0 and one.edits and edited is not None:
                edited.reply = one
            else:
                here.shown.append(Shown(f"{key}.{number}", one))
        return replies


class House:
    """The complete test setup. `restart` simulates a new process: only the database is kept."""

    def __init__(self, store: Store, clock: Hands) -> None:
        self.store = store
        self.clock = clock
        self.persons: dict[str, Person] = {}
        self.rooms: dict[str, Room] = {}
        self.said = 0  # the number of messages so far
        self.confirms_new = True  # confirm new ingredients at once; a story taps itself
        self.conversation = Conversation(store, clock)

    def restart(self) -> None:
        """Drop all state except the database."""
        self.store.close()
        self.store = Store(self.store.url.render_as_string(hide_password=False))
        self.conversation = Conversation(self.store, self.clock)

    def close(self) -> None:
        """Release the database."""
        self.store.close()

    def next_key(self, room: Room) -> str:
        """Return a new, unused message key."""
        self.said += 1
        return f"{room.place.outside_id}:{self.said}"

    def person(self, name: str, language: str | None = "en") -> Person:
        """Return the person of this name, creating them on first use."""
        if name not in self.persons:
            self.persons[name] = Person(self, name, language)
        return self.persons[name]

    def room(self, name: str | None, person: Person) -> Room:
        """Return the group of this name, or the person's private chat."""
        key = name or f"private {person.sender.outside_id}"
        if key not in self.rooms:
            self.rooms[key] = Room(Place(outside_id=key, private=name is None, title=name or ""))
        return self.rooms[key]

    def open_bar(
        self,
        owner: str = "Ana",
        name: str = "The Copper Gull",
        city: str = "Lisbon",
        said: Sequence[str] = (),
    ) -> Person:
        """Create a bar in a conversation, with the first suggestion for everything but name and city.

        `said` are the owner's next messages; the result of all of it is prepared once and then copied.
        """
        person = self.person(owner)
        prepared(self, (owner, name, city, *said), lambda: self._open_bar(person, name, city, said))
        return person

    @staticmethod
    def _open_bar(person: Person, name: str, city: str, said: Sequence[str]) -> None:
        person.says("start")
        person.says(name)
        replies = person.says(city)
        while replies[-1].choosing:
            label = replies[-1].buttons[0][0].label
            replies = person.taps(label)
        assert replies[0].first_line == f"{name} is open."
        for line in said:
            assert person.says(line)[0].first_line != "I did not understand that.", line

    def joins(self, newcomer: str, by: str = "Ana", manager: bool = False) -> Person:
        """Add a person to the bar of `by` with a joining code."""
        replies = self.person(by).says("team invite" + (" manager" if manager else ""))
        lines = plain_lines(replies[0])
        code = next(line for line in lines if line.startswith("join "))
        person = self.person(newcomer)
        person.says(code)
        return person

    def reminders(self, outcome: Outcome = Outcome.SENT) -> list[Reminded]:
        """Send due reminders, each to its chat; return them."""
        sent = []
        for due in delivery.claim(self.store, CHANNEL, self.clock.now()):
            reply = worded_reminder(due, self.clock.now(), self.store)
            delivery.settle(self.store, due, Sent(outcome), self.clock.now())
            room = self.rooms[due.destination.outside_id]
            room.shown.append(Shown(self.next_key(room), reply))
            sent.append(Reminded(due.destination.outside_id, reply, due))
        return sent


def lines(reply: Reply, phone: bool = True) -> list[str]:
    """Return a reply as plain lines, its buttons as [labels], one line per row."""
    text = plain_lines(reply, PHONE_TEXT, PHONE_GRID) if phone else plain_lines(reply)
    files = [f"<{'picture' if one.picture else 'file'} {one.name}>" for one in reply.files]
    rows = [" ".join(f"[{button.label}]" for button in row) for row in reply.buttons]
    return [*text, *files, *rows]


def text(replies: list[Reply]) -> str:
    """Return several replies as one text."""
    return "\n".join(line for one in replies for line in lines(replace(one, buttons=()), phone=False))


def first_lines(replies: list[Reply]) -> list[str]:
    """Return only the answers themselves."""
    return [one.first_line for one in replies]


def html(reply: Reply) -> str:
    """Return a reply as sent to Telegram."""
    return "\n".join(html_parts(reply))
