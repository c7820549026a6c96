"""Tests that a database in use is neither moved nor restored into, and that its files are watched."""

from __future__ import annotations

import os
import sqlite3
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from sqlalchemy import text

from storage import migrate, moving
from storage.file_watch import NO_WAL, REMOVED, FileWatch
from storage.holding import Hold, InUseError, held
from storage.store import Store
from storage.trouble import AwayError, DatabaseError, is_damaged
from tests.storage.filled import Make

_ROOT = Path(__file__).parents[2]
ONE_DATABASE = pytest.mark.parametrize("database", ["sqlite"], indirect=True)


def test_programs_share_a_database_and_a_move_needs_it_alone(store: Store) -> None:
    with held(store), held(store), pytest.raises(InUseError):
        Hold(store, alone=True).take()
    with held(store, alone=True), pytest.raises(InUseError):
        Hold(store).take()
    with held(store):
        pass


def test_a_killed_program_holds_nothing(store: Store) -> None:
    code = (
        "import os, sys\n"
        "from storage.holding import Hold\nfrom storage.store import Store\n"
        "hold = Hold(Store(sys.argv[1]))\nhold.take()\nprint('held', flush=True)\nsys.stdin.read()\n"
    )
    url = store.url.render_as_string(hide_password=False)
    program = subprocess.Popen(
        [sys.executable, "-c", code, url], cwd=_ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    )
    try:
        assert program.stdout is not None
        assert program.stdout.readline() == "held\n"
        with pytest.raises(InUseError):
            Hold(store, alone=True).take()
    finally:
        program.kill()
        program.communicate()
    for _tenth in range(50):
        try:
            with held(store, alone=True):
                return
        except InUseError:
            continue
    raise AssertionError("still held")


def test_a_database_in_use_is_not_moved_and_a_moved_one_is_closed(
    filled: Callable[[str], Store], place: Make, database: str
) -> None:
    source, target = filled("sqlite"), Store(place(database))
    with held(source), pytest.raises(InUseError):
        moving.move(source, target)
    moving.move(source, target)
    with pytest.raises(migrate.MovedAwayError) as refused:
        migrate.upgrade(source)
    assert refused.value.target == target.url.render_as_string(hide_password=True)
    migrate.upgrade(target)
    assert migrate.reopen(source)
    migrate.upgrade(source)
    assert not migrate.reopen(source)
    target.close()


@ONE_DATABASE
def test_entries_outlive_a_removed_write_ahead_log(store: Store) -> None:
    path = Path(store.url.database or "")
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


@ONE_DATABASE
def test_a_replaced_file_is_noticed(store: Store) -> None:
    path = Path(store.url.database or "")
    watch = FileWatch(store)
    path.rename(path.with_suffix(".away"))
    assert watch.look() == REMOVED
    path.with_suffix(".away").rename(path)
    assert watch.look() == ""


@ONE_DATABASE
def test_a_damaged_page_is_noticed(store: Store) -> None:
    path = Path(store.url.database or "")
    watch = FileWatch(store)
    assert watch.check() == ""
    store.write_log_back()
    size = path.stat().st_size
    with path.open("r+b") as file:
        for page in range(2, size // 4096):
            file.seek(page * 4096)
            file.write(os.urandom(64))
    assert watch.check()


@ONE_DATABASE
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


@ONE_DATABASE
def test_damage_is_told_apart(store: Store) -> None:
    path = Path(store.url.database or "")
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
