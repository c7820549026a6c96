"""How far long work is, in a message that is edited and then gives its place to the answer."""

from __future__ import annotations

import asyncio
from concurrent.futures import Future
from dataclasses import replace

from telegram.error import TelegramError

from bot.channels.telegram.sending import Postman, Target
from bot.chat.reply.message import Reply


class Progress:
    """Shows what a worker thread tells, one send at a time: what comes meanwhile is soon out of date."""

    def __init__(self, loop: asyncio.AbstractEventLoop, postman: Postman, target: Target) -> None:
        self._loop = loop
        self._postman = postman
        self._target = target
        self._sending: Future[None] | None = None
        self._shown = False

    def show(self, reply: Reply) -> None:
        """Show it, from the thread that works."""
        if self._sending is None or self._sending.done():
            self._sending = asyncio.run_coroutine_threadsafe(self._show(reply), self._loop)

    async def _show(self, reply: Reply) -> None:
        try:
            self._target = await self._postman.tell(self._target, reply)
        except TelegramError:
            return  # the answer itself is what has to arrive
        self._shown = True

    async def answered(self, replies: list[Reply]) -> tuple[Target, list[Reply]]:
        """Return where the replies go, and the replies: the first takes the place of what was shown."""
        if self._sending is not None:
            await asyncio.wrap_future(self._sending)
        if not self._shown or not replies:
            return self._target, replies
        return self._target, [replace(replies[0], edits=True), *replies[1:]]
