"""Tests of kills between receiving, committing and sending: nothing is lost, nothing doubled."""

from __future__ import annotations

import asyncio
import os
import random
import re
import signal
import sqlite3
import sys
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest
from sqlalchemy import select

from storage.store import Store
from storage.tables import Waste
from tests.api import Fault, Person, Server
from tests.channels.telegram.conftest import MIST, SET_UP
from tests.documents.reading import read_pages
from tests.examples import in_long_part
from tests.faults.program import Loaded, Program

_ROOT = Path(__file__).parents[3]
_KILLS = 40 if in_long_part() else 6
_PATIENCE = 60.0  # seconds: the start alone is slow on a busy machine
# From the delivery of an update, long before the entry is on disk, until well after the answer.
_LATEST = 0.06


@pytest.fixture
def bot(api: Server, tmp_path: Path, loaded: Loaded) -> Iterator[Bot]:
    """A bot that is not started yet; anything left running is killed after the test."""
    made = Bot(api, tmp_path, loaded)
    yield made
    made.kill_what_is_left()


class Bot:
    """`python -m bot run` as a process of its own, on one database file."""

    def __init__(self, server: Server, folder: Path, loaded: Loaded) -> None:
        self._loaded = loaded
        self._said = folder / "said.txt"
        self._program: Program | None = None
        self.environment = {
            "TELEGRAM_BOT_TOKEN": server.token,
            "TELEGRAM_API_BASE": server.base_url,
            "DATABASE_URL": f"sqlite:///{folder / 'bar.sqlite'}",
            "TELEGRAM_SENDS_PER_SECOND": "0",
            "MESSAGES_PER_MINUTE": "0",
            "XDG_DATA_HOME": str(folder),
            "LOG_LEVEL": "WARNING",
        }

    def start(self) -> None:
        """Fork it from a process that has already loaded it."""
        self._program = self._loaded.start(self.environment, self._said, None)

    async def start_plain(self) -> asyncio.subprocess.Process:
        """Start it directly, as a person does."""
        return await asyncio.create_subprocess_exec(
            sys.executable,
            "-m",
            "bot",
            "run",
            cwd=_ROOT,
            env={**os.environ, **self.environment},
            stderr=asyncio.subprocess.PIPE,
        )

    def kill_what_is_left(self) -> None:
        if self._program is not None:
            self._program.send(signal.SIGKILL)

    async def kill(self) -> None:
        assert self._program is not None
        await self._program.kill()

    async def stop(self) -> None:
        assert self._program is not None
        await self._program.stop()


async def _open_bar(ana: Person) -> None:
    await ana.says("/start", within=_PATIENCE)
    for answer in (*SET_UP, "price oranges 0.60 each"):
        await ana.says(answer, within=_PATIENCE)


def _on_disk(bot: Bot) -> list[int]:
    """The content of each row of waste in the database, in order."""
    store = Store(bot.environment["DATABASE_URL"])
    try:
        with store.reading() as unit:
            rows = unit.session.scalars(select(Waste.count_milli).order_by(Waste.id)).all()
            return [(milli or 0) // 1000 for milli in rows]
    finally:
        store.close()


def _texts(api: Server, ana: Person) -> list[str]:
    return [seen.text for seen in api.messages(ana)]


async def _oranges(api: Server, ana: Person) -> int:
    """The number of oranges in the week. Late answers of a killed bot may arrive before this one."""
    await ana.says("week", within=_PATIENCE)
    await api.world.until(lambda: any("Waste: " in seen.text for seen in api.messages(ana)), _PATIENCE)
    week = next(seen.text for seen in reversed(api.messages(ana)) if "Waste: " in seen.text)
    found = re.search(r"orange\s+(\d+)", week)
    return int(found[1]) if found else 0


@pytest.mark.long
async def test_killed_at_any_moment(api: Server, bot: Bot) -> None:
    chance = random.Random(20261125)
    ana = api.person("Ana")
    bot.start()
    await _open_bar(ana)
    for number in range(1, _KILLS + 1):
        ana.writes(f"waste {number} oranges mouldy")
        await api.world.until(lambda: not api.world.updates.pending or bool(api.world.in_flight), _PATIENCE)
        await asyncio.sleep(chance.uniform(0, _LATEST))
        await bot.kill()
        bot.start()
    last = f"Logged: {_KILLS} oranges"
    await api.world.until(lambda: any(last in seen.text for seen in api.messages(ana)), _PATIENCE)
    await api.wait_quiet()
    assert _on_disk(bot) == list(range(1, _KILLS + 1))
    assert await _oranges(api, ana) == sum(range(1, _KILLS + 1))
    answers = " ".join(seen.text for seen in api.messages(ana))
    for number in range(2, _KILLS + 1):
        assert f"Logged: {number} oranges, mouldy" in answers
    await bot.stop()


async def test_killed_while_the_answer_is_on_its_way(api: Server, bot: Bot) -> None:
    ana = api.person("Ana")
    bot.start()
    await _open_bar(ana)
    await api.wait_quiet()  # or the answer before it would meet the fault
    api.fail_next("sendMessage", Fault.slow(30, processed=False))
    ana.writes("waste 4 oranges mouldy")
    assert await api.world.until(lambda: bool(api.world.in_flight), _PATIENCE)
    await bot.kill()
    bot.start()
    # The answer before it may be repeated too, if the kill came before its delivery was noted.
    assert await api.world.until(
        lambda: any("Logged: 4 oranges" in text for text in _texts(api, ana)), _PATIENCE
    )
    again = next(text for text in _texts(api, ana) if "Logged: 4 oranges" in text)
    assert "(This may be a repeat.)" in again
    assert _on_disk(bot) == [4]
    assert await _oranges(api, ana) == 4
    await bot.stop()


async def test_killed_before_the_files_of_an_answer_were_sent(api: Server, bot: Bot) -> None:
    """The next start sends the files of an answer that is on disk, and not its text again."""
    ana = api.person("Ana")
    bot.start()
    await _open_bar(ana)
    await ana.says(MIST)
    for line in ("batch grapefruit mist to 8 x 50 ml", "label 1 a4-2x7"):
        await ana.says(line)
    await api.wait_quiet()
    api.fail_next("sendPhoto", Fault.slow(30, processed=False))
    ana.writes("8")
    async with asyncio.timeout(60):
        while not api.world.in_flight:  # noqa: ASYNC110 - a request that hangs wakes nobody
            await asyncio.sleep(0.01)
    await bot.kill()
    before = len(api.messages(ana))
    assert "8 labels for batch 1" in api.messages(ana)[-1].text
    bot.start()
    assert await api.world.until(lambda: api.messages(ana)[-1].document is not None, _PATIENCE)
    preview, sheet = api.messages(ana)[-2:]
    again = [text for text in _texts(api, ana)[before:] if "8 labels for batch 1" in text]
    assert not again
    assert preview.photo is not None
    assert "(This may be a repeat.)" in preview.text
    assert sheet.file_name == "batch-1-labels.pdf"
    assert "Grapefruit mist" in read_pages(sheet.document or b"")[0].text
    await bot.stop()


def _damage(path: Path) -> bytes:
    """Overwrite all pages of a database but the first, and return what the file held."""
    with closing(sqlite3.connect(path)) as connection:
        connection.execute("PRAGMA wal_checkpoint(TRUNCATE)")
    whole = path.read_bytes()
    with path.open("r+b") as file:  # in place: SQLite takes an empty file for a new database
        file.write(whole[:4096] + os.urandom(len(whole) - 4096))
    return whole


def _restore(path: Path, whole: bytes) -> None:
    for beside in ("-wal", "-shm"):
        Path(f"{path}{beside}").unlink(missing_ok=True)
    path.write_bytes(whole)


async def test_damage_is_told_and_the_file_restored_between_two_runs_goes_on(
    api: Server, bot: Bot, tmp_path: Path
) -> None:
    ana = api.person("Ana")
    bot.start()
    await _open_bar(ana)
    await api.wait_quiet()
    path = tmp_path / "bar.sqlite"
    whole = _damage(path)
    ana.writes("waste 2 limes mouldy")
    told = "My notebook is damaged, and nothing was logged."
    assert await api.world.until(lambda: any(told in text for text in _texts(api, ana)), _PATIENCE)
    await bot.kill()
    _restore(path, whole)
    bot.start()
    ana.writes("waste 3 limes mouldy")
    assert await api.world.until(lambda: any("Logged: 3" in text for text in _texts(api, ana)), _PATIENCE)
    assert 3 in _on_disk(bot)
    await bot.stop()


async def test_ends_within_ten_seconds_when_told_to(api: Server, bot: Bot) -> None:
    ana = api.person("Ana")
    process = await bot.start_plain()
    try:
        await ana.says("/help", within=_PATIENCE)
        process.terminate()
        await asyncio.wait_for(process.communicate(), 60)
    finally:
        if process.returncode is None:
            process.kill()
    assert process.returncode == 0


@pytest.mark.long
async def test_a_second_poller_is_refused_with_a_sentence(api: Server, bot: Bot) -> None:
    ana = api.person("Ana")
    bot.start()
    await ana.says("/help", within=_PATIENCE)
    second = await bot.start_plain()
    _out, err = await asyncio.wait_for(second.communicate(), _PATIENCE)
    assert second.returncode == 3
    assert "already runs a bot with this token" in err.decode()
    await bot.stop()
