"""What comes in and what goes out, in plain values that every channel can carry."""

from __future__ import annotations

import json
import re
from base64 import b64decode, b64encode
from collections.abc import Callable
from dataclasses import dataclass, field, replace
from datetime import datetime
from typing import Any

from bot.chat.i18n.language import Tongue, _, speaking, tongue
from storage.types import JsonObject

# Telegram allows 64 bytes behind a button; a longer line is kept in the database instead.
BUTTON_BYTES = 64
# Files of one reply up to here (bytes) are written down with it, to be sent after a stop in between. A
# sheet of labels and its preview take a tenth of it; an export of a large bar is asked for once more.
_KEPT_FILES = 1_000_000


# Signs that steer a terminal or turn the order of what stands beside them; line break and tab are text.
_STEERING = re.compile("[\\x00-\\x08\\x0b-\\x1f\\x7f-\\x9f\\u202a-\\u202e\\u2066-\\u2069]")


def harmless(text: str) -> str:
    """Return the text without what steers whatever shows it, and without halves of a character."""
    return _STEERING.sub("", text).encode("utf-8", "ignore").decode("utf-8")


@dataclass(frozen=True, slots=True)
class Sender:
    """Who wrote: the channel's own id for them, and the name to show."""

    outside_id: str
    name: str
    language: str | None = None


@dataclass(frozen=True, slots=True)
class Place:
    """Where it was written: a private chat or a group, and the forum topic if any."""

    outside_id: str
    private: bool
    title: str = ""
    thread: int | None = None


@dataclass(frozen=True, slots=True)
class Document:
    """A file that a person sent: its name, and what is in it, None where it was too large to fetch."""

    name: str
    content: bytes | None


@dataclass(frozen=True, slots=True)
class Message:
    """One thing a person said or tapped.

    `key` names the message uniquely within its channel and place, so that the same
    one seen twice changes nothing twice. `tapped` is the id of the message whose
    button was pressed; `text` is then the line behind the button. `photo` is the
    channel's own file id.
    """

    channel: str
    sender: Sender
    place: Place
    text: str
    key: str
    sent_at: datetime
    tapped: str | None = None
    photo: str | None = None
    corrects: str | None = None  # the key of the message that this one replaces (an edit)
    was: str | None = None  # what the edited message said before, where the channel still knows
    number: int | None = None  # of this message, or of the tapped one, counting up within the chat
    answers: tuple[str, ...] = ()  # the lines behind the buttons of the bot's message that it replies to
    document: Document | None = None


@dataclass(frozen=True, slots=True)
class Text:
    """One paragraph; `strong` for the answer itself."""

    text: str
    strong: bool = False


@dataclass(frozen=True, slots=True)
class Grid:
    """Rows of cells to be shown aligned: first column left, the others right."""

    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class Caution:
    """One handling caution, shown apart from the numbers."""

    text: str


Block = Text | Grid | Caution


@dataclass(frozen=True, slots=True)
class Button:
    """A label to tap. Tapping says `line`, just as if it had been typed."""

    label: str
    line: str


@dataclass(frozen=True, slots=True)
class File:
    """A picture or a document, with the name it is saved under.

    `file_id` is a file that the channel holds already, by the channel's own id; `content` is then empty.
    `draw` makes the content of a picture that nobody asked for: a channel that shows pictures calls it
    once the text is out, one that does not leaves it.
    """

    name: str
    content: bytes
    picture: bool = False
    caption: str = ""
    file_id: str | None = None
    draw: Callable[[], bytes] | None = field(default=None, compare=False)


@dataclass(frozen=True, slots=True)
class Reply:
    """One answer.

    `edits` replaces the message whose button was tapped; `ask` wants a typed answer
    and is the hint shown in the empty field; `quiet` makes no sound on the phone.
    """

    blocks: tuple[Block, ...]
    buttons: tuple[tuple[Button, ...], ...] = ()
    files: tuple[File, ...] = ()
    ask: str | None = None
    edits: bool = False
    quiet: bool = True
    choosing: bool = field(default=False)  # the buttons belong to a question in progress
    language: str = field(default_factory=lambda: tongue().language)  # the one it was worded in

    def with_buttons(self, *rows: tuple[Button, ...]) -> Reply:
        """Return the same reply with more rows of buttons below."""
        return replace(self, buttons=(*self.buttons, *rows))

    @property
    def first_line(self) -> str:
        """The answer itself."""
        block = self.blocks[0]
        return block.text if isinstance(block, Text | Caution) else " ".join(block.rows[0])


def reply(first: str, *blocks: Block | str, **options: Any) -> Reply:
    """Make a reply whose first line is the answer; plain strings become paragraphs."""
    rest = tuple(Text(block) if isinstance(block, str) else block for block in blocks)
    return Reply((Text(first, strong=True), *rest), **options)


_BLOCKS: dict[str, type[Text] | type[Grid] | type[Caution]] = {"text": Text, "grid": Grid, "caution": Caution}


def replies_to_json(replies: list[Reply]) -> str:
    """Write replies down, their files too; where those are too large, a line says to ask once more."""
    kinds = {kind: name for name, kind in _BLOCKS.items()}
    out = []
    for one in replies:
        kept = sum(len(file.content) for file in one.files) <= _KEPT_FILES
        data = _fields(one)
        blocks = one.blocks
        if not kept:
            with speaking(Tongue(one.language)):
                blocks = (*blocks, Text(_("If no file came with this, ask once more.")))
        data["blocks"] = [[kinds[type(block)], _fields(block)] for block in blocks]
        data["buttons"] = [[_fields(button) for button in row] for row in one.buttons]
        data["files"] = [_file_to_json(file) for file in one.files if file.draw is None] if kept else []
        out.append(data)
    return json.dumps(out, ensure_ascii=False, separators=(",", ":"))


def _fields(thing: Any) -> JsonObject:
    """Return what an object holds by name, one level deep."""
    return {name: getattr(thing, name) for name in thing.__slots__}


def _file_to_json(file: File) -> JsonObject:
    return {**_fields(file), "content": b64encode(file.content).decode()}


def replies_from_json(text: str) -> list[Reply]:
    """Read replies back."""
    replies = []
    for data in json.loads(text):
        blocks: list[Block] = []
        for name, fields in data.pop("blocks"):
            if name == "grid":
                blocks.append(Grid(tuple(tuple(row) for row in fields["rows"])))
            else:
                blocks.append(_BLOCKS[name](**fields))
        buttons = tuple(tuple(Button(**one) for one in row) for row in data.pop("buttons"))
        files = tuple(File(**{**one, "content": b64decode(one["content"])}) for one in data.pop("files"))
        replies.append(Reply(tuple(blocks), buttons, files, **data))
    return replies
