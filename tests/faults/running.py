"""The list of faults, each run on a fresh database."""

from __future__ import annotations

import asyncio
import os
import shutil
import tempfile
from collections.abc import Awaitable, Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from tests import postgres
from tests.faults import clock, disk, killing, network, postgres_faults, refusing, several
from tests.faults.program import Loaded
from tests.faults.scene import Scene, scene
from tests.faults.tally import Tally

_MOST_SECONDS = 3600.0  # the longest takes ten minutes on an idle machine, five times that on a busy one
SQLITE, POSTGRESQL = "SQLite", "PostgreSQL"
_BOTH = (SQLITE, POSTGRESQL)


@dataclass(frozen=True)
class FaultToTry:
    """One kind of fault: `run` injects it about `times` times and returns the actual number.

    `quick` is the same for the test suite. `database_of` gives a folder for the database, `lacks` names what
    this machine lacks for it.
    """

    name: str
    run: Callable[[Scene, int], Awaitable[int]]
    times: int
    quick: int
    databases: tuple[str, ...] = (SQLITE,)
    quick_on: tuple[str, ...] = ()  # the databases of the test suite; without this only the first
    small_disk: bool = False
    own_server: bool = False
    lacks: Callable[[], str] = lambda: ""

    @property
    def quick_databases(self) -> tuple[str, ...]:
        """Return where the short part of the test suite tries it."""
        return (self.quick_on or self.databases[:1]) if self.quick else ()


def _no_small_disk() -> str:
    return "" if os.geteuid() == 0 and shutil.which("mount") else "only root can make a small disk"


def _no_other_time() -> str:
    return "" if clock.library() else "there is no libfaketime"


FAULTS = (
    FaultToTry("dropped connections", network.drops, 60, 2),
    FaultToTry("500 and 502", network.server_errors, 60, 0),
    FaultToTry("429 with retry_after", network.floods, 40, 0),
    FaultToTry("slow answers", network.slow, 40, 0),
    FaultToTry("ambiguous sends", network.ambiguous, 40, 2),
    FaultToTry("Telegram away for 25 s", network.away, 4, 0),
    FaultToTry("reminders refused", refusing.refused_reminders, 11, 0),
    FaultToTry("answers of several parts", refusing.parts, 8, 0),
    FaultToTry("another bot on the database", refusing.another_bot, 2, 1, _BOTH),
    FaultToTry("no network at the start", refusing.offline_at_the_start, 2, 0, _BOTH),
    FaultToTry("a big file beside others", refusing.big_file, 2, 0, _BOTH),
    FaultToTry("duplicated updates", network.duplicates, 30, 3, _BOTH),
    FaultToTry("reordered updates", network.disorder, 30, 3),
    FaultToTry(
        "killed at every step of a message", killing.at_every_step, 0, 2, _BOTH, quick_on=(POSTGRESQL,)
    ),
    FaultToTry("killed at every step of a reminder", killing.at_every_step_of_a_reminder, 0, 2, _BOTH),
    FaultToTry("killed at any moment", killing.at_any_moment, 25, 1, _BOTH, quick_on=(POSTGRESQL,)),
    FaultToTry("every write fails", disk.writes_fail, 4, 0),
    FaultToTry("disk full", disk.full, 4, 0, small_disk=True, lacks=_no_small_disk),
    FaultToTry("locked database", disk.locked, 3, 0, _BOTH),
    FaultToTry("clock stepped", clock.stepped, 6, 0, lacks=_no_other_time),
    FaultToTry("connections cut", disk.cut_off, 10, 0, (POSTGRESQL,)),
    FaultToTry("PostgreSQL restarted", postgres_faults.restarted, 3, 0, (POSTGRESQL,), own_server=True),
    FaultToTry("one of two processes killed", several.one_of_two_killed, 4, 0, (POSTGRESQL,)),
    FaultToTry("one of two processes frozen", several.one_of_two_frozen, 0, 0, (POSTGRESQL,)),
    FaultToTry(
        "one of two frozen in a reminder", several.one_of_two_frozen_in_a_reminder, 0, 0, (POSTGRESQL,)
    ),
    FaultToTry("PostgreSQL killed", postgres_faults.killed, 3, 0, (POSTGRESQL,), own_server=True),
)


def lacks(fault: FaultToTry, database: str) -> str:
    """Return what this machine lacks for a fault, or an empty text."""
    if database == POSTGRESQL and not os.environ.get(postgres.NAMED) and postgres.binaries() is None:
        return "there is no PostgreSQL"
    return fault.lacks()


async def run(
    loaded: Loaded, fault: FaultToTry, database: str, *, quick: bool = False, every: int = 1
) -> Tally:
    """Inject one fault on a database of its own and return its tally. Raises TimeoutError.

    Of the faults at each step of a message or reminder, only every so many steps are tried.
    """
    times = fault.quick if quick else fault.times
    with _places(fault, database) as (url, folder, server):
        async with scene(loaded, url, folder) as stage:
            stage.postgres = server
            stage.every = every
            try:
                async with asyncio.timeout(_MOST_SECONDS):
                    tried = await fault.run(stage, times)
            except TimeoutError:
                print(f"after {len(stage.steps)} steps: {stage.why()}")
                raise
            tally = stage.tally(fault.name, tried)
            if not tally.clean:
                print(stage.why())
            return tally


@contextmanager
def _places(fault: FaultToTry, database: str) -> Iterator[tuple[str, Path, postgres.Private | None]]:
    """A database URL, a folder for everything else, and the server if the fault has its own."""
    with tempfile.TemporaryDirectory(prefix="peel-faults-") as name:
        folder = Path(name)
        if fault.own_server:
            server = postgres.Private(postgres.folder_for_private(), durable=True)
            try:
                yield server.url.render_as_string(hide_password=False), folder, server
            finally:
                server.remove()
        elif database == POSTGRESQL:
            url = postgres.create_database()
            try:
                yield url.render_as_string(hide_password=False), folder, None
            finally:
                postgres.drop_database(url)
        elif fault.small_disk:
            with disk.small_disk(folder) as place:
                yield f"sqlite:///{place / 'bar.sqlite'}", folder, None
        else:
            yield f"sqlite:///{folder / 'bar.sqlite'}", folder, None
