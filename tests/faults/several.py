"""Two processes on one PostgreSQL behind one webhook; one is killed or stalls."""

from __future__ import annotations

import asyncio
import signal
from collections.abc import Callable

from sqlalchemy import text

from tests.api import free_port
from tests.faults.program import Program
from tests.faults.scene import Scene

_SECRET = "only-the-loopback-server-knows-it"  # noqa: S105
_LEASE_OVER = 90.0  # seconds; the leases of the lost process last thirty, and are not shortened here
_LEASE = 2  # seconds of a lease, if a process stalls for longer than that
_OVER = 1.3  # seconds after which a process with this lease checks whether it still holds it
_SETTLES_IN = 0.7  # seconds after which an idle program does nothing by itself
_MOST_STEPS = 150
_PLACES = (("before sendMessage", False), ("before INSERT waste", False), ("before sendMessage", True))
_IN_A_REMINDER = ("before sendMessage", "after sendMessage")
_REMINDER_CLAIMED = "UPDATE reminder SET"
# The server does the same after a minute in an idle transaction.
_END_IDLE = text(
    "SELECT pg_terminate_backend(pid) FROM pg_stat_activity"
    " WHERE datname = current_database() AND state = 'idle in transaction' AND pid <> pg_backend_pid()"
)


def _hooked(scene: Scene, **steps: object) -> str:
    """Start a program behind the webhook; return its address."""
    listen = f"127.0.0.1:{free_port()}"
    address = f"http://{listen}/telegram"
    first = (scene.server.world.updates.behind or [address])[0]
    scene.start(
        steps or None,
        TELEGRAM_WEBHOOK_URL=first,
        TELEGRAM_WEBHOOK_SECRET=_SECRET,
        LISTEN_ADDRESS=listen,
    )
    return address


async def one_of_two_killed(scene: Scene, times: int) -> int:
    """Kill one of two working processes; the other takes over its updates, and a new one starts."""
    await scene.kill()
    behind = scene.server.world.updates.behind
    behind.append(_hooked(scene))
    behind.append(_hooked(scene))
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
        behind.append(_hooked(scene))
    await scene.settled()
    return times


async def one_of_two_frozen(scene: Scene, times: int) -> int:
    """Stop one of two at step 1, 2, 3 … of an entry, then of a question, until after its leases expire.

    With `times` above 0 only that many important places are tested instead of all steps. At every other step
    the server has ended the frozen process's open transaction.
    """
    await scene.stop()
    scene.server.world.updates.behind.append(_hooked(scene, lease=_LEASE))
    await scene.write(2)
    await scene.settled()
    frozen = 0
    if times:
        for number, (place, asks) in enumerate(_PLACES[:times]):
            frozen += await _freezes_at(scene, number, asks, place)
        return frozen
    for asks in (False, True):
        for step in range(1, _MOST_STEPS, scene.every):
            if not await _freezes_at(scene, step, asks):
                break
            frozen += 1
    await scene.settled()
    return frozen


async def _freezes_at(scene: Scene, step: int, asks: bool, place: str = "") -> bool:
    """Start a second program that stalls at this step of the next message; False if it never did."""
    behind = scene.server.world.updates.behind
    stays = behind[0]
    words = "week" if asks else f"waste {scene.next_amount(step)} oranges"
    told = scene.folder / f"frozen-{asks}-{step}.txt"
    where = {"place": place} if place else {"last": step}
    behind[:] = [_hooked(scene, words=words, told=str(told), freezes=True, lease=_LEASE, **where)]
    await _listens(behind[0])
    await asyncio.sleep(_SETTLES_IN)
    late = scene.programs[-1]
    if asks:
        scene.asks(step)
    else:
        scene.writes(step)
    if not await _frozen_or(late, lambda: scene.quiet):
        behind[:] = [stays]
        await _gone(scene, late)
        return False
    scene.steps.append(told.read_text())
    behind[:] = [stays]
    scene.writes(step)  # in the same chat, after the frozen message
    scene.writes(step + 1)
    if step % 2:
        scene.change(lambda unit: unit.session.execute(_END_IDLE))
    scene.age_leases(of_all=True)
    await asyncio.sleep(_OVER)
    await scene.server.world.until(lambda: scene.quiet, 1.5)
    late.send(signal.SIGCONT)
    await scene.settled()
    await _gone(scene, late)
    return True


async def one_of_two_frozen_in_a_reminder(scene: Scene, times: int) -> int:
    """The same from the moment a reminder is claimed until it is settled."""
    if times:
        return sum([await _freezes_in_a_reminder_at(scene, 0, place) for place in _IN_A_REMINDER[:times]])
    frozen = 0
    for step in range(1, _MOST_STEPS, scene.every):
        if not await _freezes_in_a_reminder_at(scene, step):
            break
        frozen += 1
    await scene.settled()
    return frozen


async def _freezes_in_a_reminder_at(scene: Scene, step: int, place: str = "") -> bool:
    await scene.stop()
    told = scene.folder / f"frozen-reminder-{step}.txt"
    name = scene.reminds(1)[0]
    where = {"place": place} if place else {"last": step}
    scene.start({"words": _REMINDER_CLAIMED, "told": str(told), "freezes": True, "lease": _LEASE, **where})
    late = scene.programs[-1]
    if not await _frozen_or(late, lambda: scene.is_settled(name)):
        return False
    scene.steps.append(told.read_text())
    if step % 2:
        scene.change(lambda unit: unit.session.execute(_END_IDLE))
    scene.age_leases(of_all=True)
    scene.start({"lease": _LEASE})
    await asyncio.sleep(_OVER)
    await scene.server.world.until(lambda: scene.said(name), 2.5)
    late.send(signal.SIGCONT)
    await scene.settled(30)
    await asyncio.sleep(_OVER)
    return True


async def _frozen_or(program: Program, over: Callable[[], bool]) -> bool:
    """Wait until a program has frozen; False if it has not shortly after `over` is true."""
    for _second in range(120):
        if await program.frozen(0.25):
            return True
        if over():
            return await program.frozen(0.3)
    raise AssertionError("neither frozen nor through")


async def _listens(address: str) -> None:
    port = int(address.rpartition(":")[2].partition("/")[0])
    for _tenth in range(300):
        try:
            _reader, writer = await asyncio.open_connection("127.0.0.1", port)
        except OSError:
            await asyncio.sleep(0.1)
        else:
            writer.close()
            return
    raise AssertionError("it does not listen")


async def _gone(scene: Scene, program: Program) -> None:
    """Stop the second program as a system does, so that it releases its leases."""
    scene.programs.remove(program)
    await program.stop()
