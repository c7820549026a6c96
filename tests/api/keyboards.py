"""Keyboards of messages: Telegram's limits, and their display to a person."""

from __future__ import annotations

import json
import re
from typing import Any

from telegram.constants import InlineKeyboardButtonLimit, InlineKeyboardMarkupLimit, MessageLimit

from tests.api.params import Params
from tests.api.refusals import JsonDict, bad
from tests.api.seen import Button
from tests.api.world import BOT_USERNAME, World

# From public reports of "reply markup is too long" with fewer than 100 buttons; not documented.
_MARKUP_BYTES = 10_240
_LINK_TO_BOT = re.compile(rf"(?:t\.me/|domain=){BOT_USERNAME}[?&]start(?:group)?=([^&\s]*)", re.IGNORECASE)
_PAYLOAD = re.compile(rf"[A-Za-z0-9_-]{{1,{int(MessageLimit.DEEP_LINK_LENGTH)}}}")


def read_markup(world: World, params: Params, *, inline_only: bool = False) -> JsonDict | None:
    """The checked reply_markup of the request, None if there is none or an empty one."""
    markup = params.json("reply_markup")
    if markup is None:
        return None
    if not isinstance(markup, dict):
        raise bad("object expected as reply markup")
    return checked(world, markup, inline_only=inline_only)


def checked(world: World, markup: JsonDict, *, inline_only: bool = False) -> JsonDict | None:
    """The same for a markup that is already JSON."""
    if "inline_keyboard" in markup:
        rows = markup["inline_keyboard"]
        if not isinstance(rows, list) or not all(isinstance(row, list) for row in rows):
            raise bad('field "inline_keyboard" of the InlineKeyboardMarkup must be an Array of Arrays')
        _check_inline(world, rows)
        rows = [row for row in rows if row]
        return {"inline_keyboard": rows} if rows else None
    if inline_only:
        raise bad("inline keyboard expected")
    for row in markup.get("keyboard", ()):
        for button in row:
            if not _label(button):
                raise bad("can't parse keyboard button: text must be non-empty")
    return markup


def _check_inline(world: World, rows: list[list[Any]]) -> None:
    for row in rows:
        if len(row) > InlineKeyboardMarkupLimit.BUTTONS_PER_ROW:
            world.violate(f"{len(row)} buttons in one row: a phone shows at most 8")
        for button in row:
            _check_button(world, button)
    if (
        sum(map(len, rows)) > InlineKeyboardMarkupLimit.TOTAL_BUTTON_NUMBER
        or len(json.dumps(rows)) > _MARKUP_BYTES
    ):
        raise bad("reply markup is too long")


def _check_button(world: World, button: Any) -> None:
    if not isinstance(button, dict) or not isinstance(button.get("text"), str):
        raise bad("can't parse InlineKeyboardButton: Can't find field \"text\"")
    if not button["text"].strip():
        raise bad("BUTTON_TEXT_INVALID")  # the wording is from memory
    data = button.get("callback_data")
    if data and len(data.encode()) > InlineKeyboardButtonLimit.MAX_CALLBACK_DATA:
        raise bad("BUTTON_DATA_INVALID")
    url = button.get("url")
    if url is not None:
        if not re.match(r"(https?|tg)://\S+\Z", url):
            raise bad("BUTTON_URL_INVALID")
        check_link(world, url)
    others = button.keys() - {"text", "callback_data", "style", "icon_custom_emoji_id"}
    if not data and not others:
        # An empty callback_data counts as missing.
        raise bad("can't parse InlineKeyboardButton: Text buttons are not allowed in the inline keyboard")


def check_link(world: World, url: str) -> None:
    """Telegram accepts a bad start payload, but the phone that follows the link drops it."""
    found = _LINK_TO_BOT.search(url)
    if found and not _PAYLOAD.fullmatch(found.group(1)):
        world.violate(f"deep link with a payload that no phone passes on: {found.group(1)!r}")


def payload_is_valid(payload: str) -> bool:
    """Whether a phone would pass on this start payload: 1 to 64 of A-Z, a-z, 0-9, _ and -."""
    return _PAYLOAD.fullmatch(payload) is not None


def payload_of(url: str) -> str | None:
    """The start payload of a link to the bot, None for any other link."""
    found = _LINK_TO_BOT.search(url)
    return found.group(1) if found else None


def button_rows(markup: JsonDict | None) -> tuple[tuple[Button, ...], ...]:
    """The buttons as shown to a person, of an inline or a reply keyboard."""
    if not markup:
        return ()
    if "inline_keyboard" in markup:
        return tuple(
            tuple(Button(one["text"], one.get("callback_data"), one.get("url")) for one in row)
            for row in markup["inline_keyboard"]
        )
    return tuple(tuple(Button(_label(one)) for one in row) for row in markup.get("keyboard", ()))


def _label(button: Any) -> str:
    return str(button.get("text", "") if isinstance(button, dict) else button)
