"""Answer updates: run the conversation and send the replies."""

from __future__ import annotations

import asyncio
import contextlib
import json
import logging
import secrets
import sys
from collections.abc import Awaitable, Callable, Collection
from contextlib import AbstractContextManager
from contextvars import Context
from dataclasses import replace
from typing import Any

from telegram import Bot
from telegram.error import TelegramError

from bot.channels.telegram.albums import Albums
from bot.channels.telegram.confirmation_gate import Hold
from bot.channels.telegram.http_client import LeftToAnotherError
from bot.channels.telegram.outcomes import classify
from bot.channels.telegram.parts import Target, may_be_repeat, parts_of
from bot.channels.telegram.progress import Progress
from bot.channels.telegram.receiving.intake import Answering, Left, Update
from bot.channels.telegram.sending import Asked, Postman, articles
from bot.channels.telegram.updates import CHANNEL, Incoming, read_update
from bot.chat.conversation.conversation import Conversation, PassResult
from bot.chat.conversation.inline import suggestions
from bot.chat.conversation.settlement import Receipt
from bot.chat.dialogue.progress import telling
from bot.chat.grammar.parser import is_warm
from bot.chat.i18n.language import Tongue, _, speaking
from bot.chat.i18n.languages import ENGLISH
from bot.chat.i18n.locale_choice import spoken
from bot.chat.reply.message import (
    Message,
    Place,
    Reply,
    files_are_kept,
    replies_from_json,
    replies_to_json,
    reply,
)
from bot.work.inbox import inbox
from bot.work.inbox.inbox import Letter
from bot.work.reminders import rooms
from bot.work.reminders.delivery import Outcome
from bot.work.transfer.problems import MOST_BYTES
from storage.trouble import DatabaseError, is_damaged
from storage.unit import Unit

log = logging.getLogger(__name__)
_FETCHES = 3
_LONGEST_SPIN = 1.0  # seconds
_ACKNOWLEDGING_WAITS = (0.2, 1.0, 3.0, 8.0)  # seconds; a phone stops waiting for it soon after


class Answers(Answering):
    """Answers Telegram updates."""

    def __init__(
        self,
        bot: Bot,
        postman: Postman,
        conversation: Conversation,
        in_worker: Callable[..., Awaitable[Any]],
        in_slow_worker: Callable[..., Awaitable[Any]],
        heard_from: Callable[[str], None],
    ) -> None:
        self._bot = bot
        self._postman = postman
        self._conversation = conversation
        self._store = conversation.store
        self._clock = conversation.clock
        self._in_worker = in_worker
        self._in_slow_worker = in_slow_worker
        self._albums = Albums(self._store, self.read, in_worker)
        self._heard_from = heard_from  # called with each chat that has written
        self.ended = False  # work that goes on is given up
        self._acknowledging: set[asyncio.Task[None]] = set()

    @property
    def beside(self) -> Collection[asyncio.Task[None]]:
        """Acknowledgements of taps on their way."""
        return self._acknowledging

    def read(self, update: Update) -> Incoming:
        """Parse an update."""
        return read_update(update, self._bot.id, self._bot.username)

    async def work(
        self, incoming: Incoming, letter: Letter, receipt: Receipt, hold: Hold | None, left: Left
    ) -> None:
        """Process an update and send the answer; release `hold` once all of it has left."""
        toast: asyncio.Future[str] = asyncio.get_running_loop().create_future()
        if incoming.query is not None:
            self._acknowledge_soon(incoming.query, toast)
        else:
            toast.cancel()
        try:
            await self._work(incoming, letter, receipt, hold, left, toast)
        finally:
            _tell(toast, "")

    async def _work(
        self,
        incoming: Incoming,
        letter: Letter,
        receipt: Receipt,
        hold: Hold | None,
        left: Left,
        toast: asyncio.Future[str],
    ) -> None:
        if incoming.membership is not None:
            await self._in_worker(self._note_membership, incoming)
        if incoming.message is not None:
            await self._answer(incoming, letter, incoming.message, receipt, hold, left, toast)
            self._heard_from(incoming.message.place.outside_id)
        elif incoming.migration is not None:
            await self._room_moved(incoming.migration.old, incoming.migration.new)

    async def _answer(
        self,
        incoming: Incoming,
        letter: Letter,
        message: Message,
        receipt: Receipt,
        hold: Hold | None,
        left: Left,
        toast: asyncio.Future[str],
    ) -> None:
        asked = self._asked(message, letter)
        target = Target(
            message.place.outside_id,
            message.place.private,
            message.place.thread,
            incoming.message_id if message.tapped is None else None,
            incoming.message_id if message.tapped is not None else None,
            message.sender.outside_id,
        )
        if letter.replies is not None:
            # An earlier process worked on it before it stopped; the next part may or may not have left.
            replies, kept, unsure = replies_from_json(letter.replies), True, True
        else:
            whole = await self._albums.whole(incoming, message, letter)
            if whole is None:
                return
            message = await self._with_file(incoming, whole)
            target, replies, kept = await self._replies(message, letter, target, receipt)
            # The process that began it left no trace on disk of its replies.
            unsure = letter.sent > 0 or (letter.again and not kept)
        shown = " ".join(one.first_line for one in replies if one.toast)
        told = _tell(toast, shown)
        parts = [
            (number, part)
            for number, part in enumerate(parts_of(replies), start=1)
            if number > letter.sent and not (told and part.reply.toast)
        ]
        if unsure and parts:
            parts[0] = parts[0][0], may_be_repeat(parts[0][1])

        async def note(count: int) -> None:
            nonlocal kept
            stored = None if kept or not files_are_kept(replies) else replies_to_json(replies)
            kept = True
            await left(stored, parts[count - 1][0])

        sent = await self._postman.deliver(target, [part for _number, part in parts], hold, asked, note)
        if sent is Outcome.LEFT:
            raise LeftToAnotherError
        if sent is Outcome.BLOCKED:
            await self._in_worker(self._set_reachable, target.chat, False)

    def _asked(self, message: Message, letter: Letter) -> Asked:
        """Return what an answer refers to if it is late."""
        now = asyncio.get_running_loop().time()
        age = 0.0
        if letter.received_at is not None:
            age = (self._clock.now() - letter.received_at).total_seconds()
        return Asked(message.text if message.tapped is None else "", now - age)

    async def _replies(
        self, message: Message, letter: Letter, target: Target, receipt: Receipt
    ) -> tuple[Target, list[Reply], bool]:
        """Run the conversation: short reads on the event loop, everything else in a worker thread.

        The last value says whether the replies are stored.
        """
        looked = None
        if self._store.is_sqlite and is_warm():
            # Such a read never blocks, and a round trip to a worker costs as much as the answer.
            looked = self._conversation.look(message)
        if looked is not None and looked.replies is not None:
            return target, looked.replies, False
        progress = Progress(asyncio.get_running_loop(), self._postman, target, lambda: self.ended)
        changed = False

        def noted(unit: Unit, said: str) -> bool:
            nonlocal changed
            changed = True
            return receipt(unit, said)

        # One that takes long waits for others of its kind, and keeps no worker from short ones.
        run = self._in_slow_worker if self._conversation.takes_long(message) else self._in_worker
        replies = await run(self._converse, message, letter, progress, looked, noted)
        target, replies = await progress.answered(replies)
        return target, replies, changed

    async def _with_file(self, incoming: Incoming, message: Message) -> Message:
        """Fetch the document of a message, unless it is too large."""
        if incoming.file_id is None or message.document is None:
            return message
        for attempt in range(_FETCHES):
            try:
                file = await self._bot.get_file(incoming.file_id)
                content = bytes(await file.download_as_bytearray())
            except TelegramError:
                if attempt + 1 == _FETCHES:
                    raise
                await asyncio.sleep(0.5 * 2**attempt)
                continue
            break
        # The announced size comes from the sender and is not trusted.
        kept = content if len(content) <= MOST_BYTES else None
        return replace(message, document=replace(message.document, content=kept))

    async def suggest(self, incoming: Incoming) -> None:
        """Answer an inline query; on failure the person only has to type again."""
        typing = incoming.typing
        if typing is None:
            return
        place = Place(typing.sender.outside_id, private=True)
        now = self._clock.now()
        message = Message(CHANNEL, typing.sender, place, typing.text, key=typing.id, sent_at=now)
        try:
            found = await self._in_worker(suggestions, self._store, self._clock, message)
            # Personal and never cached: a member of another bar who types the same must get other results.
            await self._bot.answer_inline_query(typing.id, articles(found), cache_time=0, is_personal=True)
        except TelegramError as error:
            log.warning("an inline query was not answered: %s", error.message)
        except Exception:
            log.exception("an inline query failed")

    def _converse(
        self,
        message: Message,
        letter: Letter,
        progress: Progress,
        seen: PassResult | None,
        receipt: Receipt,
    ) -> list[Reply]:
        if message.corrects is not None:
            message = replace(message, was=self._said_before(message, letter))
        with telling(progress.show):
            return self._conversation.answer(message, receipt, seen)

    def _said_before(self, message: Message, letter: Letter) -> str | None:
        """Return the text of an edited message before this edit, or None if it is no longer known."""
        words = f'"message_id": {message.number},'
        for payload in inbox.payloads_with(self._store, letter.channel, words, before=letter.update_id):
            before = self.read(json.loads(payload)).message
            if (
                before is not None
                and before.tapped is None
                and message.corrects in {before.key, before.corrects}
            ):
                return before.text
        return None

    def _acknowledge_soon(self, query: str, toast: asyncio.Future[str]) -> None:
        # In a context of its own: the lease of the update may end before the toast is known, and a second
        # acknowledgement does no harm.
        task = asyncio.create_task(self._acknowledge(query, toast), context=Context())
        self._acknowledging.add(task)
        task.add_done_callback(self._acknowledging.discard)

    async def _acknowledge(self, query: str, toast: asyncio.Future[str]) -> None:
        """Stop the spinner on the tapped button once a toast is known, at the latest after a second.

        After a restart a tap may be too old, which does no harm.
        """
        text = ""
        with contextlib.suppress(TimeoutError):
            text = await asyncio.wait_for(toast, _LONGEST_SPIN)
        for wait in _ACKNOWLEDGING_WAITS:
            try:
                await self._bot.answer_callback_query(query, text or None)
            except TelegramError as error:
                verdict = classify(error)
                if verdict.outcome not in {Outcome.NOT_SENT, Outcome.UNSURE}:
                    return
                await asyncio.sleep(max(wait, verdict.wait))
            else:
                return

    async def excuse(self, incoming: Incoming) -> None:
        """Tell the person that the answer waits for the database."""
        if incoming.message is None:
            return
        with self._in_tongue_of(incoming.message):
            said = reply(
                _("I cannot reach my notebook just now."),
                _("What you sent is not lost: I answer as soon as I can write again."),
            )
        await self._postman.deliver(_plain_target(incoming.message), parts_of([said]))

    async def failed(self, incoming: Incoming, letter: Letter) -> None:
        """Tell the person about a failure, with a reference that is in the log beside the traceback."""
        reference, damaged = secrets.token_hex(3), is_damaged(sys.exc_info()[1])
        log.exception("update failed, reference %s", reference)
        try:
            await self._in_worker(inbox.note_failure, self._store, letter.channel, letter.update_id, 1)
        except DatabaseError:
            log.exception("the failure could not be recorded, reference %s", reference)
        if incoming.message is None:
            return
        with self._in_tongue_of(incoming.message):
            first = _("Something broke here, and nothing was logged.")
            rest = _("Please try again; if it stays so, tell whoever runs me: {reference}")
            if damaged:
                first = _("My notebook is damaged, and nothing was logged.")
                rest = _("Tell whoever runs me to restore the last backup: {reference}")
            said = reply(first, rest.format(reference=reference))
        await self._postman.deliver(_plain_target(incoming.message), parts_of([said]))

    @staticmethod
    def _in_tongue_of(message: Message) -> AbstractContextManager[object]:
        """Use the language of the person's phone, because the database with their choice may be away."""
        return speaking(Tongue(spoken(message.sender.language) or ENGLISH))

    def _note_membership(self, incoming: Incoming) -> None:
        assert incoming.membership is not None  # noqa: S101 - the caller looked
        self._set_reachable(incoming.membership.chat, incoming.membership.reachable)

    def _set_reachable(self, chat: str, reachable: bool) -> None:
        with self._store.writing() as unit:
            rooms.set_reachable(unit, CHANNEL, chat, reachable, self._clock.now())

    async def _room_moved(self, old: str, new: str) -> None:
        await self._in_worker(rooms.room_moved, self._store, CHANNEL, old, new)


def _tell(toast: asyncio.Future[str], text: str) -> bool:
    """Report a toast, '' for none; False if the tap was acknowledged without waiting for it."""
    if toast.done():
        return False
    toast.set_result(text)
    return True


def _plain_target(message: Message) -> Target:
    place = message.place
    return Target(place.outside_id, place.private, place.thread)
