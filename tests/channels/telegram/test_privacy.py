"""Tests of a member's data, of being forgotten, and of the deletion of a bar."""

from __future__ import annotations

import json

from sqlalchemy import select

from storage.tables import Bar, Base
from tests.channels.telegram.conftest import MIST, Telephone


def _anything_with(telephone: Telephone, words: str) -> list[str]:
    """Tables that contain these words in any column. The inbox is pruned after two days anyway."""
    found = []
    with telephone.channel.store.reading() as unit:
        for table in Base.metadata.sorted_tables:
            if table.name == "inbox":
                continue
            rows = unit.session.execute(select(table)).all()
            if any(words in str(value) for row in rows for value in row):
                found.append(table.name)
    return found


async def test_a_member_gets_what_is_held_of_them_and_nothing_else(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    ben = telephone.server.person("Ben")
    await ben.says(_join((await ana.says("invite")).text))
    await ben.says("waste 3 limes mouldy")
    await ana.says("waste 5 lemons dried out")
    shown = await ben.says("export me", expects=2)
    held = json.loads(shown.last.document or b"")
    assert held["name"] == "Ben"
    assert held["channel_id"] == str(ben.id)
    assert [row["count_milli"] for row in held["waste"]] == [3000]
    assert {row["what"] for row in held["entry"]} == {"waste"}
    assert "Ana" not in json.dumps(held)


def _join(shown: str) -> str:
    return next(line for line in shown.splitlines() if line.startswith("join "))


async def test_a_forgotten_member_leaves_the_history(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    ben = telephone.server.person("Benedikta")
    await ben.says(_join((await ana.says("invite")).text))
    await ben.says("waste 3 limes mouldy")
    await ben.says("forget me")
    assert "your name is gone" in (await ben.taps("Yes, forget me")).text
    log = (await ana.says("/log")).text
    assert "former member: waste: 3 limes, mouldy" in log
    assert "Benedikta" not in log
    assert _anything_with(telephone, "Benedikta") == []
    assert _anything_with(telephone, str(ben.id)) == []
    # A person who writes again is a new person, in no bar.
    assert "not in a bar yet" in (await ben.says("week")).text


async def test_a_manager_forgets_somebody_who_was_removed(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    ben = telephone.server.person("Benedikta")
    await ben.says(_join((await ana.says("invite")).text))
    await ana.says("team remove Benedikta")
    await ana.taps("Forget the name too")
    assert "The name is gone" in (await ana.taps("Yes, forget Benedikta")).text
    assert _anything_with(telephone, "Benedikta") == []


async def test_a_bar_is_deleted_after_seven_days_and_only_by_name(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says("bar name The Gannet")
    await ana.says(MIST)
    await ana.says("batch grapefruit mist to 200 ml")
    await ana.says("waste 3 limes mouldy")
    ben = await telephone.opened_bar("Ben")
    await ben.says("bar name The Plaice")
    assert "type its name" in (await ana.says("delete bar")).text
    assert "Nothing is deleted." in (await ana.says("The Garnet")).text
    assert "will be deleted on Wed, 2 Dec 18:00" in (await ana.says("the  gannet")).text
    telephone.clock.turn(days=6, hours=23)
    await telephone.channel.ticker.prune()
    assert "will be deleted on" in (await ana.says("/start")).text
    assert "3 limes" in (await ana.says("/log")).text
    telephone.clock.turn(hours=2)
    await telephone.channel.ticker.prune()
    assert "not in a bar yet" in (await ana.says("/week")).text
    assert _anything_with(telephone, "Gannet") == []
    assert _anything_with(telephone, "Grapefruit mist") == []
    assert "The Plaice" in (await ben.says("/start")).text
    with telephone.channel.store.reading() as unit:
        # Its number stays reserved, so that an old label never opens another bar's batch.
        assert unit.session.scalars(select(Bar.id).order_by(Bar.id)).all() == [1, 2]
    assert "only to members" in (await ana.opens_link("b_1_1")).text


async def test_a_bar_can_be_kept_within_the_grace(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says("delete bar The Copper Gull")
    telephone.clock.turn(days=6)
    await ana.says("/start")
    assert "The Copper Gull stays." in (await ana.taps("Keep the bar")).text
    telephone.clock.turn(days=30)
    await telephone.channel.ticker.prune()
    assert "You are at The Copper Gull" in (await ana.says("/start")).text


async def test_only_the_owner_deletes_and_only_in_private(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    ben = telephone.server.person("Ben")
    await ben.says(_join((await ana.says("invite manager")).text))
    assert "Only the owner" in (await ben.says("delete bar")).text
    assert "Only the owner" in (await ben.says("delete bar The Copper Gull")).text
    group = telephone.server.group("Back bar", [ana, ben])
    await ana.says("/start@peel_ledger_test_bot", chat=group)
    said = await ana.says("/delete@peel_ledger_test_bot bar The Copper Gull", chat=group)
    assert "will be deleted" not in said.text


async def test_the_team_is_warned_a_day_before_and_the_owner_keeps_the_bar(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says("bar close reminder off")
    ben = telephone.server.person("Ben")
    await ben.says(_join((await ana.says("invite")).text))
    await ana.says("delete bar The Copper Gull")
    assert await telephone.tick(days=5, hours=23) == 0
    marks = telephone.server.mark()
    assert await telephone.tick(hours=1) == 2
    for person in (ana, ben):
        (warned,) = await telephone.server.follow(person, marks)
        assert "The Copper Gull will be deleted on Wed, 2 Dec 18:00, with everything in it." in warned.text
        assert warned.labels == (["Keep the bar"] if person is ana else [])
    assert "Only the owner" in (await ben.says("keep bar")).text
    assert "The Copper Gull stays." in (await ana.taps("Keep the bar")).text
    await telephone.tick(days=3)
    assert "You are at The Copper Gull" in (await ben.says("/start")).text


async def test_a_bar_kept_in_time_warns_nobody_and_one_deleted_anew_warns_its_chat(
    telephone: Telephone,
) -> None:
    ana = await telephone.opened_bar()
    await ana.says("bar close reminder off")
    ben = telephone.server.person("Ben")
    await ben.says(_join((await ana.says("invite")).text))
    group = telephone.server.group("Back bar", [ana, ben])
    await ana.says("/start@peel_ledger_test_bot", chat=group)
    await ana.says("delete bar The Copper Gull")
    telephone.clock.turn(days=2)
    await ana.says("keep bar")
    await ana.says("delete bar The Copper Gull")
    assert await telephone.tick(days=4, hours=12) == 0
    mark = telephone.server.mark()
    assert await telephone.tick(days=1, hours=12) == 2
    assert "will be deleted" in (await telephone.server.follow(group, mark)).text
    assert "will be deleted" in (await telephone.server.follow(ana, mark)).text
    # A bot that was stopped for the day does not warn about the past.
    telephone.clock.turn(days=8)
    await telephone.channel.ticker.prune()
    assert await telephone.channel.ticker.tick() == 0
