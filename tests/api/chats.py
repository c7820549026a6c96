"""Chats, their members, and file downloads."""

from __future__ import annotations

from typing import Any

from tests.api.access import known_chat, writable_chat
from tests.api.params import Params
from tests.api.refusals import JsonDict, bad, stale
from tests.api.world import Chat, Event, World

_RIGHTS = (
    "can_manage_chat",
    "can_delete_messages",
    "can_manage_video_chats",
    "can_restrict_members",
    "can_change_info",
    "can_invite_users",
    "can_post_stories",
    "can_edit_stories",
    "can_delete_stories",
)


def member_json(world: World, chat: Chat, user_id: int, status: str | None = None) -> JsonDict:
    """The ChatMember object of a person or of the bot, with the current or the given `status`."""
    if status is None:
        status = chat.bot_status if user_id == world.bot_id else chat.members.get(user_id, "left")
    found: JsonDict = {"user": world.user_json(user_id), "status": status}
    if status == "creator":
        found["is_anonymous"] = False
    elif status == "administrator":
        found |= dict.fromkeys(_RIGHTS, True)
        found |= {"can_be_edited": False, "is_anonymous": False, "can_promote_members": False}
    elif status == "kicked":
        found["until_date"] = 0
    return found


def get_chat(world: World, params: Params) -> JsonDict:
    """getChat."""
    chat = known_chat(world, params)
    if chat.kind == "private" and not chat.started:
        raise stale("chat not found")
    gifts = (
        "unlimited_gifts",
        "limited_gifts",
        "unique_gifts",
        "premium_subscription",
        "gifts_from_channels",
    )
    return {
        **chat.as_json(),
        "accent_color_id": 0,
        "max_reaction_count": 11,
        "accepted_gift_types": dict.fromkeys(gifts, False),
    }


def get_chat_member(world: World, params: Params) -> JsonDict:
    """getChatMember."""
    chat = writable_chat(world, params)
    user_id = params.integer("user_id")
    if user_id is None or (user_id != world.bot_id and user_id not in world.users):
        raise bad("invalid user_id specified")
    return member_json(world, chat, user_id)


def get_chat_administrators(world: World, params: Params) -> list[JsonDict]:
    """getChatAdministrators."""
    chat = writable_chat(world, params)
    if chat.kind == "private":
        raise bad("there are no administrators in the private chat")
    leading = [user for user, status in chat.members.items() if status in {"creator", "administrator"}]
    if chat.bot_status == "administrator":
        leading.append(world.bot_id)
    return [member_json(world, chat, user) for user in leading]


def leave_chat(world: World, params: Params) -> bool:
    """leaveChat."""
    chat = writable_chat(world, params)
    if chat.kind == "private":
        raise bad("chat member status can't be changed in private chats")
    chat.bot_status = "left"
    world.note(chat, "bot", "(left)")
    world.happened(Event("left", chat.id))
    return True


def get_file(world: World, params: Params) -> JsonDict:
    """getFile."""
    file_id = params.text("file_id") or ""
    stored = world.files.get(file_id)
    if stored is None:
        raise bad("invalid file_id")
    if len(stored.content) > world.download_limit:
        raise stale("file is too big")
    return {
        "file_id": file_id,
        "file_unique_id": f"unique-{file_id.rpartition('-')[2]}",
        "file_size": len(stored.content),
        "file_path": stored.path,
    }


METHODS: dict[str, Any] = {
    "getchat": get_chat,
    "getchatmember": get_chat_member,
    "getchatadministrators": get_chat_administrators,
    "leavechat": leave_chat,
    "getfile": get_file,
}
