"""Claiming reminders in a process of its own, which loads no more than that takes."""

from __future__ import annotations

from datetime import UTC, datetime
from typing import Any

from bot.work.reminders import delivery
from storage.store import Store


def claim_all(store: Store, channel: str, now: datetime) -> list[int]:
    """Claim all that is due, a few at a time; return their numbers."""
    taken: list[int] = []
    while True:
        found = delivery.claim(store, channel, now, most=7)
        if not found:
            return taken
        taken += [one.id for one in found]


def claim_in_process(url: str, channel: str, now: float, taken: Any) -> None:
    """Put the numbers of what was claimed into `taken`."""
    store = Store(url)
    taken.put(claim_all(store, channel, datetime.fromtimestamp(now, UTC)))
    store.close()
