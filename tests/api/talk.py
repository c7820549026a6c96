"""Delivery of a chat's messages to the bot, and their description by Telegram."""

from __future__ import annotations

import re

from tests.api.chats import member_json
from tests.api.markup import utf16_length
from tests.api.refusals import JsonDict
from tests.api.world import BOT_USERNAME, Chat, Message, User, World

_COMMAND = re.compile(r"(?<![\w/<])/([A-Za-z0-9_]{1,64})(?:@([A-Za-z0-9_]{3,32}))?(?!\w)")
_MENTION = re.compile(rf"@{BOT_USERNAME}\b", re.IGNORECASE)


def command_entities(text: str) -> list[JsonDict]:
    """The bot_command entities that a phone detects in a text."""
    return [
        {
            "type": "bot_command",
            "offset": utf16_length(text[: found.start()]),
            "length": len(found.group()),
        }
        for found in _COMMAND.finditer(text)
    ]


def reaches_bot(chat: Chat, text: str, reply: Message | None) -> tuple[bool, bool]:
    """Whether a message is delivered to the bot, and whether it counts as addressed to it.

    With privacy mode on a bot gets commands with its name, bare commands if it was the last bot to write,
    replies to its messages or to messages addressed to it, and mentions ("Privacy mode" in the Bot API's
    introduction; mentions as BotFather words it).
    """
    if chat.kind == "private":
        return True, True
    if chat.bot_status not in {"member", "administrator"}:
        return False, False
    meant = _names_bot(chat, text) or _MENTION.search(text) is not None or bool(reply and reply.meant_for_bot)
    return meant or not chat.privacy or chat.bot_status == "administrator", meant


def _names_bot(chat: Chat, text: str) -> bool:
    for found in _COMMAND.finditer(text):
        name = found.group(2)
        if name is None and chat.bot_spoke_last:
            return True
        if name is not None and name.lower() == BOT_USERNAME:
            return True
    return False


def bot_standing(world: World, chat: Chat, by: User, old: str, new: str) -> JsonDict:
    """The ChatMemberUpdated object of a my_chat_member update: the bot went from `old` to `new`."""
    return {
        "chat": chat.as_json(),
        "from": by.as_json(),
        "date": int(world.clock()),
        "old_chat_member": member_json(world, chat, world.bot_id, old),
        "new_chat_member": member_json(world, chat, world.bot_id, new),
    }
