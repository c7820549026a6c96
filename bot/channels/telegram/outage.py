"""Wait out an outage: growing pauses, and one line a minute in the log."""

from __future__ import annotations

import logging
import time
from collections.abc import Callable

from telegram.error import RetryAfter, TelegramError

from bot.channels.telegram.outcomes import classify
from storage.store import Store
from storage.trouble import DatabaseError, is_passing, may_be_mended

log = logging.getLogger(__name__)
_SAY_EVERY_SECONDS = 60.0
_FIRST_PAUSE, _LONGEST_PAUSE = 0.4, 30.0


class Outage:
    """The failures of one counterpart since it was last heard."""

    def __init__(self, of: str) -> None:
        self._of = of
        self._began: float | None = None
        self._said_at = 0.0
        self._failures = 0

    @property
    def seconds(self) -> float:
        """How long it has lasted; 0 if there is none."""
        return 0.0 if self._began is None else time.monotonic() - self._began

    def failed(self, why: str, asked_for: float = 0.0) -> float:
        """Count a failure, and return the seconds to wait; `asked_for` is what the counterpart asked for."""
        now = time.monotonic()
        if self._began is None:
            self._began = now
        self._failures += 1
        pause = max(asked_for, min(_FIRST_PAUSE * 2.0 ** min(self._failures - 1, 10), _LONGEST_PAUSE))
        if self._failures == 1 or now - self._said_at >= _SAY_EVERY_SECONDS:
            self._said_at = now
            log.warning("%s does not answer, next attempt in %.0f s: %s", self._of, pause, why)
        return pause

    def refused(self, error: TelegramError) -> float:
        """The same for an error of Telegram."""
        asked_for = classify(error).wait if isinstance(error, RetryAfter) else 0.0
        return self.failed(error.message, asked_for)

    def over(self) -> None:
        """The counterpart has answered."""
        if self._began is not None:
            log.info("%s answers again after %.0f s", self._of, self.seconds)
        self._began, self._failures = None, 0


def until_database_answers(store: Store, work: Callable[[], None]) -> None:
    """Do the first work on a database, waiting for as long as it is away."""
    outage = Outage("the database")
    while True:
        try:
            work()
        except DatabaseError as error:
            if not is_passing(error) or (store.is_sqlite and not may_be_mended(error)):
                raise
            time.sleep(outage.failed(type(error).__name__))
        else:
            outage.over()
            return
