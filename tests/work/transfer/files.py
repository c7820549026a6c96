"""Upload and download files, and compare a bar's answers before and after."""

from __future__ import annotations

from bot.channels.rendering import plain_lines
from bot.chat.reply.message import Document, Message, Place, Reply
from tests.house import CHANNEL, House, Person


class Sends:
    """A person who can send files."""

    def __init__(self, house: House, person: Person) -> None:
        self._house, self._person, self._number = house, person, 0

    def __call__(self, name: str, content: bytes) -> Reply:
        self._number += 1
        place = self._house.room(None, self._person).place
        message = Message(
            CHANNEL,
            self._person.sender,
            Place(place.outside_id, True),
            "",
            key=f"{place.outside_id}:file {self._number}",
            sent_at=self._house.clock.now(),
            document=Document(name, content),
        )
        (said,) = self._house.conversation.answer(message)
        return said

    def and_takes_in(self, name: str, content: bytes) -> Reply:
        """Send a file and confirm the import."""
        line = self(name, content).buttons[0][0].line
        (said,) = self._person.taps_line(line)
        return said


def waste_rows(count: int) -> bytes:
    """Return a table of waste with this many lines."""
    lines = [f"2026-11-{1 + number % 24:02},lime,{1 + number % 9},mouldy" for number in range(count)]
    return "\n".join(["day,fruit,pieces,reason", *lines]).encode()


def exported(person: Person) -> dict[str, bytes]:
    """Return the files of an export by name."""
    (said,) = person.says("export")
    return {file.name: file.content for file in said.files}


def answers(person: Person, lines: tuple[str, ...]) -> dict[str, str]:
    """Return the answer to each line, as plain text."""
    return {line: "\n".join("\n".join(plain_lines(one)) for one in person.says(line)) for line in lines}
