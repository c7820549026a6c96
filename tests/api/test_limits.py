"""Tests of limits and refusals with a real Bot; each breach must be in the list of violations."""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from typing import Any

import pytest
from telegram import (
    Bot,
    ForceReply,
    InlineKeyboardButton,
    InlineKeyboardMarkup,
    InputMediaDocument,
    InputMediaPhoto,
    ReplyKeyboardMarkup,
    ReplyParameters,
)
from telegram.constants import ParseMode
from telegram.error import BadRequest, ChatMigrated, Forbidden, NetworkError, RetryAfter

from tests.api import Person, Server
from tests.api.pictures import size_of, small_png


def _keyboard(*buttons: InlineKeyboardButton) -> InlineKeyboardMarkup:
    return InlineKeyboardMarkup([[button] for button in buttons])


# -- texts ------------------------------------------------------------------------------------------


async def test_text_of_4096_characters_after_parsing(server: Server, bot: Bot, ana: Person) -> None:
    await bot.send_message(ana.id, f"<b>{'&lt;' * 4096}</b>", parse_mode=ParseMode.HTML)
    with pytest.raises(BadRequest, match="Message is too long"):
        await bot.send_message(ana.id, "x" * 4097)
    assert server.violations == ["sendmessage: Bad Request: message is too long"]


@pytest.mark.parametrize("text", ["", "  \n ", "<b></b>", "<i> </i>"])
async def test_empty_text(server: Server, bot: Bot, ana: Person, text: str) -> None:
    with pytest.raises(BadRequest, match="Message text is empty"):
        await bot.send_message(ana.id, text, parse_mode=ParseMode.HTML)
    assert len(server.violations) == 1


async def test_caption_of_1024_characters(server: Server, bot: Bot, ana: Person) -> None:
    await bot.send_photo(ana.id, small_png(), "x" * 1024)
    with pytest.raises(BadRequest, match="Message caption is too long"):
        await bot.send_photo(ana.id, small_png(), "x" * 1025)
    assert len(server.violations) == 1


async def test_unescaped_angle_bracket(server: Server, bot: Bot, ana: Person) -> None:
    with pytest.raises(BadRequest, match="Can't parse entities"):
        await bot.send_message(ana.id, "strength <40", parse_mode=ParseMode.HTML)
    await bot.send_message(ana.id, "strength <40")
    with pytest.raises(BadRequest, match="parse_mode"):
        await bot.send_message(ana.id, "*x*", parse_mode=ParseMode.MARKDOWN_V2)
    assert len(server.violations) == 2


async def test_loose_ampersand_passes_but_is_noted(server: Server, bot: Bot, ana: Person) -> None:
    await bot.send_message(ana.id, "salt & lime", parse_mode=ParseMode.HTML)
    assert "ampersand" in server.violations[0]


async def test_blank_ends_are_cut_and_entities_stay_in_place(bot: Bot, ana: Person) -> None:
    sent = await bot.send_message(ana.id, "\n 🍊 <b>ripe  </b> ", parse_mode=ParseMode.HTML)
    assert sent.text == "🍊 ripe"
    assert [(one.offset, one.length) for one in sent.entities] == [(3, 4)]
    assert sent.parse_entities() == {sent.entities[0]: "ripe"}
    kept = await bot.send_message(ana.id, "<code>  1 ml</code>", parse_mode=ParseMode.HTML)
    assert kept.text == "  1 ml"


async def test_start_payload_in_a_link(server: Server, bot: Bot, ana: Person) -> None:
    link = "https://t.me/peel_ledger_test_bot?start="
    await bot.send_message(ana.id, f'<a href="{link}{"a" * 64}">x</a>', parse_mode=ParseMode.HTML)
    assert server.violations == []
    await bot.send_message(ana.id, f'<a href="{link}{"a" * 65}">x</a>', parse_mode=ParseMode.HTML)
    await bot.send_message(ana.id, "x", reply_markup=_keyboard(InlineKeyboardButton("go", url=f"{link}a.b")))
    assert [violation.startswith("deep link") for violation in server.violations] == [True, True]


# -- keyboards --------------------------------------------------------------------------------------


async def test_buttons_within_the_limits(server: Server, bot: Bot, ana: Person) -> None:
    rows = [[InlineKeyboardButton(str(n), callback_data=f"{n}")] for n in range(100)]
    rows[0] = [InlineKeyboardButton("½", callback_data="é" * 32)]
    sent = await bot.send_message(ana.id, "x", reply_markup=InlineKeyboardMarkup(rows))
    assert sent.reply_markup
    assert len(sent.reply_markup.inline_keyboard) == 100
    assert server.violations == []


@pytest.mark.parametrize(
    ("markup", "sentence"),
    [
        (_keyboard(InlineKeyboardButton("x", callback_data="é" * 32 + "x")), "Button_data_invalid"),
        (_keyboard(InlineKeyboardButton("x", callback_data="")), "Text buttons are not allowed"),
        (_keyboard(InlineKeyboardButton("x")), "Text buttons are not allowed"),
        (_keyboard(InlineKeyboardButton(" ", callback_data="a")), "Button_text_invalid"),
        (_keyboard(InlineKeyboardButton("x", url="no link")), "Button_url_invalid"),
        (
            InlineKeyboardMarkup([[InlineKeyboardButton("x", callback_data="a")] for _ in range(101)]),
            "Reply markup is too long",
        ),
        (
            InlineKeyboardMarkup(
                [[InlineKeyboardButton("x" * 80, callback_data="a" * 60)] for _ in range(80)]
            ),
            "Reply markup is too long",
        ),
        (ReplyKeyboardMarkup([[""]]), "Can't parse keyboard button"),
    ],
)
async def test_buttons_beyond_the_limits(
    server: Server, bot: Bot, ana: Person, markup: Any, sentence: str
) -> None:
    with pytest.raises(BadRequest, match=f"(?i){sentence}"):
        await bot.send_message(ana.id, "x", reply_markup=markup)
    assert len(server.violations) == 1
    assert server.messages(ana) == []


async def test_a_row_too_wide_for_a_phone_is_noted(server: Server, bot: Bot, ana: Person) -> None:
    row = [InlineKeyboardButton(str(n), callback_data=str(n)) for n in range(9)]
    await bot.send_message(ana.id, "x", reply_markup=InlineKeyboardMarkup([row]))
    assert server.violations == ["9 buttons in one row: a phone shows at most 8"]


# -- editing and deleting ---------------------------------------------------------------------------


async def test_edit_text_and_keyboard(server: Server, bot: Bot, ana: Person) -> None:
    keyboard = _keyboard(InlineKeyboardButton("undo", callback_data="u"))
    sent = await bot.send_message(ana.id, "one", reply_markup=keyboard)
    with pytest.raises(BadRequest, match="Message is not modified"):
        await bot.edit_message_text("one", ana.id, sent.message_id, reply_markup=keyboard)
    await bot.edit_message_text("two", ana.id, sent.message_id)
    (seen,) = server.messages(ana)
    assert (seen.text, seen.labels, seen.edited) == ("two", [], True)  # an edit without a keyboard removes it
    await bot.edit_message_reply_markup(ana.id, sent.message_id, reply_markup=keyboard)
    with pytest.raises(BadRequest, match="Message is not modified"):
        await bot.edit_message_reply_markup(ana.id, sent.message_id, reply_markup=keyboard)
    assert server.messages(ana)[0].labels == ["undo"]
    assert server.violations == []  # an unchanged edit is no violation: two taps can race


async def test_edit_what_is_not_there_or_not_ones_own(server: Server, bot: Bot, ana: Person) -> None:
    theirs = ana.writes("mine")
    with pytest.raises(BadRequest, match="Message to edit not found"):
        await bot.edit_message_text("x", ana.id, 999)
    assert server.violations == []
    with pytest.raises(BadRequest, match="Message can't be edited"):
        await bot.edit_message_text("x", ana.id, theirs)
    asking = await bot.send_message(ana.id, "How many?", reply_markup=ForceReply())
    with pytest.raises(BadRequest, match="Message can't be edited"):
        await bot.edit_message_text("x", ana.id, asking.message_id)
    assert len(server.violations) == 2


async def test_edit_of_captions_and_media(server: Server, bot: Bot, ana: Person) -> None:
    picture = await bot.send_photo(ana.id, small_png(), "old")
    text = await bot.send_message(ana.id, "text")
    await bot.edit_message_caption(ana.id, picture.message_id, caption="new")
    await bot.edit_message_media(InputMediaPhoto(small_png(9, 9), "newer"), ana.id, picture.message_id)
    seen = server.messages(ana)[0]
    assert seen.text == "newer"
    assert seen.photo
    assert size_of(seen.photo) == (9, 9)
    with pytest.raises(BadRequest, match="no caption"):
        await bot.edit_message_caption(ana.id, text.message_id, caption="x")
    with pytest.raises(BadRequest, match="no text"):
        await bot.edit_message_text("x", ana.id, picture.message_id)
    with pytest.raises(BadRequest, match="nline keyboard expected"):
        await bot.edit_message_text("x", ana.id, text.message_id, reply_markup=ForceReply())  # type: ignore[arg-type]
    assert len(server.violations) == 3


async def test_delete(server: Server, bot: Bot, ana: Person) -> None:
    own = await bot.send_message(ana.id, "gone soon")
    theirs = ana.writes("in a private chat both go")
    assert await bot.delete_message(ana.id, own.message_id)
    assert await bot.delete_message(ana.id, theirs)
    with pytest.raises(BadRequest, match="Message to delete not found"):
        await bot.delete_message(ana.id, own.message_id)
    with pytest.raises(BadRequest, match="Message to edit not found"):
        await bot.edit_message_text("x", ana.id, own.message_id)
    assert server.messages(ana) == []
    group = server.group("Bar", [ana])
    said = ana.writes("theirs", chat=group)
    with pytest.raises(BadRequest, match="Message can't be deleted"):
        await bot.delete_message(group.id, said)
    group.promotes_bot()
    assert await bot.delete_message(group.id, said)
    kept = await bot.send_message(ana.id, "too old to go")
    later = server.world.clock() + 49 * 3600
    server.world.clock = lambda: later
    with pytest.raises(BadRequest, match="Message can't be deleted for everyone"):
        await bot.delete_message(ana.id, kept.message_id)


async def test_replies_to_what_is_gone(server: Server, bot: Bot, ana: Person) -> None:
    asked = ana.writes("question")
    answer = await bot.send_message(ana.id, "answer", reply_parameters=ReplyParameters(asked))
    assert answer.reply_to_message
    assert answer.reply_to_message.text == "question"
    ana.deletes(asked)
    with pytest.raises(BadRequest, match="Message to be replied not found"):
        await bot.send_message(ana.id, "x", reply_parameters=ReplyParameters(asked))
    loose = ReplyParameters(asked, allow_sending_without_reply=True)
    assert (await bot.send_message(ana.id, "x", reply_parameters=loose)).reply_to_message is None
    assert server.violations == []


async def test_reactions(server: Server, bot: Bot, ana: Person) -> None:
    said = ana.writes("done")
    assert await bot.set_message_reaction(ana.id, said, "👍")
    with pytest.raises(BadRequest, match=r"(?i)reaction_invalid"):
        await bot.set_message_reaction(ana.id, said, "🍊")
    with pytest.raises(BadRequest, match="Message to react not found"):
        await bot.set_message_reaction(ana.id, 999, "👍")
    assert len(server.violations) == 1


# -- pictures and files -----------------------------------------------------------------------------


async def test_pictures_and_files_have_limits(server: Server, bot: Bot, ana: Person) -> None:
    server.world.photo_limit = 100
    server.world.upload_limit = 200
    refused: list[tuple[Callable[[], Awaitable[object]], str]] = [
        (lambda: bot.send_photo(ana.id, small_png(64, 64) + b"x" * 100), "too big for a photo"),
        (lambda: bot.send_photo(ana.id, b"no picture"), "(?i)image_process_failed"),
        (lambda: bot.send_photo(ana.id, small_png(100, 1)), "(?i)photo_invalid_dimensions"),
        (lambda: bot.send_photo(ana.id, "no-such-file"), "Wrong file identifier"),
        (lambda: bot.send_document(ana.id, b""), "File must be non-empty"),
    ]
    for send, sentence in refused:
        with pytest.raises(BadRequest, match=sentence):
            await send()
    with pytest.raises(NetworkError, match="Request Entity Too Large"):
        await bot.send_document(ana.id, b"x" * 201)
    assert len(server.violations) == 6
    assert server.messages(ana) == []


async def test_albums(server: Server, bot: Bot, ana: Person) -> None:
    sent = await bot.send_media_group(
        ana.id,
        [InputMediaDocument(b"a", filename="a.csv"), InputMediaDocument(b"b", "cap", filename="b.csv")],
    )
    assert len({message.media_group_id for message in sent}) == 1
    assert [seen.document for seen in server.messages(ana)] == [b"a", b"b"]
    one: list[InputMediaPhoto | InputMediaDocument] = [InputMediaPhoto(small_png())]
    for media in (one, one * 11, [*one, InputMediaDocument(b"a", filename="a.csv")]):
        with pytest.raises(BadRequest):
            await bot.send_media_group(ana.id, media)
    assert len(server.violations) == 3


async def test_chat_action(server: Server, bot: Bot, ana: Person) -> None:
    assert await bot.send_chat_action(ana.id, "typing")
    with pytest.raises(BadRequest, match="Wrong parameter action"):
        await bot.send_chat_action(ana.id, "peeling")
    assert len(server.violations) == 1


# -- permission to write ---------------------------------------------------------------------------


async def test_chats_that_cannot_be_written_to(server: Server, bot: Bot, ana: Person) -> None:
    ben = server.person("Ben")
    with pytest.raises(BadRequest, match="Chat not found"):
        await bot.send_message(ben.id, "x")
    group = server.group("Bar", [ana, ben])
    with pytest.raises(Forbidden, match="can't initiate conversation"):
        await bot.send_message(ben.id, "x")
    with pytest.raises(BadRequest, match="Chat not found"):
        await bot.send_message("@nowhere", "x")
    ana.blocks_bot()
    with pytest.raises(Forbidden, match="bot was blocked by the user"):
        await bot.send_message(ana.id, "x")
    ana.unblocks_bot()
    await bot.send_message(ana.id, "x")
    group.removes_bot()
    with pytest.raises(Forbidden, match="bot was kicked from the group chat"):
        await bot.send_message(group.id, "x")
    big = server.group("Big bar", [ana], supergroup=True)
    assert await bot.leave_chat(big.id)
    with pytest.raises(Forbidden, match="bot is not a member of the supergroup chat"):
        await bot.send_message(big.id, "x")
    assert server.violations == []


async def test_a_group_that_became_a_supergroup(server: Server, bot: Bot, ana: Person) -> None:
    group = server.group("Bar", [ana])
    old = group.id
    new = group.migrate()
    with pytest.raises(ChatMigrated) as raised:
        await bot.send_message(old, "x")
    assert raised.value.new_chat_id == new == group.id
    await bot.send_message(new, "x")
    assert [seen.text for seen in server.messages(group)] == ["x"]


async def test_threads_are_for_forum_topics_only(server: Server, bot: Bot, ana: Person) -> None:
    forum = server.group("Bar", [ana], forum=True)
    topic = forum.opens_topic("Waste")
    sent = await bot.send_message(forum.id, "here", message_thread_id=topic)
    assert sent.is_topic_message
    assert server.messages(forum)[0].thread == topic
    for place, thread in ((ana.id, 5), (server.group("Other", [ana]).id, topic), (forum.id, 1)):
        with pytest.raises(BadRequest, match="Message thread not found"):
            await bot.send_message(place, "x", message_thread_id=thread)
    assert len(server.violations) == 3
    assert await bot.send_chat_action(forum.id, "typing", message_thread_id=1)
    forum.closes_topic(topic)
    with pytest.raises(BadRequest, match=r"(?i)topic_closed"):
        await bot.send_message(forum.id, "x", message_thread_id=topic)
    forum.deletes_topic(topic)
    with pytest.raises(BadRequest, match="Message thread not found"):
        await bot.send_message(forum.id, "x", message_thread_id=topic)
    assert len(server.violations) == 3  # a topic can disappear at any time: no violation


async def test_flood_control(server: Server, bot: Bot, ana: Person) -> None:
    now = 0.0
    flood = server.world.flood
    flood.on, flood.clock = True, lambda: now
    group = server.group("Bar", [ana])
    await bot.send_message(ana.id, "x")
    with pytest.raises(RetryAfter) as raised:
        await bot.send_message(ana.id, "x")
    assert raised.value.retry_after.total_seconds() == 1  # type: ignore[union-attr]
    for _ in range(20):
        now += 1
        await bot.send_message(group.id, "x")
    now += 1
    with pytest.raises(RetryAfter) as raised:
        await bot.send_message(group.id, "x")
    assert raised.value.retry_after.total_seconds() == 40  # type: ignore[union-attr]
    await bot.send_message(ana.id, "other chats are not held up")
    now += 40
    await bot.send_message(group.id, "x")
