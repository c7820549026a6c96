"""Measure how long whole processes take to start, as ratios to loading four libraries.

All are started in turn, so that other work on the machine affects each of them; medians count. Sources are
compiled and the grammar's tables saved before, as in an installation.
"""

from __future__ import annotations

import compileall
import os
import pty
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from itertools import count
from pathlib import Path

from bot.chat.grammar import tables
from storage import migrate
from storage.store import Store
from tests.api.remote import Remote
from tests.bench.measure import Contender, Running

_ROOT = Path(__file__).parents[2]
_YARDSTICK = "import telegram, sqlalchemy, lark, babel"
_PERSON = 1001

Seconds = Callable[[], float]


@dataclass(frozen=True)
class Start:
    """The median time of one start in seconds, its ratio to the yardstick, and the highest wanted one."""

    what: str
    seconds: float
    ratio: float
    wanted: float | None

    @property
    def met(self) -> bool:
        """Whether the target is met; true without one."""
        return self.wanted is None or self.ratio <= self.wanted


WANTED: Mapping[str, float | None] = {
    "--help": 0.5,
    "console --demo: greeting": None,
    "console --demo: answer to `week`": 2.5,
    "console --demo: answer to `scale …`": None,
    "run: ready": 2.0,
    "run: answer to a first message": None,
}


def measure_starts(contender: Contender, rounds: int) -> list[Start]:
    """Start everything in turn this many times."""
    for name in ("bot", "storage"):
        compileall.compile_dir(_ROOT / name, quiet=1)
    tables.load()
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        run = _Run(contender, folder)
        measured: dict[str, Seconds] = {
            "yardstick": lambda: _whole(sys.executable, "-c", _YARDSTICK),
            "--help": lambda: _whole(sys.executable, "-m", "bot", "--help"),
            "console --demo: greeting": _greeting,
            "console --demo: answer to `week`": lambda: _first_line("week"),
            "console --demo: answer to `scale …`": lambda: _first_line("scale grapefruit mist to 8 x 50 ml"),
            "run: ready": run.ready,
            "run: answer to a first message": lambda: run.answered,
        }
        times: dict[str, list[float]] = {what: [] for what in measured}
        for _round in range(rounds):
            for what, measure in measured.items():
                times[what].append(measure())
    units = times.pop("yardstick")
    # Compared round by round, so that a change of the machine's load affects both.
    return [
        Start(
            what,
            statistics.median(seconds),
            statistics.median(one / unit for one, unit in zip(seconds, units, strict=True)),
            WANTED[what],
        )
        for what, seconds in times.items()
    ]


def _whole(*command: str) -> float:
    begun = time.monotonic()
    subprocess.run(command, cwd=_ROOT, stdout=subprocess.DEVNULL, check=True)
    return time.monotonic() - begun


def _first_line(message: str) -> float:
    """Time until the first line of the answer to a message through a pipe."""
    begun = time.monotonic()
    with subprocess.Popen(
        [sys.executable, "-m", "bot", "console", "--demo"],
        cwd=_ROOT,
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
    ) as process:
        assert process.stdin is not None
        assert process.stdout is not None
        process.stdin.write(f"{message}\n")
        process.stdin.close()
        line = process.stdout.readline()
        seconds = time.monotonic() - begun
        assert line.strip()
        process.stdout.read()
    return seconds


def _greeting() -> float:
    """Time until a terminal shows the first words."""
    ours, theirs = pty.openpty()
    begun = time.monotonic()
    process = subprocess.Popen(
        [sys.executable, "-m", "bot", "console", "--demo"],
        cwd=_ROOT,
        stdin=theirs,
        stdout=theirs,
        stderr=subprocess.DEVNULL,
        close_fds=True,
    )
    os.close(theirs)
    try:
        assert os.read(ours, 64).startswith(b"Peel Ledger")
        return time.monotonic() - begun
    finally:
        process.kill()
        process.wait()
        os.close(ours)


class _Run:
    """Starts the bot at a Bot API server, on a database with current tables."""

    def __init__(self, contender: Contender, folder: Path) -> None:
        self._contender = contender
        self._folder = folder
        self._numbers = count(1)
        self.answered = 0.0

    def ready(self) -> float:
        """Start it, and let a person write once it polls; return the time until it polls."""
        # A new database each time: a new server numbers its updates from one again.
        url = f"sqlite:///{self._folder / f'start-{next(self._numbers)}.sqlite'}"
        store = Store(url)
        migrate.upgrade(store)
        store.close()
        with Remote() as remote:
            remote.ask("person", id=_PERSON, first_name="Ana")
            with Running(self._contender, remote, self._folder, url) as running:
                ready = running.ready() - running.begun
                remote.ask("says", person=_PERSON, text="/help", within=60)
                self.answered = time.monotonic() - running.begun
        return ready


def tell_starts(starts: list[Start]) -> list[str]:
    """Report the starts as a table."""
    lines = [
        f"Starts of whole processes, as ratios to `python -c '{_YARDSTICK}'`:",
        "",
        "| start | s | ratio | wanted | |",
        "| --- | ---: | ---: | --- | --- |",
    ]
    for one in starts:
        wanted = "" if one.wanted is None else f"{one.wanted} at most"
        verdict = "" if one.wanted is None else "met" if one.met else "missed"
        lines.append(f"| {one.what} | {one.seconds:.2f} | {one.ratio:.2f} | {wanted} | {verdict} |")
    return lines
