"""Two processes on one PostgreSQL behind one webhook, one of which is killed."""

from __future__ import annotations

import asyncio
import socket

from tests.faults.scene import Scene

_SECRET = "only-the-loopback-server-knows-it"  # noqa: S105
_LEASE_OVER = 90.0  # seconds; the leases of the one that is gone last thirty, and nobody shortens them here


def _free_port() -> int:
    with socket.socket() as looked_for:
        looked_for.bind(("127.0.0.1", 0))
        return int(looked_for.getsockname()[1])


async def one_of_two_killed(scene: Scene, times: int) -> int:
    """Kill one of two while both work; the other takes over what it held, and a new one comes."""
    await scene.kill()
    behind = scene.server.world.updates.behind

    def started() -> None:
        listen = f"127.0.0.1:{_free_port()}"
        behind.append(f"http://{listen}/telegram")
        scene.start(TELEGRAM_WEBHOOK_URL=behind[0], TELEGRAM_WEBHOOK_SECRET=_SECRET, LISTEN_ADDRESS=listen)

    started()
    started()
    await scene.write(4)
    await scene.settled()
    for number in range(times):
        scene.reminds(2)
        await scene.write(12, pause=0.02)
        await asyncio.sleep(0.02 * number)
        behind.pop(0)
        await scene.programs.pop(0).kill()
        await scene.write(6, pause=0.02)
        await scene.settled(_LEASE_OVER)
        started()
    await scene.settled()
    return times
