"""Tests of photos that log, and of the album of a batch's checks."""

from __future__ import annotations

import pytest

from bot.channels.console.console import Console
from tests.api import Group
from tests.channels.telegram.conftest import MIST, Telephone


async def test_a_caption_logs_as_if_typed(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    logged = await ana.sends_photo("waste 3 limes")
    assert "Logged: 3 limes" in logged.text
    assert "The photo is kept with it." in logged.text
    assert "3 limes [photo]" in (await ana.says("/log")).text
    await ana.says(MIST)
    await ana.says("batch grapefruit mist to 200 ml")
    assert "hazy" in (await ana.sends_photo("check 1 hazy, a thin skin on top")).text
    assert "[photo]" in (await ana.says("batch 1")).text


async def test_a_photo_that_answers_the_reminder(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says(MIST)
    await ana.says("batch grapefruit mist to 200 ml")
    mark = telephone.server.mark()
    await telephone.tick(hours=25)
    reminded = await telephone.server.follow(ana, mark, expects=2)
    question = next(one for one in reminded if "has rested" in one.text)
    # Without a word it asks for the look; the photo waits for the answer.
    asked = await ana.sends_photo(reply_to=question)
    assert "How does batch 1, Grapefruit mist, look?" in asked.text
    kept = await ana.taps("Split")
    assert "The photo is kept with it." in kept.text
    # With a word nothing is left to ask.
    assert "Batch 1, Grapefruit mist: hazy." in (await ana.sends_photo("hazy", reply_to=question)).text
    album = await ana.says("photos 1", expects=3)
    assert "Batch 1, Grapefruit mist: 2 photos" in album.text
    assert sum(one.photo is not None for one in album) == 2
    assert "hazy (Ana)" in album.text


async def test_a_photo_while_the_question_is_open(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says(MIST)
    await ana.says("batch grapefruit mist to 200 ml")
    await ana.says("check 1")
    assert "The photo is kept." in (await ana.sends_photo()).text
    assert "The photo is kept with it." in (await ana.taps("Clear")).text
    shown = await ana.says("photos 1", expects=2)
    assert "1 photo" in shown.text
    assert shown.last.photo is not None


async def test_a_photo_out_of_the_blue_asks_of_what(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says(MIST)
    await ana.says("batch grapefruit mist to 200 ml")
    assert "Which batch?" in (await ana.sends_photo()).text
    await ana.taps("1 Grapefruit mist")
    assert "The photo is kept with it." in (await ana.taps("Clear")).text


@pytest.mark.long
async def test_an_album_is_one_thing(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says(MIST)
    await ana.says("batch grapefruit mist to 200 ml")
    (checked,) = (await ana.sends_album("check 1 hazy", "", "")).seen
    assert "Batch 1, Grapefruit mist: hazy." in checked.text
    assert "All 3 photos are kept with it." in checked.text
    shown = await ana.says("photos 1", expects=4)
    assert "Batch 1, Grapefruit mist: 3 photos" in shown.text
    assert sum(one.photo is not None for one in shown) == 3
    # Without words it asks once, and keeps them all for the answer.
    (asked,) = (await ana.sends_album("", "")).seen
    assert "Which batch?" in asked.text
    await ana.taps("1 Grapefruit mist")
    assert "All 2 photos are kept with it." in (await ana.taps("Clear")).text


@pytest.mark.long
async def test_an_edit_under_an_album_keeps_its_photos(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    (logged,) = (sent := await ana.sends_album("waste 3 limes mouldy", "")).seen
    assert "All 2 photos are kept with it." in logged.text
    assert sent.said is not None
    assert "4 limes instead of 3" in (await ana.edits(sent.said - 1, "waste 4 limes mouldy")).text
    assert "4 limes, mouldy [2 photos]" in (await ana.says("log")).text
    # The same where the words stand under another photo of it.
    sent = await ana.sends_album("", "waste 5 lemons mouldy")
    assert sent.said is not None
    await ana.says("waste 1 orange mouldy", reply_to=sent.said)
    assert "6 lemons instead of 5" in (await ana.edits(sent.said, "waste 6 lemons mouldy")).text


@pytest.mark.long
async def test_the_words_may_stand_under_any_photo_of_an_album(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    (logged,) = (await ana.sends_album("", "waste 3 limes mouldy", "")).seen
    assert "Logged: 3 limes, mouldy." in logged.text
    assert "3 limes, mouldy [3 photos]" in (await ana.says("log")).text
    # Two captions say two things.
    both = await ana.sends_album("waste 1 lime mouldy", "waste 2 lemons mouldy", expects=2)
    assert ["1 lime" in both.seen[0].text, "2 lemons" in both.seen[1].text] == [True, True]


async def test_an_album_in_a_group_is_one_thing(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    team = Group.made(telephone.server, "Team", [ana], supergroup=True, privacy=False)
    await telephone.server.wait_quiet()
    await ana.says("/start", chat=team)
    (logged,) = (await ana.sends_album("/waste@peel_ledger_test_bot 3 limes mouldy", "", chat=team)).seen
    assert "All 2 photos are kept with it." in logged.text
    assert (await ana.sends_album("", "", chat=team, expects=0)).seen == ()


async def test_more_photos_than_an_album_holds(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says(MIST)
    await ana.says("batch grapefruit mist to 200 ml")
    for _number in range(11):
        await ana.sends_photo("check 1 hazy")
    shown = await ana.says("photos 1", expects=12)
    assert sum(one.photo is not None for one in shown) == 11


async def test_the_console_says_how_many(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says(MIST)
    await ana.says("batch grapefruit mist to 200 ml")
    await ana.sends_photo("check 1 hazy")
    code = next(
        line for line in (await ana.says("team invite")).text.splitlines() if line.startswith("join ")
    )
    lines: list[str] = []
    console = Console(telephone.channel.store, telephone.clock, "Kim", lines.append)
    console.say(code)
    console.say("photos 1")
    assert "[1 photo, kept in the chat]" in lines


async def test_without_photos_it_says_how(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says(MIST)
    await ana.says("batch grapefruit mist to 200 ml")
    assert "has no photos yet" in (await ana.says("photos 1")).text
