"""Methods that send messages: texts, pictures, files, albums."""

from __future__ import annotations

import mimetypes
from typing import Any

from telegram.constants import ChatAction, MediaGroupLimit, MessageLimit

from tests.api.access import replied_to, topic_of, writable_chat
from tests.api.keyboards import button_rows, check_link, read_markup
from tests.api.markup import Parsed, parse_html
from tests.api.params import Params, Upload
from tests.api.pictures import size_of
from tests.api.refusals import JsonDict, RefusalError, bad
from tests.api.seen import Seen
from tests.api.world import Chat, Event, Message, World


def read_text(world: World, values: JsonDict, name: str) -> tuple[Parsed, str]:
    """A text or caption after entity parsing, and its source; refused as by Telegram."""
    source = str(values.get(name) or "")
    mode = str(values.get("parse_mode") or "").lower()
    if mode == "html":
        parsed = parse_html(source)
    elif mode:
        raise bad(f"unsupported parse_mode: this server reads HTML only, not {mode}")
    else:
        parsed = Parsed(source)
    for warning in parsed.warnings:
        world.violate(f"{warning}: {source[:80]!r}")
    if len(parsed.entities) > MessageLimit.MESSAGE_ENTITIES:
        world.violate(f"{len(parsed.entities)} entities: Telegram drops those after the 100th")
    for entity in parsed.entities:
        if "url" in entity:
            check_link(world, entity["url"])
    return _trimmed(parsed), source


def _trimmed(parsed: Parsed) -> Parsed:
    """Return the text without blanks at its ends, which Telegram removes; entities keep their place."""
    text = parsed.text.rstrip()
    lead = len(text) - len(text.lstrip())
    if any(entity["offset"] < lead for entity in parsed.entities):
        lead = 0  # formatted blanks at the start remain
    if lead == 0 and len(text) == len(parsed.text):
        return parsed
    end = len(text.encode("utf-16-le")) // 2
    entities = []
    for entity in parsed.entities:
        length = min(entity["length"], end - entity["offset"])
        if length > 0:
            entities.append({**entity, "offset": entity["offset"] - lead, "length": length})
    return Parsed(text[lead:], entities, parsed.warnings)


def text_content(world: World, values: JsonDict) -> tuple[JsonDict, str]:
    """The fields of a text message and its source."""
    parsed, source = read_text(world, values, "text")
    if not parsed.text:
        raise bad("message text is empty")
    if len(parsed.text) > MessageLimit.MAX_TEXT_LENGTH:
        raise bad("message is too long")
    content: JsonDict = {"text": parsed.text}
    if parsed.entities:
        content["entities"] = parsed.entities
    return content, source


def caption_content(world: World, values: JsonDict) -> tuple[JsonDict, str]:
    """The fields of a caption, none if it is empty, and its source."""
    parsed, source = read_text(world, values, "caption")
    if len(parsed.text) > MessageLimit.CAPTION_LENGTH:
        raise bad("message caption is too long")
    content: JsonDict = {}
    if parsed.text:
        content["caption"] = parsed.text
        if parsed.entities:
            content["caption_entities"] = parsed.entities
    return content, source


def look(world: World, chat: Chat, message: Message, *, edited: bool = False) -> Seen:
    """The message as a person sees it now."""
    data = message.data
    stored = world.files[message.file_id] if message.file_id else None
    is_photo = "photo" in data
    return Seen(
        message_id=message.id,
        chat_id=chat.id,
        text=data.get("text") or data.get("caption") or "",
        html=message.html,
        buttons=button_rows(message.markup),
        photo=stored.content if stored and is_photo else None,
        document=stored.content if stored and not is_photo else None,
        file_name=stored.name if stored and not is_photo else None,
        edited=edited,
        reply_markup=message.markup,
        thread=data.get("message_thread_id") if data.get("is_topic_message") else None,
        silent=message.silent,
        reply_to=data.get("reply_to_message", {}).get("message_id"),
    )


def speaker(chat: Chat, message: Message, who: str) -> str:
    """`who`, with the topic if the chat has topics."""
    topic = chat.topics.get(message.data.get("message_thread_id") or 0)
    return f"{who} #{topic}" if topic else who


def deliver(
    world: World, chat: Chat, params: Params, content: JsonDict, html: str, file_id: str | None = None
) -> Message:
    """Add a message of the bot to the chat, after the remaining checks."""
    markup = read_markup(world, params)
    thread = topic_of(chat, params)
    reply = replied_to(world, chat, params)
    world.flood.count(chat.id)
    data: JsonDict = {
        "message_id": world.next_message_id(chat),
        "from": world.bot_user(),
        "chat": chat.as_json(),
        "date": int(world.clock()),
        **content,
    }
    if reply is not None:
        data["reply_to_message"] = {
            name: value for name, value in reply.data.items() if name != "reply_to_message"
        }
        if thread is None and reply.data.get("is_topic_message"):
            thread = reply.data["message_thread_id"]
    if thread is not None:
        data |= {"message_thread_id": thread, "is_topic_message": True}
    if markup and "inline_keyboard" in markup:
        data["reply_markup"] = markup
    message = Message(
        data,
        by_bot=True,
        html=html,
        meant_for_bot=True,
        silent=params.flag("disable_notification"),
        markup=markup,
        file_id=file_id,
    )
    chat.messages[message.id] = message
    chat.bot_spoke_last = True
    seen = look(world, chat, message)
    world.note(chat, speaker(chat, message, "bot"), seen.shown())
    world.happened(Event("message", chat.id, seen, message.id))
    return message


def send_message(world: World, params: Params) -> JsonDict:
    """sendMessage."""
    content, html = text_content(world, params.values)
    return deliver(world, writable_chat(world, params), params, content, html).data


# -- pictures and files ---------------------------------------------------------------------------


def media_content(world: World, kind: str, given: str | None, upload: Upload | None) -> tuple[JsonDict, str]:
    """The fields of a picture or file, and its id; from an upload or from an earlier id."""
    if upload is None:
        if given is None:
            raise bad(f"there is no {kind} in the request")
        stored = world.files.get(given)
        if stored is None:
            raise bad("wrong file identifier/HTTP URL specified")
        if not given.startswith(kind):
            raise bad(f"can't use file of type {given.partition('-')[0].title()} as {kind.title()}")
        return _describe(
            kind, given, f"unique-{given.rpartition('-')[2]}", stored.content, stored.name
        ), given
    _check_upload(world, kind, upload)
    file_id, unique_id = world.store_file(upload.content, kind, upload.name)
    return _describe(kind, file_id, unique_id, upload.content, upload.name), file_id


def _check_upload(world: World, kind: str, upload: Upload) -> None:
    size = len(upload.content)
    if size == 0:
        raise bad("file must be non-empty")
    if size > world.upload_limit:
        raise RefusalError(413, "Request Entity Too Large", breach=True)
    if kind != "photo":
        return
    if size > world.photo_limit:
        raise bad(
            f"file of size {size} bytes is too big for a photo; the maximum size is {world.photo_limit} bytes"
        )
    dimensions = size_of(upload.content)
    if dimensions is None:
        raise bad("IMAGE_PROCESS_FAILED")
    width, height = dimensions
    # sendPhoto: width and height at most 10000 in total, their ratio at most 20.
    if width + height > 10_000 or max(width, height) > 20 * min(width, height):
        raise bad("PHOTO_INVALID_DIMENSIONS")


def _describe(kind: str, file_id: str, unique_id: str, content: bytes, name: str) -> JsonDict:
    about: JsonDict = {"file_id": file_id, "file_unique_id": unique_id, "file_size": len(content)}
    if kind == "photo":
        width, height = size_of(content) or (1, 1)
        return {"photo": [{**about, "width": width, "height": height}]}
    guessed = mimetypes.guess_type(name)[0] or "application/octet-stream"
    return {"document": {**about, "file_name": name, "mime_type": guessed}}


def _send_media(world: World, params: Params, kind: str) -> JsonDict:
    chat = writable_chat(world, params)
    caption, html = caption_content(world, params.values)
    content, file_id = media_content(world, kind, params.text(kind), params.upload(kind))
    return deliver(world, chat, params, {**content, **caption}, html, file_id).data


def send_photo(world: World, params: Params) -> JsonDict:
    """sendPhoto."""
    return _send_media(world, params, "photo")


def send_document(world: World, params: Params) -> JsonDict:
    """sendDocument."""
    return _send_media(world, params, "document")


def media_item(world: World, params: Params, item: JsonDict) -> tuple[JsonDict, str, str]:
    """The fields, the source of the caption and the file id of one InputMedia."""
    kind = str(item.get("type"))
    if kind not in {"photo", "document"}:
        raise bad(f"this server knows pictures and documents, not {kind}")
    pointer = str(item.get("media", ""))
    upload = params.uploads.get(pointer.removeprefix("attach://")) if "attach://" in pointer else None
    caption, html = caption_content(world, item)
    content, file_id = media_content(world, kind, pointer, upload)
    return {**content, **caption}, html, file_id


def send_media_group(world: World, params: Params) -> list[JsonDict]:
    """sendMediaGroup."""
    chat = writable_chat(world, params)
    items = params.json("media") or []
    if not MediaGroupLimit.MIN_MEDIA_LENGTH <= len(items) <= MediaGroupLimit.MAX_MEDIA_LENGTH:
        raise bad("wrong number of messages in the album: 2 to 10 are allowed")  # wording from memory
    if len({item.get("type") for item in items}) > 1 and any(
        item.get("type") == "document" for item in items
    ):
        raise bad("Can't use the media of the specified type in the album")
    group = {"media_group_id": str(world.number("album"))}
    read = [media_item(world, params, item) for item in items]
    return [
        deliver(world, chat, params, {**content, **group}, html, file_id).data
        for content, html, file_id in read
    ]


def send_chat_action(world: World, params: Params) -> bool:
    """sendChatAction."""
    chat = writable_chat(world, params)
    topic_of(chat, params, general_may_be_named=True)
    action = params.text("action")
    if action not in set(ChatAction):
        raise bad("wrong parameter action in request")
    world.happened(Event("action", chat.id, detail={"action": str(action)}))
    return True


METHODS: dict[str, Any] = {
    "sendmessage": send_message,
    "sendphoto": send_photo,
    "senddocument": send_document,
    "sendmediagroup": send_media_group,
    "sendchataction": send_chat_action,
}
