"""Receive updates: store them first, answer them in the order of each chat, then mark them as done."""

from __future__ import annotations

import asyncio
import json
import logging
import time
from abc import ABC, abstractmethod
from collections.abc import Awaitable, Callable, Collection, Coroutine, Sequence
from concurrent.futures import Executor
from dataclasses import dataclass, field
from typing import Any, TypeVar

from bot.channels.telegram.confirmation_gate import Hold
from bot.channels.telegram.http_client import LeftToAnotherError
from bot.channels.telegram.metrics import Figures
from bot.channels.telegram.receiving.chat_locks import Lately, PersonPace, Turns
from bot.channels.telegram.updates import CHANNEL, Incoming
from bot.chat.conversation.settlement import AlreadyDoneError, Receipt
from bot.work.context import Clock
from bot.work.inbox import inbox
from bot.work.inbox.inbox import Letter
from storage.store import Store
from storage.trouble import AwayError, ConflictError, DatabaseError
from storage.types import JsonObject

log = logging.getLogger(__name__)
Update = JsonObject
Thing = TypeVar("Thing")
_REMEMBERED = 50_000  # update ids kept in memory, to drop duplicates early
_FLUSH_SECONDS = 0.05
_MOMENT_SECONDS = 0.01  # an update answered by then need not be stored before it is confirmed
_GRACE_SECONDS = 8
_FIRST_WAIT, _LONGEST_WAIT = 0.2, 5.0
_EXCUSE_AFTER = 3.0  # seconds without a database before the person is told
# Records that so many parts of an answer have left; the replies as JSON come with the first.
Left = Callable[[str | None, int], Awaitable[None]]


class Answering(ABC):
    """The interface that answers updates."""

    @property
    def beside(self) -> Collection[asyncio.Task[None]]:
        """Tasks still running after the answers, such as the acknowledgement of a tap."""
        return ()

    @abstractmethod
    def read(self, update: Update) -> Incoming:
        """Parse an update."""

    @abstractmethod
    async def work(
        self, incoming: Incoming, letter: Letter, receipt: Receipt, hold: Hold | None, left: Left
    ) -> None:
        """Process an update and send the answer.

        `receipt` is called before a change, `left` after each part of an answer with several, and `hold` is
        released once all of it has left. Raises AlreadyDoneError if the receipt is refused,
        LeftToAnotherError if the sending is.
        """

    @abstractmethod
    async def suggest(self, incoming: Incoming) -> None:
        """Answer an inline query; it is never stored."""

    @abstractmethod
    async def excuse(self, incoming: Incoming) -> None:
        """Tell the person that the answer waits for the database."""

    @abstractmethod
    async def failed(self, incoming: Incoming, letter: Letter) -> None:
        """Tell the person about a failure; called in the exception handler."""


@dataclass(eq=False)
class Intake(ABC):
    """Incoming updates, from polling or webhook."""

    store: Store
    clock: Clock
    answering: Answering
    workers: Executor
    figures: Figures
    mailbox: str  # the channel and the bot
    pace: PersonPace = field(default_factory=lambda: PersonPace(0))
    turns: Turns = field(default_factory=Turns, init=False)
    _tasks: set[asyncio.Task[Any]] = field(default_factory=set, init=False)
    _answered: dict[int, Letter] = field(default_factory=dict, init=False)  # until they are marked on disk
    _flushing: asyncio.Task[None] | None = field(default=None, init=False)
    _messages: Lately[str] = field(default_factory=lambda: Lately(_REMEMBERED), init=False)

    # -- lifecycle -----------------------------------------------------------------------

    @abstractmethod
    async def open(self) -> None:
        """Resume unfinished updates."""

    async def close(self) -> None:
        """Finish the work in progress; the next process resumes anything cut off."""
        if self._tasks:
            await asyncio.wait(self._tasks, timeout=_GRACE_SECONDS)
        if self.answering.beside:
            await asyncio.wait(self.answering.beside, timeout=_GRACE_SECONDS)
        for task in self._tasks:
            task.cancel()
        await self._flush()

    @property
    def idle(self) -> bool:
        """Whether nothing is in progress or waiting to be marked."""
        return not (self._tasks or self._answered or self.answering.beside)

    def spawn(self, work: Coroutine[Any, Any, Thing]) -> asyncio.Task[Thing]:
        """Run a task in the background; `close` waits for it."""
        task = asyncio.create_task(work)
        self._tasks.add(task)
        task.add_done_callback(self._tasks.discard)
        return task

    async def in_worker(self, function: Callable[..., Any], *arguments: Any) -> Any:
        """Call a blocking function in a worker thread, so that it does not block the event loop."""
        return await asyncio.get_running_loop().run_in_executor(self.workers, function, *arguments)

    # -- receiving -----------------------------------------------------------------------

    async def take_in(self, updates: Sequence[Update]) -> bool:
        """Ensure that updates are answered; True once each is on disk, or answered without a change.

        False when they could not be stored: the sender must send them again.
        """
        letters: list[tuple[Letter, Incoming]] = []
        for update in updates:
            try:
                incoming = self.answering.read(update)
            except (KeyError, TypeError, ValueError, AttributeError):
                # An unknown shape: requesting it again would return the same.
                self.figures.went_wrong("unreadable")
                log.exception("an update could not be parsed and is skipped")
                continue
            self.figures.update_came(incoming.kind)
            message, number = incoming.message, incoming.update_id
            if message is not None and self._messages.first(message.key, number) != number:
                log.info("a message came again under another number")
                continue
            if incoming.typing is not None:
                # Answered immediately or not at all, so it is not stored.
                self.spawn(self.answering.suggest(incoming))
                continue
            letter = Letter(self.mailbox, incoming.update_id, json.dumps(update), chat=incoming.chat)
            letters.append((letter, incoming))
        try:
            await self._keep(letters)
        except AwayError as error:
            self.figures.went_wrong("taking in")
            log.warning("updates could not be stored and will be sent again: %s", error)
            return False
        return True

    @abstractmethod
    async def _keep(self, letters: list[tuple[Letter, Incoming]]) -> None:
        """Begin to answer letters, and return when none can be lost. Raises AwayError."""

    def _again(self, letter: Letter) -> Incoming:
        """Parse a letter read from disk."""
        return self.answering.read(json.loads(letter.payload))

    # -- answering -----------------------------------------------------------------------

    async def _in_turn(self, incoming: Incoming, letter: Letter, hold: Hold | None = None) -> bool:
        """Process one update after the earlier ones of its chat; return whether it was answered here."""
        begun = time.monotonic()
        if incoming.message is not None:
            await self.pace.wait(incoming.message.sender.outside_id)
        async with self.turns.of(incoming.chat):
            try:
                answered = await self._worked(incoming, letter, hold)
            except Exception:
                if not await self._is_ours(letter):
                    return False
                self.figures.went_wrong("answering")
                await self.answering.failed(incoming, letter)
                answered = True
        if answered:
            self.figures.answered(time.monotonic() - begun)
            self._mark(letter)
        return answered

    async def _worked(self, incoming: Incoming, letter: Letter, hold: Hold | None) -> bool:
        """Process it, however long the database is away; a stored update never leads to a failure message.

        False if it is already finished, or belongs to another process.
        """
        asked_at = time.monotonic()
        wait = _FIRST_WAIT
        excused = False
        now = await self._first(letter)
        while now is not None:
            try:
                await self._work(incoming, now, hold)
            except LeftToAnotherError:
                return False
            except AlreadyDoneError:
                # The stored row names the owner; if it holds replies for this process, they are still to be
                # sent.
                now = await self._as_it_stands(letter)
                continue
            except ConflictError:
                # If this process stalled for longer than its lease, another may have been faster.
                now = await self._as_it_stands(letter)
                if now is not None and now.replies is None:
                    raise
                continue
            except AwayError as error:
                log.warning("the database is unavailable: %s", error)
                self.figures.went_wrong("database")
            else:
                return True
            if not excused and time.monotonic() - asked_at > _EXCUSE_AFTER:
                excused = True
                await self.answering.excuse(incoming)
            await asyncio.sleep(wait)
            wait = min(2 * wait, _LONGEST_WAIT)
            now = await self._as_it_stands(letter)
        return False

    async def _work(self, incoming: Incoming, letter: Letter, hold: Hold | None) -> None:
        await self.answering.work(incoming, letter, self._receipt(letter), hold, self._noting(letter))

    def _noting(self, letter: Letter) -> Left:
        async def left(replies: str | None, sent: int) -> None:
            try:
                await self.in_worker(self._note_sent, letter, replies, sent)
            except AwayError as error:
                log.warning("the progress of an answer could not be stored: %s", error)

        return left

    def _note_sent(self, letter: Letter, replies: str | None, sent: int) -> None:
        inbox.note_sent(self.store, letter, replies, sent, self.clock.now())

    def _receipt(self, letter: Letter) -> Receipt:
        return lambda unit, replies: inbox.mark_worked(unit, letter, replies, self.clock.now())

    async def _first(self, letter: Letter) -> Letter | None:
        """Return the letter to begin with, None if another process owns it by now."""
        return letter

    async def _is_ours(self, letter: Letter) -> bool:
        """Whether no other process has taken over the letter in the meantime."""
        return True

    async def _as_it_stands(self, letter: Letter) -> Letter | None:
        """Return the letter as stored: a commit with a lost response may have succeeded.

        None if nothing is left to do.
        """
        try:
            found: Letter | None = await self.in_worker(inbox.taken, self.store, letter)
        except AwayError:
            return letter
        return found

    # -- marking -------------------------------------------------------------------------

    def _mark(self, letter: Letter) -> None:
        """Mark an update as answered soon, in a batch: a lost mark costs one repeated reply."""
        self._answered[letter.update_id] = letter
        if self._flushing is None or self._flushing.done():
            self._flushing = asyncio.create_task(self._flush_soon())

    async def _flush_soon(self) -> None:
        # Repeat until none is left: updates answered during a flush do not start another.
        while self._answered:
            await asyncio.sleep(_FLUSH_SECONDS)
            await self._flush()

    async def _flush(self) -> None:
        taken = list(self._answered.values())
        if not taken:
            return
        try:
            await self.in_worker(inbox.put_away, self.store, taken, self.clock.now())
        except DatabaseError:
            # Away, or damaged until somebody restores it.
            await asyncio.sleep(_FIRST_WAIT)
            return
        for letter in taken:
            self._answered.pop(letter.update_id, None)


@dataclass(eq=False)
class OwnIntake(Intake):
    """For the only process on its database: it processes each update immediately.

    A change stores its own update in the same transaction, and a read-only answer can be repeated. So only
    updates without a quick answer are stored before they are confirmed; the rest are stored together soon
    after they were answered.
    """

    _seen: Lately[int] = field(default_factory=lambda: Lately(_REMEMBERED), init=False)
    _unkept: dict[int, Hold] = field(default_factory=dict, init=False)  # begun, neither answered nor on disk

    async def open(self) -> None:
        """Resume everything unfinished: there is no other process to do it."""
        await self.in_worker(inbox.adopt, self.store, CHANNEL, self.mailbox, self.clock.now())
        for seen in await self.in_worker(inbox.seen_lately, self.store, self.mailbox, _REMEMBERED):
            self._seen.add(seen)
        for left in await self.in_worker(inbox.unfinished, self.store, self.mailbox):
            self.spawn(self._in_turn(self._again(left), left))

    async def _keep(self, letters: list[tuple[Letter, Incoming]]) -> None:
        begun = []
        for letter, incoming in letters:
            number = letter.update_id
            if number not in self._seen:
                self._seen.add(number)
                self._unkept[number] = self._begun(incoming, letter)
            # A duplicate is not begun again: it waits for the first, or for the disk.
            if number in self._unkept:
                begun.append((letter, self._unkept[number]))
        if begun:
            await asyncio.shield(asyncio.ensure_future(self._answered_or_on_disk(begun)))

    def _begun(self, incoming: Incoming, letter: Letter) -> Hold:
        async def write_down() -> None:
            await self.in_worker(inbox.take_in, self.store, [letter], self.clock.now())

        hold = Hold(write_down)
        turn = self.spawn(self._in_turn(incoming, letter, hold))
        turn.add_done_callback(lambda _turn: hold.let_go())
        return hold

    async def _answered_or_on_disk(self, begun: list[tuple[Letter, Hold]]) -> None:
        await asyncio.wait([hold.free for _letter, hold in begun], timeout=_MOMENT_SECONDS)
        late = [letter for letter, hold in begun if not hold.free.done()]
        if late:
            await self.in_worker(inbox.take_in, self.store, late, self.clock.now())
        for letter, _hold in begun:
            self._unkept.pop(letter.update_id, None)
