"""Settings from the environment, typed."""

from __future__ import annotations

from pathlib import Path

from platformdirs import user_data_path
from pydantic import SecretStr
from pydantic_settings import BaseSettings, SettingsConfigDict


def default_database() -> str:
    """Return the URL of the SQLite file in the user's data folder."""
    return f"sqlite:///{user_data_path('peel-ledger') / 'peel-ledger.sqlite'}"


class Settings(BaseSettings):
    """What the environment says; every name is listed in the contributor guide."""

    model_config = SettingsConfigDict(extra="ignore")

    telegram_bot_token: SecretStr = SecretStr("")
    telegram_api_base: str = "https://api.telegram.org/bot"
    database_url: str = ""
    telegram_sends_per_second: int = 30  # over all chats; 0 for no limit
    tick_seconds: int = 15
    log_level: str = "INFO"

    @property
    def database(self) -> str:
        """The database to use: DATABASE_URL, or the file in the user's data folder."""
        return self.database_url or default_database()

    @property
    def telegram_file_base(self) -> str:
        """Where the Bot API server serves files: beside its methods, under /file/bot."""
        base = self.telegram_api_base
        return base.removesuffix("/bot") + "/file/bot" if base.endswith("/bot") else base

    @property
    def lock_path(self) -> Path:
        """A folder for the lock that keeps a second poller out."""
        return user_data_path("peel-ledger")
