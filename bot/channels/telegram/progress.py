"""Show the progress of long work in a message that is edited and then replaced by the answer."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from concurrent.futures import Future
from dataclasses import replace

from telegram.error import TelegramError

from bot.channels.telegram.parts import Target
from bot.channels.telegram.sending import Postman
from bot.chat.reply.message import Reply


class StoppedError(Exception):
    """The program ends: the work is given up, and begins again at the next start."""


class Progress:
    """Shows the progress reported by a worker thread, one send at a time, skipping outdated reports."""

    def __init__(
        self,
        loop: asyncio.AbstractEventLoop,
        postman: Postman,
        target: Target,
        ended: Callable[[], bool] = lambda: False,
    ) -> None:
        self._ended = ended
        self._loop = loop
        self._postman = postman
        self._target = target
        self._sending: Future[None] | None = None
        self._shown = False

    def show(self, reply: Reply) -> None:
        """Show it; called from the working thread. Raises StoppedError once the channel has ended."""
        if self._ended():
            raise StoppedError
        if self._sending is None or self._sending.done():
            self._sending = asyncio.run_coroutine_threadsafe(self._show(reply), self._loop)

    async def _show(self, reply: Reply) -> None:
        try:
            self._target = await self._postman.tell(self._target, reply)
        except TelegramError:
            return  # only the answer itself has to arrive
        self._shown = True

    async def answered(self, replies: list[Reply]) -> tuple[Target, list[Reply]]:
        """Return the target and the replies: the first replaces the progress message."""
        if self._sending is not None:
            await asyncio.wrap_future(self._sending)
        if not self._shown or not replies:
            return self._target, replies
        return self._target, [replace(replies[0], edits=True), *replies[1:]]
