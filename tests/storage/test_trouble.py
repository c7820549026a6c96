"""What may pass by itself, and what will not: with the errors that the real databases raise."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from sqlalchemy import event, text
from sqlalchemy.exc import DBAPIError, IntegrityError, SQLAlchemyError

from storage.store import Store
from storage.trouble import is_passing


def _error(store: Store, statement: str) -> SQLAlchemyError:
    with pytest.raises(SQLAlchemyError) as raised, store.engine.connect() as connection:
        connection.execute(text(statement))
    return raised.value


def test_nonsense_does_not_pass(store: Store) -> None:
    assert not is_passing(_error(store, "SELECT a FROM no_such_table"))
    assert not is_passing(_error(store, "SELEC 1"))
    assert not is_passing(ValueError("not of a database at all"))


def test_a_row_that_breaks_a_rule_does_not_pass(store: Store) -> None:
    columns = "channel, update_id, payload, state, received_at, attempts"
    row = f"INSERT INTO inbox ({columns}) VALUES ('t', 1, '', 0, 0, 0)"  # noqa: S608 - no value from outside
    with store.engine.begin() as connection:
        connection.execute(text(row))
    error = _error(store, row)
    assert isinstance(error, IntegrityError)
    assert not is_passing(error)


def _without_patience(connection: Any, _record: object) -> None:
    connection.execute("PRAGMA busy_timeout=1")


@pytest.mark.parametrize("database", ["sqlite"], indirect=True)
def test_a_locked_file_passes(store: Store) -> None:
    other = Store(store.url.render_as_string(hide_password=False))
    try:
        event.listen(other.engine, "connect", _without_patience)
        with store.writing() as unit:
            unit.connection.execute(text("SELECT 1"))
            with pytest.raises(DBAPIError) as raised, other.writing() as second:
                second.connection.execute(text("SELECT 1"))
    finally:
        other.close()
    assert is_passing(raised.value)


@pytest.mark.parametrize("database", ["sqlite"], indirect=True)
def test_a_full_disk_passes(store: Store) -> None:
    with store.engine.connect() as connection:
        pages = connection.exec_driver_sql("PRAGMA page_count").scalar_one()
        connection.exec_driver_sql(f"PRAGMA max_page_count={pages}")
        with pytest.raises(DBAPIError) as raised:
            connection.exec_driver_sql("CREATE TABLE large AS SELECT randomblob(1000000) AS a")
    assert is_passing(raised.value)


def test_a_file_that_cannot_be_opened_passes(tmp_path: Path) -> None:
    (tmp_path / "folder.sqlite").mkdir()
    store = Store(f"sqlite:///{tmp_path / 'folder.sqlite'}")
    try:
        assert is_passing(_error(store, "SELECT 1"))
    finally:
        store.close()


@pytest.mark.parametrize("database", ["postgresql"], indirect=True)
def test_a_server_that_ends_the_session_passes(store: Store) -> None:
    with store.engine.connect() as connection:
        own = connection.scalar(text("SELECT pg_backend_pid()"))
        with store.engine.begin() as other:
            other.execute(text("SELECT pg_terminate_backend(:pid)"), {"pid": own})
        with pytest.raises(DBAPIError) as raised:
            connection.execute(text("SELECT 1"))
        connection.invalidate()
    assert is_passing(raised.value)


def test_a_server_that_is_not_there_passes(tmp_path: Path) -> None:
    store = Store(f"postgresql://nobody@/none?host={tmp_path}")
    try:
        assert is_passing(_error(store, "SELECT 1"))
    finally:
        store.close()
