"""What keeps an update from being confirmed to its sender."""

from __future__ import annotations

import asyncio
import logging
from collections.abc import Awaitable, Callable

from storage.trouble import AwayError

log = logging.getLogger(__name__)


class Hold:
    """Keeps an update until nothing of it can be lost: its answer has left, or it is on disk.

    Waiting for the reply to a request that has left would keep the next update waiting as well. Should
    the request fail, the update is written down before the answer is tried again.
    """

    def __init__(self, write_down: Callable[[], Awaitable[None]]) -> None:
        self._write_down = write_down
        self._free = asyncio.get_running_loop().create_future()

    @property
    def free(self) -> asyncio.Future[None]:
        """Done when the update may be confirmed."""
        return self._free

    def let_go(self) -> None:
        """Let the update be confirmed."""
        if not self._free.done():
            self._free.set_result(None)

    async def stuck(self) -> None:
        """The answer did not arrive: see that a new process finds the update, should this one end."""
        try:
            await self._write_down()
        except AwayError as error:
            log.warning("an answer waits that is not written down: %s", error)
        else:
            self.let_go()
