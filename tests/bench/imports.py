"""Measure how long others wait for an answer while one bar imports a file."""

from __future__ import annotations

import asyncio
import tempfile
import time
from datetime import UTC, datetime
from pathlib import Path

from bot.channels.telegram.channel import TelegramChannel
from storage import migrate
from storage.store import Store
from tests.api import Person, Server
from tests.channels.telegram.conftest import Telephone, settings_for
from tests.house import Hands
from tests.work.transfer.files import waste_rows

ROWS = 30_000
_LINES = (("waste 3 limes mouldy", "Logged: 3 limes"), ("week", "Waste"))
_NEVER = 600.0
_LEAST = 60  # answers


async def bars_at(telephone: Telephone) -> tuple[Person, list[Person]]:
    """Open a bar that may import many rows, and four others."""
    stranger = await telephone.opened_bar("Stranger")
    telephone.clock.turn(days=8)  # in its first week a bar takes in fewer rows
    return stranger, [await telephone.opened_bar(f"Bar {number}") for number in range(4)]


async def _until_said(server: Server, person: Person, words: str) -> None:
    """Wait until the person was told something with these words."""
    if not await server.world.until(
        lambda: any(words in one.text for one in server.messages(person)), _NEVER
    ):
        raise AssertionError(server.transcript(person)[-500:])


async def imports(server: Server, person: Person, rows: int) -> None:
    """Import a file with this many rows of waste."""
    await person.sends_document("waste.csv", waste_rows(rows), wait=False)
    await _until_said(server, person, "Nothing is added yet")
    (asked,) = [one for one in server.messages(person) if "Nothing is added yet" in one.text]
    await person.taps("Import it", asked, wait=False)
    await _until_said(server, person, " are in.")


async def answers_beside(
    server: Server, others: list[Person], work: asyncio.Task[None], least: int = 0
) -> list[float]:
    """Let others write in turn until the work ends, `least` times or more; return each answer's seconds."""
    taken: list[float] = []
    while not work.done() or len(taken) < least:
        number = len(taken)
        line, answer = _LINES[number // len(others) % 2]
        person, mark, begun = others[number % len(others)], server.mark(), time.monotonic()
        person.writes(line)
        followed = await server.follow(person, mark, within=_NEVER)
        taken.append(time.monotonic() - begun)
        assert answer in followed.text, followed.text
        await asyncio.sleep(0.05)
    return taken


async def _measured(database: Path, rows: int) -> tuple[list[float], list[float]]:
    store = Store(f"sqlite:///{database}")
    migrate.upgrade(store)
    clock = Hands(datetime(2026, 11, 25, 18, 0, tzinfo=UTC))
    async with Server() as server:
        telephone = Telephone(server, TelegramChannel(settings_for(server, store), store, clock), clock)
        await telephone.channel.start()
        try:
            stranger, others = await bars_at(telephone)
            nothing = asyncio.create_task(asyncio.sleep(0))
            await answers_beside(server, others, nothing, least=2 * len(others))  # loads what each bar needs
            alone = await answers_beside(server, others, nothing, least=_LEAST)
            importing = asyncio.create_task(imports(server, stranger, rows))
            beside = await answers_beside(server, others, importing)
            await importing
        finally:
            await telephone.channel.stop()
    store.close()
    return alone, beside


def measure_imports(rows: int = ROWS) -> tuple[float, float]:
    """Return the milliseconds within which 99 of 100 answers come: alone, and beside an import."""
    with tempfile.TemporaryDirectory() as folder:
        alone, beside = asyncio.run(_measured(Path(folder) / "bars.sqlite", rows))
    return _most_ms(alone), _most_ms(beside)


def _most_ms(taken: list[float]) -> float:
    return sorted(taken)[round(0.99 * (len(taken) - 1))] * 1000
