"""Tests that the files of a database are watched, and that damage is told apart."""

from __future__ import annotations

import os
import sqlite3
from pathlib import Path

import pytest
from sqlalchemy import text

from storage.file_watch import NO_WAL, REMOVED, FileWatch
from storage.store import Store
from storage.trouble import AwayError, DatabaseError, is_damaged

pytestmark = pytest.mark.parametrize("database", ["sqlite"], indirect=True)


def _file(store: Store) -> Path:
    assert store.file is not None
    return store.file


def test_entries_outlive_a_removed_write_ahead_log(store: Store) -> None:
    path = _file(store)
    watch = FileWatch(store)
    assert watch.look() == ""
    with store.writing() as unit:
        unit.session.execute(text("CREATE TABLE told (what TEXT)"))
        unit.session.execute(text("INSERT INTO told VALUES ('before')"))
    Path(f"{path}-wal").unlink()
    with store.writing() as unit:
        unit.session.execute(text("INSERT INTO told VALUES ('after')"))
    assert watch.look() == NO_WAL
    with store.writing() as unit:
        unit.session.execute(text("INSERT INTO told VALUES ('then')"))
    assert watch.look() == ""
    # As after a kill: a reader of its own sees what is on disk only.
    with sqlite3.connect(path) as other:
        assert [row[0] for row in other.execute("SELECT what FROM told")] == ["before", "after", "then"]


def test_a_replaced_file_is_noticed(store: Store) -> None:
    path = _file(store)
    watch = FileWatch(store)
    path.rename(path.with_suffix(".away"))
    assert watch.look() == REMOVED
    path.with_suffix(".away").rename(path)
    assert watch.look() == ""


def test_a_damaged_page_is_noticed(store: Store) -> None:
    path = _file(store)
    watch = FileWatch(store)
    assert watch.check() == ""
    store.write_log_back()
    size = path.stat().st_size
    with path.open("r+b") as file:
        for page in range(2, size // 4096):
            file.seek(page * 4096)
            file.write(os.urandom(64))
    assert watch.check()


def test_a_file_that_was_read_only_is_taken_up_again(store: Store) -> None:
    with store.engine.connect() as connection:
        # As SQLite opens a file without the right to write; missing rights would not stop a superuser.
        connection.connection.cursor().execute("PRAGMA query_only=ON")

    def write() -> None:
        with store.writing() as unit:
            unit.session.execute(text("CREATE TABLE told (what TEXT)"))

    with pytest.raises(AwayError, match="readonly"):
        write()
    write()


def test_damage_is_told_apart(store: Store) -> None:
    path = _file(store)
    store.write_log_back()
    with path.open("r+b") as file:
        file.seek(4096)
        file.write(os.urandom(path.stat().st_size - 4096))

    def read() -> None:
        with store.reading() as unit:
            unit.session.execute(text("SELECT * FROM inbox, reminder, waste, bar")).all()

    with pytest.raises(DatabaseError, match="malformed") as found:
        read()
    assert is_damaged(found.value)
