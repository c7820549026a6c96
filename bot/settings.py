"""Settings from the environment, typed."""

from __future__ import annotations

import os
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path
from typing import Any, Final
from urllib.parse import urlsplit

from platformdirs import user_data_path

_USUAL_ADDRESS = "127.0.0.1:8080"
_LAST_PORT = 65535
_WEBHOOK_PORTS = {443, 80, 88, 8443}  # Bot API, setWebhook
_SECRET = re.compile(r"[A-Za-z0-9_-]{16,256}")  # at most 256 characters; Bot API, setWebhook
_ADDRESS = re.compile(r"(\[[0-9A-Fa-f:]+\]|[^:\s]*):(\d{1,5})")


def default_database() -> str:
    """Return the URL of the SQLite file in the user's data folder."""
    return f"sqlite:///{user_data_path('peel-ledger') / 'peel-ledger.sqlite'}"


class MalformedError(ValueError):
    """A setting is invalid; the text says which and why, without its value."""


class Secret:
    """A text that logs and tracebacks do not show."""

    def __init__(self, text: str) -> None:
        self._text = text

    def reveal(self) -> str:
        """Return the text."""
        return self._text

    def __repr__(self) -> str:
        return "Secret(...)" if self._text else "Secret('')"


def _whole_number(text: str, least: int) -> int:
    try:
        number = int(text)
    except ValueError:
        raise ValueError("input should be a valid integer") from None
    if number < least:
        raise ValueError(f"input should be greater than or equal to {least}")
    return number


_LEVELS = ("DEBUG", "INFO", "WARNING", "ERROR", "CRITICAL")


def _log_level(text: str) -> str:
    if text.upper() not in _LEVELS:
        names = [f"'{level.casefold()}'" for level in _LEVELS]
        raise ValueError(f"input should be {', '.join(names[:-1])} or {names[-1]}")
    return text.upper()


_READ: Final[Mapping[str, Callable[[str], object]]] = {
    "telegram_bot_token": Secret,
    "telegram_webhook_secret": Secret,
    "telegram_sends_per_second": partial(_whole_number, least=0),
    "messages_per_minute": partial(_whole_number, least=0),
    "tick_seconds": partial(_whole_number, least=1),
    "log_level": _log_level,
}


@dataclass(frozen=True)
class Settings:
    """The settings from the environment; the contributor guide lists every name.

    A plain dataclass, because every start needs it: loading pydantic for ten values would add a fifth to the
    time of a start.
    """

    telegram_bot_token: Secret = field(default=Secret(""))
    telegram_api_base: str = "https://api.telegram.org/bot"
    telegram_webhook_url: str = ""  # where Telegram sends updates; without it the bot polls
    telegram_webhook_secret: Secret = field(default=Secret(""))  # the token that Telegram must send along
    listen_address: str = ""  # host:port for updates, health and metrics, behind a proxy
    database_url: str = ""
    telegram_sends_per_second: int = 30  # over all chats; 0 for no limit
    messages_per_minute: int = 60  # of one person, after a burst of as many; 0 for no limit
    tick_seconds: int = 15
    log_level: str = "INFO"

    @classmethod
    def read(cls) -> Settings:
        """Return the settings. Raises MalformedError, which names the first invalid one."""
        environment = {name.casefold(): value for name, value in os.environ.items()}
        values: dict[str, Any] = {}
        for name in cls.names():
            if name in environment:
                try:
                    values[name] = _READ.get(name, str)(environment[name])
                except ValueError as error:
                    raise MalformedError(f"{name.upper()} cannot be used: {error}.") from None
        return cls(**values)

    @classmethod
    def names(cls) -> tuple[str, ...]:
        """Return the names of all settings, in lower case."""
        return tuple(cls.__dataclass_fields__)

    @property
    def base_mistake(self) -> str:
        """The problem with the address of the Bot API server, in a sentence; empty if none."""
        try:
            parts = urlsplit(self.telegram_api_base)
            good = parts.scheme in {"http", "https"} and bool(parts.hostname) and parts.port != 0
        except ValueError:
            good = False
        return "" if good else "TELEGRAM_API_BASE should look like http://127.0.0.1:8081/bot"

    @property
    def mistake(self) -> str:
        """The problem with the settings for a webhook, in a sentence; empty if none."""
        found = _ADDRESS.fullmatch(self.listen_address)
        if self.listen_address and (found is None or not 0 < int(found[2]) <= _LAST_PORT):
            return f"LISTEN_ADDRESS should look like {_USUAL_ADDRESS}."
        if not self.telegram_webhook_url:
            return ""
        if not self.telegram_webhook_url.startswith(("https://", "http://127.0.0.1:", "http://localhost:")):
            return "TELEGRAM_WEBHOOK_URL should look like https://bar.example.org:8443/telegram."
        if not self._webhook_port_is_known:
            return "TELEGRAM_WEBHOOK_URL should have port 443, 80, 88 or 8443: Telegram uses no other."
        if _SECRET.fullmatch(self.telegram_webhook_secret.reveal()) is None:
            return (
                "TELEGRAM_WEBHOOK_SECRET should be 16 to 256 letters, digits, _ or -, "
                "and nobody may guess it."
            )
        return ""

    @property
    def _webhook_port_is_known(self) -> bool:
        """Whether Telegram sends to the port; a Bot API server of one's own sends to any."""
        if self.telegram_api_base != type(self).telegram_api_base:
            return True
        try:
            return (urlsplit(self.telegram_webhook_url).port or 443) in _WEBHOOK_PORTS
        except ValueError:
            return False

    @property
    def listening(self) -> str:
        """The address to listen on, host:port; empty if not configured."""
        return self.listen_address or (_USUAL_ADDRESS if self.telegram_webhook_url else "")

    @property
    def database(self) -> str:
        """The database to use: DATABASE_URL, or the file in the user's data folder."""
        return self.database_url or default_database()

    @property
    def telegram_file_base(self) -> str:
        """Where the Bot API server serves files: next to its methods, under /file/bot."""
        base = self.telegram_api_base
        return base.removesuffix("/bot") + "/file/bot" if base.endswith("/bot") else base

    @property
    def lock_path(self) -> Path:
        """A folder for the lock that prevents a second poller."""
        return user_data_path("peel-ledger")
