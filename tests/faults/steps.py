"""Kill or freeze a process at one step, counting each action from the arrival of given words.

There is a step before and after each statement and each commit of the database, each request to Telegram and
its response. A program told to die at step n ends itself by SIGKILL at exactly that place; one told to freeze
stops itself by SIGSTOP there, with all its threads, until it receives SIGCONT.
"""

from __future__ import annotations

import json
import os
import signal
from collections.abc import Sequence
from datetime import timedelta
from pathlib import Path
from threading import Lock
from typing import Any

from sqlalchemy import Engine, event
from sqlalchemy.orm import Session

from bot.channels.telegram.http_client import LeanRequest
from bot.channels.telegram.receiving.intake import Intake, Update
from bot.work.inbox import leased_inbox
from bot.work.reminders import delivery


class Steps:
    """Counts from the moment `words` appear in a response of Telegram or in a statement of the database.

    At step `last`, or at the first step named `place`, the process dies, or stalls if it `freezes`; it writes
    the place to the file `told`. `lease` overrides the seconds of every lease in this process.
    """

    def __init__(
        self,
        words: str = "",
        last: int = 0,
        told: str = "",
        place: str = "",
        freezes: bool = False,
        lease: int = 0,
    ) -> None:
        self._words = words
        self._last = last
        self._place = place
        self._told = Path(told)
        self._signal = signal.SIGSTOP if freezes else signal.SIGKILL
        self._lease = lease
        self._begun = False
        self._count = 0
        self._lock = Lock()  # statements run in several threads

    def _step(self, what: str) -> None:
        with self._lock:
            if not self._begun:
                return
            self._count += 1
            if self._count == self._last or (what == self._place and not self._told.exists()):
                self._told.write_text(what)
                os.kill(os.getpid(), self._signal)

    def watch(self) -> None:
        """Start counting."""
        if self._lease:
            leased_inbox.LEASE_SECONDS = self._lease
            leased_inbox.RENEW_SECONDS = self._lease / 5  # type: ignore[assignment]
            delivery.LEASE = timedelta(seconds=self._lease)
        if not self._words:
            return

        @event.listens_for(Engine, "before_cursor_execute")
        def _before(_c: Any, _cursor: Any, statement: str, *_rest: Any) -> None:
            if self._words in statement:
                self._begun = True
            self._step(f"before {_short(statement)}")

        @event.listens_for(Engine, "after_cursor_execute")
        def _after(_c: Any, _cursor: Any, statement: str, *_rest: Any) -> None:
            self._step(f"after {_short(statement)}")

        @event.listens_for(Engine, "commit")
        def _commit(_connection: Any) -> None:
            self._step("before the commit")

        @event.listens_for(Session, "after_commit")
        def _committed(_session: Any) -> None:
            self._step("after the commit")

        self._watch_requests()
        self._watch_webhook()

    def _watch_requests(self) -> None:
        plain = LeanRequest.do_request

        async def do_request(request: Any, url: str, *rest: Any, **options: Any) -> tuple[int, bytes]:
            name = url.partition("?")[0].rpartition("/")[2]
            self._step(f"before {name}")
            status, content = await plain(request, url, *rest, **options)
            if name == "getUpdates" and self._words.encode() in content:
                self._begun = True
            self._step(f"after {name}")
            return status, content

        LeanRequest.do_request = do_request  # type: ignore[method-assign, assignment]

    def _watch_webhook(self) -> None:
        plain = Intake.take_in

        async def take_in(intake: Intake, updates: Sequence[Update]) -> bool:
            if self._words in json.dumps(updates):
                self._begun = True
            self._step("before it is taken in")
            taken = await plain(intake, updates)
            self._step("after it was taken in")
            return taken

        Intake.take_in = take_in  # type: ignore[method-assign, assignment]


def _short(statement: str) -> str:
    """The verb and table of a statement: 'INSERT inbox'."""
    words = statement.replace('"', " ").split()
    if not words:
        return ""
    at = {"SELECT": "FROM", "INSERT": "INTO", "DELETE": "FROM"}.get(words[0].upper(), words[0])
    places = [place for place, word in enumerate(words) if word.upper() == at.upper()]
    return f"{words[0]} {words[places[0] + 1]}" if places and places[0] + 1 < len(words) else words[0]
