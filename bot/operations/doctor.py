"""Check everything that the program depends on, with advice for each failure."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from datetime import UTC, datetime
from pathlib import Path
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from bot.operations.database_checks import looked_at_database
from bot.operations.finding import Finding
from bot.settings import Settings

_TOKEN = re.compile(r"^\d{6,}:[A-Za-z0-9_-]{30,}$")
_NO_EARLIER = datetime(2026, 1, 1, tzinfo=UTC)  # the program did not exist before then


def examine(settings: Settings, write: Callable[[str], object], live: bool = False, backups: str = "") -> int:
    """Run all checks and write a line for each; return 0 if all pass, else 1.

    `live` also checks Telegram and the program's own endpoint; `backups` is a folder whose newest backup must
    be recent.
    """
    bad = 0
    for finding in _findings(settings, live, backups):
        write(f"{'ok  ' if finding.good else 'BAD '} {finding.what}")
        if not finding.good:
            bad += 1
            write(f"     {finding.remedy}")
    write("All is well." if not bad else f"{bad} to mend.")
    return 1 if bad else 0


def _findings(settings: Settings, live: bool, backups: str) -> Iterator[Finding]:
    yield _token(settings)
    yield _base(settings)
    if settings.telegram_webhook_url or settings.listen_address:
        how = "can be used" if not settings.mistake else "cannot be used"
        yield Finding(not settings.mistake, f"webhook settings: {how}", settings.mistake)
    yield _zones()
    yield _clock()
    yield from looked_at_database(settings)
    if live or backups:
        from bot.operations import live_checks  # noqa: PLC0415 - the first visit asks nobody

        if live:
            yield from live_checks.looked_at_live(settings)
        if backups:
            yield live_checks.backups_age(Path(backups))


def _token(settings: Settings) -> Finding:
    token = settings.telegram_bot_token.reveal()
    if not token:
        return Finding(
            False,
            "token: none set",
            "Set TELEGRAM_BOT_TOKEN to what BotFather gave you; the console works without.",
        )
    if not _TOKEN.match(token):
        return Finding(
            False,
            "token: not of the shape 123456789:letters",
            "Copy the whole token from BotFather, without spaces or quotes.",
        )
    return Finding(True, "token: has the right shape")


def _base(settings: Settings) -> Finding:
    base = settings.telegram_api_base
    good = not settings.base_mistake and base.endswith("/bot")
    return Finding(
        good, f"Bot API server: {base}", "TELEGRAM_API_BASE should look like http://127.0.0.1:8081/bot"
    )


def _zones() -> Finding:
    try:
        zone = ZoneInfo("Europe/Lisbon")
        known = zone.utcoffset(datetime(2026, 7, 1)) != zone.utcoffset(datetime(2026, 1, 1))  # noqa: DTZ001
    except ZoneInfoNotFoundError:
        known = False
    return Finding(known, "time zone data: present and with summer time", "Install it: pip install tzdata")


def _clock() -> Finding:
    now = datetime.now(UTC)
    return Finding(
        now > _NO_EARLIER,
        f"clock: {now:%Y-%m-%d %H:%M:%S} UTC",
        "The clock is wrong: set it, or let NTP do so.",
    )
