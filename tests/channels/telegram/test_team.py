"""Tests of inviting, handing over, leaving, several bars, the log, and people who blocked the bot."""

from __future__ import annotations

import io

from PIL import Image

from tests.api import Person
from tests.api.seen import Followed
from tests.channels.telegram.conftest import MIST, Telephone
from tests.documents.reading import read_symbols


def _code(shown: Followed) -> str:
    return next(line for line in shown.text.splitlines() if line.startswith("join "))


async def _joined(telephone: Telephone, ana: Person, name: str, how: str = "invite") -> Person:
    person = telephone.server.person(name)
    assert "Welcome" in (await person.says(_code(await ana.says(how)))).text
    return person


async def test_inviting_by_taps_with_a_picture_to_scan(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says("/team")
    assert "For how many people?" in (await ana.taps("Invite a member")).text
    assert "For how long?" in (await ana.taps("3")).text
    made = await ana.taps("30 days", expects=2)
    assert "Good for 3 people until Fri, 25 Dec" in made.text
    picture = next(one.photo for one in made if one.photo is not None)
    payload = _symbol(picture).partition("?start=")[2]
    for name in ("Ben", "Cleo", "Dan"):
        assert "Welcome to The Copper Gull." in (await telephone.server.person(name).opens_link(payload)).text
    fourth = await telephone.server.person("Eve").opens_link(payload)
    assert "does not work" in fourth.text


def _symbol(png: bytes) -> str:
    return str(read_symbols(Image.open(io.BytesIO(png)).convert("L"))[0].text)


async def test_a_code_ends(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    code = _code(await ana.says("invite 5 people 2 days"))
    telephone.clock.turn(days=2, minutes=1)
    assert "does not work" in (await telephone.server.person("Ben").says(code)).text


async def test_guessing_codes_is_slowed_down(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    code = _code(await ana.says("invite"))
    eve = telephone.server.person("Eve")
    for number in range(5):
        assert "does not work" in (await eve.says(f"join 1-1-WRQNG{number + 2}CDE")).text
    # Now even the right one has to wait.
    assert "Too many wrong codes." in (await eve.says(code)).text
    telephone.clock.turn(hours=1, minutes=1)
    assert "Welcome" in (await eve.says(code)).text


async def test_codes_are_for_private_chats(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    group = telephone.server.group("Back bar", [ana])
    await ana.says("/start@peel_ledger_test_bot", chat=group)
    refused = await ana.says("/invite@peel_ledger_test_bot", chat=group)
    assert "in our private chat" in refused.text
    assert "join 1-" not in refused.text
    code = _code(await ana.says("invite"))
    ben = telephone.server.person("Ben")
    other = telephone.server.group("Corner", [ben])
    assert "private chat" in (await ben.says(f"/join@peel_ledger_test_bot {code[5:]}", chat=other)).text


async def test_only_the_owner_makes_managers(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    ben = await _joined(telephone, ana, "Ben")
    assert "Only a manager" in (await ben.says("invite")).text
    await ana.says("team manager Ben")
    assert "join " in (await ben.says("invite")).text
    assert "Only the owner" in (await ben.says("invite manager")).text
    assert "Only the owner" in (await ben.says("team remove Ana")).text


async def test_handing_the_bar_over(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    ben = await _joined(telephone, ana, "Ben")
    assert "hand it over first" in (await ana.says("leave")).text
    assert "Hand the bar over to Ben?" in (await ana.says("team owner Ben")).text
    assert "Ben is now the owner" in (await ana.taps("Yes, make Ben the owner")).text
    listed = (await ben.says("/team")).text
    assert "Ben, owner" in listed
    assert "Ana, manager" in listed
    await ana.says("leave")
    assert "You have left The Copper Gull." in (await ana.taps("Yes, leave")).text
    assert "not in a bar yet" in (await ana.says("/week")).text


async def test_removal_takes_effect_at_once_even_within_a_question(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says("price oranges 0.60 each")
    ben = await _joined(telephone, ana, "Ben")
    await ben.says("waste")
    await ben.taps("orange")
    await ana.says("team remove Ben")
    assert "not in a bar yet" in (await ben.taps("6")).text
    assert "nothing" not in (await ana.says("/log")).text
    assert "waste" not in (await ana.says("/log")).text


async def test_several_bars_and_buttons_of_the_other_one(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    ben = await telephone.opened_bar("Ben")
    await ben.says("bar name The Plaice")
    for person in (ana, ben):
        await person.says(MIST)
        await person.says("batch grapefruit mist to 200 ml")
    old = (await ben.says("batch 1")).last
    await ben.says(_code(await ana.says("invite")))
    listed = await ben.says("/bars")
    assert "You are in 2 bars" in listed.text
    # An older button belongs to the previous bar, and does nothing here.
    stale = await ben.taps("Hazy", old)
    assert (stale.toast, len(stale)) == ("That button is old.", 0)
    assert "checked" not in (await ana.says("/log")).text
    await ben.says("bars 2")
    assert "You are at The Plaice" in (await ben.says("/start")).text


async def test_a_reminder_acts_in_its_own_bar(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    ben = await telephone.opened_bar("Ben")
    await ben.says("bar name The Plaice")
    await ben.says(MIST)
    await ben.says("batch grapefruit mist to 200 ml")
    await ana.says(MIST)
    await ana.says("batch grapefruit mist to 200 ml")
    await ben.says(_code(await ana.says("invite")))
    mark = telephone.server.mark()
    await telephone.tick(hours=25)
    reminders = await telephone.server.follow(ben, mark, expects=2)
    rested = next(one for one in reminders if "has rested" in one.text)
    answered = await ben.taps("Clear", rested)
    assert "You are now at The Plaice." in answered.text
    assert "checked batch 1" in (await ben.says("/log")).text
    assert "checked batch 1" not in (await ana.says("/log")).text


async def test_the_log_is_paged(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    for number in range(1, 13):
        await ana.says(f"waste {number} limes mouldy")
    first = await ana.says("/log")
    assert first.text.count("#") == 10
    older = await ana.taps("Older")
    assert older.last.edited
    assert "#2 " in older.text
    assert "Older" not in older.labels
    await ana.taps("Newest")
    assert "Undone: " in (await ana.taps("Undo #12")).text
    assert "(undone by #13)" in (await ana.says("/log")).text


async def test_who_blocked_the_bot_is_said(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    ben = await _joined(telephone, ana, "Ben")
    ben.blocks_bot()
    await telephone.server.wait_quiet()
    mark = telephone.server.mark()
    assert await telephone.tick(minutes=1) == 1
    told = await telephone.server.follow(ana, mark)
    assert "Ben has blocked me and gets no messages." in told.text
    assert "Ben, member, since 25 Nov 2026, has blocked me" in (await ana.says("/team")).text
    ben.unblocks_bot()
    await telephone.server.wait_quiet()
    assert "blocked" not in (await ana.says("/team")).text


async def test_waste_in_four_taps_and_a_batch_in_three(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says("price oranges 0.60 each")
    await ana.says(MIST)
    await ana.says("/start")
    assert "thrown out" in (await ana.taps("Log waste")).text
    await ana.taps("orange")
    await ana.taps("6")
    assert "6 oranges, mouldy" in (await ana.taps("mouldy")).text  # four taps
    await ana.says("/start")
    await ana.taps("Batches")
    await ana.taps("Make a batch")
    assert "Batch 1: Grapefruit mist" in (await ana.taps("8 x 50 ml")).text  # three taps
    await ana.says("/start")
    await ana.taps("Scale")
    await ana.taps("8 x 50 ml")
    assert "Batch 2: Grapefruit mist" in (await ana.taps("Log this batch")).text  # three taps
