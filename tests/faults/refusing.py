"""Telegram refuses, or is away at the start; a new bot; answers of several parts; one big file."""

from __future__ import annotations

import asyncio
from typing import Any

from tests.api import Fault
from tests.api.refusals import REFUSED_MESSAGES
from tests.faults.scene import Scene
from tests.faults.tally import REPEAT
from tests.work.transfer.files import waste_rows

_OFFLINE = 8.0  # seconds


def _is_reminder(values: dict[str, Any]) -> bool:
    return "runs low" in str(values.get("text"))


async def refused_reminders(scene: Scene, times: int) -> int:
    """Every way to a reminder's reader is refused for a time; then somebody writes."""
    for code, said in REFUSED_MESSAGES[:times]:
        scene.server.fail_next("sendMessage", Fault.refuse(code, said), 1_000, _is_reminder)
        name = scene.reminds(1)[0]
        await asyncio.sleep(3.0)
        scene.server.faults.clear()
        assert not scene.said(name)
        scene.writes(0)
        scene.writes(1)
        scene.hurry()
        await scene.settled(30)
    return min(times, len(REFUSED_MESSAGES))


async def parts(scene: Scene, times: int) -> int:
    """Fail each part of an answer in turn; no answer begins anew."""
    faults = (Fault.flood(1), Fault.http(502), Fault.drop_before(), Fault.drop_after())
    await scene.write(2)
    for number in range(times):
        fault = faults[number % len(faults)]
        scene.server.fail_next(("sendMediaGroup", "sendMessage")[number // 4 % 2], fault, 2)
        person = scene.people[0]
        before = len(scene.server.messages(person))
        person.writes("export")
        scene.writes(0)
        await scene.settled(60)
        said = scene.server.messages(person)[before:]
        texts = [one for one in said if one.text.startswith("All of ") and REPEAT not in one.text]
        # The label of a repeated album stands below its first file.
        copies = sum(str(one.file_name).endswith(".json") for one in said)
        labelled = sum(REPEAT in one.text for one in said if one.file_name)
        assert len(texts) <= 1, scene.why()
        assert labelled >= copies - 1 >= 0, scene.why()
    return times


async def another_bot(scene: Scene, times: int) -> int:
    """A new bot on the same database: messages and updates are numbered from the beginning."""
    await scene.write(6)
    await scene.settled()
    for _time in range(times):
        await scene.stop()
        scene.look()
        scene.server.world.become_another_bot()
        scene.env["TELEGRAM_BOT_TOKEN"] = scene.server.token
        scene.forget_messages()
        scene.start()
        await scene.listening()
        await scene.write(6)
        await scene.settled()
    return times


async def offline_at_the_start(scene: Scene, times: int) -> int:
    """Without a network at the start the program waits, and then works."""
    for _time in range(times):
        await scene.kill()
        scene.server.fail_next("*", Fault.drop_before(), 1_000_000)
        scene.writes(0)
        scene.start()
        await asyncio.sleep(_OFFLINE)
        scene.server.faults.clear()
        await scene.write(4)
        await scene.settled()
    return times


async def big_file(scene: Scene, times: int) -> int:
    """One bar tries a file of many rows while others write."""
    content = waste_rows(10_000)
    for _time in range(times):
        await scene.people[0].sends_document("waste.csv", content, wait=False)
        for _entry in range(20):
            scene.writes(1)
            await asyncio.sleep(0.05)
        await scene.settled()
    return times
