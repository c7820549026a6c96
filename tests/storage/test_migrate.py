"""Bringing a database to the newest tables, from nothing and from every step on the way."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata
from alembic.config import Config
from alembic.runtime.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import create_engine, inspect, text

from storage import migrate
from storage.migrate import NewerDatabaseError
from storage.store import Store
from storage.tables import Base

_ROOT = Path(migrate.__file__).parent.parent


def _steps() -> list[str]:
    config = Config()
    config.set_main_option("script_location", str(_ROOT / "storage" / "migrations"))
    return [step.revision for step in ScriptDirectory.from_config(config).walk_revisions()][::-1]


def _difference(url: str) -> list[object]:
    engine = create_engine(Store(url).url)
    try:
        with engine.connect() as connection:
            return list(
                compare_metadata(
                    MigrationContext.configure(connection, opts={"compare_type": True}), Base.metadata
                )
            )
    finally:
        engine.dispose()


def _at(url: str) -> str | None:
    store = Store(url)
    try:
        return migrate.current(store)
    finally:
        store.close()


def _upgrade(url: str, to: str = "head") -> None:
    store = Store(url)
    try:
        migrate.upgrade(store, to)
    finally:
        store.close()


def test_there_is_one_newest_step_and_one_line_of_them() -> None:
    config = Config()
    config.set_main_option("script_location", str(_ROOT / "storage" / "migrations"))
    scripts = ScriptDirectory.from_config(config)
    assert scripts.get_heads() == [migrate.head()]
    assert list(migrate.revisions()) == [step.revision for step in scripts.walk_revisions()][::-1]
    assert scripts.get_bases() == [_steps()[0]]
    assert all(not step.is_branch_point for step in scripts.walk_revisions())


def test_from_nothing_to_the_newest_tables_without_a_difference(empty_url: str) -> None:
    assert _at(empty_url) is None
    _upgrade(empty_url)
    assert _at(empty_url) == migrate.head()
    assert _difference(empty_url) == []


def test_a_second_time_changes_nothing(empty_url: str) -> None:
    _upgrade(empty_url)
    _upgrade(empty_url)
    assert _difference(empty_url) == []


def test_step_by_step_leads_to_the_same_tables(empty_url: str) -> None:
    for step in _steps():
        _upgrade(empty_url, step)
        assert _at(empty_url) == step
    assert _difference(empty_url) == []


_FIRST_ROWS = (
    "INSERT INTO bar (id, name, language, currency, units, zone, closing_minute, jurisdiction, settings, "
    "revision, created_at) VALUES (1, 'The Copper Gull', 'en', 'EUR', 'metric', 'Europe/Lisbon', 300, 'EU', "
    "'{}', 3, 1795629600)",
    "INSERT INTO person (id, channel, outside_id, name, bar_id) VALUES (1, 'console', 'ana', 'Ana', 1)",
    "INSERT INTO room (id, channel, outside_id, private, title, bar_id, reachable) "
    "VALUES (1, 'console', 'ana', true, '', 1, true)",
    "INSERT INTO member (bar_id, person_id, role, name, room_id, joined_at) "
    "VALUES (1, 1, 'owner', 'Ana', 1, 1795629600)",
    "INSERT INTO ingredient (bar_id, id, name, match_key, kind, details, made_at) "
    "VALUES (1, 1, 'grapefruit oil', 'grapefruit oil', 'citrus oil', '{}', 1795629600)",
    "INSERT INTO formula (bar_id, id, name, match_key, preparation, latest, made_at) "
    "VALUES (1, 1, 'Grapefruit mist', 'grapefruit mist', 'aroma mist', 1, 1795629600)",
    "INSERT INTO formula_version (bar_id, formula_id, number, rest_hours, discard_days, note, made_at, "
    "made_by) VALUES (1, 1, 1, '24', 180, '', 1795629600, 1)",
    "INSERT INTO formula_line (bar_id, formula_id, number, position, ingredient_id, amount, unit) "
    "VALUES (1, 1, 1, 1, 1, '36.5', 'ml')",
    "INSERT INTO entry (bar_id, id, at, by, what, details) VALUES (1, 1, 1795629600, 1, 'formula', '{}')",
)
_KEPT = (
    "bar",
    "person",
    "room",
    "member",
    "ingredient",
    "formula",
    "formula_version",
    "formula_line",
    "entry",
)


def test_rows_of_the_first_tables_are_all_there_in_the_newest(empty_url: str) -> None:
    first, *later = _steps()
    _upgrade(empty_url, first)
    before = _rows_and_columns(empty_url, _FIRST_ROWS)
    for step in later:
        _upgrade(empty_url, step)
    after = _rows_and_columns(empty_url)
    for table, rows in before.items():
        assert len(after[table]) == len(rows), table
        for old, new in zip(rows, after[table], strict=True):
            kept = {column: value for column, value in new.items() if column in old}
            assert kept == {column: value for column, value in old.items() if column in new}, table


def _rows_and_columns(url: str, insert: tuple[str, ...] = ()) -> dict[str, list[dict[str, object]]]:
    engine = create_engine(Store(url).url)
    try:
        with engine.begin() as connection:
            for statement in insert:
                connection.execute(text(statement))
            return {
                table: [dict(row._mapping) for row in connection.execute(text(f"SELECT * FROM {table}"))]  # noqa: S608
                for table in _KEPT
            }
    finally:
        engine.dispose()


def test_a_database_of_a_newer_program_is_left_alone(empty_url: str) -> None:
    _upgrade(empty_url)
    engine = create_engine(Store(empty_url).url)
    with engine.begin() as connection:
        connection.execute(text("UPDATE alembic_version SET version_num = '9999'"))
        tables = set(inspect(connection).get_table_names())
    with pytest.raises(NewerDatabaseError) as caught:
        _upgrade(empty_url)
    assert caught.value.revision == "9999"
    with engine.connect() as connection:
        assert set(inspect(connection).get_table_names()) == tables
    engine.dispose()


def test_alembic_itself_finds_nothing_to_do(empty_url: str) -> None:
    _upgrade(empty_url)
    done = subprocess.run(
        [sys.executable, "-m", "alembic", "check"],
        cwd=_ROOT,
        env={**os.environ, "DATABASE_URL": empty_url},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr


def test_several_processes_that_start_at_once_migrate_it_once(empty_url: str) -> None:
    code = (
        "import sys; from storage import migrate; from storage.store import Store\n"
        "store = Store(sys.argv[1]); migrate.upgrade(store); store.close()"
    )
    started = [
        subprocess.Popen(
            [sys.executable, "-c", code, empty_url], cwd=_ROOT, stderr=subprocess.PIPE, text=True
        )
        for _ in range(3)
    ]
    said = [process.communicate(timeout=60)[1] for process in started]
    assert [process.returncode for process in started] == [0, 0, 0], said
    assert _difference(empty_url) == []
