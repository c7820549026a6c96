"""The Telegram channel: assembles, starts and stops its parts."""

from __future__ import annotations

import os

# Durations as timedeltas; otherwise the library warns at every flood limit.
os.environ.setdefault("PTB_TIMEDELTA", "1")

import asyncio
import contextlib
import errno
import gc
import hashlib
import logging
import signal
import sys
from collections.abc import Awaitable, Callable
from concurrent.futures import ThreadPoolExecutor
from contextlib import nullcontext
from datetime import timedelta
from functools import partial
from typing import TYPE_CHECKING, Any

from telegram import Bot, BotCommand, BotCommandScopeAllGroupChats, BotCommandScopeAllPrivateChats
from telegram.error import InvalidToken, TelegramError
from telegram.helpers import create_deep_linked_url

from bot.channels.telegram.answering import Answers
from bot.channels.telegram.http_client import LeanRequest, ProxyError, sending_only_while
from bot.channels.telegram.metrics import Figures
from bot.channels.telegram.outage import Outage, until_database_answers
from bot.channels.telegram.parts import Target
from bot.channels.telegram.receiving.chat_locks import PersonPace
from bot.channels.telegram.receiving.intake import Intake, OwnIntake
from bot.channels.telegram.receiving.polling import POLL_SECONDS, Poller
from bot.channels.telegram.receiving.single_instance_lock import AlreadyRunningError, NoLockError, OnlyOne
from bot.channels.telegram.sending import Postman
from bot.channels.telegram.updates import ALLOWED, CHANNEL
from bot.channels.telegram.watch import Watch
from bot.chat.conversation.conversation import Conversation
from bot.chat.dialogue.registry import all_commands, slash_word
from bot.chat.grammar.parser import warm_up
from bot.chat.i18n.language import Tongue, _, speaking
from bot.chat.i18n.languages import ENGLISH, languages
from bot.chat.reply.message import Reply
from bot.clock.ticker import Ticker
from bot.settings import Settings
from bot.work.context import Clock, SystemClock
from bot.work.inbox import inbox
from bot.work.people.newcomers import is_newcomer
from bot.work.reminders import delivery, rooms
from bot.work.reminders.delivery import DueReminder, Outcome, Sent
from storage import migrate
from storage.locks import holding
from storage.locks.holding import Hold
from storage.locks.leader import Leadership
from storage.store import Store

if TYPE_CHECKING:
    from bot.channels.telegram.receiving.webhook import Door

log = logging.getLogger(__name__)
_WORKERS = 4
_IDLE_SECONDS = 60  # longer than any command computes between two statements
_READY_SECONDS = 2
_TURN_SECONDS = 60  # well within the lease of a reminder, after which another process may send it


class TelegramChannel:
    """One bot. Tests use `start` and `stop`; `serve` runs until a signal."""

    def __init__(self, settings: Settings, store: Store, clock: Clock) -> None:
        self.settings = settings
        self.store = store
        self.clock = clock
        self.figures = Figures()
        self._asking = LeanRequest(1, read_timeout=POLL_SECONDS + 10, encrypted=_encrypted(settings))
        self._sending = LeanRequest(64, encrypted=_encrypted(settings))
        self.bot = _bot(settings, self._sending, self._asking)
        self._workers = ThreadPoolExecutor(_WORKERS, thread_name_prefix="work")
        self._slow_worker = ThreadPoolExecutor(1, thread_name_prefix="long work")
        self._stopping = asyncio.Event()
        self._met = False
        self.outage = Outage("Telegram")
        self.postman = Postman(self.bot, settings.telegram_sends_per_second, self._room_moved)
        self.ticker = Ticker(store, clock, CHANNEL, self._send_reminder, self._workers)
        self.conversation = Conversation(store, clock)
        self._answers = answers = Answers(
            self.bot,
            self.postman,
            self.conversation,
            self._in_worker,
            partial(self._in_thread, self._slow_worker),
            self._heard_from,
        )
        self.mailbox = f"{CHANNEL}:{_bot_id(settings)}"
        newcomer = partial(self._in_worker, is_newcomer, store, clock, CHANNEL)
        pace = PersonPace(settings.messages_per_minute, newcomer)
        self.intake = _intake_for(store)(
            store, clock, answers, self._workers, self.figures, self.mailbox, pace
        )
        self.watch = Watch(store, self.bot, (self._asking, self._sending), self.figures, self._in_worker)
        self._poller: asyncio.Task[int] | None = None
        self._door: Door | None = None

    # -- lifecycle -----------------------------------------------------------------------

    async def start(self) -> None:
        """Connect to Telegram, resume unfinished updates, begin to listen, set the command menu."""
        await self._until_heard(self._meet_telegram)
        self.conversation.deep_link = lambda payload: create_deep_linked_url(self.bot.username, payload)
        await self.intake.open()
        self.ticker.start(self.settings.tick_seconds)
        self.watch.start()
        self._open_door()
        if self.settings.telegram_webhook_url:
            await self._until_heard(self._ask_for_updates)
        else:
            leadership = Leadership(self.store, f"poller {_fingerprint(self.settings)}")
            poller = Poller(self._asking, self.bot, self.intake, leadership)
            self._poller = asyncio.create_task(poller.run())
        self.intake.spawn(self._set_menus())
        self._say_who()

    def _say_who(self) -> None:
        where = self.settings.telegram_webhook_url or "by asking Telegram"
        log.info(
            "@%s (%d) on %s; updates %s; listening at %s",
            self.bot.username,
            self.bot.id,
            self.store.shown,
            where,
            self.settings.listening or "no port",
        )

    def _open_door(self) -> None:
        """Listen for updates and for monitoring, if configured."""
        address = self.settings.listening
        if not address:
            return
        from bot.channels.telegram.receiving.webhook import Door  # noqa: PLC0415 - most bots need no server

        self.figures.watched()
        hooked = bool(self.settings.telegram_webhook_url)
        secret = self.settings.telegram_webhook_secret.reveal() if hooked else None
        self._door = Door(address, secret, self.intake, self._looked_up, self._not_ready)
        self._door.open()

    async def _until_heard(self, work: Callable[[], Awaitable[object]]) -> None:
        """Do the first work at Telegram, waiting for as long as it is away.

        Raises InvalidToken, and CancelledError when told to stop.
        """
        while True:
            try:
                await work()
            except InvalidToken:
                raise
            except TelegramError as error:
                with contextlib.suppress(TimeoutError):
                    await asyncio.wait_for(self._stopping.wait(), self.outage.refused(error))
                if self._stopping.is_set():
                    raise asyncio.CancelledError from error
            else:
                self.outage.over()
                return

    async def _meet_telegram(self) -> None:
        # The library asks only once, even if that fails.
        if self._met:
            await self.bot.get_me()
        else:
            self._met = True
            await self.bot.initialize()

    async def _ask_for_updates(self) -> None:
        """Set the webhook; every process of a group sets the same one."""
        await self.bot.set_webhook(
            self.settings.telegram_webhook_url,
            allowed_updates=ALLOWED,
            secret_token=self.settings.telegram_webhook_secret.reveal(),
        )

    async def serve(self) -> int:
        """Run until a signal or a fatal error; return the exit code."""
        loop = asyncio.get_running_loop()
        for number in (signal.SIGTERM, signal.SIGINT):
            with contextlib.suppress(NotImplementedError):  # Windows, where Ctrl-C raises KeyboardInterrupt
                loop.add_signal_handler(number, self._stopping.set)
        try:
            await self.start()
        except InvalidToken:
            _say("Telegram does not know this token: copy it again from BotFather.")
            await self.stop()
            return 2
        except asyncio.CancelledError:
            await self.stop()
            return 0
        except OSError as error:
            _say(f"Cannot listen at {self.settings.listening}: {error.strerror}.")
            await self.stop()
            # A port still in use may become free; any other reason is a wrong setting.
            return 1 if error.errno == errno.EADDRINUSE else 2
        self.intake.spawn(self._settle_in())
        waited_for: set[asyncio.Task[object]] = {asyncio.create_task(self._told_to_stop())}
        if self._poller is not None:
            waited_for.add(self._poller)
        await asyncio.wait(waited_for, return_when=asyncio.FIRST_COMPLETED)
        code = 0
        if self._poller is not None and self._poller.done() and not self._poller.cancelled():
            code = self._poller.result()
        for one in waited_for:
            one.cancel()
        await self.stop()
        return code

    async def _told_to_stop(self) -> object:
        return await self._stopping.wait()

    async def stop(self) -> None:
        """Stop listening, finish the work in progress, and close everything."""
        self._stopping.set()
        self.ticker.stop()
        await self.watch.stop()
        if self._door is not None:
            await self._door.shut()
        if self._poller is not None:
            self._poller.cancel()
            with contextlib.suppress(asyncio.CancelledError):
                await self._poller
        await self.intake.close()
        self._answers.ended = True
        await self.bot.shutdown()
        self._workers.shutdown(wait=True)
        self._slow_worker.shutdown(wait=True)

    async def _settle_in(self) -> None:
        """Preload what the first message needs, and freeze long-lived objects for the garbage collector.

        Tables, grammar and library classes live as long as the process; traversing them again is most of the
        cost of a full collection.
        """
        try:
            await self._in_worker(warm_up)
        finally:
            gc.enable()
        gc.collect()
        gc.freeze()

    @property
    def idle(self) -> bool:
        """Whether nothing is in progress or waiting to be marked."""
        return self.intake.idle

    async def _in_worker(self, function: Any, *arguments: Any) -> Any:
        return await self._in_thread(self._workers, function, *arguments)

    @staticmethod
    async def _in_thread(workers: ThreadPoolExecutor, function: Any, *arguments: Any) -> Any:
        return await asyncio.get_running_loop().run_in_executor(workers, function, *arguments)

    async def _set_menus(self) -> None:
        """Set the command menu: English by default, and each other language for phones set to it."""
        # In a worker, because the first call loads all features.
        commands = await self._in_worker(all_commands)
        menu = sorted((one for one in commands.values() if one.menu), key=lambda one: one.menu)
        try:
            for language in languages():
                code = None if language == ENGLISH else language
                with speaking(Tongue(language)):
                    listed = [BotCommand(slash_word(one), _(one.summary)) for one in menu]
                shared = [one for one, command in zip(listed, menu, strict=True) if not command.private_only]
                await self.bot.set_my_commands(listed, BotCommandScopeAllPrivateChats(), code)
                await self.bot.set_my_commands(shared, BotCommandScopeAllGroupChats(), code)
        except TelegramError as error:
            log.warning("the command menu could not be set: %s", error.message)

    # -- reminders and metrics -----------------------------------------------------------

    async def _send_reminder(self, due: DueReminder, worded: Reply) -> Sent:
        where = due.destination
        async with contextlib.AsyncExitStack() as turn:
            try:
                async with asyncio.timeout(_TURN_SECONDS):
                    await turn.enter_async_context(self.intake.turns.of(where.outside_id))
            except TimeoutError:
                return Sent(Outcome.NOT_SENT, "an answer before it could not be sent")
            target = Target(where.outside_id, where.private, where.thread)
            with sending_only_while(partial(asyncio.to_thread, self._still_ours, due)):
                verdict = await self.postman.once(target, worded)
        self.figures.reminded(verdict.outcome.name.lower())
        return Sent(verdict.outcome, verdict.what, timedelta(seconds=verdict.wait))

    def _heard_from(self, chat: str) -> None:
        """Try undelivered reminders again, now that one of their chats has written."""
        if self.ticker.undelivered:
            self.intake.spawn(self.ticker.heard_from(chat))

    def _still_ours(self, due: DueReminder) -> bool:
        return delivery.still_ours(self.store, due, self.clock.now())

    async def _room_moved(self, old: str, new: str) -> None:
        await self._in_worker(rooms.room_moved, self.store, CHANNEL, old, new)

    async def _not_ready(self) -> str:
        """Return what keeps the bot from working, '' if nothing."""
        try:
            await asyncio.wait_for(self._looked_up(), _READY_SECONDS)
        except Exception as error:
            log.warning("not ready: %s", type(error).__name__)
            return "no answer from the database"
        return self.watch.trouble

    async def _looked_up(self) -> dict[str, tuple[str, float]]:
        """Return the figures that only the database knows, by name: description and value."""
        now = self.clock.now()
        waiting = await self._in_worker(inbox.waiting, self.store, self.mailbox)
        late, longest = await self._in_worker(delivery.late, self.store, CHANNEL, now)
        oldest = await self._in_worker(inbox.oldest_waiting, self.store, self.mailbox)
        return {
            "telegram_silent_seconds": ("How long ago Telegram was heard.", self.watch.silent_seconds),
            "updates_waiting_seconds": (
                "How long the oldest update without an answer has waited.",
                0.0 if oldest is None else max(0.0, (now - oldest).total_seconds()),
            ),
            "reminders_undelivered": ("Reminders that no chat would take.", self.ticker.undelivered),
            "updates_waiting": ("Updates on disk that are not answered yet.", waiting),
            "reminders_late": ("Reminders due for more than a minute.", late),
            "reminders_late_seconds": ("How long the latest of them has been due.", longest),
        }


def _intake_for(store: Store) -> type[Intake]:
    if store.is_sqlite:
        return OwnIntake
    from bot.channels.telegram.receiving import leased_intake  # noqa: PLC0415 - loads PostgreSQL's dialect

    return leased_intake.SharedIntake


def _encrypted(settings: Settings) -> bool:
    return not settings.telegram_api_base.startswith("http://")


def _fingerprint(settings: Settings) -> str:
    """Return a name for the bot that does not reveal its token."""
    token = settings.telegram_bot_token.reveal()
    return hashlib.sha256(token.encode()).hexdigest()[:16]


def _bot_id(settings: Settings) -> str:
    """Return the bot's number, with which its token begins."""
    return settings.telegram_bot_token.reveal().partition(":")[0][:20]


def _bot(settings: Settings, sending: LeanRequest, asking: LeanRequest) -> Bot:
    return Bot(
        settings.telegram_bot_token.reveal(),
        base_url=settings.telegram_api_base,
        base_file_url=settings.telegram_file_base,
        request=sending,
        get_updates_request=asking,
    )


def _say(text: str) -> None:
    print(text, file=sys.stderr)  # noqa: T201 - shown to the operator


def run(settings: Settings) -> int:
    """Run the bot until it is stopped; return the exit code."""
    mistake = settings.base_mistake or settings.mistake
    if mistake:
        _say(mistake)
        return 2
    store = Store(settings.database, _IDLE_SECONDS)
    try:
        until_database_answers(store, lambda: migrate.upgrade(store))
        # Several processes may share one PostgreSQL; the database decides which of them polls Telegram.
        alone = OnlyOne(settings.lock_path, _fingerprint(settings)) if store.is_sqlite else nullcontext()
        with alone, holding.held(store) as held:
            return asyncio.run(_serve(settings, store, held))
    except ProxyError as error:
        _say(str(error))
        return 2
    except NoLockError as error:
        _say(f"{settings.lock_path} cannot be written in ({error}): check its rights.")
        return 1
    except AlreadyRunningError:
        _say("Another process on this machine already runs a bot with this token: stop it first.")
        return 3
    finally:
        store.close()


async def _serve(settings: Settings, store: Store, hold: Hold) -> int:
    channel = TelegramChannel(settings, store, SystemClock())
    channel.watch.hold = hold
    return await channel.serve()
