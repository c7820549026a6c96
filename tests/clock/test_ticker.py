"""Tests of the ticker: a machine's clock that goes back, and a database that cannot store a send."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator
from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, datetime, timedelta

import pytest

from bot.chat.reply.message import Reply
from bot.clock import ticker
from bot.clock.ticker import Ticker
from bot.work.reminders import delivery
from bot.work.reminders.delivery import DueReminder, Outcome, Sent
from storage.store import Store
from storage.trouble import AwayError
from tests.bench.filling import CHANNEL, NOW, Stopped, open_bars, plan_reminders

pytestmark = pytest.mark.parametrize("database", ["sqlite"], indirect=True)


@pytest.fixture
async def sent() -> list[int]:
    """The reminders that were sent, by their numbers."""
    return []


@pytest.fixture
async def ticking(store: Store, sent: list[int]) -> AsyncIterator[Ticker]:
    """A ticker on a database with one reminder due."""
    bars = open_bars(store.url.render_as_string(hide_password=False), [1])
    plan_reminders(store.url.render_as_string(hide_password=False), bars, 1, NOW)

    async def send(due: DueReminder, _worded: Reply) -> Sent:
        sent.append(due.id)
        return Sent(Outcome.SENT)

    with ThreadPoolExecutor(2) as workers:
        made = Ticker(store, Stopped(), CHANNEL, send, workers)
        yield made
        made.stop()
        await asyncio.sleep(0)


async def _until_sent(sent: list[int], within: float) -> bool:
    for _tenth in range(round(within * 10)):
        if sent:
            return True
        await asyncio.sleep(0.1)
    return False


async def test_a_clock_set_back_does_not_hold_reminders_up(
    ticking: Ticker, sent: list[int], monkeypatch: pytest.MonkeyPatch
) -> None:
    ahead = [timedelta(hours=2)]
    monkeypatch.setattr(ticker, "_at_once", lambda: datetime.now(UTC) + ahead[0])
    ticking.start(1)  # planned for two hours from now, as in the scheduler once the clock went back
    assert not await _until_sent(sent, 0.3)
    ahead[0] = timedelta(0)
    assert await _until_sent(sent, 60)


async def test_what_was_sent_is_noted_when_the_database_is_back(
    ticking: Ticker, sent: list[int], store: Store, monkeypatch: pytest.MonkeyPatch
) -> None:
    plain, failures = delivery.settle, iter([True, False])

    def settle(*arguments: object) -> object:
        if next(failures, False):
            raise AwayError("database is locked")
        return plain(*arguments)  # type: ignore[arg-type]

    monkeypatch.setattr(delivery, "settle", settle)
    assert await ticking.tick() == 1
    assert len(sent) == 1
    # Marked as sent: its lease does not expire, and it is not sent again.
    later = NOW + 2 * delivery.LEASE
    assert delivery.claim(store, CHANNEL, later) == []
