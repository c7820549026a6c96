"""Tests of starts on a bad night, and of two programs with one token.

From memory: Bot API manual, "getUpdates" (a new poll ends the one before it with 409) and
"setWebhook" (ports); RFC 8305, section 5 (delay between connection attempts).
"""

from __future__ import annotations

import asyncio
import logging
import os
import re
import socket
import sys
from collections.abc import AsyncIterator, Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import pytest

from bot.channels.telegram import outage
from bot.channels.telegram.channel import TelegramChannel
from bot.channels.telegram.http_client import LeanRequest, ProxyError
from bot.channels.telegram.receiving import polling
from bot.settings import Settings
from storage.store import Store
from tests.api import Fault, Server, free_port
from tests.channels.telegram.conftest import Telephone, settings_for
from tests.house import Hands

ONE_DATABASE = pytest.mark.parametrize("database", ["sqlite"], indirect=True)
_ROOT = Path(__file__).parents[3]


@pytest.fixture
async def channel(
    api: Server, store: Store, hands: Hands, monkeypatch: pytest.MonkeyPatch
) -> AsyncIterator[TelegramChannel]:
    """A bot that is not started yet, and hardly waits between attempts."""
    monkeypatch.setattr(outage, "_FIRST_PAUSE", 0.02)
    monkeypatch.setattr(outage, "_LONGEST_PAUSE", 0.05)
    made = TelegramChannel(settings_for(api, store), store, hands)
    api.idle = lambda: made.idle
    yield made
    await made.stop()


@pytest.fixture
def hands() -> Hands:
    return Hands(datetime(2026, 11, 25, 18, 0, tzinfo=UTC))


@ONE_DATABASE
@pytest.mark.parametrize(
    "fault",
    [
        Fault.flood(1),
        Fault.http(502),
        Fault.http(500),
        Fault.refuse(403, "Forbidden: user is deactivated"),
        Fault.garbled(),
        Fault.drop_before(),
    ],
    ids=lambda fault: f"{fault.kind} {fault.code}",
)
async def test_whatever_get_me_says_it_is_asked_again(
    channel: TelegramChannel, api: Server, fault: Fault, caplog: pytest.LogCaptureFixture
) -> None:
    api.fail_next("getMe", fault, 1 if fault.kind == "flood" else 4)
    with caplog.at_level(logging.WARNING):
        await asyncio.wait_for(channel.start(), 60)
    assert [one.getMessage() for one in caplog.records if "Traceback" in one.getMessage()] == []
    assert sum("does not answer" in one.getMessage() for one in caplog.records) == 1
    assert (await api.person("Ana").says("/help")).text


@ONE_DATABASE
async def test_without_a_network_it_waits_and_then_works(
    store: Store, hands: Hands, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    monkeypatch.setattr(outage, "_LONGEST_PAUSE", 0.1)
    port = free_port()
    server = Server()
    server.wire.port = port
    late = TelegramChannel(settings_for(server, store), store, hands)
    with caplog.at_level(logging.INFO):
        starting = asyncio.create_task(late.start())
        await asyncio.sleep(1.0)
        assert not starting.done()
        await server.start(port)
        await asyncio.wait_for(starting, 60)
    assert sum("does not answer" in one.getMessage() for one in caplog.records) == 1
    assert sum("answers again" in one.getMessage() for one in caplog.records) == 1
    assert (await server.person("Ana").says("/help")).text
    await late.stop()
    await server.stop()


@ONE_DATABASE
async def test_told_to_stop_while_it_waits_it_ends(channel: TelegramChannel, api: Server) -> None:
    api.fail_next("getMe", Fault.http(502), 1000)
    serving = asyncio.create_task(channel.serve())
    await asyncio.sleep(0.2)
    channel._stopping.set()
    assert await asyncio.wait_for(serving, 60) == 0


@ONE_DATABASE
@pytest.mark.parametrize("code", [429, 409])
async def test_a_webhook_set_by_two_at_once_is_set_again(telephone: Telephone, code: int) -> None:
    refusal = Fault.flood(1) if code == 429 else Fault.refuse(409, "Conflict: terminated by other request")
    telephone.server.fail_next("setWebhook", refusal)
    channel = telephone.channel
    await channel._until_heard(channel._ask_for_updates)
    calls = [call.status for call in telephone.server.calls if call.method == "setwebhook"]
    assert calls[-1] == 200
    await channel.bot.delete_webhook()


@pytest.mark.long
@ONE_DATABASE
async def test_a_second_program_elsewhere_gives_way(
    api: Server, store: Store, hands: Hands, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    first = TelegramChannel(settings_for(api, store), store, hands)
    await first.start()
    ana = api.person("Ana")
    await ana.says("/help")
    monkeypatch.setattr(polling, "_PROBATION_SECONDS", 0.1)  # the first has been there for long
    second = await asyncio.create_subprocess_exec(
        sys.executable,
        "-m",
        "bot",
        "run",
        cwd=_ROOT,
        env={
            **os.environ,
            "TELEGRAM_BOT_TOKEN": api.token,
            "TELEGRAM_API_BASE": api.base_url,
            "DATABASE_URL": f"sqlite:///{tmp_path / 'elsewhere.sqlite'}",
            "XDG_DATA_HOME": str(tmp_path),
        },
        stderr=asyncio.subprocess.PIPE,
    )
    _out, said = await asyncio.wait_for(second.communicate(), 60)
    assert second.returncode == 3
    assert "Another program listens with this token" in said.decode()
    assert "Traceback" not in said.decode()
    api.idle = lambda: first.idle
    assert (await ana.says("/help")).text
    await first.stop()


async def test_an_address_that_leads_nowhere_does_not_use_up_the_time(
    api: Server, monkeypatch: pytest.MonkeyPatch
) -> None:
    loop = asyncio.get_running_loop()
    connect, resolve = loop.sock_connect, loop.getaddrinfo
    nowhere = "192.0.2.1"  # RFC 5737: reserved for documentation

    async def sock_connect(sock: socket.socket, address: Any) -> None:
        if address[0] == nowhere:
            await asyncio.sleep(3600)
        await connect(sock, address)

    async def getaddrinfo(host: Any, port: Any, **options: Any) -> Any:
        if host != "bar.example.org":
            return await resolve(host, port, **options)
        kind = (socket.AF_INET, socket.SOCK_STREAM, 6, "")
        return [(*kind, (nowhere, port)), (*kind, ("127.0.0.1", port))]

    monkeypatch.setattr(loop, "sock_connect", sock_connect)
    monkeypatch.setattr(loop, "getaddrinfo", getaddrinfo)
    request = LeanRequest(1, encrypted=False)
    address = api.base_url.replace("127.0.0.1", "bar.example.org")
    status, _body = await request.do_request(f"{address}{api.token}/getMe", "GET")
    assert status == 200
    await request.shutdown()


@pytest.mark.parametrize("proxy", ["socks5://127.0.0.1:9", "gopher://127.0.0.1:9"])
def test_a_proxy_that_cannot_be_used_is_a_sentence(monkeypatch: pytest.MonkeyPatch, proxy: str) -> None:
    monkeypatch.setenv("ALL_PROXY", proxy)
    with pytest.raises(ProxyError, match="proxy of this machine cannot be used"):
        LeanRequest(1)


def test_a_port_that_telegram_does_not_use_is_a_setting_error() -> None:
    wrong = Settings(telegram_webhook_url="https://bar.example.org:8080/telegram")
    assert wrong.mistake == (
        "TELEGRAM_WEBHOOK_URL should have port 443, 80, 88 or 8443: Telegram uses no other."
    )


@contextmanager
def _away(path: Path) -> Iterator[None]:
    """The file under another name."""
    path.rename(path.with_suffix(".away"))
    yield
    path.with_suffix(".away").rename(path)


@ONE_DATABASE
async def test_the_log_says_who_where_and_what_was_done(
    channel: TelegramChannel, api: Server, caplog: pytest.LogCaptureFixture
) -> None:
    with caplog.at_level(logging.INFO):
        await channel.start()
    (line,) = [one.getMessage() for one in caplog.records if "@peel_ledger_test_bot" in one.getMessage()]
    assert "sqlite:///" in line
    assert "listening at no port" in line
    assert api.token.partition(":")[2] not in line
    await api.person("Ana").says("/help")
    assert channel.figures.day() == "1 updates, 1 answers, 0 reminders sent, 0 errors"
    assert channel.figures.day() == "0 updates, 0 answers, 0 reminders sent, 0 errors"


@ONE_DATABASE
async def test_it_is_not_ready_when_telegram_was_not_heard_or_the_file_is_gone(
    channel: TelegramChannel, api: Server, store: Store
) -> None:
    await channel.start()
    await api.wait_quiet()  # the menus are set after a start: their answers would count as heard
    assert await channel._not_ready() == ""
    for request in (channel._asking, channel._sending):
        request.heard_at -= 500
    assert re.fullmatch(r"Telegram was not heard for 5\d\d s", await channel._not_ready())
    await channel.watch.look()  # asks Telegram
    assert await channel._not_ready() == ""
    with _away(Path(store.url.database or "")):
        await channel.watch.look()
        assert "removed or replaced" in await channel._not_ready()
    await channel.watch.look(checks=True)
    assert await channel._not_ready() == ""
