"""Look after the running bot: its files, its contact with Telegram, and a line a day in the log."""

from __future__ import annotations

import asyncio
import logging
import time
from collections.abc import Awaitable, Callable
from typing import Any

from telegram import Bot
from telegram.error import TelegramError

from bot.channels.telegram.http_client import LeanRequest
from bot.channels.telegram.metrics import Figures
from storage.file_watch import FileWatch
from storage.locks.holding import Hold, InUseError
from storage.store import Store
from storage.trouble import DatabaseError

log = logging.getLogger(__name__)
_EVERY_SECONDS = 60.0
_SILENT_SECONDS = 120.0  # longer than the longest poll and the pauses between two attempts
_CHECK_ROUNDS = 6 * 60  # between two checks of all pages
_DAY_ROUNDS = 24 * 60


class Watch:
    """Keeps what `/ready` and the log say about files, database and Telegram."""

    def __init__(
        self,
        store: Store,
        bot: Bot,
        requests: tuple[LeanRequest, ...],
        figures: Figures,
        in_worker: Callable[..., Awaitable[Any]],
    ) -> None:
        self.hold: Hold | None = None  # on the database, taken again after its server was away
        self._bot = bot
        self._requests = requests
        self._figures = figures
        self._in_worker = in_worker
        self._files = FileWatch(store)
        self._trouble = ""
        self._task: asyncio.Task[None] | None = None

    def start(self) -> None:
        """Begin to look."""
        self._task = asyncio.create_task(self._run())

    async def stop(self) -> None:
        """Stop looking."""
        if self._task is not None:
            self._task.cancel()
            await asyncio.wait({self._task})

    @property
    def silent_seconds(self) -> float:
        """How long ago Telegram was heard."""
        return time.monotonic() - max(request.heard_at for request in self._requests)

    @property
    def trouble(self) -> str:
        """What keeps the bot from working, '' if nothing."""
        if self._files.damage:
            return f"the database is damaged: {self._files.damage}"
        if self._trouble:
            return self._trouble
        if self.silent_seconds > _SILENT_SECONDS:
            return f"Telegram was not heard for {self.silent_seconds:.0f} s"
        return ""

    async def _run(self) -> None:
        rounds = 0
        while True:
            await asyncio.sleep(_EVERY_SECONDS)
            rounds += 1
            await self.look(checks=not rounds % _CHECK_ROUNDS)
            if not rounds % _DAY_ROUNDS:
                log.info("the last day: %s", self._figures.day())

    async def look(self, checks: bool = False) -> None:
        """Look once; with `checks` at every page of the database too."""
        try:
            found = await self._in_worker(self._files.look)
            if checks and await self._in_worker(self._files.check):
                log.error("the database is damaged (%s): stop, and restore a backup", self._files.damage)
            if self.hold is not None:
                await self._in_worker(self.hold.take)
        except DatabaseError as error:
            found = f"the database does not answer ({type(error).__name__})"
        except InUseError:
            found = "the database is being moved or restored"
        if found and found != self._trouble:
            log.error("%s", found)
        self._trouble = found
        if self.silent_seconds > _EVERY_SECONDS:
            # With a webhook nothing is asked for long: make sure that Telegram could be told.
            try:
                await self._bot.get_me()
            except TelegramError as error:
                log.warning("Telegram was not heard for %.0f s: %s", self.silent_seconds, error.message)
