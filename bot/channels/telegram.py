"""The Telegram channel: takes updates in, has them answered, sends the answers."""

from __future__ import annotations

import os

# Waits as timedeltas: without it the library warns at every flood limit.
os.environ.setdefault("PTB_TIMEDELTA", "1")

import asyncio
import contextlib
import gc
import logging
import secrets
import signal
import sys
from collections.abc import Coroutine
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from typing import Any

from sqlalchemy.exc import SQLAlchemyError
from telegram import (
    Bot,
    BotCommand,
    BotCommandScopeAllGroupChats,
    BotCommandScopeAllPrivateChats,
    Update,
)
from telegram.error import Conflict, InvalidToken, NetworkError, RetryAfter, TelegramError
from telegram.helpers import create_deep_linked_url

from bot.channels.only_one import AlreadyRunningError, OnlyOne
from bot.channels.outcomes import classify
from bot.channels.sending import Postman, Target, articles, may_be_repeat
from bot.channels.turns import Lately, Turns
from bot.channels.updates import ALLOWED, CHANNEL, Incoming, read_update
from bot.channels.wire import LeanRequest
from bot.chat.commands import all_commands, slash_word
from bot.chat.conversation import AlreadyDoneError, Conversation
from bot.chat.inline import suggestions
from bot.chat.language import Tongue, _, speaking
from bot.chat.message import Message, Place, Reply, replies_from_json, reply
from bot.chat.reading import warm_up
from bot.chat.tongues import SPOKEN, spoken
from bot.clock.ticker import Ticker
from bot.settings import Settings
from bot.work import mail, reminders
from bot.work.desk import Clock, SystemClock
from bot.work.file_rows import MOST_BYTES
from bot.work.mail import Letter
from bot.work.reminders import DueReminder, Outcome
from storage import migrate
from storage.store import Store

log = logging.getLogger(__name__)
_POLL_SECONDS = 25
_GRACE_SECONDS = 8
_CONFLICTS_AT_START = 4
_WORKERS = 4
_REMEMBERED = 50_000  # update ids kept in memory, so that one seen twice is dropped early
_FLUSH_SECONDS = 0.05
_FETCHES = 3


class TelegramChannel:
    """One bot. `start` and `stop` for tests, `serve` until a signal for real."""

    def __init__(self, settings: Settings, store: Store, clock: Clock) -> None:
        self.settings = settings
        self.store = store
        self.clock = clock
        self.bot = _bot(settings)
        self._workers = ThreadPoolExecutor(_WORKERS, thread_name_prefix="work")
        self._turns = Turns()
        self._tasks: set[asyncio.Task[None]] = set()
        self._seen = Lately(_REMEMBERED)
        self._answered: list[int] = []
        self._flushing: asyncio.Task[None] | None = None
        self._stopping = asyncio.Event()
        self.postman = Postman(self.bot, settings.telegram_sends_per_second, self._room_moved)
        self.ticker = Ticker(store, clock, CHANNEL, self._send_reminder, self._workers)
        self.conversation = Conversation(store, clock)
        self._poller: asyncio.Task[int] | None = None

    # -- life ----------------------------------------------------------------------------

    async def start(self) -> None:
        """Say hello to Telegram, set the command menu, take up what was left, begin to listen."""
        await self.bot.initialize()
        self.conversation.bot_name = self.bot.username
        self.conversation.deep_link = lambda payload: create_deep_linked_url(self.bot.username, payload)
        for seen in await self._in_worker(mail.seen_lately, self.store, CHANNEL, _REMEMBERED):
            self._seen.add(seen)
        on_disk = asyncio.get_running_loop().create_future()
        on_disk.set_result(None)
        for left in await self._in_worker(mail.unfinished, self.store, CHANNEL):
            self._begin(left, on_disk)
        self._spawn(self._set_menus())
        self.ticker.start(self.settings.tick_seconds)
        self._poller = asyncio.create_task(self._poll())

    async def serve(self) -> int:
        """Run until a signal or a reason to give up; return the exit code."""
        loop = asyncio.get_running_loop()
        for number in (signal.SIGTERM, signal.SIGINT):
            loop.add_signal_handler(number, self._stopping.set)
        try:
            await self.start()
        except InvalidToken:
            _say("Telegram does not know this token: copy it again from BotFather.")
            await self.stop()
            return 2
        except NetworkError as error:
            _say(f"No answer from {self.settings.telegram_api_base}: {error.message}")
            await self.stop()
            return 1
        assert self._poller is not None  # noqa: S101 - start has set it
        self._spawn(self._settle_in())
        stopped = asyncio.create_task(self._stopping.wait())
        await asyncio.wait({stopped, self._poller}, return_when=asyncio.FIRST_COMPLETED)
        code = self._poller.result() if self._poller.done() and not self._poller.cancelled() else 0
        stopped.cancel()
        await self.stop()
        return code

    async def stop(self) -> None:
        """Listen no more, let what was begun finish, put everything away."""
        self._stopping.set()
        self.ticker.stop()
        if self._poller is not None and not self._poller.done():
            self._poller.cancel()
            with contextlib.suppress(asyncio.CancelledError):
                await self._poller
        if self._tasks:
            await asyncio.wait(self._tasks, timeout=_GRACE_SECONDS)
        for task in self._tasks:
            task.cancel()  # what is cut off here is taken up at the next start
        await self._flush()
        await self.bot.shutdown()
        self._workers.shutdown(wait=True)

    async def _settle_in(self) -> None:
        """Build what the first message would wait for, and keep the collector off what stays for good.

        Tables, grammar and library classes live as long as the process; walking through them
        again and again is most of what a full collection costs.
        """
        await self._in_worker(warm_up)
        gc.collect()
        gc.freeze()

    @property
    def idle(self) -> bool:
        """Whether nothing is being worked on or waits to be marked."""
        return not self._tasks and not self._answered

    def _spawn(self, work: Coroutine[Any, Any, None]) -> None:
        task = asyncio.create_task(work)
        self._tasks.add(task)
        task.add_done_callback(self._tasks.discard)

    async def _in_worker(self, function: Any, *arguments: Any) -> Any:
        return await asyncio.get_running_loop().run_in_executor(self._workers, function, *arguments)

    async def _set_menus(self) -> None:
        """Set the command menu: English for everybody, and each other language for phones set to it."""
        menu = sorted((one for one in all_commands().values() if one.menu), key=lambda one: one.menu)
        try:
            for language in SPOKEN:
                code = None if language == SPOKEN[0] else language
                with speaking(Tongue(language)):
                    listed = [BotCommand(slash_word(one), _(one.summary)) for one in menu]
                shared = [one for one, command in zip(listed, menu, strict=True) if not command.private_only]
                await self.bot.set_my_commands(listed, BotCommandScopeAllPrivateChats(), code)
                await self.bot.set_my_commands(shared, BotCommandScopeAllGroupChats(), code)
        except TelegramError as error:
            log.warning("the command menu could not be set: %s", error.message)

    # -- listening -----------------------------------------------------------------------

    async def _poll(self) -> int:
        """Take updates in until told to stop; return the exit code."""
        offset: int | None = None
        conflicts = failures = 0
        heard = False
        while not self._stopping.is_set():
            try:
                updates = await self.bot.get_updates(
                    offset=offset, timeout=_POLL_SECONDS if heard else 0, allowed_updates=ALLOWED
                )
            except Conflict:
                conflicts += 1
                if not heard and conflicts >= _CONFLICTS_AT_START:
                    _say("Another program listens with this token: stop that one first.")
                    return 3
                log.warning("another program listens with this token")
                await asyncio.sleep(1.0)
                continue
            except InvalidToken:
                _say("Telegram does not know this token any more.")
                return 2
            except TelegramError as error:
                failures += 1
                wait = max(
                    classify(error).wait if isinstance(error, RetryAfter) else 0.0, min(0.2 * 2**failures, 30)
                )
                log.warning("listening failed, again in %.1f s: %s", wait, error.message)
                await asyncio.sleep(wait)
                continue
            heard, failures, conflicts = True, 0, 0
            if updates:
                if await self._take_in(updates):
                    offset = updates[-1].update_id + 1
                else:
                    await asyncio.sleep(1.0)
        return 0

    async def _take_in(self, updates: tuple[Update, ...]) -> bool:
        """Write updates down and begin to answer them; they are confirmed only by the next poll.

        Writing and answering go side by side: an answer that changes things writes its own
        update down in the same transaction, one that only reads can be given again. False
        when they could not be written down: then they are asked for again.
        """
        # What is typed after our name is answered at once or not at all, so it is not kept.
        letters = [
            Letter(CHANNEL, update.update_id, update.to_json())
            for update in updates
            if update.inline_query is None
        ]
        fresh = [letter for letter in letters if letter.update_id not in self._seen]
        on_disk = asyncio.ensure_future(self._in_worker(mail.take_in, self.store, fresh, self.clock.now()))
        for letter in fresh:
            self._seen.add(letter.update_id)
            self._begin(letter, on_disk)
        for update in updates:
            if update.inline_query is not None:
                self._spawn(self._suggest(update))
        try:
            await asyncio.shield(on_disk)
        except SQLAlchemyError:
            log.exception("updates could not be written down; they will be asked for again")
            for letter in fresh:
                self._seen.discard(letter.update_id)
            return False
        return True

    def _begin(self, letter: Letter, on_disk: asyncio.Future[Any]) -> None:
        incoming = read_update(letter.payload, self.bot.id, self.bot.username)
        self._spawn(self._in_turn(incoming, letter, on_disk))

    # -- answering -----------------------------------------------------------------------

    async def _in_turn(self, incoming: Incoming, letter: Letter, on_disk: asyncio.Future[Any]) -> None:
        """Work one update when those of its chat before it are through."""
        async with self._turns.of(incoming.chat):
            try:
                if incoming.query is not None:
                    self._spawn(self._acknowledge(incoming.query))
                await self._work(incoming, letter)
                await asyncio.shield(on_disk)
                self._mark(letter.update_id)
            except Exception:
                await self._failed(incoming, letter)

    async def _work(self, incoming: Incoming, letter: Letter) -> None:
        if incoming.message is not None:
            await self._answer(incoming, letter, incoming.message)
        elif incoming.membership is not None:
            await self._in_worker(self._note_membership, incoming)
        elif incoming.migration is not None:
            await self._room_moved(incoming.migration.old, incoming.migration.new)

    async def _answer(self, incoming: Incoming, letter: Letter, message: Message) -> None:
        if letter.replies is not None:
            # Worked before a stop; nobody knows whether the answer went out.
            replies = [may_be_repeat(one) for one in replies_from_json(letter.replies)]
        else:
            message = await self._with_file(incoming, message)
            try:
                replies = await self._in_worker(self._converse, message, letter)
            except AlreadyDoneError:
                return
        target = Target(
            message.place.outside_id,
            message.place.private,
            message.place.thread,
            incoming.message_id if message.tapped is None else None,
            incoming.message_id if message.tapped is not None else None,
        )
        for one in replies:
            outcome = await self.postman.deliver(target, one)
            if outcome is Outcome.BLOCKED:
                await self._in_worker(self._set_reachable, target.chat, False)
                return

    async def _with_file(self, incoming: Incoming, message: Message) -> Message:
        """Fetch the document that came with a message; one that is too large stays unfetched."""
        if incoming.file_id is None or message.document is None:
            return message
        for attempt in range(_FETCHES):
            try:
                file = await self.bot.get_file(incoming.file_id)
                content = bytes(await file.download_as_bytearray())
            except TelegramError:
                if attempt + 1 == _FETCHES:
                    raise
                await asyncio.sleep(0.5 * 2**attempt)
                continue
            break
        # The size that was told beforehand is only the sender's word.
        kept = content if len(content) <= MOST_BYTES else None
        return replace(message, document=replace(message.document, content=kept))

    async def _suggest(self, update: Update) -> None:
        """Answer what a person types after the bot's name in any chat; a failure is only theirs to retype."""
        typing = read_update(update.to_json(), self.bot.id, self.bot.username).typing
        if typing is None:
            return
        place = Place(typing.sender.outside_id, private=True)
        now = self.clock.now()
        message = Message(CHANNEL, typing.sender, place, typing.text, key=typing.id, sent_at=now)
        try:
            found = await self._in_worker(suggestions, self.store, self.clock, message)
            # Personal and never cached: another bar's member types the same and must get their own.
            await self.bot.answer_inline_query(typing.id, articles(found), cache_time=0, is_personal=True)
        except TelegramError as error:
            log.warning("an inline query was not answered: %s", error.message)
        except Exception:
            log.exception("an inline query failed")

    def _converse(self, message: Message, letter: Letter) -> list[Reply]:
        if message.corrects is not None:
            message = replace(message, was=self._said_before(message, letter))
        return self.conversation.answer(
            message, lambda unit, replies: mail.mark_worked(unit, letter, replies, self.clock.now())
        )

    def _said_before(self, message: Message, letter: Letter) -> str | None:
        """Return what an edited message said before this edit, or None where that is not known any more."""
        words = f'"message_id": {message.number},'
        for payload in mail.payloads_with(self.store, CHANNEL, words, letter.update_id):
            before = read_update(payload, self.bot.id, self.bot.username).message
            if (
                before is not None
                and before.tapped is None
                and message.corrects in {before.key, before.corrects}
            ):
                return before.text
        return None

    async def _acknowledge(self, query: str) -> None:
        """Stop the spinner on the tapped button; one that is too old, after a restart, is nobody's loss."""
        with contextlib.suppress(TelegramError):
            await self.bot.answer_callback_query(query)

    async def _failed(self, incoming: Incoming, letter: Letter) -> None:
        """Tell the person that something broke, with a reference that stands in the log beside the trace."""
        reference = secrets.token_hex(3)
        log.exception("update failed, reference %s", reference)
        try:
            await self._in_worker(mail.note_failure, self.store, CHANNEL, letter.update_id, 1)
        except SQLAlchemyError:
            log.exception("the failure could not be noted, reference %s", reference)
        if incoming.message is None:
            return
        place = incoming.message.place
        with speaking(Tongue(spoken(incoming.message.sender.language) or SPOKEN[0])):
            said = reply(
                _("Something broke here, and nothing was logged."),
                _("Please try again; if it stays so, tell whoever runs me: {reference}").format(
                    reference=reference
                ),
            )
        await self.postman.deliver(Target(place.outside_id, place.private, place.thread), said)

    def _note_membership(self, incoming: Incoming) -> None:
        assert incoming.membership is not None  # noqa: S101 - the caller looked
        self._set_reachable(incoming.membership.chat, incoming.membership.reachable)

    def _set_reachable(self, chat: str, reachable: bool) -> None:
        with self.store.writing() as unit:
            reminders.set_reachable(unit, CHANNEL, chat, reachable, self.clock.now())

    async def _room_moved(self, old: str, new: str) -> None:
        await self._in_worker(reminders.room_moved, self.store, CHANNEL, old, new)

    async def _send_reminder(self, due: DueReminder, worded: Reply) -> tuple[Outcome, str]:
        where = due.destination
        async with self._turns.of(where.outside_id):
            target = Target(where.outside_id, where.private, where.thread)
            verdict = await self.postman.once(target, worded)
        return verdict.outcome, verdict.what

    # -- marking -------------------------------------------------------------------------

    def _mark(self, update_id: int) -> None:
        """Mark an update answered soon, together with others: a lost mark costs one repeated reply."""
        self._answered.append(update_id)
        if self._flushing is None or self._flushing.done():
            self._flushing = asyncio.create_task(self._flush_soon())

    async def _flush_soon(self) -> None:
        # Until none is left: what is answered while others are being marked starts no flush of its own.
        while self._answered:
            await asyncio.sleep(_FLUSH_SECONDS)
            await self._flush()

    async def _flush(self) -> None:
        taken, self._answered = self._answered, []
        if taken:
            await self._in_worker(mail.mark_answered, self.store, CHANNEL, taken)


def _bot(settings: Settings) -> Bot:
    encrypted = not settings.telegram_api_base.startswith("http://")
    return Bot(
        settings.telegram_bot_token.get_secret_value(),
        base_url=settings.telegram_api_base,
        base_file_url=settings.telegram_file_base,
        request=LeanRequest(64, encrypted=encrypted),
        get_updates_request=LeanRequest(1, read_timeout=_POLL_SECONDS + 10, encrypted=encrypted),
    )


def _say(text: str) -> None:
    print(text, file=sys.stderr)  # noqa: T201 - for whoever started the program


def run(settings: Settings) -> int:
    """Run the bot until it is told to stop; return the exit code."""
    store = Store(settings.database)
    try:
        migrate.upgrade(store)
        with OnlyOne(settings.lock_path, settings.telegram_bot_token.get_secret_value()):
            return asyncio.run(_serve(settings, store))
    except migrate.NewerDatabaseError as error:
        _say(f"The database is newer than this program (revision {error.revision}): install the newer one.")
        return 1
    except AlreadyRunningError:
        _say("Another process on this machine already runs a bot with this token: stop it first.")
        return 3
    finally:
        store.close()


async def _serve(settings: Settings, store: Store) -> int:
    return await TelegramChannel(settings, store, SystemClock()).serve()
