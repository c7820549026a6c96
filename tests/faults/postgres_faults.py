"""Stop PostgreSQL under load, by a restart or a crash."""

from __future__ import annotations

import asyncio
import signal

from tests.faults.scene import Scene


async def restarted(scene: Scene, times: int) -> int:
    """PostgreSQL restarts as for an upgrade, which interrupts running work."""
    return await _again(scene, times, signal.SIGINT)


async def killed(scene: Scene, times: int) -> int:
    """PostgreSQL crashes and recovers from its log."""
    return await _again(scene, times, signal.SIGQUIT)


async def _again(scene: Scene, times: int, how: signal.Signals) -> int:
    assert scene.postgres is not None
    for _time in range(times):
        scene.reminds(1, later=1.0)
        writing = asyncio.create_task(scene.write(20, pause=0.1))
        await asyncio.sleep(0.7)
        await asyncio.to_thread(scene.postgres.end, how)
        await asyncio.sleep(0.5)
        scene.postgres.again()
        await asyncio.to_thread(scene.postgres.wait)
        await writing
        await scene.settled()
    return times
