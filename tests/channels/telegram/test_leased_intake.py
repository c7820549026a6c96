"""Tests of two bots on one PostgreSQL: shared updates, one poller, and the loss of one bot."""

from __future__ import annotations

import asyncio
import threading
from collections.abc import AsyncIterator
from datetime import UTC, datetime
from typing import Any

import pytest

from bot.channels.telegram.channel import TelegramChannel
from bot.chat.reply.message import Reply
from bot.settings import Settings
from bot.work.inbox import inbox, leased_inbox
from storage.store import Store
from tests.api import Person, Server, free_port
from tests.channels.telegram.conftest import SET_UP, settings_for
from tests.channels.telegram.test_webhook import hooked
from tests.house import Hands

pytestmark = pytest.mark.parametrize("database", ["postgresql"], indirect=True)


class Pair:
    """Two bots as in two processes: each with its own store, settings and connections."""

    def __init__(self, server: Server, store: Store) -> None:
        self.server = server
        self.clock = Hands(datetime(2026, 11, 25, 18, 0, tzinfo=UTC))
        self.stores = [store, Store(store.url.render_as_string(hide_password=False))]
        self.bots: list[TelegramChannel] = []
        self.lost: list[TelegramChannel] = []

    async def start(self, *settings: Settings) -> None:
        for one, store in zip(settings, self.stores, strict=True):
            self.bots.append(TelegramChannel(one, store, self.clock))
            await self.bots[-1].start()

    async def stop(self) -> None:
        for one in self.bots:
            await one.stop()
        for one in self.lost:
            # The system closes the connections of a dead process in the same way.
            await one.bot.shutdown()
            if one._door is not None:
                await one._door.shut()
        self.stores[1].close()

    async def opened_bar(self) -> Person:
        ana = self.server.person("Ana")
        for line in ("/start", *SET_UP, "price oranges 0.60 each"):
            await ana.says(line)
        return ana

    def lose(self, number: int) -> None:
        """Lose one of them from one moment to the next: it finishes and releases nothing."""
        gone = self.bots.pop(number)
        self.lost.append(gone)
        gone.ticker.stop()
        intake = gone.intake
        for task in [*intake._tasks, intake._sweeper, gone._poller]:  # type: ignore[attr-defined]
            if task is not None:
                task.cancel()


@pytest.fixture
async def pair(api: Server, store: Store) -> AsyncIterator[Pair]:
    built = Pair(api, store)
    yield built
    await built.stop()


@pytest.fixture
def alternating(api: Server) -> list[str]:
    """Send each update to the next of these addresses, as a proxy in front of several bots would."""
    return api.world.updates.behind


async def _both_hooked(pair: Pair, alternating: list[str]) -> None:
    ports = [free_port(), free_port()]
    await pair.start(
        *(hooked(pair.server, store, port) for store, port in zip(pair.stores, ports, strict=True))
    )
    alternating += [f"http://127.0.0.1:{port}/telegram" for port in ports]


async def test_an_evening_shared_by_two(pair: Pair, alternating: list[str]) -> None:
    await _both_hooked(pair, alternating)
    ana = await pair.opened_bar()
    for count in (1, 2, 3, 4):
        assert f"{count} orange" in (await ana.says(f"waste {count} oranges mouldy")).text
    assert "€6.00" in (await ana.says("week")).text


async def test_a_burst_in_one_chat_is_answered_in_its_order(pair: Pair, alternating: list[str]) -> None:
    await _both_hooked(pair, alternating)
    ana = await pair.opened_bar()
    mark = pair.server.mark()
    for count in range(1, 13):
        ana.writes(f"waste {count} oranges mouldy")
    followed = await pair.server.follow(ana, mark, expects=12)
    said = [seen.text.split(" orange")[0].rsplit(" ", 1)[-1] for seen in followed.seen]
    assert said == [str(count) for count in range(1, 13)]
    assert "78" in (await ana.says("week")).text


@pytest.mark.long
async def test_what_one_left_undone_the_other_does(
    pair: Pair, alternating: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(leased_inbox, "LEASE_SECONDS", 2)
    monkeypatch.setattr(leased_inbox, "RENEW_SECONDS", 0.5)
    await _both_hooked(pair, alternating)
    ana = await pair.opened_bar()
    # The process that holds an earlier update of the chat would get the next one too.
    for _ in range(1200):
        if not inbox.waiting(pair.stores[0], pair.bots[0].mailbox):
            break
        await asyncio.sleep(0.05)
    both = list(alternating)
    alternating[:] = both[:1]
    stuck = asyncio.Event()

    async def hang(*_: object) -> None:
        stuck.set()
        await asyncio.sleep(3600)

    monkeypatch.setattr(pair.bots[0].intake.answering, "work", hang)
    ana.writes("waste 5 oranges mouldy")
    await asyncio.wait_for(stuck.wait(), 60)
    alternating[:] = both[1:]
    ana.writes("waste 6 oranges mouldy")  # must wait for the one before it
    mark = pair.server.mark()
    await asyncio.sleep(3)  # longer than a lease: it is renewed while its owner lives
    assert not pair.server.messages(ana)[-1].text.startswith("Logged: 6")
    pair.lose(0)
    followed = await pair.server.follow(ana, mark, expects=2)
    assert [seen.text.splitlines()[0][:9] for seen in followed.seen] == ["Logged: 5", "Logged: 6"]
    assert "11" in (await ana.says("week")).text


async def test_one_asks_and_the_other_takes_over(pair: Pair) -> None:
    server = pair.server
    await pair.start(*(settings_for(server, store) for store in pair.stores))
    ana = await pair.opened_bar()
    assert not [call for call in server.world.calls if call.method == "getupdates" and call.status == 409]
    await pair.bots.pop(0).stop()
    assert "2 oranges" in (await ana.says("waste 2 oranges mouldy")).text


async def _stands_still(
    pair: Pair, monkeypatch: pytest.MonkeyPatch, words: str
) -> tuple[Person, threading.Event]:
    """Stall the first of two while it works on these words, until its leases expire; return how it continues.

    The other disappears exactly when it would send the replies in its place.
    """
    goes_on, works = threading.Event(), asyncio.Event()
    first, second = pair.bots
    loop = asyncio.get_running_loop()
    answer = first.conversation.answer

    def stand_still(*given: Any) -> list[Reply]:
        loop.call_soon_threadsafe(works.set)
        goes_on.wait(120)
        return answer(*given)

    ana = await pair.opened_bar()
    for _ in range(1200):
        if not inbox.waiting(pair.stores[0], pair.bots[0].mailbox):
            break
        await asyncio.sleep(0.05)
    monkeypatch.setattr(first.conversation, "answer", stand_still)
    sends = asyncio.Event()

    async def hang(*_: object) -> None:
        sends.set()
        await asyncio.sleep(3600)

    monkeypatch.setattr(second.postman, "deliver", hang)
    pair.server.world.updates.behind[:] = pair.server.world.updates.behind[:1]
    ana.writes(words)
    await asyncio.wait_for(works.wait(), 60)
    first.intake._sweeper.cancel()  # type: ignore[attr-defined]
    await asyncio.wait_for(sends.wait(), 60)
    pair.lose(1)
    return ana, goes_on


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ("waste 5 oranges mouldy", "Logged: 5 oranges"),
        pytest.param("week", "No waste logged", marks=pytest.mark.long),
    ],
)
@pytest.mark.long
async def test_whoever_stood_still_answers_in_the_end_when_the_other_is_gone(
    pair: Pair, alternating: list[str], monkeypatch: pytest.MonkeyPatch, words: str, said: str
) -> None:
    monkeypatch.setattr(leased_inbox, "LEASE_SECONDS", 2)
    monkeypatch.setattr(leased_inbox, "RENEW_SECONDS", 0.5)
    await _both_hooked(pair, alternating)
    ana, goes_on = await _stands_still(pair, monkeypatch, words)
    mark = pair.server.mark()
    goes_on.set()
    await asyncio.sleep(0.3)  # it sees at its commit, or at its send, that another process owns the update
    assert not pair.server.messages(ana)[-1].text.startswith(said)
    await pair.bots[0].intake.open()
    followed = await pair.server.follow(ana, mark, expects=1)
    assert len(followed.seen) == 1
    assert followed.seen[0].text.startswith(said)
    assert "(This may be a repeat.)" in followed.seen[0].text
    assert "€3.00" in (await ana.says("week")).text or said.startswith("No waste")
