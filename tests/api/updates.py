"""The queue of updates: long poll, confirmation by a higher offset, webhook, and faults for tests."""

from __future__ import annotations

import asyncio
import json
import time
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from tests.api.posting import Sender
from tests.api.refusals import JsonDict, conflict

_FIRST_ID = 300_000_001
# Not sent unless a bot requests them by name.
_ONLY_ON_REQUEST = {"chat_member", "message_reaction", "message_reaction_count"}


@dataclass(slots=True, eq=False)
class Queued:
    """One pending update, `handed` over at least once, to be delivered `repeats` more times.

    Updates of one `lane`, a chat's, keep their order.
    """

    id: int
    body: bytes
    lane: int = 0
    handed: bool = False
    repeats: int = 0


@dataclass(slots=True)
class Webhook:
    """The target of updates when the bot does not poll."""

    url: str = ""
    secret: str = ""
    max_connections: int = 40
    last_error: str | None = None
    last_error_at: int = 0


class UpdateQueue:
    """Updates that the bot has not confirmed yet, oldest first."""

    def __init__(self, wake: Callable[[], None]) -> None:
        self.next_id = _FIRST_ID
        self.pending: list[Queued] = []
        self.allowed: list[str] = []
        self.webhook = Webhook()
        self.polls: list[float] = []  # time of getUpdates, for the cold start
        self.retry_after = 0.05  # seconds between two attempts at a failing webhook
        self._wake = wake
        self._poll: asyncio.Future[None] | None = None
        self._duplicate_next = False
        self._hold = 0
        self._held: list[tuple[str, JsonDict, Callable[[int], None] | None]] = []
        # The addresses to which a proxy at the webhook's address passes updates, in turn.
        self.behind: list[str] = []
        self._turn = 0
        self._posting: dict[Queued, asyncio.Task[None]] = {}
        self._sender = Sender()

    # -- in -----------------------------------------------------------------------------------

    def push(self, kind: str, body: JsonDict, then: Callable[[int], None] | None = None) -> bool:
        """Queue one update; returns whether it is wanted. `then` gets its id once it has one."""
        if kind not in self.allowed if self.allowed else kind in _ONLY_ON_REQUEST:
            return False
        if self._hold:
            self._held.append((kind, body, then))
            if len(self._held) == self._hold:
                held, self._held, self._hold = self._held, [], 0
                for one in reversed(held):
                    self._queue(*one)
            return True
        self._queue(kind, body, then)
        return True

    def _queue(self, kind: str, body: JsonDict, then: Callable[[int], None] | None) -> None:
        number = self.next_id
        self.next_id += 1
        if then is not None:
            then(number)
        queued = Queued(number, json.dumps({"update_id": number, kind: body}).encode(), _lane(body))
        if self._duplicate_next:
            self._duplicate_next, queued.repeats = False, 1
        self.pending.append(queued)
        if self._poll is not None and not self._poll.done():
            self._poll.set_result(None)
        self._deliver_soon()

    def begin_anew(self) -> None:
        """Forget all updates, and number them from the beginning."""
        self.pending.clear()
        self.next_id = _FIRST_ID

    def duplicate_next(self) -> None:
        """Deliver the next update once more, with the same id, after it was confirmed."""
        self._duplicate_next = True

    def reorder_next(self, count: int) -> None:
        """Hold the next `count` updates, then number them in the opposite order."""
        self._hold = count

    # -- out by long poll ---------------------------------------------------------------------

    def confirm(self, offset: int) -> None:
        """Drop all updates below `offset`; a negative one keeps only that many of the newest."""
        if offset < 0:
            self.pending = self.pending[offset:]
            return
        kept = []
        for queued in self.pending:
            if queued.id >= offset:
                kept.append(queued)
            elif queued.repeats:
                queued.repeats -= 1
                kept.append(queued)
        self.pending = kept

    async def poll(self, offset: int, limit: int, seconds: float) -> bytes:
        """The JSON array of up to `limit` updates; waits up to `seconds` for the first one."""
        if self.webhook.url:
            raise conflict(
                "can't use getUpdates method while webhook is active; "
                "use deleteWebhook to delete the webhook first"
            )
        self.end_poll(
            "terminated by other getUpdates request; make sure that only one bot instance is running"
        )
        self.polls.append(time.monotonic())
        if offset:
            self.confirm(offset)
        self._wake()
        if not self.pending and seconds > 0:
            await self._wait(seconds)
        batch = self.pending[: max(1, min(limit, 100))]
        for queued in batch:
            queued.handed = True
        return b"[" + b",".join(queued.body for queued in batch) + b"]"

    async def _wait(self, seconds: float) -> None:
        poll: asyncio.Future[None] = asyncio.get_running_loop().create_future()
        self._poll = poll
        try:
            await asyncio.wait({poll}, timeout=seconds)
            if poll.done():
                poll.result()  # raises the conflict that ended the poll
        finally:
            if self._poll is poll:
                self._poll = None

    def end_poll(self, sentence: str) -> None:
        """End the waiting poll, if there is one, with 409."""
        poll, self._poll = self._poll, None
        if poll is not None and not poll.done():
            poll.set_exception(conflict(sentence))

    # -- out by webhook -----------------------------------------------------------------------

    def set_webhook(self, webhook: Webhook, *, drop_pending: bool) -> None:
        """Switch to a webhook, or with an empty url back to polling."""
        if drop_pending:
            self.pending.clear()
        self.webhook = webhook
        if webhook.url:
            self.end_poll("terminated by setWebhook request")
            self._deliver_soon()

    def _deliver_soon(self) -> None:
        """Post pending updates, chats in parallel and each in order, as Telegram's own server does."""
        if not self.webhook.url:
            return
        busy = {queued.lane for queued in self._posting}
        for queued in self.pending:
            if len(self._posting) >= self.webhook.max_connections:
                return
            if queued.lane not in busy:
                busy.add(queued.lane)
                self._posting[queued] = asyncio.get_running_loop().create_task(self._deliver(queued))

    async def _deliver(self, queued: Queued) -> None:
        while self.webhook.url and queued in self.pending:
            status = await self.post(queued.body)
            if 200 <= status <= 299:
                queued.handed = True
                if queued.repeats:
                    queued.repeats -= 1
                    continue
                if queued in self.pending:
                    self.pending.remove(queued)
                break
            self.webhook.last_error = (
                f"Wrong response from the webhook: {status}" if status else "Connection refused"
            )
            self.webhook.last_error_at = int(time.time())
            await asyncio.sleep(self.retry_after)
        self._posting.pop(queued, None)
        self._wake()
        self._deliver_soon()

    async def post(self, body: bytes, secret: str | None = None) -> int:
        """Post one update to the webhook; returns the HTTP status, 0 without a response."""
        token = self.webhook.secret if secret is None else secret
        for _one in self.behind or [self.webhook.url]:
            self._turn += 1
            url = self.behind[self._turn % len(self.behind)] if self.behind else self.webhook.url
            status = await self._sender.post(url, body, token)
            if status:
                return status
        return 0

    def info(self) -> JsonDict:
        """The WebhookInfo object."""
        hook = self.webhook
        found: dict[str, Any] = {
            "url": hook.url,
            "has_custom_certificate": False,
            "pending_update_count": len(self.pending),
        }
        if hook.url:
            found["max_connections"] = hook.max_connections
        if hook.last_error:
            found |= {"last_error_date": hook.last_error_at, "last_error_message": hook.last_error}
        if self.allowed:
            found["allowed_updates"] = self.allowed
        return found

    async def close(self) -> None:
        """End polls and deliveries."""
        self.webhook = Webhook()
        if self._poll is not None and not self._poll.done():
            self._poll.set_result(None)
        posting = set(self._posting.values())
        for task in posting:
            task.cancel()
        if posting:
            await asyncio.wait(posting)
        await self._sender.close()


def _lane(body: JsonDict) -> int:
    """The chat of an update, or the person if there is none."""
    inner = body.get("chat") or body.get("message", {}).get("chat") or body.get("from") or {}
    return int(inner.get("id", 0))
