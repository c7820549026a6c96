"""Tests that no reminder and no answer is lost to a refusal, and that an answer never starts again."""

from __future__ import annotations

import asyncio
from typing import Any

import pytest

from bot.channels.telegram import sending
from bot.work.reminders import delivery
from tests.api import Fault, Group, Person
from tests.api.refusals import REFUSED_MESSAGES
from tests.channels.telegram.conftest import MIST, Telephone

ONE_DATABASE = pytest.mark.parametrize("database", ["sqlite"], indirect=True)


async def _resting_batch(telephone: Telephone) -> tuple[Person, Group]:
    """A bar with a team chat and a batch that rests."""
    ana = await telephone.opened_bar()
    group = telephone.server.group("Back bar", [ana])
    await ana.says("/start@peel_ledger_test_bot", chat=group)
    await ana.says(MIST)
    await ana.says("batch grapefruit mist to 200 ml")
    return ana, group


def _in(place: Person | Group) -> Any:
    return lambda values: str(values.get("chat_id")) == str(place.id)


def _reminders(telephone: Telephone, place: Person | Group) -> list[str]:
    return [seen.text for seen in telephone.server.messages(place) if "has rested" in seen.text]


@ONE_DATABASE
@pytest.mark.parametrize(("code", "said"), REFUSED_MESSAGES)
async def test_a_reminder_survives_every_refusal(telephone: Telephone, code: int, said: str) -> None:
    ana, group = await _resting_batch(telephone)
    telephone.server.fail_next("sendMessage", Fault.refuse(code, said), 50, _in(group))
    await telephone.tick(hours=25)
    about_the_bot = code in {401, 404, 409}
    if not about_the_bot:
        assert len(_reminders(telephone, ana)) == 1
        told = _reminders(telephone, ana)[0]
        assert ("I could not write this in the team’s chat." in told) is (code == 400)
        return
    assert not _reminders(telephone, ana)
    telephone.server.faults.clear()
    await telephone.tick(minutes=5)
    assert len(_reminders(telephone, group)) == 1


@ONE_DATABASE
@pytest.mark.long
async def test_a_reminder_nobody_takes_is_kept_until_somebody_writes(telephone: Telephone) -> None:
    ana, group = await _resting_batch(telephone)
    refusal = Fault.refuse(400, "Bad Request: CHAT_WRITE_FORBIDDEN")
    telephone.server.fail_next("sendMessage", refusal, 500)
    for _day in range(40):
        await telephone.tick(hours=24)
    assert delivery.undelivered(telephone.channel.store, "telegram")
    telephone.server.faults.clear()
    mark = telephone.server.mark()
    listed = (await ana.says("reminders")).text
    assert "not delivered since Thu 26 Nov 2026 18:00: batch 1, Grapefruit mist: has it rested?" in listed
    followed = await telephone.server.follow(group, mark, expects=1)
    assert any("has rested" in seen.text for seen in followed.seen)
    assert not delivery.undelivered(telephone.channel.store, "telegram")
    assert "not delivered" not in (await ana.says("reminders")).text


@ONE_DATABASE
async def test_copies_that_may_have_arrived_do_not_use_a_reminder_up(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says(MIST)
    await ana.says("batch grapefruit mist to 200 ml")
    telephone.server.fail_next("sendMessage", Fault.http(502), 40)
    for _time in range(40):
        await telephone.tick(hours=25)
    telephone.server.faults.clear()
    await telephone.tick(hours=25)
    (told,) = _reminders(telephone, ana)
    assert "(This may be a repeat.)" in told


@ONE_DATABASE
async def test_a_closed_topic_is_survived(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    group = telephone.server.group("Back bar", [ana], forum=True, supergroup=True)
    topic = group.opens_topic("Prep")
    await ana.says("/start@peel_ledger_test_bot", chat=group, thread=topic)
    await ana.says(MIST)
    await ana.says("batch grapefruit mist to 200 ml")
    await ana.says("batch grapefruit mist to 100 ml")
    mark = telephone.server.mark()
    await telephone.tick(hours=25)
    followed = await telephone.server.follow(group, mark, expects=2)
    assert {seen.thread for seen in followed.seen if "has rested" in seen.text} == {topic}
    group.closes_topic(topic)
    mark = telephone.server.mark()
    await telephone.tick(hours=500)
    followed = await telephone.server.follow(group, mark, expects=1)
    assert {seen.thread for seen in followed.seen} == {None}


@pytest.mark.long
@ONE_DATABASE
async def test_an_answer_is_sent_however_often_it_breaks_off(
    telephone: Telephone, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sending, "_LONGEST_UNSURE_PAUSE", 0.05)
    ana = await telephone.opened_bar()
    telephone.server.fail_next("sendMessage", Fault.drop_before(), 6)
    said = await ana.says("waste 3 limes mouldy")
    assert "Logged: 3 limes" in said.text
    assert said.text.count("(This may be a repeat.)") == 1


@ONE_DATABASE
@pytest.mark.long
async def test_a_late_answer_says_what_it_answers(
    telephone: Telephone, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sending, "_LATE_AFTER", 0.3)
    ana = await telephone.opened_bar()
    telephone.server.fail_next("sendMessage", Fault.http(502), 2)
    said = await ana.says("waste 3 limes mouldy")
    assert "Late: this answers “waste 3 limes mouldy”." in said.text


@ONE_DATABASE
async def test_an_answer_refused_in_a_group_comes_privately(telephone: Telephone) -> None:
    ana, group = await _resting_batch(telephone)
    telephone.server.fail_next(
        "sendMessage", Fault.refuse(400, "Bad Request: CHAT_WRITE_FORBIDDEN"), 5, _in(group)
    )
    mark = telephone.server.mark()
    ana.writes("/waste@peel_ledger_test_bot 3 limes mouldy", chat=group)
    assert "Logged: 3 limes" in (await telephone.server.follow(ana, mark)).text


@pytest.mark.long
async def test_an_answer_of_several_parts_goes_on_where_it_stopped(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says("waste 3 limes mouldy")
    telephone.server.fail_next("sendMediaGroup", Fault.flood(1), 2)
    telephone.server.fail_next("sendDocument", Fault.flood(1), 2)
    mark = telephone.server.mark()
    ana.writes("export")
    await telephone.server.wait_quiet(60)
    followed = await telephone.server.follow(ana, mark, expects=2)
    texts = [seen for seen in followed.seen if seen.document is None]
    files = [seen.file_name for seen in followed.seen if seen.document is not None]
    assert len(texts) == 1
    assert len(files) == len(set(files)) >= 2
    calls = [call.method for call in telephone.server.calls if call.status == 200]
    assert "sendmediagroup" in calls
    assert "senddocument" not in calls


@ONE_DATABASE
async def test_a_part_that_may_have_arrived_says_so_files_too(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says("waste 3 limes mouldy")
    telephone.server.fail_next("sendMediaGroup", Fault.http(502, processed=True))
    mark = telephone.server.mark()
    ana.writes("export")
    await telephone.server.wait_quiet(60)
    followed = await telephone.server.follow(ana, mark, expects=3)
    assert sum(seen.document is None for seen in followed.seen) == 1
    repeated = [seen for seen in followed.seen if "(This may be a repeat.)" in seen.text]
    assert len(repeated) == 1
    assert repeated[0].document is not None


@ONE_DATABASE
async def test_a_pause_that_telegram_asks_for_is_kept(
    telephone: Telephone, monkeypatch: pytest.MonkeyPatch
) -> None:
    waits: list[float] = []
    plain = asyncio.sleep

    async def sleep(seconds: float, *rest: Any) -> None:
        if seconds > 60:
            waits.append(seconds)
            seconds = 0.0
        await plain(seconds, *rest)

    monkeypatch.setattr(asyncio, "sleep", sleep)
    ana = await telephone.opened_bar()
    telephone.server.fail_next("sendMessage", Fault.flood(1234))
    assert "Logged" in (await ana.says("waste 3 limes mouldy")).text
    assert 1234.0 in waits


@ONE_DATABASE
async def test_a_tap_is_acknowledged_again_after_a_failure(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    said = await ana.says("waste 3 limes mouldy")
    telephone.server.fail_next("answerCallbackQuery", Fault.drop_before(), 2)
    await ana.taps(said.labels[0])
    for _tenth in range(600):
        if telephone.channel.idle:
            break
        await asyncio.sleep(0.1)
    assert [call.status for call in telephone.server.calls if call.method == "answercallbackquery"] == [200]


async def test_one_message_under_two_numbers_is_logged_once(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    said = await ana.says("waste 3 limes mouldy")
    updates = telephone.server.world.updates
    body = dict(telephone.server.chat(ana).messages[said.said or 0].data)
    for restarts in (False, True):
        if restarts:
            await telephone.restart()
        mark = telephone.server.mark()
        assert updates.push("message", body)
        await telephone.server.follow(ana, mark, expects=0)
    assert "lime  3  no price" in (await ana.says("week")).text


async def test_another_bot_on_the_same_database_counts_its_own_messages(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    for _time in range(3):
        assert "Logged" in (await ana.says("waste 3 limes mouldy")).text
    telephone.server.world.become_another_bot()
    await telephone.restart()
    for _time in range(3):
        assert "Logged" in (await ana.says("waste 3 limes mouldy")).text
    assert "lime  18  no price" in (await ana.says("week")).text
