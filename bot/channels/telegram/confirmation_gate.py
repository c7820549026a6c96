"""Confirmation gate: delays the confirmation of an update until it cannot be lost."""

from __future__ import annotations

import asyncio
import logging
from collections.abc import Awaitable, Callable

from storage.trouble import AwayError

log = logging.getLogger(__name__)


class Hold:
    """Holds an update until it cannot be lost: its answer has left, or it is on disk.

    Waiting for the response to a request that has left would delay the next update too. If the request fails,
    the update is stored before the next attempt.
    """

    def __init__(self, write_down: Callable[[], Awaitable[None]]) -> None:
        self._write_down = write_down
        self._free = asyncio.get_running_loop().create_future()

    @property
    def free(self) -> asyncio.Future[None]:
        """Done when the update may be confirmed."""
        return self._free

    def let_go(self) -> None:
        """Allow the update to be confirmed."""
        if not self._free.done():
            self._free.set_result(None)

    async def stuck(self) -> None:
        """The answer did not arrive: store the update, so that a new process finds it if this one ends."""
        try:
            await self._write_down()
        except AwayError as error:
            log.warning("an unsent answer could not be stored: %s", error)
        else:
            self.let_go()
