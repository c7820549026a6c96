"""The person's view of the bot: messages with their buttons, and the replies to an action."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import asdict, dataclass, field
from typing import overload

from tests.api.refusals import JsonDict


@dataclass(frozen=True, slots=True)
class Button:
    """One button under a message; `data` for a tap, `url` for a link, neither on a reply keyboard."""

    label: str
    data: str | None = None
    url: str | None = None


@dataclass(frozen=True, slots=True)
class Seen:
    """One message of the bot at that moment.

    `text` is the displayed text (the caption of a picture or file), `html` the source as sent. `buttons` are
    rows, of an inline or of a reply keyboard.
    """

    message_id: int
    chat_id: int
    text: str
    html: str
    buttons: tuple[tuple[Button, ...], ...] = ()
    photo: bytes | None = None
    document: bytes | None = None
    file_name: str | None = None
    edited: bool = False
    reply_markup: JsonDict | None = field(default=None, hash=False)
    thread: int | None = None
    silent: bool = False
    reply_to: int | None = None

    @property
    def labels(self) -> list[str]:
        """The labels of all buttons, in reading order."""
        return [button.label for row in self.buttons for button in row]

    def shown(self) -> str:
        """The message in plain characters, buttons as [label], one row per line."""
        lines = []
        if self.photo is not None:
            lines.append(f"<photo, {len(self.photo)} bytes>")
        if self.document is not None:
            lines.append(f"<file {self.file_name}, {len(self.document)} bytes>")
        if self.text:
            lines.append(self.text)
        lines += [" ".join(f"[{button.label}]" for button in row) for row in self.buttons]
        return "\n".join(lines)

    def as_json(self) -> JsonDict:
        """For the control endpoint; file contents become their size."""
        found = asdict(self)
        for name in ("photo", "document"):
            content = found[name]
            found[name] = None if content is None else len(content)
        return found


@dataclass(frozen=True, slots=True)
class Followed(Sequence[Seen]):
    """The replies to one action of a person: messages sent or edited, in order, and the tap's answer.

    `said` is the number of the person's own message, if the action made one. `toast` is the text of the
    answer to a tap, `alert` whether it is a dialog, `deleted` the deleted messages.
    """

    seen: tuple[Seen, ...]
    said: int | None = None
    toast: str | None = None
    alert: bool = False
    deleted: tuple[int, ...] = ()

    @overload
    def __getitem__(self, index: int) -> Seen: ...
    @overload
    def __getitem__(self, index: slice) -> Sequence[Seen]: ...
    def __getitem__(self, index: int | slice) -> Seen | Sequence[Seen]:
        return self.seen[index]

    def __len__(self) -> int:
        return len(self.seen)

    def __iter__(self) -> Iterator[Seen]:
        return iter(self.seen)

    @property
    def last(self) -> Seen:
        """The last message sent or edited."""
        if not self.seen:
            raise AssertionError("the bot showed nothing")
        return self.seen[-1]

    @property
    def text(self) -> str:
        """All texts, one below the other."""
        return "\n".join(seen.text for seen in self.seen)

    @property
    def labels(self) -> list[str]:
        """The labels of the last message's buttons."""
        return self.last.labels


@dataclass(frozen=True, slots=True)
class InlineAnswer:
    """The response to an inline query."""

    results: tuple[JsonDict, ...] = field(hash=False)
    cache_time: int
    is_personal: bool
    next_offset: str

    @property
    def titles(self) -> list[str]:
        """The titles in the list of results."""
        return [str(result.get("title", "")) for result in self.results]
