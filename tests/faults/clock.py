"""Step the machine's clock back and forward while the program runs."""

from __future__ import annotations

import asyncio
from pathlib import Path

from tests.faults.program import Program
from tests.faults.scene import Scene

_HOUR = 3600
_STEPS = (-2 * _HOUR, 0, 26 * _HOUR, 0, -26 * _HOUR, 3 * _HOUR)


def library() -> Path | None:
    """Return the library that fakes the time of a process (Debian: libfaketime), None without."""
    return next(iter(sorted(Path("/usr/lib").glob("*/faketime/libfaketimeMT.so.1"))), None)


async def stepped(scene: Scene, times: int) -> int:
    """Step the clock this many times; each time entries are written, and a reminder is due by that clock."""
    found = library()
    if found is None:
        raise LookupError("no libfaketime")
    hands = scene.folder / "clock.txt"
    _set(hands, 0)
    env = {
        "LD_PRELOAD": str(found),
        "FAKETIME_TIMESTAMP_FILE": str(hands),
        "FAKETIME_NO_CACHE": "1",
        "DONT_FAKE_MONOTONIC": "1",
        "FAKETIME_DONT_FAKE_MONOTONIC": "1",
    }
    await scene.kill()
    scene.programs.append(Program.plain({**scene.env, **env}, scene.output))
    await scene.listening()
    for number in range(times):
        seconds = _STEPS[number % len(_STEPS)]
        await scene.write(2)
        _set(hands, seconds)
        scene.reminds(1, later=seconds)
        await scene.write(4)
        await asyncio.sleep(0.2)
        await scene.settled(20)
    return times


def _set(hands: Path, seconds: int) -> None:
    """Set the clock's error in seconds, atomically."""
    new = hands.with_suffix(".new")
    new.write_text(f"{seconds:+d}s")
    new.replace(hands)
