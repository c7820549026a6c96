"""Receive updates with several processes on one PostgreSQL: each works on the updates that it leases."""

from __future__ import annotations

import asyncio
import contextlib
import logging
import secrets
from dataclasses import dataclass, field
from functools import partial

from bot.channels.telegram.confirmation_gate import Hold
from bot.channels.telegram.http_client import sending_only_while
from bot.channels.telegram.receiving.intake import Intake
from bot.channels.telegram.updates import CHANNEL, Incoming
from bot.chat.conversation.settlement import Receipt
from bot.work.inbox import inbox, leased_inbox
from bot.work.inbox.inbox import Letter
from bot.work.inbox.leases import uptime
from storage.trouble import AwayError

log = logging.getLogger(__name__)
_AT_ONCE = 16  # anything beyond this is left to the other processes
_SWEEP_SECONDS = 0.25


@dataclass(eq=False)
class SharedIntake(Intake):
    """For one of several processes. Any of them may claim an update that this one cannot begin yet."""

    name: str = field(default_factory=lambda: secrets.token_hex(8), init=False)
    # With the time of the last confirmed lease, by `uptime`.
    _held: dict[int, float] = field(default_factory=dict, init=False)
    # Leased again through another process while in progress.
    _anew: dict[int, Letter] = field(default_factory=dict, init=False)
    _sweeper: asyncio.Task[None] | None = field(default=None, init=False)
    _wake: asyncio.Event = field(default_factory=asyncio.Event, init=False)
    _closing: bool = field(default=False, init=False)
    _left: bool = field(default=False, init=False)  # an update received here may be waiting to be claimed

    async def open(self) -> None:
        """Begin to look for unclaimed updates, left by a process that is gone or too busy."""
        await self.in_worker(inbox.adopt, self.store, CHANNEL, self.mailbox, self.clock.now())
        self._sweeper = asyncio.create_task(self._sweep())

    async def close(self) -> None:
        """Stop claiming, finish the held updates, and release those that could not be finished."""
        self._closing = True
        self._wake.set()
        if self._sweeper is not None:
            await self._sweeper
        await super().close()
        try:
            await self.in_worker(leased_inbox.release, self.store, self.mailbox, self.name, list(self._held))
        except AwayError as error:
            log.warning("leases were not released and will expire: %s", error)

    @property
    def idle(self) -> bool:
        """Whether nothing is in progress or waiting to be marked or claimed."""
        return super().idle and not self._left

    @property
    def _room(self) -> int:
        return max(0, _AT_ONCE - len(self._held))

    async def _keep(self, letters: list[tuple[Letter, Incoming]]) -> None:
        began = uptime()
        known = {letter.update_id: incoming for letter, incoming in letters}
        leased = await self.in_worker(
            leased_inbox.take_in,
            self.store,
            [letter for letter, _ in letters],
            self.name,
            self._room,
            self.clock.now(),
        )
        self._left |= len(leased) < len(letters)
        for letter in leased:
            self._begin(letter, known[letter.update_id], began)

    def _begin(self, letter: Letter, incoming: Incoming, since: float) -> None:
        if letter.update_id in self._held:
            # Its lease expired while this process stalled, and now this process holds it again. Changes by
            # another process must be seen first, so it starts again after its release.
            self._anew[letter.update_id] = letter
            return
        self._held[letter.update_id] = since
        self.spawn(self._held_in_turn(letter, incoming))

    async def _held_in_turn(self, letter: Letter, incoming: Incoming) -> None:
        number = letter.update_id
        now: Letter | None = letter
        try:
            while now is not None:
                answered = await self._in_turn(incoming, now)
                now = self._anew.pop(number, None)
                if answered:
                    break
        except Exception:
            self._let_go(number)
            raise
        # Anything cut off by a stop is still held, and `close` releases it.
        self._let_go(number)

    def _let_go(self, number: int) -> None:
        del self._held[number]
        self._anew.pop(number, None)

    # -- stalled processes ---------------------------------------------------------------

    async def _work(self, incoming: Incoming, letter: Letter, hold: Hold | None) -> None:
        with sending_only_while(partial(self._may_send, letter)):
            await super()._work(incoming, letter, hold)

    def _receipt(self, letter: Letter) -> Receipt:
        return lambda unit, replies: leased_inbox.mark_worked(unit, letter, self.name, replies)

    def _note_sent(self, letter: Letter, replies: str | None, sent: int) -> None:
        leased_inbox.note_sent(self.store, letter, self.name, replies, sent)

    async def _first(self, letter: Letter) -> Letter | None:
        return letter if self._is_certain(letter) else await self._as_it_stands(letter)

    async def _is_ours(self, letter: Letter) -> bool:
        return self._is_certain(letter) or await self._as_it_stands(letter) is not None

    async def _may_send(self, letter: Letter) -> bool:
        return self._is_certain(letter) or await self._hold_on(letter) is not None

    def _is_certain(self, letter: Letter) -> bool:
        """Whether the lease was confirmed so recently that no query is needed."""
        age = uptime() - self._held[letter.update_id]
        return letter.update_id not in self._anew and age < leased_inbox.LEASE_SECONDS / 2

    async def _as_it_stands(self, letter: Letter) -> Letter | None:
        try:
            return await self._hold_on(letter)
        except AwayError:
            return letter

    async def _hold_on(self, letter: Letter) -> Letter | None:
        """Return the stored letter if this process still holds it without a break. Raises AwayError."""
        began = uptime()
        found = await asyncio.to_thread(leased_inbox.hold_on, self.store, letter, self.name)
        if letter.update_id in self._anew:
            return None
        if found is not None:
            self._held[letter.update_id] = began
        return found

    async def _renew(self) -> None:
        """Extend all leases."""
        began = uptime()
        held = [*self._held, *self._answered]
        # Not in a worker thread: those may all be waiting for rows locked by a stalled process.
        for number in await asyncio.to_thread(leased_inbox.renew, self.store, self.mailbox, self.name, held):
            if number in self._held:
                self._held[number] = began

    async def _flush(self) -> None:
        await super()._flush()
        # The next update of a chat may have been waiting for the one just marked.
        self._wake.set()

    async def _sweep(self) -> None:
        loop = asyncio.get_running_loop()
        renewed = loop.time()
        while not self._closing:
            self._wake.clear()
            try:
                if loop.time() - renewed > leased_inbox.RENEW_SECONDS:
                    renewed = loop.time()
                    await self._renew()
                if self._room:
                    began = uptime()
                    found = await asyncio.to_thread(
                        leased_inbox.claim, self.store, self.mailbox, self.name, self._room
                    )
                    self._left &= bool(found or self._held)
                    for letter in found:
                        self._begin(letter, self._again(letter), began)
            except AwayError as error:
                log.warning("no search for unclaimed updates, the database is unavailable: %s", error)
                self.figures.went_wrong("sweeping")
            except Exception:
                # After any error, the loop must go on looking for unclaimed updates.
                log.exception("the search for unclaimed updates failed")
                self.figures.went_wrong("sweeping")
            with contextlib.suppress(TimeoutError):
                await asyncio.wait_for(self._wake.wait(), _SWEEP_SECONDS)
