"""Faults of the network and of Telegram: lost, late, refused, repeated or reordered messages."""

from __future__ import annotations

import asyncio
import random
from collections.abc import Callable
from typing import Any

from tests.api import Fault
from tests.faults.scene import Scene

_SEED = 20261126
_READ_TIMEOUT = 5.0  # the program's timeout in seconds: a later response is a send with unknown outcome


class _Sometimes:
    """Makes a share of the calls of some methods fail, chosen by a seed, and counts them."""

    def __init__(self, scene: Scene, share: float, faults: list[Fault], methods: tuple[str, ...]) -> None:
        self.happened = 0
        self._chance = random.Random(_SEED)
        self._share = share
        self._faults = scene.server.faults
        for method in methods:
            for number, fault in enumerate(faults):
                self._faults.order(method, fault, 1_000_000, self._chooses(number, len(faults)))

    def _chooses(self, number: int, of: int) -> Callable[[dict[str, Any]], bool]:
        share = self._share / of / (1 - self._share * number / of)  # as if one draw decided among all

        def chosen(_values: dict[str, Any]) -> bool:
            hit = self._chance.random() < share
            self.happened += hit
            return hit

        return chosen

    def end(self) -> int:
        """Stop the failures; return their number."""
        self._faults.clear()
        return self.happened


async def _under(
    scene: Scene, times: int, share: float, faults: list[Fault], methods: tuple[str, ...]
) -> int:
    """Write entries and make reminders due while a share of the calls fail."""
    failing = _Sometimes(scene, share, faults, methods)
    scene.reminds(max(1, times // 4))
    scene.asks(0)
    await scene.write(times, pause=0.02)
    scene.asks(1)
    await scene.settled(hurried=True)
    return failing.end()


async def drops(scene: Scene, times: int) -> int:
    """The connection breaks, before the request was read or after it was executed."""
    faults = [Fault.drop_before(), Fault.drop_after()]
    return await _under(scene, times, 0.25, faults, ("sendMessage", "getUpdates"))


async def server_errors(scene: Scene, times: int) -> int:
    """500 and 502; with one kind the message was accepted nonetheless."""
    faults = [Fault.http(500), Fault.http(502), Fault.http(502, processed=True)]
    return await _under(scene, times, 0.3, faults, ("sendMessage", "getUpdates"))


async def floods(scene: Scene, times: int) -> int:
    """429 with a second to wait."""
    return await _under(scene, times, 0.3, [Fault.flood(1)], ("sendMessage", "getUpdates"))


async def slow(scene: Scene, times: int) -> int:
    """Responses that are late, but in time."""
    return await _under(scene, times, 0.3, [Fault.slow(1.5)], ("sendMessage",))


async def ambiguous(scene: Scene, times: int) -> int:
    """The message was accepted, and the response was too late or unreadable."""
    faults = [Fault.slow(_READ_TIMEOUT + 1), Fault.garbled(), Fault.drop_after()]
    return await _under(scene, times, 0.3, faults, ("sendMessage",))


async def away(scene: Scene, times: int) -> int:
    """Telegram answers 502 to everything for longer than several retries."""
    failing = _Sometimes(scene, 1.0, [Fault.http(502)], ("sendMessage",))
    scene.reminds(1)
    await scene.write(times)
    await asyncio.sleep(25)
    happened = failing.end()
    await scene.settled(hurried=True)
    return happened


async def duplicates(scene: Scene, times: int) -> int:
    """Every update is delivered twice, and every third time the program is killed in between."""
    scene.reminds(max(1, times // 4))
    for number in range(times):
        scene.server.duplicate_next_update()
        scene.writes(number)
        if number % 3 == 2:
            await asyncio.sleep(0.02)
            await scene.restart()
    await scene.settled()
    return times


async def disorder(scene: Scene, times: int) -> int:
    """Updates are numbered in the opposite order, three at a time."""
    scene.reminds(max(1, times // 4))
    lots = max(1, times // 3)
    for number in range(lots):
        scene.server.reorder_next_updates(3)
        for _one in range(3):
            scene.writes(number)
    await scene.settled()
    return lots
