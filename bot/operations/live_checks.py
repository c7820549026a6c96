"""The network checks of `doctor --live`: Telegram, the program's own endpoint, the age of backups."""

from __future__ import annotations

import json
import urllib.error
import urllib.request
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from email.utils import parsedate_to_datetime
from http.client import HTTPException
from pathlib import Path

from bot.operations.finding import Finding
from bot.settings import Settings
from storage import backup
from storage.types import JsonObject

_PATIENCE_SECONDS = 10.0
_MOST_WAITING = 100  # updates: more than a busy minute of many bars
_LATELY = timedelta(minutes=15)
_CLOCK_MAY_DIFFER = timedelta(seconds=60)
_BACKUP_MAY_BE_OLD = timedelta(hours=26)  # the timer runs daily, within half an hour
_NO_TOKEN = {401, 404}


@dataclass(frozen=True, slots=True)
class _Told:
    """Telegram's response: HTTP status (0 for no response), the result, and its clock."""

    status: int
    result: JsonObject
    at: datetime | None


def looked_at_live(settings: Settings) -> Iterator[Finding]:
    """Check Telegram and the program's own endpoint."""
    token = settings.telegram_bot_token.reveal()
    told = _ask(f"{settings.telegram_api_base}{token}/getWebhookInfo")
    if told.status in _NO_TOKEN:
        yield Finding(False, "Telegram: does not know this token", "Copy it again from BotFather.")
    elif told.status != 200:
        said = f"status {told.status}" if told.status else "no answer"
        yield Finding(
            False, f"Telegram: {said} from {settings.telegram_api_base}", "Look at network, proxy and DNS."
        )
    else:
        yield Finding(True, "Telegram: answers, and knows this token")
        yield from _clock(told)
        yield from _webhook(settings, told.result)
    if settings.listening:
        yield door(settings.listening)


def _ask(address: str) -> _Told:
    """Fetch JSON."""
    status, body, date = _fetch(address)
    try:
        found = json.loads(body) if status == 200 else None
        at = None if date is None else parsedate_to_datetime(date).astimezone(UTC)
    except ValueError:
        return _Told(0, {}, None)
    result = found.get("result") if isinstance(found, dict) else None
    return _Told(status, result if isinstance(result, dict) else {}, at)


def _fetch(address: str, *handlers: urllib.request.BaseHandler) -> tuple[int, bytes, str | None]:
    """Return the status (0 for no response), the body and the server's date.

    The address may contain the token, so no error of the library is passed on.
    """
    try:
        with urllib.request.build_opener(*handlers).open(address, timeout=_PATIENCE_SECONDS) as answer:
            return answer.status, answer.read(), answer.headers.get("Date")
    except urllib.error.HTTPError as error:
        with error:
            return error.code, error.read(), None
    except (OSError, ValueError, HTTPException):
        return 0, b"", None


def _clock(told: _Told) -> Iterator[Finding]:
    if told.at is None:
        return
    off = datetime.now(UTC) - told.at
    side = "ahead of" if off > timedelta() else "behind"
    yield Finding(
        abs(off) <= _CLOCK_MAY_DIFFER,
        f"clock: {abs(off).total_seconds():,.0f} s {side} Telegram's",
        "Reminders and business days count from a wrong hour: set the clock, or let NTP do so.",
    )


def _webhook(settings: Settings, info: JsonObject) -> Iterator[Finding]:
    url, wanted = str(info.get("url", "")), settings.telegram_webhook_url
    if not wanted:
        shown = f"one is set ({url})" if url else "none, updates are asked for"
        yield Finding(not url, f"webhook: {shown}", "The bot takes it away when it starts: is it running?")
    else:
        shown = url or "none set"
        yield Finding(url == wanted, f"webhook: {shown}", f"It should be {wanted}: start the bot anew.")
    waiting = int(info.get("pending_update_count", 0))
    yield Finding(
        waiting <= _MOST_WAITING,
        f"updates that wait at Telegram: {waiting}",
        "Is the bot running, and fast enough?",
    )
    failed = info.get("last_error_date")
    if wanted and failed:
        at = datetime.fromtimestamp(int(failed), UTC)
        yield Finding(
            datetime.now(UTC) - at > _LATELY,
            f"last failure of the webhook: {at:%Y-%m-%d %H:%M} UTC, {info.get('last_error_message', '')}",
            "Look at the proxy's log and certificate, and at the bot's.",
        )


def door(address: str) -> Finding:
    """Probe our own endpoint; one that listens on all addresses is probed on this machine."""
    host, _, port = address.rpartition(":")
    host = {"": "127.0.0.1", "0.0.0.0": "127.0.0.1", "[::]": "[::1]"}.get(host, host)  # noqa: S104 - to ask
    never_by_proxy = urllib.request.ProxyHandler({})
    status, body, _date = _fetch(f"http://{host}:{port}/ready", never_by_proxy)
    said = body[:200].decode(errors="replace").strip() or (f"status {status}" if status else "no answer")
    return Finding(status == 200, f"own door at {host}:{port}: {said}", "Is the bot running? See its log.")


def backups_age(folder: Path) -> Finding:
    """Check the newest dated backup in a folder."""
    remedy = "systemctl status peel-ledger-backup, or: python -m bot backup FOLDER/ --drill"
    newest = backup.newest_dated(folder)
    if newest is None:
        return Finding(False, f"backups: none in {folder}", remedy)
    at, size = newest
    age = datetime.now(UTC) - at
    hours = age.total_seconds() / 3600
    return Finding(
        age <= _BACKUP_MAY_BE_OLD and size > 0,
        f"backups: the newest in {folder} is {hours:,.1f} hours old, {size / 1e6:,.1f} MB",
        remedy,
    )
