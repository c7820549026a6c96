"""Answer callback queries and inline queries."""

from __future__ import annotations

from typing import Any

from telegram.constants import (
    CallbackQueryLimit,
    InlineQueryLimit,
    InlineQueryResultLimit,
    InlineQueryResultsButtonLimit,
)

from tests.api.keyboards import checked
from tests.api.params import Params
from tests.api.refusals import JsonDict, bad, stale
from tests.api.sending import text_content
from tests.api.world import Event, Query, World

_TOO_OLD = "query is too old and response timeout expired or query ID is invalid"


def _open_query(world: World, query_id: str | None) -> Query:
    query = world.queries.get(query_id or "")
    if query is None or query.expired or world.clock() - query.made_at > world.query_lifetime:
        raise stale(_TOO_OLD)
    if query.answered:
        world.violate(f"{query.what} answered twice")
    return query


def answer_callback_query(world: World, params: Params) -> bool:
    """answerCallbackQuery."""
    text = params.text("text") or ""
    if len(text) > CallbackQueryLimit.ANSWER_CALLBACK_QUERY_TEXT_LENGTH:
        raise bad("MESSAGE_TOO_LONG")
    query = _open_query(world, params.text("callback_query_id"))
    query.answered = True
    alert = params.flag("show_alert")
    if text:
        world.note(world.chats[query.chat_id], "bot alert" if alert else "bot toast", text)
    world.happened(Event("toast", query.chat_id, detail={"text": text, "alert": alert, "query": query.id}))
    return True


def answer_inline_query(world: World, params: Params) -> bool:
    """answerInlineQuery."""
    results: list[JsonDict] = params.json("results") or []
    if len(results) > InlineQueryLimit.RESULTS:
        raise bad("RESULTS_TOO_MUCH")
    if len(params.text("next_offset") or "") > InlineQueryLimit.MAX_OFFSET_LENGTH:
        raise bad("NEXT_OFFSET_INVALID")
    _check_button(params.json("button"))
    seen: set[str] = set()
    for result in results:
        _check_result(world, result, seen)
    query = _open_query(world, params.text("inline_query_id"))
    query.answered = True
    detail = {
        "query": query.id,
        "results": results,
        "cache_time": params.integer("cache_time", 300),
        "is_personal": params.flag("is_personal"),
        "next_offset": params.text("next_offset") or "",
    }
    world.happened(Event("inline", query.chat_id, detail=detail))
    return True


def _check_button(button: JsonDict | None) -> None:
    start = (button or {}).get("start_parameter")
    if start is not None and not (
        InlineQueryResultsButtonLimit.MIN_START_PARAMETER_LENGTH
        <= len(start)
        <= InlineQueryResultsButtonLimit.MAX_START_PARAMETER_LENGTH
    ):
        raise bad("START_PARAM_INVALID")


def _check_result(world: World, result: JsonDict, seen: set[str]) -> None:
    name = str(result.get("id") or "")
    if not InlineQueryResultLimit.MIN_ID_LENGTH <= len(name.encode()) <= InlineQueryResultLimit.MAX_ID_LENGTH:
        raise bad("RESULT_ID_INVALID")
    if name in seen:
        raise bad("RESULT_ID_DUPLICATE")
    seen.add(name)
    content = result.get("input_message_content")
    if result.get("type") == "article":
        if not result.get("title"):
            raise bad("can't parse inline query result: Can't find field \"title\"")
        if not content:
            raise bad("can't parse inline query result: message content is not specified")
    if isinstance(content, dict) and "message_text" in content:
        text_content(world, {"text": content["message_text"], "parse_mode": content.get("parse_mode")})
    if result.get("reply_markup"):
        checked(world, result["reply_markup"], inline_only=True)


METHODS: dict[str, Any] = {
    "answercallbackquery": answer_callback_query,
    "answerinlinequery": answer_inline_query,
}
