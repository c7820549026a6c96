"""Measure a bot process against the loopback server: latency, throughput, memory, cold start.

The server runs in its own process and generates the load itself, so that only the bot and the server share
the machine; times are measured inside the server, from the update being available to the reply being
accepted.
"""

from __future__ import annotations

import os
import socket
import statistics
import subprocess
import tempfile
import time
from collections.abc import Mapping, Sequence
from contextlib import ExitStack
from dataclasses import dataclass, field, replace
from http.client import HTTPConnection
from pathlib import Path

from tests.api import free_port
from tests.api.remote import Remote
from tests.bench.databases import Databases, Fill
from tests.bench.parts import cpu_seconds, resident_mib

_ROOT = Path(__file__).parents[2]
_TURN = 60  # messages before the other side's turn
_LONGEST = 120.0  # seconds for one reply with hundreds waiting


@dataclass(frozen=True)
class Contender:
    """A bot to measure.

    In `command` and the values of `env` the placeholders {port}, {token}, {folder}, {database} and {listen}
    stand for the server's port, its token, an empty folder of the run, the database's URL and a free address.
    `messages` are sent in turn; each must get exactly one message back. `prepare` fills the database before
    the start. `processes` of it run at once; with `webhook` updates are posted to them in turn, as by a
    proxy, else they poll.
    """

    name: str
    command: tuple[str, ...]
    messages: tuple[str, ...]
    env: Mapping[str, str] = field(default_factory=dict)
    database: str = ""  # "sqlite" or "postgresql"
    prepare: Fill | None = None
    processes: int = 1
    webhook: bool = False


@dataclass(frozen=True)
class Plan:
    """How much to measure: `sequential` messages in one chat, then `each` in `chats` chats at once."""

    sequential: int = 200
    chats: int = 200
    each: int = 5
    starts: int = 3


@dataclass(frozen=True)
class Figures:
    """The results. Times in milliseconds or seconds as named, memory in MiB; None if not measured.

    `first_ms` is the time of each chat's first message, its share of the time for all of them at once; the
    other measurements come after it. `cpu_ms` is the CPU time of the contender's processes per reply,
    `server_cpu_ms` that of the Bot API server, which also generates the load, `database_cpu_ms` that of the
    database server. Ratios are to the yardstick, measured alternately.
    """

    latency_p50_ms: float
    latency_p95_ms: float
    together_p50_ms: float
    together_p95_ms: float
    replies_per_second: float
    first_ms: float
    cpu_ms: float
    server_cpu_ms: float
    database_cpu_ms: float | None
    cold_start_s: float | None
    memory_started_mib: float | None
    memory_after_mib: float | None
    latency_ratio: float
    replies_ratio: float
    cpu_ratio: float


class Running:
    """One process of a contender at a server, until the block ends."""

    def __init__(self, contender: Contender, remote: Remote, folder: Path, database: str = "") -> None:
        self.listen = f"127.0.0.1:{free_port()}"
        words = {
            "{port}": str(remote.port),
            "{token}": remote.token,
            "{folder}": str(folder),
            "{database}": database,
            "{listen}": self.listen,
        }
        command = [_filled(part, words) for part in contender.command]
        env = {name: _filled(value, words) for name, value in contender.env.items()}
        self._remote = remote
        self._webhook = contender.webhook
        self._output = (folder / "output.txt").open("ab")
        self.begun = time.monotonic()
        self.process = subprocess.Popen(
            command, cwd=_ROOT, env={**os.environ, **env}, stdout=self._output, stderr=subprocess.STDOUT
        )

    def ready(self, within: float = 60.0) -> float:
        """When the bot was ready, by the monotonic clock: its first poll, or its ready endpoint."""
        deadline = self.begun + within
        while time.monotonic() < deadline:
            at = self._said_ready() if self._webhook else self._first_poll()
            if at is not None:
                return at
            if self.process.poll() is not None:
                raise AssertionError(f"ended with status {self.process.returncode}")
        raise AssertionError(f"was not ready within {within} s")

    def _first_poll(self) -> float | None:
        poll = self._remote.ask("first_poll", since=self.begun, within=0.2)
        return None if poll is None else float(poll)

    def _said_ready(self) -> float | None:
        host, _, port = self.listen.rpartition(":")
        door = HTTPConnection(host, int(port), timeout=5)
        try:
            door.request("GET", "/ready")
            return time.monotonic() if door.getresponse().status == 200 else None
        except OSError:
            time.sleep(0.05)
            return None
        finally:
            door.close()

    def __enter__(self) -> Running:
        return self

    def __exit__(self, *_: object) -> None:
        self.process.terminate()
        try:
            self.process.wait(timeout=15)
        except subprocess.TimeoutExpired:
            self.process.kill()
            self.process.wait()
        self._output.close()


def _filled(text: str, words: Mapping[str, str]) -> str:
    """`text` with the placeholders replaced; not a format string, because a command may contain braces."""
    for word, value in words.items():
        text = text.replace(word, value)
    return text


def measure(
    contender: Contender, plan: Plan, databases: Databases, beside: Contender | None = None
) -> Figures:
    """Start a server and the contender, and measure everything, alternating with `beside`, the yardstick."""
    with tempfile.TemporaryDirectory() as folder:
        try:
            return _measure(contender, plan, Path(folder), databases, beside)
        except AssertionError as error:
            output = Path(folder, "output.txt")
            said = output.read_text(errors="replace")[-2000:] if output.exists() else ""
            raise AssertionError(f"{contender.name}: {error}\n{said}") from error


class _Side:
    """A contender at its own server, and its users."""

    def __init__(
        self,
        contender: Contender,
        plan: Plan,
        folder: Path,
        databases: Databases,
        servers: ExitStack,
        running: ExitStack,
    ) -> None:
        self.contender = contender
        self._databases = databases
        self._remote = remote = servers.enter_context(Remote())
        self._people = [remote.ask("person", id=1001 + at, first_name=f"P{at}") for at in range(plan.chats)]
        fill = contender.prepare
        url = databases.filled(contender.database, folder, fill, self._people) if fill is not None else ""
        self.starts = [cold_start(contender, remote, folder, url) for _ in range(plan.starts)]
        self._bots = [
            running.enter_context(Running(contender, remote, folder, url)) for _ in range(contender.processes)
        ]
        for bot in self._bots:
            bot.ready()
        if contender.webhook:
            remote.ask("behind", addresses=[f"http://{bot.listen}/telegram" for bot in self._bots])

    def hears(self, chats: int, each: int) -> Loaded:
        """Send this many messages in each of this many chats, all chats at once."""
        return load(self._remote, self._people[:chats], self.contender.messages, each)

    def parts(self) -> _Parts:
        """Start counting CPU time."""
        return _Parts(self._bots, self._remote, self._databases)

    def resident(self) -> float | None:
        """Memory of the largest of its processes."""
        sizes = [resident_mib(bot.process.pid) for bot in self._bots]
        return max((size for size in sizes if size is not None), default=None)

    def refused(self) -> list[str]:
        """Stop the server; return its refusals."""
        return self._remote.stop()


def _measure(
    contender: Contender, plan: Plan, folder: Path, databases: Databases, beside: Contender | None
) -> Figures:
    with ExitStack() as servers, ExitStack() as running:
        sides = [_Side(contender, plan, folder, databases, servers, running)]
        if beside is not None:
            near = folder / "beside"
            near.mkdir()
            sides.append(_Side(beside, replace(plan, starts=0), near, databases, servers, running))
        own = sides[0]
        started = own.resident()
        # The first message of a bar after a start loads its book, in every process.
        first = own.hears(plan.chats, 1)
        for side in sides:
            side.hears(plan.chats, 2)
        alone = _in_turn(sides, 1, plan.sequential, _TURN)
        parts = [side.parts() for side in sides]
        # Not one message per turn: those of all chats would then come in one response of the server.
        together = _in_turn(sides, plan.chats, plan.each, -(-plan.each // 2))
        used = [part.used() for part in parts]
        after = own.resident()
        running.close()
        refused = [one for side in sides for one in side.refused()]
        if refused:
            raise AssertionError(f"refused by the server: {refused[:3]}")
    replies = plan.chats * plan.each
    return Figures(
        latency_p50_ms=1000 * statistics.median(alone[0].seconds),
        latency_p95_ms=1000 * statistics.quantiles(alone[0].seconds, n=20)[-1],
        together_p50_ms=1000 * statistics.median(together[0].seconds),
        together_p95_ms=1000 * statistics.quantiles(together[0].seconds, n=20)[-1],
        replies_per_second=replies / together[0].elapsed,
        first_ms=1000 * first.elapsed / plan.chats,
        cpu_ms=1000 * used[0][0] / replies,
        server_cpu_ms=1000 * used[0][1] / replies,
        database_cpu_ms=1000 * used[0][2] / replies if contender.database == "postgresql" else None,
        cold_start_s=statistics.median(own.starts) if own.starts else None,
        memory_started_mib=started,
        memory_after_mib=after,
        # The last side is the yardstick; a single contender is its own.
        latency_ratio=statistics.median(alone[0].seconds) / statistics.median(alone[-1].seconds),
        replies_ratio=together[-1].elapsed / together[0].elapsed,
        cpu_ratio=used[0][0] / used[-1][0] if used[-1][0] else 0.0,
    )


def _in_turn(sides: Sequence[_Side], chats: int, each: int, step: int) -> list[Loaded]:
    """Send messages to each side in turn, `step` at a time.

    Other load on the machine then affects all sides.
    """
    heard: list[list[Loaded]] = [[] for _side in sides]
    for at in range(0, each, step):
        for side, lots in zip(sides, heard, strict=True):
            lots.append(side.hears(chats, min(step, each - at)))
    return [
        Loaded([one for lot in lots for one in lot.seconds], sum(lot.elapsed for lot in lots))
        for lots in heard
    ]


class _Parts:
    """CPU seconds of the bots, of the server and of the database since creation."""

    def __init__(self, bots: Sequence[Running], remote: Remote, databases: Databases) -> None:
        self._bots = [bot.process.pid for bot in bots]
        self._server = remote.process.pid
        self._databases = databases
        self._begun = self._now()

    def _now(self) -> tuple[float, float, float]:
        bots = sum(cpu_seconds(process) for process in self._bots)
        return bots, cpu_seconds(self._server), self._databases.cpu_seconds()

    def used(self) -> tuple[float, float, float]:
        """Return the CPU time of each."""
        bots, server, database = self._now()
        return bots - self._begun[0], server - self._begun[1], database - self._begun[2]


def cold_start(contender: Contender, remote: Remote, folder: Path, database: str = "") -> float:
    """Seconds from the start of the process until it is ready."""
    with Running(contender, remote, folder, database) as running:
        return running.ready() - running.begun


@dataclass(frozen=True)
class Loaded:
    """Seconds from update to reply for each message, and the total."""

    seconds: list[float]
    elapsed: float


def load(remote: Remote, people: Sequence[int], messages: Sequence[str], each: int) -> Loaded:
    """Send these messages as these people at once, each waiting for the reply before the next."""
    load = remote.ask("load", people=list(people), texts=list(messages), each=each, within=_LONGEST)
    if load["replies"] != load["requests"]:
        raise AssertionError(
            f"{load['replies']} replies to {load['requests']} messages: the figures would mean nothing"
        )
    return Loaded([float(one) for one in load["seconds"]], float(load["elapsed"]))


def server_capacity(requests: int = 3000) -> float:
    """sendMessage requests per second that the server itself answers to one plain socket, for scale."""
    with Remote() as remote:
        remote.ask("person", id=1)
        remote.ask("says", person=1, text="/start", wait=False)
        body = b"chat_id=1&text=hello"
        head = (
            f"POST /bot{remote.token}/sendMessage HTTP/1.1\r\nHost: loopback\r\n"
            f"Content-Type: application/x-www-form-urlencoded\r\nContent-Length: {len(body)}\r\n\r\n"
        )
        with socket.create_connection(("127.0.0.1", remote.port)) as plain:
            plain.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
            begun = time.monotonic()
            for _ in range(requests):
                plain.sendall(head.encode() + body)
                _read_answer(plain)
            return requests / (time.monotonic() - begun)


def _read_answer(plain: socket.socket) -> None:
    answer = b""
    while b"\r\n\r\n" not in answer:
        answer += plain.recv(65536)
    head, _, body = answer.partition(b"\r\n\r\n")
    length = int(head.lower().partition(b"content-length:")[2].split(b"\r\n")[0])
    left = length - len(body)
    while left > 0:
        left -= len(plain.recv(left))
    if not head.startswith(b"HTTP/1.1 200"):
        raise AssertionError(answer[:200].decode())
