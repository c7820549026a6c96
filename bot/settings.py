"""Settings from the environment, typed."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Literal
from urllib.parse import urlsplit

from platformdirs import user_data_path
from pydantic import Field, SecretStr, ValidationError, field_validator
from pydantic_settings import BaseSettings, SettingsConfigDict

_USUAL_ADDRESS = "127.0.0.1:8080"
_LAST_PORT = 65535
_SECRET = re.compile(r"[A-Za-z0-9_-]{16,256}")  # at most 256 characters; Bot API, setWebhook
_ADDRESS = re.compile(r"(\[[0-9A-Fa-f:]+\]|[^:\s]*):(\d{1,5})")


def default_database() -> str:
    """Return the URL of the SQLite file in the user's data folder."""
    return f"sqlite:///{user_data_path('peel-ledger') / 'peel-ledger.sqlite'}"


class MalformedError(ValueError):
    """A setting is invalid; the text says which and why, without its value."""


class Settings(BaseSettings):
    """The settings from the environment; the contributor guide lists every name."""

    model_config = SettingsConfigDict(extra="ignore")

    telegram_bot_token: SecretStr = SecretStr("")
    telegram_api_base: str = "https://api.telegram.org/bot"
    telegram_webhook_url: str = ""  # where Telegram sends updates; without it the bot polls
    telegram_webhook_secret: SecretStr = SecretStr("")  # the token that Telegram must send along
    listen_address: str = ""  # host:port for updates, health and metrics, behind a proxy
    database_url: str = ""
    telegram_sends_per_second: int = Field(default=30, ge=0)  # over all chats; 0 for no limit
    tick_seconds: int = Field(default=15, ge=1)
    log_level: Literal["DEBUG", "INFO", "WARNING", "ERROR", "CRITICAL"] = "INFO"

    @field_validator("log_level", mode="before")
    @classmethod
    def _in_capitals(cls, given: object) -> object:
        return given.upper() if isinstance(given, str) else given

    @classmethod
    def read(cls) -> Settings:
        """Return the settings. Raises MalformedError, which names the first invalid one."""
        try:
            return cls()
        except ValidationError as error:
            first = error.errors(include_input=False)[0]
            name = str(first["loc"][0]).upper()
            raise MalformedError(f"{name} cannot be used: {first['msg'].lower()}.") from None

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
        if _SECRET.fullmatch(self.telegram_webhook_secret.get_secret_value()) is None:
            return (
                "TELEGRAM_WEBHOOK_SECRET should be 16 to 256 letters, digits, _ or -, "
                "and nobody may guess it."
            )
        return ""

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
