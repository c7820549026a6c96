"""Telegram's rate limits for bots; off unless a test turns them on."""

from __future__ import annotations

import math
import time
from collections import defaultdict, deque
from collections.abc import Callable

from telegram.constants import FloodLimit

from tests.api.refusals import too_many_requests

_MINUTE = 60.0


class FloodControl:
    """Counts messages per chat and refuses those above the rate limit."""

    def __init__(self) -> None:
        self.on = False
        self.clock: Callable[[], float] = time.monotonic
        self.per_second = int(FloodLimit.MESSAGES_PER_SECOND_PER_CHAT)
        self.per_minute_in_groups = int(FloodLimit.MESSAGES_PER_MINUTE_PER_GROUP)
        self._sent: defaultdict[int, deque[float]] = defaultdict(deque)

    def count(self, chat_id: int) -> None:
        """Count one message to the chat, or refuse it with the seconds to wait."""
        if not self.on:
            return
        now = self.clock()
        sent = self._sent[chat_id]
        while sent and now - sent[0] >= _MINUTE:
            sent.popleft()
        limits = [(self.per_second, 1.0)]
        if chat_id < 0:
            limits.append((self.per_minute_in_groups, _MINUTE))
        for limit, span in limits:
            if len(sent) >= limit and now - sent[-limit] < span:
                raise too_many_requests(max(1, math.ceil(span - (now - sent[-limit]))))
        sent.append(now)
