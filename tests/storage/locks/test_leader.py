"""Tests that one of several processes leads, and another takes over once it is gone."""

from __future__ import annotations

import time
from collections.abc import Iterator

import pytest
from sqlalchemy import text

from storage.locks import leader
from storage.locks.leader import Leadership
from storage.store import Store


@pytest.fixture
def other(store: Store) -> Iterator[Store]:
    """The same database from another process."""
    opened = Store(store.url.render_as_string(hide_password=False))
    yield opened
    opened.close()


@pytest.mark.parametrize("database", ["postgresql"], indirect=True)
def test_only_one_leads(store: Store, other: Store) -> None:
    first, second = Leadership(store, "poller a"), Leadership(other, "poller a")
    assert first.take()
    assert first.take()
    assert not second.take()
    elsewhere = Leadership(other, "poller b")
    assert elsewhere.take()
    first.give_up()
    assert second.take()
    assert not first.take()
    for one in (first, second, elsewhere):
        one.give_up()


@pytest.mark.parametrize("database", ["postgresql"], indirect=True)
def test_who_lost_the_connection_has_to_take_it_again(store: Store, other: Store) -> None:
    first, second = Leadership(store, "poller a"), Leadership(other, "poller a")
    assert first.take()
    with other.engine.begin() as connection:
        connection.execute(
            text("SELECT pg_terminate_backend(pid) FROM pg_locks WHERE locktype = 'advisory' AND granted")
        )
    assert second.take()
    assert not first.take()
    second.give_up()
    assert first.take()
    first.give_up()


@pytest.mark.parametrize("database", ["sqlite"], indirect=True)
def test_the_only_process_of_a_file_leads(store: Store) -> None:
    leadership = Leadership(store, "poller a")
    assert leadership.take()
    leadership.give_up()


@pytest.mark.parametrize("database", ["postgresql"], indirect=True)
def test_who_says_nothing_leads_no_longer(
    store: Store, other: Store, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(leader, "SILENT_SECONDS", 1)
    first, second = Leadership(store, "poller a"), Leadership(other, "poller a")
    assert first.take()
    assert not second.take()
    time.sleep(1.5)
    assert second.take()
    assert not first.take()
    second.give_up()
