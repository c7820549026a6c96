"""Tests of groups: privacy mode, members, the upgrade to a supergroup, topics."""

from __future__ import annotations

from typing import Any

import pytest
from telegram import Bot, Update
from telegram.constants import ParseMode

from tests.api import Server


async def _texts(bot: Bot) -> list[str | None]:
    updates = await bot.get_updates()
    if updates:
        await bot.get_updates(offset=updates[-1].update_id + 1)
    return [update.message.text for update in updates if update.message]


async def test_privacy_mode(server: Server, bot: Bot) -> None:
    ana, ben = server.person("Ana"), server.person("Ben")
    group = server.group("Bar", [ana, ben], announce=False)
    ana.writes("just talk", chat=group)
    ana.writes("/scale", chat=group)  # the bot has not written here yet
    ana.writes("/scale@other_bot", chat=group)
    ana.writes("/scale@Peel_Ledger_test_bot 8 x 50 ml", chat=group)
    ana.writes("what does @peel_ledger_test_bot say?", chat=group)
    assert await _texts(bot) == [
        "/scale@Peel_Ledger_test_bot 8 x 50 ml",
        "what does @peel_ledger_test_bot say?",
    ]
    asked = await bot.send_message(group.id, "Which one?")
    ana.writes("/week", chat=group)
    group.other_bot_says("I am here too")
    ana.writes("/plan", chat=group)
    answer = ben.writes("mist", chat=group, reply_to=asked.message_id)
    ana.writes("I meant this", chat=group, reply_to=answer)
    other = ana.writes("unheard", chat=group)
    ben.writes("a reply to that", chat=group, reply_to=other)
    assert await _texts(bot) == ["/week", "mist", "I meant this"]
    group.promotes_bot()
    ana.writes("administrators hear all", chat=group)
    assert await _texts(bot) == ["administrators hear all"]
    open_group = server.group("Open", [ana], privacy=False, announce=False)
    ana.writes("and so it is without privacy", chat=open_group)
    assert await _texts(bot) == ["and so it is without privacy"]


async def test_waiting_for_a_reply_to_what_the_bot_cannot_hear_fails_at_once(server: Server) -> None:
    ana = server.person("Ana")
    group = server.group("Bar", [ana], announce=False)
    with pytest.raises(AssertionError, match="not delivered to the bot:\nAna: just talk"):
        await ana.says("just talk", chat=group)


async def test_comings_and_goings(server: Server, bot: Bot) -> None:
    ana, ben, eve = server.person("Ana"), server.person("Ben"), server.person("Eve")
    group = server.group("Bar", [ana])
    group.adds(ben)
    group.removes(ben)
    with pytest.raises(AssertionError, match="Ben is not in Bar"):
        ben.writes("let me in", chat=group)
    group.removes_bot()
    ana.writes("/gone@peel_ledger_test_bot", chat=group)
    group.adds_bot(payload="team-7")
    updates = await bot.get_updates(allowed_updates=Update.ALL_TYPES)
    shown = []
    for update in updates:
        if update.my_chat_member:
            change = update.my_chat_member
            shown.append(f"{change.old_chat_member.status} > {change.new_chat_member.status}")
        elif update.message and update.message.new_chat_members:
            shown.append(f"in: {update.message.new_chat_members[0].first_name}")
        elif update.message and update.message.left_chat_member:
            shown.append(f"out: {update.message.left_chat_member.first_name}")
        elif update.message:
            shown.append(update.message.text or "")
    bot_name = "Peel Ledger test"
    assert shown == [
        "left > member",
        f"in: {bot_name}",
        "in: Ben",
        "out: Ben",
        f"out: {bot_name}",
        "member > kicked",
        "left > member",
        f"in: {bot_name}",
        "/start@peel_ledger_test_bot team-7",
    ]
    assert eve.id not in group.place.members


@pytest.mark.parametrize("first", ["to", "from"])
async def test_migration_is_told_in_both_chats(server: Server, bot: Bot, first: Any) -> None:
    ana = server.person("Ana")
    group = server.group("Bar", [ana], announce=False)
    old = group.id
    new = group.migrate(first=first)
    standing, *services = await bot.get_updates()
    assert standing.my_chat_member
    assert standing.my_chat_member.chat.id == new
    told = [
        (update.message.chat.id, update.message.migrate_to_chat_id, update.message.migrate_from_chat_id)
        for update in services
        if update.message
    ]
    expected = [(old, new, None), (new, None, old)]
    assert told == (expected if first == "to" else expected[::-1])
    ana.writes("/here@peel_ledger_test_bot", chat=group)
    assert (await bot.get_updates())[-1].message.chat.id == new  # type: ignore[union-attr]


async def test_topics(server: Server, bot: Bot) -> None:
    ana = server.person("Ana")
    forum = server.group("Bar", [ana], forum=True, privacy=False, announce=False)
    topic = forum.opens_topic("Waste")
    ana.writes("in it", chat=forum, thread=topic)
    ana.writes("in General", chat=forum)
    opened, inside, general = (update.message for update in await bot.get_updates())
    assert opened
    assert inside
    assert general
    assert opened.forum_topic_created
    assert (inside.message_thread_id, inside.is_topic_message) == (topic, True)
    assert (general.message_thread_id, general.is_topic_message) == (None, None)
    answer = await inside.reply_text("kept in the topic")
    assert answer.message_thread_id == topic
    await bot.send_message(forum.id, "by reply", reply_to_message_id=inside.message_id)
    assert [seen.thread for seen in server.messages(forum)] == [topic, topic]
    assert server.transcript(forum).splitlines()[-1] == "bot #Waste: by reply"


async def test_a_reply_in_a_supergroup_opens_a_thread_that_is_no_topic(server: Server, bot: Bot) -> None:
    ana = server.person("Ana")
    group = server.group("Bar", [ana], supergroup=True, announce=False)
    asked = await bot.send_message(group.id, "Which?", parse_mode=ParseMode.HTML)
    ana.writes("mist", chat=group, reply_to=asked.message_id)
    (update,) = await bot.get_updates()
    assert update.message
    assert update.message.message_thread_id == asked.message_id
    assert update.message.is_topic_message is None
    assert update.message.reply_to_message
    assert update.message.reply_to_message.text == "Which?"
    await update.message.reply_text("fine")
    assert server.violations == []
