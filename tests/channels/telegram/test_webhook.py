"""Tests of updates by webhook over real HTTP: answered as by polling, and refused without the secret."""

from __future__ import annotations

import contextlib
import json
import re
from collections.abc import AsyncIterator
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from typing import Any

import httpx
import pytest
from prometheus_client.parser import text_string_to_metric_families
from sqlalchemy import func, select, text

from bot.channels.telegram.channel import TelegramChannel
from bot.settings import Secret, Settings
from storage.store import Store
from storage.tables import Inbox
from tests.api import Server, free_port
from tests.channels.telegram.conftest import Telephone, settings_for
from tests.house import Hands

WORD = "kept-between-the-two-of-us"
HEADER = "X-Telegram-Bot-Api-Secret-Token"


def hooked(server: Server, store: Store, port: int) -> Settings:
    """Settings for a bot that is told of updates at this port."""
    return replace(
        settings_for(server, store),
        telegram_webhook_url=f"http://127.0.0.1:{port}/telegram",
        telegram_webhook_secret=Secret(WORD),
        listen_address=f"127.0.0.1:{port}",
    )


@dataclass
class Hooked(Telephone):
    """A bot behind a webhook, and a client that knows its address."""

    client: httpx.AsyncClient

    async def post(self, body: Any, secret: str | None = WORD) -> int:
        headers = {} if secret is None else {HEADER: secret}
        content = body if isinstance(body, bytes) else json.dumps(body).encode()
        return (await self.client.post("/telegram", content=content, headers=headers)).status_code

    def kept(self) -> int:
        """The number of stored updates."""
        with self.channel.store.reading() as unit:
            return unit.session.scalar(select(func.count()).select_from(Inbox)) or 0


@pytest.fixture
async def hook(api: Server, store: Store) -> AsyncIterator[Hooked]:
    """A running bot behind a webhook."""
    clock = Hands(datetime(2026, 11, 25, 18, 0, tzinfo=UTC))
    port = free_port()
    channel = TelegramChannel(hooked(api, store, port), store, clock)
    async with httpx.AsyncClient(base_url=f"http://127.0.0.1:{port}", trust_env=False) as client:
        built = Hooked(api, channel, clock, client)
        api.idle = lambda: built.channel.idle
        await channel.start()
        yield built
        await built.channel.stop()


def _said(number: int, words: str) -> dict[str, Any]:
    ana = {"id": 1001, "is_bot": False, "first_name": "Ana"}
    chat = {"id": 1001, "type": "private", "first_name": "Ana"}
    message = {"message_id": number, "from": ana, "chat": chat, "date": 1795629600, "text": words}
    return {"update_id": number, "message": message}


async def test_an_evening_by_webhook(hook: Hooked) -> None:
    ana = await hook.opens_bar()
    await ana.says("price oranges 0.60 each")
    assert "6 oranges" in (await ana.says("waste 6 oranges mouldy")).text
    undone = await ana.says("undo")
    assert "6 oranges" in undone.text or "aken back" in undone.text
    assert hook.server.world.updates.webhook.secret == WORD


async def test_the_same_update_twice_changes_nothing_twice(hook: Hooked) -> None:
    ana = await hook.opened_bar()
    await ana.says("price oranges 0.60 each")
    hook.server.duplicate_next_update()
    await ana.says("waste 6 oranges mouldy")
    assert "€3.60" in (await ana.says("week")).text


@pytest.mark.parametrize("database", ["sqlite"], indirect=True)  # none is reached
@pytest.mark.parametrize("secret", [None, "", "wrong", WORD[:-1], WORD + "x", "\u00e4" * 20])
async def test_a_forged_update_is_refused_and_not_kept(hook: Hooked, secret: str | None) -> None:
    before = hook.kept()
    headers = {} if secret is None else {HEADER.encode(): secret.encode("utf-8")}
    answer = await hook.client.post("/telegram", json=_said(5, "/start"), headers=headers)
    assert answer.status_code == 403
    assert hook.kept() == before


@pytest.mark.parametrize("database", ["sqlite"], indirect=True)  # none is reached
@pytest.mark.parametrize(
    "body",
    [
        b"",
        b"hello",
        b"[]",
        b'"update_id"',
        b"{}",
        b'{"update_id": "5"}',
        b'{"update_id": true}',
        b"\xff\xfe",
        b"[" * 200_000,
    ],
)
async def test_what_is_no_update_is_refused(hook: Hooked, body: bytes) -> None:
    before = hook.kept()
    assert await hook.post(body) == 400
    assert hook.kept() == before


async def test_an_update_of_unknown_shape_is_left_out_and_not_sent_again(hook: Hooked) -> None:
    assert await hook.post({"update_id": 5, "message": {"odd": True}}) == 200
    assert await hook.post({"update_id": 6, "something_new": {}}) == 200


async def test_a_body_over_the_limit_is_not_read(hook: Hooked) -> None:
    before = hook.kept()
    large = json.dumps(_said(5, "x" * (1024 * 1024))).encode()
    # The server closes before the whole body has arrived, with a response or without.
    status = 0
    with contextlib.suppress(httpx.TransportError):
        status = await hook.post(large)
    assert status in {0, 400, 413}
    assert hook.kept() == before
    assert (await hook.client.get("/health")).status_code == 200


async def test_other_methods_and_paths(hook: Hooked) -> None:
    assert (await hook.client.get("/telegram")).status_code == 405
    assert (await hook.client.get("/")).status_code == 404
    for path in ("/health", "/ready", "/metrics", "/telegram"):
        answer = await hook.client.get(path)
        assert "Server" not in answer.headers


async def test_answered_once_it_is_on_disk(hook: Hooked) -> None:
    assert await hook.post(_said(77, "/help")) == 200
    with hook.channel.store.reading() as unit:
        row = unit.session.get(Inbox, (hook.channel.mailbox, 77))
    assert row is not None
    assert row.chat == "1001"


async def test_figures_can_be_read_by_their_own_parser_and_name_nobody(hook: Hooked) -> None:
    ana = await hook.opens_bar("Anastasia")
    await ana.says("price oranges 0.60 each")
    await hook.post(_said(5, "/help"), None)
    answer = await hook.client.get("/metrics")
    found = {family.name: family for family in text_string_to_metric_families(answer.text)}
    updates = {sample.labels["kind"]: sample.value for sample in found["peel_ledger_updates"].samples}
    assert updates["message"] == 5  # the opening, the price; not the forged one
    wrong = [one for one in found["peel_ledger_errors"].samples if one.name.endswith("_total")]
    errors = {one.labels["place"]: one.value for one in wrong}
    assert errors == {"forged": 1}
    assert found["peel_ledger_reminders_late"].samples[0].value == 0
    waiting = found["peel_ledger_updates_waiting"].samples[0].value
    assert 0 <= waiting <= updates["message"]
    took = {one.name: one.value for one in found["peel_ledger_answer_seconds"].samples}
    assert took["peel_ledger_answer_seconds_count"] == 5
    for name in ("Anastasia", "Copper Gull", "orange", hook.server.token):
        assert name not in answer.text
    # The person's number; a time may hold its digits.
    assert not re.search(r"(?<![\d.])1001(?!\d)", answer.text)


async def test_alive_and_ready(hook: Hooked) -> None:
    assert (await hook.client.get("/health")).text == "alive\n"
    assert (await hook.client.get("/ready")).text == "ready\n"
    with hook.channel.store.writing() as unit:
        unit.session.execute(text("ALTER TABLE inbox RENAME TO inbox_elsewhere"))
    try:
        assert (await hook.client.get("/ready")).status_code == 503
        assert (await hook.client.get("/health")).status_code == 200
        assert (await hook.client.get("/metrics")).status_code == 200
    finally:
        with hook.channel.store.writing() as unit:
            unit.session.execute(text("ALTER TABLE inbox_elsewhere RENAME TO inbox"))


@pytest.mark.parametrize(
    ("changed", "word"),
    [
        ({"telegram_webhook_url": "ftp://bar.example.org"}, "TELEGRAM_WEBHOOK_URL"),
        ({"telegram_webhook_url": "http://bar.example.org/telegram"}, "TELEGRAM_WEBHOOK_URL"),
        ({"telegram_webhook_url": "https://bar.example.org/telegram"}, "TELEGRAM_WEBHOOK_SECRET"),
        (
            {
                "telegram_webhook_url": "https://bar.example.org/t",
                "telegram_webhook_secret": Secret("with a blank"),
            },
            "TELEGRAM_WEBHOOK_SECRET",
        ),
        ({"listen_address": "8080"}, "LISTEN_ADDRESS"),
    ],
)
def test_wrong_settings_are_named(changed: dict[str, str], word: str) -> None:
    assert word in Settings(**changed).mistake  # type: ignore[arg-type]


def test_right_settings_have_no_mistake() -> None:
    right = Settings(
        telegram_webhook_url="https://bar.example.org:8443/telegram",
        telegram_webhook_secret=Secret(WORD),
        listen_address="[::1]:8080",
    )
    assert right.mistake == ""


async def test_from_webhook_back_to_asking(hook: Hooked) -> None:
    """A polling bot deletes the webhook first: Telegram refuses both at once."""
    ana = await hook.opened_bar()
    await hook.channel.stop()
    store = hook.channel.store
    hook.channel = TelegramChannel(settings_for(hook.server, store), store, hook.clock)
    await hook.channel.start()
    assert "orange" in (await ana.says("price oranges 0.60 each")).text
    assert hook.server.world.updates.webhook.url == ""
