"""Access checks for chats, topics and messages, with Telegram's refusals."""

from __future__ import annotations

from tests.api.params import Params
from tests.api.refusals import JsonDict, bad, forbidden, migrated, stale
from tests.api.world import Chat, Message, World


def known_chat(world: World, params: Params) -> Chat:
    """The chat named in the request, whether or not the bot may write there."""
    given = params.text("chat_id")
    if not given:
        raise bad("chat_id is empty")
    chat_id = params.integer("chat_id")
    chat = world.chats.get(chat_id) if chat_id is not None else None
    if chat is None:
        raise stale("chat not found")
    return chat


def writable_chat(world: World, params: Params) -> Chat:
    """The chat named in the request; refused if the bot was removed or never added."""
    chat = known_chat(world, params)
    if chat.kind == "private":
        if chat.blocked:
            raise forbidden("bot was blocked by the user")
        if not chat.started:
            if any(chat.id in group.members for group in world.chats.values()):
                raise forbidden("bot can't initiate conversation with a user")
            raise stale("chat not found")
        return chat
    if chat.migrated_to is not None:
        raise migrated(chat.migrated_to)
    if chat.bot_status == "kicked":
        raise forbidden(f"bot was kicked from the {chat.kind} chat")
    if chat.bot_status == "left":
        raise forbidden(f"bot is not a member of the {chat.kind} chat")
    return chat


def topic_of(chat: Chat, params: Params, *, general_may_be_named: bool = False) -> int | None:
    """The topic named in the request; only forums have topics, and General must not be named."""
    thread = params.integer("message_thread_id")
    if thread is None or thread == 0:
        return None
    if not chat.forum:
        raise bad("message thread not found")
    if thread == 1:
        if general_may_be_named:
            return None
        raise bad("message thread not found")
    if thread not in chat.topics:
        raise stale("message thread not found")
    if thread in chat.closed_topics and chat.bot_status != "administrator":
        raise stale("TOPIC_CLOSED")
    return thread


def existing(chat: Chat, message_id: int | None, what: str) -> Message:
    """An existing message; `what` is Telegram's word for it in the refusal."""
    if message_id is None:
        raise bad("message identifier is not specified")
    message = chat.messages.get(message_id)
    if message is None or message.deleted:
        raise stale(f"{what} not found")
    return message


def replied_to(world: World, chat: Chat, params: Params) -> Message | None:
    """The message that the request replies to, if it still exists or must exist."""
    wanted: JsonDict = params.json("reply_parameters") or {}
    if not wanted:
        message_id = params.integer("reply_to_message_id")
        if not message_id:
            return None
        wanted = {
            "message_id": message_id,
            "allow_sending_without_reply": params.flag("allow_sending_without_reply"),
        }
    place = world.chats.get(int(wanted.get("chat_id") or chat.id), chat)
    message = place.messages.get(int(wanted["message_id"]))
    if message is None or message.deleted:
        if wanted.get("allow_sending_without_reply"):
            return None
        raise stale("message to be replied not found")
    return message
