"""The program under test as a process: start, stop and kill it."""

from __future__ import annotations

import asyncio
import json
import os
import signal
import subprocess
import sys
import time
from collections.abc import Mapping
from pathlib import Path
from types import TracebackType
from typing import Any

_ROOT = Path(__file__).parents[2]
_MOST_SECONDS_TO_STOP = 60  # two are usual; a busy machine takes longer


class Loaded:
    """Forks programs from a process that has already loaded them; see `tests.faults.loaded`."""

    def __init__(self) -> None:
        self._process = subprocess.Popen(
            [sys.executable, "-m", "tests.faults.loaded"],
            cwd=_ROOT,
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            text=True,
        )
        self._ask()

    def _ask(self) -> Any:
        assert self._process.stdout is not None
        return json.loads(self._process.stdout.readline())

    def start(self, env: Mapping[str, str], output: Path, steps: dict[str, Any] | None) -> Program:
        """Start the program with these variables; `steps` are those of `tests.faults.steps`."""
        assert self._process.stdin is not None
        order = {"env": dict(env), "output": str(output), "steps": steps}
        self._process.stdin.write(json.dumps(order) + "\n")
        self._process.stdin.flush()
        return Program(self._ask())

    def __enter__(self) -> Loaded:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        """End the forking process; running programs continue."""
        self._process.communicate()


class Program:
    """One running process, held so that its process id cannot be reused."""

    def __init__(self, process: int, child: subprocess.Popen[bytes] | None = None) -> None:
        self.id = process
        self._child = child
        self._held = os.pidfd_open(process)
        self._ended = False

    @classmethod
    def plain(cls, env: Mapping[str, str], output: Path) -> Program:
        """Start `python -m bot run` directly, as a person does."""
        with output.open("ab") as said:
            process = subprocess.Popen(
                [sys.executable, "-m", "bot", "run"],
                cwd=_ROOT,
                env={**os.environ, **env},
                stdin=subprocess.DEVNULL,
                stdout=said,
                stderr=said,
            )
        return cls(process.pid, process)

    def send(self, number: signal.Signals) -> None:
        """Send a signal; does nothing for an ended process."""
        if not self._ended:
            try:
                signal.pidfd_send_signal(self._held, number)
            except ProcessLookupError:
                return

    async def ended(self, within: float) -> bool:
        """Wait for the end of the process; return whether it ended."""
        if self._ended:
            return True
        loop = asyncio.get_running_loop()
        gone: asyncio.Future[None] = loop.create_future()
        loop.add_reader(self._held, _tell, gone)
        try:
            await asyncio.wait({gone}, timeout=within)
        finally:
            loop.remove_reader(self._held)
        if gone.done():
            self._ended = True
            os.close(self._held)
            if self._child is not None:
                self._child.wait()
        return self._ended

    async def frozen(self, within: float) -> bool:
        """Wait until the process has stopped itself; return whether it has."""
        end = time.monotonic() + within
        while time.monotonic() < end and not self._ended:
            if self._state() == "T":
                return True
            await asyncio.sleep(0.02)
        return False

    def _state(self) -> str:
        # The state follows the name, which is in brackets (proc(5)).
        try:
            return Path(f"/proc/{self.id}/stat").read_text().rpartition(")")[2].split()[0]
        except FileNotFoundError:
            return ""

    async def kill(self) -> None:
        """Kill the process immediately."""
        self.send(signal.SIGKILL)
        if not await self.ended(10):
            raise AssertionError("killed and still there")

    async def stop(self) -> None:
        """Ask the process to end, as a system shutdown does."""
        self.send(signal.SIGTERM)
        for _second in range(_MOST_SECONDS_TO_STOP):
            self.send(signal.SIGCONT)  # the shutdown has steps too, at which it may freeze
            if await self.ended(1):
                return
        await self.kill()
        raise AssertionError(f"it did not end within {_MOST_SECONDS_TO_STOP} s of being asked to")


def _tell(gone: asyncio.Future[None]) -> None:
    if not gone.done():
        gone.set_result(None)
