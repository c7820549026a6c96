"""Fixtures of the security tests. Rights are decided above the database, so one database is enough."""

from __future__ import annotations

import pytest

from tests.channels.telegram.conftest import telephone as telephone  # noqa: PLC0414 - a fixture, for all files here


@pytest.fixture
def database() -> str:
    """SQLite; tests/storage checks both databases in the same way."""
    return "sqlite"
