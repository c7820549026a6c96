"""Poll Telegram for updates, by one process at a time."""

from __future__ import annotations

import asyncio
import contextlib
import logging
import sys

from telegram import Bot
from telegram.error import Conflict, InvalidToken, RetryAfter, TelegramError

from bot.channels.telegram.http_client import LeanRequest
from bot.channels.telegram.outcomes import classify
from bot.channels.telegram.receiving.intake import Intake
from bot.channels.telegram.updates import ALLOWED
from storage.leader import Leadership
from storage.trouble import AwayError

log = logging.getLogger(__name__)
POLL_SECONDS = 25
_CONFLICTS_AT_START = 4
_STAND_BY_SECONDS = 2.0
_LONGEST_WAIT = 30.0
NO_TOKEN, SECOND_POLLER = 2, 3  # exit codes


class Poller:
    """Polls in a loop; only the next request confirms the updates of the last one."""

    def __init__(self, request: LeanRequest, bot: Bot, intake: Intake, leadership: Leadership) -> None:
        self._request = request
        self._bot = bot
        self._intake = intake
        self._leadership = leadership
        self._offset: int | None = None
        self._conflicts = self._failures = 0
        self._heard = False

    async def run(self) -> int:
        """Poll until cancelled or until it makes no sense; return the exit code."""
        try:
            while True:
                if not await self._leads():
                    await asyncio.sleep(_STAND_BY_SECONDS)
                    continue
                code = await self._ask()
                if code is not None:
                    return code
        finally:
            await self._intake.in_worker(self._leadership.give_up)

    async def _leads(self) -> bool:
        if self._leadership.undisputed:
            return True
        try:
            return bool(await self._intake.in_worker(self._leadership.take))
        except AwayError as error:
            log.warning("the database is unavailable: %s", error)
            return False

    async def _ask(self) -> int | None:
        """Poll once; return an exit code if polling again makes no sense."""
        try:
            updates = await self._request.updates(
                f"{self._bot.base_url}/getUpdates", self._offset, POLL_SECONDS if self._heard else 0, ALLOWED
            )
        except Conflict as error:
            if "webhook" in error.message.casefold():
                log.warning("a webhook is set for this bot: deleting it in order to poll")
                with contextlib.suppress(TelegramError):
                    await self._bot.delete_webhook()
                return None
            return await self._conflict()
        except InvalidToken:
            _say("Telegram does not know this token any more.")
            return NO_TOKEN
        except TelegramError as error:
            await self._failed(error)
            return None
        self._heard, self._failures, self._conflicts = True, 0, 0
        if updates:
            if await self._intake.take_in(updates):
                self._offset = updates[-1]["update_id"] + 1
            else:
                await asyncio.sleep(1.0)
        return None

    async def _conflict(self) -> int | None:
        self._conflicts += 1
        if not self._heard and self._conflicts >= _CONFLICTS_AT_START:
            _say("Another program listens with this token: stop that one first.")
            return SECOND_POLLER
        log.warning("another program polls with this token")
        await asyncio.sleep(1.0)
        return None

    async def _failed(self, error: TelegramError) -> None:
        self._failures += 1
        told = classify(error).wait if isinstance(error, RetryAfter) else 0.0
        wait = max(told, min(0.2 * 2**self._failures, _LONGEST_WAIT))
        self._intake.figures.went_wrong("polling")
        log.warning("polling failed, retry in %.1f s: %s", wait, error.message)
        await asyncio.sleep(wait)


def _say(text: str) -> None:
    with contextlib.suppress(OSError):
        print(text, file=sys.stderr)  # noqa: T201 - shown to the operator
