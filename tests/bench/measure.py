"""Measures one bot process against the loopback server: latency, throughput, memory, cold start.

The server runs in a process of its own and drives the load itself, so that only the bot and the server
share the machine; times are taken inside the server, from the update being there to be fetched to the
reply being accepted.
"""

from __future__ import annotations

import os
import socket
import statistics
import subprocess
import tempfile
import time
from collections.abc import Callable, Mapping
from contextlib import suppress
from dataclasses import dataclass, field
from pathlib import Path

from tests.api.remote import Remote

_ROOT = Path(__file__).parents[2]
_CLOCK_TICKS = os.sysconf("SC_CLK_TCK")


@dataclass(frozen=True)
class Contender:
    """A bot to be measured.

    In `command` and the values of `env` the words {port}, {token} and {folder} stand for the server's
    port, its token and an empty folder of the run. `messages` are sent in turn; each must get exactly
    one message back. `prepare` is called once for each chat before anything is measured, with the
    server and the number of the person, for instance to say a few things first:
    `remote.ask("says", person=person, text="/start")`.
    """

    name: str
    command: tuple[str, ...]
    messages: tuple[str, ...]
    env: Mapping[str, str] = field(default_factory=dict)
    prepare: Callable[[Remote, int], None] | None = None


@dataclass(frozen=True)
class Plan:
    """How much to measure: `sequential` messages in one chat, then `each` in `chats` chats at once."""

    sequential: int = 300
    chats: int = 16
    each: int = 40
    starts: int = 3


@dataclass(frozen=True)
class Figures:
    """What came out. Times in milliseconds or seconds as named, memory in MiB."""

    latency_p50_ms: float
    latency_p95_ms: float
    replies_per_second: float
    cpu_ms_per_reply: float
    cold_start_s: float
    memory_started_mib: float | None
    memory_after_mib: float | None


class Running:
    """A contender's process at a server, until the block ends."""

    def __init__(self, contender: Contender, remote: Remote, folder: Path) -> None:
        words = {"{port}": str(remote.port), "{token}": remote.token, "{folder}": str(folder)}
        command = [_filled(part, words) for part in contender.command]
        env = {name: _filled(value, words) for name, value in contender.env.items()}
        self._remote = remote
        self._output = (folder / "output.txt").open("ab")
        self.begun = time.monotonic()
        self.process = subprocess.Popen(
            command, cwd=_ROOT, env={**os.environ, **env}, stdout=self._output, stderr=subprocess.STDOUT
        )

    def first_poll(self, within: float = 30.0) -> float:
        """When the bot first asked for updates, by the monotonic clock; fails if it ended before."""
        deadline = self.begun + within
        while time.monotonic() < deadline:
            poll = self._remote.ask("first_poll", since=self.begun, within=0.2)
            if poll is not None:
                return float(poll)
            if self.process.poll() is not None:
                raise AssertionError(f"ended with status {self.process.returncode}")
        raise AssertionError(f"did not ask for updates within {within} s")

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
    """`text` with the words put in; no format string, since a command may hold braces of its own."""
    for word, value in words.items():
        text = text.replace(word, value)
    return text


def measure(contender: Contender, plan: Plan) -> Figures:
    """Start a server and the contender, and take all figures."""
    with tempfile.TemporaryDirectory() as folder:
        try:
            return _measure(contender, plan, Path(folder))
        except AssertionError as error:
            output = Path(folder, "output.txt")
            said = output.read_text(errors="replace")[-2000:] if output.exists() else ""
            raise AssertionError(f"{contender.name}: {error}\n{said}") from error


def _measure(contender: Contender, plan: Plan, folder: Path) -> Figures:
    with Remote() as remote:
        starts = [cold_start(contender, remote, folder) for _ in range(plan.starts)]
        with Running(contender, remote, folder) as running:
            running.first_poll()
            started = resident_mib(running.process.pid)
            people = [remote.ask("person", id=1001 + at, first_name=f"P{at}") for at in range(plan.chats)]
            for person in people:
                if contender.prepare is not None:
                    contender.prepare(remote, person)
            latency(contender, remote, people[0], 20)  # the first ones fill caches
            seconds = latency(contender, remote, people[0], plan.sequential)
            used = cpu_seconds(running.process.pid)
            rate = throughput(contender, remote, people, plan.each)
            used_after = cpu_seconds(running.process.pid)
            after = resident_mib(running.process.pid)
        violations = remote.stop()
        if violations:
            raise AssertionError(f"refused by the server: {violations[:3]}")
    return Figures(
        latency_p50_ms=1000 * statistics.median(seconds),
        latency_p95_ms=1000 * statistics.quantiles(seconds, n=20)[-1],
        replies_per_second=rate,
        cpu_ms_per_reply=1000 * (used_after - used) / (plan.chats * plan.each),
        cold_start_s=statistics.median(starts),
        memory_started_mib=started,
        memory_after_mib=after,
    )


def cold_start(contender: Contender, remote: Remote, folder: Path) -> float:
    """Seconds from the start of the process to its first getUpdates."""
    with Running(contender, remote, folder) as running:
        return running.first_poll() - running.begun


def latency(contender: Contender, remote: Remote, person: int, count: int) -> list[float]:
    """Seconds from update to reply, for `count` messages of one person, one after the other."""
    load = remote.ask("load", people=[person], texts=list(contender.messages), each=count)
    _check_replies(load["requests"], load["replies"])
    return [float(one) for one in load["seconds"]]


def throughput(contender: Contender, remote: Remote, people: list[int], each: int) -> float:
    """Replies a second when all people write at once, each waiting for the reply before the next."""
    load = remote.ask("load", people=people, texts=list(contender.messages), each=each)
    _check_replies(load["requests"], load["replies"])
    return float(load["replies"] / load["elapsed"])


def _check_replies(requests: int, replies: int) -> None:
    if replies != requests:
        raise AssertionError(f"{replies} replies to {requests} messages: the figures would mean nothing")


def resident_mib(pid: int) -> float | None:
    """Resident memory of a process in MiB, None where /proc is missing."""
    with suppress(OSError):
        for line in Path(f"/proc/{pid}/status").read_text().splitlines():
            if line.startswith("VmRSS:"):
                return int(line.split()[1]) / 1024
    return None


def cpu_seconds(pid: int) -> float:
    """User and system time of a process so far, 0 where /proc is missing."""
    with suppress(OSError):
        # The second field, the name in brackets, may hold blanks.
        fields = Path(f"/proc/{pid}/stat").read_text().rpartition(")")[2].split()
        return (int(fields[11]) + int(fields[12])) / _CLOCK_TICKS
    return 0.0


def server_capacity(requests: int = 3000) -> float:
    """sendMessage requests a second that the server itself answers to one plain socket, for scale."""
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
