"""Run a command on a copy of its bar, and only write what it changed.

Work that takes seconds would hold up everybody else's entries if it ran in a transaction.
"""

from __future__ import annotations

import gc
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from functools import wraps
from typing import Any, TypeVar

from bot.chat.dialogue.turn import Say, Turn
from bot.chat.i18n.language import speaking, tongue
from bot.chat.reply.message import Reply
from bot.work.errors import WorkError
from storage.store import Store
from storage.unit import Unit
from storage.workbench import StaleError, Workbench

MOST_TRIES = 4  # while others change the bar; then the work is done in the transaction after all
_Given = TypeVar("_Given")


class Prepared:
    """The finished work: what it changed, and its answer or refusal."""

    def __init__(self, bench: Workbench | None, answer: Reply | None, refusal: Exception | None) -> None:
        self._bench = bench
        self._answer = answer
        self._refusal = refusal

    def answer(self, unit: Unit) -> Reply:
        """Write the changes and return the answer. Raises the refusal, or StaleError."""
        if self._refusal is not None:
            raise self._refusal
        assert self._bench is not None and self._answer is not None  # noqa: S101, PT018 - it was no refusal
        self._bench.write(unit)
        return self._answer

    def close(self) -> None:
        """Forget the copy."""
        if self._bench is not None:
            self._bench.close()


class Preparation(Exception):  # noqa: N818 - it is a request, not a fault
    """Roll back, do this work without a transaction, and run the message again with its result."""

    def __init__(self, turn: Turn, run: Callable[[Turn], Reply]) -> None:
        super().__init__()
        self._turn = turn
        self._run = run
        self._tongue = tongue()

    def work(self, store: Store) -> Prepared:
        """Do the work on a copy."""
        with _uncollected():
            return self._work(store)

    def _work(self, store: Store) -> Prepared:
        bench = Workbench(store, self._turn.context.bar.id)
        try:
            with speaking(self._tongue), bench.store.writing() as unit:
                answer = self._run(replace(self._turn, unit=unit, prepared=None))
        except (Say, WorkError) as refusal:
            bench.close()
            return Prepared(None, None, refusal)
        except BaseException:
            bench.close()
            raise
        bench.finish()
        return Prepared(bench, answer, None)


@contextmanager
def _uncollected() -> Iterator[None]:
    """Collect no garbage meanwhile: with so many rows in memory each collection would stop all threads."""
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()


def on_copy(run: Callable[[Turn, _Given], Reply]) -> Callable[[Turn, _Given], Reply]:
    """Let a command do its work on a copy of the bar."""

    @wraps(run)
    def prepared(turn: Turn, arguments: _Given) -> Reply:
        if turn.alone:
            return run(turn, arguments)
        found: Any = turn.prepared
        if found is None:
            raise Preparation(turn, lambda copy: run(copy, arguments))
        try:
            answer: Reply = found.answer(turn.unit)
        except StaleError:
            raise Preparation(turn, lambda copy: run(copy, arguments)) from None
        return answer

    return prepared
