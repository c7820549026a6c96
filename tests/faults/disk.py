"""Faults of the database and its disk: full, locked, cut off, restarted."""

from __future__ import annotations

import asyncio
import contextlib
import resource
import sqlite3
import subprocess
from collections.abc import Callable, Iterator
from pathlib import Path

from sqlalchemy import create_engine, make_url, text

from tests.faults.scene import Scene

_TOO_LONG = 7.0  # seconds; SQLite waits five for a lock


async def writes_fail(scene: Scene, times: int) -> int:
    """No file may grow: every write beyond its end fails, as on a full disk. Then writes work again."""
    for number in range(times):
        (program,) = scene.programs
        _soft, hard = resource.prlimit(program.id, resource.RLIMIT_FSIZE)
        scene.reminds(1, later=1.0)
        resource.prlimit(program.id, resource.RLIMIT_FSIZE, (1, hard))
        if not number % 2:
            scene.asks(number)  # killed there, a read may be answered twice: nothing is written
        await scene.write(4, pause=0.05)
        # Long enough that people are told, with one kill in between: nothing was confirmed.
        await asyncio.sleep(4.0)
        if number % 2:
            await scene.restart()
        else:
            resource.prlimit(program.id, resource.RLIMIT_FSIZE, (hard, hard))
        await scene.settled()
    return times


@contextlib.contextmanager
def small_disk(folder: Path) -> Iterator[Path]:
    """A file system of six megabytes in `folder`, which needs root. Raises CalledProcessError."""
    place = folder / "small"
    place.mkdir()
    subprocess.run(["mount", "-t", "tmpfs", "-o", "size=6m", "tmpfs", place], check=True, capture_output=True)
    try:
        yield place
    finally:
        subprocess.run(["umount", "--lazy", place], check=True)


async def full(scene: Scene, times: int) -> int:
    """The file system is full to the last byte, then has room again."""
    place = Path(make_url(scene.url).database or "").parent
    for number in range(times):
        scene.reminds(1, later=1.0)
        filler = place / "filler"
        with filler.open("wb", buffering=0) as file, contextlib.suppress(OSError):
            while True:
                file.write(b"x" * 4096)
        if not number % 2:
            scene.asks(number)
        await scene.write(4, pause=0.05)
        await asyncio.sleep(4.0)
        if number % 2:
            await scene.kill()
        filler.unlink()
        if number % 2:
            scene.start()
        await scene.settled()
    return times


async def locked(scene: Scene, times: int) -> int:
    """Another process holds the write lock for longer than the program waits for it."""
    for number in range(times):
        scene.reminds(1, later=1.0)
        release = _lock(scene.url)
        scene.asks(number)
        await scene.write(4, pause=0.05)
        await asyncio.sleep(_TOO_LONG)
        release()
        await scene.settled()
    return times


def _lock(url: str) -> Callable[[], None]:
    """Lock out all writers of the database; return the function that unlocks it."""
    if url.startswith("sqlite"):
        holder = sqlite3.connect(make_url(url).database or "", isolation_level=None)
        holder.execute("BEGIN IMMEDIATE")
        return holder.close
    engine = create_engine(url)
    connection = engine.connect()
    connection.execute(text("LOCK TABLE inbox, waste IN ACCESS EXCLUSIVE MODE"))

    def release() -> None:
        connection.close()
        engine.dispose()

    return release


async def cut_off(scene: Scene, times: int) -> int:
    """The database server ends every connection while people write."""
    engine = create_engine(scene.url, isolation_level="AUTOCOMMIT")
    cut = text(
        "SELECT count(pg_terminate_backend(pid)) FROM pg_stat_activity "
        "WHERE pid <> pg_backend_pid() AND datname = current_database()"
    )
    try:
        for _time in range(times):
            scene.reminds(1)
            for number in range(6):
                scene.writes(number)
                await asyncio.sleep(0.02)
            with engine.connect() as connection:
                connection.execute(cut)
            for number in range(6):
                scene.writes(number)
                await asyncio.sleep(0.02)
            await asyncio.sleep(0.3)
    finally:
        engine.dispose()
    await scene.settled()
    return times
