"""Rights are decided above the database, and one Book scopes its rows: one database is enough here."""

from __future__ import annotations

import pytest

from tests.channels.telegram.conftest import telephone as telephone  # noqa: PLC0414 - a fixture, for all files here


@pytest.fixture
def database() -> str:
    """SQLite; tests/storage holds both databases to the same."""
    return "sqlite"
