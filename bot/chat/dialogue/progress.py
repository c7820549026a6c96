"""Report the progress of long work. The channel shows it until the answer replaces it."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar

from bot.chat.i18n.language import _, show_number
from bot.chat.reply.message import Reply, reply
from bot.work.context import Watch

FIRST_SECONDS = 1.5  # shorter work needs no message before its answer
EVERY_SECONDS = 2.0

Shows = Callable[[Reply], None]


class _Listener:
    """A progress listener, and the time of its last report."""

    def __init__(self, shows: Shows) -> None:
        self.shows = shows
        self._next = time.monotonic() + FIRST_SECONDS

    def is_due(self) -> bool:
        now = time.monotonic()
        if now < self._next:
            return False
        self._next = now + EVERY_SECONDS
        return True


_LISTENER: ContextVar[_Listener | None] = ContextVar("listener", default=None)


@contextmanager
def telling(shows: Shows) -> Iterator[None]:
    """Send progress to `shows` within this block, in the working thread."""
    token = _LISTENER.set(_Listener(shows))
    try:
        yield
    finally:
        _LISTENER.reset(token)


def tell(words: Callable[[], Reply]) -> None:
    """Report progress if there is a listener without a recent report; only then is it worded."""
    listener = _LISTENER.get()
    if listener is not None and listener.is_due():
        listener.shows(words())


def watching(what: str) -> Watch:
    """Return a watcher for the context, which reports the progress of a named task (its English name)."""

    def watch(done: int, of: int) -> None:
        tell(lambda: reply(_words(what, done, of)))

    return watch


def _words(what: str, done: int, of: int) -> str:
    return _("{what}: {done} of {rows} rows").format(
        what=_(what), done=show_number(done, 0), rows=show_number(of, 0)
    )
