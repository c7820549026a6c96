"""Tests of `doctor --live` over real HTTP, for a healthy deployment and for broken ones."""

from __future__ import annotations

import asyncio
import time
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from bot.__main__ import main
from bot.operations.doctor import examine
from bot.settings import Secret, Settings
from storage import migrate
from storage.store import Store
from tests.api import Fault, Server
from tests.api.updates import Webhook

_SECRET = "a-word-of-more-than-16-letters"  # noqa: S105 - invented


@pytest.fixture
def database() -> str:
    """The requests to Telegram do not depend on the database."""
    return "sqlite"


async def _examined(
    api: Server, store: Store, *, live: bool = True, backups: str = "", **settings: str
) -> tuple[int, str]:
    lines: list[str] = []
    environment = {
        "telegram_bot_token": Secret(settings.pop("token", api.token)),
        "telegram_api_base": api.base_url,
        "database_url": store.url.render_as_string(hide_password=False),
        "telegram_webhook_secret": Secret(_SECRET),
        **settings,
    }
    given = Settings(**environment)  # type: ignore[arg-type]
    code = await asyncio.to_thread(examine, given, lines.append, live, backups)
    said = "\n".join(lines)
    assert api.token not in said
    assert _SECRET not in said
    return code, said


async def test_a_deployment_that_is_well(api: Server, store: Store) -> None:
    code, said = await _examined(api, store)
    assert (code, said.splitlines()[-1]) == (0, "All is well."), said
    assert "ok   Telegram: answers, and knows this token" in said
    assert "ok   webhook: none, updates are asked for" in said
    assert "ok   updates that wait at Telegram: 0" in said
    assert f"revision {migrate.head()}" in said
    assert "ok   disk: " in said


async def test_without_live_nobody_is_asked(api: Server, store: Store) -> None:
    api.fail_next("getWebhookInfo", Fault.http(500))
    code, said = await _examined(api, store, live=False)
    assert (code, api.faults.left) == (0, 1)
    assert "Telegram:" not in said
    api.faults.clear()


@pytest.mark.parametrize(
    ("fault", "said"),
    [
        (Fault.http(502), "BAD  Telegram: status 502 from http://127.0.0.1"),
        (Fault.drop_before(), "BAD  Telegram: no answer from http://127.0.0.1"),
        (Fault.garbled(), "BAD  Telegram: no answer from"),
        (Fault.http(401), "BAD  Telegram: does not know this token"),
    ],
)
async def test_a_telegram_that_does_not_answer(api: Server, store: Store, fault: Fault, said: str) -> None:
    api.fail_next("getWebhookInfo", fault)
    code, lines = await _examined(api, store)
    assert code == 1
    assert said in lines


async def test_a_token_that_telegram_does_not_know(api: Server, store: Store) -> None:
    code, said = await _examined(api, store, token="123456789:" + "x" * 35)
    assert code == 1
    assert "BAD  Telegram: does not know this token" in said
    assert "x" * 35 not in said


async def test_a_webhook_that_fails_and_updates_that_wait(api: Server, store: Store) -> None:
    url = "https://bar.example.org/telegram"
    api.world.updates.webhook = Webhook(
        url, _SECRET, last_error="Connection refused", last_error_at=int(time.time())
    )
    ana = api.person("Ana")
    api.world.updates.webhook.url = ""
    for number in range(101):
        ana.writes(f"week {number}")
    api.world.updates.webhook.url = url
    code, said = await _examined(api, store, telegram_webhook_url=url)
    assert code == 1
    assert f"ok   webhook: {url}" in said
    assert "BAD  updates that wait at Telegram: 101" in said
    assert "BAD  last failure of the webhook: " in said
    assert "Connection refused" in said
    # Nobody listens at our own endpoint either, and an old failure is not reported.
    assert "BAD  own door at 127.0.0.1:8080: no answer" in said
    api.world.updates.webhook.last_error_at -= 3600
    assert "ok   last failure of the webhook" in (await _examined(api, store, telegram_webhook_url=url))[1]


async def test_a_webhook_where_none_is_wanted_and_another_than_wanted(api: Server, store: Store) -> None:
    api.world.updates.webhook = Webhook("https://old.example.org/telegram", _SECRET)
    code, said = await _examined(api, store)
    assert code == 1
    assert "BAD  webhook: one is set (https://old.example.org/telegram)" in said
    _code, said = await _examined(api, store, telegram_webhook_url="https://new.example.org/telegram")
    assert "BAD  webhook: https://old.example.org/telegram" in said
    assert "It should be https://new.example.org/telegram" in said


async def test_settings_of_a_webhook_that_cannot_be_used(api: Server, store: Store) -> None:
    code, said = await _examined(api, store, live=False, telegram_webhook_url="bar.example.org")
    assert code == 1
    assert "BAD  webhook settings: cannot be used" in said
    assert "TELEGRAM_WEBHOOK_URL should look like" in said


@pytest.mark.parametrize(("hours", "good"), [(1, True), (25, True), (27, False)])
async def test_the_age_of_the_newest_backup(
    api: Server, store: Store, tmp_path: Path, hours: int, good: bool
) -> None:
    folder = tmp_path / "backups"
    folder.mkdir()
    code, said = await _examined(api, store, live=False, backups=str(folder))
    assert (code, "BAD  backups: none in" in said) == (1, True)
    for age in (hours, 100):
        made = datetime.now(UTC) - timedelta(hours=age)
        (folder / f"peel-ledger-{made:%Y%m%dT%H%M%SZ}.sqlite").write_bytes(b"x")
    (folder / "peel-ledger-99991231T000000Z.sqlite.part").write_bytes(b"x")  # not the name of a backup
    code, said = await _examined(api, store, live=False, backups=str(folder))
    assert code == (0 if good else 1)
    assert f"{'ok  ' if good else 'BAD '} backups: the newest in {folder} is {hours}.0 hours old" in said


def test_the_line_for_it(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("DATABASE_URL", f"sqlite:///{tmp_path / 'bar.sqlite'}")
    monkeypatch.setenv("TELEGRAM_BOT_TOKEN", "123456789:" + "x" * 35)
    monkeypatch.setenv("TELEGRAM_API_BASE", "http://127.0.0.1:1/bot")
    assert main(["doctor", "--live", "--backups", str(tmp_path / "none")]) == 1
    said = capsys.readouterr().out
    assert "BAD  Telegram: no answer from http://127.0.0.1:1/bot" in said
    assert "BAD  backups: none in" in said
    assert said.endswith("2 to mend.\n")
