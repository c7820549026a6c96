"""Tests of the server in its own process, and of a bot in another that is killed and restarted."""

from __future__ import annotations

import asyncio
import os
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from tests.api import Server
from tests.api.remote import Remote

_ROOT = Path(__file__).parents[2]


def _echo(port: int) -> subprocess.Popen[bytes]:
    return subprocess.Popen([sys.executable, "-m", "tests.bench.echo", str(port)], cwd=_ROOT)


def _end(process: subprocess.Popen[bytes], number: int = signal.SIGTERM) -> None:
    os.kill(process.pid, number)
    process.wait(timeout=60)


def test_control_from_outside() -> None:
    with Remote() as remote:
        echo = _echo(remote.port)
        try:
            assert remote.ask("first_poll", since=0.0) > 0
            remote.ask("person", id=5, first_name="Ana")
            followed = remote.ask("says", person=5, text="hello")
            assert [seen["text"] for seen in followed["seen"]] == ["hello"]
            assert [seen["text"] for seen in remote.ask("messages", chat=5)] == ["hello"]
            assert remote.ask("transcript", chat=5) == "Ana: hello\nbot: hello"
            remote.ask("fail_next", method="sendMessage", fault={"kind": "drop"})
            with pytest.raises(AssertionError, match="nothing within"):
                remote.ask("says", person=5, text="lost", within=0.3)
            load = remote.ask("load", people=[5], texts=["a", "b"], each=4)
            assert (load["requests"], load["replies"], len(load["seconds"])) == (4, 4, 4)
            remote.ask(
                "update",
                kind="message",
                body={"message_id": 1, "date": 0, "chat": {"id": 5, "type": "private"}},
            )
            assert remote.ask("wait_quiet")
            with pytest.raises(AssertionError, match="no such control"):
                remote.ask("nonsense")
            assert remote.ask("violations") == []
        finally:
            _end(echo)
        assert remote.stop() == []


async def test_a_killed_bot_gets_what_it_missed(api: Server) -> None:
    """The server stays in this process; the bot dies between two messages and restarts."""
    ana = api.person()
    echo = _echo(api.wire.port)
    try:
        assert (await ana.says("one")).text == "one"
        await api.wait_quiet()
    finally:
        await asyncio.to_thread(_end, echo, signal.SIGKILL)
    ana.writes("while it was dead")
    mark = api.mark()
    echo = _echo(api.wire.port)
    try:
        assert (await api.follow(ana, mark)).text == "while it was dead"
        assert (await ana.says("two")).text == "two"
    finally:
        await asyncio.to_thread(_end, echo)
