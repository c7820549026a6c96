"""Tests of the phones, with a small but complete bot."""

from __future__ import annotations

import asyncio
from typing import Any

import pytest
from telegram import (
    Bot,
    ForceReply,
    InlineKeyboardButton,
    InlineKeyboardMarkup,
    InlineQueryResultArticle,
    InputTextMessageContent,
    ReplyKeyboardMarkup,
    Update,
)
from telegram.ext import (
    BaseHandler,
    CallbackQueryHandler,
    CommandHandler,
    InlineQueryHandler,
    MessageHandler,
    filters,
)

from tests.api import Button, Person, Server
from tests.api.conftest import running

_UNDO = InlineKeyboardMarkup(
    [
        [
            InlineKeyboardButton("Undo", callback_data="undo"),
            InlineKeyboardButton("More", callback_data="more"),
        ],
        [InlineKeyboardButton("Join", url="https://t.me/peel_ledger_test_bot?start=team-7")],
    ]
)


async def _start(update: Update, context: Any) -> None:
    assert update.message
    await update.message.reply_text(f"Welcome {' '.join(context.args)}".strip())


async def _text(update: Update, _context: Any) -> None:
    assert update.effective_message
    if update.edited_message:
        await update.edited_message.reply_text("You changed it.")
    elif update.effective_message.text == "ask":
        await update.effective_message.reply_text("How many?", reply_markup=ForceReply(selective=True))
    elif update.effective_message.text == "keys":
        await update.effective_message.reply_text(
            "Pick", reply_markup=ReplyKeyboardMarkup([["ask", "waste"]])
        )
    elif update.effective_message.text == "twice":
        await update.effective_message.reply_text("one")
        await update.effective_message.reply_text("two", disable_notification=True)
    elif update.effective_message.text != "hush":
        await update.effective_message.reply_html(
            f"Logged <b>{update.effective_message.text}</b>", reply_markup=_UNDO
        )


async def _tap(update: Update, _context: Any) -> None:
    query = update.callback_query
    assert query
    if query.data == "undo":
        await query.answer()
        await query.edit_message_text("Undone")
    else:
        await query.answer("Nothing more", show_alert=True)


async def _photo(update: Update, _context: Any) -> None:
    assert update.message
    file = await update.message.photo[-1].get_file()
    size = len(await file.download_as_bytearray())
    await update.message.reply_photo(
        b"\xff\xd8" + bytes.fromhex("ffc0000b080010002001011100ffd9"), f"{size} bytes"
    )


async def _inline(update: Update, _context: Any) -> None:
    assert update.inline_query
    text = update.inline_query.query.upper()
    await update.inline_query.answer(
        [InlineQueryResultArticle("1", text, InputTextMessageContent(text))], cache_time=5, is_personal=True
    )


def _handlers() -> list[BaseHandler[Any, Any, Any]]:
    return [
        CommandHandler("start", _start),
        MessageHandler(filters.PHOTO, _photo),
        MessageHandler(filters.TEXT, _text),
        CallbackQueryHandler(_tap),
        InlineQueryHandler(_inline),
    ]


async def test_a_talk_as_its_transcript(api: Server) -> None:
    ana = api.person("Ana")
    async with running(api, *_handlers()):
        assert (await ana.opens_link("team-7")).text == "Welcome team-7"
        logged = await ana.says("6 oranges")
        assert (logged.last.text, logged.last.html) == ("Logged 6 oranges", "Logged <b>6 oranges</b>")
        assert logged.last.buttons[0][0] == Button("Undo", "undo")
        more = await ana.taps("More")
        assert (more.toast, more.alert, len(more)) == ("Nothing more", True, 0)
        undone = await ana.taps("undo")
        assert (undone.last.text, undone.last.edited, undone.labels) == ("Undone", True, [])
        changed = await ana.edits(logged, "7 oranges")
        assert changed.text == "You changed it."
        picture = await ana.sends_photo("rested")
        assert picture.last.photo
    assert api.transcript(ana) == (
        "Ana: /start team-7\n"
        "bot: Welcome team-7\n"
        "Ana: 6 oranges\n"
        "bot: Logged 6 oranges\n"
        "    [Undo] [More]\n"
        "    [Join]\n"
        "Ana taps: [More]\n"
        "bot alert: Nothing more\n"
        "Ana taps: [Undo]\n"
        "bot (edited): Undone\n"
        "Ana (edited): 7 oranges\n"
        "bot: You changed it.\n"
        "Ana: <photo> rested\n"
        "bot: <photo, 17 bytes>\n"
        f"    {picture.last.text}"
    )


async def test_several_messages_are_all_awaited(api: Server) -> None:
    ana = api.person()
    async with running(api, *_handlers()):
        followed = await ana.says("twice", expects=2)
        assert [(seen.text, seen.silent) for seen in followed] == [("one", False), ("two", True)]


async def test_silence_and_missing_replies_are_told_apart(api: Server) -> None:
    ana = api.person()
    async with running(api, *_handlers()):
        assert len(await ana.says("hush", expects=0)) == 0
        with pytest.raises(AssertionError, match="silence was expected"):
            await ana.says("6 oranges", expects=0)
        with pytest.raises(AssertionError, match=r"nothing within 0\.1 s") as raised:
            await ana.says("hush", within=0.1)
        assert "Ana: hush" in str(raised.value)
        with pytest.raises(AssertionError, match="only 1 of 2"):
            await ana.says("6 oranges", expects=2, within=0.5)


async def test_nobody_at_the_other_end(api: Server) -> None:
    ana = api.person()
    with pytest.raises(AssertionError, match="nothing within"):
        await ana.says("hello", within=0.05)
    with pytest.raises(AssertionError, match="has not confirmed 1 updates"):
        await api.wait_quiet(within=0.05)


async def test_the_idle_check_ends_the_wait_exactly(api: Server) -> None:
    """A bot that computes without requests is waited for, one that has finished is not."""
    ana = api.person()
    busy = False

    async def think(update: Update, _context: Any) -> None:
        nonlocal busy
        assert update.message
        busy = True
        await update.message.reply_text("first")
        await asyncio.sleep(0.2)  # longer than the server's default wait
        await update.message.reply_text("second")
        busy = False

    async with running(api, MessageHandler(filters.Regex("think"), think)):
        api.idle = lambda: not busy
        assert len(await ana.says("think")) == 2
        began = asyncio.get_running_loop().time()
        with pytest.raises(AssertionError, match="nothing"):
            await ana.says("no handler for this")
        assert asyncio.get_running_loop().time() - began < 1


async def test_reply_keyboards_and_links_are_tapped_as_a_phone_does(api: Server) -> None:
    ana = api.person()
    async with running(api, *_handlers()):
        await ana.says("keys")
        assert (await ana.taps("ask")).text == "How many?"
        await ana.says("6 limes")
        assert (await ana.taps("Join")).text == "Welcome team-7"
        with pytest.raises(AssertionError, match=r"no button 'Redo', only \['Undo', 'More', 'Join'\]"):
            await ana.taps("Redo")
        with pytest.raises(AssertionError, match="drops this start payload"):
            await ana.opens_link("not.allowed")


async def test_a_lagging_phone_taps_a_button_that_is_gone(api: Server) -> None:
    ana = api.person()
    async with running(api, *_handlers()):
        seen = (await ana.says("6 limes")).last
        await ana.taps("Undo", seen)
        with pytest.raises(AssertionError, match="no message with buttons"):
            await ana.taps("More")
        assert (await ana.taps("More", seen)).toast == "Nothing more"


async def test_inline_queries(api: Server) -> None:
    ana = api.person()
    async with running(api, *_handlers()):
        answer = await ana.types_inline("spray")
        assert (answer.titles, answer.cache_time, answer.is_personal) == (["SPRAY"], 5, True)


async def test_blocking(api: Server, outside_connections: list[str]) -> None:
    ana = api.person()
    seen: list[str] = []

    class Standing(BaseHandler[Update, Any, Any]):
        def check_update(self, update: object) -> bool:
            return isinstance(update, Update) and update.my_chat_member is not None

    async def standing(update: Update, _context: Any) -> None:
        assert update.my_chat_member
        seen.append(update.my_chat_member.new_chat_member.status)

    async with running(api, *_handlers(), Standing(standing)):
        await ana.says("hello")
        ana.blocks_bot()
        await api.wait_quiet()
        with pytest.raises(AssertionError, match="has blocked the bot"):
            await ana.says("hello?")
        await ana.opens_link("back")  # a phone unblocks with Start
        assert seen == ["kicked", "member"]
    assert outside_connections == []


async def test_a_group_with_a_bot_in_it(api: Server) -> None:
    ana, ben = api.person("Ana"), api.person("Ben")
    group = api.group("Bar", [ana, ben])
    async with running(api, *_handlers()):
        asked = await ana.says("ask@peel_ledger_test_bot @peel_ledger_test_bot", chat=group)
        assert asked.labels == ["Undo", "More", "Join"]
        undone = await ben.taps("Undo", chat=group)
        assert undone.last.chat_id == group.id
        assert undone.text == "Undone"
        await ben.says("chatter", chat=group, expects=0)
        assert (await ben.says("6", chat=group, reply_to=undone.last)).text == "Logged 6"
    assert api.messages(ana) == []


async def test_commands_carry_their_entities(bot: Bot, ana: Person) -> None:
    ana.writes("🍊 /waste@peel_ledger_test_bot 6 and 1/2")
    (update,) = await bot.get_updates()
    assert update.message
    assert update.message.parse_entities() == {
        update.message.entities[0]: "/waste@peel_ledger_test_bot",
    }


async def test_documents_and_anything_else(server: Server, bot: Bot, ana: Person) -> None:
    await ana.sends_document("book.csv", b"a,b", "import this", wait=False)
    ana.sends({"location": {"latitude": 1.0, "longitude": 2.0}}, shown="(a place)")
    document, place = (update.message for update in await bot.get_updates())
    assert document
    assert place
    assert document.document
    file = await document.document.get_file()
    assert bytes(await file.download_as_bytearray()) == b"a,b"
    assert place.location
    with pytest.raises(ValueError, match="1 to 4096"):
        ana.writes("x" * 4097)


async def test_what_no_phone_can_do(server: Server, bot: Bot, ana: Person) -> None:
    ben = server.person("Ben")
    group = server.group("Bar", [ana, ben])
    said = ana.writes("mine", chat=group)
    with pytest.raises(AssertionError, match="Ben cannot edit"):
        await ben.edits(said, "no", chat=group)
    with pytest.raises(AssertionError, match="Bar has no topic 7"):
        ana.writes("x", chat=group, thread=7)
    with pytest.raises(AssertionError, match="Bar has no topics"):
        group.opens_topic("Waste")
    away = InlineKeyboardMarkup([[InlineKeyboardButton("Away", url="https://example.org/")]])
    await bot.send_message(ana.id, "x", reply_markup=away)
    with pytest.raises(AssertionError, match=r"\[Away\] leaves Telegram for https://example\.org/"):
        await ana.taps("Away")


async def test_a_bot_that_never_finishes_is_reported(server: Server) -> None:
    server.idle = lambda: False
    with pytest.raises(AssertionError, match="still busy"):
        await server.wait_quiet(within=0.05)
