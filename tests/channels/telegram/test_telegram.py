"""Tests of a complete conversation over real HTTP, and of Telegram's effects on it."""

from __future__ import annotations

import pytest

from tests.api import Fault
from tests.channels.telegram.conftest import MIST, Telephone


async def test_a_night_from_opening_the_bar_to_the_week(telephone: Telephone) -> None:
    ana = await telephone.opens_bar()
    await ana.says(MIST)
    await ana.says("price grapefruit oil 10 ml 7.90")
    await ana.says("price propylene glycol 500 ml 11.50")
    await ana.says("price neutral spirit 1 l 24.00")
    await ana.says("price grapefruits 0.90 each, 8 garnishes each")
    scaled = await ana.says("scale grapefruit mist to 8 x 50 ml")
    assert "8 x 50 ml" in scaled.text
    made = await ana.taps("Log this batch")
    assert "Batch 1: Grapefruit mist" in made.text

    mark = telephone.server.mark()
    assert await telephone.tick(hours=23) == 1  # the prompt at close; the batch is still resting
    assert "what was thrown out" in (await telephone.server.follow(ana, mark)).text
    mark = telephone.server.mark()
    assert await telephone.tick(hours=1, minutes=1) == 1
    rested = await telephone.server.follow(ana, mark)
    assert "has rested. How does it look?" in rested.text
    assert not rested.last.silent
    clear = await ana.taps("Clear")
    assert "clear" in clear.text
    assert clear.last.edited

    wasted = await ana.says("waste 6 grapefruits mouldy, 2 grapefruits dried out")
    assert "2 lines" in wasted.text
    week = await ana.says("/week")
    assert "€7.20" in week.text


async def test_the_trend_comes_as_a_picture_after_the_week(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says("price oranges 0.60 each")
    await ana.says("waste 6 oranges mouldy")
    week = await ana.says("/week", expects=2)
    assert "\u20ac3.60" in week.seen[0].text
    assert week.seen[1].photo is not None
    assert week.seen[1].photo.startswith(b"\x89PNG")
    await ana.says("bar week picture off")
    assert len((await ana.says("/week")).seen) == 1


async def test_the_same_update_twice_changes_nothing_twice(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says("price oranges 0.60 each")
    telephone.server.duplicate_next_update()
    await ana.says("waste 6 oranges mouldy")
    assert "€3.60" in (await ana.says("week")).text


async def test_a_lost_answer_is_sent_again_and_says_so(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    telephone.server.fail_next("sendMessage", Fault.drop_after())
    said = await ana.says("help", expects=2)
    assert "(This may be a repeat.)" in said.text


@pytest.mark.parametrize("database", ["sqlite"], indirect=True)
async def test_the_next_question_does_not_wait_for_the_reply_to_an_answer(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    telephone.server.fail_next("sendMessage", Fault.slow(2.0))
    polls = telephone.server.world.updates.polls
    asked = len(polls)
    ana.writes("help")
    assert await telephone.server.world.until(lambda: len(polls) > asked, 1.5)
    await telephone.server.wait_quiet()


async def test_a_refused_send_is_tried_again_without_a_repeat(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    telephone.server.fail_next("sendMessage", Fault.flood(1))
    said = await ana.says("help")
    assert "repeat" not in said.text


async def test_after_an_error_of_the_server_nobody_knows_whether_it_was_sent(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    telephone.server.fail_next("sendMessage", Fault.http(502, processed=True))
    said = await ana.says("help", expects=2)
    assert "repeat" not in said[0].text
    assert "(This may be a repeat.)" in said[1].text


async def test_names_with_angle_brackets_arrive_as_written(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says(MIST)
    await ana.says("rename grapefruit mist to <b>Pink & bright</b>")
    assert "<b>Pink & bright</b>" in (await ana.says("formulas")).labels[0]
    assert "<b>Pink & bright</b>" in (await ana.says("formula #1")).text


async def test_a_group_with_privacy_mode(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    ben = telephone.server.person("Ben")
    group = telephone.server.group("Back bar", [ana, ben])
    assert "own" in (await ana.says("/start@peel_ledger_test_bot", chat=group)).text
    # A stranger in the group learns nothing about the bar.
    assert "no bar" in (await ben.says("/week@peel_ledger_test_bot", chat=group)).text
    await ana.says("price oranges 0.60 each")
    asked = await ana.says("/waste@peel_ledger_test_bot", chat=group)
    assert "thrown out" in asked.text
    await ana.taps("orange", chat=group)
    await ana.taps("6", chat=group)
    logged = await ana.taps("mouldy", chat=group)
    assert "6 oranges" in logged.text
    # Messages that do not address the bot are not even delivered.
    await ana.says("lovely night", chat=group, expects=0)


async def test_a_question_by_reply_in_a_group(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    group = telephone.server.group("Back bar", [ana])
    await ana.says("/start@peel_ledger_test_bot", chat=group)
    asked = await ana.says("/new@peel_ledger_test_bot", chat=group)
    assert asked.last.reply_markup is not None
    assert "force_reply" in str(asked.last.reply_markup)
    answered = await ana.says("Lime drops", chat=group, reply_to=asked.last)
    assert "ingredients" in answered.text


async def test_reminders_follow_a_group_that_moves(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    group = telephone.server.group("Back bar", [ana])
    await ana.says("/start@peel_ledger_test_bot", chat=group)
    await ana.says(MIST)
    await ana.says("batch grapefruit mist to 200 ml")
    group.migrate()
    await telephone.server.wait_quiet()
    mark = telephone.server.mark()
    await telephone.tick(hours=25)
    assert "has rested" in (await telephone.server.follow(group, mark, expects=2)).text


async def test_a_blocked_chat_gets_its_reminder_elsewhere(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    invited = await ana.says("team invite manager")
    code = next(line for line in invited.text.splitlines() if line.startswith("join "))
    ben = telephone.server.person("Ben")
    assert "Welcome" in (await ben.says(code)).text
    await ana.says(MIST)
    await ana.says("batch grapefruit mist to 200 ml")
    ana.blocks_bot()
    await telephone.server.wait_quiet()
    mark = telephone.server.mark()
    await telephone.tick(hours=25)
    assert "has rested" in (await telephone.server.follow(ben, mark, expects=2)).text


async def test_a_question_survives_a_restart(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says("price oranges 0.60 each")
    await ana.says("waste")
    await ana.taps("orange")
    await telephone.restart()
    await ana.taps("6")
    assert "6 oranges, mouldy" in (await ana.taps("mouldy")).text


async def test_a_stranger_is_refused_politely(telephone: Telephone) -> None:
    await telephone.opened_bar()
    eve = telephone.server.person("Eve")
    for line in ("/week", "scale grapefruit mist x2", "/batches", "batch 1", "/bar", "undo 1"):
        assert "You are not in a bar yet." in (await eve.says(line)).text


async def test_the_menu_is_set_for_private_chats_and_groups(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await telephone.server.wait_quiet()
    listed = telephone.server.menu(ana)
    assert listed[0] == "waste"
    assert {"scale", "cost", "batch", "week", "help"} <= set(listed)
