"""The bot's profile: commands per scope and language, name, descriptions."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from typing import Any

from telegram.constants import BotCommandLimit, BotDescriptionLimit, BotNameLimit

from tests.api.params import Params
from tests.api.refusals import JsonDict, bad
from tests.api.world import BOT_NAME, Chat, User, World

_COMMAND = re.compile(rf"[a-z0-9_]{{{int(BotCommandLimit.MIN_COMMAND)},{int(BotCommandLimit.MAX_COMMAND)}}}")


def get_me(world: World, _params: Params) -> JsonDict:
    """getMe."""
    return {
        **world.bot_user(),
        "can_join_groups": True,
        "can_read_all_group_messages": False,
        "supports_inline_queries": True,
        "can_connect_to_business": False,
        "has_main_web_app": False,
    }


def _scope(world: World, params: Params) -> str:
    scope: JsonDict = params.json("scope") or {"type": "default"}
    kind = str(scope.get("type"))
    if kind in {"default", "all_private_chats", "all_group_chats", "all_chat_administrators"}:
        return kind
    if kind not in {"chat", "chat_administrators", "chat_member"}:
        raise bad("can't parse BotCommandScope: unsupported type specified")
    chat_id = int(scope.get("chat_id") or 0)
    if chat_id not in world.chats:
        raise bad("chat not found")
    return f"{kind}:{chat_id}" + (f":{scope['user_id']}" if kind == "chat_member" else "")


def _language(params: Params) -> str:
    code = params.text("language_code") or ""
    if code and not re.fullmatch(r"[a-z]{2}", code):
        raise bad("invalid language code specified")
    return code


def set_my_commands(world: World, params: Params) -> bool:
    """setMyCommands."""
    commands: list[JsonDict] = params.json("commands") or []
    if len(commands) > BotCommandLimit.MAX_COMMAND_NUMBER:
        raise bad("BOT_COMMANDS_TOO_MUCH")
    for command in commands:
        if not _COMMAND.fullmatch(str(command.get("command", ""))):
            raise bad("BOT_COMMAND_INVALID")
        description = str(command.get("description", "")).strip()
        if not description:
            raise bad("command description must be non-empty")
        if len(description) > BotCommandLimit.MAX_DESCRIPTION:
            raise bad("BOT_COMMAND_DESCRIPTION_INVALID")
    names = [command["command"] for command in commands]
    if len(set(names)) < len(names):
        world.violate(f"the same command twice in one menu: {sorted(names)}")
    world.commands[_scope(world, params), _language(params)] = commands
    return True


def get_my_commands(world: World, params: Params) -> list[JsonDict]:
    """getMyCommands: exactly this scope and language, without fallback."""
    return world.commands.get((_scope(world, params), _language(params)), [])


def delete_my_commands(world: World, params: Params) -> bool:
    """deleteMyCommands."""
    world.commands.pop((_scope(world, params), _language(params)), None)
    return True


def menu_for(world: World, user: User, chat: Chat) -> list[JsonDict]:
    """The commands a phone offers to `user` in `chat`: the narrowest scope wins, then the language.

    The order is that of "Determining list of commands" in the Bot API's BotCommandScope.
    """
    language = (user.language_code or "")[:2]
    for scope in _scopes_in_order(user, chat):
        for code in (language, ""):
            if world.commands.get((scope, code)):
                return world.commands[scope, code]
    return []


def _scopes_in_order(user: User, chat: Chat) -> Iterator[str]:
    if chat.kind == "private":
        yield from (f"chat:{chat.id}", "all_private_chats", "default")
        return
    is_admin = chat.members.get(user.id) in {"creator", "administrator"}
    yield f"chat_member:{chat.id}:{user.id}"
    if is_admin:
        yield f"chat_administrators:{chat.id}"
    yield f"chat:{chat.id}"
    if is_admin:
        yield "all_chat_administrators"
    yield from ("all_group_chats", "default")


def _setter(kind: str, parameter: str, limit: int, refusal: str) -> Callable[[World, Params], bool]:
    def set_text(world: World, params: Params) -> bool:
        text = params.text(parameter) or ""
        if len(text) > limit:
            raise bad(refusal)
        world.texts[kind, _language(params)] = text
        return True

    return set_text


def _getter(kind: str, parameter: str, default: str = "") -> Callable[[World, Params], JsonDict]:
    def get_text(world: World, params: Params) -> JsonDict:
        found = world.texts.get((kind, _language(params))) or world.texts.get((kind, ""))
        return {parameter: found or default}

    return get_text


METHODS: dict[str, Any] = {
    "getme": get_me,
    "setmycommands": set_my_commands,
    "getmycommands": get_my_commands,
    "deletemycommands": delete_my_commands,
    "setmyname": _setter("name", "name", int(BotNameLimit.MAX_NAME_LENGTH), "BOT_TITLE_INVALID"),
    "getmyname": _getter("name", "name", BOT_NAME),
    "setmydescription": _setter(
        "description",
        "description",
        int(BotDescriptionLimit.MAX_DESCRIPTION_LENGTH),
        "description is too long",
    ),
    "getmydescription": _getter("description", "description"),
    "setmyshortdescription": _setter(
        "short",
        "short_description",
        int(BotDescriptionLimit.MAX_SHORT_DESCRIPTION_LENGTH),
        "short description is too long",
    ),
    "getmyshortdescription": _getter("short", "short_description"),
}
