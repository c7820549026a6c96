"""Tests of transient and permanent errors, with the errors that the real databases raise."""

from __future__ import annotations

import time
from pathlib import Path
from typing import Any

import pytest
from sqlalchemy import event, text
from sqlalchemy.exc import SQLAlchemyError

from storage.store import Store
from storage.trouble import AwayError, ConflictError


def _error(store: Store, statement: str) -> SQLAlchemyError:
    with pytest.raises(SQLAlchemyError) as raised, store.reading() as unit:
        unit.connection.execute(text(statement))
    return raised.value


def test_nonsense_does_not_pass(store: Store) -> None:
    assert not isinstance(_error(store, "SELECT a FROM no_such_table"), AwayError)
    assert not isinstance(_error(store, "SELEC 1"), AwayError)
    with pytest.raises(ValueError, match="not of a database"), store.reading():
        raise ValueError("not of a database at all")


def test_a_row_that_breaks_a_rule_does_not_pass(store: Store) -> None:
    columns = "channel, update_id, payload, state, received_at, attempts"
    row = f"INSERT INTO inbox ({columns}) VALUES ('t', 1, '', 0, 0, 0)"  # noqa: S608 - no value from outside
    with store.engine.begin() as connection:
        connection.execute(text(row))
    error = _error(store, row)
    assert isinstance(error, ConflictError)
    assert not isinstance(error, AwayError)


def _without_patience(connection: Any, _record: object) -> None:
    connection.execute("PRAGMA busy_timeout=1")


@pytest.mark.parametrize("database", ["sqlite"], indirect=True)
def test_a_locked_file_passes(store: Store) -> None:
    other = Store(store.url.render_as_string(hide_password=False))
    try:
        event.listen(other.engine, "connect", _without_patience)
        with store.writing() as unit:
            unit.connection.execute(text("SELECT 1"))
            with pytest.raises(AwayError, match="locked"), other.writing() as second:
                second.connection.execute(text("SELECT 1"))
    finally:
        other.close()


@pytest.mark.parametrize("database", ["sqlite"], indirect=True)
def test_a_full_disk_passes(store: Store) -> None:
    with store.writing() as unit:
        pages = unit.connection.exec_driver_sql("PRAGMA page_count").scalar_one()
        unit.connection.exec_driver_sql(f"PRAGMA max_page_count={pages}")
    with pytest.raises(AwayError, match="full"), store.writing() as unit:
        unit.connection.exec_driver_sql("CREATE TABLE large AS SELECT randomblob(1000000) AS a")


def test_a_file_that_cannot_be_opened_passes(tmp_path: Path) -> None:
    (tmp_path / "folder.sqlite").mkdir()
    store = Store(f"sqlite:///{tmp_path / 'folder.sqlite'}")
    try:
        assert isinstance(_error(store, "SELECT 1"), AwayError)
    finally:
        store.close()


@pytest.mark.parametrize("database", ["postgresql"], indirect=True)
def test_a_server_that_ends_the_session_passes(store: Store) -> None:
    def ended_in_the_middle() -> None:
        with store.reading() as unit:
            own = unit.connection.scalar(text("SELECT pg_backend_pid()"))
            with store.engine.begin() as other:
                other.execute(text("SELECT pg_terminate_backend(:pid)"), {"pid": own})
            unit.connection.execute(text("SELECT 1"))

    with pytest.raises(AwayError):
        ended_in_the_middle()


def test_it_says_why_in_the_drivers_words_and_nothing_of_the_statement(tmp_path: Path) -> None:
    (tmp_path / "folder.sqlite").mkdir()
    store = Store(f"sqlite:///{tmp_path / 'folder.sqlite'}")
    try:
        said = str(_error(store, "SELECT 'a word of somebody'"))
    finally:
        store.close()
    assert said == "(OperationalError) unable to open database file"


def test_a_server_that_is_not_there_passes(tmp_path: Path) -> None:
    store = Store(f"postgresql://nobody@/none?host={tmp_path}")
    try:
        assert isinstance(_error(store, "SELECT 1"), AwayError)
    finally:
        store.close()


def _stand_still(store: Store) -> None:
    with store.writing() as unit:
        unit.connection.execute(text("SELECT 1"))
        time.sleep(1.5)
        unit.connection.execute(text("SELECT 1"))


@pytest.mark.parametrize("database", ["postgresql"], indirect=True)
def test_a_transaction_in_which_nothing_happens_ends_and_passes(store: Store) -> None:
    """A process that stalls inside a transaction must not keep its rows locked."""
    patient = Store(store.url.render_as_string(hide_password=False), idle_seconds=1)
    try:
        with pytest.raises(AwayError):
            _stand_still(patient)
        with patient.writing() as unit:
            assert unit.connection.scalar(text("SELECT 1")) == 1
    finally:
        patient.close()
