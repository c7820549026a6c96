"""Poll Telegram for updates, by one process at a time."""

from __future__ import annotations

import asyncio
import contextlib
import logging
import sys
import time

from telegram import Bot
from telegram.error import Conflict, InvalidToken, TelegramError

from bot.channels.telegram.http_client import LeanRequest
from bot.channels.telegram.outage import Outage
from bot.channels.telegram.receiving.intake import Intake
from bot.channels.telegram.updates import ALLOWED
from storage.locks.leader import Leadership
from storage.trouble import AwayError

log = logging.getLogger(__name__)
POLL_SECONDS = 25
_MOST_CONFLICTS = 3  # of a program on probation
_PROBATION_SECONDS = 60.0  # within which a newcomer gives way, and an absence that makes one
_AGAIN_SECONDS = 0.5
_STAND_BY_SECONDS = 2.0
NO_TOKEN, SECOND_POLLER = 2, 3  # exit codes


class Poller:
    """Polls in a loop; only the next request confirms the updates of the last one."""

    def __init__(self, request: LeanRequest, bot: Bot, intake: Intake, leadership: Leadership) -> None:
        self._request = request
        self._bot = bot
        self._intake = intake
        self._leadership = leadership
        self._offset: int | None = None
        self._conflicts = 0
        self._heard_since: float | None = None  # without a long gap
        self._said_at = -_PROBATION_SECONDS
        self.outage = Outage("Telegram")

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
                f"{self._bot.base_url}/getUpdates", self._offset, POLL_SECONDS, ALLOWED
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
        if self._heard_since is None or self.outage.seconds > _PROBATION_SECONDS:
            self._heard_since = time.monotonic()
        self.outage.over()
        if updates:
            if await self._intake.take_in(updates):
                self._offset = updates[-1]["update_id"] + 1
            else:
                await asyncio.sleep(1.0)
        return None

    async def _conflict(self) -> int | None:
        """Telegram ended this poll because another program polls: the one that came later gives way.

        The one that was there first asks again at once, which ends the poll of the newcomer.
        """
        if not self._is_proven:
            self._conflicts += 1
            if self._conflicts >= _MOST_CONFLICTS:
                _say("Another program listens with this token: stop that one first.")
                return SECOND_POLLER
        elif time.monotonic() - self._said_at > _PROBATION_SECONDS:
            self._said_at = time.monotonic()
            log.warning("another program polls with this token, and has to stop")
        await asyncio.sleep(_AGAIN_SECONDS)
        return None

    @property
    def _is_proven(self) -> bool:
        """Whether this program has been polling for so long that another one is the newcomer."""
        since = self._heard_since
        return since is not None and time.monotonic() - since > _PROBATION_SECONDS

    async def _failed(self, error: TelegramError) -> None:
        self._intake.figures.went_wrong("polling")
        await asyncio.sleep(self.outage.refused(error))


def _say(text: str) -> None:
    with contextlib.suppress(OSError):
        print(text, file=sys.stderr)  # noqa: T201 - shown to the operator
