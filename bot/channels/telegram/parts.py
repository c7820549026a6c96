"""Split an answer into the parts that Telegram takes one by one, so that a retry can continue."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from html import escape

from bot.channels.rendering import html_parts
from bot.chat.dialogue.slots import ANSWER, BACK, CANCEL
from bot.chat.i18n.language import Tongue, _, speaking
from bot.chat.reply.message import File, Reply
from storage.types import JsonObject

_ALBUM = 10
_ALBUM_BYTES = 40_000_000  # below the limit of one request
_CAPTION = 1024
_LONGEST = 4096 - 160  # Telegram's limit, with room for the notes
_SAID = 60


@dataclass(frozen=True, slots=True)
class Target:
    """The target of a reply: the chat, its topic, the message it answers and the one it may replace."""

    chat: str
    private: bool
    thread: int | None = None
    answers: int | None = None
    replaces: int | None = None
    person: str | None = None  # the private chat of the person who asked in a group


@dataclass(frozen=True, slots=True)
class Part:
    """One request of an answer: a message, an edit, or files that arrive together.

    `repeat` says that an earlier attempt may have arrived; `answers` is what a late answer answers.
    """

    reply: Reply
    text: str = ""
    files: tuple[File, ...] = ()
    begins: bool = False  # the reply, so it is the one that refers to the question
    ends: bool = False  # the texts of the reply, so it has the buttons
    alone: bool = False  # the only text, so it may replace the message with the tapped button
    repeat: bool = False
    answers: str | None = None

    def html(self) -> str:
        """Return the text with its notes."""
        return "\n".join([self.text, *(escape(note, quote=False) for note in self._notes())])

    def caption(self, file: File) -> str | None:
        """Return the caption of a file; the first of several has the notes."""
        notes = self._notes() if file is self.files[0] else []
        room = _CAPTION - sum(len(note) + 1 for note in notes)
        return "\n".join(line for line in (file.caption[:room], *notes) if line) or None

    def _notes(self) -> list[str]:
        with speaking(Tongue(self.reply.language)):
            notes = []
            if self.answers:
                notes.append(_("Late: this answers “{said}”.").format(said=self.answers[:_SAID]))
            elif self.answers is not None:
                notes.append(_("Late: this answers something from earlier."))
            if self.repeat:
                notes.append(_("(This may be a repeat.)"))
            return notes


def may_be_repeat(part: Part) -> Part:
    """Return the part with a note that it may have been sent before."""
    return replace(part, repeat=True, alone=False)


def parts_of(replies: Sequence[Reply]) -> list[Part]:
    """Return the parts of an answer, in order."""
    return [part for reply in replies for part in _parts(reply)]


def _parts(reply: Reply) -> Iterator[Part]:
    texts = html_parts(reply, _LONGEST)
    for number, text in enumerate(texts, start=1):
        yield Part(reply, text, begins=number == 1, ends=number == len(texts), alone=len(texts) == 1)
    requested = [file for file in reply.files if file.draw is None]
    for picture in (True, False):
        for files in _albums([file for file in requested if file.picture is picture]):
            yield Part(reply, files=files)
    for file in reply.files:
        if file.draw is not None:
            yield Part(reply, files=(file,))


def _albums(files: list[File]) -> Iterator[tuple[File, ...]]:
    """Put files that may arrive together into groups; an album holds pictures only, or documents only."""
    album: list[File] = []
    for file in files:
        size = sum(len(one.content) for one in album) + len(file.content)
        if album and (len(album) == _ALBUM or size > _ALBUM_BYTES):
            yield tuple(album)
            album = []
        album.append(file)
    if album:
        yield tuple(album)


def reply_to(target: Target) -> JsonObject | None:
    """Return the message that a reply in a group refers to."""
    if target.private or target.answers is None:
        return None
    return {"message_id": target.answers, "allow_sending_without_reply": True}


def markup(reply: Reply, target: Target) -> JsonObject | None:
    """Return the keyboard of a new message."""
    if not target.private and reply.ask and _only_moves(reply):
        # In privacy mode the bot receives only replies, so the question forces one.
        return {"force_reply": True, "selective": True, "input_field_placeholder": reply.ask[:64]}
    return buttons(reply)


def buttons(reply: Reply) -> JsonObject | None:
    """Return the buttons below a message."""
    if not reply.buttons:
        return None
    rows = [
        [{"text": one.label[:64], "callback_data": one.line} for one in row] for row in reply.buttons if row
    ]
    return {"inline_keyboard": rows}


def _only_moves(reply: Reply) -> bool:
    """Whether the only buttons are Back and Cancel, so that the answer must be typed."""
    answers = [one.line.split(" ", 2) for row in reply.buttons for one in row]
    return all(len(parts) == 3 and parts[0] == ANSWER and parts[2] in {BACK, CANCEL} for parts in answers)
