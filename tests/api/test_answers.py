"""Tests of answers to taps and inline queries, menus and descriptions, each with a real Bot."""

from __future__ import annotations

from collections.abc import Sequence

import pytest
from telegram import (
    Bot,
    BotCommand,
    BotCommandScopeAllPrivateChats,
    BotCommandScopeChat,
    BotCommandScopeChatAdministrators,
    InlineKeyboardButton,
    InlineKeyboardMarkup,
    InlineQueryResultArticle,
    InlineQueryResultsButton,
    InputTextMessageContent,
)
from telegram.constants import ParseMode
from telegram.error import BadRequest

from tests.api import Person, Server


def _keyboard(*buttons: InlineKeyboardButton) -> InlineKeyboardMarkup:
    return InlineKeyboardMarkup([[button] for button in buttons])


# -- answers ----------------------------------------------------------------------------------------


async def test_taps_are_answered_once_and_in_time(server: Server, bot: Bot, ana: Person) -> None:
    await bot.send_message(ana.id, "x", reply_markup=_keyboard(InlineKeyboardButton("go", callback_data="g")))
    for _ in range(3):
        await ana.taps("go", wait=False)
    first, second, third = (update.callback_query for update in await bot.get_updates())
    assert first
    assert second
    assert third
    assert await bot.answer_callback_query(first.id, "fine", show_alert=True)
    assert await bot.answer_callback_query(first.id)
    assert server.violations == ["the tap on [go] answered twice"]
    with pytest.raises(BadRequest, match=r"(?i)message_too_long"):
        await bot.answer_callback_query(second.id, "x" * 201)
    with pytest.raises(BadRequest, match="Query is too old"):
        await bot.answer_callback_query("nonsense")
    server.expire_queries()
    with pytest.raises(BadRequest, match="Query is too old"):
        await bot.answer_callback_query(second.id)
    await ana.taps("go", wait=False)
    await bot.get_updates()
    assert (await server.stop())[2:] == [
        "the tap on [go] never answered: the phone shows a clock on the button"
    ]


async def test_a_tap_the_bot_never_got_needs_no_answer(server: Server, bot: Bot, ana: Person) -> None:
    await bot.send_message(ana.id, "x", reply_markup=_keyboard(InlineKeyboardButton("go", callback_data="g")))
    await ana.taps("go", wait=False)
    assert await server.stop() == []


def _article(name: str = "1", title: str = "t", text: str = "x") -> InlineQueryResultArticle:
    return InlineQueryResultArticle(name, title, InputTextMessageContent(text, parse_mode=ParseMode.HTML))


@pytest.mark.parametrize(
    ("results", "sentence"),
    [
        ([_article(str(n)) for n in range(51)], "results_too_much"),
        ([_article("é" * 33)], "result_id_invalid"),
        ([_article(""), _article("2")], "result_id_invalid"),
        ([_article("1"), _article("1")], "result_id_duplicate"),
        ([_article(title="")], "title"),
        ([_article(text="<b>open")], "can't parse entities"),
        ([_article(text="")], "text is empty|content is not specified"),
    ],
)
async def test_inline_results_beyond_the_limits(
    server: Server, bot: Bot, results: Sequence[InlineQueryResultArticle], sentence: str
) -> None:
    with pytest.raises(BadRequest, match=f"(?i){sentence}"):
        await bot.answer_inline_query("q", results)
    assert len(server.violations) == 1


async def test_inline_start_button(server: Server, bot: Bot) -> None:
    button = InlineQueryResultsButton("go", start_parameter="a" * 65)
    with pytest.raises(BadRequest, match=r"(?i)start_param_invalid"):
        await bot.answer_inline_query("q", [], button=button)
    assert len(server.violations) == 1


# -- menus ------------------------------------------------------------------------------------------


async def test_commands_by_scope_and_language(server: Server, bot: Bot, ana: Person) -> None:
    german = server.person("Uwe", "de")
    group = server.group("Bar", [ana, german])
    default, german_words = [BotCommand("scale", "scale it")], [BotCommand("scale", "umrechnen")]
    await bot.set_my_commands(default)
    await bot.set_my_commands(german_words, language_code="de")
    await bot.set_my_commands([("waste", "log waste")], BotCommandScopeAllPrivateChats())
    await bot.set_my_commands([("team", "who is in")], BotCommandScopeChatAdministrators(group.id))
    await bot.set_my_commands([("only", "here")], BotCommandScopeChat(ana.id))
    assert list(await bot.get_my_commands()) == default
    assert list(await bot.get_my_commands(language_code="de")) == german_words
    assert await bot.get_my_commands(language_code="fr") == ()
    assert server.menu(ana) == ["only"]
    assert server.menu(german) == ["waste"]
    assert server.menu(ana, group) == ["team"]
    assert server.menu(german, group) == ["scale"]
    await bot.delete_my_commands(BotCommandScopeChat(ana.id))
    assert server.menu(ana) == ["waste"]
    assert server.violations == []


@pytest.mark.parametrize(
    ("commands", "sentence"),
    [
        ([("Scale", "x")], "bot_command_invalid"),
        ([("scale-it", "x")], "bot_command_invalid"),
        ([("x" * 33, "x")], "bot_command_invalid"),
        ([("", "x")], "bot_command_invalid"),
        ([("scale", " ")], "description must be non-empty"),
        ([("scale", "x" * 257)], "bot_command_description_invalid"),
        ([(f"c{n}", "x") for n in range(101)], "bot_commands_too_much"),
    ],
)
async def test_commands_beyond_the_limits(
    server: Server, bot: Bot, commands: list[tuple[str, str]], sentence: str
) -> None:
    with pytest.raises(BadRequest, match=f"(?i){sentence}"):
        await bot.set_my_commands(commands)
    assert len(server.violations) == 1


async def test_the_same_command_twice_is_noted(server: Server, bot: Bot) -> None:
    await bot.set_my_commands([("scale", "x"), ("scale", "y")])
    assert len(server.violations) == 1


async def test_name_and_descriptions(server: Server, bot: Bot) -> None:
    await bot.set_my_name("Peel")
    await bot.set_my_description("long", "de")
    await bot.set_my_short_description("short")
    assert (await bot.get_my_name()).name == "Peel"
    assert (await bot.get_my_description()).description == ""
    assert (await bot.get_my_description("de")).description == "long"
    assert (await bot.get_my_short_description("de")).short_description == "short"
    for too_long in (
        bot.set_my_name("x" * 65),
        bot.set_my_description("x" * 513),
        bot.set_my_short_description("x" * 121),
        bot.set_my_name("x", "german"),
    ):
        with pytest.raises(BadRequest):
            await too_long
    assert len(server.violations) == 4


async def test_chats_and_members(server: Server, bot: Bot, ana: Person) -> None:
    ben = server.person("Ben")
    group = server.group("Bar", [ana, ben])
    assert (await bot.get_chat(group.id)).title == "Bar"
    assert (await bot.get_chat(ana.id)).first_name == "Ana"
    statuses = [(await bot.get_chat_member(group.id, who)).status for who in (ana.id, ben.id, bot.id)]
    assert statuses == ["creator", "member", "member"]
    group.promotes(ben)
    group.promotes_bot()
    leading = await bot.get_chat_administrators(group.id)
    assert {member.user.id for member in leading} == {ana.id, ben.id, bot.id}
    with pytest.raises(BadRequest, match="user_id"):
        await bot.get_chat_member(group.id, 5)
