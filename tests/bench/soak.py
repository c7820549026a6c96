"""Compress an hour of two hundred chats into a minute or two, and check that memory stays constant."""

from __future__ import annotations

import tempfile
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from tests.api.remote import Remote
from tests.bench.databases import Databases
from tests.bench.measure import Contender, Running, load
from tests.bench.parts import resident_mib

# The questions of an evening, each answered by one message.
_TALK = (
    "waste 6 oranges mouldy",
    "scale demo mist to 8 x 50 ml",
    "waste 2 oranges dried out",
    "week",
    "strength of demo mist",
    "undo",
    "formulas",
    "cost of demo mist",
    "help",
    "price oranges 0.60 each",
)
_TELLINGS = 13  # the number of memory readings, including the start


@dataclass(frozen=True)
class Soak:
    """Messages so far and MiB resident at each reading, the first before any message."""

    readings: tuple[tuple[int, float], ...]
    seconds: float

    def at(self, share: float) -> float:
        """The memory after this share of the messages."""
        last = self.readings[-1][0]
        return next(mib for messages, mib in self.readings if messages >= share * last)


def measure_soak(contender: Contender, chats: int, hourly: int, databases: Databases) -> Soak:
    """Send this many messages in each of this many chats, and read the memory in between."""
    contender = replace(contender, messages=_TALK)
    with tempfile.TemporaryDirectory() as folder, Remote() as remote:
        people = [remote.ask("person", id=1001 + at, first_name=f"P{at}") for at in range(chats)]
        assert contender.prepare is not None
        url = databases.filled(contender.database, Path(folder), contender.prepare, people)
        with Running(contender, remote, Path(folder), url) as running:
            running.ready()
            found = _talked(remote, people, running.process.pid, hourly)
        remote.stop()
    return found


def _talked(remote: Remote, people: Sequence[int], process: int, hourly: int) -> Soak:
    lot = max(1, hourly // (_TELLINGS - 1))
    readings = [(0, resident_mib(process) or 0.0)]
    seconds = 0.0
    for number in range(1, _TELLINGS):
        seconds += load(remote, people, _TALK, lot).elapsed
        readings.append((number * lot * len(people), resident_mib(process) or 0.0))
    return Soak(tuple(readings), seconds)
