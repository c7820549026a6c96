"""Tests of deploy/proxy.conf in a real nginx in front of the real bot: what passes and what does not."""

from __future__ import annotations

import os
import shutil
import socket
import ssl
import subprocess
import time
from collections.abc import AsyncIterator
from datetime import UTC, datetime
from pathlib import Path

import httpx
import pytest

from bot.channels.telegram.channel import TelegramChannel
from storage.store import Store
from tests.api import Server, free_port
from tests.channels.telegram.test_webhook import HEADER, WORD, hooked
from tests.house import Hands

_CONF = Path(__file__).parents[2] / "deploy" / "proxy.conf"
_NGINX = shutil.which("nginx") or shutil.which("/usr/sbin/nginx")
pytestmark = [
    pytest.mark.skipif(_NGINX is None, reason="no nginx on this machine"),
    pytest.mark.skipif(shutil.which("openssl") is None, reason="no openssl to make a certificate with"),
]


@pytest.fixture
def database() -> str:
    """The proxy does not use a database."""
    return "sqlite"


def _certificate(folder: Path) -> None:
    words = [
        "openssl",
        "req",
        "-x509",
        "-newkey",
        "rsa:2048",
        "-nodes",
        "-days",
        "1",
        "-subj",
        "/CN=localhost",
    ]
    names = ["-keyout", str(folder / "privkey.pem"), "-out", str(folder / "fullchain.pem")]
    subprocess.run([*words, *names], check=True, capture_output=True)


def _conf(folder: Path, port: int, bot: int, let_in: bool) -> Path:
    """The file with only local values replaced: folders, ports, and Telegram's addresses."""
    text = _CONF.read_text()
    changes = {
        "/tmp/": f"{folder}/",  # noqa: S108 - the file's own
        "/etc/peel-ledger/tls": str(folder),
        "set $bot bot:8080": f"set $bot 127.0.0.1:{bot}",
        "listen 8443 ssl": f"listen 127.0.0.1:{port} ssl",
        "/dev/stdout": str(folder / "access.log"),
    }
    if let_in:
        changes["default 0;"] = "default 0; 127.0.0.0/8 1;"
    for old, new in changes.items():
        assert old in text, old
        text = text.replace(old, new)
    path = folder / "proxy.conf"
    path.write_text(text)
    return path


class Proxy:
    """A running nginx, and a TLS client for it."""

    def __init__(self, folder: Path, bot: int, let_in: bool) -> None:
        port = free_port()
        _certificate(folder)
        self.log = folder / "access.log"
        own = "" if os.geteuid() else " user root;"  # otherwise its worker could not read the test's folder
        words = [str(_NGINX), "-c", str(_conf(folder, port, bot, let_in)), "-g", f"daemon off;{own}"]
        self._process = subprocess.Popen(words, stderr=subprocess.PIPE)
        self._wait(port)
        trusted = ssl.create_default_context(cafile=str(folder / "fullchain.pem"))
        trusted.check_hostname = False
        self.client = httpx.AsyncClient(base_url=f"https://127.0.0.1:{port}", verify=trusted, trust_env=False)

    def _wait(self, port: int) -> None:
        until = time.monotonic() + 100
        while time.monotonic() < until and self._process.poll() is None:
            with socket.socket() as probe:
                if probe.connect_ex(("127.0.0.1", port)) == 0:
                    return
            time.sleep(0.05)
        self._process.kill()
        raise AssertionError(self._process.communicate()[1].decode())

    async def end(self) -> None:
        await self.client.aclose()
        self._process.terminate()
        self._process.communicate(timeout=20)


@pytest.fixture
async def bot(api: Server, store: Store) -> AsyncIterator[tuple[TelegramChannel, int]]:
    """A bot behind a webhook, and its port."""
    port = free_port()
    channel = TelegramChannel(hooked(api, store, port), store, Hands(datetime(2026, 11, 25, 18, tzinfo=UTC)))
    api.idle = lambda: channel.idle
    await channel.start()
    yield channel, port
    await channel.stop()


async def test_what_comes_through_the_proxy(
    api: Server, bot: tuple[TelegramChannel, int], tmp_path: Path
) -> None:
    ana = api.person("Ana")
    proxy = Proxy(tmp_path, bot[1], let_in=True)
    try:
        client = proxy.client
        # Telegram's post, made by hand: its own client would not trust today's certificate.
        api.world.updates.webhook.url = ""
        mark = api.mark()
        ana.writes("/start Zyxwolf")
        said = api.world.updates.pending.pop().body
        answer = await client.post("/telegram", content=said, headers={HEADER: WORD})
        assert answer.status_code == 200
        assert (await api.follow(ana, mark)).text
        wrong = await client.post("/telegram", content=said, headers={HEADER: WORD + "x"})
        assert wrong.status_code == 403
        for path in ("/health", "/ready", "/metrics", "/", "/telegram/", "/telegram/../metrics", "//metrics"):
            assert (await client.get(path)).status_code in {403, 404}, path
        assert (await client.get("/telegram")).status_code == 403
        large = await client.post("/telegram", content=b" " * (1024 * 1024 + 1), headers={HEADER: WORD})
        assert large.status_code == 413
        assert "nginx/" not in answer.headers.get("server", "")
    finally:
        await proxy.end()
    logged = proxy.log.read_text()
    assert logged.count("\n") >= 10
    assert not [word for word in ("Zyxwolf", WORD, "telegram", "127.0.0.1") if word in logged]


async def test_who_is_not_telegram_is_shut_out(bot: tuple[TelegramChannel, int], tmp_path: Path) -> None:
    proxy = Proxy(tmp_path, bot[1], let_in=False)
    try:
        assert (await proxy.client.post("/telegram", json={}, headers={HEADER: WORD})).status_code == 403
        assert (await proxy.client.get("/metrics")).status_code == 404
    finally:
        await proxy.end()
