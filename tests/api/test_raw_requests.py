"""Tests of requests in a shape that the library never makes, sent as plain JSON."""

from __future__ import annotations

from typing import Any

import httpx
import pytest

from tests.api import Person, Server

_RAW: list[tuple[str, dict[str, Any], str]] = [
    ("sendMessage", {"text": "x"}, "chat_id is empty"),
    ("sendMessage", {"chat_id": "ANA", "text": "x", "reply_markup": [1]}, "object expected as reply markup"),
    (
        "sendMessage",
        {"chat_id": "ANA", "text": "x", "reply_markup": {"inline_keyboard": [{"text": "a"}]}},
        'field "inline_keyboard" of the InlineKeyboardMarkup must be an Array of Arrays',
    ),
    (
        "sendMessage",
        {"chat_id": "ANA", "text": "x", "reply_markup": {"inline_keyboard": [[{"callback_data": "a"}]]}},
        "can't parse InlineKeyboardButton: Can't find field \"text\"",
    ),
    (
        "sendMessage",
        {"chat_id": "ANA", "text": "x", "reply_markup": '{"inline_keyboard"'},
        "can't parse reply_markup JSON object",
    ),
    ("sendPhoto", {"chat_id": "ANA"}, "there is no photo in the request"),
    ("sendPhoto", {"chat_id": "ANA", "photo": "FILE"}, "can't use file of type Document as Photo"),
    (
        "sendMediaGroup",
        {"chat_id": "ANA", "media": [{"type": "audio", "media": "a"}] * 2},
        "this server knows pictures and documents, not audio",
    ),
    ("editMessageText", {"inline_message_id": "1", "text": "x"}, "MESSAGE_ID_INVALID"),
    ("editMessageText", {"chat_id": "ANA", "text": "x"}, "message identifier is not specified"),
    (
        "setMessageReaction",
        {"chat_id": "ANA", "message_id": 1, "reaction": [{"type": "emoji", "emoji": "👍"}] * 2},
        "REACTIONS_TOO_MANY",
    ),
    (
        "answerInlineQuery",
        {"inline_query_id": "q", "results": [], "next_offset": "x" * 65},
        "NEXT_OFFSET_INVALID",
    ),
    (
        "answerInlineQuery",
        {"inline_query_id": "q", "results": [{"type": "article", "id": "1", "title": "t"}]},
        "can't parse inline query result: message content is not specified",
    ),
    (
        "setMyCommands",
        {"commands": [], "scope": {"type": "everybody"}},
        "can't parse BotCommandScope: unsupported type specified",
    ),
    ("setMyCommands", {"commands": [], "scope": {"type": "chat", "chat_id": 5}}, "chat not found"),
    ("getChat", {"chat_id": "BEN"}, "chat not found"),
    ("getChatAdministrators", {"chat_id": "ANA"}, "there are no administrators in the private chat"),
    ("leaveChat", {"chat_id": "ANA"}, "chat member status can't be changed in private chats"),
]


@pytest.mark.parametrize(("method", "given", "sentence"), _RAW)
async def test_refusals(
    server: Server, ana: Person, method: str, given: dict[str, Any], sentence: str
) -> None:
    ben = server.person("Ben")
    file_id, _ = server.world.store_file(b"x", "document", "a.csv")
    stand_ins = {"ANA": ana.id, "BEN": ben.id, "FILE": file_id}
    filled = {
        name: stand_ins.get(value, value) if isinstance(value, str) else value
        for name, value in given.items()
    }
    async with httpx.AsyncClient(trust_env=False) as client:
        answer = await client.post(f"{server.base_url}{server.token}/{method}", json=filled)
    assert answer.status_code == 400
    assert answer.json()["description"] == f"Bad Request: {sentence}"
    assert server.messages(ana) == []


async def test_parameters_of_the_wrong_shape_are_noted(server: Server, ana: Person) -> None:
    given = {"chat_id": ana.id, "text": "x", "reply_parameters": {"message_id": "first"}}
    async with httpx.AsyncClient(trust_env=False) as client:
        answer = await client.post(f"{server.base_url}{server.token}/sendMessage", json=given)
    assert answer.status_code == 400
    assert len(server.violations) == 1
