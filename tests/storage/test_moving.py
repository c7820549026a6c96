"""Tests of moving a database into another: complete, compared, and resumed after any interruption."""

from __future__ import annotations

import signal
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from sqlalchemy import text
from sqlalchemy.exc import OperationalError

from storage import census, migrate, moving
from storage.locks.holding import InUseError
from storage.store import Store
from storage.tables import Ingredient
from tests.house import Hands, House
from tests.house import text as said
from tests.storage.filled import NOW, Make, everything

Fill = Callable[[str], Store]
_ROOT = Path(migrate.__file__).parent.parent


class BrokenOffError(Exception):
    """The move was interrupted by the test."""


@pytest.fixture
def target(place: Make, database: str) -> Store:
    """A new, empty database of each kind in turn."""
    return Store(place(database))


@pytest.mark.parametrize("kind", ["sqlite", "postgresql"])
def test_all_rows_arrive_and_the_source_stays(filled: Fill, target: Store, kind: str) -> None:
    source = filled(kind)
    before = everything(source)
    moved = moving.move(source, target)
    assert everything(source) == before
    assert everything(target) == before
    assert sum(len(rows) for rows in before.values()) == moved.total > 1_000
    assert {table.name: table.rows for table in moved.tables} == {
        name: len(rows) for name, rows in before.items()
    }
    assert not moved.resumed
    assert migrate.current(target) == migrate.head()
    migrate.upgrade(target)  # no mark is left
    target.close()


def test_what_is_written_after_the_move_gets_numbers_of_its_own(filled: Fill, target: Store) -> None:
    source = filled("sqlite")
    moving.move(source, target)
    held = everything(target)
    house = House(target, Hands(NOW))
    house.open_bar("Ana")
    assert "lime" in said(house.person("Ana").says("waste 3 limes mouldy"))
    after = everything(target)
    for name in ("bar", "person", "room"):
        assert len(after[name]) == len(held[name]) + 1
        assert set(held[name]) <= set(after[name])
    house.close()
    target.close()


def _after(pages: int) -> moving.Progress:
    """Interrupt the move after this many pages of rows."""
    arrived = 0
    seen = set()

    def progress(table: str, done: int, of: int) -> None:
        nonlocal arrived
        arrived += table in seen  # the first call only reports existing rows
        seen.add(table)
        if arrived == pages:
            raise BrokenOffError

    return progress


@pytest.mark.long
def test_broken_off_again_and_again_it_goes_on_where_it_stopped(
    filled: Fill, target: Store, monkeypatch: pytest.MonkeyPatch
) -> None:
    source = filled("sqlite")
    monkeypatch.setattr(moving, "_AT_ONCE", 40)
    total = sum(len(rows) for rows in everything(source).values())
    before = 0
    breaks = 0
    while True:
        try:
            moved = moving.move(source, target, _after(9))
            break
        except BrokenOffError:
            breaks += 1
        with target.engine.connect() as connection:
            there = sum(census.count_rows(connection).values()) - 1  # the marker
        assert before < there <= total
        before = there
        with pytest.raises(migrate.UnfinishedMoveError):
            migrate.upgrade(target)
    assert breaks >= 4
    assert moved.resumed
    assert everything(target) == everything(source)
    target.close()


def test_killed_in_the_middle_of_a_table_nothing_is_lost_or_doubled(filled: Fill, target: Store) -> None:
    source = filled("sqlite")
    code = (
        "import os, signal, sys\n"
        "from storage import moving\n"
        "from storage.store import Store\n"
        "moving._AT_ONCE = 50\n"
        "def progress(table, done, of):\n"
        "    if table == 'waste' and done == 200: os.kill(os.getpid(), signal.SIGKILL)\n"
        "moving.move(Store(sys.argv[1]), Store(sys.argv[2]), progress)\n"
    )
    urls = [one.url.render_as_string(hide_password=False) for one in (source, target)]
    killed = subprocess.run([sys.executable, "-c", code, *urls], cwd=_ROOT, check=False)
    assert killed.returncode == -signal.SIGKILL
    with target.engine.connect() as connection:
        assert census.count_rows(connection)["waste"] == 200
    assert moving.move(source, target).resumed
    assert everything(target) == everything(source)
    target.close()


def _break_off(source: Store, target: Store) -> None:
    def progress(table: str, done: int, of: int) -> None:
        if table == "waste" and done:
            raise BrokenOffError

    with pytest.raises(BrokenOffError):
        moving.move(source, target, progress)


def _write(store: Store, statement: str) -> None:
    with store.writing() as unit:
        unit.session.execute(text(statement))


def test_a_row_that_differs_is_found_and_named(filled: Fill, target: Store) -> None:
    source = filled("sqlite")
    _break_off(source, target)
    _write(target, "UPDATE waste SET count_milli = count_milli + 1 WHERE id = 77")
    with pytest.raises(moving.DifferentRowError) as caught:
        moving.move(source, target)
    assert (caught.value.subject, caught.value.key) == ("waste", "bar_id 1, id 77")
    with pytest.raises(migrate.UnfinishedMoveError):
        migrate.upgrade(target)
    target.close()


def test_a_row_too_many_and_a_row_too_few_are_found(filled: Fill, target: Store) -> None:
    source = filled("sqlite")
    _break_off(source, target)
    _write(target, "INSERT INTO counter (bar_id, name, value) VALUES (1, 'zz', 1)")
    with pytest.raises(moving.DifferentRowError) as caught:
        moving.move(source, target)
    assert (caught.value.subject, caught.value.key) == ("counter", "bar_id 1, name zz")
    _write(target, "DELETE FROM counter WHERE name = 'zz'")
    _write(target, "DELETE FROM waste WHERE id = 3")  # the last row of the source appears again in its place
    with pytest.raises((moving.DifferentRowError, moving.RowRefusedError)):
        moving.move(source, target)
    target.close()


def test_a_source_that_changed_since_is_not_mixed_in(filled: Fill, target: Store) -> None:
    source = filled("sqlite")
    _break_off(source, target)
    _write(source, "UPDATE bar SET revision = revision + 1")
    with pytest.raises(moving.OtherSourceError):
        moving.move(source, target)
    target.close()


def test_nobody_writes_to_the_source_meanwhile(filled: Fill, target: Store, database: str) -> None:
    source = filled(database)
    other = Store(source.url.render_as_string(hide_password=False))
    refused: list[str] = []

    def progress(table: str, done: int, of: int) -> None:
        if table == "waste" and done == of:
            soon = "PRAGMA busy_timeout=50" if other.is_sqlite else "SET LOCAL lock_timeout='50ms'"
            with other.engine.begin() as connection:
                connection.exec_driver_sql(soon)
                with pytest.raises(OperationalError, match=r"locked|lock timeout") as caught:
                    connection.exec_driver_sql("UPDATE waste SET reason = 'x'")
            refused.append(str(caught.value))

    moving.move(source, target, progress)
    assert len(refused) == 1
    assert everything(target) == everything(source)
    other.close()
    target.close()


@pytest.mark.long
@pytest.mark.parametrize("kind", ["sqlite", "postgresql"])
def test_a_source_that_somebody_writes_to_is_refused(filled: Fill, place: Make, kind: str) -> None:
    source = filled(kind)
    writer = Store(source.url.render_as_string(hide_password=False))
    new = Store(place("sqlite"))
    with writer.writing() as unit:
        unit.session.execute(text("UPDATE waste SET reason = reason"))
        with pytest.raises(InUseError):
            moving.move(source, new)
    with new.engine.connect() as connection:
        assert census.tables_of(connection) == []
    writer.close()
    new.close()


def test_a_name_too_long_for_the_target_is_named_and_nothing_after_it_is_lost(
    filled: Fill, place: Make
) -> None:
    source, target = filled("sqlite"), Store(place("postgresql"))
    with source.writing() as unit:
        lime = unit.bar(1).one(Ingredient, Ingredient.match_key == "lime")
        assert lime is not None
        number, name = lime.id, lime.name
        lime.name = "l" * 81  # SQLite does not check lengths
    with pytest.raises(moving.RowRefusedError, match="ingredient: value too long") as caught:
        moving.move(source, target)
    assert caught.value.key == f"bar_id 1, id {number}"
    with source.writing() as unit:
        lime = unit.bar(1).get(Ingredient, number)
        assert lime is not None
        lime.name = name
    assert moving.move(source, target).resumed
    assert everything(target) == everything(source)
    target.close()


def test_only_a_newest_source_and_a_new_target_will_do(filled: Fill, place: Make, database: str) -> None:
    source, new = filled("sqlite"), Store(place(database))
    with pytest.raises(moving.SamePlaceError):
        moving.move(source, source)
    absent = Store(place("sqlite"))
    with pytest.raises(census.NoDatabaseError):
        moving.move(absent, new)
    assert not Path(str(absent.url.database)).exists()
    taken = filled(database)
    rows = everything(taken)
    with pytest.raises(census.OccupiedError):
        moving.move(filled("sqlite"), taken)
    assert everything(taken) == rows
    _write(source, "UPDATE alembic_version SET version_num = '0006'")
    with pytest.raises(moving.UnmigratedError) as old:
        moving.move(source, new)
    assert old.value.subject == "0006"
    _write(source, "UPDATE alembic_version SET version_num = '9999'")
    with pytest.raises(migrate.NewerDatabaseError):
        moving.move(source, new)
    _write(source, f"UPDATE alembic_version SET version_num = '{migrate.head()}'")  # noqa: S608
    _write(taken, "UPDATE alembic_version SET version_num = '9999'")
    with pytest.raises(migrate.NewerDatabaseError):
        moving.move(source, taken)
    absent.close()
    new.close()
