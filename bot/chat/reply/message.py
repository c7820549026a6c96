"""Incoming and outgoing messages as plain values that every channel can carry."""

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

# Telegram allows 64 bytes behind a button; the database keeps longer lines.
BUTTON_BYTES = 64
# Files of one reply up to this size (bytes) are stored with it, to be sent after a restart. A sheet of labels
# and its preview take a tenth of it; an export of a large bar must be requested again.
_KEPT_FILES = 1_000_000


# Characters that control a terminal or change text direction; line break and tab are text.
_STEERING = re.compile("[\\x00-\\x08\\x0b-\\x1f\\x7f-\\x9f\\u202a-\\u202e\\u2066-\\u2069]")


def harmless(text: str) -> str:
    """Return the text without control characters and lone surrogates."""
    return _STEERING.sub("", text).encode("utf-8", "ignore").decode("utf-8")


@dataclass(frozen=True, slots=True)
class Sender:
    """The author of a message: the channel's own id, and the name to show."""

    outside_id: str
    name: str
    language: str | None = None


@dataclass(frozen=True, slots=True)
class Place:
    """The place of a message: a private chat or a group, and the forum topic if any."""

    outside_id: str
    private: bool
    title: str = ""
    thread: int | None = None


@dataclass(frozen=True, slots=True)
class Document:
    """A file from a person: its name and content, None if it was too large to fetch."""

    name: str
    content: bytes | None


@dataclass(frozen=True, slots=True)
class Message:
    """One message or tap of a person.

    `key` identifies the message within its channel and place, so that a repeated one changes nothing twice.
    `tapped` is the id of the message with the tapped button; `text` is then the line behind the button.
    `photo` is the channel's own file id, or several with spaces between for an album.
    """

    channel: str
    sender: Sender
    place: Place
    text: str
    key: str
    sent_at: datetime
    tapped: str | None = None
    photo: str | None = None
    corrects: str | None = None  # the key of the message that this edit replaces
    was: str | None = None  # the text before the edit, if the channel still has it
    number: int | None = None  # of this message, or of the tapped one, ascending within the chat
    answers: tuple[str, ...] = ()  # the lines behind the buttons of the replied-to bot message
    document: Document | None = None
    shared: bool = False  # the tapped message is for the whole group, such as a reminder
    notice: str = ""  # no words but something else: "voice", "sticker", "added" to a group; see notices.py

    @property
    def chat_key(self) -> str:
        """The beginning of the keys of all messages in this chat."""
        before, here, _after = f":{self.key}".partition(f":{self.place.outside_id}:")
        return (before + here).removeprefix(":")


@dataclass(frozen=True, slots=True)
class Text:
    """One paragraph; `strong` marks the answer itself."""

    text: str
    strong: bool = False


@dataclass(frozen=True, slots=True)
class Grid:
    """Rows of cells with aligned columns: first column left, the others right."""

    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class Caution:
    """One handling caution, shown apart from the numbers."""

    text: str


Block = Text | Grid | Caution


@dataclass(frozen=True, slots=True)
class Button:
    """A label to tap. A tap sends `line` as if it had been typed."""

    label: str
    line: str


@dataclass(frozen=True, slots=True)
class File:
    """A picture or a document, with its file name.

    `file_id` is the channel's own id of a file that it already holds; `content` is then empty. `draw` creates
    the content of an unrequested picture. Channels that show pictures call it after sending the text; others
    ignore it.
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

    `edits` replaces the message with the tapped button; `ask` expects a typed answer and is the hint in the
    empty field; `quiet` sends without sound. A `toast` is no message: channels that can show it briefly over
    the tapped button.
    """

    blocks: tuple[Block, ...]
    buttons: tuple[tuple[Button, ...], ...] = ()
    files: tuple[File, ...] = ()
    ask: str | None = None
    edits: bool = False
    quiet: bool = True
    choosing: bool = field(default=False)  # the buttons belong to a question in progress
    toast: bool = False
    language: str = field(default_factory=lambda: tongue().language)  # the language of its wording

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
    """Encode replies with their files; if those are too large, a line says to ask again."""
    kinds = {kind: name for name, kind in _BLOCKS.items()}
    out = []
    for one in replies:
        kept = files_are_kept([one])
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


def files_are_kept(replies: list[Reply]) -> bool:
    """Whether the files of each reply are small enough to be stored with it."""
    return all(sum(len(file.content) for file in one.files) <= _KEPT_FILES for one in replies)


def _fields(thing: Any) -> JsonObject:
    """Return the fields of an object by name, one level deep."""
    return {name: getattr(thing, name) for name in thing.__slots__}


def _file_to_json(file: File) -> JsonObject:
    return {**_fields(file), "content": b64encode(file.content).decode()}


def replies_from_json(text: str) -> list[Reply]:
    """Decode replies."""
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
