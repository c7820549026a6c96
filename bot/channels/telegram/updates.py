"""Convert Telegram updates to messages."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import UTC, datetime

from bot.chat.reply.message import Document, Message, Place, Sender
from bot.work.log.edits import EDITED
from bot.work.transfer.problems import MOST_BYTES
from storage.types import JsonObject

CHANNEL = "telegram"
ALLOWED = ["message", "edited_message", "callback_query", "inline_query", "my_chat_member"]


_OUT = {"kicked", "left"}
# The fields of a message without words, and the kind that the answer speaks of.
_WORDLESS = {
    **dict.fromkeys(("voice", "audio", "video_note"), "voice"),
    **dict.fromkeys(("sticker", "dice", "game"), "sticker"),
    **dict.fromkeys(("animation", "video", "story"), "video"),
    **dict.fromkeys(("venue", "location"), "location"),
    "contact": "contact",
    "poll": "poll",
    "document": "picture file",
}


@dataclass(frozen=True, slots=True)
class Membership:
    """The bot was added to a chat or removed from it."""

    chat: str
    reachable: bool


@dataclass(frozen=True, slots=True)
class Migration:
    """A group became a supergroup with another id."""

    old: str
    new: str


@dataclass(frozen=True, slots=True)
class Typing:
    """An inline query, to be answered immediately or not at all."""

    id: str
    sender: Sender
    text: str


@dataclass(frozen=True, slots=True)
class Incoming:
    """A parsed update. `chat` orders the work; `query` is a tap to acknowledge."""

    update_id: int
    chat: str
    message: Message | None = None
    membership: Membership | None = None
    migration: Migration | None = None
    query: str | None = None
    typing: Typing | None = None
    file_id: str | None = None  # of a document still to be fetched
    message_id: int | None = None
    thread: int | None = None
    album: str = ""  # shared by its photos and videos; a file of an album stands for itself

    @property
    def kind(self) -> str:
        """The kind of update in one word, for counting."""
        if self.query is not None:
            return "tap"
        if self.typing is not None:
            return "typing"
        if self.membership is not None or self.migration is not None:
            return "membership"
        if self.message is not None:
            return "edit" if self.message.corrects is not None else "message"
        return "other"


def read_update(update: JsonObject, bot_id: int, bot_name: str) -> Incoming:
    """Parse one raw update. One that is not for the bot has no message.

    Raises KeyError, TypeError or ValueError for an invalid update.
    """
    number = int(update["update_id"])
    if "callback_query" in update:
        return _tap(number, update["callback_query"], bot_id)
    if "my_chat_member" in update:
        return _membership(number, update["my_chat_member"], bot_id)
    if "message" in update:
        return _message(number, update["message"], bot_id, bot_name)
    if "edited_message" in update:
        return _edited(number, update["edited_message"], bot_id, bot_name)
    if "inline_query" in update:
        asked = update["inline_query"]
        sender = _sender(asked["from"])
        return Incoming(number, sender.outside_id, typing=Typing(asked["id"], sender, asked.get("query", "")))
    return Incoming(number, "")


def _membership(number: int, changed: JsonObject, bot_id: int) -> Incoming:
    """Return the bot's new standing in a chat, and a message to greet a group that it was added to."""
    place = _place(changed)
    was, now = (changed[when]["status"] for when in ("old_chat_member", "new_chat_member"))
    membership = Membership(place.outside_id, now not in _OUT)
    if place.private or was not in _OUT or now in _OUT:
        return Incoming(number, place.outside_id, membership=membership)
    key = f"{bot_id}:{place.outside_id}:added {number}"
    at = datetime.fromtimestamp(changed["date"], UTC)
    added = Message(CHANNEL, _sender(changed["from"]), place, "", key=key, sent_at=at, notice="added")
    return Incoming(number, place.outside_id, added, membership=membership)


def _sender(user: JsonObject) -> Sender:
    name = " ".join(part for part in (user.get("first_name"), user.get("last_name")) if part)
    return Sender(str(user["id"]), name or str(user["id"]), user.get("language_code"))


def _place(message: JsonObject) -> Place:
    chat = message["chat"]
    # Outside forums a thread id only marks a chain of replies, and sends with it are refused.
    thread = message.get("message_thread_id") if message.get("is_topic_message") else None
    return Place(str(chat["id"]), chat["type"] == "private", chat.get("title", ""), thread)


def _tap(number: int, query: JsonObject, bot_id: int) -> Incoming:
    pressed = query.get("message")
    if pressed is None or "data" not in query:
        return Incoming(number, str(query["from"]["id"]), query=query["id"])
    place = _place(pressed)
    message = Message(
        CHANNEL,
        _sender(query["from"]),
        place,
        query["data"],
        key=f"{bot_id}:{place.outside_id}:{pressed['message_id']}:{query['id']}",
        sent_at=datetime.now(UTC),
        tapped=str(pressed["message_id"]),
        number=int(pressed["message_id"]),
    )
    return Incoming(
        number,
        place.outside_id,
        message,
        query=query["id"],
        # Only a text message can be edited into another text: below a picture the answer is a new message.
        message_id=int(pressed["message_id"]) if "text" in pressed else None,
        thread=place.thread,
    )


def _message(number: int, said: JsonObject, bot_id: int, bot_name: str) -> Incoming:
    chat = str(said["chat"]["id"])
    if "migrate_to_chat_id" in said:
        return Incoming(number, chat, migration=Migration(chat, str(said["migrate_to_chat_id"])))
    if "migrate_from_chat_id" in said:
        return Incoming(number, chat, migration=Migration(str(said["migrate_from_chat_id"]), chat))
    text = said.get("text") or said.get("caption") or ""
    photo = photo_of(said)
    place = _place(said)
    file = _file(said) if place.private else None
    anonymous = not place.private and (said.get("sender_chat") or {}).get("id") == said["chat"]["id"]
    notice = "anonymous" if anonymous else ""
    if not (text or photo or file) and place.private:
        notice = next((kind for field, kind in _WORDLESS.items() if field in said), "")
    # An inline result of the bot itself that was picked in its own chat is an answer, not a question.
    picked = (said.get("via_bot") or {}).get("id") == bot_id
    by_bot = "from" not in said or (said["from"].get("is_bot") and not anonymous)
    if by_bot or picked or not (text or photo or file or notice):
        return Incoming(number, chat)
    if not place.private and not _addressed(said, text, bot_id, bot_name):
        return Incoming(number, chat)
    message = Message(
        CHANNEL,
        _sender(said["from"]),
        place,
        _without_mention(text, bot_name),
        key=f"{bot_id}:{chat}:{said['message_id']}",  # another bot numbers its own messages
        sent_at=datetime.fromtimestamp(said["date"], UTC),
        photo=photo,
        number=int(said["message_id"]),
        answers=_lines_behind(said.get("reply_to_message") or {}, bot_id),
        document=None if file is None else Document(str(file.get("file_name") or "file")[-120:], None),
        notice=notice,
    )
    fetched = file if file is not None and int(file.get("file_size") or 0) <= MOST_BYTES else None
    return Incoming(
        number,
        chat,
        message,
        message_id=int(said["message_id"]),
        thread=place.thread,
        file_id=None if fetched is None else str(fetched["file_id"]),
        album="" if file is not None else str(said.get("media_group_id", "")),
    )


def photo_of(said: JsonObject) -> str | None:
    """Return the photo of a message in its largest size."""
    sizes = said.get("photo")
    return str(sizes[-1]["file_id"]) if sizes else None


def _file(said: JsonObject) -> JsonObject | None:
    """Return the document sent; a picture sent as a file does not count."""
    file: JsonObject | None = said.get("document")
    if file is None or str(file.get("mime_type", "")).startswith("image/"):
        return None
    return file


def _edited(number: int, said: JsonObject, bot_id: int, bot_name: str) -> Incoming:
    """Return an edited message as a correction of the original; its key differs for each edit."""
    incoming = _message(number, said, bot_id, bot_name)
    if incoming.message is None or incoming.message.notice:
        return replace(incoming, message=None)  # a moving place is edited every few seconds
    key = incoming.message.key
    edited = replace(incoming.message, key=f"{key}{EDITED}{number}", corrects=key)
    return replace(incoming, message=edited)


def _lines_behind(replied: JsonObject, bot_id: int) -> tuple[str, ...]:
    """Return the input lines behind the buttons of a message from the bot."""
    if replied.get("from", {}).get("id") != bot_id:
        return ()
    rows = (replied.get("reply_markup") or {}).get("inline_keyboard", ())
    return tuple(button["callback_data"] for row in rows for button in row if "callback_data" in button)


def _addressed(said: JsonObject, text: str, bot_id: int, bot_name: str) -> bool:
    """Whether a group message addresses the bot: a command (to it or to no bot), a reply, a mention."""
    if text.startswith("/"):
        command = text.split(maxsplit=1)[0]
        _command, at, name = command.partition("@")
        return not at or name.casefold() == bot_name.casefold()
    replied = said.get("reply_to_message") or {}
    if replied.get("from", {}).get("id") == bot_id:
        return True
    return f"@{bot_name.casefold()}" in text.casefold()


def _without_mention(text: str, bot_name: str) -> str:
    start = text.casefold().find(f"@{bot_name.casefold()}")
    if not bot_name or start < 0 or text.startswith("/"):
        return text
    return (text[:start] + text[start + len(bot_name) + 1 :]).strip()
