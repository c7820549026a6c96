"""The state of the server: people, chats, messages and files, and the log of events."""

from __future__ import annotations

import asyncio
import time
from collections import defaultdict, deque
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Literal

from telegram.constants import FileSizeLimit

from tests.api.flood import FloodControl
from tests.api.refusals import JsonDict
from tests.api.seen import Seen
from tests.api.updates import UpdateQueue

BOT_ID = 7_000_000_001
BOT_NAME = "Peel Ledger test"
BOT_USERNAME = "peel_ledger_test_bot"
TOKEN = f"{BOT_ID}:loopback-only-token-that-opens-nothing"


@dataclass(slots=True)
class User:
    """A person, in Telegram's description for bots."""

    id: int
    first_name: str
    language_code: str | None = None
    username: str | None = None

    def as_json(self) -> JsonDict:
        """The User object."""
        found: JsonDict = {"id": self.id, "is_bot": False, "first_name": self.first_name}
        if self.username:
            found["username"] = self.username
        if self.language_code:
            found["language_code"] = self.language_code
        return found


@dataclass(slots=True)
class Message:
    """One message: its API fields, and internal data of the server."""

    data: JsonDict
    by_bot: bool
    html: str = ""
    deleted: bool = False
    delivered: bool = True  # False if privacy mode or the wanted kinds kept it from the bot
    meant_for_bot: bool = False
    silent: bool = False
    markup: JsonDict | None = None  # of any kind; the API returns inline keyboards only
    file_id: str | None = None

    @property
    def id(self) -> int:
        """The number within its chat."""
        return int(self.data["message_id"])


@dataclass(slots=True)
class Chat:
    """A private chat, a group or a supergroup, from the bot's side."""

    id: int
    kind: Literal["private", "group", "supergroup"]
    title: str
    forum: bool = False
    privacy: bool = True
    bot_status: str = "member"  # or administrator, left, kicked
    members: dict[int, str] = field(default_factory=dict)  # status by user id
    migrated_to: int | None = None
    blocked: bool = False
    started: bool = True  # False until the person has written once
    bot_spoke_last: bool = False  # among the bots of the group
    topics: dict[int, str] = field(default_factory=dict)
    closed_topics: set[int] = field(default_factory=set)
    messages: dict[int, Message] = field(default_factory=dict)
    notes: list[str] = field(default_factory=list)  # the transcript
    numbers: int = 0  # last message number, for a chat with its own count

    def as_json(self) -> JsonDict:
        """The Chat object."""
        found: JsonDict = {"id": self.id, "type": self.kind}
        if self.kind == "private":
            found["first_name"] = self.title
        else:
            found["title"] = self.title
        if self.kind == "group":
            found["all_members_are_administrators"] = True
        if self.forum:
            found["is_forum"] = True
        return found


@dataclass(frozen=True, slots=True)
class StoredFile:
    """A file that can be downloaded by its id."""

    content: bytes
    path: str
    name: str


@dataclass(slots=True)
class Query:
    """A tap or an inline query waiting for its answer."""

    id: str
    chat_id: int
    what: str
    made_at: float
    update_id: int | None = None
    answered: bool = False
    expired: bool = False


@dataclass(frozen=True, slots=True)
class Event:
    """An action of the bot that a person could notice."""

    kind: Literal["message", "edit", "delete", "toast", "inline", "action", "reaction", "left"]
    chat_id: int
    seen: Seen | None = None
    message_id: int | None = None
    detail: JsonDict = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Call:
    """One request of the bot and its result."""

    method: str
    values: JsonDict
    status: int


class World:
    """All state of one server, and waiting for a change of it."""

    def __init__(self) -> None:
        self.clock: Callable[[], float] = time.time
        self.bot_id = BOT_ID
        self.users: dict[int, User] = {}
        self.chats: dict[int, Chat] = {}
        self.files: dict[str, StoredFile] = {}
        self.queries: dict[str, Query] = {}
        self.commands: dict[tuple[str, str], list[JsonDict]] = {}
        self.texts: dict[tuple[str, str], str] = {}  # name and descriptions, by kind and language
        self.updates = UpdateQueue(self.wake)
        self.flood = FloodControl()
        self.events: list[Event] = []
        self.calls: deque[Call] = deque(maxlen=20_000)
        self.violations: list[str] = []
        self.in_flight = 0
        self.active_at = 0.0
        self.photo_limit = int(FileSizeLimit.PHOTOSIZE_UPLOAD)
        self.upload_limit = int(FileSizeLimit.FILESIZE_UPLOAD)
        self.download_limit = int(FileSizeLimit.FILESIZE_DOWNLOAD)
        self.query_lifetime = 300.0
        self.on_message: dict[int, asyncio.Future[float]] = {}
        self._numbers: defaultdict[str, int] = defaultdict(int)
        self._waiting: list[asyncio.Future[None]] = []

    @property
    def token(self) -> str:
        """The only token this server knows."""
        return TOKEN.replace(str(BOT_ID), str(self.bot_id))

    def become_another_bot(self) -> None:
        """From now on there is a new bot, which numbers messages and updates from the beginning."""
        self.bot_id += 1
        self._numbers["message"] = 0
        for chat in self.chats.values():
            chat.messages.clear()
        self.updates.begin_anew()

    # -- numbers and registers ----------------------------------------------------------------

    def number(self, what: str) -> int:
        """The next number of a series."""
        self._numbers[what] += 1
        return self._numbers[what]

    def next_message_id(self, chat: Chat) -> int:
        """Supergroups count their own messages; all other chats of a bot share one count."""
        if chat.kind == "supergroup":
            chat.numbers += 1
            return chat.numbers
        return self.number("message")

    def bot_user(self) -> JsonDict:
        """The bot as the User object in messages."""
        return {"id": self.bot_id, "is_bot": True, "first_name": BOT_NAME, "username": BOT_USERNAME}

    def user_json(self, user_id: int) -> JsonDict:
        """The User object of a person or of the bot."""
        return self.bot_user() if user_id == self.bot_id else self.users[user_id].as_json()

    def store_file(self, content: bytes, kind: str, name: str) -> tuple[str, str]:
        """Store a file; returns its id and its unique id."""
        number = self.number("file")
        file_id = f"{kind}-file-{number}"
        suffix = name.rpartition(".")[2] if "." in name else "bin"
        self.files[file_id] = StoredFile(content, f"{kind}s/file_{number}.{suffix}", name)
        return file_id, f"unique-{number}"

    # -- events -------------------------------------------------------------------------------

    def violate(self, sentence: str) -> None:
        """Record an action that a correct bot does not take."""
        self.violations.append(sentence)

    def note(self, chat: Chat, who: str, text: str) -> None:
        """Add to the transcript; further lines are indented."""
        first, *rest = text.split("\n")
        chat.notes.append("\n".join([f"{who}: {first}", *("    " + line for line in rest)]))

    def happened(self, event: Event) -> None:
        """Record an action of the bot and wake the waiters."""
        self.events.append(event)
        if event.kind == "message":
            waiting = self.on_message.pop(event.chat_id, None)
            if waiting is not None and not waiting.done():
                waiting.set_result(time.monotonic())
        self.wake()

    def wake(self) -> None:
        """Re-evaluate all waiting conditions."""
        if self._waiting:
            waiting, self._waiting = self._waiting, []
            for future in waiting:
                if not future.done():
                    future.set_result(None)

    async def until(self, ready: Callable[[], bool], within: float) -> bool:
        """Wait until `ready` or for `within` seconds; returns whether it became ready."""
        deadline = time.monotonic() + within
        while not ready():
            left = deadline - time.monotonic()
            if left <= 0:
                return False
            future = asyncio.get_running_loop().create_future()
            self._waiting.append(future)
            await asyncio.wait({future}, timeout=left)
        return True
