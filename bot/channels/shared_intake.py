"""Taking updates in where several processes share one PostgreSQL: each works what it holds a lease on."""

from __future__ import annotations

import asyncio
import contextlib
import logging
import secrets
from concurrent.futures import Executor

from bot.channels.figures import Figures
from bot.channels.intake import Answering, Intake
from bot.channels.updates import CHANNEL, Incoming
from bot.work import shared_mail
from bot.work.desk import Clock
from bot.work.mail import Letter
from storage.store import Store
from storage.trouble import AwayError

log = logging.getLogger(__name__)
_AT_ONCE = 16  # what is more is left to the others
_SWEEP_SECONDS = 0.25


class SharedIntake(Intake):
    """For one of several processes. What it cannot begin at once any of them may claim."""

    def __init__(
        self, store: Store, clock: Clock, answering: Answering, workers: Executor, figures: Figures
    ) -> None:
        super().__init__(store, clock, answering, workers, figures)
        self.name = secrets.token_hex(8)
        self._held: dict[int, None] = {}
        self._sweeper: asyncio.Task[None] | None = None
        self._wake = asyncio.Event()
        self._closing = False
        self._left = False  # whether something that was taken in here may wait to be claimed

    async def open(self) -> None:
        """Begin to look for what nobody works on, left by a process that is gone or too busy."""
        self._sweeper = asyncio.create_task(self._sweep())

    async def close(self) -> None:
        """Take up nothing more, finish what is held, and give back what could not be finished."""
        self._closing = True
        self._wake.set()
        if self._sweeper is not None:
            await self._sweeper
        await super().close()
        try:
            await self.in_worker(shared_mail.release, self.store, CHANNEL, self.name, list(self._held))
        except AwayError as error:
            log.warning("leases run out by themselves: %s", error)

    @property
    def idle(self) -> bool:
        """Whether nothing is being worked on, waits to be marked or to be claimed."""
        return super().idle and not self._left

    @property
    def _room(self) -> int:
        return max(0, _AT_ONCE - len(self._held))

    async def _keep(self, letters: list[tuple[Letter, Incoming]]) -> None:
        known = {letter.update_id: incoming for letter, incoming in letters}
        leased = await self.in_worker(
            shared_mail.take_in,
            self.store,
            [letter for letter, _ in letters],
            self.name,
            self._room,
            self.clock.now(),
        )
        self._left |= len(leased) < len(letters)
        for letter in leased:
            self._begin(letter, known[letter.update_id])

    def _begin(self, letter: Letter, incoming: Incoming) -> None:
        if letter.update_id in self._held:
            return  # its lease ran out while this process stood still, and now it holds it again
        self._held[letter.update_id] = None
        self.spawn(self._held_in_turn(letter, incoming))

    async def _held_in_turn(self, letter: Letter, incoming: Incoming) -> None:
        try:
            await self._in_turn(incoming, letter)
        except Exception:
            del self._held[letter.update_id]
            raise
        # Whatever a stop cuts off is still held, and given back by close.
        del self._held[letter.update_id]

    async def _flush(self) -> None:
        await super()._flush()
        # The next update of a chat may have waited for what was just marked.
        self._wake.set()

    async def _sweep(self) -> None:
        loop = asyncio.get_running_loop()
        renewed = loop.time()
        while not self._closing:
            self._wake.clear()
            try:
                if loop.time() - renewed > shared_mail.RENEW_SECONDS:
                    renewed = loop.time()
                    held = [*self._held, *(one.update_id for one in self._answered)]
                    await self.in_worker(shared_mail.renew, self.store, CHANNEL, self.name, held)
                if self._room:
                    found = await self.in_worker(
                        shared_mail.claim, self.store, CHANNEL, self.name, self._room
                    )
                    self._left &= bool(found or self._held)
                    for letter in found:
                        self._begin(letter, self._again(letter))
            except AwayError as error:
                log.warning("looking for what is left: the database cannot work just now: %s", error)
                self.figures.went_wrong("sweeping")
            except Exception:
                # Whatever it is, what others leave undone must still be looked for.
                log.exception("looking for what is left failed")
                self.figures.went_wrong("sweeping")
            with contextlib.suppress(TimeoutError):
                await asyncio.wait_for(self._wake.wait(), _SWEEP_SECONDS)
