"""Tests of backups: complete, consistent during writes, never overwriting, and restored in a drill."""

from __future__ import annotations

import os
import sqlite3
import stat
import subprocess
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from pathlib import Path
from threading import Event, Thread
from typing import Any

import pytest
from sqlalchemy import text
from sqlalchemy.exc import OperationalError

from storage import backup, census, migrate
from storage.refusals import (
    AlreadyThereError,
    NoFileError,
    NotABackupError,
    NotWholeError,
    ToolFailedError,
    ToolMissingError,
    WrongKindError,
)
from storage.store import Store
from storage.tables import Inbox
from tests.storage.filled import NOW, Make, everything

Fill = Callable[[str], Store]
_WORD = "sesame 'n"


def _no_leftovers(folder: Path) -> bool:
    return not list(folder.glob(".*.part"))


def test_what_is_restored_is_what_was_backed_up(
    filled: Fill, place: Make, database: str, tmp_path: Path
) -> None:
    store, path = filled(database), tmp_path / "kept" / "night.backup"
    made = backup.back_up(store, path)
    held = everything(store)
    assert made.total == sum(len(rows) for rows in held.values()) > 1_000
    assert made.revision == migrate.head()
    assert stat.S_IMODE(path.stat().st_mode) == 0o600
    assert _no_leftovers(path.parent)
    new = Store(place(database))
    assert backup.restore(path, new).rows == made.rows
    assert everything(new) == held
    migrate.upgrade(new)
    new.close()


def test_a_restore_into_migrated_tables_without_rows(
    filled: Fill, place: Make, database: str, tmp_path: Path
) -> None:
    store, path = filled(database), tmp_path / "night.backup"
    backup.back_up(store, path)
    new = Store(place(database))
    migrate.upgrade(new)
    backup.restore(path, new)
    assert everything(new) == everything(store)
    new.close()


def test_nothing_is_ever_overwritten(filled: Fill, database: str, tmp_path: Path) -> None:
    store, path = filled(database), tmp_path / "night.backup"
    path.write_text("somebody's notes")
    with pytest.raises(AlreadyThereError):
        backup.back_up(store, path)
    assert path.read_text() == "somebody's notes"
    good = tmp_path / "good.backup"
    backup.back_up(store, good)
    before = everything(store)
    with pytest.raises(census.OccupiedError) as caught:
        backup.restore(good, store)
    assert caught.value.rows > 0
    assert everything(store) == before


@pytest.mark.parametrize("links", [True, False])
def test_a_file_that_came_meanwhile_is_left_alone(
    filled: Fill, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, links: bool
) -> None:
    store, path = filled("sqlite"), tmp_path / "night.backup"
    if not links:  # as on FAT file systems

        def refuse(self: Path, target: Path) -> None:
            raise PermissionError(1, "Operation not permitted")

        monkeypatch.setattr(Path, "hardlink_to", refuse)
        backup.back_up(store, tmp_path / "other.backup")
        assert backup.check(tmp_path / "other.backup").total > 1_000
    copy = backup._vacuum_into

    def slow(store: Store, aside: Path) -> None:
        copy(store, aside)
        path.write_text("somebody's notes")

    monkeypatch.setattr(backup, "_vacuum_into", slow)
    with pytest.raises(AlreadyThereError):
        backup.back_up(store, path)
    assert path.read_text() == "somebody's notes"
    assert _no_leftovers(tmp_path)


def _letter(number: int) -> Inbox:
    return Inbox(
        channel="house", update_id=number, payload="{}", state=2, received_at=NOW + timedelta(seconds=number)
    )


def test_it_is_one_moment_while_others_write(filled: Fill, database: str, tmp_path: Path) -> None:
    """It contains everything acknowledged before its start, and later rows have no gaps."""
    store = filled(database)
    stop = Event()
    acknowledged = 0

    def write() -> None:
        nonlocal acknowledged
        while not stop.is_set():
            with store.writing() as unit:
                unit.session.add(_letter(acknowledged + 1))
            acknowledged += 1

    writer = Thread(target=write)
    writer.start()
    try:
        for number in range(4):
            while acknowledged < 20 * number + 5:
                stop.wait(0.01)
            before = acknowledged
            made = backup.back_up(store, tmp_path / f"{number}.backup")
            assert before <= made.rows["inbox"] <= acknowledged + 1
    finally:
        stop.set()
        writer.join()
    assert acknowledged > 60
    if database == "sqlite":
        kept = Store(f"sqlite:///{tmp_path / '3.backup'}")
        with kept.engine.connect() as connection:
            ids = list(connection.scalars(text("SELECT update_id FROM inbox ORDER BY 1")))
        assert ids == list(range(1, len(ids) + 1))
        kept.close()


def test_when_counts_leave_a_doubt_writers_wait_once(
    filled: Fill, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    store = filled("sqlite")
    copy = backup._vacuum_into
    could_write: list[bool] = []

    def and_another_writes(store: Store, aside: Path) -> None:
        copy(store, aside)
        other = Store(store.url.render_as_string())
        try:
            with other.engine.begin() as connection:
                connection.exec_driver_sql("PRAGMA busy_timeout=50")
                connection.exec_driver_sql("DELETE FROM reminder WHERE id > 50")
            could_write.append(True)
        except OperationalError:
            could_write.append(False)
        finally:
            other.close()

    monkeypatch.setattr(backup, "_vacuum_into", and_another_writes)
    monkeypatch.setattr(backup, "_between", lambda before, copied, after: False)
    made = backup.back_up(store, tmp_path / "night.backup")
    assert could_write == [True, False]
    assert made.rows["reminder"] == 50
    assert {name: len(rows) for name, rows in everything(store).items()} == made.rows


def test_a_count_that_no_moment_had_is_a_doubt() -> None:
    assert backup._between({"a": 1, "b": 2}, {"a": 2, "b": 2}, {"a": 3, "b": 1})
    assert not backup._between({"a": 1}, {"a": 4}, {"a": 3})
    assert not backup._between({"a": 1}, {"a": 0}, {"a": 3})
    assert not backup._between({"a": 1, "b": 1}, {"a": 1}, {"a": 1, "b": 1})


def _spoil(path: Path) -> None:
    with path.open("r+b") as opened:
        opened.seek(path.stat().st_size // 2)
        opened.write(b"\xa5" * 30_000)


def test_a_copy_that_is_not_whole_never_gets_the_name(
    filled: Fill, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    store, copy = filled("sqlite"), backup._vacuum_into

    def spoiled(store: Store, aside: Path) -> None:
        copy(store, aside)
        _spoil(aside)

    monkeypatch.setattr(backup, "_vacuum_into", spoiled)
    with pytest.raises(NotWholeError):
        backup.back_up(store, tmp_path / "night.backup")
    assert not (tmp_path / "night.backup").exists()
    assert _no_leftovers(tmp_path)


@pytest.mark.parametrize("how", ["spoiled", "cut"])
def test_a_backup_that_went_bad_later_is_found(
    filled: Fill, place: Make, database: str, tmp_path: Path, how: str
) -> None:
    store, path = filled(database), tmp_path / "night.backup"
    backup.back_up(store, path)
    if how == "spoiled":
        _spoil(path)
    else:
        os.truncate(path, path.stat().st_size * 2 // 3)
    new = Store(place(database))
    with pytest.raises(NotWholeError):
        backup.restore(path, new)
    with pytest.raises(NotWholeError):
        backup.drill(path, store)
    with new.engine.connect() as connection:
        assert sum(census.count_rows(connection).values()) == 0
    new.close()


def test_rows_that_point_nowhere_are_found(filled: Fill, tmp_path: Path) -> None:
    store, path = filled("sqlite"), tmp_path / "night.backup"
    backup.back_up(store, path)
    loose = sqlite3.connect(path)
    with loose:
        loose.execute("DELETE FROM ingredient WHERE id = 1")
    loose.close()
    with pytest.raises(NotWholeError, match="foreign_key_check"):
        backup.check(path)


def test_a_drill_leaves_nothing_behind(filled: Fill, database: str, tmp_path: Path) -> None:
    store, path = filled(database), tmp_path / "night.backup"
    made = backup.back_up(store, path)
    assert backup.drill(path, store).rows == made.rows
    if database == "postgresql":
        with store.engine.connect() as connection:
            names = connection.scalars(text("SELECT datname FROM pg_database"))
            assert not [name for name in names if "drill" in name]


def test_an_older_revision_is_backed_up_as_it_is(place: Make, database: str, tmp_path: Path) -> None:
    store, path = Store(place(database)), tmp_path / "night.backup"
    migrate.upgrade(store, "0003")
    assert backup.back_up(store, path).revision == "0003"
    assert backup.drill(path, store).revision == "0003"  # and opened by this program, in the copy only
    assert migrate.current(store) == "0003"
    new = Store(place(database))
    migrate.upgrade(new)  # its tables are of a newer revision, and without rows
    assert backup.restore(path, new).revision == "0003"
    migrate.upgrade(new)
    assert migrate.current(new) == migrate.head()
    new.close()
    store.close()


def test_a_newer_database_and_a_newer_backup_are_refused(
    filled: Fill, place: Make, database: str, tmp_path: Path
) -> None:
    store, path = filled(database), tmp_path / "night.backup"
    with store.writing() as unit:
        unit.session.execute(text("UPDATE alembic_version SET version_num = '9999'"))
    with pytest.raises(migrate.NewerDatabaseError):
        backup.back_up(store, path)
    assert not path.exists()
    with store.engine.connect() as connection, pytest.MonkeyPatch.context() as patch:
        assert census.revision_of(connection) == "9999"
        patch.setattr(migrate, "refuse_newer", lambda store: None)  # as created by the newer program
        backup.back_up(store, path)
    new = Store(place(database))
    with pytest.raises(migrate.NewerDatabaseError):
        backup.restore(path, new)
    with new.engine.connect() as connection:
        assert census.tables_of(connection) == []
    new.close()


def test_what_cannot_be_restored_is_named(filled: Fill, place: Make, tmp_path: Path) -> None:
    new = Store(place("sqlite"))
    with pytest.raises(NoFileError):
        backup.restore(tmp_path / "absent", new)
    (tmp_path / "notes").write_text("not a backup")
    with pytest.raises(NotABackupError):
        backup.restore(tmp_path / "notes", new)
    with pytest.raises(census.NoDatabaseError):
        backup.back_up(new, tmp_path / "night.backup")
    dump = tmp_path / "night.dump"
    backup.back_up(filled("postgresql"), dump)
    with pytest.raises(WrongKindError):
        backup.restore(dump, new)
    with pytest.raises(WrongKindError):
        backup.drill(dump, new)
    new.close()


def test_looking_for_a_database_makes_none(tmp_path: Path) -> None:
    absent = Store(f"sqlite:///{tmp_path / 'absent.sqlite'}")
    with pytest.raises(census.NoDatabaseError):
        backup.back_up(absent, tmp_path / "night.backup")
    assert list(tmp_path.iterdir()) == []
    absent.close()


def test_without_its_programs_postgresql_says_so(
    filled: Fill, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    store = filled("postgresql")
    monkeypatch.setenv("PATH", str(tmp_path))
    with pytest.raises(ToolMissingError) as caught:
        backup.back_up(store, tmp_path / "night.dump")
    assert caught.value.subject == "pg_dump"
    assert list(tmp_path.glob("*night*")) == []


def test_a_password_is_never_on_a_command_line(
    filled: Fill, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    store = filled("postgresql")
    with_password = Store(store.url.set(password=_WORD).render_as_string(hide_password=False))
    seen: list[tuple[list[str], dict[str, str]]] = []
    run = subprocess.run

    def spy(words: list[str], **options: Any) -> Any:
        seen.append((words, options["env"]))
        return run(words, **options)

    monkeypatch.setattr("storage.dumps.subprocess.run", spy)
    backup.back_up(with_password, tmp_path / "night.dump")
    backup.drill(tmp_path / "night.dump", with_password)
    assert len(seen) == 2
    for words, environment in seen:
        assert _WORD[:6] not in " ".join(words)
        assert environment["PGPASSWORD"] == _WORD
    with_password.close()


def test_what_a_program_refuses_is_said_and_nothing_is_left(
    filled: Fill, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    store = filled("postgresql")
    everything(store)  # which opens its connection
    monkeypatch.setenv("PGOPTIONS", "-c no_such_setting=1")  # only pg_dump's connection uses it
    with pytest.raises(ToolFailedError, match="no_such_setting"):
        backup.back_up(store, tmp_path / "night.dump")
    assert not (tmp_path / "night.dump").exists()
    assert _no_leftovers(tmp_path)


def test_so_many_are_kept_and_nothing_else_is_touched(tmp_path: Path) -> None:
    store = Store("sqlite://")
    first = datetime(2026, 11, 20, 6, tzinfo=UTC)
    names = [backup.dated_name(store, first + timedelta(days=days)) for days in range(6)]
    others = ["peel-ledger.sqlite", "peel-ledger-20261120T060000Z.sqlite.txt", "notes.dump"]
    for name in [*names, *others]:
        (tmp_path / name).write_text(name)
    left = tmp_path / ".peel-ledger-20261119T060000Z.sqlite.x.part"
    left.write_text("")
    os.utime(left, (1, 1))
    fresh = tmp_path / ".peel-ledger-20261126T060000Z.sqlite.y.part"
    fresh.write_text("")
    gone = backup.thin_out(tmp_path, 2, tmp_path / names[-1])
    assert sorted(one.name for one in gone) == names[:4]
    assert {one.name for one in tmp_path.iterdir()} == {*names[4:], *others, fresh.name}
    store.close()


def test_the_newest_is_kept_though_the_clock_went_back(tmp_path: Path) -> None:
    for name in ("peel-ledger-20270101T060000Z.dump", "peel-ledger-20261231T060000Z.dump"):
        (tmp_path / name).write_text("")
    newest = tmp_path / "peel-ledger-20200101T000000Z.dump"
    newest.write_text("")
    backup.thin_out(tmp_path, 1, newest)
    assert list(tmp_path.iterdir()) == [newest]
