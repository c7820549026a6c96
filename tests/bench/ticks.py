"""Measure one check for due reminders with a thousand pending ones, and with a hundred thousand."""

from __future__ import annotations

import asyncio
import statistics
import time
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from contextlib import ExitStack, closing
from dataclasses import dataclass
from datetime import timedelta

from bot.chat.reply.message import Reply
from bot.clock.ticker import Ticker
from bot.work.reminders.delivery import DueReminder, Outcome, Sent
from storage.store import Store
from tests.bench.filling import CHANNEL, NOW, Stopped, plan_reminders

FEW, MANY = 1_000, 100_000
DUE = 50
_BARS = 100  # among the opened bars; bars are numbered from one
_TIMES = 15


@dataclass(frozen=True)
class Ticks:
    """Milliseconds of one tick, medians: with nothing due, and with 50 due, sent and settled."""

    nothing_ms: float
    due_ms: float


def measure_ticks(make_url: Callable[[], str]) -> tuple[Ticks, Ticks]:
    """Measure with few and with many reminders, each in a new database with bars in it.

    Alternates, so that other load on the machine affects both.
    """
    with ExitStack() as open_stores:
        stores = []
        for pending in (FEW, MANY):
            url = make_url()
            plan_reminders(url, range(1, _BARS + 1), pending, NOW + timedelta(days=30))
            stores.append(open_stores.enter_context(closing(Store(url))))
        nothing = [[_tick(store, expected=0) for store in stores] for _time in range(_TIMES + 3)][3:]
        due = [[_with_some_due(store, number) for store in stores] for number in range(_TIMES + 1)][1:]
    few, many = (
        Ticks(statistics.median(one[at] for one in nothing), statistics.median(one[at] for one in due))
        for at in range(len(stores))
    )
    return few, many


def _with_some_due(store: Store, number: int) -> float:
    _let_come_due(store, number)
    return _tick(store, expected=DUE)


def _let_come_due(store: Store, number: int) -> None:
    first = 1_000_000 + number * DUE
    with store.engine.begin() as connection:
        connection.exec_driver_sql(
            f"UPDATE reminder SET due_at = {int(NOW.timestamp())}, first_due_at = {int(NOW.timestamp())} "  # noqa: S608
            f"WHERE id >= {first} AND id < {first + DUE}"
        )


def _tick(store: Store, expected: int) -> float:
    """Run one tick, with sends that succeed immediately; return the milliseconds."""

    async def sent(_due: DueReminder, _worded: Reply) -> Sent:
        return Sent(Outcome.SENT)

    with ThreadPoolExecutor(4) as workers:
        ticker = Ticker(store, Stopped(), CHANNEL, sent, workers)
        begun = time.perf_counter()
        tried = asyncio.run(ticker.tick())
        taken = time.perf_counter() - begun
    if tried != expected:
        raise AssertionError(f"{tried} reminders were due, not {expected}")
    return taken * 1000
