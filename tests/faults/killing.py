"""SIGKILL at every step of receiving, saving and answering, of a reminder, and at random moments."""

from __future__ import annotations

import asyncio
import random

from tests.faults.scene import Scene

_SEED = 20261126
_MOST_STEPS = 150
_FIRST_WORDS = "UPDATE reminder SET"  # the statement that claims reminders


async def at_every_step(scene: Scene, times: int) -> int:
    """Kill the program at step 1, 2, 3 … of receiving, saving and answering one message, until it completes.

    `times` steps are tested, spread over all of them; with 0 every so many as the scene says.
    """
    died: list[str] = []
    every = max(1, 45 // times) if times else scene.every
    for step in range(1, _MOST_STEPS, every):
        place = await _dies_at(scene, step, f"waste {scene.next_amount(0)} oranges")
        if place is None:
            break
        died.append(place)
        if times and len(died) >= times:
            break
    else:
        raise AssertionError("the steps had no end")
    scene.steps += died
    await scene.settled()
    return len(died)


async def _dies_at(scene: Scene, step: int, words: str) -> str | None:
    """Start a program that dies at this step of the next message; return where, None if it survived."""
    await scene.kill()
    told = scene.folder / f"step-{step}.txt"
    program = scene.start({"words": words, "last": step, "told": str(told)})
    amount = scene.writes(0)
    answered = asyncio.create_task(scene.server.world.until(lambda: scene.answered(0, amount), 30))
    gone = asyncio.create_task(program.ended(30))
    await asyncio.wait({gone, answered}, return_when=asyncio.FIRST_COMPLETED)
    answered.cancel()
    # Answered; only the marks are left.
    await asyncio.wait({gone}, timeout=1.0)
    gone.cancel()
    if not told.exists() or (scene.answered(0, amount) and scene.is_marked()):
        return None  # from then on it does other work, without end
    await scene.restart()
    await scene.server.world.until(lambda: scene.answered(0, amount), 30)
    await scene.marked()
    return told.read_text()


async def at_every_step_of_a_reminder(scene: Scene, times: int) -> int:
    """The same from the moment a reminder is claimed until it is settled."""
    died = 0
    every = max(1, 14 // times) if times else scene.every
    for step in range(1, _MOST_STEPS, every):
        await scene.kill()
        told = scene.folder / f"reminder-step-{step}.txt"
        names = scene.reminds(1)
        program = scene.start({"words": _FIRST_WORDS, "last": step, "told": str(told)})
        for _second in range(60):
            if await program.ended(0.25) or scene.is_settled(names[0]):
                await program.ended(0.5)
                break
        if not told.exists():
            break
        died += 1
        scene.steps.append(told.read_text())
        await scene.restart()
        await scene.settled(30)
        if times and died >= times:
            break
    await scene.settled()
    return died


async def at_any_moment(scene: Scene, times: int) -> int:
    """Kill the program at seeded random moments while people write and reminders come due."""
    chance = random.Random(_SEED)
    for number in range(times):
        scene.reminds(1)
        for at in range(3):
            scene.writes(number + at)
            await asyncio.sleep(chance.uniform(0, 0.03))
        await asyncio.sleep(chance.uniform(0, 0.25))
        await scene.restart()
        if number % 4 == 3:
            await scene.server.world.until(lambda: not scene.server.world.updates.pending, 30)
    await _let_lost_ones_come(scene)
    return times


async def _let_lost_ones_come(scene: Scene) -> None:
    """Expire the leases of a killed process, instead of waiting, so that its reminders are sent."""
    await scene.settled(5)
    scene.age_leases()
    await scene.settled()
