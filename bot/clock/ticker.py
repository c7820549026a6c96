"""The tick: claim due reminders, send them and settle them. The database keeps the state."""

from __future__ import annotations

import asyncio
import logging
from collections.abc import Awaitable, Callable
from concurrent.futures import Executor
from datetime import UTC, datetime

from apscheduler.job import Job
from apscheduler.schedulers.asyncio import AsyncIOScheduler

from bot.chat.features.reminders.due import worded_reminder
from bot.chat.reply.message import Reply
from bot.work.context import Clock
from bot.work.inbox import inbox
from bot.work.people import bar_deletion
from bot.work.reminders import delivery
from bot.work.reminders.delivery import DueReminder, Outcome, Sent
from storage.store import Store
from storage.trouble import AwayError

log = logging.getLogger(__name__)
Sends = Callable[[DueReminder, Reply], Awaitable[Sent]]
_PRUNE_HOURS = 6
_SETTLING_WAITS = (0.5, 1.0, 2.0, 4.0, 8.0, 16.0)  # seconds, well within the lease


class Ticker:
    """Sends the reminders of one channel. Several may share one database: each claims its own."""

    def __init__(self, store: Store, clock: Clock, channel: str, send: Sends, executor: Executor) -> None:
        self._store = store
        self._clock = clock
        self._channel = channel
        self._send = send
        self._executor = executor
        self._scheduler = AsyncIOScheduler()
        self._watch: asyncio.Task[None] | None = None
        self._stopping = False
        self.undelivered = 0  # reminders that no chat would take, as of the last tick

    async def tick(self) -> int:
        """Send everything that is due now; return the number of attempts."""
        loop = asyncio.get_running_loop()
        tried = 0
        while not self._stopping:
            due = await loop.run_in_executor(
                self._executor, delivery.claim, self._store, self._channel, self._clock.now()
            )
            if not due:
                break
            tried += len(due)
            # Chats run in parallel and are settled separately, so one that hangs does not block the others.
            await asyncio.gather(*(self._one(one) for one in due))
        self.undelivered = await loop.run_in_executor(
            self._executor, delivery.undelivered, self._store, self._channel
        )
        return tried

    async def _look(self) -> None:
        """Tick; if the database is unavailable, only write a line to the log."""
        try:
            await self.tick()
        except AwayError as error:
            log.warning("reminders wait: the database is unavailable: %s", error)

    async def _one(self, due: DueReminder) -> None:
        try:
            worded = await asyncio.get_running_loop().run_in_executor(
                self._executor, worded_reminder, due, self._clock.now(), self._store
            )
            sent = await self._send(due, worded)
        except Exception:
            log.exception("a reminder could not be worded or sent")
            sent = Sent(Outcome.REFUSED, "fault")
        if sent.outcome is Outcome.LEFT:
            return
        if sent.outcome is not Outcome.SENT:
            log.warning("a reminder of bar %d was not sent: %s", due.bar.id, sent.error)
        for wait in (*_SETTLING_WAITS, None):
            try:
                await self._settle(due, sent)
            except AwayError:
                # A reminder sent but not recorded is sent again when its lease expires.
                if wait is None:
                    raise
                await asyncio.sleep(wait)
            else:
                return

    async def _settle(self, due: DueReminder, sent: Sent) -> None:
        await asyncio.get_running_loop().run_in_executor(
            self._executor, delivery.settle, self._store, due, sent, self._clock.now()
        )

    async def heard_from(self, chat: str) -> None:
        """Try the undelivered reminders again, now that a chat has spoken."""
        if not self.undelivered:
            return
        try:
            due = await asyncio.get_running_loop().run_in_executor(
                self._executor, delivery.heard_from, self._store, self._channel, chat, self._clock.now()
            )
        except AwayError:
            return  # the next round comes without this
        if due:
            await self._look()

    def start(self, seconds: int) -> None:
        """Tick at a fixed interval, starting immediately."""
        job = self._scheduler.add_job(
            self._look,
            "interval",
            seconds=seconds,
            next_run_time=_at_once(),
            # A late tick must still run, and two at once would gain nothing.
            misfire_grace_time=None,
            coalesce=True,
            max_instances=1,
        )
        self._scheduler.add_job(self.prune, "interval", hours=_PRUNE_HOURS, misfire_grace_time=None)
        self._scheduler.start()
        self._watch = asyncio.create_task(self._watch_clock(job, seconds))

    async def _watch_clock(self, job: Job, seconds: int) -> None:
        """Tick when the machine's clock was set back: the scheduler would sleep until it catches up."""
        while True:
            before = _at_once()
            await asyncio.sleep(seconds)
            if _at_once() < before:
                log.warning("the machine's clock was set back")
                job.modify(next_run_time=_at_once())

    async def prune(self) -> None:
        """Delete expired data: updates answered long ago, and bars past their grace period."""
        loop = asyncio.get_running_loop()
        await loop.run_in_executor(self._executor, inbox.prune, self._store, self._clock.now())
        gone = await loop.run_in_executor(self._executor, bar_deletion.purge, self._store, self._clock.now())
        if gone:
            log.info("bars deleted after their grace period: %d", gone)

    def stop(self) -> None:
        """Claim nothing more; the channel finishes the sends in progress."""
        self._stopping = True
        if self._watch is not None:
            self._watch.cancel()
        if self._scheduler.running:
            self._scheduler.shutdown(wait=False)


def _at_once() -> datetime:
    """Return the current instant of the scheduler's clock, not the bar's."""
    return datetime.now(UTC)
