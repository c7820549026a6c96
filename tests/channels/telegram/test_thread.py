"""Tests of words about the last thing over HTTP: in a private chat, in a group, after a reminder."""

from __future__ import annotations

from tests.api.group import Group
from tests.channels.telegram.conftest import MIST, Telephone


async def test_what_is_said_next_means_the_last_thing(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says("waste 6 limes mouldy")
    assert "Corrected: 5 limes instead of 6" in (await ana.says("that was 5 not 6")).text
    assert "Logged: 3 oranges." in (await ana.says("and 3 oranges")).text
    assert "Undone: 3 oranges" in (await ana.says("delete the last one")).text
    logged = await ana.says("waste 2 oranges mouldy")
    await ana.says("waste 9 limes mouldy")
    said = await ana.says("make it 4", reply_to=logged.last)
    assert "Corrected: 4 oranges instead of 2" in said.text


async def test_a_typed_look_after_the_reminder_is_a_check(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says(MIST)
    await ana.says("batch grapefruit mist to 200 ml")
    mark = telephone.server.mark()
    await telephone.tick(hours=25)
    await telephone.server.follow(ana, mark, expects=2)
    assert "Batch 1, Grapefruit mist: clear." in (await ana.says("its clear")).text


async def test_in_a_group_a_reply_means_what_it_answers(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    team = Group.made(telephone.server, "Team", [ana])
    await ana.says("/start@peel_ledger_test_bot", chat=team)
    logged = await ana.says("/waste@peel_ledger_test_bot 6 limes mouldy", chat=team)
    said = await ana.says("make it 5", chat=team, reply_to=logged.last)
    assert "Corrected: 5 limes instead of 6" in said.text
