"""Edit and delete messages, and set reactions."""

from __future__ import annotations

from typing import Any

from telegram.constants import ReactionEmoji

from tests.api.access import existing, known_chat, writable_chat
from tests.api.keyboards import read_markup
from tests.api.params import Params
from tests.api.refusals import JsonDict, bad, stale
from tests.api.sending import caption_content, look, media_item, speaker, text_content
from tests.api.world import Chat, Event, Message, World

_NOT_MODIFIED = (
    "message is not modified: specified new message content and reply markup are exactly the same "
    "as a current content and reply markup of the message"
)
_DELETABLE_SECONDS = 48 * 3600  # deleteMessage
_CONTENT = ("text", "entities", "caption", "caption_entities", "photo", "document")


def _own_message(world: World, params: Params) -> tuple[Chat, Message]:
    if params.text("inline_message_id"):
        raise stale("MESSAGE_ID_INVALID")
    chat = writable_chat(world, params)
    message = existing(chat, params.integer("message_id"), "message to edit")
    # Neither messages of others nor the bot's own with a reply keyboard or a forced reply.
    if not message.by_bot or (message.markup and "inline_keyboard" not in message.markup):
        raise bad("message can't be edited")
    return chat, message


def _change(
    world: World, chat: Chat, message: Message, content: JsonDict, html: str, markup: JsonDict | None
) -> JsonDict:
    """Set the message's new content and keyboard, unless it already has both."""
    current = {name: message.data[name] for name in _CONTENT if name in message.data}
    if content == current and markup == message.data.get("reply_markup"):
        raise stale(_NOT_MODIFIED)
    for name in (*_CONTENT, "reply_markup"):
        message.data.pop(name, None)
    message.data |= content
    if markup:
        message.data["reply_markup"] = markup
    message.data["edit_date"] = int(world.clock())
    message.html, message.markup = html, markup
    seen = look(world, chat, message, edited=True)
    world.note(chat, speaker(chat, message, "bot (edited)"), seen.shown())
    world.happened(Event("edit", chat.id, seen, message.id))
    return message.data


def edit_message_text(world: World, params: Params) -> JsonDict:
    """editMessageText."""
    content, html = text_content(world, params.values)
    markup = read_markup(world, params, inline_only=True)
    chat, message = _own_message(world, params)
    if "text" not in message.data:
        raise bad("there is no text in the message to edit")
    return _change(world, chat, message, content, html, markup)


def edit_message_caption(world: World, params: Params) -> JsonDict:
    """editMessageCaption."""
    caption, html = caption_content(world, params.values)
    markup = read_markup(world, params, inline_only=True)
    chat, message = _own_message(world, params)
    if "text" in message.data:
        raise bad("there is no caption in the message to edit")
    media: JsonDict = {name: message.data[name] for name in ("photo", "document") if name in message.data}
    return _change(world, chat, message, {**media, **caption}, html, markup)


def edit_message_media(world: World, params: Params) -> JsonDict:
    """editMessageMedia."""
    markup = read_markup(world, params, inline_only=True)
    chat, message = _own_message(world, params)
    content, html, file_id = media_item(world, params, params.json("media") or {})
    message.file_id = file_id
    return _change(world, chat, message, content, html, markup)


def edit_message_reply_markup(world: World, params: Params) -> JsonDict:
    """editMessageReplyMarkup."""
    markup = read_markup(world, params, inline_only=True)
    chat, message = _own_message(world, params)
    current = {name: message.data[name] for name in _CONTENT if name in message.data}
    return _change(world, chat, message, current, message.html, markup)


def delete_message(world: World, params: Params) -> bool:
    """deleteMessage: own messages anywhere, a person's in a private chat or as administrator."""
    chat = known_chat(world, params)
    message = existing(chat, params.integer("message_id"), "message to delete")
    if not message.by_bot and chat.kind != "private" and chat.bot_status != "administrator":
        raise bad("message can't be deleted")
    if world.clock() - message.data["date"] > _DELETABLE_SECONDS:
        raise stale("message can't be deleted for everyone")
    message.deleted = True
    text = message.data.get("text") or message.data.get("caption") or "a message"
    world.note(chat, "bot deletes", text.split("\n")[0])
    world.happened(Event("delete", chat.id, message_id=message.id))
    return True


def set_message_reaction(world: World, params: Params) -> bool:
    """setMessageReaction."""
    chat = writable_chat(world, params)
    message = existing(chat, params.integer("message_id"), "message to react")
    reactions: list[JsonDict] = params.json("reaction") or []
    if len(reactions) > 1:
        raise bad("REACTIONS_TOO_MANY")
    emoji = [str(reaction.get("emoji")) for reaction in reactions]
    if any(one not in set(ReactionEmoji) for one in emoji):
        raise bad("REACTION_INVALID")
    world.note(chat, "bot reacts", " ".join(emoji) or "no more")
    world.happened(Event("reaction", chat.id, message_id=message.id, detail={"emoji": emoji}))
    return True


METHODS: dict[str, Any] = {
    "editmessagetext": edit_message_text,
    "editmessagecaption": edit_message_caption,
    "editmessagemedia": edit_message_media,
    "editmessagereplymarkup": edit_message_reply_markup,
    "deletemessage": delete_message,
    "setmessagereaction": set_message_reaction,
}
